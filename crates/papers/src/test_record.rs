//! The test record: what a meter must read at every receptacle after the work, how its GFCI is tested, and room to write.

use crate::document::{Block, Cell, Paper, Table, Text};
use crate::job::Job;
use crate::labels::where_protected;
use crate::words::circuits_in_words;
use calculations::{Amount, ReadingAnswer, VoltsAnswer};
use remedies::{CircuitAnswer, Device, OpeningAnswer};

const HOW: &[&str] = &[
    "Visual check first: boxes closed, plates on, labels seen, directory written.",
    "Read with a high-impedance meter: hot to neutral (H–N), hot to ground (H–G), neutral to ground (N–G); first with nothing \
     plugged in on the circuit, then with the heavy load named beside the circuit switched on.",
    "Where no ground is (“open” below), H–G and N–G mean nothing: a meter may show any phantom. A plug-in tester shows “open \
     ground” there; with a GFCI and its markings that is what is expected, and no fault.",
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
        ("OK", 0.4),
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
        let marks = if opening.markings.is_empty() { "" } else { "; labels seen" };
        vec![
            Text::bold(opening.box_id.as_str()).into(),
            volts(reading.and_then(|reading| reading.no_load.as_ref())).into(),
            Cell::Words(Text::default()),
            if missing.is_some() { loaded.into() } else { format!("{loaded}{falls}").into() },
            Cell::Words(Text::default()),
            format!("{gfci}{marks}").into(),
            Cell::Tick,
            Cell::Words(Text::default()),
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
