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
/// As much of a page may stay empty for what would better stay together.
const LEFT_EMPTY: f32 = 190.0;
/// The least that stands on a page of what is parted.
const LEAST_PART: f32 = 80.0;
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
    let blank = || Page { size: (width, height), is_drawing: false, marks: Vec::new() };
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
        let soft = chain_of(rest, |slab| slab.with_next || slab.better_with_next);
        let hard = chain_of(rest, |slab| slab.with_next);
        let height = |slabs: &[Slab]| slabs.iter().map(|slab| slab.before + slab.height).sum::<f32>();
        let left = taken.map_or(room, |at| room - at);
        // What would better stay together is parted where the page would else stay empty for more than a little of it.
        let placed = if is_whole(soft) && (height(soft) <= left || (height(soft) <= room && left <= LEFT_EMPTY)) {
            soft
        } else if let Some(part) = parted(soft, left).filter(|_| is_whole(soft)) {
            part
        } else if is_whole(soft) && height(soft) <= room {
            soft
        } else if is_whole(hard) && height(hard) <= room {
            hard
        } else {
            &rest[..1]
        };
        let needed = height(placed);
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

/// The slabs from the first on that are to stay together.
fn chain_of(slabs: &[Slab], goes_on: impl Fn(&Slab) -> bool) -> &[Slab] {
    let count = 1 + slabs.iter().take_while(|slab| goes_on(slab)).count();
    &slabs[..count.min(slabs.len())]
}

/// As many of these slabs as find room, parted where they may be; none where too little would stand on either page.
fn parted(slabs: &[Slab], left: f32) -> Option<&[Slab]> {
    let mut best = None;
    let mut at = 0;
    let height = |slabs: &[Slab]| slabs.iter().map(|slab| slab.before + slab.height).sum::<f32>();
    while at < slabs.len() {
        at += chain_of(&slabs[at..], |slab| slab.with_next).len();
        let (here, there) = slabs.split_at(at);
        if height(here) <= left && height(here) >= LEAST_PART && height(there) >= LEAST_PART {
            best = Some(here);
        }
    }
    best
}

/// Whether slabs can stand on one page together.
fn is_whole(slabs: &[Slab]) -> bool {
    slabs.iter().all(|slab| slab.asks == Asks::Nothing)
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
    Page { size, is_drawing: true, marks: slab.marks.iter().map(|mark| mark.clone().moved((left, top))).collect() }
}

fn say_on_every_page(page: &mut Page, paper: &Paper, faces: &Typefaces, (number, count): (usize, usize)) {
    let (width, height) = page.size;
    let date = paper.date.clone().unwrap_or_else(|| "Date ______________".to_owned());
    let right = |text: &str, base: f32| {
        let wide = faces.width(Face::Plain, text, 8.0);
        margin_words(Face::Plain, text, (width - SIDE - wide, base))
    };
    let page_number = format!("Page {number} of {count}");
    if page.is_drawing {
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
