//! Labels: small pieces side by side in rows, whose size is known before they are drawn.

use crate::geometry::{Area, Spot, spot};
use crate::shown::Shown;
use crate::svg::{Anchor, BLACK, Pen, Svg, Type, WHITE};
use crate::symbol::draw_source;
use crate::words;
use dwelling::BoxIndex;

/// The type of names.
pub(crate) const NAME: Type = Type::bold(7.0);
/// The type of notes.
pub(crate) const NOTE: Type = Type::plain(6.2);
const TAG: Type = Type::bold(5.8);
const ROW: f64 = 8.2;
const BETWEEN: f64 = 2.0;
const TAG_PADDING: f64 = 1.8;

/// A piece of a label.
#[derive(Clone, Debug)]
pub(crate) enum Piece {
    /// Words.
    Words(String, Type),
    /// The number of a circuit in a frame with round ends, lined as its line is.
    Circuit(String, Pen),
    /// The letters of work in a frame with corners.
    Work(String),
    /// The sign of a ground and the letter of what is tied together.
    Tie(String),
    /// The number of a route, white on black.
    Route(String),
}

impl Piece {
    fn width(&self) -> f64 {
        match self {
            Self::Words(text, kind) => kind.width_of(text),
            Self::Circuit(text, _) | Self::Work(text) | Self::Route(text) => TAG.width_of(text) + 2.0 * TAG_PADDING,
            Self::Tie(letter) => 6.0 + TAG.width_of(letter),
        }
    }

    fn draw(&self, svg: &mut Svg, left: f64, top: f64) {
        let base = top + ROW - 2.1;
        let frame = Area::new(left, top + 0.6, left + self.width(), top + ROW - 0.6);
        let middle = spot(frame.centre().x, base);
        match self {
            Self::Words(text, kind) => svg.words(spot(left, base), text, *kind, Anchor::Start),
            Self::Circuit(text, pen) => {
                // A frame is too short for dashes: colour and number tell the circuit here.
                svg.area(&frame, 3.4, &Pen::line(pen.colour, 0.8).filled(WHITE));
                svg.words(middle, text, TAG, Anchor::Middle);
            }
            Self::Work(text) => {
                svg.area(&frame, 0.0, &Pen::line(BLACK, 0.8).filled(WHITE));
                svg.words(middle, text, TAG, Anchor::Middle);
            }
            Self::Tie(letter) => {
                draw_source(svg, spot(left + 2.4, top + 4.8), 2.4);
                svg.words(spot(left + 5.6, base), letter, TAG, Anchor::Start);
            }
            Self::Route(text) => {
                svg.area(&frame, 0.0, &Pen::line(BLACK, 0.0).filled(BLACK));
                svg.words(middle, text, TAG.in_colour(WHITE), Anchor::Middle);
            }
        }
    }
}

/// A label.
#[derive(Clone, Debug, Default)]
pub(crate) struct Label {
    pub(crate) rows: Vec<Vec<Piece>>,
}

impl Label {
    pub(crate) fn of(pieces: Vec<Piece>) -> Self {
        Self { rows: vec![pieces] }
    }

    /// The label of a box: its name and circuit; below them what its symbol does not tell, and the work.
    pub(crate) fn of_box(shown: &Shown, at: BoxIndex, circuit_pen: Pen) -> Self {
        let (device_box, box_shown) = (shown.dwelling.device_box(at), &shown.boxes[at.0]);
        let circuit = shown.dwelling.circuit_of(at).map_or("?", |circuit| circuit.id.as_str());
        let first = vec![Piece::Words(device_box.id.clone(), NAME), Piece::Circuit(circuit.to_owned(), circuit_pen)];
        let mut second = Vec::new();
        let note = words::note(box_shown.holds);
        if !note.is_empty() {
            second.push(Piece::Words(note.to_owned(), NOTE));
        }
        if let Some(tie) = box_shown.tie {
            second.push(Piece::Tie(shown.ties[tie].letter.clone()));
        }
        if !box_shown.work.is_empty() {
            let letters: Vec<&str> = box_shown.work.iter().map(|mark| mark.letters()).collect();
            second.push(Piece::Work(letters.join(" ")));
        }
        let mut rows = vec![first];
        if !second.is_empty() {
            rows.push(second);
        }
        if box_shown.feed.is_none() && !shown.only_ways {
            rows.push(vec![Piece::Words("fed by ?".to_owned(), NOTE)]);
        }
        Self { rows }
    }

    pub(crate) fn size(&self) -> (f64, f64) {
        let wide =
            |row: &Vec<Piece>| row.iter().map(Piece::width).sum::<f64>() + BETWEEN * row.len().saturating_sub(1) as f64;
        (self.rows.iter().map(wide).fold(0.0, f64::max), self.rows.len() as f64 * ROW)
    }

    /// Draws it with its upper left corner at a spot, on a piece of clear paper.
    pub(crate) fn draw(&self, svg: &mut Svg, corner: Spot) {
        let (width, height) = self.size();
        let paper = Area::new(corner.x, corner.y, corner.x + width, corner.y + height);
        svg.area(&paper, 0.0, &Pen::line(WHITE, 0.0).filled(WHITE));
        for (index, row) in self.rows.iter().enumerate() {
            let mut left = corner.x;
            for piece in row {
                piece.draw(svg, left, corner.y + index as f64 * ROW);
                left += piece.width() + BETWEEN;
            }
        }
    }
}
