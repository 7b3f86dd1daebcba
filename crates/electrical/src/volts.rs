//! Voltages and resistances as a meter shows them.

use std::fmt;

/// A voltage, in whole millivolts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Volts(i64);

impl Volts {
    /// A voltage of whole volts.
    #[must_use]
    pub const fn new(volts: i64) -> Self {
        Self(volts * 1000)
    }

    /// A voltage of whole millivolts.
    #[must_use]
    pub const fn millivolts(millivolts: i64) -> Self {
        Self(millivolts)
    }

    /// The voltage in millivolts.
    #[must_use]
    pub const fn as_millivolts(self) -> i64 {
        self.0
    }
}

impl fmt::Display for Volts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        thousandths(f, self.0)?;
        f.write_str(" V")
    }
}

/// A resistance or impedance, in whole milliohms.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Ohms(i64);

impl Ohms {
    /// A resistance of whole milliohms.
    #[must_use]
    pub const fn milliohms(milliohms: i64) -> Self {
        Self(milliohms)
    }

    /// The resistance in milliohms.
    #[must_use]
    pub const fn as_milliohms(self) -> i64 {
        self.0
    }
}

impl fmt::Display for Ohms {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        thousandths(f, self.0)?;
        f.write_str(" Ω")
    }
}

/// Writes a number of thousandths as a decimal without trailing noughts.
fn thousandths(f: &mut fmt::Formatter<'_>, thousandths: i64) -> fmt::Result {
    let sign = if thousandths < 0 { "-" } else { "" };
    let (whole, part) = (thousandths.abs() / 1000, thousandths.abs() % 1000);
    if part == 0 {
        return write!(f, "{sign}{whole}");
    }
    let decimals = format!("{part:03}");
    write!(f, "{sign}{whole}.{}", decimals.trim_end_matches('0'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn volts_drop_their_trailing_noughts() {
        assert_eq!(Volts::new(120).to_string(), "120 V");
        assert_eq!(Volts::millivolts(1_500).to_string(), "1.5 V");
        assert_eq!(Volts::millivolts(-25).to_string(), "-0.025 V");
    }
}
