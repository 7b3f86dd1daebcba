//! Slabs put on pages, with what every page says: the paper, the dwelling, the day, the number of the page.

use crate::PaperFault;
use crate::document::{Face, Paper};
use crate::page::{Mark, Page, PartKind, Shape, Structure};
use crate::paper_size::PaperSize;
use crate::pdf::pdf;
use crate::setting::{Asks, Setting, Slab, margin_words};
use crate::typeface::Typefaces;

/// What is left free on the left and the right: room for holes.
const SIDE: f32 = 54.0;
/// Where what is said begins.
const TOP: f32 = 62.0;
/// What is left free below it.
const BOTTOM: f32 = 46.0;
/// The nearest to the edge that a printer prints: common practice, no source.
const PRINTABLE: f32 = 14.0;

/// A paper as a PDF of this size.
///
/// # Errors
/// [`PaperFault`]: a fault of this program.
pub fn typeset(paper: &Paper, size: PaperSize) -> Result<Typeset, PaperFault> {
    let unread = || PaperFault { paper: paper.title.clone(), what: "the fonts cannot be read".to_owned() };
    let faces = Typefaces::read().ok_or_else(unread)?;
    let (width, height) = size.points();
    let mut structure = Structure::default();
    let top = structure.add(None, PartKind::Section);
    let mut setting = Setting { faces: &faces, structure: &mut structure, width: width - 2.0 * SIDE };
    let slabs = setting.blocks(&paper.blocks, Some(top));
    let mut pages = paged(slabs, (width, height));
    let count = pages.len();
    for (number, page) in pages.iter_mut().enumerate() {
        say_on_every_page(page, paper, &faces, (number + 1, count));
    }
    Ok(Typeset { bytes: pdf(paper, &pages, &structure, &faces)?, pages: count })
}

/// A paper that was set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Typeset {
    /// The PDF.
    pub bytes: Vec<u8>,
    /// How many pages it has.
    pub pages: usize,
}

fn paged(slabs: Vec<Slab>, (width, height): (f32, f32)) -> Vec<Page> {
    let room = height - TOP - BOTTOM;
    let blank = || Page { size: (width, height), marks: Vec::new() };
    let mut pages: Vec<Page> = Vec::new();
    // How much of the last page is taken; none where the last page takes nothing more.
    let mut taken: Option<f32> = None;
    let mut rest = slabs.as_slice();
    while let Some(first) = rest.first() {
        match first.asks {
            Asks::NewPage => {
                taken = None;
                rest = &rest[1..];
                continue;
            }
            Asks::OwnPage(wide, high) => {
                pages.push(own_page(first, (wide, high), (width, height)));
                taken = None;
                rest = &rest[1..];
                continue;
            }
            Asks::Nothing => {}
        }
        let chain = 1 + rest.iter().take_while(|slab| slab.with_next).count();
        let chain = &rest[..chain.min(rest.len())];
        let needs: f32 = chain.iter().map(|slab| slab.before + slab.height).sum();
        let fits = |room_left: f32| needs <= room_left;
        let whole = fits(room) && chain.iter().all(|slab| slab.asks == Asks::Nothing);
        let placed = if whole { chain } else { &chain[..1] };
        let needed: f32 = placed.iter().map(|slab| slab.before + slab.height).sum();
        let at = match taken {
            Some(at) if at + needed <= room => at,
            _ => {
                pages.push(blank());
                0.0
            }
        };
        if let Some(page) = pages.last_mut() {
            taken = Some(put(page, placed, at));
        }
        rest = &rest[placed.len()..];
    }
    if pages.is_empty() {
        pages.push(blank());
    }
    pages
}

/// Puts slabs on a page from there on, and tells how much is taken afterwards.
fn put(page: &mut Page, slabs: &[Slab], from: f32) -> f32 {
    let mut at = from;
    for slab in slabs {
        if at == 0.0 {
            if let Some(head) = &slab.head {
                page.marks.extend(head.marks.iter().map(|mark| mark.clone().moved((SIDE, TOP))));
                at += head.height;
            }
        } else {
            at += slab.before;
        }
        page.marks.extend(slab.marks.iter().map(|mark| mark.clone().moved((SIDE, TOP + at))));
        at += slab.height;
    }
    at
}

/// A page for one drawing at its own size, lying where the drawing lies.
fn own_page(slab: &Slab, (wide, high): (f32, f32), upright: (f32, f32)) -> Page {
    let size = if wide > high { (upright.1, upright.0) } else { upright };
    let left = (size.0 - wide) / 2.0;
    let top = ((size.1 - high) / 2.0).min(PRINTABLE);
    Page { size, marks: slab.marks.iter().map(|mark| mark.clone().moved((left, top))).collect() }
}

fn say_on_every_page(page: &mut Page, paper: &Paper, faces: &Typefaces, (number, count): (usize, usize)) {
    let (width, height) = page.size;
    let has_drawing = page.marks.iter().any(|mark| matches!(mark, Mark::FigureStarts(_)));
    let date = paper.date.clone().unwrap_or_else(|| "Date ______________".to_owned());
    let right = |text: &str, base: f32| {
        let wide = faces.width(Face::Plain, text, 8.0);
        margin_words(Face::Plain, text, (width - SIDE - wide, base))
    };
    let page_number = format!("Page {number} of {count}");
    if has_drawing {
        let words = format!("{} · {} · {date} · {page_number}", paper.title, paper.dwelling);
        page.marks.push(right(&words, height - PRINTABLE));
        return;
    }
    let mut marks = vec![
        margin_words(Face::Bold, &paper.title, (SIDE, 40.0)),
        right(&format!("{} · {date}", paper.dwelling), 40.0),
        Mark::Shape(Shape::line((SIDE, 46.0), (width - SIDE, 46.0), 1.2, 0)),
        right(&page_number, height - 28.0),
    ];
    marks.append(&mut page.marks);
    page.marks = marks;
}
