//! What an owner is told of the wiring as it was found: kinds that ask for care, and boxes that no drawing shows.

use crate::document::{Block, Face, Table, Text};
use crate::job::Job;
use crate::words::room_title;
use drawings::SheetAnswer;
use dwelling::{CableKind, Overcurrent};
use remedies::in_words::as_found;

/// What is found in a wall and asks for care, and why. Common practice, no source.
const KNOB_AND_TUBE: (&str, &str) = (
    "Knob-and-tube wiring: ",
    "single wires on porcelain, without a ground, whose old cover crumbles when it is moved. It cools in air: have no \
     insulation blown over or round it.",
);
const ALUMINIUM: (&str, &str) = (
    "Aluminium wiring: ",
    "where it is joined it can loosen and grow hot. Only connectors and devices made for it may be used; an outlet that is \
     warm, smells or flickers is switched off and looked at.",
);
const FUSES: (&str, &str) =
    ("Fuses: ", "a larger one than the wire bears turns the wire into the fuse. Replace one only by its like.");

/// The kinds of wiring that ask for care, where the dwelling has them.
pub(crate) fn asks_for_care(job: &Job) -> Vec<Block> {
    let dwelling = job.dwelling;
    let runs = || dwelling.box_indices();
    let found = [
        (KNOB_AND_TUBE, runs().any(|at| dwelling.cable_to(at) == CableKind::KnobAndTube)),
        (ALUMINIUM, runs().any(|at| !dwelling.is_copper_to(at))),
        (FUSES, dwelling.panels.iter().any(|panel| panel.overcurrent == Some(Overcurrent::Fuses))),
    ];
    let told = found.into_iter().filter(|(_, is_there)| *is_there);
    told.map(|((what, why), _)| Block::Caution(Text::bold(what).and(Face::Plain, why))).collect()
}

/// Whether a sheet of a floor shows a plan: without outlines and places there is nothing to draw.
pub(crate) const fn shows_a_plan(sheet: &SheetAnswer) -> bool {
    sheet.scale.is_some()
}

/// Where every box is to be looked up, in one sentence.
pub(crate) fn where_shown(job: &Job) -> Option<Block> {
    let plans = job.floors_before.iter().filter(|sheet| shows_a_plan(sheet)).count();
    let says = match (plans, plans == job.floors_before.len()) {
        _ if job.plan.openings.is_empty() => return None,
        (0, _) => "The list at the end tells every box as it was found.",
        (1, true) => "The floor plan at the end shows every box as it was found.",
        (_, true) => "The floor plans at the end show every box as it was found.",
        (_, false) => "The floor plans and the list at the end show every box as it was found.",
    };
    Some(Block::Small(says.into()))
}

/// Every box in words, where a floor has no plan to show it on.
pub(crate) fn boxes_in_words(job: &Job) -> Vec<Block> {
    if job.plan.openings.is_empty() || job.floors_before.iter().all(shows_a_plan) {
        return Vec::new();
    }
    let rows = job.rooms().into_iter().flat_map(|(room, openings)| {
        let title = room_title(job.dwelling, room);
        openings.into_iter().map(move |opening| {
            let found = as_found(opening.holds, opening.ground);
            let circuit = opening.circuit.clone().unwrap_or_else(|| "not known".to_owned());
            vec![Text::bold(opening.box_id.as_str()).into(), title.as_str().into(), found.into(), circuit.into()]
        })
    });
    let columns = [("Box", 0.8), ("Room", 2.0), ("Found", 3.5), ("Circuit", 0.8)];
    let columns = columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec();
    vec![
        Block::Heading(2, "Every box as it was found".to_owned()),
        Block::Table(Table { columns, rows: rows.collect(), row_height: 0.0 }),
    ]
}
