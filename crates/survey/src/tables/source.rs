//! Places at which a ground could be taken, besides boxes and panels.

use crate::mistakes::{from_entry_without_pipe, no_such_panel};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::job::PlanUnit;
use crate::tables::names::SOURCES;
use crate::tables::room;
use crate::tables::survey::AllIds;
use dwelling::{GroundSource, PanelIndex, SourceKind};

pub(crate) static SHAPE: Shape = Shape {
    title: "[[source]]",
    name: "source",
    meaning: "A place, besides boxes and panels, at which an equipment grounding conductor could be connected.",
    fields: &[
        field!(must "id", FieldKind::Id, "its name in this survey", "\"pipe\""),
        field!(must "kind", FieldKind::Name(&SOURCES), "what it is", "\"water-pipe\""),
        field!(may "panel", FieldKind::Reference("a panel"), "the panel it belongs to", "\"main\""),
        field!(may "from_entry", FieldKind::Quantity(Quantity::Distance), "for a water pipe: how far along it from where it enters the building", "\"3 ft\""),
        field!(may "verified", FieldKind::Flag, "whether someone checked that its path to earth and to the service is whole", "true"),
        field!(may "gauge", FieldKind::Gauge, "the size of the conductor there", "6"),
        field!(may "room", FieldKind::Reference("a room"), "the room it is in", "\"basement\""),
        field!(may "at", FieldKind::Point, "where it is on the plan", "[2.0, 11.5]"),
    ],
};

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>, ids: &AllIds, units: PlanUnit) -> GroundSource {
    let kind = row.name(notes, "kind", SourceKind::from_name);
    let from_entry = row.distance(notes, "from_entry");
    if let Some(kind) = kind.filter(|kind| from_entry.is_some() && *kind != SourceKind::WaterPipe) {
        notes.push(from_entry_without_pipe::mistake(kind.name(), row.place_of("from_entry"), row.place_of("kind")));
    }
    GroundSource {
        id: row.text_kept("id"),
        // A kind that is left out or misspelt was reported.
        kind: kind.unwrap_or(SourceKind::OtherMetal),
        panel: ids.panels.find(notes, row, "panel", no_such_panel::mistake).map(PanelIndex),
        from_entry,
        verified: row.flag(notes, "verified"),
        gauge: row.gauge(notes, "gauge"),
        room: room::reference(notes, row, &ids.rooms),
        at: room::place(notes, row, units),
    }
}
