//! Branch circuits.

use crate::ids::Ids;
use crate::mistakes::{breaker_and_fuse, circuit_without_panel, no_such_circuit, no_such_panel};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::close_out::Defaults;
use crate::tables::names::{CABLES, METALS, PROTECTIVE_BREAKERS, metal_named};
use crate::tables::survey::AllIds;
use crate::tables::{NOT_FOUND, after};
use dwelling::{CableKind, Circuit, CircuitIndex, Overcurrent, Panel, PanelIndex, ProtectiveBreaker};
use electrical::ConductorMetal;

pub(crate) static SHAPE: Shape = Shape {
    title: "[[circuit]]",
    name: "circuit",
    meaning: "A branch circuit, and what its runs are unless one says otherwise.",
    fields: &[
        field!(must "id", FieldKind::Id, "its number or name", "\"3\""),
        field!(own "panel", FieldKind::Reference("a panel"), "the panel it originates in", "\"main\""),
        field!(may "breaker", FieldKind::Quantity(Quantity::Rating), "the rating of its breaker", "\"15 A\""),
        field!(may "fuse", FieldKind::Quantity(Quantity::Rating), "the rating of its fuse, in place of `breaker`", "\"15 A\""),
        field!(may "fitted", FieldKind::Name(&PROTECTIVE_BREAKERS), "the protective breaker already fitted", "\"gfci\""),
        field!(may "cable", FieldKind::Name(&CABLES), "its wiring method", "\"nm-two-wire\""),
        field!(may "gauge", FieldKind::Gauge, "the size of its conductors", "14"),
        field!(may "metal", FieldKind::Name(&METALS), "the metal of its conductors; copper if left out", "\"copper\""),
        field!(may "shares_neutral_with", FieldKind::Reference("the other circuit"), "the other circuit of a multiwire set", "\"5\""),
        field!(may "after", FieldKind::Table(&after::CIRCUIT_SHAPE), "what was seen at its panel end after the work; for a multiwire set, under either circuit", "{ fitted = \"gfci\", test_button = \"trips\" }"),
    ],
};

pub(crate) fn read_all(
    notes: &mut Notes,
    rows: &[Row<'_>],
    ids: &AllIds,
    panels: &mut [Panel],
    defaults: &Defaults,
) -> Vec<Circuit> {
    let circuits: Vec<Circuit> = rows.iter().map(|row| read(notes, row, ids, defaults)).collect();
    // Fuses written on circuits say what the panel holds, where the panel itself does not.
    for (index, panel) in panels.iter_mut().enumerate() {
        let on_it = || rows.iter().zip(&circuits).filter(|(_, circuit)| circuit.panel.0 == index);
        if panel.overcurrent.is_none()
            && on_it().any(|(row, _)| row.get("fuse").is_some())
            && !on_it().any(|(row, _)| row.get("breaker").is_some())
        {
            panel.overcurrent = Some(Overcurrent::Fuses);
        }
    }
    circuits
}

fn read(notes: &mut Notes, row: &Row<'_>, ids: &AllIds, defaults: &Defaults) -> Circuit {
    if row.table.entry("panel").is_none() {
        notes.push(circuit_without_panel::mistake(ids.panels.names().next(), row.span));
    }
    let panel = ids.panels.find(notes, row, "panel", no_such_panel::mistake);
    let (breaker, fuse) = (row.rating(notes, "breaker"), row.rating(notes, "fuse"));
    if row.get("breaker").is_some() && row.get("fuse").is_some() {
        notes.push(breaker_and_fuse::mistake(row.place_of("fuse"), row.place_of("breaker")));
    }
    Circuit {
        id: row.text_kept("id"),
        panel: PanelIndex(panel.unwrap_or(NOT_FOUND)),
        breaker: breaker.or(fuse),
        fitted: row.name(notes, "fitted", ProtectiveBreaker::from_name),
        cable: row.name(notes, "cable", CableKind::from_name).unwrap_or(CableKind::Unknown),
        gauge: row.gauge(notes, "gauge"),
        metal: row.name(notes, "metal", metal_named).unwrap_or(ConductorMetal::Copper),
        shares_neutral_with: partner(notes, row, &ids.circuits),
        after: after::of_circuit(notes, row, defaults),
    }
}

fn partner(notes: &mut Notes, row: &Row<'_>, circuits: &Ids) -> Option<CircuitIndex> {
    circuits.find(notes, row, "shares_neutral_with", no_such_circuit::mistake).map(CircuitIndex)
}
