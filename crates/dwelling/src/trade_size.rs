//! Trade sizes of metal boxes and the volume each has.

use electrical::Volume;

/// One trade size of a metal box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TradeSize {
    /// How survey files write it, in inches: `3x2x2-1/2`, `4x1-1/2 square`.
    pub name: &'static str,
    /// Its volume; for sizes that are ganged, that of one gang.
    pub volume: Volume,
    /// The volume in cubic centimetres that the table prints beside it.
    pub cubic_centimetres: u32,
    /// Whether boxes of this size are joined side by side, each gang adding its volume.
    pub by_gang: bool,
}

const fn size(name: &'static str, tenths: i64, cubic_centimetres: u32, by_gang: bool) -> TradeSize {
    TradeSize { name, volume: Volume::hundredths(tenths * 10), cubic_centimetres, by_gang }
}

/// The trade sizes, with the volumes of NEC Table 314.16(A), the same in the editions of 2008 to 2023.
pub const TRADE_SIZES: &[TradeSize] = &[
    size("4x1-1/4 octagon", 125, 205, false),
    size("4x1-1/2 octagon", 155, 254, false),
    size("4x2-1/8 octagon", 215, 353, false),
    size("4x1-1/4 square", 180, 295, false),
    size("4x1-1/2 square", 210, 344, false),
    size("4x2-1/8 square", 303, 497, false),
    size("4-11/16x1-1/4 square", 255, 418, false),
    size("4-11/16x1-1/2 square", 295, 484, false),
    size("4-11/16x2-1/8 square", 420, 689, false),
    size("3x2x1-1/2", 75, 123, true),
    size("3x2x2", 100, 164, true),
    size("3x2x2-1/4", 105, 172, true),
    size("3x2x2-1/2", 125, 205, true),
    size("3x2x2-3/4", 140, 230, true),
    size("3x2x3-1/2", 180, 295, true),
    size("4x2-1/8x1-1/2", 103, 169, true),
    size("4x2-1/8x1-7/8", 130, 213, true),
    size("4x2-1/8x2-1/8", 145, 238, true),
    size("3-3/4x2x2-1/2 masonry", 140, 230, true),
    size("3-3/4x2x3-1/2 masonry", 210, 344, true),
    size("fs single", 135, 221, true),
    size("fd single", 180, 295, true),
    size("fs multiple", 180, 295, true),
    size("fd multiple", 240, 395, true),
];

/// The trade size that a text names; `×`, `½`, `round` and `device` are understood.
#[must_use]
pub fn trade_size(written: &str) -> Option<&'static TradeSize> {
    let plain = plainly(written);
    TRADE_SIZES.iter().find(|size| size.name == plain)
}

/// The trade size with this volume printed beside it in cubic centimetres.
#[must_use]
pub fn volume_printed_as(cubic_centimetres: u32) -> Option<Volume> {
    TRADE_SIZES.iter().find(|size| size.cubic_centimetres == cubic_centimetres).map(|size| size.volume)
}

/// The text as the table would write it.
fn plainly(written: &str) -> String {
    let mut plain = written.trim().to_lowercase().replace(['×', '*'], "x").replace(['"', '″'], "");
    for (sign, fraction) in
        [("½", "1/2"), ("¼", "1/4"), ("¾", "3/4"), ("⅛", "1/8"), ("⅜", "3/8"), ("⅝", "5/8"), ("⅞", "7/8")]
    {
        plain = plain.replace(&format!(" {sign}"), &format!("-{fraction}"));
        plain = plain.replace(sign, &format!("-{fraction}"));
    }
    let plain = plain.replace(" x ", "x").replace(" x", "x").replace("x ", "x").replace("round", "octagon");
    plain.trim_end_matches(" device").to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: NEC Table 314.16(A), 3 x 2 x 2-1/2 in. device box.
    #[test]
    fn a_3_by_2_by_2_and_a_half_device_box_holds_12_and_a_half_cubic_inches() {
        for written in ["3x2x2-1/2", "3 x 2 x 2½", "3×2×2 ½ device", "3X2X2-1/2 device"] {
            assert_eq!(trade_size(written).map(|size| size.volume), Some(Volume::hundredths(1250)), "{written}");
        }
    }

    /// Published: NEC Table 314.16(A), 4 x 2-1/8 in. octagonal or round box.
    #[test]
    fn a_round_box_is_found_under_octagon() {
        assert_eq!(trade_size("4x2-1/8 round").map(|size| size.volume), Some(Volume::hundredths(2150)));
    }

    /// By hand: one cubic inch is 16.387064 cm³; the table prints the nearest whole number, 2 apart at most.
    #[test]
    fn the_printed_cubic_centimetres_are_those_of_the_cubic_inches() {
        for size in TRADE_SIZES {
            let exact = size.volume.as_ten_thousandths() as f64 / 10_000.0 * 16.387_064;
            assert!((exact - f64::from(size.cubic_centimetres)).abs() < 2.0, "{}: {exact}", size.name);
        }
    }
}
