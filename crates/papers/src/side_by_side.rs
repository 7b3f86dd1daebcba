//! Drawings in the run of a paper: two in a row where they find room.

use crate::document::Drawing;
use crate::page::{Mark, Part, PartKind};
use crate::setting::{BODY, Setting, Slab};
use crate::svg::figure_of;

/// What stands between two drawings, and between two rows of them.
const GAP: f32 = 8.0;
/// A drawing is made smaller by no more than this to stand beside another.
const SMALLEST: f32 = 0.88;

/// The drawings as slabs: one for each row.
pub(crate) fn set(setting: &mut Setting, drawings: &[Drawing], under: Option<Part>) -> Vec<Slab> {
    let half = (setting.width - GAP) / 2.0;
    let mut rows: Vec<(bool, Slab)> = Vec::new();
    for drawing in drawings {
        let Some(figure) = figure_of(&drawing.svg, setting.faces) else {
            let paragraph = setting.paragraph(&drawing.says.as_str().into(), BODY, under);
            rows.extend(paragraph.into_iter().map(|slab| (false, slab)));
            continue;
        };
        let part = setting.structure.add(under, PartKind::Figure(drawing.says.clone()));
        let fits_half = half / figure.size.0;
        let (scale, is_half) = if fits_half >= SMALLEST {
            (fits_half.min(1.0), true)
        } else {
            ((setting.width / figure.size.0).min(1.0), false)
        };
        let height = figure.size.1 * scale;
        let waits = rows.last().is_some_and(|(waits, _)| *waits);
        let left = if is_half && waits { half + GAP } else { 0.0 };
        let mut marks = vec![Mark::FigureStarts(part)];
        marks.extend(figure.marks.into_iter().map(|mark| mark.scaled(scale).moved((left, 0.0))));
        marks.push(Mark::FigureEnds);
        match rows.last_mut() {
            Some((waits, row)) if *waits && is_half => {
                row.marks.extend(marks);
                row.height = row.height.max(height);
                *waits = false;
            }
            _ => rows.push((is_half, Slab { before: GAP, height, marks, ..Slab::default() })),
        }
    }
    rows.into_iter().map(|(_, slab)| slab).collect()
}
