//! The tests there are, what may come out of each, and how likely that is.

use super::meter_odds::{Draws, Loaded, Three};
use super::reading_odds::{each_three, impedances};
use super::terminals::Slots;
use super::volt_band::VoltBand;
use dwelling::{GroundSeen, LoadState, MeterKind, Reading};

dwelling::names! {
    /// A test at one box.
    Test {
        /// All three pairs with a meter of low impedance, nothing plugged in.
        Pairs = "read-pairs",
        /// All three pairs again with a heavy load plugged in at this opening.
        UnderLoad = "read-under-load",
        /// Hot, neutral and ground each to an independent earth, with a meter of low impedance.
        ToEarth = "read-to-earth",
        /// The impedance of the ground by a loaded test.
        Impedance = "read-ground-impedance",
        /// The circuit off and proved dead, the device drawn out, and a look at what is in the box.
        OpenBox = "open-the-box",
    }
}

dwelling::names! {
    /// What comes out of a test.
    Outcome {
        /// Reads as it should.
        ReadsRight = "reads-right",
        /// No ground arrives.
        NoGround = "no-ground",
        /// Hot and neutral have changed places.
        Reversed = "reversed",
        /// The neutral does not arrive.
        NoNeutral = "no-neutral",
        /// Nothing is live.
        Dead = "dead",
        /// Under load neutral–ground rises: the ground goes back by a way of its own.
        OwnWay = "ground-has-a-way-of-its-own",
        /// Under load neutral–ground stays at nothing: the two are joined nearby.
        Joined = "neutral-and-ground-joined",
        /// Under load the neutral or the hot conductor gives way.
        GivesWay = "gives-way-under-load",
        /// The ground terminal is live.
        GroundLive = "ground-live",
        /// Its impedance is low.
        LowImpedance = "low-impedance",
        /// Its impedance is high.
        HighImpedance = "high-impedance",
        /// No path that an instrument could measure.
        NoPath = "no-path",
        /// A ground was seen, soundly connected.
        SeenSound = "seen-sound",
        /// A grounding conductor was seen that is not connected.
        SeenLoose = "seen-loose",
        /// A grounding conductor was seen cut off.
        SeenCutOff = "seen-cut-off",
        /// No grounding conductor was seen.
        SeenNone = "seen-none",
        /// A jumper was seen.
        SeenJumper = "seen-jumper",
        /// Something else.
        Other = "other",
    }
}

impl Test {
    /// What may come out of it.
    #[must_use]
    pub const fn outcomes(self) -> &'static [Outcome] {
        use Outcome::{
            Dead, GivesWay, GroundLive, HighImpedance, Joined, LowImpedance, NoGround, NoNeutral, NoPath, Other,
            OwnWay, ReadsRight, Reversed, SeenCutOff, SeenJumper, SeenLoose, SeenNone, SeenSound,
        };
        match self {
            Self::Pairs => &[ReadsRight, NoGround, Reversed, NoNeutral, Dead, Other],
            Self::UnderLoad => &[OwnWay, Joined, NoGround, GivesWay, Reversed, NoNeutral, Dead, Other],
            Self::ToEarth => &[ReadsRight, Reversed, GroundLive, Dead, Other],
            Self::Impedance => &[LowImpedance, HighImpedance, NoPath],
            Self::OpenBox => &[SeenSound, SeenLoose, SeenCutOff, SeenNone, SeenJumper, Other],
        }
    }
}

impl Test {
    /// Whether a set of readings is all that the test asks for.
    pub(crate) fn is_made_by(self, reading: &Reading) -> bool {
        let draws = matches!(reading.meter, Some(MeterKind::LowImpedance | MeterKind::TestLamp));
        let pairs = [reading.hot_neutral, reading.hot_ground, reading.neutral_ground].iter().all(Option::is_some);
        let to_earth = [reading.hot_earth, reading.neutral_earth, reading.ground_earth].iter().all(Option::is_some);
        match self {
            Self::Pairs => draws && pairs && reading.load == Some(LoadState::None),
            Self::UnderLoad => draws && pairs && reading.load == Some(LoadState::Heavy),
            Self::ToEarth => draws && to_earth,
            Self::Impedance => reading.ground_impedance.is_some(),
            Self::OpenBox => false,
        }
    }
}

/// How likely each outcome of a test that reads is, in the order of its outcomes, where the slots hang on this. A look into
/// the box has none.
pub(crate) fn outcome_odds(test: Test, slots: Slots) -> Vec<f64> {
    let outcomes = test.outcomes();
    let mut odds = vec![0.0; outcomes.len()];
    let mut add = |outcome: Outcome, more: f64| {
        if let Some(at) = outcomes.iter().position(|one| *one == outcome) {
            odds[at] += more;
        }
    };
    match test {
        Test::Pairs => {
            each_three(slots, Three::Slots, Draws::Much, Loaded::No, |bands, odds| add(unloaded(bands), odds))
        }
        Test::UnderLoad => {
            each_three(slots, Three::Slots, Draws::Much, Loaded::Heavily, |bands, odds| add(loaded(bands), odds))
        }
        Test::ToEarth => {
            each_three(slots, Three::ToEarth, Draws::Much, Loaded::No, |bands, odds| add(earthed(bands), odds))
        }
        Test::Impedance => {
            let found = [Outcome::LowImpedance, Outcome::HighImpedance, Outcome::NoPath];
            found.into_iter().zip(impedances(slots)).for_each(|(outcome, odds)| add(outcome, odds));
        }
        Test::OpenBox => {}
    }
    odds
}

fn unloaded([hot_neutral, hot_ground, neutral_ground]: [VoltBand; 3]) -> Outcome {
    use VoltBand::{Between, Drop, Line, Small, Zero};
    match (hot_neutral, hot_ground, neutral_ground) {
        (Line, Line, Zero | Small) => Outcome::ReadsRight,
        (Line, Zero | Small | Drop | Between, Zero | Small | Drop | Between) => Outcome::NoGround,
        (Line, Zero | Small, Line) => Outcome::Reversed,
        (Zero | Small | Drop | Between, Line, _) => Outcome::NoNeutral,
        (Zero | Small | Drop | Between, Zero | Small | Drop | Between, Zero | Small | Drop | Between) => Outcome::Dead,
        _ => Outcome::Other,
    }
}

fn loaded([hot_neutral, hot_ground, neutral_ground]: [VoltBand; 3]) -> Outcome {
    use VoltBand::{Between, Drop, Line, Small, Zero};
    match (hot_neutral, hot_ground, neutral_ground) {
        (Line, Line, Zero) => Outcome::Joined,
        (Line, Line, Small) => Outcome::OwnWay,
        (Line, Line, Drop | Between) | (Between, Line | Between, _) => Outcome::GivesWay,
        (Line, Zero | Small | Drop | Between, Zero | Small | Drop | Between) => Outcome::NoGround,
        (Line, Zero | Small, Line) => Outcome::Reversed,
        (Zero | Small | Drop, Line, _) => Outcome::NoNeutral,
        (Zero | Small | Drop, Zero | Small | Drop | Between, Zero | Small | Drop | Between) => Outcome::Dead,
        _ => Outcome::Other,
    }
}

fn earthed([hot, neutral, ground]: [VoltBand; 3]) -> Outcome {
    let live = |band: VoltBand| band == VoltBand::Line;
    let cold = |band: VoltBand| band < VoltBand::Between;
    match (live(hot), live(neutral), live(ground)) {
        (_, _, true) => Outcome::GroundLive,
        (true, false, false) if cold(neutral) => Outcome::ReadsRight,
        (false, true, false) if cold(hot) => Outcome::Reversed,
        (false, false, false) => Outcome::Dead,
        _ => Outcome::Other,
    }
}

/// The sightings that make an outcome of a look into the box.
pub(crate) const fn sightings(outcome: Outcome) -> &'static [GroundSeen] {
    match outcome {
        Outcome::SeenSound => &[GroundSeen::Connected, GroundSeen::MetalTight],
        Outcome::SeenLoose => &[GroundSeen::Loose, GroundSeen::Unconnected, GroundSeen::MetalLoose],
        Outcome::SeenCutOff => &[GroundSeen::CutOff],
        Outcome::SeenNone => &[GroundSeen::NoneSeen],
        Outcome::SeenJumper => &[GroundSeen::Jumper],
        Outcome::Other => &[GroundSeen::PipeOrRod],
        _ => &[],
    }
}
