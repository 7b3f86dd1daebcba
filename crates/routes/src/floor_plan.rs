//! The floor plan: rooms as drawn, the walls between them, and the spaces above and below.

use crate::geometry::{FOOT, INCH, Outline, Side, Spot, apart};
use crate::graph::{Layer, Unbuilt, UnbuiltOf};
use dwelling::{Dwelling, Room, RoomIndex, RoomUse, Space, WallFinish};

/// Two outlines this near are of one wall. Common practice, no source: outlines are of walls, and walls have a thickness.
pub(crate) const ONE_WALL: i64 = FOOT;
/// Walls of two storeys that stand this near on the plan stand over one another. Common practice, no source.
const ONE_OVER_ANOTHER: i64 = 6 * INCH;
/// The height of a ceiling that nobody measured. Common practice, no source.
const CEILING: i64 = 8 * FOOT;

/// A room that is drawn.
pub(crate) struct DrawnRoom<'a> {
    pub(crate) index: RoomIndex,
    pub(crate) room: &'a Room,
    pub(crate) floor: i8,
    pub(crate) outline: Outline,
}

impl DrawnRoom<'_> {
    /// The height of its ceiling.
    pub(crate) fn ceiling(&self) -> i64 {
        self.room.ceiling.map_or(CEILING, |ceiling| ceiling.as_micrometres())
    }

    /// Whether it is itself a space where what is above or below the storeys stands open.
    pub(crate) fn is_open(&self) -> bool {
        matches!(self.room.room_use, RoomUse::UnfinishedBasement | RoomUse::CrawlSpace | RoomUse::Attic)
    }

    /// Whether its walls have no bays.
    pub(crate) fn is_masonry(&self) -> bool {
        self.room.walls == Some(WallFinish::Masonry)
    }

    /// Whether the studs of its walls are bare.
    pub(crate) fn has_bare_studs(&self) -> bool {
        self.room.walls == Some(WallFinish::Open)
    }

    /// What a way through its ceiling or floor leads into.
    pub(crate) fn opens_to(&self, layer: Layer) -> bool {
        match layer {
            Layer::Attic => self.room.above == Some(Space::Attic),
            Layer::CrawlSpace => self.room.below == Some(Space::CrawlSpace),
            Layer::Basement => self.room.below == Some(Space::Basement),
            Layer::Wall | Layer::Surface => false,
        }
    }

    /// The space below it that one can work in.
    pub(crate) fn space_below(&self) -> Option<Layer> {
        [Layer::CrawlSpace, Layer::Basement].into_iter().find(|layer| self.opens_to(*layer))
    }
}

/// A stretch of wall behind a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Wall {
    /// The position of the drawn room.
    pub(crate) room: usize,
    /// The side of its outline.
    pub(crate) side: usize,
    /// The line of the side.
    pub(crate) line: Side,
    /// The point on the side.
    pub(crate) on_it: Spot,
    /// How far along the whole outline that is.
    pub(crate) along: i64,
    /// Whether no other room lies behind it.
    pub(crate) outside: bool,
}

/// The rooms that are drawn.
pub(crate) struct FloorPlan<'a> {
    pub(crate) rooms: Vec<DrawnRoom<'a>>,
    /// By room: its position among those drawn.
    drawn: Vec<Option<usize>>,
}

impl<'a> FloorPlan<'a> {
    /// The floor plan of a dwelling; what of it is not known is told.
    pub(crate) fn of(dwelling: &'a Dwelling, unbuilt: &mut Vec<Unbuilt>) -> Self {
        let mut plan = Self { rooms: Vec::new(), drawn: vec![None; dwelling.rooms.len()] };
        for (index, room) in dwelling.rooms.iter().enumerate() {
            let Some(outline) = Outline::of(&room.outline) else { continue };
            let index = RoomIndex(index);
            let Some(floor) = room.floor else {
                let why = "which floor it lies on is not known".to_owned();
                unbuilt.push(Unbuilt { of: UnbuiltOf::Room(index), why });
                continue;
            };
            plan.drawn[index.0] = Some(plan.rooms.len());
            plan.rooms.push(DrawnRoom { index, room, floor, outline });
        }
        for room in &plan.rooms {
            let missing = match (room.room.above, room.room.below) {
                _ if room.room.room_use == RoomUse::Outdoors => continue,
                (None, None) => "what lies above and below it is not known",
                (None, Some(_)) => "what lies above it is not known",
                (Some(_), None) => "what lies below it is not known",
                (Some(_), Some(_)) => continue,
            };
            unbuilt.push(Unbuilt { of: UnbuiltOf::Room(room.index), why: missing.to_owned() });
        }
        plan
    }

    /// The position among the drawn rooms of a room that is drawn.
    pub(crate) fn drawn(&self, room: RoomIndex) -> Option<usize> {
        self.drawn.get(room.0).copied().flatten()
    }

    /// The drawn rooms of a floor.
    pub(crate) fn on_floor(&self, floor: i8) -> impl Iterator<Item = &DrawnRoom<'a>> {
        self.rooms.iter().filter(move |room| room.floor == floor)
    }

    /// The wall of a room behind a point.
    pub(crate) fn wall_behind(&self, room: usize, at: Spot) -> Option<Wall> {
        let drawn = self.rooms.get(room)?;
        let (side, on_it, along) = drawn.outline.side_near(at, ONE_WALL)?;
        let line = drawn.outline.sides().nth(side)?;
        let behind = |other: &DrawnRoom| {
            other.index != drawn.index
                && other.room.room_use != RoomUse::Outdoors
                && other.outline.is_near(on_it, ONE_WALL)
                && other.outline.sides().any(|far| far.is_along(line) && apart(far.nearest(on_it).0, on_it) <= ONE_WALL)
        };
        let outside = !self.on_floor(drawn.floor).any(behind);
        Some(Wall { room, side, line, on_it, along: drawn.outline.length_before(side) + along, outside })
    }

    /// A wall of the next storey up (1) or down (-1) that stands over or under a point, of a room that suits.
    pub(crate) fn wall_in_line(
        &self,
        floor: i8,
        storeys: i8,
        at: Spot,
        suits: impl Fn(&DrawnRoom) -> bool,
    ) -> Option<Wall> {
        let floor = floor.checked_add(storeys)?;
        let stands = |(position, room): (usize, &DrawnRoom)| {
            if room.floor != floor || room.room.room_use == RoomUse::Outdoors || !suits(room) {
                return None;
            }
            let wall = self.wall_behind(position, at)?;
            (apart(wall.on_it, at) <= ONE_OVER_ANOTHER).then_some((wall.outside, position, wall))
        };
        let found = self.rooms.iter().enumerate().filter_map(stands);
        found.min_by_key(|(outside, position, _)| (*outside, *position)).map(|(_, _, wall)| wall)
    }

    /// The corner of a way with one corner between two points that stays within what opens to a space; none for a way
    /// that is straight.
    pub(crate) fn open_way(&self, layer: Layer, floor: i8, from: Spot, to: Spot) -> Option<Option<Spot>> {
        let open = |a, b| self.is_open_way(layer, floor, a, b);
        if from.0 == to.0 || from.1 == to.1 {
            return open(from, to).then_some(None);
        }
        let corners = [(to.0, from.1), (from.0, to.1)];
        corners.into_iter().find(|corner| open(from, *corner) && open(*corner, to)).map(Some)
    }

    /// Whether a straight way along one axis stays within what opens to a space, but for the thickness of walls.
    pub(crate) fn is_open_way(&self, layer: Layer, floor: i8, from: Spot, to: Spot) -> bool {
        let mut cuts = Vec::new();
        for room in self.on_floor(floor) {
            room.outline.crossings(from, to, &mut cuts);
        }
        let level = from.1 == to.1;
        let ends = if level { [from.0, to.0] } else { [from.1, to.1] };
        cuts.extend(ends);
        cuts.sort_unstable();
        cuts.dedup();
        cuts.windows(2).all(|piece| {
            let middle = piece[0] + (piece[1] - piece[0]) / 2;
            let middle = if level { (middle, from.1) } else { (from.0, middle) };
            self.is_open_at(layer, floor, middle, piece[1] - piece[0])
        }) && self.is_open_at(layer, floor, from, 0)
    }

    /// Whether a piece of this length round a point lies within what opens to a space, or within a wall.
    fn is_open_at(&self, layer: Layer, floor: i8, at: Spot, length: i64) -> bool {
        let mut drawn = false;
        for room in self.on_floor(floor).filter(|room| room.outline.holds(at)) {
            if room.opens_to(layer) {
                return true;
            }
            drawn = true;
        }
        !drawn && length <= ONE_WALL
    }

    /// Whether a point lies under or over a drawn room that opens to a space.
    pub(crate) fn opens_at(&self, layer: Layer, floor: i8, at: Spot) -> bool {
        self.on_floor(floor).any(|room| room.opens_to(layer) && room.outline.holds(at))
    }
}
