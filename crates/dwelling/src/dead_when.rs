//! What went dead, and what stayed alive, when power was taken away at one place: the evidence of what feeds what.

use crate::index::{BoxIndex, CircuitIndex};

/// One look around the dwelling while power was taken away at one place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DeadWhen {
    /// Where and how it was taken away.
    pub cut: PowerCut,
    /// The boxes that were dead then.
    pub dead: Vec<BoxIndex>,
    /// The boxes that were alive then. A box in neither list was not looked at.
    pub alive: Vec<BoxIndex>,
    /// A remark of the surveyor's.
    pub note: Option<String>,
}

/// How power was taken away.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PowerCut {
    /// The breaker of a circuit was off, or its fuse out.
    Breaker(CircuitIndex),
    /// The device of a box was out and its conductors apart, with the breaker on.
    Opened(BoxIndex),
    /// The conductors on the load side of the device in a box were lifted, with the breaker on.
    LoadSideLifted(BoxIndex),
}

impl PowerCut {
    /// The box at which conductors were parted: what was dead then lies downstream of it, what was alive does not.
    #[must_use]
    pub const fn parted_at(self) -> Option<BoxIndex> {
        match self {
            Self::Breaker(_) => None,
            Self::Opened(at) | Self::LoadSideLifted(at) => Some(at),
        }
    }
}
