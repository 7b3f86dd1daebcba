//! Lengths, exact in inches and in millimetres alike.

use std::fmt;

/// A length, kept in whole micrometres so that inches and millimetres are both exact.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

/// Published: the international inch is exactly 25.4 mm (NIST SP 811, appendix B).
const MICROMETRES_PER_INCH: i64 = 25_400;
const INCHES_PER_FOOT: i64 = 12;
const MICROMETRES_PER_METRE: f64 = 1_000_000.0;

impl Length {
    /// No length at all.
    pub const ZERO: Self = Self(0);

    /// A length of whole micrometres.
    #[must_use]
    pub const fn micrometres(micrometres: i64) -> Self {
        Self(micrometres)
    }

    /// A length of whole feet and inches.
    #[must_use]
    pub const fn feet_and_inches(feet: i64, inches: i64) -> Self {
        Self((feet * INCHES_PER_FOOT + inches) * MICROMETRES_PER_INCH)
    }

    /// A length of whole feet.
    #[must_use]
    pub const fn feet(feet: i64) -> Self {
        Self::feet_and_inches(feet, 0)
    }

    /// The length in whole micrometres.
    #[must_use]
    pub const fn as_micrometres(self) -> i64 {
        self.0
    }

    /// The length in feet.
    #[must_use]
    pub fn as_feet(self) -> f64 {
        self.0 as f64 / (INCHES_PER_FOOT * MICROMETRES_PER_INCH) as f64
    }

    /// The length in metres.
    #[must_use]
    pub fn as_metres(self) -> f64 {
        self.0 as f64 / MICROMETRES_PER_METRE
    }

    /// The length nearest to so many metres. Any number: one too large for the type becomes its greatest length.
    #[must_use]
    pub fn nearest_to_metres(metres: f64) -> Self {
        Self((metres * MICROMETRES_PER_METRE).round() as i64)
    }

    /// The length in whole feet, a started foot counted as one.
    #[must_use]
    pub const fn started_feet(self) -> i64 {
        let foot = INCHES_PER_FOOT * MICROMETRES_PER_INCH;
        (self.0 + foot - 1).div_euclid(foot)
    }
}

impl std::ops::Add for Length {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl fmt::Display for Length {
    /// Feet and inches to the nearest tenth of an inch: `14 ft`, `5 ft 6 in`, `5 ft 6.5 in`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tenths = (self.0 * 10 + MICROMETRES_PER_INCH / 2).div_euclid(MICROMETRES_PER_INCH);
        let (feet, tenths) = (tenths.div_euclid(120), tenths.rem_euclid(120));
        let inches =
            if tenths % 10 == 0 { format!("{}", tenths / 10) } else { format!("{}.{}", tenths / 10, tenths % 10) };
        match (feet, tenths) {
            (_, 0) => write!(f, "{feet} ft"),
            (0, _) => write!(f, "{inches} in"),
            _ => write!(f, "{feet} ft {inches} in"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_written_in_feet_and_inches() {
        assert_eq!(Length::feet(14).to_string(), "14 ft");
        assert_eq!(Length::feet_and_inches(5, 6).to_string(), "5 ft 6 in");
        assert_eq!(Length::feet_and_inches(0, 7).to_string(), "7 in");
        assert_eq!(Length::micrometres(1_000_000).to_string(), "3 ft 3.4 in");
    }

    #[test]
    fn a_started_foot_counts_as_one() {
        assert_eq!(Length::feet_and_inches(14, 1).started_feet(), 15);
        assert_eq!(Length::feet(14).started_feet(), 14);
    }
}
