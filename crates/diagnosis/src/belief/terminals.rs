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
    /// The neutral, by a jumper at another box; where the neutral is open here, that box may lie before the break.
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
    /// The same, with all of it behind a break of the hot conductor or the neutral: what is beside it is as dead or as live.
    FloatingAlone,
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
    /// The slot that a jumper here makes one with the ground slot.
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
            (Joined::Neutral, _) if at.is_alone => Hangs::OpenNeutral,
            (Joined::Neutral, _) => Hangs::NeutralElsewhere { weak: false },
            (Joined::Hot, _) => hot,
            (Joined::Nothing, _) if at.is_alone => Hangs::FloatingAlone,
            (Joined::Nothing, _) => Hangs::FloatingGround,
        },
    };
    match at.wiring {
        Wiring::Right => Slots { hot, neutral, ground: bonded, ground_is: None },
        Wiring::GroundNotLanded => Slots { hot, neutral, ground: Hangs::FloatingTerminal, ground_is: None },
        Wiring::HotNeutralReversed => Slots { hot: neutral, neutral: hot, ground: bonded, ground_is: None },
        Wiring::HotGroundReversed => Slots { hot: bonded, neutral, ground: hot, ground_is: None },
        Wiring::NeutralJumper => Slots { hot, neutral, ground: neutral, ground_is: Some(Slot::Neutral) },
        Wiring::ReversedJumper => Slots { hot: neutral, neutral: hot, ground: hot, ground_is: Some(Slot::Neutral) },
    }
}
