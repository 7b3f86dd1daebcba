//! Walls from the outlines of rooms: what another room lies against is an inside wall, the rest is an outside wall.

use crate::geometry::Spot;

/// A straight piece of wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Wall {
    pub(crate) from: Spot,
    pub(crate) to: Spot,
    pub(crate) outside: bool,
}

/// The walls of rooms whose outlines are given in the same measure as the thickness of a wall.
///
/// Outlines are drawn along either face or along the middle of a wall, so that two that lie within its thickness of each
/// other are of one wall.
pub(crate) fn walls(outlines: &[Vec<Spot>], thickness: f64) -> Vec<Wall> {
    let mut walls = Vec::new();
    for (room, outline) in outlines.iter().enumerate() {
        for side in sides(outline) {
            let others = outlines.iter().enumerate().filter(|(other, _)| *other != room);
            let mut shared: Vec<(f64, f64)> =
                others.flat_map(|(_, other)| sides(other)).filter_map(|other| beside(side, other, thickness)).collect();
            shared.sort_by(|one, other| one.0.total_cmp(&other.0));
            let mut reached = 0.0;
            for (start, end) in shared {
                if start > reached {
                    walls.push(piece(side, reached, start, true));
                }
                if end > reached {
                    walls.push(piece(side, start.max(reached), end, false));
                    reached = end;
                }
            }
            if reached < 1.0 {
                walls.push(piece(side, reached, 1.0, true));
            }
        }
    }
    walls.retain(|wall| wall.to.minus(wall.from).length() > 1e-6);
    walls
}

/// The sides of an outline.
pub(crate) fn sides(outline: &[Spot]) -> impl Iterator<Item = (Spot, Spot)> + '_ {
    outline.iter().enumerate().map(|(index, corner)| (*corner, outline[(index + 1) % outline.len()]))
}

fn piece((from, to): (Spot, Spot), start: f64, end: f64, outside: bool) -> Wall {
    Wall { from: from.towards(to, start), to: from.towards(to, end), outside }
}

/// The part of a side along which another lies within a thickness of it, as shares of its length.
fn beside(side: (Spot, Spot), other: (Spot, Spot), thickness: f64) -> Option<(f64, f64)> {
    let along = side.1.minus(side.0);
    let direction = along.unit()?;
    let parallel = other.1.minus(other.0).unit()?.cross(direction).abs() < 0.05;
    let off = |at: Spot| at.minus(side.0).cross(direction).abs();
    if !parallel || off(other.0) > thickness || off(other.1) > thickness {
        return None;
    }
    let share = |at: Spot| at.minus(side.0).dot(direction) / along.length();
    let (one, two) = (share(other.0), share(other.1));
    let (start, end) = (one.min(two).max(0.0), one.max(two).min(1.0));
    (end - start > 1e-6).then_some((start, end))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::spot;

    fn room(left: f64, right: f64, height: f64) -> Vec<Spot> {
        vec![spot(left, 0.0), spot(right, 0.0), spot(right, height), spot(left, height)]
    }

    fn length(walls: &[Wall], outside: bool) -> f64 {
        walls.iter().filter(|wall| wall.outside == outside).map(|wall| wall.to.minus(wall.from).length()).sum()
    }

    /// By hand: rooms of 10 by 10 and 10 by 6 share 6, drawn once from each side; outside are 34 of the first's 40 and 26
    /// of the second's 32.
    #[test]
    fn what_two_rooms_share_is_an_inside_wall() {
        let walls = walls(&[room(0.0, 10.0, 10.0), room(10.0, 20.0, 6.0)], 1.0);
        assert!((length(&walls, false) - 12.0).abs() < 1e-9);
        assert!((length(&walls, true) - 60.0).abs() < 1e-9);
    }

    #[test]
    fn outlines_along_the_two_faces_of_a_wall_are_of_one_wall() {
        let walls = walls(&[room(0.0, 10.0, 10.0), room(10.5, 20.0, 10.0)], 1.0);
        assert!((length(&walls, false) - 20.0).abs() < 1e-9);
        assert_eq!(
            super::walls(&[room(0.0, 10.0, 10.0), room(15.0, 20.0, 10.0)], 1.0).iter().filter(|w| !w.outside).count(),
            0
        );
    }
}
