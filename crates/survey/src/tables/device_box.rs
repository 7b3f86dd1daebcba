//! Boxes: the openings of the dwelling.

use crate::ids::OWN_PANEL;
use crate::mistakes::{no_such_circuit, no_such_feed, no_such_room, panel_without_circuit};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::{Row, text_of};
use crate::shape::{FieldKind, Shape, field};
use crate::tables::close_out::Defaults;
use crate::tables::job::PlanUnit;
use crate::tables::names::{EQUIPMENT, HOLDINGS, WANTS, WETNESS};
use crate::tables::survey::AllIds;
use crate::tables::{NOT_FOUND, after, body, found, near_water, room, run};
use dwelling::{
    BoxIndex, Circuit, CircuitIndex, DeviceBox, Equipment, Feed, Holding, PanelIndex, RoomIndex, Run, Want, Wetness,
};

pub(crate) static SHAPE: Shape = Shape {
    title: "[[box]]",
    name: "box",
    meaning: "A box and the opening in front of it.",
    fields: &[
        field!(must "id", FieldKind::Id, "its name in this survey", "\"B2-1\""),
        field!(must "room", FieldKind::Reference("a room"), "the room it is in", "\"bed-2\""),
        field!(may "circuit", FieldKind::Reference("a circuit"), "the circuit its device is on", "\"3\""),
        field!(may "fed_by", FieldKind::Reference("a box or panel, or `\"panel\"` for the home run,"), "what feeds it: `\"panel\"` is its circuit's panel, or the only one", "\"B2-3\""),
        field!(may "run", FieldKind::Table(&run::SHAPE), "the run that feeds it", "{ length = \"14 ft\" }"),
        field!(may "at", FieldKind::Point, "where it is on the plan", "[11.0, 4.5]"),
        field!(may "height", FieldKind::Quantity(Quantity::Height), "how high its centre is above the floor", "\"16 in\""),
        field!(may "body", FieldKind::Table(&body::SHAPE), "the enclosure", "{ metal = true, size = \"3x2x2-1/2\" }"),
        field!(may "holds", FieldKind::Name(&HOLDINGS), "what it holds", "\"three-slot\""),
        field!(may "cables_in_box", FieldKind::Count(0, 40), "how many cables enter, where counted", "2"),
        field!(may "found", FieldKind::OneOrMore(&found::SHAPE), "readings and sightings, in the order taken", "{ hn = 121, hg = 38, ng = 12 }"),
        field!(may "after", FieldKind::OneOrMore(&after::SHAPE), "readings and sightings after the work, in the order taken", "{ fitted = \"gfci\", test_button = \"trips\" }"),
        field!(may "serves", FieldKind::Names(&EQUIPMENT), "what is plugged in", "[\"computer\"]"),
        field!(may "want", FieldKind::Name(&WANTS), "what the owner wants here; `leave` if left out", "\"three-slot\""),
        field!(may "countertop", FieldKind::Flag, "in a kitchen: whether it serves a countertop", "true"),
        field!(may "sink", FieldKind::DistanceOrTable(&near_water::SHAPE), "how far it is from the nearest sink", "\"4 ft\""),
        field!(may "tub", FieldKind::DistanceOrTable(&near_water::SHAPE), "how far it is from the nearest tub or shower stall", "{ distance = \"2 ft\", passes = [\"doorway\"] }"),
        field!(may "wetness", FieldKind::Name(&WETNESS), "how wet its place is, where the room does not say", "\"damp\""),
        field!(may "dedicated_space", FieldKind::Flag, "whether it serves one appliance, not easily moved, in a space of its own", "true"),
        field!(may "readily_accessible", FieldKind::Flag, "whether it can be reached quickly, nothing to move or climb over", "true"),
        field!(may "do_not_disturb", FieldKind::Flag, "whether its insulation is so brittle that it must be left alone", "true"),
        field!(may "note", FieldKind::Text, "a remark", "\"behind the bed\""),
    ],
};

/// What of a survey stands outside its boxes and is needed to read them.
pub(crate) struct Around<'a> {
    pub(crate) ids: &'a AllIds,
    pub(crate) circuits: &'a [Circuit],
    pub(crate) units: PlanUnit,
    pub(crate) defaults: &'a Defaults,
}

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>, around: &Around<'_>) -> DeviceBox {
    let Around { ids, circuits, units, defaults } = *around;
    // A survey without any room was reported as such; to miss one for each box would add nothing.
    let rooms = ids.rooms.names().next().map(|_| &ids.rooms);
    let room = rooms.and_then(|rooms| rooms.find(notes, row, "room", no_such_room::mistake));
    let circuit = ids.circuits.find(notes, row, "circuit", no_such_circuit::mistake).map(CircuitIndex);
    let fed_by = feed(notes, row, ids, circuit.and_then(|circuit| circuits.get(circuit.0)));
    let run_row = row.get("run").and_then(|_| row.inner(notes, "run"));
    let body_row = row.get("body").and_then(|_| row.inner(notes, "body"));
    DeviceBox {
        id: row.text_kept("id"),
        room: RoomIndex(room.unwrap_or(NOT_FOUND)),
        circuit,
        fed_by,
        feed_assumed: false,
        run: run_row.map_or_else(Run::default, |row| run::read(notes, &row)),
        at: room::place(notes, row, units),
        height: row.height(notes, "height"),
        body: body_row.map_or_else(body::unknown, |row| body::read(notes, &row)),
        holds: row.name(notes, "holds", Holding::from_name).unwrap_or(Holding::Unknown),
        cables_in_box: row.count(notes, "cables_in_box"),
        found: row.inners(notes, "found").iter().map(|row| found::read(notes, row)).collect(),
        after: row.inners(notes, "after").iter().map(|row| after::read(notes, row, &ids.boxes, defaults)).collect(),
        serves: row.names(notes, "serves", Equipment::from_name).unwrap_or_default(),
        want: row.name(notes, "want", Want::from_name).unwrap_or(Want::Leave),
        countertop: row.flag(notes, "countertop"),
        sink: near_water::read(notes, row, "sink"),
        tub: near_water::read(notes, row, "tub"),
        wetness: row.name(notes, "wetness", Wetness::from_name),
        dedicated_space: row.flag(notes, "dedicated_space"),
        readily_accessible: row.flag(notes, "readily_accessible"),
        do_not_disturb: row.flag(notes, "do_not_disturb").unwrap_or(false),
        note: row.text(notes, "note"),
    }
}

/// What feeds a box: a box, a panel by its id, or the panel of its own circuit.
fn feed(notes: &mut Notes, row: &Row<'_>, ids: &AllIds, circuit: Option<&Circuit>) -> Option<Feed> {
    let (field, value) = row.get("fed_by")?;
    let id = text_of(notes, field, value)?;
    if id == OWN_PANEL {
        if row.get("circuit").is_none() {
            // Where there is one panel only, nobody needs to know the circuit to know the panel.
            if let Some(index) = ids.panels.only_one() {
                return Some(Feed::Panel(PanelIndex(index)));
            }
            notes.push(panel_without_circuit::mistake(value.span, row.span));
        }
        return circuit.filter(|circuit| circuit.panel.0 != NOT_FOUND).map(|circuit| Feed::Panel(circuit.panel));
    }
    let found = ids.boxes.index(id).map(|index| Feed::Box(BoxIndex(index)));
    let found = found.or_else(|| ids.panels.index(id).map(|index| Feed::Panel(PanelIndex(index))));
    if found.is_none() {
        let places = || ids.boxes.names().chain(ids.panels.names()).chain([OWN_PANEL]);
        let nearest = notes.nearest(id, places()).map(str::to_string);
        notes.push(no_such_feed::mistake(id, nearest.as_deref(), value.span));
    }
    found
}
