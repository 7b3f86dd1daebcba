//! What all readings at a box, taken together, say of its ground.

use crate::bands::{Level, POOR_ABOVE, level};
use crate::condition::Certainty;
use crate::evidence::sinks_phantoms;
use crate::load_test::{LoadTest, ground_falls, load_test};
use crate::pattern::{Pattern, pattern};
use dwelling::{MeterKind, Reading, TesterVerdict};

/// What the readings at a box say of its ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum GroundReading {
    /// Nothing.
    Silent,
    /// To an independent earth, the ground terminal is at line voltage and polarity is reversed.
    ReversedJoined(Certainty),
    /// Neutral and ground are joined nearby.
    Joined(Certainty),
    /// No ground arrives.
    Open(Certainty),
    /// A ground of high impedance arrives.
    Poor(Certainty),
    /// A loaded test shows a conductor of its own back to where neutral and ground belong together.
    Separate,
    /// It reads right, unloaded or on a plug-in tester.
    Right,
    /// Some readings speak for a ground and some against it.
    Mixed,
}

/// What all readings at a box say of its ground.
pub(crate) fn ground_reading(found: &[Reading]) -> GroundReading {
    if let Some(sure) = found.iter().filter_map(reversed_joined).min() {
        return GroundReading::ReversedJoined(sure);
    }
    let loaded = load_test(found);
    if let Some(LoadTest::Joined(sure)) = loaded {
        return GroundReading::Joined(sure);
    }
    if found.iter().any(|reading| reading.tester == Some(TesterVerdict::FalseGround)) {
        return GroundReading::Joined(Certainty::Likely);
    }
    let open = found.iter().filter_map(says_open).min();
    if open == Some(Certainty::Shown) {
        return GroundReading::Open(Certainty::Shown);
    }
    if found.iter().filter_map(|reading| reading.ground_impedance).any(|ohms| ohms > POOR_ABOVE) {
        return GroundReading::Poor(Certainty::Shown);
    }
    if ground_falls(found) {
        return GroundReading::Poor(Certainty::Likely);
    }
    match (open, found.iter().any(says_right), loaded) {
        (Some(_), true, _) | (Some(_), false, Some(LoadTest::Separate)) => GroundReading::Mixed,
        (Some(sure), false, _) => GroundReading::Open(sure),
        (None, _, Some(LoadTest::Separate)) => GroundReading::Separate,
        (None, true, _) => GroundReading::Right,
        (None, false, _) => GroundReading::Silent,
    }
}

/// Whether readings to an independent earth show a ground terminal on the hot conductor with polarity reversed.
fn reversed_joined(reading: &Reading) -> Option<Certainty> {
    let at = |volts: Option<_>, wanted| volts.map(level) == Some(wanted);
    (at(reading.hot_earth, Level::Nothing)
        && at(reading.ground_earth, Level::Line)
        && reading.neutral_earth.is_none_or(|volts| level(volts) == Level::Line))
    .then_some(if reading.neutral_earth.is_some() { Certainty::Shown } else { Certainty::Likely })
}

/// Whether one set of readings says that no ground arrives, and how surely.
fn says_open(reading: &Reading) -> Option<Certainty> {
    let collapsed = reading.hot_ground.map(level) == Some(Level::Nothing);
    if pattern(reading) == Pattern::OpenGround {
        return Some(match reading.meter {
            _ if sinks_phantoms(reading) && collapsed => Certainty::Shown,
            _ if sinks_phantoms(reading) => Certainty::Likely,
            Some(MeterKind::HighImpedance) => Certainty::Likely,
            _ => Certainty::Possible,
        });
    }
    (reading.tester == Some(TesterVerdict::OpenGround)).then_some(Certainty::Likely)
}

/// Whether one set of readings looks right in all three pairs, or a plug-in tester says so.
fn says_right(reading: &Reading) -> bool {
    pattern(reading) == Pattern::Right || reading.tester == Some(TesterVerdict::Correct)
}

#[cfg(test)]
mod tests {
    use super::*;
    use dwelling::LoadState;
    use electrical::Volts;

    fn read(pairs: [i64; 3], meter: Option<MeterKind>, load: LoadState) -> Reading {
        let [hot_neutral, hot_ground, neutral_ground] = pairs.map(|volts| Some(Volts::millivolts(volts)));
        Reading { hot_neutral, hot_ground, neutral_ground, meter, load: Some(load), ..Reading::default() }
    }

    #[test]
    fn a_phantom_needs_to_know_the_meter() {
        let floats = [120_000, 60_000, 48_000];
        let by = |meter| ground_reading(&[read(floats, meter, LoadState::None)]);
        assert_eq!(by(Some(MeterKind::HighImpedance)), GroundReading::Open(Certainty::Likely));
        assert_eq!(by(None), GroundReading::Open(Certainty::Possible));
    }

    #[test]
    fn what_collapses_under_a_low_impedance_meter_was_no_ground() {
        let high = read([120_000, 118_000, 2_000], Some(MeterKind::HighImpedance), LoadState::None);
        let low = read([120_000, 0, 0], Some(MeterKind::LowImpedance), LoadState::None);
        assert_eq!(ground_reading(std::slice::from_ref(&high)), GroundReading::Right);
        assert_eq!(ground_reading(&[high, low]), GroundReading::Open(Certainty::Shown));
    }
}
