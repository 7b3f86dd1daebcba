//! Conditions that come again and again: referred to by letter, written out once at the end of a paper.

use crate::document::{Block, Face, Text};

/// The conditions of a paper, in the order in which they come up.
#[derive(Debug, Default)]
pub(crate) struct Notes {
    notes: Vec<String>,
}

impl Notes {
    /// The sections that something rests on, and the letters of its conditions.
    pub(crate) fn basis(&mut self, cites: &[String], conditions: &[String]) -> Text {
        let mut text = Text::from(cites.join(", "));
        let letters: Vec<String> = conditions.iter().map(|condition| self.letter_of(condition)).collect();
        if !letters.is_empty() {
            let lead = if cites.is_empty() { "conditions " } else { "; conditions " };
            text = text.and(Face::Plain, lead).and(Face::Bold, letters.join(" "));
        }
        text
    }

    fn letter_of(&mut self, condition: &str) -> String {
        let known = self.notes.iter().position(|note| note == condition);
        letter(known.unwrap_or_else(|| {
            self.notes.push(condition.to_owned());
            self.notes.len() - 1
        }))
    }

    /// Every condition with its letter.
    pub(crate) fn written_out(self) -> Vec<Block> {
        if self.notes.is_empty() {
            return Vec::new();
        }
        let items = self.notes.into_iter().enumerate().map(|(index, note)| (letter(index), note.into()));
        vec![Block::Heading(2, "Conditions".to_owned()), Block::Items(items.collect())]
    }
}

/// The letter of a note: a to z, then aa, ab and so on.
pub(crate) fn letter(index: usize) -> String {
    let last = char::from(b'a' + u8::try_from(index % 26).unwrap_or(0));
    if index < 26 { last.to_string() } else { format!("{}{last}", letter(index / 26 - 1)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: two conditions are a and b, and the second stays b.
    #[test]
    fn a_condition_that_comes_again_keeps_its_letter() {
        let mut notes = Notes::default();
        let both = ["one".to_owned(), "two".to_owned()];
        assert_eq!(notes.basis(&["406.4(D)".to_owned()], &both).words(), "406.4(D); conditions a b");
        assert_eq!(notes.basis(&[], &both[1..]).words(), "conditions b");
    }

    /// By hand: 26 letters, then twice 26 pairs.
    #[test]
    fn letters_go_on_after_z() {
        assert_eq!([0, 25, 26, 51, 52].map(letter), ["a", "z", "aa", "az", "ba"]);
    }
}
