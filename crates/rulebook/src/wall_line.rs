//! The line of a room's walls along the floor, and how far its points are from the receptacles on it.

use dwelling::{Point, WallBreak, WallBreakKind};
use electrical::Length;

/// How the code measures along a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WallMeasure {
    /// No point of a wall space is farther than this from a receptacle in it.
    pub reach: Length,
    /// Narrower than this, a wall space does not count.
    pub least_wall: Length,
    /// Farther than this from the wall, a receptacle in the floor does not count.
    pub off_the_wall: Length,
    /// Whether a fixed cabinet breaks a wall space.
    pub cabinets_break: bool,
}

/// What is wrong with the spacing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spacing {
    /// Every point is near enough to a receptacle.
    Kept,
    /// A wall space of this length has none.
    NoneIn(Length),
    /// A point is this far from the nearest.
    TooFar(Length),
    /// A break of the wall, the one at this position, is drawn off the wall.
    BreakOffTheWall(usize),
}

/// How far from the outline the end of a wall break may be drawn: outlines are of walls, and walls have a thickness.
/// Common practice, no source.
const DRAWN_NEAR: Length = Length::feet(1);

/// Holds the walls of a room against the receptacles in it.
///
/// Distances are measured along the wall line within one wall space: a doorway, a fireplace or a fixed cabinet ends it.
#[must_use]
pub fn spacing(outline: &[Point], breaks: &[WallBreak], receptacles: &[Point], measure: WallMeasure) -> Spacing {
    let line = WallLine::of(outline);
    let mut cut: Vec<(i64, i64)> = Vec::new();
    for (position, one) in breaks.iter().enumerate() {
        if one.kind == WallBreakKind::FixedCabinet && !measure.cabinets_break {
            continue;
        }
        let ((from, off_from), (to, off_to)) = (line.nearest(one.from), line.nearest(one.to));
        if off_from.max(off_to) > DRAWN_NEAR.as_micrometres() {
            return Spacing::BreakOffTheWall(position);
        }
        cut.push(line.shorter_way(from, to));
    }
    let near: Vec<i64> = receptacles
        .iter()
        .map(|at| line.nearest(*at))
        .filter(|(_, off)| *off <= measure.off_the_wall.as_micrometres())
        .map(|(along, _)| along)
        .collect();
    let spaces = line.spaces(&cut);
    let counted = spaces.into_iter().filter(|space| space.length >= measure.least_wall.as_micrometres());
    let found = counted.map(|space| line.spacing_in(space, &near, measure.reach.as_micrometres()));
    found.max_by_key(|found| found.badness()).unwrap_or(Spacing::Kept)
}

impl Spacing {
    fn badness(self) -> i64 {
        match self {
            Self::Kept => 0,
            Self::TooFar(length) | Self::NoneIn(length) => length.as_micrometres(),
            Self::BreakOffTheWall(_) => i64::MAX,
        }
    }
}

/// A stretch of wall: where it begins along the line, and how long it is; the whole line where nothing breaks it.
#[derive(Clone, Copy)]
struct Space {
    from: i64,
    length: i64,
    closed: bool,
}

/// The outline walked once around, in micrometres.
struct WallLine<'a> {
    corners: &'a [Point],
    /// Where each corner lies along the line, and the whole length last.
    along: Vec<i64>,
}

impl<'a> WallLine<'a> {
    fn of(corners: &'a [Point]) -> Self {
        let mut along: Vec<i64> = vec![0];
        for index in 0..corners.len() {
            let (a, b) = (corners[index], corners[(index + 1) % corners.len()]);
            let so_far = along.last().copied().unwrap_or(0);
            along.push(so_far.saturating_add(distance(a, b)));
        }
        Self { corners, along }
    }

    fn whole(&self) -> i64 {
        self.along.last().copied().unwrap_or(0)
    }

    /// Where the nearest point of the line lies, and how far it is.
    fn nearest(&self, at: Point) -> (i64, i64) {
        let mut best = (0, i64::MAX);
        for index in 0..self.corners.len() {
            let (a, b) = (self.corners[index], self.corners[(index + 1) % self.corners.len()]);
            let (dx, dy) = (wide(b.x) - wide(a.x), wide(b.y) - wide(a.y));
            let squared = dx * dx + dy * dy;
            if squared == 0 {
                continue;
            }
            let dot = (wide(at.x) - wide(a.x)) * dx + (wide(at.y) - wide(a.y)) * dy;
            let dot = dot.clamp(0, squared);
            let foot = Point { x: a.x + narrow(dx * dot / squared), y: a.y + narrow(dy * dot / squared) };
            let off = distance(at, foot);
            if off < best.1 {
                best = (self.along[index].saturating_add(distance(a, foot)), off);
            }
        }
        best
    }

    /// The shorter way between two places on the line: where it begins, and how long it is.
    fn shorter_way(&self, one: i64, other: i64) -> (i64, i64) {
        let forward = (other - one).rem_euclid(self.whole().max(1));
        let back = (one - other).rem_euclid(self.whole().max(1));
        if forward <= back { (one, forward) } else { (other, back) }
    }

    /// What the breaks leave of the line.
    fn spaces(&self, cut: &[(i64, i64)]) -> Vec<Space> {
        let whole = self.whole();
        let Some(start) = cut.first().map(|(from, _)| *from) else {
            return vec![Space { from: 0, length: whole, closed: true }];
        };
        // Walked from the beginning of one break once around.
        let mut cut: Vec<(i64, i64)> =
            cut.iter().map(|(from, length)| ((from - start).rem_euclid(whole.max(1)), *length)).collect();
        cut.sort_unstable();
        let mut spaces = Vec::new();
        // A break may run on past the place where the walk began.
        let mut free_from = cut.iter().map(|(from, length)| from + length - whole).max().unwrap_or(0).max(0);
        for (from, length) in cut {
            if from > free_from {
                spaces.push(Space { from: start + free_from, length: from - free_from, closed: false });
            }
            free_from = free_from.max(from + length);
        }
        if whole > free_from {
            spaces.push(Space { from: start + free_from, length: whole - free_from, closed: false });
        }
        spaces
    }

    fn spacing_in(&self, space: Space, receptacles: &[i64], reach: i64) -> Spacing {
        let mut within: Vec<i64> = receptacles
            .iter()
            .map(|along| (along - space.from).rem_euclid(self.whole().max(1)))
            .filter(|along| *along <= space.length)
            .collect();
        within.sort_unstable();
        let (Some(first), Some(last)) = (within.first().copied(), within.last().copied()) else {
            return Spacing::NoneIn(Length::micrometres(space.length));
        };
        let ends = if space.closed { (first + space.length - last + 1) / 2 } else { first.max(space.length - last) };
        let between = within.windows(2).map(|pair| (pair[1] - pair[0] + 1) / 2).max().unwrap_or(0);
        let farthest = ends.max(between);
        if farthest > reach { Spacing::TooFar(Length::micrometres(farthest)) } else { Spacing::Kept }
    }
}

fn wide(length: Length) -> i128 {
    i128::from(length.as_micrometres())
}

fn narrow(micrometres: i128) -> Length {
    Length::micrometres(i64::try_from(micrometres).unwrap_or(i64::MAX))
}

fn distance(a: Point, b: Point) -> i64 {
    let (dx, dy) = ((wide(a.x) - wide(b.x)).unsigned_abs(), (wide(a.y) - wide(b.y)).unsigned_abs());
    i64::try_from((dx * dx + dy * dy).isqrt()).unwrap_or(i64::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    const MEASURE: WallMeasure = WallMeasure {
        reach: Length::feet(6),
        least_wall: Length::feet(2),
        off_the_wall: Length::feet_and_inches(1, 6),
        cabinets_break: true,
    };

    fn point(x: i64, y: i64) -> Point {
        Point { x: Length::feet(x), y: Length::feet(y) }
    }

    /// A room of 10 by 14 ft: 48 ft of wall.
    fn room() -> Vec<Point> {
        vec![point(0, 0), point(10, 0), point(10, 14), point(0, 14)]
    }

    fn door(from: (i64, i64), to: (i64, i64)) -> WallBreak {
        WallBreak { kind: WallBreakKind::Opening, from: point(from.0, from.1), to: point(to.0, to.1) }
    }

    /// By hand: around 48 ft, receptacles at 0, 12, 24 and 36 ft lie 12 ft apart; without the one at 24 ft (10, 14) a gap of
    /// 24 ft is left, whose middle is 12 ft away.
    #[test]
    fn four_receptacles_12_ft_apart_around_a_room_keep_the_spacing_and_three_do_not() {
        let all = [point(0, 0), point(10, 2), point(10, 14), point(0, 12)];
        assert_eq!(spacing(&room(), &[], &all, MEASURE), Spacing::Kept);
        let three = [all[0], all[1], all[3]];
        assert_eq!(spacing(&room(), &[], &three, MEASURE), Spacing::TooFar(Length::feet(12)));
    }

    /// By hand: a door from 3 to 6 ft on the 10 ft side leaves one space of 45 ft. From its end at 6 ft to the receptacle at
    /// (10, 3) are 4 + 3 = 7 ft.
    #[test]
    fn a_doorway_ends_a_wall_space_and_its_edge_needs_a_receptacle_within_6_ft() {
        let door = [door((3, 0), (6, 0))];
        let found = spacing(&room(), &door, &[point(10, 3), point(10, 14), point(0, 12), point(0, 0)], MEASURE);
        assert_eq!(found, Spacing::TooFar(Length::feet(7)));
        let kept = spacing(&room(), &door, &[point(10, 2), point(10, 14), point(0, 12), point(0, 0)], MEASURE);
        assert_eq!(kept, Spacing::Kept);
    }

    /// By hand: two doors with 2 ft of wall between them make a space that needs its own; with 1 ft they do not.
    #[test]
    fn a_wall_space_of_2_ft_needs_a_receptacle_and_one_of_1_ft_does_not() {
        let all = [point(10, 2), point(10, 14), point(0, 12), point(0, 0)];
        let two_ft = [door((2, 0), (4, 0)), door((6, 0), (9, 0))];
        assert_eq!(spacing(&room(), &two_ft, &all, MEASURE), Spacing::NoneIn(Length::feet(2)));
        let one_ft = [door((2, 0), (5, 0)), door((6, 0), (9, 0))];
        assert_eq!(spacing(&room(), &one_ft, &all, MEASURE), Spacing::Kept);
    }

    /// By hand: 18 inches off the wall count and 19 do not; then 24 ft of wall have a middle 12 ft away.
    #[test]
    fn a_receptacle_in_the_floor_counts_to_18_inches_from_the_wall() {
        let at = |inches: i64| Point { x: Length::feet_and_inches(10, -inches), y: Length::feet(2) };
        let others = [point(0, 0), point(10, 14), point(0, 12)];
        for (inches, kept) in [(18, true), (19, false)] {
            let all: Vec<Point> = others.iter().copied().chain([at(inches)]).collect();
            assert_eq!(spacing(&room(), &[], &all, MEASURE) == Spacing::Kept, kept, "{inches} inches");
        }
    }

    /// By hand: the outline is the room's; (5, 7) is 5 ft from the nearest wall.
    #[test]
    fn a_break_in_the_middle_of_the_room_is_no_break_of_its_walls() {
        let found = spacing(&room(), &[door((5, 7), (5, 9))], &[point(0, 0)], MEASURE);
        assert_eq!(found, Spacing::BreakOffTheWall(0));
    }
}
