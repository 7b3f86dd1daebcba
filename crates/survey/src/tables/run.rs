//! The run that feeds a box.

use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::names::{CABLES, METALS, metal_named};
use dwelling::{CableKind, Run};

pub(crate) static SHAPE: Shape = Shape {
    title: "run = { … }",
    name: "run",
    meaning: "The cable or conductors that feed a box; what is left out is as the circuit says.",
    fields: &[
        field!(may "length", FieldKind::Quantity(Quantity::Length), "its length", "\"14 ft\""),
        field!(may "cable", FieldKind::Name(&CABLES), "its wiring method, where it differs", "\"nm-with-ground\""),
        field!(may "gauge", FieldKind::Gauge, "its conductor size, where it differs", "12"),
        field!(may "metal", FieldKind::Name(&METALS), "its conductor metal, where it differs", "\"aluminium\""),
        field!(may "shared_neutral", FieldKind::Flag, "whether it carries both hots and the shared neutral of a multiwire set; if left out, the home run does", "true"),
    ],
};

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>) -> Run {
    Run {
        length: row.length(notes, "length"),
        cable: row.name(notes, "cable", CableKind::from_name),
        gauge: row.gauge(notes, "gauge"),
        metal: row.name(notes, "metal", metal_named),
        shared_neutral: row.flag(notes, "shared_neutral"),
    }
}
