//! The bands that readings fall into, each with where it comes from.

use electrical::{Ohms, Volts};

/// At or below this a pair of slots reads as nothing: an unloaded neutral–ground is 0–2 V, a loaded one up to 3 V.
///
/// Published: inspectors' forum on proving a local false ground ("above 3 V is a problem"); other sources say 2 V or 5 V.
pub(crate) const NOTHING_UP_TO: Volts = Volts::new(3);

/// Up to this a voltage may be a phantom; above it a pair of slots reads line voltage.
///
/// Published: a question-and-answer page on ghost voltages puts the highest at 80–85 % of the source; 85 % of 120 V.
pub const PHANTOM_UP_TO: Volts = Volts::new(102);

/// Above this there is more than line voltage.
///
/// Published: an appliance technicians' academy on testing a 120 V receptacle, 120 V plus 10 %.
pub(crate) const LINE_UP_TO: Volts = Volts::new(132);

/// Up to this a neutral–ground reading above [`NOTHING_UP_TO`] is a neutral's own drop; beyond it a conductor floats.
///
/// Common practice, no source: a tenth of 120 V, more than any joint drops without getting hot.
pub(crate) const NEUTRAL_DROP_UP_TO: Volts = Volts::new(12);

/// At or below this under load, neutral and ground are joined nearby.
///
/// Published: inspectors' forum on proving a local false ground (a true ground rises with load, a jumper stays at zero);
/// the figure is common practice, no source.
pub const JOINED_UP_TO: Volts = Volts::millivolts(100);

/// Hot–neutral must fall by this much to show that the load was on the wires that were read.
///
/// Common practice, no source.
pub(crate) const SAG_FROM: Volts = Volts::new(1);

/// How far hot–ground may differ from hot–neutral plus neutral–ground and still agree: the meter's last digits.
///
/// Common practice, no source.
pub(crate) const AGREES_WITHIN: Volts = Volts::millivolts(500);

/// Hot–ground falling by this much more than hot–neutral does points to the ground and not to the hot conductor.
///
/// Common practice, no source.
pub(crate) const GROUND_FALL_FROM: Volts = Volts::new(3);

/// A grounding path above this is poor.
///
/// Published: one instrument maker's rule of thumb, under 1 Ω for people; common practice.
pub const POOR_ABOVE: Ohms = Ohms::milliohms(1_000);

/// A path above this is likely earth and not metal: a rod or a pipe.
///
/// Common practice, no source.
pub(crate) const EARTH_PATH_ABOVE: Ohms = Ohms::milliohms(5_000);

/// How far each leg of a multiwire set must be from the mean of both, opposite ways, to show an open shared neutral.
///
/// Common practice, no source: a tenth of 120 V, more than an uneven load makes on a sound neutral.
pub(crate) const LEGS_APART_FROM: Volts = Volts::new(12);

/// The two legs of a 120/240 V supply add up to this at least.
///
/// By hand: 240 V less 10 % is 216 V.
pub(crate) const BOTH_LEGS_FROM: Volts = Volts::new(216);

/// The two legs of a 120/240 V supply add up to this at most.
///
/// By hand: 240 V plus 10 % is 264 V.
pub(crate) const BOTH_LEGS_UP_TO: Volts = Volts::new(264);

/// Larger readings count as this: no sum of a few of them overflows, and all are over any line voltage.
const LARGEST: i64 = i64::MAX / 8;

/// The magnitude of a reading in millivolts: which probe was where does not matter on alternating current.
pub(crate) fn size_of(volts: Volts) -> i64 {
    volts.as_millivolts().saturating_abs().min(LARGEST)
}

/// Where a reading lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Level {
    /// Nothing, or a conductor's own drop.
    Nothing,
    /// Neither nothing nor line voltage: a phantom, or a share of the line voltage.
    Between,
    /// Line voltage.
    Line,
    /// More than line voltage.
    Over,
}

/// The band a reading lies in.
pub(crate) fn level(volts: Volts) -> Level {
    let size = size_of(volts);
    if size <= NOTHING_UP_TO.as_millivolts() {
        Level::Nothing
    } else if size <= PHANTOM_UP_TO.as_millivolts() {
        Level::Between
    } else if size <= LINE_UP_TO.as_millivolts() {
        Level::Line
    } else {
        Level::Over
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: question-and-answer page on ghost voltages, 80–85 % of the source; by hand, 0.85 × 120 V = 102 V.
    #[test]
    fn the_highest_phantom_is_not_yet_line_voltage() {
        assert_eq!(level(Volts::new(102)), Level::Between);
        assert_eq!(level(Volts::new(103)), Level::Line);
    }

    /// Published: appliance technicians' academy, 120 V plus 10 %; by hand, 132 V.
    #[test]
    fn ten_percent_over_is_still_line_voltage() {
        assert_eq!(level(Volts::new(132)), Level::Line);
        assert_eq!(level(Volts::new(133)), Level::Over);
    }

    #[test]
    fn probes_changed_over_read_the_same() {
        assert_eq!(level(Volts::new(-120)), Level::Line);
        assert_eq!(level(Volts::millivolts(i64::MIN)), Level::Over);
    }
}
