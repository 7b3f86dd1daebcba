//! The work as it was carried out: which offer, and what every reading after it was taken with unless it says otherwise.

use crate::notes::Notes;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::names::METERS;
use dwelling::{CloseOut, MeterKind, Taken};

pub(crate) static SHAPE: Shape = Shape {
    title: "[close_out]",
    name: "close_out",
    meaning: "What holds for the work that was carried out, as a whole.",
    fields: &[
        field!(may "offer", FieldKind::Count(1, 100), "the number of the offer that was carried out, as `thirdwire plan --offers` numbers them; 1 if left out", "2"),
        field!(may "meter", FieldKind::Name(&METERS), "the kind of meter, for every reading after the work that does not say otherwise", "\"high-impedance\""),
        field!(may "day", FieldKind::Day, "the day of every reading after the work that does not say otherwise", "\"2026-11-20\""),
        field!(may "by", FieldKind::Text, "the initials of who took every reading after the work that does not say otherwise", "\"MK\""),
    ],
};

/// What holds for every reading after the work that does not say otherwise.
#[derive(Debug, Default)]
pub(crate) struct Defaults {
    pub(crate) meter: Option<MeterKind>,
    pub(crate) taken: Taken,
}

pub(crate) fn read(notes: &mut Notes, survey: &Row<'_>) -> (CloseOut, Defaults) {
    let row = survey.get("close_out").and_then(|_| survey.inner(notes, "close_out"));
    let Some(row) = row else { return Default::default() };
    let defaults = Defaults {
        meter: row.name(notes, "meter", MeterKind::from_name),
        taken: Taken { day: row.day(notes, "day"), by: row.text(notes, "by") },
    };
    (CloseOut { offer: row.count(notes, "offer") }, defaults)
}
