//! Sums of money, in whole cents.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Sub};

/// A sum of money in whole cents of the price book's currency.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, schemars::JsonSchema)]
#[serde(transparent)]
pub struct Cents(pub i64);

impl Add for Cents {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl AddAssign for Cents {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Cents {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Mul<i64> for Cents {
    type Output = Self;
    fn mul(self, times: i64) -> Self {
        Self(self.0 * times)
    }
}

impl Sum for Cents {
    fn sum<I: Iterator<Item = Self>>(sums: I) -> Self {
        sums.fold(Self::default(), Add::add)
    }
}

impl fmt::Display for Cents {
    /// Dollars and cents with thousands set apart: `$1,234.50`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let (dollars, cents) = (self.0.unsigned_abs() / 100, self.0.unsigned_abs() % 100);
        let digits = dollars.to_string();
        let mut grouped = String::new();
        for (place, digit) in digits.chars().enumerate() {
            if place > 0 && (digits.len() - place).is_multiple_of(3) {
                grouped.push(',');
            }
            grouped.push(digit);
        }
        f.pad(&format!("{sign}${grouped}.{cents:02}"))
    }
}

impl Cents {
    /// The sum times a ratio, rounded half up to the cent. Sums of money here are never below zero.
    #[must_use]
    pub fn times_ratio(self, above: i128, below: i128) -> Self {
        let exact = i128::from(self.0) * above;
        Self(i64::try_from((2 * exact + below).div_euclid(2 * below)).unwrap_or(i64::MAX))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_is_written_with_its_thousands_set_apart() {
        assert_eq!(Cents(123_450).to_string(), "$1,234.50");
        assert_eq!(Cents(5).to_string(), "$0.05");
        assert_eq!(Cents(-98_765_432).to_string(), "-$987,654.32");
        assert_eq!(format!("{:>10}", Cents(950)), "     $9.50");
    }

    /// By hand: 2.40 by 3/16 is 0.45, 0.05 by 1/2 is 0.025 and 0.01 by 49/100 is 0.0049 dollars.
    #[test]
    fn a_ratio_of_money_is_rounded_half_up_to_the_cent() {
        assert_eq!(Cents(240).times_ratio(3, 16), Cents(45));
        assert_eq!(Cents(5).times_ratio(1, 2), Cents(3));
        assert_eq!(Cents(1).times_ratio(49, 100), Cents(0));
    }
}
