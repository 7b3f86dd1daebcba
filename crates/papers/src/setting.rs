//! Blocks set as slabs: pieces as wide as the page that stay whole, in order.

use crate::document::{Block, Face, Text};
use crate::lines::{Line, Type, broken};
use crate::page::{Mark, Part, PartKind, Shape, Structure, Words};
use crate::svg::figure_of;
use crate::typeface::Typefaces;
use crate::{side_by_side, table};

/// The type of most of what a paper says.
pub(crate) const BODY: Type = Type { size: 9.5, leading: 12.6 };
/// The type of remarks and tables.
pub(crate) const SMALL: Type = Type { size: 8.5, leading: 11.2 };
const HEADINGS: [Type; 3] =
    [Type { size: 20.0, leading: 26.0 }, Type { size: 13.0, leading: 17.0 }, Type { size: 10.5, leading: 14.0 }];
/// What stands before a heading.
const BEFORE_HEADING: [f32; 3] = [0.0, 16.0, 9.0];
/// What stands between two blocks.
const BETWEEN: f32 = 4.5;
/// How far a list stands in.
const INDENT: f32 = 14.0;
/// How wide the words are in front of what is said of them.
const LABEL: f32 = 74.0;
/// As many lines of such a list stay with its heading, and one more.
const FIRST_LINES: usize = 3;
/// The side of a square to tick.
pub(crate) const TICK: f32 = 9.0;

/// A list of no more things than this better stays on one page.
const SHORT_LIST: usize = 5;
/// As many lines stand with the heading of a piece of work.
const BELOW_TASK: usize = 5;

/// A piece that stays whole.
#[derive(Clone, Debug, Default)]
pub(crate) struct Slab {
    /// What stands above it, unless it begins a page.
    pub(crate) before: f32,
    pub(crate) height: f32,
    pub(crate) marks: Vec<Mark>,
    /// Whether the next stays on the same page.
    pub(crate) with_next: bool,
    /// Whether the next stays on the same page unless that leaves much of a page empty.
    pub(crate) better_with_next: bool,
    /// What is drawn again above it where it begins a page: the head of its table.
    pub(crate) head: Option<Box<Self>>,
    /// What kind of page it asks for.
    pub(crate) asks: Asks,
}

/// What a slab asks of its page.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) enum Asks {
    /// Any page.
    #[default]
    Nothing,
    /// That a page begins here.
    NewPage,
    /// A page of its own, for a drawing of this size.
    OwnPage(f32, f32),
}

/// What setting needs to know and add to.
pub(crate) struct Setting<'a> {
    pub(crate) faces: &'a Typefaces,
    pub(crate) structure: &'a mut Structure,
    pub(crate) width: f32,
}

impl Setting<'_> {
    /// Every block as slabs.
    pub(crate) fn blocks(&mut self, blocks: &[Block], under: Option<Part>) -> Vec<Slab> {
        let mut slabs = Vec::new();
        for (number, block) in blocks.iter().enumerate() {
            let mut set = self.block(block, under);
            if let Some(last) = set.last_mut()
                && let Some(next) = blocks.get(number + 1)
                && leads(number.checked_sub(1).and_then(|at| blocks.get(at)), block, next)
            {
                last.with_next = true;
            }
            slabs.extend(set);
        }
        slabs
    }

    fn block(&mut self, block: &Block, under: Option<Part>) -> Vec<Slab> {
        match block {
            Block::Heading(level, words) => self.heading(*level, words, under),
            Block::Task(at, words) => self.task(at, words, under),
            Block::Paragraph(text) => self.paragraph(text, BODY, under),
            Block::Small(text) => self.paragraph(text, SMALL, under),
            Block::Caution(text) => self.caution(text, under),
            Block::Bullets(list) => self.list(list, false, under),
            Block::Steps(list) => self.list(list, true, under),
            Block::Items(list) => self.items(list, under),
            Block::Table(table) => table::set(self, table, under),
            Block::Fields(fields) => self.fields(fields, under),
            Block::Together(blocks) => self.together(blocks, under),
            Block::Sheet(svg, says) => self.sheet(svg, says, under),
            Block::Drawings(drawings) => side_by_side::set(self, drawings, under),
            Block::NewPage => vec![Slab { asks: Asks::NewPage, ..Slab::default() }],
        }
    }

    /// Blocks that better stay together; where they lead with a piece of work or with what a table is of, that is named again on
    /// a further page.
    fn together(&mut self, blocks: &[Block], under: Option<Part>) -> Vec<Slab> {
        let mut slabs = together(self.blocks(blocks, under));
        if let Some(Block::Task(..)) = blocks.first() {
            // What is to be done stands below its heading before it goes on elsewhere.
            let all_but_last = slabs.len().saturating_sub(1);
            slabs.iter_mut().take(all_but_last.min(BELOW_TASK)).for_each(|slab| slab.with_next = true);
        }
        if let Some(Block::Task(at, _) | Block::Heading(2 | 3, at)) = blocks.first() {
            let words = format!("{at}, continued");
            let mark = margin_words(Face::Bold, &words, (0.0, SMALL.leading * 0.8));
            let height = SMALL.leading + 3.0;
            for slab in slabs.iter_mut().skip(1) {
                let mut head = slab.head.take().map_or_else(Slab::default, |head| *head);
                head.marks = head.marks.into_iter().map(|mark| mark.moved((0.0, height))).collect();
                head.marks.push(mark.clone());
                head.height += height;
                slab.head = Some(Box::new(head));
            }
        }
        slabs
    }

    fn heading(&mut self, level: u16, words: &str, under: Option<Part>) -> Vec<Slab> {
        let index = usize::from(level.clamp(1, 3)) - 1;
        let part = self.structure.add(under, PartKind::Heading(level, words.to_owned()));
        let lines = broken(self.faces, &Text::bold(words), self.width, HEADINGS[index].size);
        let mut slabs = lines_as_slabs(&lines, 0.0, HEADINGS[index], part);
        if index == 1 {
            let line = Shape::line((0.0, 0.0), (self.width, 0.0), 1.0, 0);
            if let Some(first) = slabs.first_mut() {
                let marks = first.marks.drain(..).map(|mark| mark.moved((0.0, 3.0)));
                first.marks = marks.collect();
                first.marks.push(Mark::Shape(line));
                first.height += 3.0;
            }
        }
        slabs.iter_mut().for_each(|slab| slab.with_next = true);
        spaced(slabs, BEFORE_HEADING[index])
    }

    fn task(&mut self, at: &str, words: &str, under: Option<Part>) -> Vec<Slab> {
        let kind = HEADINGS[2];
        let part = self.structure.add(under, PartKind::Heading(3, format!("{at} {words}")));
        let plate = self.faces.width(Face::Bold, at, kind.size) + 8.0;
        let left = TICK + 6.0;
        let words_at = (left + plate + 6.0).max(LABEL);
        let lines = broken(self.faces, &Text::bold(words), self.width - words_at, kind.size);
        let mut slabs = lines_as_slabs(&lines, words_at, kind, part);
        if let Some(first) = slabs.first_mut() {
            let middle = kind.leading / 2.0;
            let tick = Shape::area(0.0, middle - TICK / 2.0, TICK, TICK).lined(0.8, 0);
            let frame = Shape::area(left, 0.5, plate, kind.leading - 1.0).lined(0.8, 0);
            let name = Line::default().with(Face::Bold, &format!("{at} "), plate);
            let name = name.marks((left + 4.0, 0.0), kind, Some(part));
            let shapes = [Mark::Shape(tick), Mark::Shape(frame)];
            first.marks = shapes.into_iter().chain(name).chain(first.marks.drain(..)).collect();
        }
        slabs.iter_mut().for_each(|slab| slab.with_next = true);
        spaced(slabs, BEFORE_HEADING[2])
    }

    pub(crate) fn paragraph(&mut self, text: &Text, kind: Type, under: Option<Part>) -> Vec<Slab> {
        let part = self.structure.add(under, PartKind::Paragraph);
        let lines = broken(self.faces, text, self.width, kind.size);
        spaced(lines_as_slabs(&lines, 0.0, kind, part), BETWEEN)
    }

    fn caution(&mut self, text: &Text, under: Option<Part>) -> Vec<Slab> {
        let part = self.structure.add(under, PartKind::Paragraph);
        let lines = broken(self.faces, text, self.width - INDENT, BODY.size);
        let mut slabs = lines_as_slabs(&lines, INDENT, BODY, part);
        for slab in &mut slabs {
            slab.marks.push(Mark::Shape(Shape::area(3.0, 0.0, 3.0, BODY.leading).filled(0)));
        }
        spaced(slabs, BETWEEN)
    }

    fn list(&mut self, list: &[Text], ordered: bool, under: Option<Part>) -> Vec<Slab> {
        let all = self.structure.add(under, PartKind::List { ordered });
        let mut slabs = Vec::new();
        for (number, text) in list.iter().enumerate() {
            let mark = if ordered { format!("{}. ", number + 1) } else { "– ".to_owned() };
            let (label, body) = self.list_item(all);
            let lines = broken(self.faces, text, self.width - INDENT, BODY.size);
            let mut set = lines_as_slabs(&lines, INDENT, BODY, body);
            if let Some(first) = set.first_mut() {
                let label = Line::default().with(Face::Plain, &mark, INDENT).marks((1.0, 0.0), BODY, Some(label));
                first.marks = label.into_iter().chain(first.marks.drain(..)).collect();
            }
            stay_by_twos(&mut set, number, list.len());
            slabs.extend(spaced(set, if number == 0 { BETWEEN } else { 1.5 }));
        }
        if list.len() <= SHORT_LIST { together(slabs) } else { slabs }
    }

    fn items(&mut self, list: &[(String, Text)], under: Option<Part>) -> Vec<Slab> {
        let all = self.structure.add(under, PartKind::List { ordered: false });
        let mut slabs = Vec::new();
        for (number, (words, text)) in list.iter().enumerate() {
            let (label, body) = self.list_item(all);
            let labels = broken(self.faces, &Text::bold(words.as_str()), LABEL - 6.0, SMALL.size);
            let lines = broken(self.faces, text, self.width - LABEL, BODY.size);
            let mut set = lines_as_slabs(&lines, LABEL, BODY, body);
            while set.len() < labels.len() {
                set.push(Slab { height: BODY.leading, ..Slab::default() });
            }
            for (slab, line) in set.iter_mut().zip(&labels) {
                let kind = Type { size: SMALL.size, leading: BODY.leading };
                let label = line.marks((0.0, 0.0), kind, Some(label));
                slab.marks = label.into_iter().chain(slab.marks.drain(..)).collect();
            }
            stay_by_twos(&mut set, number, list.len());
            slabs.extend(spaced(set, 1.5));
        }
        // Its first lines stay with what they stand below, and none of the last stands alone.
        let count = slabs.len();
        for (number, slab) in slabs.iter_mut().enumerate().take(count.saturating_sub(1)) {
            slab.with_next |= number < FIRST_LINES || number + 2 == count;
        }
        slabs
    }

    fn list_item(&mut self, list: Part) -> (Part, Part) {
        let item = self.structure.add(Some(list), PartKind::ListItem);
        let label = self.structure.add(Some(item), PartKind::Label);
        (label, self.structure.add(Some(item), PartKind::Body))
    }

    fn fields(&mut self, fields: &[String], under: Option<Part>) -> Vec<Slab> {
        let part = self.structure.add(under, PartKind::Paragraph);
        let count = u16::try_from(fields.len().max(1)).unwrap_or(u16::MAX);
        let wide = self.width / f32::from(count);
        let mut slab = Slab { before: BETWEEN, height: 40.0, ..Slab::default() };
        for (number, field) in (0_u16..).zip(fields) {
            let left = wide * f32::from(number);
            slab.marks.push(Mark::Shape(Shape::line((left, 26.0), (left + wide - 12.0, 26.0), 0.7, 0)));
            let line = Line::default().with(Face::Plain, &format!("{field} "), wide);
            slab.marks.extend(line.marks((left, 27.0), SMALL, Some(part)));
        }
        vec![slab]
    }

    fn sheet(&mut self, svg: &str, says: &str, under: Option<Part>) -> Vec<Slab> {
        let part = self.structure.add(under, PartKind::Figure(says.to_owned()));
        let Some(figure) = figure_of(svg, self.faces) else { return self.paragraph(&says.into(), BODY, under) };
        let (width, height) = figure.size;
        let mut marks = vec![Mark::FigureStarts(part)];
        marks.extend(figure.marks);
        marks.push(Mark::FigureEnds);
        vec![Slab { height, marks, asks: Asks::OwnPage(width, height), ..Slab::default() }]
    }
}

impl Line {
    /// A line of one piece.
    fn with(self, face: Face, words: &str, width: f32) -> Self {
        let mut line = self;
        line.add(face, words, width);
        line
    }
}

/// One slab for each line, so that neither the first nor the last line of several stands alone on a page.
fn lines_as_slabs(lines: &[Line], left: f32, kind: Type, part: Part) -> Vec<Slab> {
    let count = lines.len();
    let slab = |(number, line): (usize, &Line)| Slab {
        height: kind.leading,
        marks: line.marks((left, 0.0), kind, Some(part)),
        with_next: number + 1 < count && (number == 0 || number + 2 == count),
        ..Slab::default()
    };
    lines.iter().enumerate().map(slab).collect()
}

/// Neither the first nor the last thing of a list of several stands alone on a page.
fn stay_by_twos(set: &mut [Slab], number: usize, count: usize) {
    let stays = number + 1 < count && (number == 0 || number + 2 == count);
    if let Some(last) = set.last_mut().filter(|_| stays) {
        last.with_next = true;
    }
}

fn spaced(mut slabs: Vec<Slab>, before: f32) -> Vec<Slab> {
    if let Some(first) = slabs.first_mut() {
        first.before = before;
    }
    slabs
}

/// Whether words lead to what follows, so that they stay on its page: to a list or a table, and below a heading to what is
/// headed again.
fn leads(before: Option<&Block>, words: &Block, next: &Block) -> bool {
    let below_heading = matches!(before, Some(Block::Heading(..)));
    let headed = |block: &Block| match block {
        Block::Heading(3, _) | Block::Task(..) => true,
        Block::Together(blocks) => matches!(blocks.first(), Some(Block::Heading(3, _) | Block::Task(..))),
        _ => false,
    };
    matches!(words, Block::Paragraph(_) | Block::Small(_))
        && (below_heading && headed(next)
            || matches!(
                next,
                Block::Table(_)
                    | Block::Bullets(_)
                    | Block::Steps(_)
                    | Block::Items(_)
                    | Block::Drawings(_)
                    | Block::Fields(_)
            ))
}

fn together(mut slabs: Vec<Slab>) -> Vec<Slab> {
    let all_but_last = slabs.len().saturating_sub(1);
    slabs.iter_mut().take(all_but_last).for_each(|slab| slab.better_with_next = true);
    slabs
}

/// A line in the page's margins that every page says alike, and that nobody hears read.
pub(crate) fn margin_words(face: Face, text: &str, at: (f32, f32)) -> Mark {
    Mark::Words(Words { at, face, size: 8.0, grey: 0, text: text.to_owned(), fitted: None, part: None })
}
