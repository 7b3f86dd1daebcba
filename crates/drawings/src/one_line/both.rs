//! The one-line of a small dwelling before and after on one sheet.

use super::drawn::{LineSheet, Piece, body, draw_pieces, on_paper, pieces, said, when};
use super::fed::Fed;
use crate::geometry::spot;
use crate::svg::{Anchor, Svg, Type};
use dwelling::BoxIndex;
use remedies::in_words::capital;

/// What stands above a moment.
const MOMENT: f64 = 18.0;

/// Draws both moments on one sheet, the first above the second; none where it does not hold them.
pub(super) fn both_on_a_sheet(before: &Fed, after: &Fed) -> Option<LineSheet> {
    let body = body();
    let mut svg = Svg::default();
    let mut bars = Vec::new();
    let mut top = body.top;
    let mut drawn = LineSheet { circuits: Vec::new(), boxes: Vec::new(), title: String::new(), svg: String::new() };
    let mut says = Vec::new();
    let mut shown: Vec<(&Fed, Vec<BoxIndex>)> = Vec::new();
    for (number, fed) in [before, after].into_iter().enumerate() {
        let when = when(fed);
        svg.words(spot(0.0, top + 9.0), &capital(&when), Type::bold(9.5), Anchor::Start);
        top += MOMENT;
        let mut placed = Vec::new();
        for piece in pieces(fed, usize::MAX) {
            // What is said of a panel is said once.
            let piece = match piece {
                Piece::Head(panel, _) if number > 0 => Piece::Head(panel, Vec::new()),
                piece => piece,
            };
            let height = piece.height();
            placed.push((piece, top));
            top += height;
        }
        if top > body.bottom {
            return None;
        }
        let (circuits, boxes) = draw_pieces(&mut svg, fed, &placed, &mut bars, body.top);
        says.push(format!("{}: {}", capital(&when), said(fed, &placed)));
        if number == 0 {
            (drawn.circuits, drawn.boxes) = (circuits, boxes.clone());
        }
        shown.push((fed, boxes));
    }
    let shown: Vec<(&Fed, &[BoxIndex])> = shown.iter().map(|(fed, boxes)| (*fed, boxes.as_slice())).collect();
    let line = format!("One-line, {} and {}", when(before), when(after));
    (drawn.title, drawn.svg) = on_paper(&shown, (svg, bars), &line, &says.join(" "));
    Some(drawn)
}
