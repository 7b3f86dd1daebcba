//! Readings and sightings at an opening.

use crate::mistakes::reading_empty;
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::names::{GROUNDS, LOADS, METERS, TESTER_VERDICTS};
use dwelling::{GroundSeen, LoadState, MeterKind, Reading, TesterVerdict};

pub(crate) static SHAPE: Shape = Shape {
    title: "found = { … }",
    name: "found",
    meaning: "One set of readings and sightings at an opening; a list of them where there were several.",
    fields: &[
        field!(may "hn", FieldKind::Quantity(Quantity::Volts), "volts from hot to neutral", "121"),
        field!(may "hg", FieldKind::Quantity(Quantity::Volts), "volts from hot to ground", "38"),
        field!(may "ng", FieldKind::Quantity(Quantity::Volts), "volts from neutral to ground", "12"),
        field!(may "hot_earth", FieldKind::Quantity(Quantity::Volts), "volts from the hot slot to an independent earth", "\"119.5 V\""),
        field!(may "neutral_earth", FieldKind::Quantity(Quantity::Volts), "volts from the neutral slot to an independent earth", "\"400 mV\""),
        field!(may "ground_earth", FieldKind::Quantity(Quantity::Volts), "volts from the ground slot or box to an independent earth", "0"),
        field!(may "hot_box", FieldKind::Quantity(Quantity::Volts), "volts from hot to the metal box", "40"),
        field!(may "ground_ohms", FieldKind::Quantity(Quantity::Ohms), "impedance of the grounding path by a loaded test", "0.8"),
        field!(may "tester", FieldKind::Name(&TESTER_VERDICTS), "what a plug-in tester said, by its meaning", "\"open ground\""),
        field!(may "load", FieldKind::Name(&LOADS), "whether load was on", "\"none\""),
        field!(may "meter", FieldKind::Name(&METERS), "the kind of meter", "\"high-impedance\""),
        field!(may "ground", FieldKind::Name(&GROUNDS), "what was seen of a ground inside the box", "\"none seen\""),
        field!(may "tester_trips_gfci", FieldKind::Flag, "whether a plug-in tester's GFCI button opened a protective device", "false"),
        field!(may "own_test_trips", FieldKind::Flag, "whether the device's own test button opened it", "true"),
    ],
};

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>) -> Reading {
    if row.table.entries.is_empty() {
        notes.push(reading_empty::mistake("found", row.span));
    }
    Reading { own_test_trips: row.flag(notes, "own_test_trips"), ..readings(notes, row) }
}

/// What is read alike before and after the work: all but what a device's own test button did.
pub(crate) fn readings(notes: &mut Notes, row: &Row<'_>) -> Reading {
    Reading {
        hot_neutral: row.volts(notes, "hn"),
        hot_ground: row.volts(notes, "hg"),
        neutral_ground: row.volts(notes, "ng"),
        hot_earth: row.volts(notes, "hot_earth"),
        neutral_earth: row.volts(notes, "neutral_earth"),
        ground_earth: row.volts(notes, "ground_earth"),
        hot_box: row.volts(notes, "hot_box"),
        ground_impedance: row.ohms(notes, "ground_ohms"),
        tester: row.name(notes, "tester", TesterVerdict::from_name),
        load: row.name(notes, "load", LoadState::from_name),
        meter: row.name(notes, "meter", MeterKind::from_name),
        ground: row.name(notes, "ground", GroundSeen::from_name),
        tester_trips_gfci: row.flag(notes, "tester_trips_gfci"),
        own_test_trips: None,
    }
}
