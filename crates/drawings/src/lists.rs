//! What stands beside a plan: rows of a legend and of lists, and how they flow into columns.

use crate::circuit_sheets::share_bar;
use crate::geometry::{Area, Spot, spot};
use crate::label::Piece;
use crate::shown::Ground;
use crate::svg::{Anchor, BLACK, Pen, QUIET, Svg, Type, WHITE};
use crate::symbol::{self, Kind};
use crate::text_width::wrapped;
use crate::{floor_plan, label};
use diagnosis::belief;
use dwelling::RouteKind;

/// The width of a column.
pub(crate) const COLUMN: f64 = 158.0;
/// The space between two columns.
pub(crate) const GUTTER: f64 = 9.0;
const HEADING: Type = Type::bold(7.6);
const TEXT: Type = Type::plain(6.6);
const LINE: f64 = 8.4;
/// The width that a legend's pictures have.
const PICTURE: f64 = 38.0;
/// The least height of a row with a picture.
const PICTURE_HEIGHT: f64 = 15.0;

/// A picture in a legend.
#[derive(Clone, Debug)]
pub(crate) enum Picture {
    Symbol(Kind, Ground),
    Panel,
    Source,
    /// Where a way goes up or down.
    Ring,
    Line(Pen, String),
    Route(RouteKind, &'static str),
    Wall(bool),
    Piece(Piece),
    /// A state of a ground in a bar of shares.
    Share(belief::Ground),
    /// A state of a run's ground.
    Run(belief::GroundRun),
}

/// A row beside a plan.
#[derive(Clone, Debug)]
pub(crate) enum Row {
    Heading(String),
    Words(String),
    /// Words that stand in for something that is missing: set so that they are seen.
    Caution(String),
    Explained(Picture, String),
    /// A name and what is said of it.
    Named(String, String),
}

impl Row {
    fn lines(&self) -> Vec<String> {
        match self {
            Self::Heading(text) => wrapped(text, HEADING.size, true, COLUMN),
            Self::Words(text) => wrapped(text, TEXT.size, false, COLUMN),
            Self::Caution(text) => wrapped(text, TEXT.size, true, COLUMN - 8.0),
            Self::Explained(_, text) => wrapped(text, TEXT.size, false, COLUMN - PICTURE),
            Self::Named(name, text) => {
                let first = wrapped(name, TEXT.size, true, COLUMN);
                first
                    .into_iter()
                    .chain(wrapped(text, TEXT.size, false, COLUMN - 8.0).into_iter().filter(|line| !line.is_empty()))
                    .collect()
            }
        }
    }

    fn height(&self) -> f64 {
        let lines = self.lines().len() as f64 * LINE;
        match self {
            Self::Heading(_) => lines + 8.0,
            Self::Words(_) => lines + 1.5,
            Self::Caution(_) => lines + 8.0,
            Self::Explained(..) => (lines + 2.5).max(PICTURE_HEIGHT),
            Self::Named(..) => lines + 1.5,
        }
    }

    fn draw(&self, svg: &mut Svg, corner: Spot) {
        let lines = self.lines();
        let line = |svg: &mut Svg, index: usize, left: f64, top: f64, kind: Type, text: &str| {
            let base = top + index as f64 * LINE + LINE * 0.8;
            svg.words(spot(left, base), text, kind, Anchor::Start);
        };
        match self {
            Self::Heading(_) => {
                for (index, text) in lines.iter().enumerate() {
                    line(svg, index, corner.x, corner.y + 4.0, HEADING, text);
                }
                let under = corner.y + self.height() - 2.2;
                svg.line(spot(corner.x, under), spot(corner.x + COLUMN, under), &Pen::line(BLACK, 0.6));
            }
            Self::Words(_) => {
                lines.iter().enumerate().for_each(|(index, text)| line(svg, index, corner.x, corner.y, TEXT, text))
            }
            Self::Caution(_) => {
                let frame = Area::new(corner.x, corner.y + 1.0, corner.x + COLUMN, corner.y + self.height() - 2.0);
                svg.area(&frame, 0.0, &Pen::line(BLACK, 1.0).filled(WHITE));
                for (index, text) in lines.iter().enumerate() {
                    line(svg, index, corner.x + 4.0, corner.y + 3.0, Type::bold(TEXT.size), text);
                }
            }
            Self::Explained(picture, _) => {
                let height = self.height();
                let top = corner.y + (height - lines.len() as f64 * LINE) / 2.0;
                for (index, text) in lines.iter().enumerate() {
                    line(svg, index, corner.x + PICTURE, top, TEXT, text);
                }
                draw_picture(svg, picture, spot(corner.x, corner.y + height / 2.0));
            }
            Self::Named(name, _) => {
                let names = wrapped(name, TEXT.size, true, COLUMN).len();
                for (index, text) in lines.iter().enumerate() {
                    let (left, kind) = if index < names { (0.0, Type::bold(TEXT.size)) } else { (8.0, TEXT) };
                    line(svg, index, corner.x + left, corner.y, kind, text);
                }
            }
        }
    }
}

fn draw_picture(svg: &mut Svg, picture: &Picture, left: Spot) {
    let middle = left.plus(spot((PICTURE - 6.0) / 2.0, 0.0));
    let (from, to) = (left, left.plus(spot(PICTURE - 6.0, 0.0)));
    match picture {
        Picture::Symbol(kind, ground) => symbol::draw(svg, middle, *kind, *ground, spot(0.0, -1.0)),
        Picture::Panel => symbol::draw_panel(svg, middle, spot(0.0, -1.0)),
        Picture::Source => symbol::draw_source(svg, middle, 5.0),
        Picture::Ring => svg.circle(middle, crate::bringing::RING, &Pen::line(BLACK, 0.9).filled(WHITE)),
        Picture::Line(pen, number) => {
            let number = label::Label::of(vec![Piece::Circuit(number.clone(), pen.clone())]);
            let (width, height) = number.size();
            number.draw(svg, from.minus(spot(0.0, height / 2.0)));
            svg.line(from.plus(spot(width + 1.0, 0.0)), to, pen);
        }
        Picture::Route(kind, dashes) => crate::bringing::route_line(svg, &[from, to], *kind, dashes),
        Picture::Share(ground) => {
            let area = Area::around(middle, (PICTURE - 12.0, share_bar::HEIGHT));
            share_bar::draw_part(svg, &area, *ground);
        }
        Picture::Run(state) => {
            share_bar::draw_run_sign(svg, middle.minus(spot(share_bar::SIGN / 2.0 - 1.0, 0.0)), *state)
        }
        Picture::Wall(outside) => {
            svg.line(from, to, &Pen::line(BLACK, floor_plan::wall_width(*outside)));
        }
        Picture::Piece(piece) => {
            let label = label::Label::of(vec![piece.clone()]);
            let (width, height) = label.size();
            label.draw(svg, middle.minus(spot(width / 2.0, height / 2.0)));
        }
    }
}

/// Draws rows down columns until they are full; what is left over is for another sheet.
pub(crate) fn flow(svg: &mut Svg, rows: &[Row], columns: &[Area]) -> Vec<Row> {
    let mut next = 0;
    for column in columns {
        let mut top = column.top;
        while let Some(row) = rows.get(next) {
            // A heading does not stand at the foot of a column, away from what it heads.
            let follows = match (row, rows.get(next + 1)) {
                (Row::Heading(_), Some(follower)) => follower.height(),
                _ => 0.0,
            };
            if top + row.height() + follows > column.bottom {
                break;
            }
            row.draw(svg, spot(column.left, top));
            top += row.height();
            next += 1;
        }
    }
    rows[next..].to_vec()
}

/// Columns that fit side by side into an area.
pub(crate) fn columns(area: &Area) -> Vec<Area> {
    let count = ((area.width() + GUTTER) / (COLUMN + GUTTER) + 1e-6).floor().max(0.0) as usize;
    let left = |at: usize| area.left + at as f64 * (COLUMN + GUTTER);
    (0..count).map(|at| Area::new(left(at), area.top, left(at) + COLUMN, area.bottom)).collect()
}

/// A thin line between the plan and what stands beside it.
pub(crate) fn rule(svg: &mut Svg, from: Spot, to: Spot) {
    svg.line(from, to, &Pen::line(QUIET, 0.4));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_does_not_fit_is_left_over_and_nothing_is_lost() {
        let rows: Vec<Row> = (0..50).map(|at| Row::Words(format!("row {at}"))).collect();
        let mut svg = Svg::default();
        let left_over = flow(&mut svg, &rows, &columns(&Area::new(0.0, 0.0, 360.0, 100.0)));
        let text = svg.finished((360.0, 100.0), "", "");
        assert_eq!(text.matches("<text").count() + left_over.len(), 50);
        assert!(!left_over.is_empty() && left_over.len() < 50);
    }

    #[test]
    fn a_heading_is_not_parted_from_what_it_heads() {
        let rows = [Row::Words("one".into()), Row::Heading("heading".into()), Row::Words("two".into())];
        let height = rows[0].height() + rows[1].height() + 2.0;
        let left_over = flow(&mut Svg::default(), &rows, &columns(&Area::new(0.0, 0.0, COLUMN, height)));
        assert_eq!(left_over.len(), 2);
    }
}
