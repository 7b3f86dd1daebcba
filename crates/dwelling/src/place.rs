//! Where in its place an opening sits: near water, in the damp, behind an appliance.

use crate::names::names;
use electrical::Length;

/// A distance to a sink, tub or shower, and what lies on the way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NearWater {
    /// The shortest path to the nearest edge of the bowl, tub or stall.
    pub distance: Length,
    /// What that path passes; empty for an open path.
    pub passes: Vec<PathObstacle>,
}

names! {
    /// What a path to a sink passes through.
    PathObstacle {
        /// A cabinet's door.
        CabinetDoor = "cabinet-door",
        /// A door of the room.
        Door = "door",
        /// A doorway without a door.
        Doorway = "doorway",
        /// A window.
        Window = "window",
        /// A wall.
        Wall = "wall",
        /// A floor.
        Floor = "floor",
        /// A ceiling.
        Ceiling = "ceiling",
        /// A fixed barrier.
        FixedBarrier = "fixed-barrier",
    }
}

names! {
    /// How wet a place is.
    Wetness {
        /// Normally dry.
        Dry = "dry",
        /// Partly protected from weather, or subject to moderate moisture.
        Damp = "damp",
        /// Exposed to weather or saturation.
        Wet = "wet",
    }
}
