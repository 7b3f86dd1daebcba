//! Curves from symbol to symbol: bent as little as keeps them off other symbols.

use crate::geometry::{Spot, spot};
use crate::placing::Field;

const STEPS: usize = 16;
/// How often the way out of a symbol is halved: to a millionth of a step.
const HALVINGS: usize = 20;
/// How far a curve may bow out, as a share of its length.
const BOWS: [f64; 7] = [0.12, -0.12, 0.22, -0.22, 0.36, -0.36, 0.0];
const ON_A_SYMBOL: f64 = 60.0;
const ACROSS_A_LINE: f64 = 8.0;
/// What it costs to leave the house with one point of a line.
const OUTDOORS: f64 = 2.5;

/// The curve between two spots that comes across least, its ends so far from them.
pub(crate) fn curve(field: &Field, from: Spot, to: Spot, off: f64) -> Vec<Spot> {
    let mut best: Option<(f64, Vec<Spot>)> = None;
    for bow in BOWS {
        let points = bowed(from, to, bow, off);
        let bent = f64::abs(bow) * 30.0 + if bow == 0.0 { 6.0 } else { 0.0 };
        let cost = bent
            + field.symbols_on(&points) as f64 * ON_A_SYMBOL
            + field.lines_crossed(&points) as f64 * ACROSS_A_LINE
            + points.iter().filter(|at| field.is_outdoors(**at)).count() as f64 * OUTDOORS
            + points.iter().filter(|at| field.frame.nearest_to(**at) != **at).count() as f64 * ON_A_SYMBOL;
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, points));
        }
    }
    best.map(|(_, points)| points).unwrap_or_default()
}

/// A curve that bows out sideways, without what lies within a distance of its ends.
fn bowed(from: Spot, to: Spot, bow: f64, off: f64) -> Vec<Spot> {
    let middle = from.towards(to, 0.5).plus(to.minus(from).turned().times(2.0 * bow));
    let at = |part: f64| from.towards(middle, part).towards(middle.towards(to, part), part);
    let points: Vec<Spot> = (0..=STEPS).map(|step| at(step as f64 / STEPS as f64)).collect();
    clipped(&clipped(&points, from, off), to, off)
}

/// A line of points without what lies within a distance of a spot at which it begins or ends.
fn clipped(points: &[Spot], around: Spot, off: f64) -> Vec<Spot> {
    let mut points = clipped_at_end(points, around, off);
    points.reverse();
    points = clipped_at_end(&points, around, off);
    points.reverse();
    points
}

/// A line of points without what lies within a distance of a spot at which it ends; its last point alone where all does.
pub(crate) fn clipped_at_end(points: &[Spot], around: Spot, off: f64) -> Vec<Spot> {
    let mut points = points.to_vec();
    while let [.., before, last] = points[..]
        && last.minus(around).length() < off
    {
        points.pop();
        if before.minus(around).length() <= off {
            continue;
        }
        let (mut outside, mut inside) = (0.0, 1.0);
        for _halving in 0..HALVINGS {
            let middle = (outside + inside) / 2.0;
            if before.towards(last, middle).minus(around).length() < off {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        points.push(before.towards(last, outside));
        break;
    }
    points
}

/// The corners of an arrowhead at a share of a line of points, pointing along it; nothing for a short one.
pub(crate) fn arrowhead(points: &[Spot], share: f64, size: f64) -> Option<[Spot; 3]> {
    let length: f64 = points.windows(2).map(|pair| pair[1].minus(pair[0]).length()).sum();
    if length < 2.5 * size {
        return None;
    }
    let (tip, direction) = along(points, share)?;
    let back = tip.minus(direction.times(size));
    let aside = direction.turned().times(size * 0.45);
    Some([tip, back.plus(aside), back.minus(aside)])
}

/// The spot at a share of a line of points, and the direction there.
pub(crate) fn along(points: &[Spot], share: f64) -> Option<(Spot, Spot)> {
    let length: f64 = points.windows(2).map(|pair| pair[1].minus(pair[0]).length()).sum();
    let mut left = length * share;
    for pair in points.windows(2) {
        let step = pair[1].minus(pair[0]);
        if left <= step.length() + 1e-9 {
            let direction = step.unit()?;
            return Some((pair[0].plus(direction.times(left)), direction));
        }
        left -= step.length();
    }
    None
}

/// A line of points moved sideways.
pub(crate) fn beside(points: &[Spot], by: f64) -> Vec<Spot> {
    let moved = points.iter().enumerate().map(|(index, at)| {
        let before = points[index.saturating_sub(1)];
        let after = points[(index + 1).min(points.len() - 1)];
        let aside = after.minus(before).unit().map_or(spot(0.0, 0.0), |direction| direction.turned().times(by));
        at.plus(aside)
    });
    moved.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Area, distance_to_line};

    #[test]
    fn a_curve_goes_around_a_symbol_that_lies_on_the_straight_way() {
        let mut field = Field::new(Area::new(0.0, 0.0, 200.0, 200.0), Vec::new());
        field.add_symbol(Area::around(spot(100.0, 88.0), (14.0, 14.0)));
        let points = curve(&field, spot(20.0, 100.0), spot(180.0, 100.0), 5.0);
        assert_eq!(field.symbols_on(&points), 0);
        let ends = (points[0], points[points.len() - 1]);
        assert!((ends.0.minus(spot(20.0, 100.0)).length() - 5.0).abs() < 1e-4);
        assert!(points.iter().any(|at| distance_to_line(*at, ends.0, ends.1) > 5.0));
    }

    #[test]
    fn a_line_is_clipped_where_it_leaves_a_symbol() {
        let line = [spot(0.0, 0.0), spot(3.0, 0.0), spot(20.0, 0.0)];
        let clipped = clipped(&line, spot(0.0, 0.0), 6.0);
        assert_eq!(clipped.len(), 2);
        assert!((clipped[0].x - 6.0).abs() < 1e-4 && clipped[1] == spot(20.0, 0.0));
    }

    #[test]
    fn an_arrowhead_points_along_its_line() {
        let [tip, one, other] = arrowhead(&[spot(0.0, 0.0), spot(20.0, 0.0)], 0.5, 4.0).unwrap();
        assert_eq!(tip, spot(10.0, 0.0));
        assert!(one.x < tip.x && other.x < tip.x && (one.y + other.y).abs() < 1e-9);
        assert_eq!(arrowhead(&[spot(0.0, 0.0), spot(2.0, 0.0)], 0.5, 4.0), None);
    }
}
