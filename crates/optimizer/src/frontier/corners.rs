//! The points found so far, and the corners in which another could still lie.

use crate::frontier::value::Value;

/// A region in which no point was found: below so many cents, with at most so many openings and at least so much worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Corner {
    pub below_cents: i64,
    pub openings: i64,
    pub worth: i128,
}

impl Corner {
    /// Whether a point lies in it.
    pub fn holds(&self, value: &Value) -> bool {
        value.cents < self.below_cents && value.openings <= self.openings && value.worth >= self.worth
    }

    fn lies_in(&self, other: &Self) -> bool {
        self.below_cents <= other.below_cents && self.openings <= other.openings && self.worth >= other.worth
    }
}

/// The points that no other found beats, and the corners that they leave.
#[derive(Debug)]
pub(super) struct Corners<P> {
    pub points: Vec<(Value, P)>,
    /// Together with those that are closed they hold everything that no point found beats.
    pub open: Vec<Corner>,
    /// Those in which nothing lies, though no point says so.
    closed: Vec<Corner>,
}

impl<P> Corners<P> {
    /// Returns no points and the one corner that holds everything worth finding.
    pub fn new(all: Corner) -> Self {
        Self { points: Vec::new(), open: vec![all], closed: Vec::new() }
    }

    /// Adds a point where none found is as good. Returns whether it was added.
    pub fn add(&mut self, value: Value, point: impl FnOnce() -> P) -> bool {
        if self.points.iter().any(|(other, _)| other.is_as_good_as(&value)) {
            return false;
        }
        self.points.retain(|(other, _)| !value.is_as_good_as(other));
        self.points.push((value, point()));
        let (hit, mut kept): (Vec<Corner>, Vec<Corner>) = self.open.iter().partition(|corner| corner.holds(&value));
        let mut left = Vec::new();
        for corner in hit {
            left.push(Corner { below_cents: value.cents, ..corner });
            left.push(Corner { openings: value.openings - 1, ..corner });
            left.push(Corner { worth: value.worth + 1, ..corner });
        }
        left.sort_unstable();
        left.dedup();
        for (place, corner) in left.iter().enumerate() {
            let within = |other: &Corner| corner.lies_in(other);
            let elsewhere = left.iter().enumerate().any(|(at, other)| at != place && within(other));
            if !elsewhere && !kept.iter().chain(&self.closed).any(within) {
                kept.push(*corner);
            }
        }
        self.open = kept;
        true
    }

    /// Notes that nothing lies in a corner.
    pub fn close(&mut self, corner: &Corner) {
        self.open.retain(|open| !open.lies_in(corner));
        self.closed.retain(|closed| !closed.lies_in(corner));
        self.closed.push(*corner);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: Corner = Corner { below_cents: 10, openings: 4, worth: 0 };

    fn value(cents: i64, openings: i64, worth: i128) -> Value {
        Value { cents, openings, worth }
    }

    /// By hand: cheaper, fewer openings or more worth.
    #[test]
    fn one_point_leaves_three_corners() {
        let mut corners = Corners::new(ALL);
        assert!(corners.add(value(5, 2, 3), || ()));
        assert_eq!(
            corners.open,
            [Corner { below_cents: 5, ..ALL }, Corner { openings: 1, ..ALL }, Corner { worth: 4, ..ALL },]
        );
        assert!(!corners.add(value(5, 3, 3), || ()));
    }

    #[test]
    fn every_value_is_beaten_by_a_point_or_lies_in_a_corner() {
        let mut corners = Corners::new(ALL);
        for (cents, openings, worth) in [(5, 2, 3), (3, 3, 1), (7, 1, 3), (5, 2, 4), (2, 4, 0), (9, 0, 5), (4, 4, 4)] {
            corners.add(value(cents, openings, worth), || ());
            for cents in 0..10 {
                for openings in 0..=4 {
                    for worth in 0..7 {
                        let this = value(cents, openings, worth);
                        let beaten = corners.points.iter().any(|(point, _)| point.is_as_good_as(&this));
                        let open = corners.open.iter().any(|corner| corner.holds(&this));
                        assert!(beaten != open, "{this:?}");
                    }
                }
            }
        }
    }
}
