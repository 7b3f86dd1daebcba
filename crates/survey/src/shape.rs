//! The shape of a survey: which tables there are, which keys each has, and what each key holds.
//!
//! This one description drives the reading, the mistakes, the JSON Schema and the page for users.

use crate::quantity::Quantity;

/// A table of the survey.
#[derive(Debug)]
pub(crate) struct Shape {
    /// How the table is written in TOML: `[[box]]`.
    pub(crate) title: &'static str,
    /// Its name in the schema.
    pub(crate) name: &'static str,
    /// What it describes.
    pub(crate) meaning: &'static str,
    pub(crate) fields: &'static [Field],
}

/// A key of a table.
#[derive(Debug)]
pub(crate) struct Field {
    pub(crate) key: &'static str,
    pub(crate) kind: FieldKind,
    pub(crate) need: Need,
    /// What it says, in one line.
    pub(crate) meaning: &'static str,
    /// A value as TOML writes it.
    pub(crate) example: &'static str,
}

/// Whether a key must be there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Need {
    /// It must.
    Required,
    /// It must, and a mistake of its own says so.
    RequiredOtherwise,
    /// It must where the key `closed` is not true, and a mistake of its own says so.
    UnlessClosed,
    /// It may be left out, or be "unknown".
    Optional,
}

/// What a key holds.
#[derive(Clone, Copy, Debug)]
pub(crate) enum FieldKind {
    /// The number of the file's format.
    Format,
    /// A name of the surveyor's own.
    Id,
    /// The id of something else; the text says of what.
    Reference(&'static str),
    /// A list of ids of something else; the text says of what.
    References(&'static str),
    Text,
    /// A list of texts.
    Texts,
    Flag,
    Year,
    /// A day of the calendar, written like `2025-07-01`.
    Day,
    /// A whole number from a least to a greatest.
    Count(i64, i64),
    Name(&'static NameList),
    Names(&'static NameList),
    Quantity(Quantity),
    Gauge,
    /// Dollars, to the cent.
    Money,
    /// A percent from nothing to a greatest, to the hundredth.
    Percent(i64),
    /// A list of whole numbers from a least to a greatest.
    Counts(i64, i64),
    /// A share of one, which adds up to one with the others of its table.
    Share,
    /// How often something is so, from never to always.
    Chance,
    /// Minutes from a least to a greatest, a part of one too.
    Minutes(f64, f64),
    TradeSize,
    Point,
    Outline,
    Table(&'static Shape),
    Tables(&'static Shape),
    /// One table, or a list of them.
    OneOrMore(&'static Shape),
    /// A distance alone, or a table.
    DistanceOrTable(&'static Shape),
}

/// A closed list of names.
#[derive(Debug)]
pub(crate) struct NameList {
    /// What the names are, as the page for users calls them.
    pub(crate) title: &'static str,
    pub(crate) names: &'static [&'static str],
    pub(crate) meaning: fn(&str) -> &'static str,
}

impl Shape {
    /// What people call a file of this shape.
    pub(crate) fn file(&self) -> &'static str {
        match self.name {
            "prices" => "price book",
            "practice" => "practice file",
            "local-code" => "file of local code",
            _ => "survey",
        }
    }

    pub(crate) fn field(&self, key: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.key == key)
    }

    pub(crate) fn keys(&self) -> impl Iterator<Item = &'static str> + use<> {
        self.fields.iter().map(|field| field.key)
    }
}

impl FieldKind {
    /// What must stand there, with an example.
    pub(crate) fn expected(&self) -> String {
        match self {
            Self::Format => "the number of the format, `1`".to_string(),
            Self::Id => "a name of your own in quotes, such as `\"B2-1\"`".to_string(),
            Self::Reference(what) => format!("the id of {what} in quotes"),
            Self::References(what) => format!("a list of the ids of {what} in quotes"),
            Self::Texts => "a list of texts, such as `[\"kitchen\"]`".to_string(),
            Self::Text => "a text in quotes".to_string(),
            Self::Flag => "`true` or `false`".to_string(),
            Self::Day => "a day in quotes, such as `\"2025-07-01\"`".to_string(),
            Self::Year => "a year, such as `1956`".to_string(),
            Self::Count(least, most) => format!("a whole number from {least} to {most}"),
            Self::Name(list) => format!("one of the {}, such as `\"{}\"`", list.title, list.names[0]),
            Self::Names(list) => format!("a list of {}, such as `[\"{}\"]`", list.title, list.names[0]),
            Self::Quantity(quantity) => quantity.expected().to_string(),
            Self::Gauge => "a wire size, such as `14` or `\"1/0 AWG\"`".to_string(),
            Self::Money => "dollars, such as `24.50`".to_string(),
            Self::Percent(most) => format!("percent from 0 to {most}, such as `6.25`"),
            Self::Counts(least, most) => {
                format!("a list of whole numbers from {least} to {most}, such as `[25, 50, 250]`")
            }
            Self::Share => "a share of one, such as `0.925`".to_string(),
            Self::Chance => "how often, from 0 to 1, such as `0.4`".to_string(),
            Self::Minutes(least, most) => format!("minutes from {least} to {most}"),
            Self::TradeSize => "the trade size of a metal box in quotes, such as `\"3x2x2-1/2\"`".to_string(),
            Self::Point => "a place on the plan, such as `[11.0, 4.5]`".to_string(),
            Self::Outline => "the corners of the room, such as `[[0, 0], [11, 0], [11, 12], [0, 12]]`".to_string(),
            Self::Table(shape) => format!("a table, `{}`", shape.title),
            Self::Tables(shape) => format!("a list of tables, each under `{}`", shape.title),
            Self::OneOrMore(shape) => format!("a table, `{}`, or a list of them", shape.title),
            Self::DistanceOrTable(shape) => format!("a distance, such as `\"4 ft\"`, or a table, `{}`", shape.title),
        }
    }
}

/// A static list of the names of an enum of the dwelling.
macro_rules! name_list {
    ($list:ident, $kind:ty, $title:literal) => {
        pub(crate) static $list: $crate::shape::NameList = $crate::shape::NameList {
            title: $title,
            names: <$kind>::NAMES,
            meaning: |name| <$kind>::from_name(name).map_or("", |variant| variant.meaning()),
        };
    };
}
pub(crate) use name_list;

/// A field; `must` keys are required, `own` ones by a mistake of their own, `open` ones unless
/// what they describe is closed, `may` ones can be left out.
macro_rules! field {
    (must $key:literal, $kind:expr, $meaning:literal, $example:literal) => {
        field!(@ Required, $key, $kind, $meaning, $example)
    };
    (own $key:literal, $kind:expr, $meaning:literal, $example:literal) => {
        field!(@ RequiredOtherwise, $key, $kind, $meaning, $example)
    };
    (open $key:literal, $kind:expr, $meaning:literal, $example:literal) => {
        field!(@ UnlessClosed, $key, $kind, $meaning, $example)
    };
    (may $key:literal, $kind:expr, $meaning:literal, $example:literal) => {
        field!(@ Optional, $key, $kind, $meaning, $example)
    };
    (@ $need:ident, $key:literal, $kind:expr, $meaning:literal, $example:literal) => {
        $crate::shape::Field {
            key: $key,
            kind: $kind,
            need: $crate::shape::Need::$need,
            meaning: $meaning,
            example: $example,
        }
    };
}
pub(crate) use field;
