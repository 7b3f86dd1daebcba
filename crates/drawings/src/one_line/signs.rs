//! The signs of a one-line: breakers, fuses, what stands beside a panel, and openings with the words beside them.

use super::fed::{AtStart, Opening};
use crate::geometry::{Area, Spot, spot};
use crate::shown::Ground;
use crate::svg::{Anchor, BLACK, Pen, Svg, Type, WHITE};
use crate::symbol::{self, Kind};
use crate::text_width::cut_to;
use dwelling::Overcurrent;

/// The width of a breaker or a fuse with the lines at both sides.
pub(super) const BREAKER: f64 = 24.0;
const LINE: f64 = 1.0;
const GUARDED: f64 = 2.4;
pub(super) const NAME: Type = Type::bold(6.8);
pub(super) const SMALL: Type = Type::plain(5.9);
/// How far the words of an opening reach from the middle of its symbol.
const WORDS_FROM: f64 = 7.4;
const WORDS_WIDE: f64 = 30.5;

/// The line to what is fed: thick where a GFCI guards it.
pub(super) fn line(guarded: bool) -> Pen {
    Pen::line(BLACK, if guarded { GUARDED } else { LINE })
}

/// What opens a circuit on overcurrent, from a spot to the right: a breaker, a fuse, or one that nobody has named.
pub(super) fn draw_overcurrent(svg: &mut Svg, from: Spot, kind: Option<Overcurrent>) {
    let pen = Pen::line(BLACK, 1.1);
    let to = from.plus(spot(BREAKER, 0.0));
    match kind {
        Some(Overcurrent::Breakers) => {
            let (contact, pivot) = (from.plus(spot(7.0, 0.0)), from.plus(spot(18.0, 0.0)));
            svg.line(from, contact, &pen);
            for across in [spot(2.2, 2.2), spot(2.2, -2.2)] {
                svg.line(contact.minus(across), contact.plus(across), &pen);
            }
            svg.line(pivot, contact.plus(spot(1.0, -5.0)), &pen);
            svg.line(pivot, to, &pen);
        }
        Some(Overcurrent::Fuses) => {
            svg.area(&Area::around(from.towards(to, 0.5), (13.0, 5.4)), 0.0, &pen.clone().filled(WHITE));
            svg.line(from, to, &pen);
        }
        None => {
            svg.line(from, to, &pen);
            svg.area(&Area::around(from.towards(to, 0.5), (13.0, 7.4)), 0.0, &pen.dashed("1.6 1.4").filled(WHITE));
            svg.words(from.towards(to, 0.5).plus(spot(0.0, 2.4)), "?", NAME, Anchor::Middle);
        }
    }
}

/// The bar that ties the two handles of a multiwire set.
pub(super) fn draw_tie(svg: &mut Svg, top: Spot, bottom: Spot) {
    for aside in [11.0, 13.0] {
        svg.line(top.plus(spot(aside, -2.6)), bottom.plus(spot(aside, -2.6)), &Pen::line(BLACK, 0.7));
    }
}

/// A device in a box of its own beside the panel.
pub(super) fn draw_beside(svg: &mut Svg, at: Spot, start: &AtStart) {
    let area = Area::around(at, (9.0, 9.0));
    svg.area(&area, 0.0, &Pen::line(BLACK, 1.1).filled(WHITE));
    let letter = if start.guard.gfci { "G" } else { "A" };
    svg.words(at.plus(spot(0.0, 2.4)), letter, NAME, Anchor::Middle);
}

/// What is said of a ground beside a symbol, and whether it stands out.
const fn ground_words(ground: Ground) -> (&'static str, bool) {
    match ground {
        Ground::Whole => ("ground", false),
        Ground::ByPlan => ("new ground", false),
        Ground::Unsound => ("bad ground", true),
        Ground::None => ("no ground", true),
        Ground::Unknown => ("ground ?", true),
    }
}

/// An opening: its symbol, its name, its ground and what guards it in words.
pub(super) fn draw_opening(svg: &mut Svg, at: Spot, id: &str, opening: &Opening, room_for_id: f64) {
    symbol::draw(svg, at, Kind::of(opening.holds), opening.ground, spot(0.0, -1.0));
    let left = at.x + WORDS_FROM;
    let wide = WORDS_WIDE.min(room_for_id);
    svg.words(spot(left, at.y - 2.6), &cut_to(id, NAME.size, true, wide), NAME, Anchor::Start);
    if !opening.holds.is_receptacle() {
        return;
    }
    let (words, stands_out) = if opening.false_ground { ("FALSE ground", true) } else { ground_words(opening.ground) };
    let kind = if stands_out { Type::bold(SMALL.size) } else { SMALL };
    svg.words(spot(left, at.y + 7.2), words, kind, Anchor::Start);
    let guard = opening.guard.in_words();
    if guard.is_empty() {
        return;
    }
    if opening.own {
        let area = Area::new(left - 1.2, at.y + 8.9, left + SMALL.width_of(guard) + 1.2, at.y + 15.4);
        svg.area(&area, 0.0, &Pen::line(BLACK, 0.7));
    }
    svg.words(spot(left, at.y + 14.0), guard, SMALL, Anchor::Start);
}
