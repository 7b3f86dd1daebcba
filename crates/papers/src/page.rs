//! Pages as they are drawn: words, lines and areas at their places, and the part of the document that each belongs to.

use crate::document::Face;

/// A page of a size, in points from its upper left corner.
#[derive(Clone, Debug, Default)]
pub(crate) struct Page {
    pub(crate) size: (f32, f32),
    /// Whether one drawing has it for itself.
    pub(crate) is_drawing: bool,
    pub(crate) marks: Vec<Mark>,
}

/// Something drawn.
#[derive(Clone, Debug)]
pub(crate) enum Mark {
    /// Words on a base line.
    Words(Words),
    /// A line, an area or both; never a part of the document by itself.
    Shape(Shape),
    /// All up to the end belongs to this part, as one figure.
    FigureStarts(Part),
    /// The end of the figure.
    FigureEnds,
}

/// Words on a base line.
#[derive(Clone, Debug)]
pub(crate) struct Words {
    pub(crate) at: (f32, f32),
    pub(crate) face: Face,
    pub(crate) size: f32,
    pub(crate) grey: u8,
    pub(crate) text: String,
    /// The width they are fitted into, where it is not their own.
    pub(crate) fitted: Option<f32>,
    /// The part they belong to; none of what every page says alike.
    pub(crate) part: Option<Part>,
}

/// A line or an area.
#[derive(Clone, Debug)]
pub(crate) struct Shape {
    pub(crate) path: Vec<Stroke>,
    /// Width and grey of its line.
    pub(crate) line: Option<(f32, u8)>,
    pub(crate) dashes: Vec<f32>,
    pub(crate) round: bool,
    pub(crate) fill: Option<u8>,
}

/// A stroke of a path.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Stroke {
    To(f32, f32),
    Line(f32, f32),
    Curve((f32, f32), (f32, f32), (f32, f32)),
    Close,
}

/// The number of a part of the document.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Part(pub(crate) usize);

/// What a part of the document is, for those who hear it read.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum PartKind {
    Section,
    Heading(u16, String),
    Paragraph,
    List { ordered: bool },
    ListItem,
    Label,
    Body,
    Table,
    Row,
    Head,
    Cell,
    Figure(String),
}

/// The parts of a document in reading order.
#[derive(Clone, Debug, Default)]
pub(crate) struct Structure {
    pub(crate) parts: Vec<(PartKind, Vec<Part>)>,
    pub(crate) top: Vec<Part>,
}

impl Structure {
    pub(crate) fn add(&mut self, under: Option<Part>, kind: PartKind) -> Part {
        let part = Part(self.parts.len());
        self.parts.push((kind, Vec::new()));
        match under.and_then(|Part(under)| self.parts.get_mut(under)) {
            Some((_, children)) => children.push(part),
            None => self.top.push(part),
        }
        part
    }
}

impl Shape {
    pub(crate) fn line(from: (f32, f32), to: (f32, f32), width: f32, grey: u8) -> Self {
        let path = vec![Stroke::To(from.0, from.1), Stroke::Line(to.0, to.1)];
        Self { path, line: Some((width, grey)), dashes: Vec::new(), round: false, fill: None }
    }

    pub(crate) fn area(left: f32, top: f32, width: f32, height: f32) -> Self {
        let (right, bottom) = (left + width, top + height);
        let corners = [Stroke::To(left, top), Stroke::Line(right, top), Stroke::Line(right, bottom)];
        let path = [&corners[..], &[Stroke::Line(left, bottom), Stroke::Close]].concat();
        Self { path, line: None, dashes: Vec::new(), round: false, fill: None }
    }

    pub(crate) const fn lined(mut self, width: f32, grey: u8) -> Self {
        self.line = Some((width, grey));
        self
    }

    pub(crate) const fn filled(mut self, grey: u8) -> Self {
        self.fill = Some(grey);
        self
    }
}

impl Mark {
    /// The same, smaller or larger.
    pub(crate) fn scaled(mut self, by: f32) -> Self {
        let scaled = |(x, y): (f32, f32)| (x * by, y * by);
        match &mut self {
            Self::Words(words) => {
                words.at = scaled(words.at);
                words.size *= by;
                words.fitted = words.fitted.map(|wide| wide * by);
            }
            Self::Shape(shape) => {
                for stroke in &mut shape.path {
                    *stroke = match *stroke {
                        Stroke::To(x, y) => Stroke::To(x * by, y * by),
                        Stroke::Line(x, y) => Stroke::Line(x * by, y * by),
                        Stroke::Curve(one, two, to) => Stroke::Curve(scaled(one), scaled(two), scaled(to)),
                        Stroke::Close => Stroke::Close,
                    };
                }
                shape.line = shape.line.map(|(width, grey)| (width * by, grey));
                shape.dashes.iter_mut().for_each(|dash| *dash *= by);
            }
            Self::FigureStarts(_) | Self::FigureEnds => {}
        }
        self
    }

    /// The same, moved.
    pub(crate) fn moved(mut self, by: (f32, f32)) -> Self {
        let moved = |(x, y): (f32, f32)| (x + by.0, y + by.1);
        match &mut self {
            Self::Words(words) => words.at = moved(words.at),
            Self::Shape(shape) => {
                for stroke in &mut shape.path {
                    *stroke = match *stroke {
                        Stroke::To(x, y) => Stroke::To(x + by.0, y + by.1),
                        Stroke::Line(x, y) => Stroke::Line(x + by.0, y + by.1),
                        Stroke::Curve(one, two, to) => Stroke::Curve(moved(one), moved(two), moved(to)),
                        Stroke::Close => Stroke::Close,
                    };
                }
            }
            Self::FigureStarts(_) | Self::FigureEnds => {}
        }
        self
    }
}
