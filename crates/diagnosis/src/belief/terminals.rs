//! What the slots of an opening hang on, as a meter finds them.

use super::state::{Arrival, AtBox, Joined, WireState, Wiring};

/// What a terminal hangs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hangs {
    /// The hot conductor, through a bad joint or not.
    Hot {
        /// Whether through a bad joint.
        weak: bool,
    },
    /// The neutral, through a bad joint or not.
    Neutral {
        /// Whether through a bad joint.
        weak: bool,
    },
    /// A path of its own to where neutral and ground belong together; no load draws on it.
    Ground {
        /// Whether through a bad joint.
        weak: bool,
    },
    /// The neutral, by a jumper at another box.
    NeutralElsewhere {
        /// Whether that neutral has a bad joint.
        weak: bool,
    },
    /// A neutral that is broken: what is plugged in may pull it to the hot conductor.
    OpenNeutral,
    /// A hot conductor that is broken: what is plugged in pulls it to the neutral.
    OpenHot,
    /// A bonded group that is connected to nothing: a bare terminal, or the conductors of cables behind it too.
    FloatingGround,
    /// A terminal without any conductor.
    FloatingTerminal,
}

/// What the three slots of an opening hang on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Slots {
    /// The hot slot.
    pub hot: Hangs,
    /// The neutral slot.
    pub neutral: Hangs,
    /// The ground slot.
    pub ground: Hangs,
    /// The slot that a jumper here, or a broken neutral in common, makes one with the ground slot.
    pub ground_is: Option<Slot>,
}

/// A slot that can be one with the ground slot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Slot {
    /// The hot slot.
    Hot,
    /// The neutral slot.
    Neutral,
}

/// What the slots of an opening in this state hang on.
#[must_use]
pub fn slots(at: AtBox) -> Slots {
    let hot = match at.hot {
        WireState::Sound => Hangs::Hot { weak: false },
        WireState::Weak => Hangs::Hot { weak: true },
        WireState::Open => Hangs::OpenHot,
    };
    let jumper_feeds = at.wiring == Wiring::NeutralJumper && at.arrival.reaches();
    let neutral = match at.neutral {
        WireState::Sound => Hangs::Neutral { weak: false },
        WireState::Weak => Hangs::Neutral { weak: true },
        // The jumper brings the load's current home through the grounding conductor.
        WireState::Open if jumper_feeds => Hangs::Neutral { weak: at.arrival == Arrival::Weak },
        WireState::Open => Hangs::OpenNeutral,
    };
    let bonded = match at.arrival {
        Arrival::Panel => Hangs::Ground { weak: false },
        Arrival::Weak => Hangs::Ground { weak: true },
        Arrival::Broken(joined) | Arrival::Absent(joined) => match (joined, neutral) {
            (Joined::Neutral, Hangs::Neutral { weak }) => Hangs::NeutralElsewhere { weak },
            (Joined::Neutral, _) => Hangs::OpenNeutral,
            (Joined::Hot, _) => hot,
            (Joined::Nothing, _) => Hangs::FloatingGround,
        },
    };
    let one_neutral = bonded == Hangs::OpenNeutral && neutral == Hangs::OpenNeutral;
    match at.wiring {
        Wiring::Right => {
            Slots { hot, neutral, ground: bonded, ground_is: one_neutral.then_some(Slot::Neutral).or(on_hot(at)) }
        }
        Wiring::GroundNotLanded => Slots { hot, neutral, ground: Hangs::FloatingTerminal, ground_is: None },
        Wiring::HotNeutralReversed => Slots {
            hot: neutral,
            neutral: hot,
            ground: bonded,
            ground_is: one_neutral.then_some(Slot::Hot).or(on_hot(at).map(|_| Slot::Neutral)),
        },
        Wiring::HotGroundReversed => Slots { hot: bonded, neutral, ground: hot, ground_is: None },
        Wiring::NeutralJumper => Slots { hot, neutral, ground: neutral, ground_is: Some(Slot::Neutral) },
        Wiring::ReversedJumper => Slots { hot: neutral, neutral: hot, ground: hot, ground_is: Some(Slot::Neutral) },
    }
}

/// The hot slot, where the bonded group is on the hot conductor.
fn on_hot(at: AtBox) -> Option<Slot> {
    (at.arrival.joined() == Joined::Hot).then_some(Slot::Hot)
}
