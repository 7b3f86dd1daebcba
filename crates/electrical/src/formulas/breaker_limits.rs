//! What a standard says of how long a breaker may take, and nothing beyond it.

use crate::{Amperes, Current, OutOfRange, TimeSpan};
use std::fmt;

/// The multiples of their rating at which the magnetic trips of common breakers were found to act, one model at 40.
/// Published: trade forum, thread 68467. A range met in the field: no breaker must keep to it.
pub const MAGNETIC_PICKUP_MULTIPLES: (f64, f64) = (8.0, 13.0);

/// The multiples of their rating at which breakers of the international household standard must not and must trip within
/// the hour. Not those of breakers here, for which they are often quoted.
/// Published: pic.hallikainen.org/piclist/2015/02/16/233713a.txt, on IEC 60898.
pub const INTERNATIONAL_CONVENTIONAL_MULTIPLES: (f64, f64) = (1.13, 1.45);

/// Where a point of the time limits comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PointOf {
    /// The product standard for molded-case breakers, UL 489, as quoted.
    ProductStandard,
    /// The guide for testing breakers in the field, NEMA AB 4, as quoted.
    FieldGuide,
}

/// What can be said of when a breaker opens. A quicker time than these is its own curve's, and is never claimed here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Clearing {
    /// No trip is required at all.
    MayHold,
    /// It must open within a time at the latest. Whether it opens quicker depends on the breaker's curve.
    AtLatest {
        /// The time.
        within: TimeSpan,
        /// The point, in percent of the rating, that the time is stated for.
        percent: u32,
        /// Who states it.
        point_of: PointOf,
    },
    /// A trip is required, but no time was read for this rating: it depends on the breaker's curve.
    DependsOnCurve,
}

impl fmt::Display for Clearing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::MayHold => f.write_str("may hold: no trip is required at this current"),
            Self::AtLatest { within, percent, .. } => {
                write!(f, "opens within {} s at the latest ({percent} % point); ", within.as_seconds())?;
                f.write_str("whether quicker depends on the breaker's curve")
            }
            Self::DependsOnCurve => f.write_str("depends on the breaker's curve"),
        }
    }
}

/// When a breaker must open at a current, by what the standards state for 135 %, 200 % and 300 % of its rating.
///
/// # Formula
/// Below 135 %: it may hold. From 135 %: 60 min to 50 A, 120 min above. From 200 %: 2 min to 30 A, 4 min to 50 A,
/// 6 min to 100 A, 8 min to 150 A. From 300 %, in the field: 50 s to 30 A, 80 s to 50 A.
///
/// # Source
/// UL 489 as quoted in a component maker's article on calibration tests for 60 min and 2 min; NEMA AB 4 for 50 s; the others from
/// memory. No standard sets a time for the current of a branch-level fault: trade forum, thread 78929.
///
/// # Range
/// Ratings from 1 to 6000 A, currents from 0 to 200 000 A. Between 100 % and 135 % a breaker may hold or trip.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::formulas::breaker_limits::{Clearing, clearing};
/// use electrical::{Amperes, Current};
/// assert_eq!(clearing(Amperes::new(20), Current::amperes(24.0))?, Clearing::MayHold);
/// let fault = clearing(Amperes::new(20), Current::amperes(200.0))?;
/// assert!(fault.to_string().ends_with("depends on the breaker's curve"));
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn clearing(rating: Amperes, current: Current) -> Result<Clearing, OutOfRange> {
    OutOfRange::check("rating, A", f64::from(rating.get()), 1.0, 6000.0)?;
    let current = OutOfRange::check("current, A", current.as_amperes(), 0.0, 200_000.0)?;
    let reaches = |percent: u32| current * 100.0 >= f64::from(rating.get()) * f64::from(percent);
    if !reaches(135) {
        return Ok(Clearing::MayHold);
    }
    let points = [(300, PointOf::FieldGuide), (200, PointOf::ProductStandard), (135, PointOf::ProductStandard)];
    let stated = points.into_iter().filter(|(percent, _)| reaches(*percent)).find_map(|(percent, point_of)| {
        longest_time(percent, rating).map(|within| Clearing::AtLatest { within, percent, point_of })
    });
    Ok(stated.unwrap_or(Clearing::DependsOnCurve))
}

/// The longest time that is stated for a point: 135, 200 or 300 % of the rating. `None` for any other point and for a rating
/// for which none was read.
///
/// # Formula
/// The rows of [`clearing`].
///
/// # Source
/// As [`clearing`]: 60 min, 2 min and 50 s as quoted, the others from memory.
///
/// # Range
/// 135 %: to 6000 A; 200 %: to 150 A; 300 %: to 50 A.
///
/// # Example
/// ```
/// use electrical::{Amperes, TimeSpan, formulas::breaker_limits::longest_time};
/// assert_eq!(longest_time(200, Amperes::new(20)), Some(TimeSpan::minutes(2.0)));
/// assert_eq!(longest_time(500, Amperes::new(20)), None);
/// ```
#[must_use]
pub fn longest_time(percent: u32, rating: Amperes) -> Option<TimeSpan> {
    match percent {
        135 => row(rating, &[(50, 60.0), (6000, 120.0)]),
        200 => row(rating, &[(30, 2.0), (50, 4.0), (100, 6.0), (150, 8.0)]),
        300 => row(rating, &[(30, 50.0 / 60.0), (50, 80.0 / 60.0)]),
        _ => None,
    }
}

/// The first row whose rating is not below, in minutes.
fn row(rating: Amperes, rows: &[(u32, f64)]) -> Option<TimeSpan> {
    rows.iter().find(|(most, _)| rating.get() <= *most).map(|(_, minutes)| TimeSpan::minutes(*minutes))
}

/// The currents between which an adjustable instantaneous trip must act in a field test.
///
/// # Formula
/// 70 % to 140 % of the setting.
///
/// # Source
/// wiki.testguy.net/t/instantaneous-trip-tolerances-clarification/715, on NETA MTS table 100.8.
///
/// # Range
/// Settings from 1 to 100 000 A.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Current, formulas::breaker_limits::adjustable_instantaneous_band};
/// let (least, most) = adjustable_instantaneous_band(Current::amperes(4000.0))?;
/// assert_eq!((least.as_amperes(), most.as_amperes()), (2800.0, 5600.0));
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn adjustable_instantaneous_band(setting: Current) -> Result<(Current, Current), OutOfRange> {
    OutOfRange::check("setting, A", setting.as_amperes(), 1.0, 100_000.0)?;
    Ok((setting * 0.7, setting * 1.4))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formulas::assert_near;

    fn at(rating: u32, amperes: f64) -> Clearing {
        clearing(Amperes::new(rating), Current::amperes(amperes)).unwrap()
    }

    /// Published: a component maker's article comparing the calibration tests of UL 489 and UL 1077: 1 h at 135 % to 50 A, 2 min at 200 % to 30 A.
    #[test]
    fn breakers_trip_within_an_hour_at_135_percent_and_two_minutes_at_200() {
        for rating in [15, 20, 30, 50] {
            assert_eq!(longest_time(135, Amperes::new(rating)).unwrap().as_minutes(), 60.0);
        }
        for rating in [15, 20, 30] {
            assert_eq!(longest_time(200, Amperes::new(rating)).unwrap().as_minutes(), 2.0);
        }
        assert_eq!(
            at(20, 40.0),
            Clearing::AtLatest { within: TimeSpan::minutes(2.0), percent: 200, point_of: PointOf::ProductStandard }
        );
        assert_eq!(
            at(20, 27.0),
            Clearing::AtLatest { within: TimeSpan::minutes(60.0), percent: 135, point_of: PointOf::ProductStandard }
        );
    }

    /// From memory: UL 489 and NEMA AB 4.
    #[test]
    fn larger_breakers_may_take_longer() {
        let double = |rating| longest_time(200, Amperes::new(rating)).map(TimeSpan::as_minutes);
        assert_eq!([31, 50, 51, 100].map(double), [Some(4.0), Some(4.0), Some(6.0), Some(6.0)]);
        assert_near(longest_time(300, Amperes::new(40)).unwrap().as_seconds(), 80.0, 1e-9);
    }

    /// Published: trade forum, thread 68467: 8 to 13 times the rating.
    #[test]
    fn five_times_the_rating_lies_below_the_magnetic_trips_met() {
        assert_eq!(MAGNETIC_PICKUP_MULTIPLES, (8.0, 13.0));
        assert!(MAGNETIC_PICKUP_MULTIPLES.0 > 5.0);
    }

    /// Published: trade forum, thread 78929, a copy of proposal 10-55 of 2008: the standard sets no time for
    /// the faults of branch circuits.
    #[test]
    fn no_fault_current_is_said_to_clear_quicker_than_the_300_percent_point() {
        for amperes in [60.0, 140.0, 500.0, 5000.0] {
            let Clearing::AtLatest { within, percent, point_of } = at(20, amperes) else {
                unreachable!("a 20 A breaker has a 300 % point")
            };
            assert_near(within.as_seconds(), 50.0, 1e-9);
            assert_eq!((percent, point_of), (300, PointOf::FieldGuide));
        }
        assert!(at(20, 500.0).to_string().contains("depends on the breaker's curve"));
    }

    /// Published: electriciantalk.com, continuous load on a breaker: 24 A may hold on 20 A.
    #[test]
    fn a_fifth_above_the_rating_may_hold() {
        assert_eq!(at(20, 24.0), Clearing::MayHold);
    }

    /// Published: wiki.testguy.net, topic 715: 2800 to 5600 A for 4000 A.
    #[test]
    fn an_adjustable_trip_is_accepted_from_30_below_to_40_above() {
        let (least, most) = adjustable_instantaneous_band(Current::amperes(4000.0)).unwrap();
        assert_near(least.as_amperes(), 2800.0, 1e-9);
        assert_near(most.as_amperes(), 5600.0, 1e-9);
    }

    /// Published: pic.hallikainen.org, IEC 60898: 1.13 and 1.45.
    #[test]
    fn the_international_multiples_are_not_used_here() {
        assert_eq!(INTERNATIONAL_CONVENTIONAL_MULTIPLES, (1.13, 1.45));
        assert_eq!(at(20, 20.0 * 1.2), Clearing::MayHold);
    }

    #[test]
    fn a_rating_without_a_stated_time_depends_on_the_curve() {
        assert!(clearing(Amperes::new(0), Current::amperes(1.0)).is_err());
        assert!(clearing(Amperes::new(20), Current::amperes(f64::NAN)).is_err());
        assert_eq!(longest_time(200, Amperes::new(200)), None);
        assert!(matches!(at(200, 1000.0), Clearing::AtLatest { percent: 135, .. }));
    }
}
