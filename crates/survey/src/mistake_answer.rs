//! A mistake as programs read it.

use crate::diagnostic::{Diagnostic, Label, Severity};
use crate::position::position;
use schemars::JsonSchema;
use serde::Serialize;

/// The mistakes of one file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct MistakesAnswer {
    /// The file, as it was named.
    pub file: String,
    /// Its mistakes, in the order of the text.
    pub mistakes: Vec<MistakeAnswer>,
}

/// One mistake.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct MistakeAnswer {
    /// How bad it is.
    pub severity: Severity,
    /// Its code, the same in every release.
    pub code: &'static str,
    /// What is wrong.
    pub message: String,
    /// Where; the first is the place to go to.
    pub labels: Vec<LabelAnswer>,
    /// What to write instead; null where nobody can tell.
    pub help: Option<String>,
}

/// A place in the file and what is said there.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LabelAnswer {
    /// The line on which it begins, from 1.
    pub line: usize,
    /// The character of the line at which it begins, from 1.
    pub column: usize,
    /// The line on which it ends.
    pub end_line: usize,
    /// The character after its last.
    pub end_column: usize,
    /// Its first byte, from 0.
    pub start: usize,
    /// The byte after its last.
    pub end: usize,
    /// What is said there.
    pub text: String,
}

impl MistakesAnswer {
    /// The mistakes of a file with this name and this text.
    #[must_use]
    pub fn of(file: &str, text: &str, diagnostics: &[Diagnostic]) -> Self {
        Self { file: file.to_owned(), mistakes: diagnostics.iter().map(|one| MistakeAnswer::of(text, one)).collect() }
    }
}

impl MistakeAnswer {
    fn of(text: &str, diagnostic: &Diagnostic) -> Self {
        Self {
            severity: diagnostic.severity,
            code: diagnostic.code,
            message: diagnostic.message.clone(),
            labels: diagnostic.labels.iter().map(|label| LabelAnswer::of(text, label)).collect(),
            help: diagnostic.help.clone(),
        }
    }
}

impl LabelAnswer {
    fn of(text: &str, label: &Label) -> Self {
        let (start, end) = (position(text, label.span.start), position(text, label.span.end));
        Self {
            line: start.line,
            column: start.column,
            end_line: end.line,
            end_column: end.column,
            start: label.span.start,
            end: label.span.end,
            text: label.text.clone(),
        }
    }
}
