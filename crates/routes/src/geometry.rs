//! Exact plane geometry in whole micrometres: walls, what is on them, and what lies inside an outline.
//!
//! Coordinates of a survey stay within 2,000 ft of the plan's origin, so that every product here keeps within its type.

use dwelling::Point;
use electrical::Length;

/// A foot in micrometres.
pub(crate) const FOOT: i64 = Length::feet(1).as_micrometres();
/// An inch in micrometres.
pub(crate) const INCH: i64 = Length::feet_and_inches(0, 1).as_micrometres();
/// Farther than this from the origin nothing is measured. No survey that was read goes there.
const FARTHEST: i64 = 4_000 * FOOT;

/// A point in micrometres.
pub(crate) type Spot = (i64, i64);

/// The coordinates of a point, where they can be reckoned with.
pub(crate) fn spot(point: Point) -> Option<Spot> {
    let (x, y) = (point.x.as_micrometres(), point.y.as_micrometres());
    (x.abs() <= FARTHEST && y.abs() <= FARTHEST).then_some((x, y))
}

/// The point at these coordinates.
pub(crate) fn point((x, y): Spot) -> Point {
    Point { x: Length::micrometres(x), y: Length::micrometres(y) }
}

/// The distance between two points along and across the joists.
pub(crate) fn across(one: Spot, other: Spot) -> i64 {
    (one.0 - other.0).abs() + (one.1 - other.1).abs()
}

/// A side of an outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Side {
    pub(crate) from: Spot,
    pub(crate) to: Spot,
}

impl Side {
    /// Its length.
    pub(crate) fn length(self) -> i64 {
        let (dx, dy) = (self.to.0 - self.from.0, self.to.1 - self.from.1);
        if dx == 0 || dy == 0 {
            return dx.abs() + dy.abs();
        }
        let square = u128::from(dx.unsigned_abs()).pow(2) + u128::from(dy.unsigned_abs()).pow(2);
        i64::try_from(square.isqrt()).unwrap_or(i64::MAX)
    }

    /// The point of the side nearest to another, and how far along the side it is.
    pub(crate) fn nearest(self, to: Spot) -> (Spot, i64) {
        let (dx, dy) = (self.to.0 - self.from.0, self.to.1 - self.from.1);
        let (px, py) = (to.0 - self.from.0, to.1 - self.from.1);
        let square = i128::from(dx) * i128::from(dx) + i128::from(dy) * i128::from(dy);
        if square == 0 {
            return (self.from, 0);
        }
        let dot = (i128::from(px) * i128::from(dx) + i128::from(py) * i128::from(dy)).clamp(0, square);
        let part = |whole: i64| i64::try_from(i128::from(whole) * dot / square).unwrap_or(0);
        ((self.from.0 + part(dx), self.from.1 + part(dy)), part(self.length()))
    }

    /// Whether another side runs the same way or the opposite one, within about ten degrees.
    pub(crate) fn is_along(self, other: Self) -> bool {
        let part = |side: Self| (i128::from(side.to.0 - side.from.0), i128::from(side.to.1 - side.from.1));
        let ((ax, ay), (bx, by)) = (part(self), part(other));
        // In feet the squares of the squares stay small enough.
        let foot = i128::from(INCH);
        let (ax, ay, bx, by) = (ax / foot, ay / foot, bx / foot, by / foot);
        let turn = ax * by - ay * bx;
        33 * turn * turn <= (ax * ax + ay * ay) * (bx * bx + by * by)
    }
}

/// How far apart two points are, in a straight line.
pub(crate) fn apart(one: Spot, other: Spot) -> i64 {
    Side { from: one, to: other }.length()
}

/// An outline with the box around it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Outline {
    pub(crate) corners: Vec<Spot>,
    pub(crate) least: Spot,
    pub(crate) most: Spot,
}

impl Outline {
    /// The outline with these corners, where they make one.
    pub(crate) fn of(corners: &[Point]) -> Option<Self> {
        let corners: Vec<Spot> = corners.iter().map(|corner| spot(*corner)).collect::<Option<_>>()?;
        if corners.len() < 3 {
            return None;
        }
        let (xs, ys) = (corners.iter().map(|corner| corner.0), corners.iter().map(|corner| corner.1));
        let least = (xs.clone().min()?, ys.clone().min()?);
        let most = (xs.max()?, ys.max()?);
        Some(Self { corners, least, most })
    }

    /// Its sides, in the order of its corners.
    pub(crate) fn sides(&self) -> impl Iterator<Item = Side> + '_ {
        let next = self.corners.iter().cycle().skip(1);
        self.corners.iter().zip(next).map(|(from, to)| Side { from: *from, to: *to })
    }

    /// Whether a point lies inside it or on its border.
    pub(crate) fn holds(&self, (x, y): Spot) -> bool {
        if x < self.least.0 || x > self.most.0 || y < self.least.1 || y > self.most.1 {
            return false;
        }
        let mut inside = false;
        for Side { from: a, to: b } in self.sides() {
            let turn = (b.0 - a.0) * (y - a.1) - (b.1 - a.1) * (x - a.0);
            let between = (a.0.min(b.0)..=a.0.max(b.0)).contains(&x) && (a.1.min(b.1)..=a.1.max(b.1)).contains(&y);
            if turn == 0 && between {
                return true;
            }
            // The half-open rule: a corner on the ray belongs to the side above it.
            if (a.1 > y) != (b.1 > y) && ((turn > 0) == (b.1 > a.1)) {
                inside = !inside;
            }
        }
        inside
    }

    /// Whether a point lies no farther than this from the box around it.
    pub(crate) fn is_near(&self, (x, y): Spot, within: i64) -> bool {
        (self.least.0 - within..=self.most.0 + within).contains(&x)
            && (self.least.1 - within..=self.most.1 + within).contains(&y)
    }

    /// The side nearest to a point within a distance: its position, the point on it, and how far along the side that is.
    pub(crate) fn side_near(&self, at: Spot, within: i64) -> Option<(usize, Spot, i64)> {
        let near = self.sides().enumerate().map(|(side, line)| {
            let (on_it, along) = line.nearest(at);
            (apart(at, on_it), side, on_it, along)
        });
        near.filter(|(far, ..)| *far <= within).min().map(|(_, side, on_it, along)| (side, on_it, along))
    }

    /// The length of all sides before this one.
    pub(crate) fn length_before(&self, side: usize) -> i64 {
        self.sides().take(side).map(Side::length).sum()
    }

    /// Where a straight way along one axis crosses its border.
    pub(crate) fn crossings(&self, from: Spot, to: Spot, cuts: &mut Vec<i64>) {
        let level = from.1 == to.1;
        let flat = |spot: Spot| if level { spot } else { (spot.1, spot.0) };
        let ((x1, y), (x2, _)) = (flat(from), flat(to));
        let (left, right) = (x1.min(x2), x1.max(x2));
        let ((least_x, least_y), (most_x, most_y)) = (flat(self.least), flat(self.most));
        if y < least_y || y > most_y || right < least_x || left > most_x {
            return;
        }
        for side in self.sides() {
            let (a, b) = (flat(side.from), flat(side.to));
            if y < a.1.min(b.1) || y > a.1.max(b.1) {
                continue;
            }
            if a.1 == b.1 || a.0 == b.0 {
                cuts.extend([a.0, b.0].into_iter().filter(|cut| (left..=right).contains(cut)));
                continue;
            }
            let cut = i128::from(y - a.1) * i128::from(b.0 - a.0) / i128::from(b.1 - a.1);
            let cut = a.0 + i64::try_from(cut).unwrap_or(0);
            if (left..=right).contains(&cut) {
                cuts.push(cut);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn feet(corners: &[(i64, i64)]) -> Outline {
        let corners: Vec<Point> =
            corners.iter().map(|(x, y)| Point { x: Length::feet(*x), y: Length::feet(*y) }).collect();
        Outline::of(&corners).unwrap()
    }

    fn at(x: i64, y: i64) -> Spot {
        (x * FOOT, y * FOOT)
    }

    /// By hand: an L of 10 by 10 ft without its upper right quarter of 5 by 5 ft.
    #[test]
    fn an_outline_holds_what_is_inside_and_on_its_border() {
        let room = feet(&[(0, 0), (10, 0), (10, 5), (5, 5), (5, 10), (0, 10)]);
        for inside in [at(2, 2), at(8, 2), at(2, 8), at(0, 0), at(10, 3), at(5, 7), at(7, 5)] {
            assert!(room.holds(inside), "{inside:?}");
        }
        for outside in [at(8, 8), at(11, 2), at(6, 6), at(-1, 5)] {
            assert!(!room.holds(outside), "{outside:?}");
        }
    }

    /// By hand: of a room 12 ft wide and 10 ft deep the point (4, 0.5 ft) is nearest to the first side, 4 ft along it.
    #[test]
    fn a_point_beside_a_wall_is_told_where_on_the_wall() {
        let room = feet(&[(0, 0), (12, 0), (12, 10), (0, 10)]);
        assert_eq!(room.side_near((4 * FOOT, FOOT / 2), FOOT), Some((0, at(4, 0), 4 * FOOT)));
        assert_eq!(room.side_near(at(5, 5), FOOT), None);
        assert_eq!(room.length_before(2), 22 * FOOT);
    }

    #[test]
    fn walls_run_along_one_another_either_way_but_not_across() {
        let side = |from, to| Side { from, to };
        let east = side(at(0, 0), at(12, 0));
        assert!(east.is_along(side(at(9, 1), at(2, 1))));
        assert!(!east.is_along(side(at(0, 0), at(0, 9))));
    }
}
