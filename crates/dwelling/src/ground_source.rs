//! Places at which an equipment grounding conductor may be connected.

use crate::index::{PanelIndex, RoomIndex};
use crate::names::names;
use crate::room::Point;
use electrical::{Gauge, Length};

/// A place that the survey offers as an end for an equipment grounding conductor, other than boxes and panels.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GroundSource {
    /// Its name in the survey.
    pub id: String,
    /// What it is.
    pub kind: SourceKind,
    /// The panel it belongs to, for a bar or a neutral inside one.
    pub panel: Option<PanelIndex>,
    /// For a water pipe: how far along the pipe from where it enters the building.
    pub from_entry: Option<Length>,
    /// Whether someone has checked that the path to earth and to the service is whole, where known.
    pub verified: Option<bool>,
    /// The size of the conductor at this point, where it limits what may be joined to it.
    pub gauge: Option<Gauge>,
    /// The room it is in, where known.
    pub room: Option<RoomIndex>,
    /// Where it is on the floor plan.
    pub at: Option<Point>,
}

names! {
    /// What a ground source is.
    SourceKind {
        /// The terminal bar for equipment grounding conductors in a panel.
        GroundBar = "ground-bar",
        /// The grounding electrode conductor.
        ElectrodeConductor = "electrode-conductor",
        /// An accessible point of the grounding electrode system, other than a water pipe.
        ElectrodeSystem = "electrode-system",
        /// The grounded service conductor inside the service equipment.
        ServiceNeutral = "service-neutral",
        /// A metal water pipe inside the building.
        WaterPipe = "water-pipe",
        /// A rod driven for this opening alone.
        LoneRod = "lone-rod",
        /// Other metal: a waste stack, a gas pipe, a radiator, building steel of unknown bonding.
        OtherMetal = "other-metal",
    }
}
