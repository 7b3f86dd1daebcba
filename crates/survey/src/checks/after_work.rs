//! Readings after the work that cannot have been taken so.

use crate::checks::readings::tables_under;
use crate::diagnostic::Span;
use crate::mistakes::{button_without_device, load_not_on, load_on_other_circuit};
use crate::notes::Notes;
use crate::row::Row;
use crate::value::{Table, Value, ValueKind};
use dwelling::{AfterReading, ButtonTest, Dwelling, Holding, LoadState};

pub(crate) fn check(notes: &mut Notes, draft: &Dwelling, rows: &[Row<'_>]) {
    for (device_box, row) in draft.boxes.iter().zip(rows) {
        for (after, item) in device_box.after.iter().zip(tables_under(row, "after")) {
            let ValueKind::Table(table) = &item.kind else { continue };
            no_load(notes, after, table);
            button(notes, after, table);
            if let (Some(at), Some(circuit)) = (after.load_at, device_box.circuit) {
                elsewhere(notes, draft, (at, circuit), (table, item, row));
            }
        }
    }
}

fn place(table: &Table, key: &str) -> Option<Span> {
    table.entry(key).map(|entry| entry.value.span)
}

/// A current or a place of a load, and no load on.
fn no_load(notes: &mut Notes, after: &AfterReading, table: &Table) {
    if after.reading.load != Some(LoadState::None) {
        return;
    }
    let given = [("load_current", after.load_current.is_some()), ("load_at", after.load_at.is_some())];
    for (key, _) in given.into_iter().filter(|(_, given)| *given) {
        if let (Some(span), Some(load)) = (place(table, key), place(table, "load")) {
            notes.push(load_not_on::mistake(key, span, load));
        }
    }
}

fn button(notes: &mut Notes, after: &AfterReading, table: &Table) {
    let pressed = matches!(after.test_button, Some(ButtonTest::Trips | ButtonTest::DoesNotTrip));
    let protective = |fitted: Holding| {
        matches!(fitted, Holding::Gfci | Holding::Afci | Holding::Dual | Holding::DeadFront | Holding::Unknown)
    };
    if let (true, Some(fitted)) = (pressed, after.fitted.filter(|fitted| !protective(*fitted)))
        && let (Some(button), Some(device)) = (place(table, "test_button"), place(table, "fitted"))
    {
        notes.push(button_without_device::mistake(fitted.name(), button, device));
    }
}

fn elsewhere(
    notes: &mut Notes,
    draft: &Dwelling,
    (at, circuit): (dwelling::BoxIndex, dwelling::CircuitIndex),
    (table, item, row): (&Table, &Value, &Row<'_>),
) {
    let (Some(there), Some(own)) = (draft.boxes.get(at.0), draft.circuits.get(circuit.0)) else { return };
    let Some((theirs, other)) = there.circuit.and_then(|theirs| Some((theirs, draft.circuits.get(theirs.0)?))) else {
        return;
    };
    if theirs != circuit && draft.partner_of(circuit) != Some(theirs) {
        let span = place(table, "load_at").unwrap_or(item.span);
        notes.push(load_on_other_circuit::mistake(&there.id, &other.id, &own.id, span, row.place_of("circuit")));
    }
}
