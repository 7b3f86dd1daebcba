//! The building of a generated dwelling: its kind, its rooms on their floors, and where boxes stand on their walls.

use super::chance::Chance;

/// What kind of building it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// One floor between an attic and a crawl space or basement, wired with cable.
    Bungalow,
    /// Two floors over a basement, wired with cable, with a newer part.
    TwoStorey,
    /// One floor between other dwellings, wired in metal.
    Flat,
    /// An old house with open conductors on knobs.
    KnobAndTube,
}

impl Kind {
    /// Every kind, in the order in which generated dwellings take turns.
    pub const ALL: [Self; 4] = [Self::Bungalow, Self::TwoStorey, Self::Flat, Self::KnobAndTube];

    /// Its name in the job's name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Bungalow => "bungalow",
            Self::TwoStorey => "two-storey house",
            Self::Flat => "flat",
            Self::KnobAndTube => "knob-and-tube house",
        }
    }
}

/// A length in quarters of a foot, so that coordinates are written without rounding.
pub type Quarter = i64;

/// A room with straight walls.
pub struct Room {
    /// What it is used for, as a survey says it.
    pub room_use: &'static str,
    /// Its floor.
    pub floor: i64,
    /// What lies above and below, as a survey says it.
    pub above: &'static str,
    pub below: &'static str,
    /// Its corner nearest the plan's origin.
    pub corner: (Quarter, Quarter),
    /// Its width and depth.
    pub size: (Quarter, Quarter),
    /// How high its ceiling is and what its walls are finished with, where the surveyor wrote it down.
    pub ceiling: Option<&'static str>,
    pub walls: Option<&'static str>,
    /// Whether its outside walls hold insulation and its bays fire blocks, likewise.
    pub insulated: Option<bool>,
    pub fire_blocks: Option<bool>,
}

/// A place for a box.
#[derive(Clone, Copy)]
pub struct Spot {
    /// The room, by index.
    pub room: usize,
    /// Where it is on the plan of its floor.
    pub at: (Quarter, Quarter),
    /// Its floor.
    pub floor: i64,
}

impl Spot {
    /// How far a conductor runs from one spot to another along walls and floors.
    pub fn distance(self, other: Self) -> Quarter {
        const BETWEEN_FLOORS: Quarter = 36;
        (self.at.0 - other.at.0).abs()
            + (self.at.1 - other.at.1).abs()
            + (self.floor - other.floor).abs() * BETWEEN_FLOORS
    }
}

const FIRST_ROOMS: [&str; 6] = ["kitchen", "living-room", "bathroom", "bedroom", "bedroom", "laundry"];
const MORE_ROOMS: [(usize, &str); 10] = [
    (6, "bedroom"),
    (2, "living-room"),
    (2, "dining-room"),
    (2, "office"),
    (2, "hallway"),
    (2, "bathroom"),
    (1, "den"),
    (1, "kitchen"),
    (1, "utility"),
    (1, "unknown"),
];

/// The rooms of a building for so many boxes.
pub fn rooms(chance: &mut Chance, kind: Kind, boxes: usize) -> Vec<Room> {
    let count = (boxes / chance.within(4, 6)).max(2);
    let (lowest, floors) = match kind {
        Kind::Bungalow => (1, 1),
        Kind::Flat => (chance.within(2, 5) as i64, 1),
        Kind::TwoStorey | Kind::KnobAndTube => (1, 2),
    };
    let mut rooms: Vec<Room> = Vec::new();
    let under = chance.pick(&["crawl space", "basement", "slab"]);
    let over = chance.pick(&["attic", "attic", "roof"]);
    for story in 0..floors {
        let here = count * (story + 1) / floors - count * story / floors;
        let (below, above) = match kind {
            Kind::Flat => ("another dwelling", chance.pick(&["another dwelling", "another dwelling", "roof"])),
            _ => (
                if story == 0 { under } else { "finished room" },
                if story + 1 == floors { over } else { "finished room" },
            ),
        };
        let in_a_row = (here as f64).sqrt().ceil() as usize;
        let (mut along, mut across, mut depth) = (0, 0, 0);
        for place in 0..here {
            if place % in_a_row == 0 {
                (along, across) = (0, across + depth);
                depth = chance.within(36, 56) as Quarter;
            }
            let width = chance.within(28, 64) as Quarter;
            let room_use = FIRST_ROOMS.get(rooms.len()).copied().unwrap_or_else(|| chance.weighted(&MORE_ROOMS));
            let floor = lowest + story as i64;
            rooms.push(Room {
                room_use,
                floor,
                above,
                below,
                corner: (along, across),
                size: (width, depth),
                ceiling: chance.weighted(&[(4, Some("8 ft")), (1, Some("9 ft")), (1, None)]),
                walls: finish(chance, kind, room_use),
                insulated: chance.weighted(&[(2, Some(true)), (2, Some(false)), (1, None)]),
                fire_blocks: chance.weighted(&[(1, Some(true)), (3, Some(false)), (1, None)]),
            });
            along += width;
        }
    }
    if kind != Kind::Flat && chance.percent(50) {
        let (room_use, below) = chance.pick(&[("unfinished-basement", "slab"), ("garage", "slab")]);
        let floor = i64::from(room_use == "garage");
        // A garage stands beside the rooms, a basement below them.
        let corner = (if floor == 1 { -72 } else { 0 }, 0);
        rooms.push(Room {
            room_use,
            floor,
            above: "finished room",
            below,
            corner,
            size: (72, 72),
            ceiling: Some("8 ft"),
            walls: Some(chance.pick(&["open", "masonry"])),
            insulated: Some(false),
            fire_blocks: None,
        });
    }
    rooms
}

fn finish(chance: &mut Chance, kind: Kind, room_use: &str) -> Option<&'static str> {
    if room_use == "bathroom" && chance.percent(50) {
        return Some("tile");
    }
    match kind {
        Kind::KnobAndTube | Kind::Flat => chance.weighted(&[(6, Some("plaster")), (1, Some("masonry")), (1, None)]),
        Kind::Bungalow => chance.weighted(&[(4, Some("plaster")), (3, Some("drywall")), (1, None)]),
        Kind::TwoStorey => chance.weighted(&[(6, Some("drywall")), (1, Some("panelling")), (1, None)]),
    }
}

/// Places on the walls of the rooms: every room gets its share, in the order of the rooms.
pub fn spots(chance: &mut Chance, rooms: &[Room], boxes: usize) -> Vec<Spot> {
    let mut shares = vec![boxes / rooms.len(); rooms.len()];
    for _ in 0..boxes % rooms.len() {
        shares[chance.below(rooms.len())] += 1;
    }
    for _ in 0..rooms.len() {
        let (from, to) = (chance.below(rooms.len()), chance.below(rooms.len()));
        if shares[from] > 1 {
            shares[from] -= 1;
            shares[to] += 1;
        }
    }
    let mut spots = Vec::with_capacity(boxes);
    for (room, share) in shares.into_iter().enumerate() {
        for _ in 0..share {
            spots.push(Spot { room, at: on_a_wall(chance, &rooms[room]), floor: rooms[room].floor });
        }
    }
    spots
}

fn on_a_wall(chance: &mut Chance, room: &Room) -> (Quarter, Quarter) {
    let along = chance.within(2, room.size.0 as usize - 2) as Quarter;
    let across = chance.within(2, room.size.1 as usize - 2) as Quarter;
    let (x, y) = chance.pick(&[(along, 0), (along, room.size.1), (0, across), (room.size.0, across)]);
    (room.corner.0 + x, room.corner.1 + y)
}
