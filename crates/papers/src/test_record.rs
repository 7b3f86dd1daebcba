//! The test record: what a meter must read at every receptacle after the work, how its GFCI is tested, and room to write.

use crate::document::{Block, Cell, Face, Paper, Table, Text};
use crate::job::Job;
use crate::labels::where_protected;
use crate::words::{circuits_named, listed, sentence};
use calculations::{Amount, ReadingAnswer, VoltsAnswer};
use closeout::{ClaimAnswer, ClaimKind, OpeningProof, ProofAnswer, ProofVerdict, ReadAnswer};
use remedies::in_words::{capital, device_at};
use remedies::{CircuitAnswer, Device, OpeningAnswer};

const HOW: &[&str] = &[
    "Visual check first: boxes closed, plates on, labels seen, directory written.",
    "Read with a high-impedance meter: hot to neutral (H–N), hot to ground (H–G), neutral to ground (N–G); first with nothing \
     plugged in on the circuit, then with the heavy load named beside the circuit switched on.",
    "Write beside it what the load draws, and where it is plugged in if not there. Where a ground is, only the reading under load \
     tells it from a jumper; test its path under load too, 1 Ω or less.",
    "Where no ground is (“open” below), H–G and N–G mean nothing: a meter may show any phantom. A plug-in tester shows “open \
     ground” there; with a GFCI and its markings that is what is expected, and no fault.",
    "Without a ground nothing but an independent earth tells polarity: read hot slot and neutral slot to one, such as a cord \
     from a proved ground, and write both beside.",
    "A plug-in tester cannot trip a GFCI where no ground is. The test button of the device itself is the test that counts; \
     afterwards see that the opening is dead, then reset.",
    "What reads otherwise than it must is written down and mended before anything is signed. Working with the meter on live \
     parts is for people who are trained for it.",
];

/// The test record of a job.
#[must_use]
pub fn test_record(job: &Job) -> Paper {
    let mut blocks = vec![
        Block::Heading(1, format!("Test record: {}", job.plan.job.name)),
        Block::Steps(HOW.iter().map(|step| (*step).into()).collect()),
        Block::Fields(vec!["Meter, and its last check".into(), "Plug-in tester".into(), "Day".into()]),
    ];
    blocks.extend(job.proof.map(how_it_stands));
    for circuit in &job.plan.circuits {
        blocks.extend(circuit_record(job, circuit));
    }
    let known = |opening: &&OpeningAnswer| !job.plan.circuits.iter().any(|set| set.boxes.contains(&opening.box_id));
    let apart: Vec<&OpeningAnswer> = job.plan.openings.iter().filter(known).filter(|at| is_tested(at)).collect();
    if !apart.is_empty() {
        blocks.push(Block::Heading(2, "Receptacles whose circuit is not known".to_owned()));
        blocks.push(Block::Table(table(job, &apart)));
    }
    blocks.push(Block::Together(vec![
        Block::Heading(2, "Signed".to_owned()),
        Block::Paragraph("Everything above was read as written, and nothing is open but what is written here:".into()),
        Block::Fields(vec!["Open items".into()]),
        Block::Fields(vec![String::new()]),
        Block::Fields(vec!["Name".into(), "Licence".into(), "Signature".into(), "Day".into()]),
    ]));
    Paper { blocks, ..job.paper("Test record") }
}

fn is_tested(opening: &OpeningAnswer) -> bool {
    opening.holds.is_receptacle() && opening.device != Device::Blank
}

fn circuit_record(job: &Job, circuit: &CircuitAnswer) -> Vec<Block> {
    let here: Vec<&OpeningAnswer> = (job.plan.openings.iter())
        .filter(|opening| circuit.boxes.contains(&opening.box_id) && is_tested(opening))
        .collect();
    if here.is_empty() {
        return Vec::new();
    }
    let test = if circuit.protects.is_empty() {
        String::new()
    } else {
        let device = device_at(circuit.at_panel, &format!("panel {}", circuit.panel));
        format!(" Press the test button of the {device}: every opening it protects goes dead.")
    };
    let lead = Text::from(format!("{}{test}", heavy_load(job, &here)));
    let lead = lead.and(Face::Plain, supply(job, circuit, &here));
    let lead = match not_checked(job, &here) {
        Some(told) => lead.and(Face::Bold, " Not checked under load").and(Face::Plain, told),
        None => lead,
    };
    let rows = [Block::Table(table(job, &here))].into_iter().chain(tester_explained(&here));
    let heading = Block::Heading(2, capital(&circuits_named(&circuit.circuits)));
    let record = [heading, Block::Paragraph(lead)].into_iter().chain(rows).collect();
    [Block::Together(record)].into_iter().chain(not_proved(job, &here)).collect()
}

/// What is switched on for the readings under load: where it is reckoned with, or at each opening where nothing could be.
fn heavy_load(job: &Job, openings: &[&OpeningAnswer]) -> String {
    let readings = || openings.iter().filter_map(|opening| reading_at(job, opening));
    let reckoned = readings().filter(|reading| reading.heavy_load.is_some()).find_map(|reading| reading.load.as_ref());
    let draws = || readings().find_map(|reading| Some(reading.load.as_ref()?.split_once(" at ")?.0));
    match (reckoned, draws()) {
        (Some(load), _) => format!("Heavy load: {load}."),
        (None, Some(draws)) => format!("Heavy load: {draws}, plugged in at each opening in turn."),
        (None, None) => "Heavy load: find out the rating of the circuit first.".to_owned(),
    }
}

/// What the readings under load take for granted where nobody knows how strong the supply of their panel is.
fn supply(job: &Job, circuit: &CircuitAnswer, openings: &[&OpeningAnswer]) -> String {
    let panel = job.dwelling.panels.iter().find(|panel| panel.id == circuit.panel);
    let loaded =
        |opening: &&&OpeningAnswer| reading_at(job, opening).is_some_and(|reading| reading.heavy_load.is_some());
    if panel.is_none_or(|panel| panel.fault_current.is_some()) || !openings.iter().any(|opening| loaded(&opening)) {
        return String::new();
    }
    format!(
        " How strong the supply of panel {} is was not surveyed: the readings under load are reckoned for one that gives way by \
         nothing. Read H–N at the panel before and under the load, and take from them what it falls there.",
        circuit.panel
    )
}

/// What must be found out before the readings under load can be told, once for all openings that wait for it.
fn not_checked(job: &Job, openings: &[&OpeningAnswer]) -> Option<String> {
    let mut told: Vec<(&str, Vec<&str>)> = Vec::new();
    for opening in openings {
        let Some(missing) = reading_at(job, opening).and_then(|reading| reading.find_out.as_deref()) else { continue };
        match told.iter_mut().find(|(known, _)| *known == missing) {
            Some((_, boxes)) => boxes.push(&opening.box_id),
            None => told.push((missing, vec![&opening.box_id])),
        }
    }
    let told: Vec<String> = told.iter().map(|(missing, boxes)| format!("{}: {missing}", listed(boxes))).collect();
    let told = told.join("; at ");
    (!told.is_empty())
        .then(|| format!(" at {told}. Write what is read and how far H–N falls: the next visit is held against it."))
}

/// How the close-out stands, as far as it was read.
fn how_it_stands(proof: &ProofAnswer) -> Block {
    let counts = proof.counts;
    let told = format!(
        " of {} claims of the plan, {} proved by what was read and seen, {} still to be read, {} contradicted. {}",
        counts.proved + counts.open + counts.contradicts,
        count(counts.proved),
        count(counts.open),
        count(counts.contradicts),
        if counts.open > 0 {
            "What was read stands in the tables; where nothing was, there is a line to write on."
        } else {
            "What was read stands in the tables."
        }
    );
    Block::Paragraph(Text::bold("As far as it was read:").and(Face::Plain, told))
}

fn count(number: usize) -> String {
    if number == 0 { "none".to_owned() } else { number.to_string() }
}

/// What a plug-in tester says at openings without a ground that are as they must be.
fn tester_explained(openings: &[&OpeningAnswer]) -> Option<Block> {
    let expected = |opening: &&&OpeningAnswer| !opening.grounded && !opening.markings.is_empty();
    let boxes: Vec<&str> = openings.iter().filter(expected).map(|opening| opening.box_id.as_str()).collect();
    (!boxes.is_empty()).then(|| {
        let one = boxes.len() == 1;
        let told = format!(
            " “open ground”. That is expected: {}. “Correct” would be wrong here: a ground was faked, or the wiring is not as \
             planned.",
            if one {
                "it has no ground, a GFCI protects it, and it is marked"
            } else {
                "they have no ground, a GFCI protects them, and they are marked"
            }
        );
        Block::Small(Text::from("A plug-in tester says at ").and(Face::Bold, listed(&boxes)).and(Face::Plain, told))
    })
}

fn proof_at<'a>(job: &Job<'a>, opening: &OpeningAnswer) -> Option<&'a OpeningProof> {
    let proved = job.proof?.openings.iter().find(|proved| proved.box_id == opening.box_id)?;
    // Where nothing was written down there is room to write, and no verdict.
    let touched = proved.claims.iter().any(|claim| claim.verdict != ProofVerdict::Open);
    touched.then_some(proved)
}

/// What contradicts the plan and what is still to be read, where something was read.
fn not_proved(job: &Job, openings: &[&OpeningAnswer]) -> Vec<Block> {
    let mut items: Vec<(String, Text)> = Vec::new();
    for proved in openings.iter().filter_map(|opening| proof_at(job, opening)) {
        for claim in &proved.claims {
            match claim.verdict {
                ProofVerdict::Proved => {}
                ProofVerdict::Open => {
                    let told = format!("Still to be read: {}.", claim.says);
                    items.push((proved.box_id.clone(), told.into()));
                }
                ProofVerdict::Contradicts => items.push((proved.box_id.clone(), contradiction(claim))),
            }
        }
    }
    if items.is_empty() { Vec::new() } else { vec![Block::Items(items)] }
}

fn contradiction(claim: &ClaimAnswer) -> Text {
    let part = |lead: &str, words: &Option<String>| {
        words.as_ref().map_or_else(String::new, |words| format!(" {lead}: {}", sentence(words)))
    };
    let told = [
        part("Must read", &claim.must_read),
        part("Reads", &claim.reads),
        part("Likely", &claim.likely_cause),
        part("Next", &claim.next),
    ];
    Text::bold(format!("! CONTRADICTS the plan: {}.", claim.says)).and(Face::Plain, told.concat())
}

/// What became of an opening, by a mark and in words, so that it is told without colour.
const fn verdict_in_words(verdict: ProofVerdict) -> &'static str {
    match verdict {
        ProofVerdict::Proved => "+ proved",
        ProofVerdict::Open => "? open",
        ProofVerdict::Contradicts => "! contra- dicts",
    }
}

/// What was read, in the words of what must be read.
fn read_in_words(read: &ReadAnswer) -> String {
    let pairs = [("H–N", &read.hn), ("H–G", &read.hg), ("N–G", &read.ng)];
    let mut said: Vec<String> =
        pairs.iter().filter_map(|(name, volts)| Some(format!("{name} {}", volts.as_ref()?))).collect();
    said.extend(read.tester.map(|tester| format!("tester: {tester}")));
    said.extend(read.load.as_ref().map(|load| format!("with {load}")));
    said.join("\n")
}

/// What was read last without load, or under it; where it was not, lines to write it on.
fn read_last(proved: Option<&OpeningProof>, grounded: bool, loaded: bool) -> Cell {
    let last = proved.and_then(|proved| proved.read.iter().rev().find(|read| read.loaded == loaded));
    match (last, grounded, loaded) {
        (Some(last), _, _) => Cell::Words(read_in_words(last).into()),
        (None, true, false) => Cell::Lines(vec!["H–N", "H–G", "N–G"]),
        (None, true, true) => Cell::Lines(vec!["H–N", "H–G", "N–G", "load, A", "path, Ω"]),
        (None, false, false) => Cell::Lines(vec!["H–N", "H–earth", "N–earth"]),
        (None, false, true) => Cell::Lines(vec!["H–N", "load, A"]),
    }
}

/// How a GFCI or an AFCI of an opening is tested.
fn test_in_words(opening: &OpeningAnswer) -> String {
    match opening.protected_by.as_deref() {
        None if opening.device == Device::Afci => "no GFCI; AFCI: its own button".to_owned(),
        None => "no GFCI".to_owned(),
        by => where_protected(by).replacen("tested ", "", 1),
    }
}

/// Who read an opening, and when.
fn by_whom(proved: &OpeningProof) -> Option<String> {
    let claim = proved.claims.iter().find(|claim| claim.claim == ClaimKind::Recorded)?;
    claim.how.clone()
}

/// What became of the tests that are no volts.
fn tests_in_words(proved: &OpeningProof) -> String {
    let of = |kind: ClaimKind, name: &str| {
        let claims: Vec<ProofVerdict> =
            proved.claims.iter().filter(|claim| claim.claim == kind).map(|claim| claim.verdict).collect();
        let said = match claims.iter().max()? {
            ProofVerdict::Proved => "yes",
            ProofVerdict::Open => "not read",
            ProofVerdict::Contradicts => "NO",
        };
        Some(format!("{name}: {said}"))
    };
    let said = [
        of(ClaimKind::Trips, "button trips"),
        of(ClaimKind::DeadWhenTripped, "dead with it"),
        of(ClaimKind::Marking, "labels seen"),
    ];
    said.into_iter().flatten().collect::<Vec<String>>().join("; ")
}

fn reading_at<'a>(job: &Job<'a>, opening: &OpeningAnswer) -> Option<&'a ReadingAnswer> {
    job.readings.iter().find(|reading| reading.box_id == opening.box_id)
}

fn table(job: &Job, openings: &[&OpeningAnswer]) -> Table {
    // A verdict and a day with initials are longer than a tick and initials.
    let proved = job.proof.is_some();
    let (must, read) = if proved { (1.4, 1.1) } else { (1.6, 1.2) };
    let (ok, initials) = if proved { (0.75, 1.05) } else { (0.4, 0.65) };
    let columns = [
        ("Box", 0.55),
        ("Must read without load", must),
        ("Read", read),
        ("Must read with the load", must),
        ("Read", read),
        ("Test button", 1.1),
        ("OK", ok),
        ("Initials", initials),
    ];
    let rows = openings.iter().map(|opening| {
        let reading = reading_at(job, opening);
        let quiet = reading.and_then(|reading| reading.no_load.as_ref());
        let quiet = quiet.map_or("not checked".to_owned(), in_words);
        let falls = reading.and_then(|reading| reading.falls_by.as_ref());
        let falls = falls.map_or_else(String::new, fall_in_words);
        let loaded = match reading.and_then(|reading| reading.heavy_load.as_ref()) {
            Some(volts) => format!("{}{falls}", in_words(volts)),
            None if opening.grounded => "H–N not checked\nH–G the sum of H–N and N–G\nN–G above 0.0 V".to_owned(),
            None => "H–N not checked\nH–G open\nN–G open".to_owned(),
        };
        let gfci = test_in_words(opening);
        let proved = proof_at(job, opening);
        let marks = if opening.markings.is_empty() { "" } else { "; labels seen" };
        vec![
            Text::bold(opening.box_id.as_str()).into(),
            quiet.into(),
            read_last(proved, opening.grounded, false),
            loaded.into(),
            read_last(proved, opening.grounded, true),
            match proved.map(tests_in_words).filter(|said| !said.is_empty()) {
                Some(said) => Cell::Words(Text::from(format!("{gfci}{marks}. ")).and(Face::Bold, said)),
                None => format!("{gfci}{marks}").into(),
            },
            proved.map_or(Cell::Tick, |proved| Text::bold(verdict_in_words(proved.verdict)).into()),
            Cell::Words(proved.and_then(by_whom).unwrap_or_default().into()),
        ]
    });
    let rows = rows.collect();
    Table { columns: columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec(), rows, row_height: 30.0 }
}

/// How far hot to neutral falls under the load; on a leg whose partner bears the load it can rise.
fn fall_in_words(falls: &Amount) -> String {
    match (falls.least, falls.most) {
        (Some(least), Some(most)) if most <= 0.0 => format!("\nH–N rises by {:.1} to {:.1} V", -most, -least),
        (Some(least), _) if least < 0.0 => format!("\nH–N moves by {}", falls.words),
        _ => format!("\nH–N falls by {}", falls.words),
    }
}

/// The three readings that must be, those against a ground that is not there as open.
fn in_words(volts: &VoltsAnswer) -> String {
    let against = |name: &str, amount: Option<&Amount>| {
        amount.map_or(format!("{name} open"), |amount| format!("{name} {}", amount.words))
    };
    format!("H–N {}\n{}\n{}", volts.hn.words, against("H–G", volts.hg.as_ref()), against("N–G", volts.ng.as_ref()))
}
