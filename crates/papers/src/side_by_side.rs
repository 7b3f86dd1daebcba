//! Drawings in the run of a paper: two in a row where they find room.

use crate::document::Drawing;
use crate::page::{Mark, Part, PartKind};
use crate::setting::{Asks, BODY, Setting, Slab};
use crate::svg::figure_of;

/// What stands between two drawings, and between two rows of them.
const GAP: f32 = 8.0;
/// A drawing is made smaller by no more than this to stand beside another, or upright on a page.
const SMALLEST: f32 = 0.88;
/// As wide as a drawing may be that lies on a page for itself: the length of the shorter paper without its margins.
const LYING: f32 = 736.0;

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
        if scale < SMALLEST && !is_half {
            let scale = (LYING / figure.size.0).min(1.0);
            let (wide, height) = (figure.size.0 * scale, figure.size.1 * scale);
            let mut marks = vec![Mark::FigureStarts(part)];
            marks.extend(figure.marks.into_iter().map(|mark| mark.scaled(scale)));
            marks.push(Mark::FigureEnds);
            rows.push((false, Slab { height, marks, asks: Asks::OwnPage(wide, height), ..Slab::default() }));
            continue;
        }
        let height = figure.size.1 * scale;
        // One that needs the whole width does not keep a half from its partner.
        let partner = rows.iter_mut().find(|(waits, _)| *waits).filter(|_| is_half);
        let left = if partner.is_some() { half + GAP } else { 0.0 };
        let mut marks = vec![Mark::FigureStarts(part)];
        marks.extend(figure.marks.into_iter().map(|mark| mark.scaled(scale).moved((left, 0.0))));
        marks.push(Mark::FigureEnds);
        match partner {
            Some((waits, row)) => {
                row.marks.extend(marks);
                row.height = row.height.max(height);
                *waits = false;
            }
            None => rows.push((is_half, Slab { before: GAP, height, marks, ..Slab::default() })),
        }
    }
    // Those with a page for themselves stand last, so that the others stay together.
    let (upright, lying): (Vec<Slab>, Vec<Slab>) =
        rows.into_iter().map(|(_, slab)| slab).partition(|slab| slab.asks == Asks::Nothing);
    upright.into_iter().chain(lying).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::Structure;
    use crate::typeface::Typefaces;

    fn drawing(width: u32) -> Drawing {
        let svg = format!("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} 200\"></svg>");
        Drawing { svg, says: String::new() }
    }

    fn asked(widths: &[u32]) -> Vec<Asks> {
        let mut structure = Structure::default();
        let faces = Typefaces::read().unwrap();
        let mut setting = Setting { faces: &faces, structure: &mut structure, width: 504.0 };
        let drawings: Vec<Drawing> = widths.iter().map(|width| drawing(*width)).collect();
        set(&mut setting, &drawings, None).iter().map(|slab| slab.asks).collect()
    }

    /// By hand: 560 points go upright on 504 at 0.9; 600 would ask for 0.84 and lie on a page; two of 240 stand side by side.
    #[test]
    fn what_would_become_too_small_upright_lies_on_a_page_for_itself_behind_the_others() {
        assert_eq!(asked(&[600, 560, 240, 240]), [Asks::Nothing, Asks::Nothing, Asks::OwnPage(600.0, 200.0)]);
        assert_eq!(asked(&[1472]), [Asks::OwnPage(736.0, 100.0)]);
    }
}
