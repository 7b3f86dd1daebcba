//! The answer of a calculation that was asked for something outside what it was made for.

use std::fmt;

/// A value lies outside the range that a formula holds for. Nothing was calculated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// What the value is, with its unit: `conductor temperature, °C`.
    pub what: &'static str,
    /// The value that was given, in that unit.
    pub given: f64,
    /// The least value the formula holds for, in that unit.
    pub least: f64,
    /// The greatest value the formula holds for, in that unit.
    pub most: f64,
}

impl OutOfRange {
    /// The given value, if it lies in the range, ends included.
    ///
    /// # Range
    /// Any numbers; one that is no number lies in no range.
    ///
    /// # Errors
    /// [`OutOfRange`] if it does not.
    pub fn check(what: &'static str, given: f64, least: f64, most: f64) -> Result<f64, Self> {
        if (least..=most).contains(&given) { Ok(given) } else { Err(Self { what, given, least, most }) }
    }
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {} is not between {} and {}", self.what, self.given, self.least, self.most)
    }
}

impl std::error::Error for OutOfRange {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_of_a_range_belong_to_it_and_what_is_no_number_does_not() {
        assert_eq!(OutOfRange::check("current, mA", 6.0, 6.0, 264.0), Ok(6.0));
        assert!(OutOfRange::check("current, mA", f64::NAN, 6.0, 264.0).is_err());
        let error = OutOfRange::check("current, mA", 5.0, 6.0, 264.0).unwrap_err();
        assert_eq!(error.to_string(), "current, mA: 5 is not between 6 and 264");
    }
}
