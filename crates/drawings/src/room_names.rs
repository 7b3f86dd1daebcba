//! The names of rooms: in the room where they fit, in one line or more, smaller where they must be.

use crate::geometry::{Area, Spot, is_inside, spot};
use crate::places::FloorNumber;
use crate::placing::{Field, Wish};
use crate::shown::Shown;
use crate::svg::{Anchor, Pen, QUIET, Svg, Type, WHITE};
use crate::text_width::wrapped;

const SIZES: [f64; 3] = [8.5, 7.5, 6.2];
const GRID: usize = 16;
/// What it costs to stand across a line, in points away from the middle of the room.
const ACROSS_A_LINE: f64 = 18.0;

/// Names the rooms of a floor; those whose names found no room.
pub(crate) fn name_rooms(shown: &Shown, floor: FloorNumber, field: &mut Field, svg: &mut Svg) -> Vec<String> {
    let mut without = Vec::new();
    for (index, room) in shown.dwelling.rooms.iter().enumerate() {
        let outline = field.rooms.get(index).cloned().unwrap_or_default();
        if room.floor != floor || outline.is_empty() {
            continue;
        }
        let name = room.title.clone().unwrap_or_else(|| format!("{} {}", room.id, room.room_use)).to_uppercase();
        let (kind, lines, area, leader) = match inside(field, &outline, &name) {
            Some((kind, lines, area)) => (kind, lines, area, None),
            None => {
                let kind = Type::bold(6.2).quiet();
                let lines = by_words(&name, kind);
                let size = block(&lines, kind);
                let wish = Wish { anchors: vec![(middle(&outline), 2.0)], size, least: 1.0, room: Some(index) };
                match field.place_all(&[wish]).pop().flatten() {
                    Some(placed) => (kind, lines, placed.area, placed.leader),
                    None => {
                        without.push(room.title.clone().unwrap_or_else(|| room.id.clone()));
                        continue;
                    }
                }
            }
        };
        if let Some((from, to)) = leader {
            svg.line(from, to, &Pen::line(QUIET, 0.5));
        }
        svg.open("room-name", &room.id, "");
        svg.area(&area, 0.0, &Pen::line(WHITE, 0.0).filled(WHITE));
        for (row, line) in lines.iter().enumerate() {
            let base = area.top + (row as f64 + 0.8) * kind.size * 1.15;
            svg.words(spot(area.centre().x, base), line, kind, Anchor::Middle);
        }
        svg.close();
    }
    without
}

/// The best place for a name in its room.
fn inside(field: &mut Field, outline: &[Spot], name: &str) -> Option<(Type, Vec<String>, Area)> {
    let bounds = bounds(outline);
    for size in SIZES {
        let kind = Type::bold(size).quiet();
        let mut best: Option<(f64, Vec<String>, Area)> = None;
        for lines in [vec![name.to_owned()], by_words(name, kind)] {
            let block = block(&lines, kind);
            for step in 0..=GRID * GRID {
                let share = |part: usize| (part as f64 + 0.5) / (GRID as f64 + 1.0);
                let at = spot(
                    bounds.left + bounds.width() * share(step % GRID),
                    bounds.top + bounds.height() * share(step / GRID),
                );
                let area = Area::around(at, block);
                let off_the_walls = area.grown(2.5);
                let all_inside = off_the_walls.corners().iter().all(|corner| is_inside(*corner, outline));
                if !all_inside || !field.is_free(&area) {
                    continue;
                }
                let away = at.minus(bounds.centre()).length();
                let cost = away + field.lines_under(&area) as f64 * ACROSS_A_LINE + lines.len() as f64 * 4.0;
                if best.as_ref().is_none_or(|(least, _, _)| cost < *least) {
                    best = Some((cost, lines.clone(), area));
                }
            }
        }
        if let Some((_, lines, area)) = best {
            field.take(area);
            return Some((kind, lines, area));
        }
    }
    None
}

/// A name in lines of whole words, about as wide as its longest.
fn by_words(name: &str, kind: Type) -> Vec<String> {
    let longest = name.split_whitespace().map(|word| kind.width_of(word)).fold(0.0, f64::max);
    wrapped(name, kind.size, true, longest.max(kind.width_of(name) * 0.45) + 0.1)
}

/// The size of lines set under each other.
fn block(lines: &[String], kind: Type) -> (f64, f64) {
    let width = lines.iter().map(|line| kind.width_of(line)).fold(0.0, f64::max);
    (width, lines.len() as f64 * kind.size * 1.15)
}

fn bounds(outline: &[Spot]) -> Area {
    let fold = |of: fn(&Spot) -> f64, pick: fn(f64, f64) -> f64| outline.iter().map(of).reduce(pick).unwrap_or(0.0);
    Area::new(
        fold(|at| at.x, f64::min),
        fold(|at| at.y, f64::min),
        fold(|at| at.x, f64::max),
        fold(|at| at.y, f64::max),
    )
}

fn middle(outline: &[Spot]) -> Spot {
    bounds(outline).centre()
}
