//! Outlines of rooms: enough corners, none twice, no side across another; and boxes where their rooms are.

use crate::diagnostic::Span;
use crate::mistakes::{box_outside_room, outline_corner_twice, outline_crosses_itself, outline_too_few_corners};
use crate::notes::Notes;
use crate::row::Row;
use crate::tables::survey::Rows;
use crate::value::ValueKind;
use dwelling::{Dwelling, Point};
use std::collections::BTreeMap;

/// How far outside its room's outline a box may be drawn: outlines are of walls, and walls have a thickness.
/// Common practice, no source.
const WALL_MICROMETRES: i64 = 304_800;

pub(crate) fn check(notes: &mut Notes, draft: &Dwelling, rows: &Rows<'_>) {
    let mut sound = Vec::with_capacity(draft.rooms.len());
    for (room, row) in draft.rooms.iter().zip(&rows.rooms) {
        sound.push(!room.outline.is_empty() && outline(notes, &room.outline, row));
    }
    for (device_box, row) in draft.boxes.iter().zip(&rows.boxes) {
        let (Some(at), Some(room)) = (device_box.at, draft.rooms.get(device_box.room.0)) else { continue };
        if sound.get(device_box.room.0) == Some(&true) && !is_in_or_near(at, &room.outline) {
            let outline = rows.rooms[device_box.room.0].place_of("outline");
            notes.push(box_outside_room::mistake(&room.id, row.place_of("at"), outline));
        }
    }
}

/// Whether an outline is one.
fn outline(notes: &mut Notes, corners: &[Point], row: &Row<'_>) -> bool {
    let whole = row.place_of("outline");
    let places: Vec<Span> = match row.table.entry("outline").map(|entry| &entry.value.kind) {
        Some(ValueKind::List(items)) => items.iter().map(|item| item.span).collect(),
        _ => Vec::new(),
    };
    let place = |corner: usize| places.get(corner).copied().unwrap_or(whole);
    if corners.len() < 3 {
        notes.push(outline_too_few_corners::mistake(corners.len(), whole));
        return false;
    }
    let mut first_places: BTreeMap<Point, usize> = BTreeMap::new();
    for (index, corner) in corners.iter().enumerate() {
        let first = *first_places.entry(*corner).or_insert(index);
        if first != index {
            let closes = first == 0 && index == corners.len() - 1;
            notes.push(outline_corner_twice::mistake(closes, place(index), place(first)));
            return false;
        }
    }
    let sides: Vec<(Point, Point)> =
        (0..corners.len()).map(|index| (corners[index], corners[(index + 1) % corners.len()])).collect();
    for first in 0..sides.len() {
        for second in first + 2..sides.len() {
            let neighbours = first == 0 && second == sides.len() - 1;
            if !neighbours && sides_meet(sides[first], sides[second]) {
                notes.push(outline_crosses_itself::mistake(place(second), place(first)));
                return false;
            }
        }
    }
    true
}

/// On which side of a line through two points a third lies: above zero to the left, zero on it.
fn turn(from: Point, to: Point, third: Point) -> i128 {
    let part = |point: Point| (i128::from(point.x.as_micrometres()), i128::from(point.y.as_micrometres()));
    let ((ax, ay), (bx, by), (cx, cy)) = (part(from), part(to), part(third));
    ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)).signum()
}

fn sides_meet((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let (abc, abd, cda, cdb) = (turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b));
    let between = |from: Point, to: Point, point: Point| {
        (from.x.min(to.x)..=from.x.max(to.x)).contains(&point.x)
            && (from.y.min(to.y)..=from.y.max(to.y)).contains(&point.y)
    };
    (abc * abd < 0 && cda * cdb < 0)
        || (abc == 0 && between(a, b, c))
        || (abd == 0 && between(a, b, d))
        || (cda == 0 && between(c, d, a))
        || (cdb == 0 && between(c, d, b))
}

/// Whether a point lies inside an outline, or no farther from a side than a wall is thick.
fn is_in_or_near(point: Point, corners: &[Point]) -> bool {
    let coordinates = |point: Point| (point.x.as_micrometres() as f64, point.y.as_micrometres() as f64);
    let (x, y) = coordinates(point);
    let mut inside = false;
    for (index, corner) in corners.iter().enumerate() {
        let ((ax, ay), (bx, by)) = (coordinates(*corner), coordinates(corners[(index + 1) % corners.len()]));
        if (ay > y) != (by > y) && x < (bx - ax) * (y - ay) / (by - ay) + ax {
            inside = !inside;
        }
        let along =
            (((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax).powi(2) + (by - ay).powi(2))).clamp(0.0, 1.0);
        let (dx, dy) = (x - ax - along * (bx - ax), y - ay - along * (by - ay));
        if dx.hypot(dy) <= WALL_MICROMETRES as f64 {
            return true;
        }
    }
    inside
}
