//! Percents, exact to a hundredth of one.

use std::fmt;

/// A share in hundredths of a percent: 625 is 6.25 %.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Percent(pub u32);

impl Percent {
    /// A whole number of percent.
    #[must_use]
    pub const fn whole(percent: u32) -> Self {
        Self(percent * 100)
    }

    /// What a whole is with this share on top, in ten-thousandths of the whole.
    #[must_use]
    pub fn on_top(self) -> i128 {
        i128::from(self.0) + Self::ONE
    }

    /// A whole in hundredths of a percent.
    pub const ONE: i128 = 10_000;
}

impl fmt::Display for Percent {
    /// With no more digits than it needs: `6.25`, `15`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (whole, part) = (self.0 / 100, self.0 % 100);
        match part {
            0 => write!(f, "{whole}"),
            part if part.is_multiple_of(10) => write!(f, "{whole}.{}", part / 10),
            part => write!(f, "{whole}.{part:02}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: hundredths of a percent, their last noughts left out.
    #[test]
    fn a_percent_is_written_with_the_digits_that_it_needs() {
        assert_eq!(
            [Percent(625), Percent(1500), Percent(750), Percent(7)].map(|one| one.to_string()),
            ["6.25", "15", "7.5", "0.07"]
        );
    }
}
