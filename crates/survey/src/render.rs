//! Mistakes as text for people: the line itself, a caret under it, and what to write instead.

use crate::diagnostic::{Diagnostic, Label};
use crate::position::{boundary, line_at, position};
use std::fmt::Write as _;

/// The longest piece of a line that is shown, in columns of the terminal.
const SHOWN_COLUMNS: usize = 100;
/// How much of a long line is shown before the caret.
const SHOWN_BEFORE: usize = 40;
const TAB: &str = "    ";

/// The mistake as a person reads it. `text` is the text that was read, see [`crate::text_of`].
#[must_use]
pub fn render(diagnostic: &Diagnostic, file_name: &str, text: &str) -> String {
    let mut shown = format!("{}[{}]: {}\n", diagnostic.severity.name(), diagnostic.code, visible(&diagnostic.message));
    let primary = position(text, diagnostic.span().start);
    let mut places: Vec<(usize, usize, &Label)> = diagnostic
        .labels
        .iter()
        .enumerate()
        .map(|(order, label)| (position(text, label.span.start).line, order, label))
        .collect();
    places.sort_by_key(|(line, order, _)| (*line, *order));
    let width = places.last().map_or(1, |(line, _, _)| line.to_string().len());
    let _ = writeln!(shown, "{:width$}--> {}:{}:{}", "", visible(file_name), primary.line, primary.column);
    let mut previous = None;
    for (line, order, label) in places {
        let place = position(text, label.span.start);
        let underlined = Underlined::new(text, place.line_start, label);
        if previous != Some(line) {
            if previous.is_some_and(|previous| previous + 1 < line) {
                let _ = writeln!(shown, "{:width$} ...", "");
            }
            let _ = writeln!(shown, "{}", format!("{line:width$} | {}", underlined.line).trim_end());
        }
        previous = Some(line);
        let sign = if order == 0 { "^" } else { "-" };
        let carets = sign.repeat(underlined.columns);
        let under =
            format!("{:width$} | {:indent$}{carets} {}", "", "", visible(&label.text), indent = underlined.indent);
        let _ = writeln!(shown, "{}", under.trim_end());
    }
    if let Some(help) = &diagnostic.help {
        let _ = writeln!(shown, "{:width$} = help: {}", "", visible(help));
    }
    shown
}

/// A line with the place of its carets, in columns of the terminal.
struct Underlined {
    line: String,
    indent: usize,
    columns: usize,
}

impl Underlined {
    fn new(text: &str, line_start: usize, label: &Label) -> Self {
        let line = line_at(text, line_start);
        let within = |byte: usize| boundary(line, byte.saturating_sub(line_start));
        let (from, to) = (within(label.span.start), within(label.span.end));
        let (before, marked, after) =
            (visible(&line[..from]), visible(&line[from..to.max(from)]), visible(&line[to.max(from)..]));
        let whole = columns(&before) + columns(&marked) + columns(&after);
        let (indent, marked_columns) = (columns(&before), columns(&marked).max(1));
        if whole <= SHOWN_COLUMNS {
            return Self { line: before + &marked + &after, indent, columns: marked_columns };
        }
        // The piece shown is chosen by the label alone, so a second label on a long line is not drawn under another piece.
        let skipped = indent.saturating_sub(SHOWN_BEFORE);
        let (piece, cut_before, cut_after) = piece_of(&(before + &marked + &after), skipped);
        let lead = if cut_before > 0 { 1 } else { 0 };
        let line = format!("{}{piece}{}", if lead > 0 { "…" } else { "" }, if cut_after { "…" } else { "" });
        let indent = indent - cut_before + lead;
        let room = columns(&line).saturating_sub(indent + usize::from(cut_after)).max(1);
        Self { line, indent, columns: marked_columns.min(room) }
    }
}

/// A piece of a long line from about this column on: the piece, the columns really skipped, and whether more follows.
fn piece_of(line: &str, skip: usize) -> (String, usize, bool) {
    let (mut skipped, mut taken, mut piece) = (0, 0, String::new());
    for character in line.chars() {
        let width = columns_of(character);
        if skipped < skip {
            skipped += width;
        } else if taken + width > SHOWN_COLUMNS {
            return (piece, skipped, true);
        } else {
            taken += width;
            piece.push(character);
        }
    }
    (piece, skipped, false)
}

/// The text with tabs as spaces and with every character that would move or hide the rest made visible.
fn visible(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '\t' => shown.push_str(TAB),
            '\u{0}'..='\u{1f}' => shown.push(char::from_u32(0x2400 + character as u32).unwrap_or('\u{fffd}')),
            '\u{7f}' => shown.push('\u{2421}'),
            '\u{80}'..='\u{9f}'
            | '\u{200b}'..='\u{200f}'
            | '\u{2028}'..='\u{202e}'
            | '\u{2066}'..='\u{2069}'
            | '\u{feff}' => {
                shown.push('\u{fffd}');
            }
            _ => shown.push(character),
        }
    }
    shown
}

fn columns(text: &str) -> usize {
    text.chars().map(columns_of).sum()
}

/// How many columns a terminal gives a character: two for East Asian scripts and pictures, none for combining marks.
fn columns_of(character: char) -> usize {
    match character as u32 {
        0x300..=0x36f | 0x1ab0..=0x1aff | 0x20d0..=0x20ff | 0xfe00..=0xfe0f | 0xfe20..=0xfe2f => 0,
        0x1100..=0x115f
        | 0x2e80..=0x303e
        | 0x3041..=0xa4cf
        | 0xac00..=0xd7a3
        | 0xf900..=0xfaff
        | 0xfe30..=0xfe6f
        | 0xff00..=0xff60
        | 0xffe0..=0xffe6
        | 0x1f300..=0x1faff
        | 0x20000..=0x3fffd => 2,
        _ => 1,
    }
}
