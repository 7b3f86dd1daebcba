//! The collector of mistakes.

use crate::diagnostic::{Diagnostic, Severity};

/// How many nearest names are looked for in one file: a file of nothing but misspelt names must not take minutes.
const SEARCHES: u32 = 400;

#[derive(Default)]
pub(crate) struct Notes {
    pub(crate) diagnostics: Vec<Diagnostic>,
    searches: u32,
}

impl Notes {
    pub(crate) fn push(&mut self, diagnostic: Diagnostic) {
        self.diagnostics.push(diagnostic);
    }

    /// The name nearest to what was written, where one is near enough to be meant.
    pub(crate) fn nearest<'a>(&mut self, written: &str, names: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
        if self.may_search() { dwelling::nearest(written, names) } else { None }
    }

    /// Whether another costly search may be made; counts it.
    pub(crate) fn may_search(&mut self) -> bool {
        self.searches = self.searches.saturating_add(1);
        self.searches <= SEARCHES
    }

    pub(crate) fn has_errors(&self) -> bool {
        self.diagnostics.iter().any(|diagnostic| diagnostic.severity == Severity::Error)
    }
}
