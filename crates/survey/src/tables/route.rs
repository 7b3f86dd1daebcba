//! Routes along which a conductor or cable could be brought.

use crate::ids::Ids;
use crate::mistakes::{no_such_place, route_end_not_a_box, route_to_itself, route_without_length};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::{Row, text_of};
use crate::shape::{FieldKind, Shape, field};
use crate::tables::names::ROUTES;
use crate::tables::survey::AllIds;
use dwelling::{BoxIndex, PanelIndex, Route, RouteEnd, RouteKind, SourceIndex};
use electrical::Length;
use std::collections::BTreeMap;

pub(crate) static SHAPE: Shape = Shape {
    title: "[[route]]",
    name: "route",
    meaning: "A way between two places along which a grounding conductor or a new cable could be brought.",
    fields: &[
        field!(may "id", FieldKind::Id, "its name; made from its ends if left out", "\"R1\""),
        field!(must "from", FieldKind::Reference("a box, panel or source"), "where it begins", "\"main\""),
        field!(must "to", FieldKind::Reference("a box"), "the box to be grounded", "\"B2-1\""),
        field!(must "kind", FieldKind::Name(&ROUTES), "what would be brought along it", "\"egc\""),
        field!(open "length", FieldKind::Quantity(Quantity::Length), "its length", "\"40 ft\""),
        field!(may "minutes", FieldKind::Quantity(Quantity::Minutes), "labour; a number alone is minutes", "\"1.5 h\""),
        field!(may "openings", FieldKind::Count(0, 100), "how many openings in finished surfaces it costs; 0 if left out", "2"),
        field!(may "closed", FieldKind::Flag, "whether nothing can be brought along here: the tool then builds no such way either", "false"),
        field!(may "note", FieldKind::Text, "why it is easy or hard", "\"through the crawl space\""),
    ],
};

/// The routes; one that lacks what it must have was reported and is left out.
pub(crate) fn read_all(notes: &mut Notes, rows: &[Row<'_>], ids: &AllIds) -> Vec<Route> {
    // The ids of routes are checked for repeats; nothing refers to them.
    Ids::of(notes, "route", rows);
    let mut made: BTreeMap<String, usize> = BTreeMap::new();
    let mut routes: Vec<Route> = Vec::new();
    for row in rows {
        let Some(mut route) = read(notes, row, ids) else { continue };
        if route.id.is_empty() {
            // Ids hold no spaces, so that a name made here never meets one that was given.
            let name = format!("{} to {}", row.text_kept("from"), row.text_kept("to"));
            let times = made.entry(name.clone()).or_insert(0);
            *times += 1;
            route.id = if *times == 1 { name } else { format!("{name} ({times})") };
        }
        routes.push(route);
    }
    routes
}

fn read(notes: &mut Notes, row: &Row<'_>, ids: &AllIds) -> Option<Route> {
    let from = end(notes, row, "from", ids);
    let to = end(notes, row, "to", ids);
    if let (Some(from), Some(to)) = (from, to)
        && from == to
    {
        notes.push(route_to_itself::mistake(&row.text_kept("to"), row.place_of("to"), row.place_of("from")));
    } else if let Some(end @ (RouteEnd::Panel(_) | RouteEnd::Source(_))) = to {
        let what = if matches!(end, RouteEnd::Panel(_)) { "a panel" } else { "a ground source" };
        notes.push(route_end_not_a_box::mistake(&row.text_kept("to"), what, row.place_of("to")));
    }
    let kind = row.name(notes, "kind", RouteKind::from_name);
    let closed = row.flag(notes, "closed").unwrap_or(false);
    let length: Option<Length> = row.length(notes, "length");
    if row.get("length").is_none() && !closed {
        notes.push(route_without_length::mistake(row.span));
    }
    let length = length.or(closed.then_some(Length::ZERO));
    let minutes = row.minutes(notes, "minutes");
    let openings = row.count(notes, "openings").unwrap_or(0);
    let note = row.text(notes, "note");
    let id = if row.get("id").is_some() { row.text_kept("id") } else { String::new() };
    Some(Route { id, from: from?, to: to?, kind: kind?, length: length?, minutes, openings, note, closed })
}

fn end(notes: &mut Notes, row: &Row<'_>, key: &str, ids: &AllIds) -> Option<RouteEnd> {
    let (field, value) = row.get(key)?;
    let id = text_of(notes, field, value)?;
    let found = ids.boxes.index(id).map(|index| RouteEnd::Box(BoxIndex(index)));
    let found = found.or_else(|| ids.panels.index(id).map(|index| RouteEnd::Panel(PanelIndex(index))));
    let found = found.or_else(|| ids.sources.index(id).map(|index| RouteEnd::Source(SourceIndex(index))));
    if found.is_none() {
        let places = || ids.boxes.names().chain(ids.panels.names()).chain(ids.sources.names());
        let nearest = notes.nearest(id, places()).map(str::to_string);
        notes.push(no_such_place::mistake(key, id, nearest.as_deref(), value.span));
    }
    found
}
