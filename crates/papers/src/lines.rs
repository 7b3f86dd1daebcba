//! Words broken into lines of a width.

use crate::document::{Face, Text};
use crate::page::{Mark, Part, Words};
use crate::typeface::Typefaces;

/// A size of type and how far its lines stand apart, in points.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Type {
    pub(crate) size: f32,
    pub(crate) leading: f32,
}

/// A line: pieces in one face each, and where each begins.
#[derive(Clone, Debug, Default)]
pub(crate) struct Line {
    pieces: Vec<(f32, Face, String)>,
    pub(crate) width: f32,
}

impl Line {
    /// Adds words behind those that are there.
    pub(crate) fn add(&mut self, face: Face, text: &str, width: f32) {
        match self.pieces.last_mut() {
            Some((_, last, words)) if *last == face => words.push_str(text),
            _ => self.pieces.push((self.width, face, text.to_owned())),
        }
        self.width += width;
    }

    /// The line as it is drawn, its base line so far below the top of the line.
    pub(crate) fn marks(&self, at: (f32, f32), kind: Type, part: Option<Part>) -> Vec<Mark> {
        let base = at.1 + (kind.leading + kind.size * 0.72) / 2.0;
        let words = |(left, face, text): &(f32, Face, String)| {
            Mark::Words(Words {
                at: (at.0 + left, base),
                face: *face,
                size: kind.size,
                grey: 0,
                text: text.clone(),
                fitted: None,
                part,
            })
        };
        self.pieces.iter().map(words).collect()
    }
}

/// Breaks a text at its spaces into lines of a width, and where it has an end of line; a word that is wider than that is
/// broken where it must be.
pub(crate) fn broken(faces: &Typefaces, text: &Text, width: f32, size: f32) -> Vec<Line> {
    let mut lines = vec![Line::default()];
    let mut new_line = false;
    for (face, word) in words_of(text) {
        if std::mem::take(&mut new_line) {
            lines.push(Line::default());
        }
        let word = match word.strip_suffix('\n') {
            Some(word) => {
                new_line = true;
                format!("{word} ")
            }
            None => word,
        };
        let space = if word.ends_with(' ') { faces.width(face, " ", size) } else { 0.0 };
        let wide = faces.width(face, &word, size);
        let Some(line) = lines.last_mut() else { break };
        if line.width + wide - space <= width {
            line.add(face, &word, wide);
        } else if wide - space <= width {
            let mut next = Line::default();
            next.add(face, &word, wide);
            lines.push(next);
        } else {
            for letter in word.chars() {
                let letter = letter.to_string();
                let wide = faces.width(face, &letter, size);
                if lines.last().is_some_and(|line| line.width > 0.0 && line.width + wide > width) {
                    lines.push(Line::default());
                }
                if let Some(line) = lines.last_mut() {
                    line.add(face, &letter, wide);
                }
            }
        }
    }
    lines
}

/// The words of a text, each with the space or the end of line behind it; pieces that touch without a space are words of their own. A number
/// and its unit are one word.
fn words_of(text: &Text) -> Vec<(Face, String)> {
    let mut words: Vec<(Face, String)> = Vec::new();
    for (face, piece) in &text.0 {
        let is_blank = |letter: char| letter != '\n' && letter.is_whitespace();
        let clean: String = piece.chars().map(|letter| if is_blank(letter) { ' ' } else { letter }).collect();
        for word in clean.split_inclusive([' ', '\n']) {
            match words.last_mut() {
                Some((last, number)) if last == face && is_unit(word) && ends_in_number(number) => {
                    number.push_str(word);
                    inches_to_their_feet(&mut words);
                }
                _ => words.push((*face, word.to_owned())),
            }
        }
    }
    words
}

/// Joins the inches of a length to its feet: `39 ft 4 in` is one word.
fn inches_to_their_feet(words: &mut Vec<(Face, String)>) {
    let [.., (face, feet), (same, inches)] = words.as_mut_slice() else { return };
    let is_inches = inches.split_once(' ').is_some_and(|(_, unit)| unit.starts_with("in") && !unit.starts_with("in³"));
    if face == same && feet.ends_with(" ft ") && is_inches {
        feet.push_str(inches);
        words.pop();
    }
}

/// Units that stay on the line of their number.
const UNITS: &[&str] = &["A", "AWG", "V", "ft", "h", "in", "in³", "mA", "mm", "min", "Ω", "%"];

fn is_unit(word: &str) -> bool {
    let bare = word.trim_end().trim_end_matches([',', ';', '.', ':', ')', ']']);
    UNITS.contains(&bare)
}

fn ends_in_number(word: &str) -> bool {
    word.strip_suffix(' ').is_some_and(|word| word.ends_with(|letter: char| letter.is_ascii_digit()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(text: &str, width: f32) -> Vec<String> {
        let faces = Typefaces::read().expect("the faces are read");
        let lines = broken(&faces, &Text::from(text), width, 10.0);
        lines.iter().map(|line| line.pieces.iter().map(|(_, _, words)| words.as_str()).collect()).collect()
    }

    #[test]
    fn a_text_is_broken_at_its_spaces_and_loses_nothing() {
        let text = "switch off, lock or tag, and prove dead with a tester that is proved live before and after";
        let broken = lines(text, 120.0);
        assert!(broken.len() > 3);
        assert_eq!(broken.concat(), text);
        assert!(broken.iter().rev().skip(1).all(|line| line.ends_with(' ')));
    }

    #[test]
    fn a_word_wider_than_the_line_is_broken_inside() {
        let broken = lines("ab Donaudampfschifffahrtsgesellschaft cd", 60.0);
        assert!(broken.len() > 2);
        assert_eq!(broken.concat(), "ab Donaudampfschifffahrtsgesellschaft cd");
    }

    #[test]
    fn a_line_ends_where_the_text_says_so() {
        assert_eq!(lines("H–N 114.0 to 126.0 V\nH–G open", 400.0), ["H–N 114.0 to 126.0 V ", "H–G open"]);
    }

    /// By hand: four numbers with a unit, and the words between.
    #[test]
    fn a_number_and_its_unit_stay_on_one_line() {
        let words: Vec<String> =
            words_of(&"at 12 AWG, 2.25 in³; 5 ft away, in a box".into()).into_iter().map(|(_, word)| word).collect();
        assert_eq!(words, ["at ", "12 AWG, ", "2.25 in³; ", "5 ft ", "away, ", "in ", "a ", "box"]);
        let long: Vec<String> =
            words_of(&"to B2-2, 39 ft 4 in; 3 ft".into()).into_iter().map(|(_, word)| word).collect();
        assert_eq!(long, ["to ", "B2-2, ", "39 ft 4 in; ", "3 ft"]);
    }

    #[test]
    fn no_line_is_wider_than_it_may_be() {
        let faces = Typefaces::read().expect("the faces are read");
        let text = Text::from("keep the receptacle, mark it ").and(Face::Bold, "“No Equipment Ground” on a new plate");
        for line in broken(&faces, &text, 90.0, 9.5) {
            assert!(line.width <= 90.0 + faces.width(Face::Bold, " ", 9.5), "{line:?}");
        }
    }
}
