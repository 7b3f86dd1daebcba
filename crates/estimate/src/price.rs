//! What something costs and how long it takes, its parts kept apart.

use crate::cents::Cents;
use std::iter::Sum;
use std::ops::{Add, Mul};

/// Time on the site in hundredths of a minute: minutes of the book times percent of a condition are exact in it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct WorkTime(pub u64);

/// Hundredths of a minute in an hour.
const HOUR: u64 = 60 * 100;

impl WorkTime {
    /// A whole number of minutes.
    #[must_use]
    pub fn minutes_of(minutes: u32) -> Self {
        Self(u64::from(minutes) * 100)
    }

    /// In whole minutes, rounded half up.
    #[must_use]
    pub fn minutes(self) -> u32 {
        u32::try_from((self.0 + 50) / 100).unwrap_or(u32::MAX)
    }

    /// Days begun, of so many hours.
    #[must_use]
    pub fn days(self, hours_a_day: u32) -> u32 {
        u32::try_from(self.0.div_ceil(u64::from(hours_a_day.max(1)) * HOUR)).unwrap_or(u32::MAX)
    }
}

/// A price, its parts kept apart.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Price {
    /// What is bought, as it is charged.
    pub material: Cents,
    /// What is worked.
    pub labour: Cents,
    /// How long it takes on the site.
    pub time: WorkTime,
}

impl Price {
    /// Material and labour together.
    #[must_use]
    pub fn total(self) -> Cents {
        self.material + self.labour
    }

    /// Minutes of work, rounded half up.
    #[must_use]
    pub fn minutes(self) -> u32 {
        self.time.minutes()
    }
}

impl Add for Price {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            material: self.material + other.material,
            labour: self.labour + other.labour,
            time: WorkTime(self.time.0.saturating_add(other.time.0)),
        }
    }
}

impl Mul<u32> for Price {
    type Output = Self;
    fn mul(self, times: u32) -> Self {
        let count = i64::from(times);
        let time = WorkTime(self.time.0.saturating_mul(u64::from(times)));
        Self { material: self.material * count, labour: self.labour * count, time }
    }
}

impl Sum for Price {
    fn sum<I: Iterator<Item = Self>>(prices: I) -> Self {
        prices.fold(Self::default(), Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 960 minutes are two days of 8 hours, 961 begin a third, and half a minute is rounded up.
    #[test]
    fn time_is_told_in_whole_minutes_and_days_begun() {
        assert_eq!(WorkTime::minutes_of(960).days(8), 2);
        assert_eq!(WorkTime::minutes_of(961).days(8), 3);
        assert_eq!(WorkTime(0).days(8), 0);
        assert_eq!((WorkTime(5_650).minutes(), WorkTime(5_649).minutes()), (57, 56));
    }
}
