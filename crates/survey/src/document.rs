//! A TOML document of another kind than a survey, read by its shape: price books and local code.

use crate::diagnostic::{Diagnostic, Span};
use crate::from_toml::from_toml;
use crate::mistakes::{format_missing, format_unknown};
use crate::notes::Notes;
use crate::position::BYTE_ORDER_MARK;
use crate::read::{settled, text_in};
use crate::row::Row;
use crate::shape::Shape;

/// The number of the format of every such document.
const FORMAT: i128 = 1;

/// Reads a document. What it holds is there where no mistake is an error.
pub(crate) fn read_document<T>(
    bytes: &[u8],
    shape: &'static Shape,
    of_row: fn(&Row<'_>, &mut Notes) -> T,
) -> (Option<T>, Vec<Diagnostic>) {
    let mut notes = Notes::default();
    let found = match text_in(bytes) {
        Ok(text) => Some(of_text(text, shape, of_row, &mut notes)),
        Err(diagnostic) => {
            notes.push(diagnostic);
            None
        }
    };
    let found = if notes.has_errors() { None } else { found };
    (found, settled(notes, bytes))
}

fn of_text<T>(text: &str, shape: &'static Shape, of_row: fn(&Row<'_>, &mut Notes) -> T, notes: &mut Notes) -> T {
    let plain = text.strip_prefix(BYTE_ORDER_MARK).unwrap_or(text);
    let offset = text.len() - plain.len();
    let table = from_toml(plain, offset, notes);
    let start = Span::new(offset, offset);
    let row = Row::new(notes, shape, &table, start);
    match row.whole(notes, "format") {
        Some(FORMAT) => {}
        Some(other) => notes.push(format_unknown::mistake(shape.file(), other, FORMAT, row.place_of("format"))),
        None if table.entry("format").is_none() => notes.push(format_missing::mistake(shape.file(), FORMAT, start)),
        None => {}
    }
    of_row(&row, notes)
}
