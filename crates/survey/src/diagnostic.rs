//! What is wrong with a survey, as a value: a severity, a code, a message, the places, and what to write instead.

use schemars::JsonSchema;
use serde::Serialize;

/// A range of bytes in the text of a survey.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// The first byte.
    pub start: usize,
    /// The byte after the last.
    pub end: usize,
}

impl Span {
    /// The range from one byte up to, not including, another.
    #[must_use]
    pub const fn new(start: usize, end: usize) -> Self {
        Self { start, end }
    }
}

/// How bad a mistake is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// The survey cannot be used until it is mended.
    Error,
    /// The survey can be used; what is pointed at is odd, though it can be so.
    Warning,
}

impl Severity {
    /// Its name in what is shown.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Warning => "warning",
        }
    }
}

/// A place in the text and what is said about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// Where.
    pub span: Span,
    /// What is said there.
    pub text: String,
}

/// One mistake, with every place that has a part in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Diagnostic {
    /// How bad it is.
    pub severity: Severity,
    /// Its code, the same in every release.
    pub code: &'static str,
    /// What is wrong.
    pub message: String,
    /// Where; the first is the place to go to, and there is always one.
    pub labels: Vec<Label>,
    /// What to write instead.
    pub help: Option<String>,
}

impl Diagnostic {
    pub(crate) fn and(mut self, span: Span, text: impl Into<String>) -> Self {
        self.labels.push(Label { span, text: text.into() });
        self
    }

    pub(crate) fn help(mut self, text: impl Into<String>) -> Self {
        self.help = Some(text.into());
        self
    }

    /// Adds the nearest name as help, or else the names there are.
    pub(crate) fn help_with_names(self, nearest: Option<&str>, names: &[&str]) -> Self {
        const SHOWN: usize = 14;
        match nearest {
            Some(name) => self.help(format!("did you mean `{name}`?")),
            None if names.is_empty() => self,
            None => {
                let list: Vec<String> = names.iter().take(SHOWN).map(|name| format!("`{name}`")).collect();
                let more = if names.len() > SHOWN { ", …" } else { "" };
                self.help(format!("known are {}{more}", list.join(", ")))
            }
        }
    }

    /// The place to go to.
    #[must_use]
    pub fn span(&self) -> Span {
        self.labels.first().map_or(Span::new(0, 0), |label| label.span)
    }
}
