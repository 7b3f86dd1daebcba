//! What a box holds against what is said of it.

use crate::mistakes::{aluminium_too_thin, shared_neutral_without_partner, want_without_receptacle};
use crate::notes::Notes;
use crate::row::Row;
use crate::value::ValueKind;
use dwelling::{DeviceBox, Dwelling, Holding, Want};
use electrical::{ConductorMetal, Gauge};

pub(crate) fn check(notes: &mut Notes, draft: &Dwelling, rows: &[Row<'_>]) {
    for (device_box, row) in draft.boxes.iter().zip(rows) {
        if device_box.want == Want::ThreeSlot && !may_hold_receptacle(device_box.holds) {
            let places = (row.place_of("want"), row.place_of("holds"));
            notes.push(want_without_receptacle::mistake(device_box.want.name(), device_box.holds.name(), places));
        }
        run(notes, draft, device_box, row);
    }
}

/// Whether a receptacle is there, or could be for all that is known.
fn may_hold_receptacle(holds: Holding) -> bool {
    holds.is_receptacle() || matches!(holds, Holding::Nothing | Holding::Unknown)
}

fn run(notes: &mut Notes, draft: &Dwelling, device_box: &DeviceBox, row: &Row<'_>) {
    let Some(ValueKind::Table(table)) = row.table.entry("run").map(|entry| &entry.value.kind) else { return };
    let place = |key: &str| table.entry(key).map(|entry| entry.value.span);
    let circuit = device_box.circuit.and_then(|circuit| draft.circuits.get(circuit.0));
    // What a circuit says of itself alone is held against itself.
    let metal = device_box.run.metal.or(circuit.map(|circuit| circuit.metal));
    let gauge = device_box.run.gauge.or(circuit.and_then(|circuit| circuit.gauge));
    if metal == Some(ConductorMetal::Aluminium)
        && gauge.is_some_and(|gauge| gauge < Gauge::AWG_12)
        && let Some(own) = place("gauge").or(place("metal"))
    {
        notes.push(aluminium_too_thin::mistake(own, place("metal").filter(|metal| *metal != own)));
    }
    if device_box.run.shared_neutral == Some(true)
        && let (Some(index), Some(circuit)) = (device_box.circuit, circuit)
        && draft.partner_of(index).is_none()
        && let Some(place) = place("shared_neutral")
    {
        notes.push(shared_neutral_without_partner::mistake(&circuit.id, place));
    }
}
