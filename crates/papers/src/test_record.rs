//! The test record: what a meter must read at every receptacle after the work, how its GFCI is tested, and room to write.

use crate::document::{Block, Cell, Face, Paper, Table, Text};
use crate::job::Job;
use crate::labels::where_protected;
use crate::words::{circuits_in_words, listed, sentence};
use calculations::{Amount, ReadingAnswer, VoltsAnswer};
use closeout::{ClaimAnswer, ClaimKind, OpeningProof, ProofAnswer, ProofVerdict, ReadAnswer};
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
    "What reads otherwise than it must is written down and mended before anything is signed.",
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
    let load = here.iter().find_map(|opening| reading_at(job, opening)?.load.clone());
    let load = load.map_or("Heavy load: not reckoned.".to_owned(), |load| format!("Heavy load: {load}."));
    let test = if circuit.protects.is_empty() {
        String::new()
    } else {
        let device = remedies::in_words::at_panel(circuit.at_panel);
        format!(
            " Press the test button of the {device} in panel {}: every opening it protects goes dead.",
            circuit.panel
        )
    };
    vec![
        Block::Heading(2, format!("Circuit {}", circuits_in_words(&circuit.circuits))),
        Block::Paragraph(format!("{load}{test}").into()),
        Block::Table(table(job, &here)),
    ]
    .into_iter()
    .chain(tester_explained(&here))
    .chain(not_proved(job, &here))
    .collect()
}

/// How the close-out stands, as far as it was read.
fn how_it_stands(proof: &ProofAnswer) -> Block {
    let counts = proof.counts;
    let told = format!(
        " {} claims of the plan are proved by what was read and seen, {} are open, {} are contradicted. What was read stands in \
         the tables; what was not is left free to write.",
        counts.proved, counts.open, counts.contradicts
    );
    Block::Paragraph(Text::bold("As far as it was read:").and(Face::Plain, told))
}

/// What a plug-in tester says at openings without a ground that are as they must be.
fn tester_explained(openings: &[&OpeningAnswer]) -> Option<Block> {
    let expected = |opening: &&&OpeningAnswer| !opening.grounded && !opening.markings.is_empty();
    let boxes: Vec<&str> = openings.iter().filter(expected).map(|opening| opening.box_id.as_str()).collect();
    (!boxes.is_empty()).then(|| {
        let told = " “open ground”. That is expected: they have no ground, a GFCI protects them, and they are marked. “Correct” \
                    would be wrong here: a ground was faked, or the wiring is not as planned.";
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
    said.join("; ")
}

/// What was read last without load, or under it; empty where it was not.
fn read_last(proved: Option<&OpeningProof>, loaded: bool) -> Cell {
    let last = proved.and_then(|proved| proved.read.iter().rev().find(|read| read.loaded == loaded));
    Cell::Words(last.map(read_in_words).unwrap_or_default().into())
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
    let columns = [
        ("Box", 0.75),
        ("Must read without load", 1.5),
        ("Read", 0.95),
        ("Must read with the load", 1.5),
        ("Read", 0.95),
        ("GFCI test", 1.35),
        ("OK", if job.proof.is_some() { 0.65 } else { 0.4 }),
        ("Initials", 0.7),
    ];
    let rows = openings.iter().map(|opening| {
        let reading = reading_at(job, opening);
        let missing = reading.and_then(|reading| reading.find_out.as_ref());
        let volts = |volts: Option<&VoltsAnswer>| match (missing, volts) {
            (Some(missing), _) => format!("not checked: {missing}"),
            (None, Some(volts)) => in_words(volts),
            (None, None) => "not checked".to_owned(),
        };
        let falls = reading.and_then(|reading| reading.falls_by.as_ref());
        let falls = falls.map_or_else(String::new, fall_in_words);
        let loaded = volts(reading.and_then(|reading| reading.heavy_load.as_ref()));
        let gfci = match opening.protected_by.as_deref() {
            None => "none".to_owned(),
            by => where_protected(by).replacen("tested ", "", 1),
        };
        let proved = proof_at(job, opening);
        let marks = if opening.markings.is_empty() { "" } else { "; labels seen" };
        vec![
            Text::bold(opening.box_id.as_str()).into(),
            volts(reading.and_then(|reading| reading.no_load.as_ref())).into(),
            read_last(proved, false),
            if missing.is_some() { loaded.into() } else { format!("{loaded}{falls}").into() },
            read_last(proved, true),
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
        (Some(least), Some(most)) if most <= 0.0 => format!("; H–N rises by {:.1} to {:.1} V", -most, -least),
        (Some(least), _) if least < 0.0 => format!("; H–N moves by {}", falls.words),
        _ => format!("; H–N falls by {}", falls.words),
    }
}

/// The three readings that must be, those against a ground that is not there as open.
fn in_words(volts: &VoltsAnswer) -> String {
    let against = |name: &str, amount: Option<&Amount>| {
        amount.map_or(format!("{name} open"), |amount| format!("{name} {}", amount.words))
    };
    format!("H–N {}; {}; {}", volts.hn.words, against("H–G", volts.hg.as_ref()), against("N–G", volts.ng.as_ref()))
}
