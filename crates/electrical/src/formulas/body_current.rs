//! What a current does to a body, and how far a Class A device stays from the worst.

use super::gfci::longest_time;
use crate::{Current, OutOfRange, Resistance, TimeSpan, Voltage};

/// A threshold or band that a table of effects prints, at 60 Hz. Where one number is printed both ends are it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effect {
    /// What happens.
    pub what: &'static str,
    /// From this current.
    pub from: Current,
    /// To this current.
    pub to: Current,
    /// Who printed it.
    pub source: &'static str,
}

/// Thresholds as printed. The tables disagree with each other, fibrillation by a factor of ten: the lower one counts.
pub const EFFECTS: [Effect; 14] = [
    effect("99.5 % of women can let go", 6.0, 6.0, DALZIEL),
    effect("breathing stops, path through the chest", 20.0, 40.0, DALZIEL),
    effect(
        "general safety threshold",
        5.0,
        5.0,
        "survey of 50/60 Hz shock thresholds, scilit.net/publications/2098deef",
    ),
    effect("average perception, men", 1.1, 1.1, "electro-tech-online.com, digest of let-go averages"),
    effect("average perception, women", 0.6, 0.6, "electro-tech-online.com, digest of let-go averages"),
    effect("loss of muscular control, women", 6.0, 25.0, OSHA),
    effect("let-go range, men", 9.0, 30.0, OSHA),
    effect("breathing stops", 50.0, 150.0, OSHA),
    effect("fibrillation, the high band", 1000.0, 4300.0, OSHA),
    effect("let-go, an average man", 16.0, 16.0, NIOSH),
    effect("breathing stops, threshold", 20.0, 20.0, NIOSH),
    effect("fibrillation, threshold", 100.0, 100.0, NIOSH),
    effect("painful, control is being lost", 6.0, 16.0, "NIOSH 1998 and Greenwald 1991, as reproduced"),
    effect("cannot let go, below 10 ms", 200.0, 200.0, "IEC 479-1, zdroje.elektrika.cz, page 20"),
];

/// A shock shorter than 0.1 s needs more than this to fibrillate, and must meet the heart at the wrong moment.
/// Published: zdroje.elektrika.cz, Introduction to electrical engineering, page 24.
pub const FIBRILLATION_BELOW_A_TENTH_OF_A_SECOND: Current = Current::milliamperes(500.0);

const DALZIEL: &str = "Dalziel and Lee 1968, Reevaluation of Lethal Electric Currents";
const OSHA: &str = "OSHA table of effects, 1 s hand to foot, as reproduced";
const NIOSH: &str = "NIOSH 1998, table of effects, as reproduced";

const fn effect(what: &'static str, from: f64, to: f64, source: &'static str) -> Effect {
    Effect { what, from: Current::milliamperes(from), to: Current::milliamperes(to), source }
}

/// The weight of the body the limit of fibrillation is taken for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BodyWeight {
    /// 50 kg, the safer one.
    Kg50,
    /// 70 kg.
    Kg70,
}

impl BodyWeight {
    /// The constant of the limit in mA·√s. Published: Dalziel and Lee 1968 for 50 kg; for 70 kg from memory, IEEE 80.
    #[must_use]
    pub const fn fibrillation_constant(self) -> f64 {
        match self {
            Self::Kg50 => 116.0,
            Self::Kg70 => 157.0,
        }
    }
}

/// The current that 99.5 % of bodies stand for a time without fibrillation.
///
/// # Formula
/// `I = 116 mA / sqrt(t)` for 50 kg, 157 mA for 70 kg, t in s.
///
/// # Source
/// Dalziel and Lee 1968; IEEE 80, from memory, for 70 kg and for the range.
///
/// # Range
/// 8 ms to 5 s; drawn on to 5.6 s, the longest time of a Class A device at 6 mA.
///
/// # Errors
/// [`OutOfRange`] for any other time.
///
/// # Example
/// ```
/// use electrical::{TimeSpan, formulas::body_current::{BodyWeight, fibrillation_limit}};
/// let limit = fibrillation_limit(BodyWeight::Kg50, TimeSpan::seconds(1.0))?;
/// assert_eq!(limit.as_milliamperes().round(), 116.0);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn fibrillation_limit(weight: BodyWeight, time: TimeSpan) -> Result<Current, OutOfRange> {
    let seconds = OutOfRange::check("time of the shock, s", time.as_seconds(), 0.008, 5.6)?;
    Ok(Current::milliamperes(weight.fibrillation_constant() / seconds.sqrt()))
}

/// How many times the limit of fibrillation lies above a current that a Class A device interrupts as late as it may.
///
/// # Formula
/// `(116 / sqrt(t)) / I` with `t = (20 / I)^1.43`.
///
/// # Source
/// [`fibrillation_limit`] for 50 kg and [`longest_time`].
///
/// # Range
/// 6 to 264 mA.
///
/// # Errors
/// [`OutOfRange`] for any other current.
///
/// # Example
/// ```
/// use electrical::{Current, formulas::body_current::class_a_margin};
/// assert_eq!(format!("{:.1}", class_a_margin(Current::milliamperes(100.0))?), "3.7");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn class_a_margin(current: Current) -> Result<f64, OutOfRange> {
    Ok(fibrillation_limit(BodyWeight::Kg50, longest_time(current)?)? / current)
}

/// The impedance of a body from hand to hand, dry and over a large area, that 5, 50 and 95 % of people do not exceed, at a
/// touch voltage of 125 V. Published: IEC 479-1 as reproduced at idea2ic.com/CheatSheet_2/GFI.txt.
pub const BODY_IMPEDANCE_AT_125_V: [Resistance; 3] =
    [Resistance::ohms(1125.0), Resistance::ohms(1625.0), Resistance::ohms(2875.0)];

/// The body resistance that the standard for Class A devices takes: wet, hand to foot. From memory: UL 943.
pub const BODY_RESISTANCE_OF_TESTS: Resistance = Resistance::ohms(500.0);

/// The current through a body.
///
/// # Formula
/// `I = V / R`.
///
/// # Source
/// Ohm's law.
///
/// # Range
/// Bodies from 100 to 100 000 Ω; voltages from 0 to 300 V.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Voltage, formulas::body_current::{BODY_RESISTANCE_OF_TESTS, through_body}};
/// let current = through_body(Voltage::volts(120.0), BODY_RESISTANCE_OF_TESTS)?;
/// assert_eq!(current.as_milliamperes().round(), 240.0);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn through_body(voltage: Voltage, body: Resistance) -> Result<Current, OutOfRange> {
    OutOfRange::check("touch voltage, V", voltage.as_volts(), 0.0, 300.0)?;
    OutOfRange::check("body resistance, Ω", body.as_ohms(), 100.0, 100_000.0)?;
    Ok(voltage / body)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formulas::assert_near;

    /// The band of an effect in milliamperes.
    fn band(what: &str, source: &str) -> (f64, f64) {
        let found = EFFECTS.iter().find(|effect| effect.what == what && effect.source.starts_with(source)).unwrap();
        (found.from.as_milliamperes(), found.to.as_milliamperes())
    }

    #[track_caller]
    fn assert_band(what: &str, source: &str, expected: (f64, f64)) {
        let (from, to) = band(what, source);
        assert_near(from, expected.0, 1e-9);
        assert_near(to, expected.1, 1e-9);
    }

    /// Published: Dalziel and Lee, Reevaluation of Lethal Electric Currents, 1968 (abstract): 6 mA, 20 to 40 mA, 116 mA.
    #[test]
    fn the_limits_of_dalziel_and_lee() {
        assert_band("99.5 % of women can let go", "Dalziel", (6.0, 6.0));
        assert_band("breathing stops, path through the chest", "Dalziel", (20.0, 40.0));
        assert_near(BodyWeight::Kg50.fibrillation_constant(), 116.0, 0.0);
        let at = |seconds| fibrillation_limit(BodyWeight::Kg50, TimeSpan::seconds(seconds)).unwrap().as_milliamperes();
        assert_near(at(1.0), 116.0, 0.1);
        assert_near(at(0.1), 366.8, 0.1);
    }

    /// From memory: IEEE 80, 157 mA·√s for 70 kg.
    #[test]
    fn a_heavier_body_stands_more() {
        assert_near(BodyWeight::Kg70.fibrillation_constant(), 157.0, 0.0);
    }

    /// Published: scilit.net/publications/2098deef: 5 mA; electro-tech-online.com: 1.1 and 0.6 mA.
    #[test]
    fn thresholds_of_safety_and_of_perception() {
        assert_band("general safety threshold", "survey", (5.0, 5.0));
        assert_band("average perception, men", "electro", (1.1, 1.1));
        assert_band("average perception, women", "electro", (0.6, 0.6));
    }

    /// Published: zdroje.elektrika.cz, Introduction to electrical engineering, pages 20 and 24: 200 mA and 500 mA.
    #[test]
    fn short_shocks() {
        assert_band("cannot let go, below 10 ms", "IEC", (200.0, 200.0));
        assert_near(FIBRILLATION_BELOW_A_TENTH_OF_A_SECOND.as_milliamperes(), 500.0, 1e-9);
    }

    /// Published: hobbyprojects.com, an OSHA table: 6 to 25, 9 to 30, 50 to 150, 1000 to 4300 mA.
    #[test]
    fn the_osha_bands() {
        assert_band("loss of muscular control, women", "OSHA", (6.0, 25.0));
        assert_band("let-go range, men", "OSHA", (9.0, 30.0));
        assert_band("breathing stops", "OSHA", (50.0, 150.0));
        assert_band("fibrillation, the high band", "OSHA", (1000.0, 4300.0));
    }

    /// Published: bbs.angui.org/thread-108240-2-1.html and scienceforgoodlife.blogspot.com, NIOSH tables: 16, 20, 100 mA;
    /// 6 to 16 mA.
    #[test]
    fn the_niosh_thresholds() {
        assert_band("let-go, an average man", "NIOSH", (16.0, 16.0));
        assert_band("breathing stops, threshold", "NIOSH", (20.0, 20.0));
        assert_band("fibrillation, threshold", "NIOSH", (100.0, 100.0));
        assert_band("painful, control is being lost", "NIOSH", (6.0, 16.0));
    }

    /// Published: idea2ic.com/CheatSheet_2/GFI.txt, on IEC 479-1: 1125, 1625 and 2875 Ω.
    /// By hand: 120 V over them are 107, 74 and 42 mA.
    #[test]
    fn a_dry_body_on_120_v() {
        let found = BODY_IMPEDANCE_AT_125_V.map(|body| body.as_ohms());
        assert_eq!(found, [1125.0, 1625.0, 2875.0]);
        for (body, milliamperes) in BODY_IMPEDANCE_AT_125_V.into_iter().zip([107.0, 74.0, 42.0]) {
            let current = through_body(Voltage::volts(120.0), body).unwrap();
            assert_near(current.as_milliamperes(), milliamperes, 0.5);
        }
    }

    /// By hand: limits of 49.0, 366.6 and 734 mA over 6, 100 and 264 mA: 8.2, 3.7 and 2.8.
    #[test]
    fn a_class_a_device_stays_below_the_limit_over_its_whole_range() {
        for (milliamperes, margin) in [(6.0, 8.2), (100.0, 3.7), (264.0, 2.8)] {
            assert_near(class_a_margin(Current::milliamperes(milliamperes)).unwrap(), margin, 0.05);
        }
        for milliamperes in 6..=264 {
            assert!(class_a_margin(Current::milliamperes(f64::from(milliamperes))).unwrap() > 2.5);
        }
    }

    #[test]
    fn times_and_bodies_out_of_range_are_refused() {
        assert!(fibrillation_limit(BodyWeight::Kg50, TimeSpan::seconds(0.001)).is_err());
        assert!(fibrillation_limit(BodyWeight::Kg50, TimeSpan::seconds(60.0)).is_err());
        assert!(through_body(Voltage::volts(120.0), Resistance::ohms(0.0)).is_err());
    }
}
