//! Where boxes, panels and ground sources stand: in which room, in which wall, how high.

use crate::floor_plan::{DrawnRoom, FloorPlan, Wall};
use crate::geometry::{FOOT, INCH, Spot, spot};
use crate::graph::{PlaceKind, Unbuilt, UnbuiltOf};
use dwelling::{BoxIndex, Dwelling, Holding, PanelIndex, Point, RoomIndex, SourceIndex};

/// The height of a box that nobody measured. Common practice, no source.
const BOX_HEIGHT: i64 = 16 * INCH;
/// The height of a switch box that nobody measured. Common practice, no source.
const SWITCH_HEIGHT: i64 = 48 * INCH;
/// The height of a panel's middle, or of a ground source. Common practice, no source.
const PANEL_HEIGHT: i64 = 5 * FOOT;
/// A box this near to the ceiling is in it.
const AT_CEILING: i64 = FOOT;

/// Something that stands on the plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Stand {
    pub(crate) is: PlaceKind,
    /// The position of its room among the drawn ones.
    pub(crate) room: usize,
    /// Where it is drawn.
    pub(crate) at: Spot,
    pub(crate) height: i64,
    pub(crate) seat: Seat,
}

/// What something stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Seat {
    /// A wall with a bay behind its finish.
    Wall(Wall),
    /// A wall without a bay: brick, block or stone.
    Masonry(Wall),
    /// The ceiling.
    Ceiling,
    /// A place where walls and ceiling stand open.
    Open,
}

impl Stand {
    /// The wall it is at.
    pub(crate) fn wall(&self) -> Option<Wall> {
        match self.seat {
            Seat::Wall(wall) | Seat::Masonry(wall) => Some(wall),
            Seat::Ceiling | Seat::Open => None,
        }
    }

    /// The wall it is in, where something can be fished behind its finish.
    pub(crate) fn bay(&self) -> Option<Wall> {
        match self.seat {
            Seat::Wall(wall) => Some(wall),
            _ => None,
        }
    }
}

/// Everything that stands on the plan: boxes, then panels, then sources; what does not is told.
pub(crate) fn stands(dwelling: &Dwelling, plan: &FloorPlan, unbuilt: &mut Vec<Unbuilt>) -> Vec<Stand> {
    let mut found = Vec::new();
    let mut add =
        |is, of, room: Option<RoomIndex>, at, height, in_ceiling| match stand(plan, is, room, at, height, in_ceiling) {
            Ok(stand) => found.push(stand),
            Err(why) => unbuilt.push(Unbuilt { of, why }),
        };
    for (index, device_box) in dwelling.boxes.iter().enumerate() {
        let index = BoxIndex(index);
        let height = device_box.height.map(|height| height.as_micrometres());
        let usual = if device_box.holds == Holding::Switch { SWITCH_HEIGHT } else { BOX_HEIGHT };
        let luminaire = device_box.holds == Holding::Luminaire;
        let (is, of) = (PlaceKind::Box(index), UnbuiltOf::Box(index));
        add(is, of, Some(device_box.room), device_box.at, height.unwrap_or(usual), luminaire && height.is_none());
    }
    for (index, panel) in dwelling.panels.iter().enumerate() {
        let index = PanelIndex(index);
        let (is, of) = (PlaceKind::Panel(index), UnbuiltOf::Panel(index));
        add(is, of, panel.room, panel.at, PANEL_HEIGHT, false);
    }
    for (index, source) in dwelling.sources.iter().enumerate() {
        let index = SourceIndex(index);
        let (is, of) = (PlaceKind::Source(index), UnbuiltOf::Source(index));
        add(is, of, source.room, source.at, PANEL_HEIGHT, false);
    }
    found
}

fn stand(
    plan: &FloorPlan,
    is: PlaceKind,
    room: Option<RoomIndex>,
    at: Option<Point>,
    height: i64,
    in_ceiling: bool,
) -> Result<Stand, String> {
    let at = at.and_then(spot).ok_or("its position is not on the plan")?;
    let room = room.ok_or("the room it is in is not known")?;
    let room = plan.drawn(room).ok_or("its room is not drawn on the plan")?;
    let drawn = &plan.rooms[room];
    let seat = seat(plan, drawn, room, at, height, in_ceiling)?;
    Ok(Stand { is, room, at, height, seat })
}

fn seat(
    plan: &FloorPlan,
    drawn: &DrawnRoom,
    room: usize,
    at: Spot,
    height: i64,
    in_ceiling: bool,
) -> Result<Seat, String> {
    if drawn.is_open() {
        return Ok(Seat::Open);
    }
    let wall = plan.wall_behind(room, at);
    if height.saturating_add(AT_CEILING) >= drawn.ceiling() || (in_ceiling && wall.is_none()) {
        return Ok(Seat::Ceiling);
    }
    let wall = wall.ok_or("it is in no wall of the plan")?;
    Ok(if drawn.is_masonry() { Seat::Masonry(wall) } else { Seat::Wall(wall) })
}
