//! Lines of a page: wrapped to a width, with a hanging indent.

use super::ink::ink;
use anstyle::Style;

/// The width of a page, in columns.
pub const WIDTH: usize = 96;

/// Adds text wrapped to the page: the first line after `lead`, the others below its end, all in one style.
pub fn wrapped(page: &mut String, lead: &str, text: &str, style: Style) {
    let indent = " ".repeat(lead.chars().count());
    let room = WIDTH.saturating_sub(indent.len()).max(20);
    let mut lead = lead;
    for line in textwrap::wrap(text, room) {
        page.push_str(&format!("{lead}{}\n", ink(style, line.trim_end())));
        lead = &indent;
    }
}

/// Adds a line that carries a word on its left and another at its right edge.
pub fn with_right(page: &mut String, left: &str, left_width: usize, right: &str) {
    let gap = WIDTH.saturating_sub(left_width + right.chars().count()).max(2);
    page.push_str(&format!("{left}{}{right}\n", " ".repeat(gap)));
}

/// Adds a rule across the page.
pub fn rule(page: &mut String, style: Style) {
    page.push_str(&format!("{}\n", ink(style, "─".repeat(WIDTH))));
}
