//! One tree of values with their places, whichever notation the file was written in.

use crate::diagnostic::Span;

/// A value and where it stands.
#[derive(Clone, Debug)]
pub(crate) struct Value {
    pub(crate) span: Span,
    pub(crate) kind: ValueKind,
}

#[derive(Clone, Debug)]
pub(crate) enum ValueKind {
    Text(String),
    /// A number as it was written.
    Number(String),
    Flag(bool),
    List(Vec<Value>),
    Table(Table),
    /// A day or time of day, which TOML has and no field of a survey takes.
    Day,
    /// The empty value of JSON.
    Null,
}

/// Keys with their values, in the order of the file; a key can be there twice.
#[derive(Clone, Debug, Default)]
pub(crate) struct Table {
    pub(crate) entries: Vec<Entry>,
}

#[derive(Clone, Debug)]
pub(crate) struct Entry {
    pub(crate) key: String,
    pub(crate) key_span: Span,
    pub(crate) value: Value,
}

impl Value {
    pub(crate) const fn is_text(&self) -> bool {
        matches!(self.kind, ValueKind::Text(_))
    }

    /// What this value is, in words.
    pub(crate) fn described(&self) -> &'static str {
        match &self.kind {
            ValueKind::Text(_) => "a text",
            ValueKind::Number(_) => "a number",
            ValueKind::Flag(_) => "true or false",
            ValueKind::List(_) => "a list",
            ValueKind::Table(_) => "a table",
            ValueKind::Day => "a date or time",
            ValueKind::Null => "nothing",
        }
    }
}

impl Table {
    pub(crate) fn entry(&self, key: &str) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.key == key)
    }
}
