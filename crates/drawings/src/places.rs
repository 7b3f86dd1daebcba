//! Where things are: on which floor, and at which point of its plan. What the survey does not state has no place.

use dwelling::{BoxIndex, Dwelling, PanelIndex, Point, RoomIndex, RouteEnd, SourceIndex};
use std::collections::BTreeSet;

/// A floor by its number; `None` is of rooms whose floor is not stated.
pub(crate) type FloorNumber = Option<i8>;

/// A place on the plan of a floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Place {
    pub(crate) floor: FloorNumber,
    pub(crate) at: Point,
}

/// The floors of a dwelling from the lowest, those of rooms whose floor is not stated last.
pub(crate) fn floors(dwelling: &Dwelling) -> Vec<FloorNumber> {
    let of_boxes = dwelling.boxes.iter().map(|device_box| device_box.room);
    let floors: BTreeSet<FloorNumber> = of_boxes
        .map(|room| dwelling.room(room).floor)
        .chain(dwelling.rooms.iter().filter(|room| !room.outline.is_empty()).map(|room| room.floor))
        .collect();
    let stated = floors.iter().filter(|floor| floor.is_some());
    stated.chain(floors.iter().filter(|floor| floor.is_none())).copied().collect()
}

/// The floor of a box.
pub(crate) fn floor_of(dwelling: &Dwelling, at: BoxIndex) -> FloorNumber {
    dwelling.room(dwelling.device_box(at).room).floor
}

/// Where a box is.
pub(crate) fn place_of_box(dwelling: &Dwelling, index: BoxIndex) -> Option<Place> {
    dwelling.device_box(index).at.map(|at| Place { floor: floor_of(dwelling, index), at })
}

/// Where a panel is.
pub(crate) fn place_of_panel(dwelling: &Dwelling, index: PanelIndex) -> Option<Place> {
    let panel = dwelling.panel(index);
    in_room(dwelling, panel.room, panel.at)
}

/// Where a ground source is.
pub(crate) fn place_of_source(dwelling: &Dwelling, index: SourceIndex) -> Option<Place> {
    let source = dwelling.source(index);
    in_room(dwelling, source.room, source.at)
}

/// A point in a room; without its room, a point is on no floor.
fn in_room(dwelling: &Dwelling, room: Option<RoomIndex>, at: Option<Point>) -> Option<Place> {
    Some(Place { floor: dwelling.room(room?).floor, at: at? })
}

/// The floor of an end of a route, where known; that of a box is known without its position.
pub(crate) fn floor_of_end(dwelling: &Dwelling, end: RouteEnd) -> Option<FloorNumber> {
    match end {
        RouteEnd::Box(at) => Some(floor_of(dwelling, at)),
        end => place_of_end(dwelling, end).map(|place| place.floor),
    }
}

/// Where an end of a route is.
pub(crate) fn place_of_end(dwelling: &Dwelling, end: RouteEnd) -> Option<Place> {
    match end {
        RouteEnd::Box(at) => place_of_box(dwelling, at),
        RouteEnd::Panel(at) => place_of_panel(dwelling, at),
        RouteEnd::Source(at) => place_of_source(dwelling, at),
    }
}
