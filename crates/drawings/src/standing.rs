//! Where symbols stand: at their places, against the wall, moved aside only where another symbol stands already.

use crate::geometry::{Area, Spot, distance_to_line, spot};
use crate::placing::Field;
use crate::symbol::{RADIUS, symbol_area};
use crate::walls::sides;
use dwelling::{BoxIndex, Point, RoomIndex};

/// How many rings around its place a symbol looks for room in: 40 reach across a sheet.
const RINGS: i32 = 40;

/// From feet on the plan of a floor to points on a sheet.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Projection {
    pub(crate) points_per_foot: f64,
    /// The spot of the sheet at which the plan's origin lies.
    pub(crate) origin: Spot,
}

impl Projection {
    pub(crate) fn spot(&self, at: Point) -> Spot {
        let (x, y) = (at.x.as_feet() * self.points_per_foot, at.y.as_feet() * self.points_per_foot);
        spot(self.origin.x + x, self.origin.y - y)
    }
}

/// A symbol with its place.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Standing {
    pub(crate) of: BoxIndex,
    pub(crate) room: RoomIndex,
    /// Where its middle stands.
    pub(crate) centre: Spot,
    /// From the wall into the room.
    pub(crate) into: Spot,
    /// Whether it had to be moved aside.
    pub(crate) moved: bool,
}

/// Stands the symbol of a box at its place; the outline is that of its room.
///
/// Nothing only where the whole sheet is taken.
pub(crate) fn stand(
    field: &mut Field,
    (of, room): (BoxIndex, RoomIndex),
    place: Spot,
    outline: &[Spot],
    wall_within: f64,
) -> Option<Standing> {
    let (first, into) = against_wall(place, outline, wall_within, RADIUS);
    let centre = free_spot(field, first, into, |at| symbol_area(at).grown(0.4))?;
    field.add_symbol(symbol_area(centre));
    Some(Standing { of, room, centre, into, moved: centre != first })
}

/// The first free spot: where it is, else aside along the wall, else around.
pub(crate) fn free_spot(field: &Field, first: Spot, into: Spot, area: impl Fn(Spot) -> Area) -> Option<Spot> {
    let along = into.turned();
    let step = 2.0 * RADIUS + 4.5;
    let aside = (1..=4).flat_map(|count| [f64::from(count), -f64::from(count)]);
    let aside = aside.map(|by| first.plus(along.times(by * step)));
    let around = (1..=RINGS).flat_map(|ring| {
        (0..16).map(move |part| {
            let turn = std::f64::consts::TAU * f64::from(part) / 16.0;
            first.plus(spot(turn.cos(), turn.sin()).times(f64::from(ring) * step * 0.7))
        })
    });
    std::iter::once(first).chain(aside).chain(around).find(|at| field.is_free_of_symbols(&area(*at)))
}

/// The middle of a symbol that stands half as deep off the wall it is at, and the direction into the room.
pub(crate) fn against_wall(place: Spot, outline: &[Spot], wall_within: f64, half_depth: f64) -> (Spot, Spot) {
    let upwards = spot(0.0, -1.0);
    let nearest = sides(outline)
        .map(|side| (distance_to_line(place, side.0, side.1), side))
        .filter(|(distance, _)| *distance <= wall_within)
        .min_by(|one, other| one.0.total_cmp(&other.0));
    let Some((_, side)) = nearest else { return (place, upwards) };
    let Some(direction) = side.1.minus(side.0).unit() else { return (place, upwards) };
    let normal = direction.turned();
    let inwards = |way: Spot| crate::geometry::is_inside(place.plus(way.times(wall_within * 1.5)), outline);
    let into = if inwards(normal) { normal } else { normal.times(-1.0) };
    let on_the_wall = side.0.plus(direction.times(place.minus(side.0).dot(direction)));
    (on_the_wall.plus(into.times(half_depth + 1.5)), into)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn room() -> Vec<Spot> {
        vec![spot(0.0, 0.0), spot(100.0, 0.0), spot(100.0, 100.0), spot(0.0, 100.0)]
    }

    #[test]
    fn a_symbol_at_a_wall_touches_it_from_inside_the_room() {
        let mut field = Field::new(Area::new(-50.0, -50.0, 150.0, 150.0), Vec::new());
        let of = (BoxIndex(0), RoomIndex(0));
        let standing = stand(&mut field, of, spot(40.0, 100.0), &room(), 9.0).unwrap();
        assert_eq!(standing.into, spot(0.0, -1.0));
        assert!((standing.centre.y - (100.0 - RADIUS - 1.5)).abs() < 1e-9 && !standing.moved);
    }

    #[test]
    fn two_boxes_at_one_place_stand_side_by_side_along_the_wall() {
        let mut field = Field::new(Area::new(-50.0, -50.0, 150.0, 150.0), Vec::new());
        let one = stand(&mut field, (BoxIndex(0), RoomIndex(0)), spot(40.0, 0.0), &room(), 9.0).unwrap();
        let other = stand(&mut field, (BoxIndex(1), RoomIndex(0)), spot(40.0, 0.0), &room(), 9.0).unwrap();
        assert!(!symbol_area(one.centre).overlaps(&symbol_area(other.centre)));
        assert!(other.moved && (one.centre.y - other.centre.y).abs() < 1e-9);
    }
}
