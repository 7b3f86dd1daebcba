//! How often a meter finds a pair of terminals in each band of volts, by what the two hang on.
//!
//! The odds are what the network solver's circuits read, over houses drawn at random from the priors, with lengths, loads,
//! joints and coupling as they come in dwellings; `tests/simulated` counts them again and holds this table to it.

use super::terminals::Hangs;
use super::volt_band::BANDS;

/// The odds of the six bands, in the order of [`super::volt_band::VoltBand`].
pub(crate) type Odds = [f64; BANDS];

/// How much current an instrument draws.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Draws {
    /// Next to none: phantoms show.
    Little,
    /// Enough to make phantoms collapse.
    Much,
}

/// The load that is on at the opening while it is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Loaded {
    No,
    Lamp,
    Heavily,
}

/// Where a conductor that hangs on nothing floats, as the meter finds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Floats {
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
    pub(crate) const ALL: [Self; 4] = [Self::Nowhere, Self::Between, Self::AtNeutral, Self::AtHot];
}

/// Where a terminal floats, with the odds of each place; a terminal that hangs on something stands in the first place only.
pub(crate) fn places(of: Hangs, draws: Draws, load: Loaded) -> [f64; 4] {
    match (of, draws) {
        (Hangs::FloatingWire, Draws::Little) => [0.05, 0.85, 0.08, 0.02],
        (Hangs::FloatingTerminal, Draws::Little) => [0.55, 0.38, 0.06, 0.01],
        (Hangs::FloatingWire | Hangs::FloatingTerminal, Draws::Much) => [0.985, 0.01, 0.004, 0.001],
        (Hangs::OpenNeutral, _) if load != Loaded::No => [0.005, 0.01, 0.005, 0.98],
        (Hangs::OpenNeutral, Draws::Little) => [0.03, 0.35, 0.02, 0.60],
        (Hangs::OpenNeutral, Draws::Much) => [0.42, 0.05, 0.01, 0.52],
        (Hangs::OpenHot, _) if load != Loaded::No => [0.01, 0.005, 0.98, 0.005],
        (Hangs::OpenHot, Draws::Little) => [0.03, 0.30, 0.66, 0.01],
        (Hangs::OpenHot, Draws::Much) => [0.42, 0.02, 0.55, 0.01],
        _ => [1.0, 0.0, 0.0, 0.0],
    }
}

/// Whether a terminal floats.
pub(crate) const fn floats(of: Hangs) -> bool {
    matches!(of, Hangs::FloatingWire | Hangs::FloatingTerminal | Hangs::OpenNeutral | Hangs::OpenHot)
}

/// The odds of a pair of terminals, each with its place where it floats.
pub(crate) fn pair(one: (Hangs, Floats), other: (Hangs, Floats), draws: Draws, load: Loaded) -> Odds {
    let (first, second) = (one.0, other.0);
    match (floats(first), floats(second)) {
        (false, false) => held(first, second, draws, load),
        (true, false) => floating(one.1, is_hot(second)),
        (false, true) => floating(other.1, is_hot(first)),
        (true, true) => both_floating(one.1, other.1),
    }
}

const fn is_hot(of: Hangs) -> bool {
    matches!(of, Hangs::Hot { .. })
}

/// The odds of a floating terminal against one that is held.
const fn floating(place: Floats, against_hot: bool) -> Odds {
    match (place, against_hot) {
        (Floats::Nowhere, _) => [0.20, 0.45, 0.25, 0.10, 0.0, 0.0],
        (Floats::Between, _) => [0.0, 0.0, 0.01, 0.985, 0.005, 0.0],
        (Floats::AtNeutral, false) | (Floats::AtHot, true) => [0.35, 0.50, 0.12, 0.03, 0.0, 0.0],
        (Floats::AtNeutral, true) | (Floats::AtHot, false) => [0.0, 0.0, 0.0, 0.06, 0.93, 0.01],
    }
}

const fn both_floating(one: Floats, other: Floats) -> Odds {
    match (one, other) {
        (Floats::Nowhere, _) | (_, Floats::Nowhere) => [0.25, 0.45, 0.20, 0.10, 0.0, 0.0],
        (Floats::Between, Floats::Between)
        | (Floats::AtNeutral, Floats::AtNeutral)
        | (Floats::AtHot, Floats::AtHot) => [0.10, 0.30, 0.30, 0.30, 0.0, 0.0],
        (Floats::Between, _) | (_, Floats::Between) => [0.0, 0.0, 0.02, 0.97, 0.01, 0.0],
        (Floats::AtNeutral, Floats::AtHot) | (Floats::AtHot, Floats::AtNeutral) => [0.0, 0.0, 0.0, 0.06, 0.93, 0.01],
    }
}

/// The odds of two terminals that are both held.
fn held(first: Hangs, second: Hangs, draws: Draws, load: Loaded) -> Odds {
    match (is_hot(first), is_hot(second)) {
        (true, true) => one_conductor(),
        (true, false) => across(weakens(first, load) || weakens(second, load), ground_sags(second, draws), load),
        (false, true) => across(weakens(second, load) || weakens(first, load), ground_sags(first, draws), load),
        (false, false) => returns(first, second, load),
    }
}

/// Two points of one conductor without load between them.
pub(crate) const fn one_conductor() -> Odds {
    [0.965, 0.03, 0.005, 0.0, 0.0, 0.0]
}

/// Whether a bad joint carries the load's current, so that the terminal gives way under it.
fn weakens(of: Hangs, load: Loaded) -> bool {
    let weak = matches!(of, Hangs::Hot { weak: true } | Hangs::Neutral { weak: true });
    weak && load != Loaded::No
}

/// Whether what the instrument itself draws makes a poor ground give way.
const fn ground_sags(of: Hangs, draws: Draws) -> bool {
    matches!((of, draws), (Hangs::Ground { weak: true }, Draws::Much))
}

/// Hot against something at the neutral's potential.
const fn across(weak: bool, ground_sags: bool, load: Loaded) -> Odds {
    match (weak, ground_sags, load) {
        (true, _, Loaded::Heavily) => [0.0, 0.0, 0.02, 0.58, 0.40, 0.0],
        (true, _, _) => [0.0, 0.0, 0.0, 0.10, 0.895, 0.005],
        (false, true, _) => [0.0, 0.0, 0.0, 0.05, 0.945, 0.005],
        (false, false, _) => [0.0, 0.0, 0.0, 0.002, 0.993, 0.005],
    }
}

/// Two terminals at the neutral's potential.
const fn returns(first: Hangs, second: Hangs, load: Loaded) -> Odds {
    use Hangs::{Ground, Neutral, NeutralElsewhere};
    match (first, second) {
        (Ground { .. }, Ground { .. }) => [0.60, 0.38, 0.02, 0.0, 0.0, 0.0],
        (Neutral { weak }, NeutralElsewhere { .. }) | (NeutralElsewhere { .. }, Neutral { weak }) => {
            match (weak, load) {
                (_, Loaded::No) => [0.80, 0.18, 0.02, 0.0, 0.0, 0.0],
                (false, Loaded::Lamp) => [0.70, 0.28, 0.02, 0.0, 0.0, 0.0],
                (false, Loaded::Heavily) => [0.50, 0.43, 0.06, 0.01, 0.0, 0.0],
                (true, _) => [0.48, 0.22, 0.15, 0.15, 0.0, 0.0],
            }
        }
        (Neutral { weak } | NeutralElsewhere { weak }, _) | (_, Neutral { weak } | NeutralElsewhere { weak }) => {
            match (weak, load) {
                (false, Loaded::No) => [0.50, 0.47, 0.03, 0.0, 0.0, 0.0],
                (false, Loaded::Lamp) => [0.30, 0.65, 0.05, 0.0, 0.0, 0.0],
                (false, Loaded::Heavily) => [0.01, 0.80, 0.18, 0.01, 0.0, 0.0],
                (true, Loaded::No) => [0.40, 0.45, 0.12, 0.03, 0.0, 0.0],
                (true, Loaded::Lamp) => [0.05, 0.45, 0.35, 0.15, 0.0, 0.0],
                (true, Loaded::Heavily) => [0.0, 0.02, 0.25, 0.70, 0.03, 0.0],
            }
        }
        _ => one_conductor(),
    }
}
