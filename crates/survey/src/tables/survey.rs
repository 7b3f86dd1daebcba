//! The file as a whole.

use crate::diagnostic::Span;
use crate::ids::Ids;
use crate::mistakes::{format_missing, format_unknown, no_boxes, no_rooms};
use crate::notes::Notes;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::{circuit, close_out, dead_when, device_box, job, panel, room, route, source};
use crate::value::Table;
use dwelling::{Dwelling, Job};

/// The number of the survey format that is read.
pub(crate) const FORMAT: i128 = 1;

pub(crate) static SHAPE: Shape = Shape {
    title: "the file",
    name: "survey",
    meaning: "What was found in one dwelling.",
    fields: &[
        field!(own "format", FieldKind::Format, "the number of this format", "1"),
        field!(must "job", FieldKind::Table(&job::SHAPE), "the job as a whole", "{ name = \"Larch Street bungalow\" }"),
        field!(may "panel", FieldKind::Tables(&panel::SHAPE), "the panels", "[{ id = \"main\" }]"),
        field!(may "circuit", FieldKind::Tables(&circuit::SHAPE), "the branch circuits", "[{ id = \"3\", panel = \"main\" }]"),
        field!(own "room", FieldKind::Tables(&room::SHAPE), "the rooms, in the order they are walked", "[{ id = \"bed-2\" }]"),
        field!(own "box", FieldKind::Tables(&device_box::SHAPE), "the boxes, in the order they were surveyed", "[{ id = \"B2-1\", room = \"bed-2\" }]"),
        field!(may "source", FieldKind::Tables(&source::SHAPE), "places where a ground could be taken, besides boxes and panels", "[{ id = \"pipe\", kind = \"water-pipe\" }]"),
        field!(may "route", FieldKind::Tables(&route::SHAPE), "ways along which a conductor or cable could be brought", "[{ from = \"main\", to = \"B2-1\", kind = \"egc\", length = \"40 ft\" }]"),
        field!(may "dead_when", FieldKind::Tables(&dead_when::SHAPE), "what went dead when power was taken away at one place", "[{ opened = \"K-1\", dead = [\"K-2\"], alive = [\"L-1\"] }]"),
        field!(may "close_out", FieldKind::Table(&close_out::SHAPE), "what holds for the work that was carried out, as a whole", "{ day = \"2026-11-20\", by = \"MK\" }"),
    ],
};

/// The rows that a dwelling was made of, each list in step with the dwelling's own.
pub(crate) struct Rows<'a> {
    pub(crate) circuits: Vec<Row<'a>>,
    pub(crate) rooms: Vec<Row<'a>>,
    pub(crate) boxes: Vec<Row<'a>>,
}

/// The ids of everything that something else refers to.
pub(crate) struct AllIds {
    pub(crate) panels: Ids,
    pub(crate) circuits: Ids,
    pub(crate) rooms: Ids,
    pub(crate) boxes: Ids,
    pub(crate) sources: Ids,
}

/// The draft of the dwelling. Where an error was reported it may hold positions of what is not there.
pub(crate) fn read<'a>(notes: &mut Notes, table: &'a Table, start: Span) -> (Dwelling, Rows<'a>) {
    let row = Row::new(notes, &SHAPE, table, start);
    match row.whole(notes, "format") {
        Some(FORMAT) => {}
        Some(other) => notes.push(format_unknown::mistake(SHAPE.file(), other, FORMAT, row.place_of("format"))),
        None if table.entry("format").is_none() => notes.push(format_missing::mistake(SHAPE.file(), FORMAT, start)),
        None => {}
    }
    let job_row = if table.entry("job").is_some() { row.inner(notes, "job") } else { None };
    let (job, units) = job_row.map_or((Job::named(String::new()), job::PlanUnit::Feet), |row| job::read(notes, &row));
    let (close_out, defaults) = close_out::read(notes, &row);
    let panels = row.inners(notes, "panel");
    let circuits = row.inners(notes, "circuit");
    let rooms = row.inners(notes, "room");
    let boxes = row.inners(notes, "box");
    let sources = row.inners(notes, "source");
    let routes = row.inners(notes, "route");
    let observations = row.inners(notes, "dead_when");
    if rooms.is_empty() && is_left_empty(table, "room") {
        notes.push(no_rooms::mistake(row.place_of("room")));
    }
    if boxes.is_empty() && is_left_empty(table, "box") {
        notes.push(no_boxes::mistake(row.place_of("box")));
    }
    let ids = AllIds {
        panels: Ids::of(notes, "panel", &panels),
        circuits: Ids::of(notes, "circuit", &circuits),
        rooms: Ids::of(notes, "room", &rooms),
        boxes: Ids::of(notes, "box", &boxes),
        sources: Ids::of(notes, "source", &sources),
    };
    // What feeds a box and where a route ends is told by id alone.
    ids.boxes.report_clashes(notes, &ids.panels);
    ids.boxes.report_clashes(notes, &ids.sources);
    ids.sources.report_clashes(notes, &ids.panels);
    let mut dwelling = Dwelling {
        job,
        panels: panels.iter().map(|row| panel::read(notes, row, &ids.rooms, units, &defaults)).collect(),
        circuits: Vec::new(),
        rooms: rooms.iter().map(|row| room::read(notes, row, units)).collect(),
        boxes: Vec::new(),
        sources: sources.iter().map(|row| source::read(notes, row, &ids, units)).collect(),
        routes: Vec::new(),
        dead_when: Vec::new(),
        close_out,
    };
    dwelling.circuits = circuit::read_all(notes, &circuits, &ids, &mut dwelling.panels, &defaults);
    let around = device_box::Around { ids: &ids, circuits: &dwelling.circuits, units, defaults: &defaults };
    dwelling.boxes = boxes.iter().map(|row| device_box::read(notes, row, &around)).collect();
    dwelling.routes = route::read_all(notes, &routes, &ids);
    dead_when::read_all(notes, &observations, &ids, &mut dwelling, &boxes);
    (dwelling, Rows { circuits, rooms, boxes })
}

/// Whether a list is left out or empty, rather than something else than a list.
fn is_left_empty(table: &Table, key: &str) -> bool {
    table
        .entry(key)
        .is_none_or(|entry| matches!(&entry.value.kind, crate::value::ValueKind::List(items) if items.is_empty()))
}
