//! Panels and the circuits that start in them.

use crate::after::{CircuitAfter, PanelAfter};
use crate::index::{CircuitIndex, PanelIndex, RoomIndex};
use crate::names::names;
use crate::room::Point;
use crate::run::CableKind;
use electrical::{Amperes, ConductorMetal, Gauge};

/// A panel: the enclosure in which branch circuits originate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Panel {
    /// Its name in the survey.
    pub id: String,
    /// Whether its overcurrent devices are breakers or fuses, where known.
    pub overcurrent: Option<Overcurrent>,
    /// The protective breakers made and listed for this panel. `None` is unknown; an empty list is none.
    pub made_for_it: Option<Vec<ProtectiveBreaker>>,
    /// Whether it is the service equipment, in which alone the neutral may serve as a ground, where known.
    pub service: Option<bool>,
    /// Whether it has a bar at which equipment grounding conductors end, where known.
    pub ground_bar: Option<bool>,
    /// Whether there is room beside it for a box with a dead-front protective device, where known.
    pub room_beside: Option<bool>,
    /// The current of a fault from a hot conductor to the neutral bar in this panel, as measured or as the supplier states
    /// its least, where known.
    pub fault_current: Option<Amperes>,
    /// The room it is in, where known.
    pub room: Option<RoomIndex>,
    /// Where it is on the floor plan.
    pub at: Option<Point>,
    /// What was seen of it after the work, where somebody looked.
    pub after: Option<PanelAfter>,
}

impl Panel {
    /// A panel of this name, of which nothing else is known.
    #[must_use]
    pub fn named(id: impl Into<String>) -> Self {
        Self {
            id: id.into(),
            overcurrent: None,
            made_for_it: None,
            service: None,
            ground_bar: None,
            room_beside: None,
            fault_current: None,
            room: None,
            at: None,
            after: None,
        }
    }
}

names! {
    /// What opens a circuit on overcurrent.
    Overcurrent {
        /// Circuit breakers.
        Breakers = "breakers",
        /// Fuses.
        Fuses = "fuses",
    }
}

names! {
    /// A breaker that protects against more than overcurrent.
    ProtectiveBreaker {
        /// A single-pole GFCI breaker.
        Gfci = "gfci",
        /// A single-pole AFCI breaker of the combination type.
        Afci = "afci",
        /// A single-pole breaker that is GFCI and AFCI in one.
        Dual = "dual",
        /// A two-pole GFCI breaker, for multiwire circuits.
        GfciTwoPole = "gfci-2p",
        /// A two-pole AFCI breaker, for multiwire circuits.
        AfciTwoPole = "afci-2p",
        /// A two-pole breaker that is GFCI and AFCI in one, for multiwire circuits.
        DualTwoPole = "dual-2p",
    }
}

impl ProtectiveBreaker {
    /// Whether it protects people from ground faults.
    #[must_use]
    pub const fn is_gfci(self) -> bool {
        matches!(self, Self::Gfci | Self::Dual | Self::GfciTwoPole | Self::DualTwoPole)
    }

    /// Whether it protects wiring from arc faults.
    #[must_use]
    pub const fn is_afci(self) -> bool {
        matches!(self, Self::Afci | Self::Dual | Self::AfciTwoPole | Self::DualTwoPole)
    }

    /// Whether it has two poles, as a multiwire circuit needs.
    #[must_use]
    pub const fn is_two_pole(self) -> bool {
        matches!(self, Self::GfciTwoPole | Self::AfciTwoPole | Self::DualTwoPole)
    }
}

/// A branch circuit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Circuit {
    /// Its number or name in the survey.
    pub id: String,
    /// The panel in which it originates.
    pub panel: PanelIndex,
    /// The rating of its breaker or fuse, where known.
    pub breaker: Option<Amperes>,
    /// The protective breaker already fitted, if one is.
    pub fitted: Option<ProtectiveBreaker>,
    /// What its runs are unless one says otherwise.
    pub cable: CableKind,
    /// The size of its conductors unless a run says otherwise, where known.
    pub gauge: Option<Gauge>,
    /// The metal of its conductors unless a run says otherwise.
    pub metal: ConductorMetal,
    /// The other circuit of a multiwire set, which shares this one's neutral.
    pub shares_neutral_with: Option<CircuitIndex>,
    /// What was seen at its panel end after the work, where somebody looked.
    pub after: Option<CircuitAfter>,
}

impl Circuit {
    /// A circuit of this name, of copper and in this wiring method, of which nothing else is known.
    #[must_use]
    pub fn named(id: impl Into<String>, panel: PanelIndex, cable: CableKind) -> Self {
        Self {
            id: id.into(),
            panel,
            breaker: None,
            fitted: None,
            cable,
            gauge: None,
            metal: ConductorMetal::Copper,
            shares_neutral_with: None,
            after: None,
        }
    }
}
