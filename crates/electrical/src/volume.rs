//! Volumes of boxes and of what they hold, exact to a ten-thousandth of a cubic inch.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Mul, Sub};

/// A volume in ten-thousandths of a cubic inch: fine enough for a quarter of any conductor allowance.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Volume(i64);

const PARTS_PER_CUBIC_INCH: i64 = 10_000;

impl Volume {
    /// No volume at all.
    pub const ZERO: Self = Self(0);

    /// A volume of whole hundredths of a cubic inch: `hundredths(1250)` is 12.5 in³.
    #[must_use]
    pub const fn hundredths(hundredths: i64) -> Self {
        Self(hundredths * (PARTS_PER_CUBIC_INCH / 100))
    }

    /// A volume of whole ten-thousandths of a cubic inch.
    #[must_use]
    pub const fn ten_thousandths(parts: i64) -> Self {
        Self(parts)
    }

    /// The volume in ten-thousandths of a cubic inch.
    #[must_use]
    pub const fn as_ten_thousandths(self) -> i64 {
        self.0
    }

    /// A quarter of the volume. Exact for every conductor allowance of the code.
    #[must_use]
    pub const fn quarter(self) -> Self {
        Self(self.0 / 4)
    }

    /// How often another volume goes into this one; nothing for an empty other.
    #[must_use]
    pub const fn whole_times(self, other: Self) -> Option<i64> {
        self.0.checked_div(other.0)
    }
}

impl Add for Volume {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Volume {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Mul<i64> for Volume {
    type Output = Self;
    fn mul(self, times: i64) -> Self {
        Self(self.0 * times)
    }
}

impl Sum for Volume {
    fn sum<I: Iterator<Item = Self>>(volumes: I) -> Self {
        volumes.fold(Self::ZERO, Add::add)
    }
}

impl fmt::Display for Volume {
    /// Cubic inches without trailing noughts: `12.5 in³`, `5.625 in³`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let (whole, part) = (self.0.abs() / PARTS_PER_CUBIC_INCH, self.0.abs() % PARTS_PER_CUBIC_INCH);
        if part == 0 {
            return write!(f, "{sign}{whole} in³");
        }
        let decimals = format!("{part:04}");
        write!(f, "{sign}{whole}.{} in³", decimals.trim_end_matches('0'))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quarter_of_a_12_awg_allowance_is_exact() {
        assert_eq!(Volume::hundredths(225).quarter(), Volume::ten_thousandths(5625));
        assert_eq!(Volume::hundredths(225).quarter().to_string(), "0.5625 in³");
    }

    #[test]
    fn volumes_drop_their_trailing_noughts() {
        assert_eq!(Volume::hundredths(1250).to_string(), "12.5 in³");
        assert_eq!(Volume::hundredths(1800).to_string(), "18 in³");
    }
}
