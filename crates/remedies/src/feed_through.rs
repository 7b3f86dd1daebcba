//! What may hang behind one protective device: so many outlets, and so much standing leakage.

use dwelling::Job;

/// Where a Class A device may begin to trip, in microamperes.
/// Published: UL 943 Class A, no trip below 4 mA, as trade texts state it.
const MAY_TRIP_FROM: i64 = 4_000;

/// The limits of a job. What the survey leaves open has its default, and the plan says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FeedThroughLimits {
    /// The most standing leakage that is planned behind one GFCI, in microamperes: below the stated share of the 4 mA at which
    /// it may begin to trip, below all of it by default.
    pub most_leakage: i64,
    /// The most outlets that are planned behind the load side of one device, its own not counted. No rule of the code sets
    /// one, and none is assumed by default: instructions may.
    pub most_outlets: Option<u32>,
}

impl FeedThroughLimits {
    /// The limits that a survey states, and the defaults for what it does not.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        let percent = i64::from(job.leakage_percent.unwrap_or(100));
        Self { most_leakage: MAY_TRIP_FROM * percent / 100 - 1, most_outlets: job.outlets_behind_one_device }
    }

    /// The share of 4 mA below which standing leakage is to stay, as pages tell it.
    #[must_use]
    pub fn leakage_in_words(self) -> String {
        crate::leakage::milliamperes(self.most_leakage + 1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job(leakage_percent: Option<u32>) -> Job {
        Job { leakage_percent, ..Job::named(String::new()) }
    }

    /// By hand: all of 4 mA, less the least that can be told, is 3999 µA; three quarters are 3000, less 1.
    #[test]
    fn leakage_stays_below_the_stated_share_of_4_ma() {
        assert_eq!(FeedThroughLimits::of(&job(None)).most_leakage, 3_999);
        assert_eq!(FeedThroughLimits::of(&job(Some(75))).most_leakage, 2_999);
        assert_eq!(FeedThroughLimits::of(&job(Some(75))).leakage_in_words(), "3.0 mA");
    }
}
