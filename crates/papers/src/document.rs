//! What a paper says, before it is set: headings, sentences, lists, tables, drawings, and where they stay together.

/// A paper: everything it says, in reading order.
#[derive(Clone, Debug, PartialEq)]
pub struct Paper {
    /// What kind of paper it is: on every page, and the document's title.
    pub title: String,
    /// The dwelling: on every page.
    pub dwelling: String,
    /// Its day; nothing leaves a line to fill in.
    pub date: Option<String>,
    /// What it says.
    pub blocks: Vec<Block>,
}

/// A part of a paper.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading, level 1 to 3; it stays with what follows.
    Heading(u16, String),
    /// The heading of a piece of work at a box: a square to tick, the box, and what is done. Level 3.
    Task(String, String),
    /// A paragraph.
    Paragraph(Text),
    /// A paragraph in small type.
    Small(Text),
    /// A caution, with a bar beside it.
    Caution(Text),
    /// A list without order.
    Bullets(Vec<Text>),
    /// A list in order.
    Steps(Vec<Text>),
    /// A list of words and what stands behind each.
    Items(Vec<(String, Text)>),
    /// A table.
    Table(Table),
    /// Lines to fill in, side by side.
    Fields(Vec<String>),
    /// Blocks that stay on one page where one page holds them.
    Together(Vec<Block>),
    /// A drawing on a page of its own, at its own size: an SVG, and what it shows in words.
    Sheet(String, String),
    /// Drawings side by side where two find room, each at its own size or a little less.
    Drawings(Vec<Drawing>),
    /// What follows starts on a new page.
    NewPage,
}

/// A drawing in the run of a paper.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// An SVG.
    pub svg: String,
    /// What it shows in words.
    pub says: String,
}

/// A table with a head that is said again on every page.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Its columns: what stands at the head, and how wide against the others.
    pub columns: Vec<(String, f32)>,
    /// Its rows, as many cells in each as there are columns.
    pub rows: Vec<Vec<Cell>>,
    /// The least height of a row in points: room to write in.
    pub row_height: f32,
}

/// A cell of a table.
#[derive(Clone, Debug, PartialEq)]
pub enum Cell {
    /// Words; none leaves room to write in.
    Words(Text),
    /// Lines to write on, each behind what is written there.
    Lines(Vec<&'static str>),
    /// A square to tick.
    Tick,
}

/// Words in one or more faces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Text(pub Vec<(Face, String)>);

/// A face of type.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Face {
    /// Upright.
    Plain,
    /// Bold.
    Bold,
    /// Slanted.
    Slanted,
}

impl Text {
    /// Words in bold.
    #[must_use]
    pub fn bold(words: impl Into<String>) -> Self {
        Self(vec![(Face::Bold, words.into())])
    }

    /// The same with more words behind.
    #[must_use]
    pub fn and(mut self, face: Face, words: impl Into<String>) -> Self {
        self.0.push((face, words.into()));
        self
    }

    /// The words alone.
    #[must_use]
    pub fn words(&self) -> String {
        self.0.iter().map(|(_, words)| words.as_str()).collect()
    }

    /// Whether it says nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.iter().all(|(_, words)| words.trim().is_empty())
    }
}

impl<T: Into<String>> From<T> for Text {
    fn from(words: T) -> Self {
        Self(vec![(Face::Plain, words.into())])
    }
}

impl<T: Into<Text>> From<T> for Cell {
    fn from(words: T) -> Self {
        Self::Words(words.into())
    }
}

impl Paper {
    /// Every word of it, a line for each piece: what a test compares with the plan.
    #[must_use]
    pub fn words(&self) -> String {
        let mut lines = vec![self.title.clone()];
        self.blocks.iter().for_each(|block| block.add_words(&mut lines));
        lines.join("\n")
    }
}

impl Block {
    fn add_words(&self, lines: &mut Vec<String>) {
        match self {
            Self::Heading(_, words) => lines.push(words.clone()),
            Self::Task(at, words) => lines.push(format!("{at} {words}")),
            Self::Paragraph(text) | Self::Small(text) | Self::Caution(text) => lines.push(text.words()),
            Self::Bullets(list) | Self::Steps(list) => lines.extend(list.iter().map(Text::words)),
            Self::Items(list) => lines.extend(list.iter().map(|(label, text)| format!("{label} {}", text.words()))),
            Self::Table(table) => {
                lines.push(table.columns.iter().map(|(head, _)| head.as_str()).collect::<Vec<_>>().join(" "));
                for row in &table.rows {
                    let cells = row.iter().map(|cell| match cell {
                        Cell::Words(text) => text.words(),
                        Cell::Lines(names) => names.join(" "),
                        Cell::Tick => String::new(),
                    });
                    lines.push(cells.collect::<Vec<_>>().join(" "));
                }
            }
            Self::Fields(fields) => lines.push(fields.join(" ")),
            Self::Together(blocks) => blocks.iter().for_each(|block| block.add_words(lines)),
            Self::Sheet(_, says) => lines.push(says.clone()),
            Self::Drawings(drawings) => lines.extend(drawings.iter().map(|drawing| drawing.says.clone())),
            Self::NewPage => {}
        }
    }
}
