//! The faces that the papers embed: which glyphs a text takes, and how wide it is.

use crate::document::Face;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use rustybuzz::{Direction, ShapePlan, UnicodeBuffer, script};
use std::collections::BTreeMap;

const PLAIN: &[u8] = include_bytes!("../fonts/plain.ttf");
const BOLD: &[u8] = include_bytes!("../fonts/bold.ttf");
const SLANTED: &[u8] = include_bytes!("../fonts/slanted.ttf");

/// What stands where a face has no glyph for a letter.
const NO_SUCH_LETTER: char = '?';

/// The faces, read.
pub(crate) struct Typefaces {
    faces: BTreeMap<Face, Typeface>,
}

struct Typeface {
    font: Font,
    shaper: rustybuzz::Face<'static>,
    plan: ShapePlan,
}

/// A text as its glyphs, in parts of the size of type.
pub(crate) struct Shaped {
    pub(crate) text: String,
    pub(crate) glyphs: Vec<KrillaGlyph>,
    pub(crate) width: f32,
}

impl Typefaces {
    /// Reads the faces; nothing where one of them cannot be read.
    pub(crate) fn read() -> Option<Self> {
        let read = |bytes: &'static [u8]| {
            let font = Font::new(bytes.into(), 0)?;
            let shaper = rustybuzz::Face::from_slice(bytes, 0)?;
            let plan = ShapePlan::new(&shaper, Direction::LeftToRight, Some(script::LATIN), None, &[]);
            Some(Typeface { font, shaper, plan })
        };
        let faces = [(Face::Plain, read(PLAIN)?), (Face::Bold, read(BOLD)?), (Face::Slanted, read(SLANTED)?)];
        Some(Self { faces: faces.into() })
    }

    /// The font of a face, as a PDF embeds it.
    pub(crate) fn font(&self, face: Face) -> Option<Font> {
        self.faces.get(&face).map(|face| face.font.clone())
    }

    /// The glyphs of a text in a face.
    pub(crate) fn shaped(&self, face: Face, text: &str) -> Shaped {
        let Some(typeface) = self.faces.get(&face) else {
            return Shaped { text: String::new(), glyphs: Vec::new(), width: 0.0 };
        };
        let text = typeface.drawable(text);
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(&text);
        buffer.set_direction(Direction::LeftToRight);
        buffer.set_script(script::LATIN);
        let shaped = rustybuzz::shape_with_plan(&typeface.shaper, &typeface.plan, buffer);
        let em = typeface.shaper.units_per_em() as f32;
        let starts: Vec<usize> = shaped.glyph_infos().iter().map(|info| info.cluster as usize).collect();
        let end_of = |start: usize| starts.iter().copied().filter(|next| *next > start).min().unwrap_or(text.len());
        let glyphs: Vec<KrillaGlyph> = shaped
            .glyph_infos()
            .iter()
            .zip(shaped.glyph_positions())
            .map(|(info, position)| KrillaGlyph {
                glyph_id: GlyphId::new(info.glyph_id),
                text_range: info.cluster as usize..end_of(info.cluster as usize),
                x_advance: position.x_advance as f32 / em,
                x_offset: position.x_offset as f32 / em,
                y_offset: position.y_offset as f32 / em,
                y_advance: position.y_advance as f32 / em,
                location: None,
            })
            .collect();
        let width = glyphs.iter().map(|glyph| glyph.x_advance).sum();
        Shaped { text, glyphs, width }
    }

    /// How wide a text is in a face, at a size of type.
    pub(crate) fn width(&self, face: Face, text: &str, size: f32) -> f32 {
        self.shaped(face, text).width * size
    }
}

impl Typeface {
    /// A text with no letter that the face cannot draw, and no control characters.
    fn drawable(&self, text: &str) -> String {
        let letters = text.chars().map(|letter| if letter.is_whitespace() { ' ' } else { letter });
        let letters = letters.filter(|letter| !letter.is_control() && !is_joiner(*letter));
        letters.map(|letter| if self.has(letter) { letter } else { NO_SUCH_LETTER }).collect()
    }

    fn has(&self, letter: char) -> bool {
        self.shaper.glyph_index(letter).is_some_and(|glyph| glyph.0 != 0)
    }
}

/// Marks of no width, which say how others are joined, and which no PDF may hold as text.
const fn is_joiner(letter: char) -> bool {
    matches!(letter, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fffe}' | '\u{ffff}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sign_that_plans_use_can_be_drawn() {
        let faces = Typefaces::read().expect("the faces are read");
        for face in [Face::Plain, Face::Bold, Face::Slanted] {
            let signs = "in³ ≤ ≥ Ω “” ‘’ – — … · ½ ¼ é ×";
            assert_eq!(faces.shaped(face, signs).text, signs, "{face:?}");
        }
    }

    #[test]
    fn a_letter_that_no_face_has_is_told_by_a_question_mark() {
        let faces = Typefaces::read().expect("the faces are read");
        assert_eq!(faces.shaped(Face::Plain, "台\u{0}所\t1").text, "?? 1");
    }

    #[test]
    fn bold_words_are_wider_than_plain_ones() {
        let faces = Typefaces::read().expect("the faces are read");
        assert!(faces.width(Face::Bold, "GFCI", 10.0) > faces.width(Face::Plain, "GFCI", 10.0));
    }
}
