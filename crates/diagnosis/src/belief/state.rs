//! What can be hidden behind the covers: the states of runs, of devices and of the ground at a box.

dwelling::names! {
    /// The state of a run's hot or neutral conductor, from its feeding box up to this one.
    WireState {
        /// Whole, with sound joints.
        Sound = "sound",
        /// Whole, but with a joint of high resistance.
        Weak = "high-resistance",
        /// Not connected.
        Open = "open",
    }
}

dwelling::names! {
    /// The state of the grounding path of a run, from its feeding box up to this one.
    GroundRun {
        /// Whole, with sound joints.
        Sound = "sound",
        /// Whole, but with a joint of high resistance.
        Weak = "high-resistance",
        /// A conductor is there and is connected to nothing in this box.
        LooseHere = "loose-here",
        /// A conductor is there and was cut off at the sheath in this box.
        CutOffHere = "cut-off-here",
        /// A conductor is there and is connected to nothing in the box that feeds this one.
        LooseBefore = "loose-before",
        /// The run carries no grounding path.
        Absent = "absent",
    }
}

dwelling::names! {
    /// How a receptacle is wired to what arrives in its box.
    Wiring {
        /// As it should be; the ground is landed where one arrives.
        Right = "right",
        /// Hot and neutral have changed places.
        HotNeutralReversed = "hot-neutral-reversed",
        /// Hot and ground have changed places.
        HotGroundReversed = "hot-ground-reversed",
        /// The ground that arrives is not landed on it.
        GroundNotLanded = "ground-not-landed",
        /// A jumper joins its neutral and its ground terminal.
        NeutralJumper = "neutral-jumper",
        /// Hot and neutral are reversed, and a jumper joins the terminal that should be neutral to the ground.
        ReversedJumper = "reversed-jumper",
    }
}

dwelling::names! {
    /// What the ground terminal of an opening is in truth.
    Ground {
        /// A sound path to the panel.
        Grounded = "grounded",
        /// A path to the panel of high resistance.
        Poor = "poor",
        /// A grounding conductor lies all the way from the panel, and is not connected somewhere.
        Interrupted = "interrupted",
        /// Somewhere between here and the panel there is no grounding conductor.
        Missing = "missing",
        /// On the neutral, and on no path of its own.
        False = "false",
        /// On the hot conductor.
        Live = "live",
    }
}

/// How the ground that arrives in a box, with everything bonded to it, stands to the panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Arrival {
    /// It reaches the panel's ground.
    Panel,
    /// It reaches the panel's ground through a joint of high resistance.
    Weak,
    /// It is not connected somewhere, though a conductor lies all the way.
    Broken(Joined),
    /// There is no conductor somewhere on the way.
    Absent(Joined),
}

/// What a bonded group that does not reach the panel is joined to, by a jumper at any of its boxes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Joined {
    /// Nothing: it floats.
    Nothing,
    /// The neutral.
    Neutral,
    /// The hot conductor.
    Hot,
}

impl Arrival {
    /// Every arrival; an arrival's number is its place here.
    pub const ALL: [Self; 8] = [
        Self::Panel,
        Self::Weak,
        Self::Broken(Joined::Nothing),
        Self::Broken(Joined::Neutral),
        Self::Broken(Joined::Hot),
        Self::Absent(Joined::Nothing),
        Self::Absent(Joined::Neutral),
        Self::Absent(Joined::Hot),
    ];

    /// What its bonded group is joined to.
    #[must_use]
    pub const fn joined(self) -> Joined {
        match self {
            Self::Panel | Self::Weak => Joined::Nothing,
            Self::Broken(joined) | Self::Absent(joined) => joined,
        }
    }

    /// Whether it reaches the panel, soundly or not.
    #[must_use]
    pub const fn reaches(self) -> bool {
        matches!(self, Self::Panel | Self::Weak)
    }
}

/// What is true at one opening: what arrives in its box, and how its device is wired to that.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct AtBox {
    /// The hot conductor's path from the panel.
    pub hot: WireState,
    /// The neutral's path from the panel.
    pub neutral: WireState,
    /// The ground.
    pub arrival: Arrival,
    /// Whether the bonded group of its ground lies wholly behind a break of the hot conductor or the neutral: then nothing
    /// sound lies beside it that it could pick up volts from. Only where one of the two is open.
    pub is_alone: bool,
    /// The device.
    pub wiring: Wiring,
}

impl AtBox {
    /// What its ground terminal is in truth.
    #[must_use]
    pub const fn ground(self) -> Ground {
        match (self.wiring, self.arrival) {
            (Wiring::HotGroundReversed | Wiring::ReversedJumper, _) => Ground::Live,
            (Wiring::NeutralJumper, _) => Ground::False,
            (Wiring::GroundNotLanded, Arrival::Absent(_)) => Ground::Missing,
            (Wiring::GroundNotLanded, _) => Ground::Interrupted,
            (_, Arrival::Panel) => Ground::Grounded,
            (_, Arrival::Weak) => Ground::Poor,
            (_, Arrival::Broken(Joined::Neutral) | Arrival::Absent(Joined::Neutral)) => Ground::False,
            (_, Arrival::Broken(Joined::Hot) | Arrival::Absent(Joined::Hot)) => Ground::Live,
            (_, Arrival::Broken(Joined::Nothing)) => Ground::Interrupted,
            (_, Arrival::Absent(Joined::Nothing)) => Ground::Missing,
        }
    }

    /// Whether its hot and neutral slots have changed places.
    #[must_use]
    pub const fn is_reversed(self) -> bool {
        matches!(self.wiring, Wiring::HotNeutralReversed | Wiring::ReversedJumper)
    }
}
