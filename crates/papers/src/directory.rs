//! The circuit directory for the door of each panel, as the plan leaves it: 408.4(A).

use crate::document::{Block, Cell, Paper, Table, Text};
use crate::job::Job;
use crate::words::{circuits_in_words, listed, room_title};
use dwelling::{Circuit, CircuitIndex, PanelIndex, ProtectiveBreaker};
use remedies::in_words::at_panel;
use remedies::{CircuitAnswer, Device, OpeningAnswer};
use std::collections::BTreeMap;

/// Lines left for what the survey does not know of: spares and circuits that were not surveyed.
const LINES_TO_FILL: usize = 6;

/// The circuit directory of every panel.
#[must_use]
pub fn circuit_directory(job: &Job) -> Paper {
    let mut blocks = Vec::new();
    for (number, panel) in job.dwelling.panels.iter().enumerate() {
        if number > 0 {
            blocks.push(Block::NewPage);
        }
        blocks.push(Block::Heading(1, format!("Circuit directory: panel {}", panel.id)));
        let lead = "What each circuit serves after the work, clearly told apart from the others (408.4(A)). Number the \
                    positions as they are in the panel, mark unused positions “spare”, and write nobody's name.";
        blocks.push(Block::Paragraph(lead.into()));
        blocks.push(Block::Table(table(job, PanelIndex(number))));
        blocks.extend(remarks(job, PanelIndex(number)));
    }
    Paper { blocks, ..job.paper("Circuit directory") }
}

fn table(job: &Job, panel: PanelIndex) -> Table {
    let columns =
        [("Position", 0.8), ("Circuit", 0.7), ("Breaker or fuse", 1.5), ("Serves", 3.0), ("Without ground", 1.6)];
    let mut rows = Vec::new();
    for (index, circuit) in circuits_of(job, panel) {
        let mut fitted = format!("{}, {}", job.rating_afterwards(&circuit.id), protection(job, circuit));
        if let Some(partner) = circuit.shares_neutral_with {
            let partner = &job.dwelling.circuit(partner).id;
            fitted.push_str(&format!("; shares its neutral with {partner}: both open together"));
        }
        rows.push(vec![
            Cell::Words(Text::default()),
            Text::bold(circuit.id.as_str()).into(),
            fitted.into(),
            serves(job, index).into(),
            none_or(listed(&without_ground(job, index))).into(),
        ]);
    }
    rows.extend((0..LINES_TO_FILL).map(|_| columns.map(|_| Cell::Words(Text::default())).to_vec()));
    Table { columns: columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec(), rows, row_height: 24.0 }
}

fn circuits_of<'a>(job: &Job<'a>, panel: PanelIndex) -> impl Iterator<Item = (CircuitIndex, &'a Circuit)> {
    let circuits = job.dwelling.circuits.iter().enumerate();
    circuits.filter(move |(_, circuit)| circuit.panel == panel).map(|(index, circuit)| (CircuitIndex(index), circuit))
}

/// The answer about the panel end of a circuit.
pub(crate) fn at_panel_of<'a>(job: &Job<'a>, circuit: &Circuit) -> Option<&'a CircuitAnswer> {
    job.plan.circuits.iter().find(|answer| answer.circuits.contains(&circuit.id))
}

/// What protects a circuit at its panel after the work.
pub(crate) fn protection(job: &Job, circuit: &Circuit) -> String {
    match at_panel_of(job, circuit).map(|answer| answer.at_panel) {
        Some("as-it-is") | None => as_fitted(circuit).to_owned(),
        Some(new) => at_panel(new).to_owned(),
    }
}

/// What protects a circuit at its panel as it was found.
pub(crate) fn as_fitted(circuit: &Circuit) -> &'static str {
    match circuit.fitted {
        None => "no GFCI or AFCI at the panel",
        Some(ProtectiveBreaker::Gfci) => "GFCI breaker",
        Some(ProtectiveBreaker::Afci) => "AFCI breaker",
        Some(ProtectiveBreaker::Dual) => "GFCI/AFCI breaker",
        Some(ProtectiveBreaker::GfciTwoPole) => "two-pole GFCI breaker",
        Some(ProtectiveBreaker::AfciTwoPole) => "two-pole AFCI breaker",
        Some(ProtectiveBreaker::DualTwoPole) => "two-pole GFCI/AFCI breaker",
    }
}

/// Names, or a word where there are none: an empty cell is room to write.
fn none_or(names: String) -> String {
    if names.is_empty() { "none".to_owned() } else { names }
}

/// What a circuit serves, by room: `Kitchen: receptacles K-1, K-2`.
fn serves(job: &Job, circuit: CircuitIndex) -> String {
    let mut told = Vec::new();
    for (room, openings) in job.rooms() {
        let mut kinds: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
        for opening in openings.iter().filter(|opening| job.circuit_index(opening) == Some(circuit)) {
            kinds.entry(kind(opening)).or_default().push(&opening.box_id);
        }
        let kinds: Vec<String> =
            kinds.iter().map(|(kind, boxes)| format!("{} {}", counted(kind, boxes.len()), listed(boxes))).collect();
        if !kinds.is_empty() {
            told.push(format!("{}: {}", room_title(job.dwelling, room), kinds.join("; ")));
        }
    }
    if told.is_empty() { "nothing that was surveyed".to_owned() } else { format!("{}.", told.join(". ")) }
}

/// The word for as many as there are.
fn counted(kind: &str, count: usize) -> String {
    match (kind, count) {
        ("receptacle" | "luminaire", 2..) => format!("{kind}s"),
        ("switch", 2..) => "switches".to_owned(),
        _ => kind.to_owned(),
    }
}

fn kind(opening: &OpeningAnswer) -> &'static str {
    if opening.device == Device::Blank {
        "splices"
    } else if opening.holds.is_receptacle() {
        "receptacle"
    } else {
        opening.holds.in_words()
    }
}

/// The receptacles of a circuit that have no ground after the work, as far as is known.
pub(crate) fn without_ground<'a>(job: &Job<'a>, circuit: CircuitIndex) -> Vec<&'a str> {
    let of_it = job.plan.openings.iter().filter(|opening| job.circuit_index(opening) == Some(circuit));
    of_it.filter(|opening| job.is_receptacle_without_ground(opening)).map(|opening| opening.box_id.as_str()).collect()
}

fn remarks(job: &Job, panel: PanelIndex) -> Vec<Block> {
    let mut list: Vec<Text> = Vec::new();
    let circuits: Vec<&str> = circuits_of(job, panel).map(|(_, circuit)| circuit.id.as_str()).collect();
    for answer in job.plan.circuits.iter().filter(|answer| answer.circuits.len() > 1) {
        if answer.circuits.iter().any(|id| circuits.contains(&id.as_str())) {
            let set = circuits_in_words(&answer.circuits);
            list.push(format!("{set}: a multiwire set. Switch both off before you open any box of either.").into());
        }
    }
    let own: Vec<&str> = (job.plan.openings.iter())
        .filter(|opening| opening.circuit.as_deref().is_some_and(|id| circuits.contains(&id)))
        .filter(|opening| opening.protected_by.as_deref() == Some("itself"))
        .map(|opening| opening.box_id.as_str())
        .collect();
    if !own.is_empty() {
        list.push(format!("GFCI devices outside the panel: {}. Test and reset them there.", listed(&own)).into());
    }
    if circuits_of(job, panel).any(|(circuit, _)| !without_ground(job, circuit).is_empty()) {
        let any = "Where no ground is, a plug-in tester shows an open ground and cannot trip the GFCI: press the device's own button.";
        list.push(any.into());
    }
    let named: Vec<&str> = (job.plan.openings.iter())
        .filter(|opening| opening.circuit.as_deref().is_some_and(|id| circuits.contains(&id)))
        .map(|opening| opening.box_id.as_str())
        .collect();
    if let Some(one) = named.first() {
        let plans = if !job.floors_after.iter().any(crate::as_found::shows_a_plan) {
            ""
        } else {
            "; the plans in the paper “Inspection packet” show where they are"
        };
        list.push(format!("{one} and the like are the names of boxes in the walls and ceilings{plans}.").into());
    }
    list.push(
        "GFCI: switches off when current leaks, as through a person. AFCI: switches off when a wire sparks. Ground: the third wire."
            .into(),
    );
    vec![Block::Together(vec![Block::Heading(2, "To know".to_owned()), Block::Bullets(list)])]
}
