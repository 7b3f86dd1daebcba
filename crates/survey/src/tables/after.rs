//! Readings and sightings after the work: at an opening, at the panel end of a circuit, at a panel.

use crate::ids::Ids;
use crate::mistakes::{no_such_box, reading_empty};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::close_out::Defaults;
use crate::tables::found;
use crate::tables::names::{
    BOXES_SEEN, BUTTON_TESTS, FITTED_AT_PANEL, GROUNDS, HOLDINGS, LABELS, LOADS, METERS, TESTER_VERDICTS,
};
use dwelling::{
    AfterReading, BoxIndex, BoxSeen, ButtonTest, CircuitAfter, FittedAtPanel, Holding, LabelSeen, PanelAfter, Reading,
    Taken,
};

pub(crate) static SHAPE: Shape = Shape {
    title: "after = { … }",
    name: "after",
    meaning: "One set of readings and sightings at an opening after the work; a list of them where there were several, such as one without load and one with it. `thirdwire prove` holds them against the plan; what is left out is not proved.",
    fields: &[
        field!(may "fitted", FieldKind::Name(&HOLDINGS), "what the box holds by then", "\"gfci\""),
        field!(may "hn", FieldKind::Quantity(Quantity::Volts), "volts from hot to neutral", "121"),
        field!(may "hg", FieldKind::Quantity(Quantity::Volts), "volts from hot to ground", "121"),
        field!(may "ng", FieldKind::Quantity(Quantity::Volts), "volts from neutral to ground", "0.1"),
        field!(may "hot_earth", FieldKind::Quantity(Quantity::Volts), "volts from the hot slot to an independent earth: without a ground, this and the next alone tell polarity", "\"119.5 V\""),
        field!(may "neutral_earth", FieldKind::Quantity(Quantity::Volts), "volts from the neutral slot to an independent earth", "\"400 mV\""),
        field!(may "ground_earth", FieldKind::Quantity(Quantity::Volts), "volts from the ground slot or box to an independent earth", "0"),
        field!(may "hot_box", FieldKind::Quantity(Quantity::Volts), "volts from hot to the metal box", "40"),
        field!(may "ground_ohms", FieldKind::Quantity(Quantity::Ohms), "impedance of the grounding path by a loaded test", "0.8"),
        field!(may "tester", FieldKind::Name(&TESTER_VERDICTS), "what a plug-in tester said, by its meaning", "\"open ground\""),
        field!(may "load", FieldKind::Name(&LOADS), "whether load was on", "\"heavy\""),
        field!(may "load_current", FieldKind::Quantity(Quantity::LoadCurrent), "what the load draws, measured or from its nameplate", "\"12.5 A\""),
        field!(may "load_at", FieldKind::Reference("a box"), "the box where the load was plugged in; this one if left out", "\"B2-1\""),
        field!(may "meter", FieldKind::Name(&METERS), "the kind of meter", "\"high-impedance\""),
        field!(may "ground", FieldKind::Name(&GROUNDS), "what was seen of a ground inside the box before it was closed", "\"connected\""),
        field!(may "tester_trips_gfci", FieldKind::Flag, "whether a plug-in tester's GFCI button opened a protective device", "false"),
        field!(may "test_button", FieldKind::Name(&BUTTON_TESTS), "what the device did when its own test button was pressed", "\"trips\""),
        field!(may "dead_when_tripped", FieldKind::Flag, "whether the opening went dead when the test button of the device that protects it was pressed", "true"),
        field!(may "labels", FieldKind::Names(&LABELS), "the labels that were seen; `[]` where somebody looked and there is none", "[\"No Equipment Ground\"]"),
        field!(may "box_work", FieldKind::Name(&BOXES_SEEN), "what was done with the box", "\"replaced\""),
        field!(may "box_volume", FieldKind::Quantity(Quantity::Volume), "the volume marked on the new box, or on the extension", "\"20 in3\""),
        field!(may "tamper_resistant", FieldKind::Flag, "whether the receptacle is marked as tamper-resistant", "true"),
        field!(may "weather_resistant", FieldKind::Flag, "whether the receptacle is marked as weather-resistant", "true"),
        field!(may "day", FieldKind::Day, "the day", "\"2026-11-20\""),
        field!(may "by", FieldKind::Text, "the initials of who read it", "\"MK\""),
        field!(may "note", FieldKind::Text, "a remark", "\"plate screws tight\""),
    ],
};

pub(crate) static CIRCUIT_SHAPE: Shape = Shape {
    title: "after = { … } of a circuit",
    name: "circuit_after",
    meaning: "What was seen at the panel end of a circuit after the work.",
    fields: &[
        field!(may "fitted", FieldKind::Name(&FITTED_AT_PANEL), "what is there by then", "\"gfci\""),
        field!(may "test_button", FieldKind::Name(&BUTTON_TESTS), "what it did when its own test button was pressed", "\"trips\""),
        field!(may "day", FieldKind::Day, "the day", "\"2026-11-20\""),
        field!(may "by", FieldKind::Text, "the initials of who looked", "\"MK\""),
    ],
};

pub(crate) static PANEL_SHAPE: Shape = Shape {
    title: "after = { … } of a panel",
    name: "panel_after",
    meaning: "What was seen of a panel after the work.",
    fields: &[
        field!(may "directory", FieldKind::Flag, "whether the circuit directory is written as the circuits are", "true"),
        field!(may "day", FieldKind::Day, "the day", "\"2026-11-20\""),
        field!(may "by", FieldKind::Text, "the initials of who looked", "\"MK\""),
    ],
};

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>, boxes: &Ids, defaults: &Defaults) -> AfterReading {
    tell_empty(notes, row);
    let read = found::readings(notes, row);
    let test_button = row.name(notes, "test_button", ButtonTest::from_name);
    let reading = Reading {
        meter: read.meter.or(defaults.meter),
        own_test_trips: match test_button {
            Some(ButtonTest::Trips) => Some(true),
            Some(ButtonTest::DoesNotTrip) => Some(false),
            Some(ButtonTest::NotTested) | None => None,
        },
        ..read
    };
    AfterReading {
        reading,
        load_current: row.load_current(notes, "load_current"),
        load_at: boxes.find(notes, row, "load_at", no_such_box::mistake).map(BoxIndex),
        fitted: row.name(notes, "fitted", Holding::from_name).filter(|fitted| *fitted != Holding::Unknown),
        test_button,
        dead_when_tripped: row.flag(notes, "dead_when_tripped"),
        labels: row.names(notes, "labels", LabelSeen::from_name),
        box_work: row.name(notes, "box_work", BoxSeen::from_name),
        box_volume: row.volume(notes, "box_volume"),
        tamper_resistant: row.flag(notes, "tamper_resistant"),
        weather_resistant: row.flag(notes, "weather_resistant"),
        taken: taken(notes, row, defaults),
        note: row.text(notes, "note"),
    }
}

pub(crate) fn of_circuit(notes: &mut Notes, circuit: &Row<'_>, defaults: &Defaults) -> Option<CircuitAfter> {
    let row = circuit.get("after").and_then(|_| circuit.inner(notes, "after"))?;
    tell_empty(notes, &row);
    Some(CircuitAfter {
        fitted: row.name(notes, "fitted", FittedAtPanel::from_name),
        test_button: row.name(notes, "test_button", ButtonTest::from_name),
        taken: taken(notes, &row, defaults),
    })
}

pub(crate) fn of_panel(notes: &mut Notes, panel: &Row<'_>, defaults: &Defaults) -> Option<PanelAfter> {
    let row = panel.get("after").and_then(|_| panel.inner(notes, "after"))?;
    tell_empty(notes, &row);
    Some(PanelAfter { directory: row.flag(notes, "directory"), taken: taken(notes, &row, defaults) })
}

fn tell_empty(notes: &mut Notes, row: &Row<'_>) {
    if row.table.entries.is_empty() {
        notes.push(reading_empty::mistake("after", row.span));
    }
}

fn taken(notes: &mut Notes, row: &Row<'_>, defaults: &Defaults) -> Taken {
    let day = row.day(notes, "day").or(defaults.taken.day);
    Taken { day, by: row.text(notes, "by").or_else(|| defaults.taken.by.clone()) }
}
