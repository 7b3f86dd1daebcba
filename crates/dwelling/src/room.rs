//! Rooms: what they are used for, where they lie, and what is above and below them.

use crate::names::names;
use electrical::Length;

/// A point on the floor plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Point {
    /// Distance to the right of the plan's origin.
    pub x: Length,
    /// Distance up from the plan's origin.
    pub y: Length,
}

/// A room or another place that holds boxes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Room {
    /// Its name in the survey.
    pub id: String,
    /// What people call it, where that differs.
    pub title: Option<String>,
    /// What it is used for.
    pub room_use: RoomUse,
    /// The floor it lies on: 0 the basement or ground, 1 the first floor, and so on.
    pub floor: Option<i8>,
    /// The corners of its outline in order; empty when not drawn.
    pub outline: Vec<Point>,
    /// What breaks its walls along the floor line, where somebody looked: none of it is an empty list.
    pub wall_breaks: Option<Vec<WallBreak>>,
    /// What lies above, where known.
    pub above: Option<Space>,
    /// What lies below, where known.
    pub below: Option<Space>,
    /// The height of its ceiling, where measured.
    pub ceiling: Option<Length>,
    /// What its walls are finished with, where known.
    pub walls: Option<WallFinish>,
    /// Whether there is insulation in its outside walls, where known.
    pub insulated: Option<bool>,
    /// Whether there are fire blocks across the bays of its walls, where known.
    pub fire_blocks: Option<bool>,
}

impl Room {
    /// A room of this name and use, of which nothing else is known.
    #[must_use]
    pub fn named(id: impl Into<String>, room_use: RoomUse) -> Self {
        Self {
            id: id.into(),
            title: None,
            room_use,
            floor: None,
            outline: Vec::new(),
            wall_breaks: None,
            above: None,
            below: None,
            ceiling: None,
            walls: None,
            insulated: None,
            fire_blocks: None,
        }
    }
}

names! {
    /// What the walls of a room are finished with.
    WallFinish {
        /// Gypsum board.
        Drywall = "drywall",
        /// Plaster on lath.
        Plaster = "plaster",
        /// Wood panelling.
        Panelling = "panelling",
        /// Tile on backer.
        Tile = "tile",
        /// Brick, block or stone without a bay behind it.
        Masonry = "masonry",
        /// Bare studs.
        Open = "open",
    }
}

/// A part of a room's walls that is no wall at the floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WallBreak {
    /// What is there.
    pub kind: WallBreakKind,
    /// Where it begins on the plan.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

names! {
    /// What breaks a wall along the floor line.
    WallBreakKind {
        /// A doorway or another opening down to the floor.
        Opening = "opening",
        /// A fireplace.
        Fireplace = "fireplace",
        /// A fixed cabinet without a countertop to work at.
        FixedCabinet = "fixed-cabinet",
    }
}

names! {
    /// What a room or place is used for, in the words the code's location lists use.
    RoomUse {
        /// Bedroom.
        Bedroom = "bedroom",
        /// Living room.
        LivingRoom = "living-room",
        /// Family room.
        FamilyRoom = "family-room",
        /// Dining room.
        DiningRoom = "dining-room",
        /// Den.
        Den = "den",
        /// Library.
        Library = "library",
        /// Parlor.
        Parlor = "parlor",
        /// Sunroom.
        Sunroom = "sunroom",
        /// Recreation room.
        RecreationRoom = "recreation-room",
        /// Home office, or another habitable room of similar use.
        Office = "office",
        /// Hallway.
        Hallway = "hallway",
        /// Closet.
        Closet = "closet",
        /// Kitchen.
        Kitchen = "kitchen",
        /// Bathroom.
        Bathroom = "bathroom",
        /// Laundry area.
        Laundry = "laundry",
        /// Utility or furnace room.
        Utility = "utility",
        /// Finished basement.
        FinishedBasement = "finished-basement",
        /// Unfinished basement.
        UnfinishedBasement = "unfinished-basement",
        /// Crawl space at or below grade.
        CrawlSpace = "crawl-space",
        /// Attic.
        Attic = "attic",
        /// Garage.
        Garage = "garage",
        /// Accessory building with a floor at or below grade, not habitable, for storage or work.
        AccessoryBuilding = "accessory-building",
        /// Outdoors.
        Outdoors = "outdoors",
        /// Boathouse.
        Boathouse = "boathouse",
        /// Stairway or entry that is none of the others.
        Stairway = "stairway",
        /// Not known.
        Unknown = "unknown",
    }
}

names! {
    /// What lies above or below a room.
    Space {
        /// An open attic one can work in.
        Attic = "attic",
        /// A crawl space one can work in.
        CrawlSpace = "crawl space",
        /// A basement with an open ceiling.
        Basement = "basement",
        /// Another finished room.
        FinishedRoom = "finished room",
        /// A slab on the ground.
        Slab = "slab",
        /// A roof without an attic.
        Roof = "roof",
        /// Another dwelling.
        AnotherDwelling = "another dwelling",
        /// A space that cannot be entered.
        Closed = "closed",
    }
}
