//! Lines of a page: wrapped to a width, with a hanging indent.

use super::ink::ink;
use anstyle::Style;
use std::io::IsTerminal as _;
use std::sync::OnceLock;

/// The width of a page that is piped, or whose screen does not tell its own.
const PIPED: usize = 96;
/// Narrower screens wrap what does not fit; wider ones leave room at the right.
const NARROWEST: usize = 64;
const WIDEST: usize = 100;

/// The width of a page, in columns: that of the screen within reason.
#[must_use]
pub fn width() -> usize {
    static WIDTH: OnceLock<usize> = OnceLock::new();
    *WIDTH.get_or_init(|| {
        let screen = terminal_size::terminal_size().filter(|_| std::io::stdout().is_terminal());
        screen.map_or(PIPED, |(terminal_size::Width(columns), _)| usize::from(columns).clamp(NARROWEST, WIDEST))
    })
}

/// Adds text wrapped to the page: the first line after `lead`, the others below its end, all in one style.
pub fn wrapped(page: &mut String, lead: &str, text: &str, style: Style) {
    let indent = " ".repeat(lead.chars().count());
    let room = width().saturating_sub(indent.len()).max(20);
    let mut lead = lead;
    // Ids have hyphens in them, and are not torn there.
    let options = textwrap::Options::new(room).word_splitter(textwrap::WordSplitter::NoHyphenation);
    for line in textwrap::wrap(text, options) {
        page.push_str(&format!("{lead}{}\n", ink(style, line.trim_end())));
        lead = &indent;
    }
}

/// Adds a line that carries a word on its left and another at its right edge.
pub fn with_right(page: &mut String, left: &str, left_width: usize, right: &str) {
    let gap = width().saturating_sub(left_width + right.chars().count()).max(2);
    page.push_str(&format!("{left}{}{right}\n", " ".repeat(gap)));
}

/// Adds a rule across the page.
pub fn rule(page: &mut String, style: Style) {
    page.push_str(&format!("{}\n", ink(style, "─".repeat(width()))));
}
