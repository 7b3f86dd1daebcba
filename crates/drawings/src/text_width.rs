//! How wide a text is: an estimate by letter, which the drawing then states so that every viewer keeps to it.

/// Widths of the letters from space to tilde, in thousandths of the size of the type.
///
/// Those of the sans-serif type that office papers are set in: from memory. What a viewer uses instead is drawn as wide.
const LETTERS: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
    556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
    722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
    556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
    260, 334, 584,
];
/// Bold letters are wider.
const BOLD: f64 = 1.08;
/// The first letter of the scripts whose letters fill a square.
const SQUARE_LETTERS: char = '\u{2e80}';

/// The width of a text in points, set at a size in points.
#[must_use]
pub fn text_width(text: &str, size: f64, bold: bool) -> f64 {
    let thousandths: u32 = text.chars().map(|letter| u32::from(letter_width(letter))).sum();
    f64::from(thousandths) / 1000.0 * size * if bold { BOLD } else { 1.0 }
}

fn letter_width(letter: char) -> u16 {
    let position = u32::from(letter).checked_sub(u32::from(' ')).and_then(|at| usize::try_from(at).ok());
    match position.and_then(|at| LETTERS.get(at)) {
        Some(width) => *width,
        None if letter == '·' => 278,
        None if letter == '→' || letter >= SQUARE_LETTERS => 1000,
        None if u32::from(letter) < 0x250 => 611,
        None => 750,
    }
}

/// A text in lines no wider than this; a word that is wider is cut.
#[must_use]
pub fn wrapped(text: &str, size: f64, bold: bool, width: f64) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        let line = lines.last().map_or("", String::as_str);
        let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if text_width(&longer, size, bold) <= width {
            lines.pop();
            lines.push(longer);
            continue;
        }
        if line.is_empty() {
            lines.pop();
        }
        let mut piece = String::new();
        for letter in word.chars() {
            let longer = format!("{piece}{letter}");
            if !piece.is_empty() && text_width(&longer, size, bold) > width {
                lines.push(std::mem::take(&mut piece));
            }
            piece.push(letter);
        }
        lines.push(piece);
    }
    lines
}

/// A text no wider than this, its end left out with dots where it is.
#[must_use]
pub fn cut_to(text: &str, size: f64, bold: bool, width: f64) -> String {
    if text_width(text, size, bold) <= width {
        return text.to_owned();
    }
    let mut kept = String::new();
    for letter in text.chars() {
        if text_width(&format!("{kept}{letter}..."), size, bold) > width {
            break;
        }
        kept.push(letter);
    }
    kept.trim_end().to_owned() + "..."
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: K 667, hyphen 333 and 1 556 thousandths are 1556; at 10 points that is 15.56.
    #[test]
    fn the_letters_of_a_text_are_added_up() {
        assert!((text_width("K-1", 10.0, false) - 15.56).abs() < 1e-9);
        assert!(text_width("K-1", 10.0, true) > text_width("K-1", 10.0, false));
    }

    #[test]
    fn no_line_is_wider_than_asked_and_no_letter_is_lost() {
        let text = "the old two-wire run goes on in grounded cable to averyveryverylongword den";
        let lines = wrapped(text, 6.0, false, 40.0);
        assert!(lines.iter().all(|line| text_width(line, 6.0, false) <= 40.0), "{lines:?}");
        assert_eq!(lines.concat().replace(' ', ""), text.replace(' ', ""));
    }

    /// By hand: K 667, i 222, t 278, c 500 and three dots of 278 are 2501 thousandths, 17.5 at 7 points; h takes 3.9 more.
    #[test]
    fn a_text_that_is_cut_shows_that_it_is() {
        assert_eq!(cut_to("Kitchen", 7.0, false, 100.0), "Kitchen");
        assert_eq!(cut_to("Kitchen", 7.0, false, 20.0), "Kitc...");
    }
}
