//! The few colours and weights of the pages; left out by the stream where nobody would see them.

use anstyle::{AnsiColor, Style};

/// What a headline looks like.
pub const HEADLINE: Style = Style::new().bold();
/// What stands back.
pub const QUIET: Style = Style::new().dimmed();
/// What is dangerous or in the way.
pub const ALARM: Style = Style::new().bold().fg_color(Some(anstyle::Color::Ansi(AnsiColor::Red)));
/// What must be found out or asked.
pub const ASK: Style = Style::new().fg_color(Some(anstyle::Color::Ansi(AnsiColor::Yellow)));
/// What is done.
pub const DO: Style = Style::new().bold().fg_color(Some(anstyle::Color::Ansi(AnsiColor::Cyan)));

/// Text in a style.
#[must_use]
pub fn ink(style: Style, text: impl std::fmt::Display) -> String {
    format!("{style}{text}{style:#}")
}
