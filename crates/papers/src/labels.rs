//! The labels: exactly the markings that the plan needs, one label for each opening, to print at true size.

use crate::PaperFault;
use crate::document::{Face, Paper, Text};
use crate::job::Job;
use crate::label_sheet::LabelSheet;
use crate::lines::{Type, broken};
use crate::page::{Mark, Page, Part, PartKind, Shape, Structure};
use crate::paging::Typeset;
use crate::pdf::pdf;
use crate::typeface::Typefaces;
use crate::words::room_title;
use remedies::in_words::at_panel;

/// A label: what it says on the opening, and what stands beside it for whoever fits it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// The box.
    pub box_id: String,
    /// Its room, as people call it.
    pub room: String,
    /// Its circuit, where known.
    pub circuit: Option<String>,
    /// The words it must carry, exactly.
    pub markings: Vec<&'static str>,
    /// Where the device sits that protects it.
    pub protected_by: String,
}

/// The labels that a plan needs, in walking order.
#[must_use]
pub fn labels(job: &Job) -> Vec<Label> {
    let marked = job.plan.openings.iter().filter(|opening| !opening.markings.is_empty());
    marked
        .map(|opening| Label {
            box_id: opening.box_id.clone(),
            room: room_title(job.dwelling, &opening.room),
            circuit: opening.circuit.clone(),
            markings: opening.markings.clone(),
            protected_by: where_protected(opening.protected_by.as_deref()),
        })
        .collect()
}

/// Where the device sits that protects an opening, for the note beside its label.
pub(crate) fn where_protected(by: Option<&str>) -> String {
    match by {
        None => "no device protects it".to_owned(),
        Some("itself") => "tested at this opening: its own device".to_owned(),
        Some(by) => match by.split_once(": ") {
            Some((panel, what)) if what.starts_with("dead-front") => {
                format!("tested beside {panel}: {}", kind_of(what))
            }
            Some((panel, what)) => format!("tested at {panel}: {}", at_panel(what)),
            None => format!("tested at {by}: the device there"),
        },
    }
}

/// What a device is that has said where it is.
fn kind_of(name: &str) -> &str {
    at_panel(name).trim_end_matches(" beside the panel")
}

/// The greatest size of the words on a label; common practice, no source.
const LARGEST: f32 = 13.0;
/// The type of the note beside a label.
const NOTE: Type = Type { size: 6.5, leading: 8.0 };
/// What stays free inside a label.
const PAD: f32 = 5.0;

/// The labels on sheets of this geometry, as a PDF.
///
/// # Errors
/// [`PaperFault`]: a fault of this program.
pub fn typeset_labels(paper: &Paper, labels: &[Label], sheet: &LabelSheet) -> Result<Typeset, PaperFault> {
    let unread = || PaperFault { paper: paper.title.clone(), what: "the fonts cannot be read".to_owned() };
    let faces = Typefaces::read().ok_or_else(unread)?;
    let mut structure = Structure::default();
    let heading = structure.add(None, PartKind::Heading(1, format!("{}: {}", paper.title, paper.dwelling)));
    let list = structure.add(None, PartKind::List { ordered: false });
    let places = sheet.places();
    let count = labels.len().div_ceil(places.len().max(1)).max(1);
    let mut pages = Vec::new();
    for number in 0..count {
        let mut page = Page { size: sheet.paper.points(), is_drawing: false, marks: Vec::new() };
        say_which_page(&mut page, paper, &faces, sheet, (number, count), heading);
        let here = labels.iter().skip(number * places.len()).take(places.len());
        for (label, place) in here.zip(&places) {
            let item = structure.add(Some(list), PartKind::ListItem);
            let body = structure.add(Some(item), PartKind::Body);
            page.marks.extend(drawn(label, *place, sheet.label, &faces, body));
        }
        pages.push(page);
    }
    Ok(Typeset { bytes: pdf(paper, &pages, &structure, &faces)?, pages: count })
}

/// A label: its words above the line to cut or tear along, the note below.
fn drawn(
    label: &Label,
    (left, top): (f32, f32),
    (width, height): (f32, f32),
    faces: &Typefaces,
    part: Part,
) -> Vec<Mark> {
    let cut = height * 0.54;
    let count = f32::from(u16::try_from(label.markings.len()).unwrap_or(1));
    let inside = width - 2.0 * PAD;
    let widest = label.markings.iter().map(|words| faces.width(Face::Bold, words, 1.0)).fold(0.01, f32::max);
    let size = LARGEST.min(inside / widest).min((cut - PAD) / (count * 1.15));
    let kind = Type { size, leading: size * 1.15 };
    let mut marks = vec![Mark::Shape(Shape::area(left, top, width, height).lined(0.3, 90))];
    let mut along = Shape::line((left, top + cut), (left + width, top + cut), 0.4, 60);
    along.dashes = vec![3.0, 2.0];
    marks.push(Mark::Shape(along));
    let mut down = top + (cut - kind.leading * count) / 2.0;
    for words in &label.markings {
        let wide = faces.width(Face::Bold, words, size);
        for line in broken(faces, &Text::bold(*words), f32::INFINITY, size) {
            marks.extend(line.marks((left + (width - wide) / 2.0, down), kind, Some(part)));
        }
        down += kind.leading;
    }
    let circuit = label.circuit.as_ref().map_or("circuit unknown".to_owned(), |id| format!("circuit {id}"));
    let note = Text::bold(format!("{} ", label.box_id))
        .and(Face::Plain, format!("{} · {circuit} · {}", label.room, label.protected_by));
    let room = height - cut - 2.0;
    let mut down = 1.5;
    for line in broken(faces, &note, inside, NOTE.size) {
        if down + NOTE.leading > room {
            break;
        }
        marks.extend(line.marks((left + PAD, top + cut + down), NOTE, Some(part)));
        down += NOTE.leading;
    }
    marks
}

fn say_which_page(
    page: &mut Page,
    paper: &Paper,
    faces: &Typefaces,
    sheet: &LabelSheet,
    (number, count): (usize, usize),
    heading: Part,
) {
    let date = paper.date.clone().unwrap_or_else(|| "Date ______________".to_owned());
    let said =
        format!("{}: {} · {date} · print at 100 % · Page {} of {count}", paper.title, paper.dwelling, number + 1);
    let kind = Type { size: 7.0, leading: 9.0 };
    let part = (number == 0).then_some(heading);
    let wide = faces.width(Face::Plain, &said, kind.size);
    let left = (page.size.0 - wide) / 2.0;
    for line in broken(faces, &said.as_str().into(), f32::INFINITY, kind.size) {
        page.marks.extend(line.marks((left, sheet.own_line()), kind, part));
    }
}
