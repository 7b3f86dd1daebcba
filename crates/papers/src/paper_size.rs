//! The sizes of paper, in points of 1/72 inch.

use dwelling::names;

names! {
    /// A size of paper.
    PaperSize {
        /// US Letter, 8.5 by 11 inches.
        Letter = "letter",
        /// ISO A4, 210 by 297 millimetres.
        A4 = "a4",
    }
}

/// Points in a millimetre.
pub(crate) const MILLIMETRE: f32 = 72.0 / 25.4;

impl PaperSize {
    /// Its width and height upright, in points: ANSI/ASME Y14.1 size A, and ISO 216.
    #[must_use]
    pub fn points(self) -> (f32, f32) {
        match self {
            Self::Letter => (8.5 * 72.0, 11.0 * 72.0),
            Self::A4 => (210.0 * MILLIMETRE, 297.0 * MILLIMETRE),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: ISO 216, A4 is 210 mm by 297 mm; ANSI/ASME Y14.1, size A is 8.5 in by 11 in; a point is 1/72 in.
    #[test]
    fn letter_is_612_by_792_points_and_a4_is_210_by_297_millimetres() {
        assert_eq!(PaperSize::Letter.points(), (612.0, 792.0));
        let (width, height) = PaperSize::A4.points();
        assert!((width - 595.276).abs() < 0.001 && (height - 841.89).abs() < 0.001);
    }
}
