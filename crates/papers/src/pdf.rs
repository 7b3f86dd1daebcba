//! Pages as PDF: tagged for those who hear them read, by PDF/UA-1, and the same bytes for the same pages.

use crate::page::{Mark, Page, Part, PartKind, Shape, Stroke, Structure, Words};
use crate::typeface::Typefaces;
use crate::{PaperFault, document::Paper};
use krilla::SerializeSettings;
use krilla::color::luma;
use krilla::configure::{Accessibility, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::{Path, PathBuilder, Point, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, LineJoin, Stroke as PdfStroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, ListNumbering, SpanTag, TableHeaderScope, Tag, TagGroup, TagKind,
    TagTree,
};
use krilla::{Document, geom};
use std::collections::BTreeMap;
use std::num::NonZeroU16;

/// The language of every paper.
const LANGUAGE: &str = "en-US";

/// The places in the document that belong to each part.
type Places = BTreeMap<usize, Vec<Identifier>>;

/// The bytes of a PDF of these pages.
pub(crate) fn pdf(
    paper: &Paper,
    pages: &[Page],
    structure: &Structure,
    faces: &Typefaces,
) -> Result<Vec<u8>, PaperFault> {
    let fault = |what: String| PaperFault { paper: paper.title.clone(), what };
    let accessible = ConfigurationBuilder::new().with_accessibility_validator(Accessibility::UA1).finish();
    let configuration = accessible.map_err(|error| fault(format!("{error:?}")))?;
    let mut document = Document::new_with(SerializeSettings { configuration, ..SerializeSettings::default() });
    let mut places = Places::new();
    let mut starts = BTreeMap::new();
    for (number, page) in pages.iter().enumerate() {
        let settings = PageSettings::from_wh(page.size.0, page.size.1);
        let settings = settings.ok_or_else(|| fault("a page without a size".to_owned()))?;
        let mut drawn = document.start_page_with(settings);
        let mut surface = drawn.surface();
        draw(&mut surface, page, faces, &mut places);
        surface.finish();
        drawn.finish();
        for (part, top) in page.marks.iter().filter_map(part_at) {
            starts.entry(part.0).or_insert((number, top));
        }
    }
    document.set_outline(outline(structure, &starts));
    let mut tree = TagTree::new().with_lang(Some(LANGUAGE.to_owned()));
    structure.top.iter().filter_map(|part| group(structure, *part, &mut places)).for_each(|top| tree.push(top));
    document.set_tag_tree(tree);
    document.set_metadata(metadata(paper));
    document.finish().map_err(|error| fault(format!("{error:?}")))
}

fn metadata(paper: &Paper) -> Metadata {
    Metadata::new()
        .title(format!("{}: {}", paper.title, paper.dwelling))
        .language(LANGUAGE.to_owned())
        .creator("thirdwire".to_owned())
}

fn part_at(mark: &Mark) -> Option<(Part, f32)> {
    match mark {
        Mark::Words(words) => words.part.map(|part| (part, words.at.1 - words.size)),
        Mark::FigureStarts(part) => Some((*part, 0.0)),
        Mark::Shape(_) | Mark::FigureEnds => None,
    }
}

fn draw(surface: &mut Surface, page: &Page, faces: &Typefaces, places: &mut Places) {
    let mut in_figure = false;
    for mark in &page.marks {
        match mark {
            Mark::FigureStarts(part) => {
                let place = surface.start_tagged(ContentTag::Other);
                places.entry(part.0).or_default().push(place);
                in_figure = true;
            }
            Mark::FigureEnds => {
                surface.end_tagged();
                in_figure = false;
            }
            Mark::Words(words) if in_figure => write(surface, words, faces),
            Mark::Shape(shape) if in_figure => trace(surface, shape),
            Mark::Words(words) => {
                let tag = match words.part {
                    Some(_) => ContentTag::Span(SpanTag::empty()),
                    None => ContentTag::Artifact(Artifact::with_kind(ArtifactType::PaginationOther)),
                };
                let place = surface.start_tagged(tag);
                write(surface, words, faces);
                surface.end_tagged();
                if let Some(part) = words.part {
                    places.entry(part.0).or_default().push(place);
                }
            }
            Mark::Shape(shape) => {
                surface.start_tagged(ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout)));
                trace(surface, shape);
                surface.end_tagged();
            }
        }
    }
}

fn write(surface: &mut Surface, words: &Words, faces: &Typefaces) {
    let Some(font) = faces.font(words.face) else { return };
    let shaped = faces.shaped(words.face, &words.text);
    surface.set_stroke(None);
    surface.set_fill(Some(filled(words.grey)));
    let own = shaped.width * words.size;
    let squeezed = words.fitted.filter(|fitted| own > *fitted && *fitted > 0.0).map(|fitted| fitted / own);
    surface.push_transform(&Transform::from_row(squeezed.unwrap_or(1.0), 0.0, 0.0, 1.0, words.at.0, words.at.1));
    surface.draw_glyphs(Point::from_xy(0.0, 0.0), &shaped.glyphs, font, &shaped.text, words.size, false);
    surface.pop();
}

fn filled(grey: u8) -> Fill {
    Fill { paint: luma::Color::new(grey).into(), ..Fill::default() }
}

fn trace(surface: &mut Surface, shape: &Shape) {
    let Some(path) = path_of(&shape.path) else { return };
    surface.set_fill(shape.fill.map(filled));
    surface.set_stroke(shape.line.map(|(width, grey)| PdfStroke {
        paint: luma::Color::new(grey).into(),
        width,
        miter_limit: 4.0,
        line_cap: if shape.round { LineCap::Round } else { LineCap::Butt },
        line_join: LineJoin::Miter,
        opacity: NormalizedF32::ONE,
        dash: (!shape.dashes.is_empty()).then(|| StrokeDash { array: shape.dashes.clone(), offset: 0.0 }),
    }));
    if shape.fill.is_some() || shape.line.is_some() {
        surface.draw_path(&path);
    }
}

fn path_of(strokes: &[Stroke]) -> Option<Path> {
    let mut path = PathBuilder::new();
    for stroke in strokes {
        match *stroke {
            Stroke::To(x, y) => path.move_to(x, y),
            Stroke::Line(x, y) => path.line_to(x, y),
            Stroke::Curve(one, two, to) => path.cubic_to(one.0, one.1, two.0, two.1, to.0, to.1),
            Stroke::Close => path.close(),
        }
    }
    path.finish()
}

/// A part with all below it; nothing where nothing of it was drawn.
fn group(structure: &Structure, part: Part, places: &mut Places) -> Option<TagGroup> {
    let (kind, children) = structure.parts.get(part.0)?;
    let own = places.remove(&part.0).unwrap_or_default();
    let below: Vec<TagGroup> = children.iter().filter_map(|child| group(structure, *child, places)).collect();
    if own.is_empty() && below.is_empty() {
        return None;
    }
    let mut tagged = TagGroup::new(tag(kind));
    own.into_iter().for_each(|place| tagged.push(place));
    below.into_iter().for_each(|below| tagged.push(below));
    Some(tagged)
}

fn tag(kind: &PartKind) -> TagKind {
    match kind {
        PartKind::Section => Tag::Section.into(),
        PartKind::Heading(level, words) => {
            let level = NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN);
            Tag::Hn(level, Some(words.clone())).into()
        }
        PartKind::Paragraph => Tag::P.into(),
        PartKind::List { ordered } => {
            Tag::L(if *ordered { ListNumbering::Decimal } else { ListNumbering::None }).into()
        }
        PartKind::ListItem => Tag::LI.into(),
        PartKind::Label => Tag::Lbl.into(),
        PartKind::Body => Tag::LBody.into(),
        PartKind::Table => Tag::Table.into(),
        PartKind::Row => Tag::TR.into(),
        PartKind::Head => Tag::TH(TableHeaderScope::Column).into(),
        PartKind::Cell => Tag::TD.into(),
        PartKind::Figure(says) => Tag::Figure(Some(says.clone())).into(),
    }
}

/// The headings of the first two levels, as a reader shows them beside the pages.
fn outline(structure: &Structure, starts: &BTreeMap<usize, (usize, f32)>) -> Outline {
    let mut outline = Outline::new();
    for (number, (kind, _)) in structure.parts.iter().enumerate() {
        if let (PartKind::Heading(1 | 2, words), Some((page, top))) = (kind, starts.get(&number)) {
            let to = XyzDestination::new(*page, geom::Point::from_xy(0.0, top.max(0.0)));
            outline.push_child(OutlineNode::new(words.clone(), to));
        }
    }
    outline
}
