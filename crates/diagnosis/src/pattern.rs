//! What one set of three readings looks like, before anything else is taken into account.

use crate::bands::{Level, NEUTRAL_DROP_UP_TO, level, size_of};
use dwelling::{LoadState, Reading};

/// The state of the wiring that one set of readings looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Pattern {
    /// No pair was measured, or too few to say anything.
    Silent,
    /// Hot–neutral and hot–ground at line voltage, neutral–ground at nothing: all three measured.
    Right,
    /// Line voltage from hot to ground, but not all three pairs were measured.
    HotGroundPresent,
    /// As right, but neutral–ground is above what a sound neutral drops.
    NeutralDrop,
    /// The ground floats.
    OpenGround,
    /// Hot–ground at nothing with too little measured to tell a floating ground from reversed polarity.
    OpenGroundOrReversed,
    /// Hot–neutral at line voltage, hot–ground at nothing, neutral–ground at line voltage.
    HotNeutralReversed,
    /// The neutral floats.
    OpenNeutral,
    /// The neutral is at line voltage: open with a load on, or hot and ground changed over.
    NeutralHot,
    /// Hot–neutral reads nothing, and hot–ground no line voltage.
    Dead,
    /// Hot–neutral is neither nothing nor line voltage, and hot–ground does not help.
    LowVoltage,
    /// A pair has more than line voltage.
    OverVoltage,
    /// No state of the wiring reads like this.
    Disagree,
}

/// What one set of readings looks like.
pub(crate) fn pattern(reading: &Reading) -> Pattern {
    use Level::{Between, Line, Nothing, Over};
    let hot_neutral = reading.hot_neutral.map(level);
    let hot_ground = reading.hot_ground.map(level);
    let neutral_ground = reading.neutral_ground.map(level);
    let drop = reading.neutral_ground.is_some_and(|volts| size_of(volts) <= NEUTRAL_DROP_UP_TO.as_millivolts());
    let loaded = matches!(reading.load, Some(LoadState::Lamp | LoadState::Heavy));
    match (hot_neutral, hot_ground, neutral_ground) {
        (None, None, _) => Pattern::Silent,
        (Some(Over), ..) | (_, Some(Over), _) | (.., Some(Over)) => Pattern::OverVoltage,
        (Some(Line), Some(Line), Some(Nothing)) => Pattern::Right,
        (Some(Line), Some(Line), Some(Between)) if drop => Pattern::NeutralDrop,
        (Some(Line), Some(Line), Some(Between)) => Pattern::OpenGround,
        (Some(Line), Some(Line), Some(Line)) => Pattern::Disagree,
        (Some(Line) | None, Some(Line), None) | (None, Some(Line), Some(Nothing)) => Pattern::HotGroundPresent,
        (Some(Line) | None, Some(Nothing), Some(Line)) => Pattern::HotNeutralReversed,
        (Some(Line), Some(Nothing), None) | (Some(Line), None, Some(Line)) => Pattern::OpenGroundOrReversed,
        (Some(Line), Some(Nothing | Between), _) => Pattern::OpenGround,
        (Some(Line), None, Some(Between)) if drop => Pattern::NeutralDrop,
        (Some(Line), None, Some(Between)) => Pattern::OpenGround,
        (Some(Line), None, Some(Nothing) | None) => Pattern::Silent,
        (Some(Nothing | Between) | None, Some(Line), Some(Line)) | (Some(Nothing | Between), None, Some(Line)) => {
            Pattern::NeutralHot
        }
        (Some(Between), Some(Line), Some(Between)) if loaded && drop => Pattern::NeutralDrop,
        (Some(Nothing | Between), Some(Line), _) => Pattern::OpenNeutral,
        (Some(Nothing | Between), Some(Nothing | Between), Some(Line)) => Pattern::Disagree,
        (Some(Nothing), ..) => Pattern::Dead,
        (Some(Between), ..) => Pattern::LowVoltage,
        (None, Some(Line), Some(Between)) => Pattern::Disagree,
        (None, Some(Between), _) => Pattern::OpenGround,
        (None, Some(Nothing), _) => Pattern::Silent,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use electrical::Volts;

    fn read(hot_neutral: i64, hot_ground: i64, neutral_ground: i64) -> Pattern {
        pattern(&Reading {
            hot_neutral: Some(Volts::new(hot_neutral)),
            hot_ground: Some(Volts::new(hot_ground)),
            neutral_ground: Some(Volts::new(neutral_ground)),
            ..Reading::default()
        })
    }

    /// Common practice, no source: the table of conditions that every troubleshooter carries.
    #[test]
    fn the_table_of_conditions_reads_as_the_trade_reads_it() {
        assert_eq!(read(120, 120, 0), Pattern::Right);
        assert_eq!(read(120, 60, 48), Pattern::OpenGround);
        assert_eq!(read(40, 120, 70), Pattern::OpenNeutral);
        assert_eq!(read(0, 0, 0), Pattern::Dead);
        assert_eq!(read(120, 1, 120), Pattern::HotNeutralReversed);
        assert_eq!(read(1, 120, 120), Pattern::NeutralHot);
    }

    #[test]
    fn two_pairs_are_never_enough_for_right() {
        let two =
            Reading { hot_neutral: Some(Volts::new(120)), hot_ground: Some(Volts::new(120)), ..Reading::default() };
        assert_eq!(pattern(&two), Pattern::HotGroundPresent);
    }

    #[test]
    fn three_line_voltages_fit_nothing() {
        assert_eq!(read(120, 120, 120), Pattern::Disagree);
    }
}
