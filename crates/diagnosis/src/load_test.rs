//! What readings under load decide: whether neutral and ground are joined nearby, and whether the ground falls.

use crate::bands::{AGREES_WITHIN, GROUND_FALL_FROM, JOINED_UP_TO, Level, NOTHING_UP_TO, SAG_FROM, level, size_of};
use crate::condition::Certainty;
use crate::evidence::{is_loaded, sinks_phantoms};
use dwelling::{LoadState, MeterKind, Reading};

/// What a loaded test decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum LoadTest {
    /// Neutral–ground stays at nothing although load is on: the two are joined at or near this opening.
    Joined(Certainty),
    /// Neutral–ground rises by the neutral's own drop: the ground goes back by a conductor of its own.
    Separate,
}

/// What the loaded readings among these decide, the worse first.
pub(crate) fn load_test(found: &[Reading]) -> Option<LoadTest> {
    let unloaded = highest(found, |reading| !is_loaded(reading), |reading| reading.hot_neutral);
    let decided: Vec<LoadTest> = found.iter().filter_map(|reading| decided_by(reading, unloaded)).collect();
    let joined = decided.iter().filter_map(|test| match test {
        LoadTest::Joined(sure) => Some(*sure),
        LoadTest::Separate => None,
    });
    joined.min().map(LoadTest::Joined).or_else(|| decided.first().copied())
}

/// What one loaded set of readings decides.
///
/// # Formula
/// With `v` the drop of one conductor: a true ground reads `hot–neutral = V − 2v`, `hot–ground = V − v`,
/// `neutral–ground = v`; a jumper reads `hot–neutral = hot–ground = V − 2v`, `neutral–ground = 0`.
fn decided_by(reading: &Reading, unloaded: Option<i64>) -> Option<LoadTest> {
    if !is_loaded(reading) || reading.hot_neutral.map(level) != Some(Level::Line) {
        return None;
    }
    let hot_neutral = size_of(reading.hot_neutral?);
    let hot_ground = size_of(reading.hot_ground?);
    let neutral_ground = size_of(reading.neutral_ground?);
    let agrees_within = AGREES_WITHIN.as_millivolts();
    if neutral_ground > JOINED_UP_TO.as_millivolts() {
        let adds_up = (hot_ground - hot_neutral - neutral_ground).abs() <= agrees_within;
        return (adds_up && neutral_ground <= NOTHING_UP_TO.as_millivolts()).then_some(LoadTest::Separate);
    }
    if (hot_ground - hot_neutral).abs() > agrees_within {
        return None;
    }
    let sags = unloaded.is_some_and(|unloaded| unloaded - hot_neutral >= SAG_FROM.as_millivolts());
    let heavy = reading.load == Some(LoadState::Heavy) || reading.meter == Some(MeterKind::LoadTester);
    match (heavy, sags) {
        (true, true) => Some(LoadTest::Joined(Certainty::Shown)),
        (true, false) | (false, true) => Some(LoadTest::Joined(Certainty::Likely)),
        (false, false) => None,
    }
}

/// Whether hot–ground falls under load, or under an instrument that draws current, by more than hot–neutral does.
pub(crate) fn ground_falls(found: &[Reading]) -> bool {
    let draws = |reading: &Reading| is_loaded(reading) || sinks_phantoms(reading);
    let idle_ground = highest(found, |reading| !draws(reading), |reading| reading.hot_ground);
    let idle_neutral = highest(found, |reading| !draws(reading), |reading| reading.hot_neutral);
    found.iter().filter(|reading| draws(reading)).any(|reading| {
        let Some(hot_ground) = reading.hot_ground.filter(|volts| level(*volts) == Level::Line).map(size_of) else {
            return false;
        };
        let threshold = GROUND_FALL_FROM.as_millivolts();
        let below_neutral = reading
            .hot_neutral
            .is_some_and(|neutral| level(neutral) == Level::Line && size_of(neutral) - hot_ground >= threshold);
        let neutral_fall = idle_neutral.zip(reading.hot_neutral.map(size_of)).map_or(0, |(idle, drawn)| idle - drawn);
        let falls = idle_ground.is_some_and(|idle| idle - hot_ground - neutral_fall.max(0) >= threshold);
        below_neutral || falls
    })
}

/// The highest line voltage between one pair among some of the readings, in millivolts.
fn highest(
    found: &[Reading],
    among: impl Fn(&Reading) -> bool,
    pair: impl Fn(&Reading) -> Option<electrical::Volts>,
) -> Option<i64> {
    let volts = found.iter().filter(|reading| among(reading)).filter_map(pair);
    volts.filter(|volts| level(*volts) == Level::Line).map(size_of).max()
}

#[cfg(test)]
mod tests {
    use super::*;
    use electrical::Volts;

    fn read(load: LoadState, millivolts: [i64; 3]) -> Reading {
        let [hot_neutral, hot_ground, neutral_ground] = millivolts.map(|volts| Some(Volts::millivolts(volts)));
        Reading { hot_neutral, hot_ground, neutral_ground, load: Some(load), ..Reading::default() }
    }

    /// Published: an instrument application note on three receptacle voltages, 118.5 | 120.0 | 1.5 V under load.
    #[test]
    fn a_neutral_drop_that_adds_up_shows_a_ground_of_its_own() {
        let loaded = read(LoadState::Heavy, [118_500, 120_000, 1_500]);
        assert_eq!(load_test(&[loaded]), Some(LoadTest::Separate));
    }

    /// By hand: 12 A through 0.15 Ω each way drops 1.8 V twice: 120 − 3.6 = 116.4 V, and a jumper hides the neutral's.
    #[test]
    fn no_rise_while_hot_neutral_sags_shows_a_join() {
        let idle = read(LoadState::None, [120_000, 120_000, 0]);
        let loaded = read(LoadState::Heavy, [116_400, 116_400, 0]);
        assert_eq!(load_test(&[idle, loaded.clone()]), Some(LoadTest::Joined(Certainty::Shown)));
        assert_eq!(load_test(&[loaded]), Some(LoadTest::Joined(Certainty::Likely)));
    }

    #[test]
    fn a_lamp_that_makes_no_sag_decides_nothing() {
        let idle = read(LoadState::None, [120_000, 120_000, 0]);
        let lamp = read(LoadState::Lamp, [119_900, 119_900, 0]);
        assert_eq!(load_test(&[idle, lamp]), None);
    }

    /// By hand: both pairs share the hot conductor's drop, so a sound ground falls less than hot–neutral does.
    #[test]
    fn hot_ground_falling_below_hot_neutral_is_a_poor_ground() {
        let idle = read(LoadState::None, [120_000, 120_000, 0]);
        assert!(ground_falls(&[idle.clone(), read(LoadState::Heavy, [117_000, 110_000, 7_000])]));
        assert!(!ground_falls(&[idle, read(LoadState::Heavy, [116_400, 118_200, 1_800])]));
    }
}
