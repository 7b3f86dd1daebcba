//! Panels.

use crate::ids::Ids;
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::after;
use crate::tables::close_out::Defaults;
use crate::tables::job::PlanUnit;
use crate::tables::names::{OVERCURRENT, PROTECTIVE_BREAKERS};
use crate::tables::room;
use dwelling::{Overcurrent, Panel, ProtectiveBreaker};

pub(crate) static SHAPE: Shape = Shape {
    title: "[[panel]]",
    name: "panel",
    meaning: "An enclosure in which branch circuits originate.",
    fields: &[
        field!(must "id", FieldKind::Id, "its name in this survey", "\"main\""),
        field!(may "overcurrent", FieldKind::Name(&OVERCURRENT), "breakers or fuses", "\"breakers\""),
        field!(may "made_for_it", FieldKind::Names(&PROTECTIVE_BREAKERS), "the protective breakers made and listed for this panel; `[]` where there are none", "[\"gfci\", \"dual\"]"),
        field!(may "service", FieldKind::Flag, "whether it is the service equipment, and not a panel fed from it", "true"),
        field!(may "ground_bar", FieldKind::Flag, "whether it has a bar for equipment grounding conductors", "true"),
        field!(may "room_beside", FieldKind::Flag, "whether a box with a dead-front device fits beside it", "true"),
        field!(may "room", FieldKind::Reference("a room"), "the room it is in", "\"kitchen\""),
        field!(may "at", FieldKind::Point, "where it is on the plan", "[0.0, 4.5]"),
        field!(may "fault_current", FieldKind::Quantity(Quantity::FaultCurrent), "the current of a fault from hot to neutral in this panel: measured, or the least that the supplier states", "\"1500 A\""),
        field!(may "after", FieldKind::Table(&after::PANEL_SHAPE), "what was seen of it after the work", "{ directory = true }"),
    ],
};

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>, rooms: &Ids, units: PlanUnit, defaults: &Defaults) -> Panel {
    Panel {
        id: row.text_kept("id"),
        overcurrent: row.name(notes, "overcurrent", Overcurrent::from_name),
        made_for_it: row.names(notes, "made_for_it", ProtectiveBreaker::from_name),
        service: row.flag(notes, "service"),
        ground_bar: row.flag(notes, "ground_bar"),
        room_beside: row.flag(notes, "room_beside"),
        fault_current: row.fault_current(notes, "fault_current"),
        room: room::reference(notes, row, rooms),
        at: room::place(notes, row, units),
        after: after::of_panel(notes, row, defaults),
    }
}
