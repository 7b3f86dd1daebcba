//! The lists of the code that an authority can make longer or shorter, and the names of their items.

use dwelling::{CableKind, Equipment, RoomUse, SourceKind, names};

names! {
    /// A list of the code.
    List {
        /// The rooms in which AFCI protection is asked for.
        AfciRooms = "afci-rooms",
        /// The places in which GFCI protection is asked for.
        GfciPlaces = "gfci-places",
        /// The appliances whose outlets need GFCI protection wherever they are.
        GfciAppliances = "gfci-appliances",
        /// The places at which a separate grounding conductor may be connected.
        GroundConnections = "ground-connections",
        /// The wiring methods whose metal, or whose conductor, counts as a ground.
        GroundMethods = "ground-methods",
        /// The equipment with cord and plug that must be grounded.
        EquipmentNeedingGround = "equipment-needing-ground",
        /// The places whose receptacles are tamper-resistant ones.
        TamperResistantPlaces = "tamper-resistant-places",
    }
}

/// The items of the GFCI places that are not the use of a room.
pub(crate) const COUNTERTOP: &str = "kitchen-countertop";
pub(crate) const NEAR_SINK: &str = "near-sink";
pub(crate) const NEAR_TUB: &str = "near-tub";
pub(crate) const DAMP_INDOORS: &str = "damp-indoors";
/// The place to connect a ground that is no ground source of its own.
pub(crate) const ANOTHER_CIRCUIT: &str = "another-circuit";

impl List {
    /// The names of everything that can stand in it, in any edition or by an amendment.
    #[must_use]
    pub fn items(self) -> Vec<&'static str> {
        match self {
            Self::AfciRooms | Self::TamperResistantPlaces => RoomUse::NAMES.to_vec(),
            Self::GfciPlaces => {
                let besides = [COUNTERTOP, NEAR_SINK, NEAR_TUB, DAMP_INDOORS];
                RoomUse::NAMES.iter().copied().chain(besides).collect()
            }
            Self::GfciAppliances | Self::EquipmentNeedingGround => Equipment::NAMES.to_vec(),
            Self::GroundConnections => SourceKind::NAMES.iter().copied().chain([ANOTHER_CIRCUIT]).collect(),
            Self::GroundMethods => CableKind::NAMES.to_vec(),
        }
    }
}
