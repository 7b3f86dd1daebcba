//! From the bytes of a file to the dwelling it describes, with every mistake on the way.

use crate::checks;
use crate::diagnostic::{Diagnostic, Severity, Span};
use crate::format::Format;
use crate::from_json::from_json;
use crate::from_toml::from_toml;
use crate::mistakes::{self, file_empty, file_not_utf8, file_too_large, too_many_mistakes};
use crate::notes::Notes;
use crate::position::{BYTE_ORDER_MARK, boundary};
use crate::tables;
use dwelling::Dwelling;
use std::borrow::Cow;
use std::collections::BTreeSet;

/// The largest file that is read.
const LARGEST_FILE: usize = 10_000_000;

/// The most mistakes of one file that are told: a file of millions is not worth the wait.
const MOST_TOLD: usize = 1_000;

/// What reading a survey gave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Read {
    /// The dwelling; nothing where any mistake is an error.
    pub dwelling: Option<Dwelling>,
    /// Every mistake, in the order of the file; beyond a thousand, how many more there are.
    pub diagnostics: Vec<Diagnostic>,
}

/// Reads a survey. It never fails: whatever is wrong is in the diagnostics.
#[must_use]
pub fn read(bytes: &[u8], format: Format) -> Read {
    let mut notes = Notes::default();
    let draft = match text_in(bytes) {
        Ok(text) => draft(text, format, &mut notes),
        Err(diagnostic) => {
            notes.push(diagnostic);
            None
        }
    };
    let mut diagnostics = settled(notes, bytes);
    if let Some(first_untold) = diagnostics.get(MOST_TOLD).map(Diagnostic::span) {
        let untold = diagnostics.len() - MOST_TOLD;
        diagnostics.truncate(MOST_TOLD);
        diagnostics.push(too_many_mistakes::mistake(untold, first_untold));
    }
    let has_errors = diagnostics.iter().any(|diagnostic| diagnostic.severity == Severity::Error);
    Read { dwelling: if has_errors { None } else { draft }, diagnostics }
}

/// The mistakes in the order of the file, every place inside the text and between characters.
pub(crate) fn settled(notes: Notes, bytes: &[u8]) -> Vec<Diagnostic> {
    let text = text_of(bytes);
    let mut diagnostics = notes.diagnostics;
    for label in diagnostics.iter_mut().flat_map(|diagnostic| diagnostic.labels.iter_mut()) {
        let start = boundary(&text, label.span.start);
        let mut end = label.span.end.clamp(start, text.len());
        while !text.is_char_boundary(end) {
            end += 1;
        }
        label.span = Span::new(start, end);
    }
    diagnostics.sort_by_key(|diagnostic| diagnostic.span());
    diagnostics
}

/// The text that the places in diagnostics count in: the bytes as they are, unreadable ones replaced.
#[must_use]
pub fn text_of(bytes: &[u8]) -> Cow<'_, str> {
    if bytes.len() > LARGEST_FILE { Cow::Borrowed("") } else { String::from_utf8_lossy(bytes) }
}

pub(crate) fn text_in(bytes: &[u8]) -> Result<&str, Diagnostic> {
    if bytes.len() > LARGEST_FILE {
        return Err(file_too_large::mistake(bytes.len(), LARGEST_FILE));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| file_not_utf8::mistake(error.valid_up_to()))?;
    if text.trim_start_matches(BYTE_ORDER_MARK).trim().is_empty() {
        return Err(file_empty::mistake(text.len()));
    }
    Ok(text)
}

fn draft(text: &str, format: Format, notes: &mut Notes) -> Option<Dwelling> {
    let plain = text.strip_prefix(BYTE_ORDER_MARK).unwrap_or(text);
    let offset = text.len() - plain.len();
    let tree = match format {
        Format::Toml => from_toml(plain, offset, notes),
        Format::Json => from_json(plain, offset, notes),
    };
    let line_starts: Vec<usize> = text.match_indices('\n').map(|(newline, _)| newline + 1).collect();
    let line_of = |diagnostic: &Diagnostic| line_starts.partition_point(|start| *start <= diagnostic.span().start);
    let broken: BTreeSet<usize> = notes.diagnostics.iter().map(line_of).collect();
    if !broken.is_empty() && tree.entries.is_empty() {
        return None;
    }
    let before = notes.diagnostics.len();
    let (draft, rows) = tables::survey::read(notes, &tree, Span::new(offset, offset));
    checks::run(notes, &draft, &rows);
    if !broken.is_empty() {
        // Drops what a broken piece of syntax alone may have brought about: on its line, or because something is not there.
        let mut later = notes.diagnostics.split_off(before);
        later.retain(|diagnostic| !mistakes::tells_absence(diagnostic.code) && !broken.contains(&line_of(diagnostic)));
        notes.diagnostics.append(&mut later);
    }
    Some(draft)
}
