//! How often a meter finds a pair of terminals in each band of volts, by what the two hang on.
//!
//! The odds were counted over simulated houses: circuits drawn at random from the priors and read by the network solver,
//! with lengths, loads, joints and coupling as they come in dwellings. The tests of the crate `simulation` count them again
//! and hold this table to it; its example `count_readings` prints the counts beside the table.

use super::terminals::Hangs;
use super::volt_band::BANDS;

/// The odds of the six bands, in the order of [`super::volt_band::VoltBand`].
pub type Odds = [f64; BANDS];

/// How much current an instrument draws.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Draws {
    /// Next to none: phantoms show.
    Little,
    /// Enough to make phantoms collapse.
    Much,
    /// As a plug-in tester, whose three lamps tie the slots to one another.
    Lamps,
}

/// The load that is on at the opening while it is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Loaded {
    /// None here; something small may be on elsewhere.
    No,
    /// A lamp or another small load.
    Lamp,
    /// A heavy one.
    Heavily,
}

/// Where a conductor that hangs on nothing floats, as the meter finds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Floats {
    /// So loosely coupled that every pair with it reads next to nothing.
    Nowhere,
    /// Between hot and neutral.
    Between,
    /// At the neutral.
    AtNeutral,
    /// At the hot conductor.
    AtHot,
}

impl Floats {
    /// Every place.
    pub const ALL: [Self; 4] = [Self::Nowhere, Self::Between, Self::AtNeutral, Self::AtHot];
}

/// Where a terminal floats, with the odds of each place; a terminal that hangs on something stands in the first place only.
#[must_use]
pub fn places(of: Hangs, draws: Draws, load: Loaded) -> [f64; 4] {
    use Draws::{Lamps, Little, Much};
    let loaded = load != Loaded::No;
    match (of, draws) {
        (Hangs::FloatingGround, Little) => [0.575, 0.415, 0.005, 0.005],
        (Hangs::FloatingTerminal, Little) => [0.997, 0.001, 0.001, 0.001],
        (Hangs::FloatingGround | Hangs::FloatingTerminal, Much) => [0.998, 0.0, 0.001, 0.001],
        (Hangs::FloatingGround | Hangs::FloatingTerminal, Lamps) => [0.0, 0.97, 0.013, 0.017],
        (Hangs::OpenNeutral, Much) if loaded => [0.025, 0.0, 0.015, 0.96],
        (Hangs::OpenNeutral, _) if loaded => [0.001, 0.004, 0.022, 0.973],
        (Hangs::OpenNeutral, Little) => [0.07, 0.19, 0.02, 0.72],
        (Hangs::OpenNeutral, Much) => [0.85, 0.0, 0.01, 0.14],
        (Hangs::OpenNeutral, Lamps) => [0.0, 0.20, 0.025, 0.775],
        (Hangs::OpenHot, Much) if loaded => [0.035, 0.0, 0.965, 0.0],
        (Hangs::OpenHot, _) if loaded => [0.001, 0.004, 0.993, 0.002],
        (Hangs::OpenHot, Little) => [0.105, 0.02, 0.874, 0.001],
        (Hangs::OpenHot, Much) => [0.86, 0.0, 0.14, 0.0],
        (Hangs::OpenHot, Lamps) => [0.0, 0.005, 0.994, 0.001],
        _ => [1.0, 0.0, 0.0, 0.0],
    }
}

/// Whether a terminal floats.
#[must_use]
pub const fn floats(of: Hangs) -> bool {
    matches!(of, Hangs::FloatingGround | Hangs::FloatingTerminal | Hangs::OpenNeutral | Hangs::OpenHot)
}

/// The odds of a pair of terminals, each with its place where it floats.
#[must_use]
pub fn pair(one: (Hangs, Floats), other: (Hangs, Floats), draws: Draws, load: Loaded) -> Odds {
    match (floats(one.0), floats(other.0)) {
        (false, false) => held(one.0, other.0, load),
        (true, false) => floating(one, other.0, draws, load),
        (false, true) => floating(other, one.0, draws, load),
        (true, true) => both_floating(one, other, draws),
    }
}

const fn is_hot(of: Hangs) -> bool {
    matches!(of, Hangs::Hot { .. })
}

/// The odds of a floating terminal against one that is held.
fn floating((of, place): (Hangs, Floats), held: Hangs, draws: Draws, load: Loaded) -> Odds {
    let weakens = load == Loaded::Heavily && weak(held);
    match (place, is_hot(held)) {
        (Floats::Nowhere, _) => nowhere(of, held, draws),
        (Floats::Between, _) if weakens => [0.0, 0.01, 0.04, 0.95, 0.0, 0.0],
        (Floats::Between, _) => [0.0, 0.0, 0.0, 1.0, 0.0, 0.0],
        (Floats::AtNeutral, false) | (Floats::AtHot, true) => match (of, load, draws) {
            (Hangs::OpenNeutral, Loaded::No, Draws::Much) => [0.98, 0.02, 0.0, 0.0, 0.0, 0.0],
            (Hangs::OpenNeutral, Loaded::No, _) => [0.43, 0.43, 0.12, 0.02, 0.0, 0.0],
            (Hangs::OpenHot, Loaded::No, _) => [0.92, 0.06, 0.02, 0.0, 0.0, 0.0],
            (Hangs::OpenHot, ..) if matches!(held, Hangs::Ground { .. }) => [0.96, 0.04, 0.0, 0.0, 0.0, 0.0],
            (Hangs::OpenNeutral | Hangs::OpenHot, ..) => [1.0, 0.0, 0.0, 0.0, 0.0, 0.0],
            (_, _, Draws::Little) if is_hot(held) => [0.0, 0.80, 0.15, 0.05, 0.0, 0.0],
            (_, _, Draws::Much) => [0.99, 0.01, 0.0, 0.0, 0.0, 0.0],
            _ => [0.75, 0.16, 0.06, 0.03, 0.0, 0.0],
        },
        (Floats::AtNeutral, true) | (Floats::AtHot, false) => [0.0, 0.0, 0.0, 0.002, 0.998, 0.0],
    }
}

/// The odds of a terminal so loosely coupled that the instrument pulls it to what it is read against.
const fn nowhere(of: Hangs, held: Hangs, draws: Draws) -> Odds {
    match (of, draws) {
        (Hangs::OpenNeutral, Draws::Little) if is_hot(held) => [0.0, 0.065, 0.934, 0.001, 0.0, 0.0],
        (Hangs::OpenNeutral, Draws::Little) => [0.025, 0.04, 0.715, 0.22, 0.0, 0.0],
        (Hangs::OpenNeutral, _) if is_hot(held) => [0.66, 0.34, 0.0, 0.0, 0.0, 0.0],
        (Hangs::OpenNeutral, _) => [0.20, 0.43, 0.08, 0.29, 0.0, 0.0],
        (Hangs::OpenHot, Draws::Little) => [0.83, 0.15, 0.02, 0.0, 0.0, 0.0],
        (Hangs::OpenHot, _) => [0.98, 0.02, 0.0, 0.0, 0.0, 0.0],
        (_, Draws::Little) if is_hot(held) => [0.0, 0.002, 0.998, 0.0, 0.0, 0.0],
        (_, Draws::Little) => [0.012, 0.11, 0.878, 0.0, 0.0, 0.0],
        (Hangs::FloatingTerminal, _) => [0.998, 0.002, 0.0, 0.0, 0.0, 0.0],
        _ => [0.64, 0.355, 0.005, 0.0, 0.0, 0.0],
    }
}

const fn both_floating(one: (Hangs, Floats), other: (Hangs, Floats), draws: Draws) -> Odds {
    match (one.1, other.1, draws) {
        (Floats::Nowhere, _, Draws::Little) | (_, Floats::Nowhere, Draws::Little) => [0.15, 0.25, 0.59, 0.01, 0.0, 0.0],
        (Floats::Nowhere, _, _) | (_, Floats::Nowhere, _) => [0.88, 0.12, 0.0, 0.0, 0.0, 0.0],
        (Floats::Between, Floats::Between, _) => [0.05, 0.05, 0.08, 0.82, 0.0, 0.0],
        (Floats::AtNeutral, Floats::AtNeutral, _) => [0.97, 0.03, 0.0, 0.0, 0.0, 0.0],
        (Floats::AtHot, Floats::AtHot, _) => [0.20, 0.68, 0.10, 0.02, 0.0, 0.0],
        (Floats::Between, _, _) | (_, Floats::Between, _) => [0.0, 0.0, 0.02, 0.97, 0.01, 0.0],
        (Floats::AtNeutral, Floats::AtHot, _) | (Floats::AtHot, Floats::AtNeutral, _) => {
            [0.0, 0.0, 0.0, 0.05, 0.95, 0.0]
        }
    }
}

/// The odds of two terminals that are both held.
fn held(first: Hangs, second: Hangs, load: Loaded) -> Odds {
    match (is_hot(first), is_hot(second)) {
        (true, true) => one_conductor(load),
        (true, false) | (false, true) => across(first, second, load),
        (false, false) => returns(first, second, load),
    }
}

/// Two points of one conductor: a jumper here, or what a jumper at another box makes one.
pub(crate) const fn one_conductor(load: Loaded) -> Odds {
    match load {
        Loaded::No => [0.993, 0.004, 0.0, 0.002, 0.001, 0.0],
        Loaded::Lamp => [0.981, 0.015, 0.0, 0.0, 0.004, 0.0],
        Loaded::Heavily => [0.953, 0.043, 0.0, 0.0, 0.004, 0.0],
    }
}

/// Whether a terminal hangs on hot or neutral through a bad joint, which carries the load's current.
const fn weak(of: Hangs) -> bool {
    matches!(of, Hangs::Hot { weak: true } | Hangs::Neutral { weak: true })
}

/// Hot against something at the neutral's potential.
const fn across(first: Hangs, second: Hangs, load: Loaded) -> Odds {
    let borrowed = matches!(
        (first, second),
        (_, Hangs::NeutralElsewhere { weak: true }) | (Hangs::NeutralElsewhere { weak: true }, _)
    );
    match (weak(first), weak(second), load) {
        (true, true, Loaded::Heavily) => [0.0, 0.0, 0.0, 0.92, 0.08, 0.0],
        (true, _, Loaded::Heavily) | (_, true, Loaded::Heavily) => [0.0, 0.0, 0.0, 0.61, 0.39, 0.0],
        (false, false, Loaded::Heavily) if borrowed => [0.0, 0.0, 0.0, 0.40, 0.60, 0.0],
        (true, true, Loaded::Lamp) => [0.0, 0.0, 0.0, 0.06, 0.94, 0.0],
        (true, _, _) | (_, true, _) => [0.0, 0.0, 0.0, 0.018, 0.982, 0.0],
        (false, false, _) if borrowed => [0.0, 0.0, 0.0, 0.02, 0.98, 0.0],
        (false, false, _) => [0.0, 0.0, 0.0, 0.001, 0.999, 0.0],
    }
}

/// Two terminals at the neutral's potential.
const fn returns(first: Hangs, second: Hangs, load: Loaded) -> Odds {
    use Hangs::{Ground, Neutral, NeutralElsewhere};
    match (first, second) {
        (Neutral { weak }, NeutralElsewhere { .. }) | (NeutralElsewhere { .. }, Neutral { weak }) => match (weak, load)
        {
            (_, Loaded::No) => [0.937, 0.062, 0.0, 0.001, 0.0, 0.0],
            (false, Loaded::Lamp) => [0.79, 0.207, 0.001, 0.002, 0.0, 0.0],
            (false, Loaded::Heavily) => [0.44, 0.54, 0.019, 0.001, 0.0, 0.0],
            (true, Loaded::Lamp) => [0.585, 0.325, 0.08, 0.01, 0.0, 0.0],
            (true, Loaded::Heavily) => [0.41, 0.23, 0.13, 0.23, 0.0, 0.0],
        },
        // One of the two is the independent earth, against which the panel itself rises under load.
        (Ground { .. }, Ground { .. }) if matches!(load, Loaded::Heavily) => [0.15, 0.85, 0.0, 0.0, 0.0, 0.0],
        (Ground { .. }, Ground { .. }) => [0.975, 0.025, 0.0, 0.0, 0.0, 0.0],
        (Neutral { weak } | NeutralElsewhere { weak }, _) | (_, Neutral { weak } | NeutralElsewhere { weak }) => {
            match (weak, load) {
                (false, Loaded::No) => [0.91, 0.09, 0.0, 0.0, 0.0, 0.0],
                (false, Loaded::Lamp) => [0.49, 0.51, 0.0, 0.0, 0.0, 0.0],
                (false, Loaded::Heavily) => [0.014, 0.846, 0.14, 0.0, 0.0, 0.0],
                (true, Loaded::No) => [0.74, 0.20, 0.04, 0.02, 0.0, 0.0],
                (true, Loaded::Lamp) => [0.02, 0.61, 0.31, 0.06, 0.0, 0.0],
                (true, Loaded::Heavily) => [0.015, 0.005, 0.32, 0.66, 0.0, 0.0],
            }
        }
        _ => one_conductor(load),
    }
}
