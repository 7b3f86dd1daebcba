//! Ways up and down: from a place in a wall, a ceiling or the open to the attic above or the space below.

use crate::floor_plan::{DrawnRoom, FloorPlan, Wall};
use crate::geometry::{FOOT, Spot, point};
use crate::graph::{Difficulty, Layer, LinePoint, Work};
use crate::standing::{Seat, Stand};
use dwelling::{RoomIndex, RoomUse, Space};
use electrical::Length;

/// How much conductor it takes past a plate to where it can be led on. Common practice, no source.
const PAST_PLATE: i64 = FOOT;

/// A space to work in: the attic over the rooms of a floor, or what is under them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Zone {
    pub(crate) layer: Layer,
    pub(crate) floor: i8,
}

/// A way from something that stands on the plan into a space.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Climb {
    pub(crate) zone: Zone,
    /// Where it comes out.
    pub(crate) out: Spot,
    pub(crate) length: i64,
    /// The bays it passes.
    pub(crate) bays: Vec<Bay>,
    /// Whether it passes the plate at its far end.
    pub(crate) plates: u32,
    /// Feet of basement wall or other open structure on the way.
    pub(crate) open_feet: u32,
    pub(crate) line: Vec<LinePoint>,
}

/// A stretch of bay inside one storey's wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Bay {
    pub(crate) room: RoomIndex,
    pub(crate) outside: bool,
    pub(crate) insulated: Option<bool>,
    /// Whether a fire block is passed, where known.
    pub(crate) fire_block: Option<bool>,
}

impl Climb {
    pub(crate) fn is_outside(&self) -> bool {
        self.bays.iter().any(|bay| bay.outside)
    }

    /// The openings it costs: one at each fire block, and one at each floor between storeys.
    pub(crate) fn openings(&self) -> u32 {
        self.fire_blocks() + self.floors_between()
    }

    pub(crate) fn floors_between(&self) -> u32 {
        u32::try_from(self.bays.len()).unwrap_or(u32::MAX).saturating_sub(1)
    }

    pub(crate) fn fire_blocks(&self) -> u32 {
        count(&self.bays, |bay| bay.fire_block == Some(true))
    }

    /// The rooms whose surfaces are opened: at a fire block its own, at a floor between two storeys the one further on.
    pub(crate) fn opens(&self) -> Vec<RoomIndex> {
        let opened = |(at, bay): (usize, &Bay)| (at > 0 || bay.fire_block == Some(true)).then_some(bay.room);
        let mut rooms: Vec<RoomIndex> = self.bays.iter().enumerate().filter_map(opened).collect();
        rooms.sort_unstable();
        rooms.dedup();
        rooms
    }

    /// Bays full of insulation, or not known to be empty.
    pub(crate) fn full_bays(&self) -> u32 {
        count(&self.bays, |bay| bay.outside && bay.insulated != Some(false))
    }

    pub(crate) fn difficulty(&self) -> Difficulty {
        match () {
            () if self.openings() > 0 => Difficulty::Hard,
            () if self.full_bays() > 0 => Difficulty::Fair,
            () => Difficulty::Easy,
        }
    }

    /// The work of the way itself, what is done at its ends apart.
    pub(crate) fn work(&self) -> Vec<(Work, u32)> {
        let bays = u32::try_from(self.bays.len()).unwrap_or(u32::MAX);
        vec![
            (Work::DrillPlate, self.plates),
            (Work::FishBay, bays),
            (Work::PastInsulation, self.full_bays()),
            (Work::PastFireBlock, self.fire_blocks()),
            (Work::ThroughFloor, self.floors_between()),
            (Work::BasementFoot, self.open_feet),
        ]
    }

    /// The way in words, into the space and back out of it.
    pub(crate) fn words(&self) -> (String, String) {
        let up = self.zone.layer == Layer::Attic;
        let space = self.zone.layer.words();
        let wall = if self.is_outside() { "the outside wall" } else { "the inside wall" };
        let (into, out) = match (self.bays.is_empty(), up) {
            (true, _) if self.open_feet > 0 => {
                (format!("in the open to {space}"), format!("from {space} to its place in the open"))
            }
            (true, _) => (format!("through the ceiling into {space}"), format!("through the ceiling from {space}")),
            (false, true) => (format!("up {wall} into {space}"), format!("down {wall} from {space}")),
            (false, false) => (format!("down {wall} into {space}"), format!("up {wall} from {space}")),
        };
        let rest = self.rest_in_words();
        (format!("{into}{rest}"), format!("{out}{rest}"))
    }

    fn rest_in_words(&self) -> String {
        let mut words = format!(", {}", Length::micrometres(self.length));
        if !self.bays.is_empty() {
            let plate = if self.zone.layer == Layer::Attic { "top" } else { "bottom" };
            words.push_str(&format!(", one hole in the {plate} plate"));
        }
        if self.floors_between() > 0 {
            words.push_str(", through the floor between two storeys with an opening there");
        }
        if self.bays.iter().any(|bay| bay.outside && bay.insulated == Some(true)) {
            words.push_str(", past insulation");
        } else if self.full_bays() > 0 {
            words.push_str(", reckoned as insulated since nobody knows");
        }
        match self.fire_blocks() {
            0 if self.bays.iter().any(|bay| bay.fire_block.is_none()) => {
                words.push_str(", no fire block reckoned: sound the wall first");
            }
            0 => {}
            _ => words.push_str(", past a fire block with an opening there"),
        }
        words
    }
}

fn count(bays: &[Bay], of: impl Fn(&Bay) -> bool) -> u32 {
    u32::try_from(bays.iter().filter(|bay| of(bay)).count()).unwrap_or(u32::MAX)
}

/// Every way up and down from something that stands on the plan.
pub(crate) fn climbs(plan: &FloorPlan, stand: &Stand) -> Vec<Climb> {
    match stand.seat {
        Seat::Wall(wall) => [up(plan, stand, wall), down(plan, stand, wall)].into_iter().flatten().collect(),
        Seat::Masonry(_) => Vec::new(),
        Seat::Ceiling => through_ceiling(plan, stand).into_iter().collect(),
        Seat::Open => in_the_open(plan, stand).into_iter().collect(),
    }
}

fn bay(plan: &FloorPlan, wall: Wall, passes_middle: bool) -> Bay {
    let drawn = &plan.rooms[wall.room];
    let (room, outside) = (drawn.index, wall.outside);
    if drawn.has_bare_studs() {
        return Bay { room, outside, insulated: Some(false), fire_block: Some(false) };
    }
    let fire_block = if passes_middle { drawn.room.fire_blocks } else { Some(false) };
    Bay { room, outside, insulated: drawn.room.insulated, fire_block }
}

fn line(floor: i8, at: Spot, layer: Layer) -> LinePoint {
    LinePoint { floor, at: point(at), layer }
}

/// Up the wall into the attic, through the wall of the next storey where that stands over it.
fn up(plan: &FloorPlan, stand: &Stand, wall: Wall) -> Option<Climb> {
    let room = &plan.rooms[wall.room];
    let (floor, ceiling) = (room.floor, room.ceiling());
    let first = bay(plan, wall, stand.height < ceiling / 2);
    let rise = (ceiling - stand.height).max(0);
    let line_here = vec![line(floor, stand.at, Layer::Wall), line(floor, wall.on_it, Layer::Wall)];
    match room.room.above? {
        Space::Attic => Some(Climb {
            zone: Zone { layer: Layer::Attic, floor },
            out: wall.on_it,
            length: rise + PAST_PLATE,
            bays: vec![first],
            plates: 1,
            open_feet: 0,
            line: line_here,
        }),
        Space::FinishedRoom => {
            let suits = |over: &DrawnRoom| {
                over.opens_to(Layer::Attic) && over.room.below == Some(Space::FinishedRoom) && !over.is_masonry()
            };
            let next = plan.wall_in_line(floor, 1, wall.on_it, suits)?;
            let over = plan.rooms.get(next.room)?;
            let mut line_up = line_here;
            line_up.push(line(over.floor, next.on_it, Layer::Wall));
            Some(Climb {
                zone: Zone { layer: Layer::Attic, floor: over.floor },
                out: next.on_it,
                length: rise + PAST_PLATE + over.ceiling() + PAST_PLATE,
                bays: vec![first, bay(plan, next, true)],
                plates: 1,
                open_feet: 0,
                line: line_up,
            })
        }
        _ => None,
    }
}

/// Down the wall into the crawl space or basement, through the wall of the storey below where that stands under it.
fn down(plan: &FloorPlan, stand: &Stand, wall: Wall) -> Option<Climb> {
    let room = &plan.rooms[wall.room];
    let floor = room.floor;
    let first = bay(plan, wall, stand.height > room.ceiling() / 2);
    let line_here = vec![line(floor, stand.at, Layer::Wall), line(floor, wall.on_it, Layer::Wall)];
    if let Some(layer) = room.space_below() {
        return Some(Climb {
            zone: Zone { layer, floor },
            out: wall.on_it,
            length: stand.height + PAST_PLATE,
            bays: vec![first],
            plates: 1,
            open_feet: 0,
            line: line_here,
        });
    }
    if room.room.below? != Space::FinishedRoom {
        return None;
    }
    let suits = |under: &DrawnRoom| {
        under.space_below().is_some() && under.room.above == Some(Space::FinishedRoom) && !under.is_masonry()
    };
    let next = plan.wall_in_line(floor, -1, wall.on_it, suits)?;
    let under = plan.rooms.get(next.room)?;
    let layer = under.space_below()?;
    let mut line_down = line_here;
    line_down.push(line(under.floor, next.on_it, Layer::Wall));
    Some(Climb {
        zone: Zone { layer, floor: under.floor },
        out: next.on_it,
        length: stand.height + PAST_PLATE + under.ceiling() + PAST_PLATE,
        bays: vec![first, bay(plan, next, true)],
        plates: 1,
        open_feet: 0,
        line: line_down,
    })
}

fn through_ceiling(plan: &FloorPlan, stand: &Stand) -> Option<Climb> {
    let room = plan.rooms.get(stand.room).filter(|room| room.opens_to(Layer::Attic))?;
    room.outline.holds(stand.at).then(|| Climb {
        zone: Zone { layer: Layer::Attic, floor: room.floor },
        out: stand.at,
        length: PAST_PLATE,
        bays: Vec::new(),
        plates: 0,
        open_feet: 0,
        line: vec![line(room.floor, stand.at, Layer::Attic)],
    })
}

/// In an unfinished basement, a crawl space or an attic: the space itself, under or over the next storey.
fn in_the_open(plan: &FloorPlan, stand: &Stand) -> Option<Climb> {
    let room = plan.rooms.get(stand.room)?;
    let (layer, floor) = match room.room.room_use {
        RoomUse::UnfinishedBasement => (Layer::Basement, room.floor.checked_add(1)?),
        RoomUse::CrawlSpace => (Layer::CrawlSpace, room.floor.checked_add(1)?),
        RoomUse::Attic => (Layer::Attic, room.floor.checked_sub(1)?),
        _ => return None,
    };
    let at = stand.at;
    let rise = if layer == Layer::Attic { stand.height } else { (room.ceiling() - stand.height).max(0) };
    plan.opens_at(layer, floor, at).then(|| Climb {
        zone: Zone { layer, floor },
        out: at,
        length: rise,
        bays: Vec::new(),
        plates: 0,
        open_feet: u32::try_from(Length::micrometres(rise).started_feet()).unwrap_or(0),
        line: vec![line(floor, at, layer)],
    })
}
