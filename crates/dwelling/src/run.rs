//! Runs: the cable or set of conductors between two boxes, or between a box and the panel.

use crate::names::names;
use electrical::{ConductorMetal, Gauge, Length};

/// The run that feeds a box. What is `None` is as the circuit says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Run {
    /// Its length, where measured.
    pub length: Option<Length>,
    /// Its wiring method, where it differs from the circuit's.
    pub cable: Option<CableKind>,
    /// Its conductor size, where it differs from the circuit's.
    pub gauge: Option<Gauge>,
    /// Its conductor metal, where it differs from the circuit's.
    pub metal: Option<ConductorMetal>,
    /// Whether it carries both hots and the shared neutral of a multiwire set. `None`: the home run does, others do not.
    pub shared_neutral: Option<bool>,
}

names! {
    /// A wiring method of a run.
    CableKind {
        /// Nonmetallic cable with two conductors and no ground.
        NmTwoWire = "nm-two-wire",
        /// Nonmetallic cable with a full-size equipment grounding conductor.
        NmWithGround = "nm-with-ground",
        /// Nonmetallic cable with a grounding conductor thinner than today's table asks.
        NmReducedGround = "nm-reduced-ground",
        /// Open single conductors on knobs and in tubes.
        KnobAndTube = "knob-and-tube",
        /// Armored cable with an internal bonding strip.
        ArmoredWithStrip = "armored-with-strip",
        /// Armored cable without a bonding strip: its armor is not taken as a ground.
        ArmoredNoStrip = "armored-no-strip",
        /// Armored cable nobody has looked into for a bonding strip.
        ArmoredUnknown = "armored-unknown",
        /// Metal-clad cable with an equipment grounding conductor.
        MetalCladWithGround = "metal-clad-with-ground",
        /// Rigid, intermediate or electrical metallic tubing conduit, continuous.
        MetalConduit = "metal-conduit",
        /// Flexible metal conduit without an equipment grounding conductor in it.
        FlexibleMetalConduit = "flexible-metal-conduit",
        /// Surface metal raceway of unknown listing.
        SurfaceMetalRaceway = "surface-metal-raceway",
        /// Conductors in nonmetallic conduit, no equipment grounding conductor.
        NonmetallicConduit = "nonmetallic-conduit",
        /// Nobody has seen it.
        Unknown = "unknown",
    }
}

/// Whether a wiring method carries a path for ground-fault current.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum GroundPath {
    /// It does.
    Yes,
    /// It does, but the authority may not accept it for a grounding-type replacement.
    Disputed,
    /// Only looking or testing tells.
    Unknown,
    /// It does not.
    No,
}

impl CableKind {
    /// Whether this wiring method carries a path for ground-fault current, as the trade reads 250.118.
    #[must_use]
    pub const fn ground_path(self) -> GroundPath {
        match self {
            Self::NmWithGround | Self::ArmoredWithStrip | Self::MetalCladWithGround | Self::MetalConduit => {
                GroundPath::Yes
            }
            Self::NmReducedGround => GroundPath::Disputed,
            Self::ArmoredUnknown | Self::FlexibleMetalConduit | Self::SurfaceMetalRaceway | Self::Unknown => {
                GroundPath::Unknown
            }
            Self::NmTwoWire | Self::KnobAndTube | Self::ArmoredNoStrip | Self::NonmetallicConduit => GroundPath::No,
        }
    }

    /// Whether metal surrounds its conductors up to the box.
    #[must_use]
    pub const fn is_in_metal(self) -> bool {
        match self {
            Self::ArmoredWithStrip
            | Self::ArmoredNoStrip
            | Self::ArmoredUnknown
            | Self::MetalCladWithGround
            | Self::MetalConduit
            | Self::FlexibleMetalConduit
            | Self::SurfaceMetalRaceway => true,
            Self::NmTwoWire
            | Self::NmWithGround
            | Self::NmReducedGround
            | Self::KnobAndTube
            | Self::NonmetallicConduit
            | Self::Unknown => false,
        }
    }

    /// Whether its grounding path is a wire that takes room in a box, rather than metal around the conductors.
    #[must_use]
    pub const fn has_ground_wire(self) -> bool {
        matches!(self, Self::NmWithGround | Self::NmReducedGround | Self::MetalCladWithGround)
    }
}
