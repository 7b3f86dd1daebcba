//! Places in a text as people count them: lines, and characters within a line.

/// The mark that some editors put before the first character of a file.
pub(crate) const BYTE_ORDER_MARK: &str = "\u{feff}";

/// A line and a column, both counted from 1; a column is a character.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Position {
    pub(crate) line: usize,
    pub(crate) column: usize,
    /// Where the line begins, in bytes, any byte order mark left out.
    pub(crate) line_start: usize,
}

/// The position of a byte; a byte past the end or inside a character counts as the place before it.
pub(crate) fn position(text: &str, byte: usize) -> Position {
    let byte = boundary(text, byte);
    let before = &text[..byte];
    let line = before.matches('\n').count() + 1;
    let mut line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
    if line_start == 0 && text.starts_with(BYTE_ORDER_MARK) {
        line_start = BYTE_ORDER_MARK.len().min(byte.max(BYTE_ORDER_MARK.len()));
    }
    let column = text.get(line_start..byte).map_or(0, |part| part.chars().count()) + 1;
    Position { line, column, line_start }
}

/// The last place at or before a byte that lies between characters of the text.
pub(crate) fn boundary(text: &str, byte: usize) -> usize {
    let mut byte = byte.min(text.len());
    while !text.is_char_boundary(byte) {
        byte -= 1;
    }
    byte
}

/// The line that begins at a byte, without its line ending.
pub(crate) fn line_at(text: &str, line_start: usize) -> &str {
    let rest = &text[line_start..];
    let line = rest.split('\n').next().unwrap_or("");
    line.strip_suffix('\r').unwrap_or(line)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_count_characters_and_leave_the_byte_order_mark_out() {
        let text = "\u{feff}a\nké x";
        assert_eq!((position(text, 3).line, position(text, 3).column), (1, 1));
        assert_eq!((position(text, 8).line, position(text, 8).column), (2, 3));
        assert_eq!((position(text, 999).line, position(text, 999).column), (2, 5));
    }
}
