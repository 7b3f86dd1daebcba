//! Conductor sizes in the American wire gauge, and conductor metals.

use std::fmt;

/// A conductor size in the American wire gauge, from 18 AWG to 4/0 AWG.
///
/// Ordered by thickness: a thinner conductor is less than a thicker one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Gauge(i8);

impl Gauge {
    /// 18 AWG.
    pub const AWG_18: Self = Self(18);
    /// 16 AWG.
    pub const AWG_16: Self = Self(16);
    /// 14 AWG.
    pub const AWG_14: Self = Self(14);
    /// 12 AWG.
    pub const AWG_12: Self = Self(12);
    /// 10 AWG.
    pub const AWG_10: Self = Self(10);
    /// 8 AWG.
    pub const AWG_8: Self = Self(8);
    /// 6 AWG.
    pub const AWG_6: Self = Self(6);

    /// Every size made for building wire from 18 AWG to 4/0 AWG, thinnest first.
    /// 1/0 is 0, 2/0 is -1, 3/0 is -2 and 4/0 is -3, as the series continues.
    pub const ALL: [Self; 15] = [
        Self(18),
        Self(16),
        Self(14),
        Self(12),
        Self(10),
        Self(8),
        Self(6),
        Self(4),
        Self(3),
        Self(2),
        Self(1),
        Self(0),
        Self(-1),
        Self(-2),
        Self(-3),
    ];

    /// The size with this number in the series (1/0 is 0, 4/0 is -3), or nothing where no such size is made.
    #[must_use]
    pub fn from_number(number: i8) -> Option<Self> {
        Self::ALL.into_iter().find(|gauge| gauge.0 == number)
    }

    /// The number of the size in the series: 14 for 14 AWG, 0 for 1/0 AWG, -3 for 4/0 AWG.
    #[must_use]
    pub const fn number(self) -> i8 {
        self.0
    }
}

impl PartialOrd for Gauge {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Gauge {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        other.0.cmp(&self.0)
    }
}

impl fmt::Display for Gauge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0 <= 0 { write!(f, "{}/0 AWG", 1 - self.0) } else { write!(f, "{} AWG", self.0) }
    }
}

/// What a conductor is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ConductorMetal {
    /// Copper.
    Copper,
    /// Aluminium.
    Aluminium,
    /// Copper-clad aluminium.
    CopperCladAluminium,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_12_awg_conductor_is_thicker_than_a_14_awg_one() {
        assert!(Gauge::AWG_12 > Gauge::AWG_14);
        assert!(Gauge(-3) > Gauge(1));
    }

    #[test]
    fn the_large_sizes_are_written_with_their_noughts() {
        assert_eq!(Gauge(0).to_string(), "1/0 AWG");
        assert_eq!(Gauge(-3).to_string(), "4/0 AWG");
        assert_eq!(Gauge::AWG_14.to_string(), "14 AWG");
    }
}
