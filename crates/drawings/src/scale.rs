//! The usual scales of plans in inches to the foot, and the bar that shows the one in use.

use crate::geometry::{Area, Spot, spot};
use crate::svg::{Anchor, BLACK, Pen, Svg, Type, WHITE};

/// A scale.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Scale {
    pub(crate) name: String,
    pub(crate) points_per_foot: f64,
    usual: bool,
}

/// Points in an inch.
const INCH: f64 = 72.0;
/// The usual scales, largest first, in sixty-fourths of an inch to the foot: common practice, no source.
const USUAL: [(f64, &str); 10] = [
    (32.0, "1/2 in"),
    (24.0, "3/8 in"),
    (16.0, "1/4 in"),
    (12.0, "3/16 in"),
    (8.0, "1/8 in"),
    (6.0, "3/32 in"),
    (4.0, "1/16 in"),
    (3.0, "3/64 in"),
    (2.0, "1/32 in"),
    (1.0, "1/64 in"),
];

impl Scale {
    /// Every usual scale, the largest first.
    pub(crate) fn usual() -> impl Iterator<Item = Self> {
        USUAL.into_iter().map(|(parts, name)| Self {
            name: format!("{name} = 1 ft"),
            points_per_foot: parts / 64.0 * INCH,
            usual: true,
        })
    }

    /// A scale that is none of the usual ones.
    pub(crate) fn unusual(points_per_foot: f64) -> Self {
        Self { name: "no usual scale: use the bar".to_owned(), points_per_foot, usual: false }
    }
}

/// Draws a bar in feet with its length in metres, and the scale's name; the spot is the left end of the bar.
pub(crate) fn scale_bar(svg: &mut Svg, at: Spot, scale: &Scale) {
    let feet = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0];
    let longest = 120.0;
    let step = feet.into_iter().filter(|feet| feet * scale.points_per_foot * 2.0 <= longest).fold(1.0, f64::max);
    let length = step * scale.points_per_foot;
    let bar = |from: f64, fill| {
        (
            Area::new(at.x + from * length, at.y - 2.0, at.x + (from + 1.0) * length, at.y + 1.0),
            Pen::line(BLACK, 0.6).filled(fill),
        )
    };
    for (area, pen) in [bar(0.0, BLACK), bar(1.0, WHITE)] {
        svg.area(&area, 0.0, &pen);
    }
    let small = Type::plain(6.2);
    let below = at.y + 8.0;
    svg.words(spot(at.x, below), "0", small, Anchor::Middle);
    svg.words(spot(at.x + length, below), &format!("{step}"), small, Anchor::Middle);
    let metres = 2.0 * step * 0.3048;
    let far = spot(at.x + 2.0 * length, below);
    svg.words(spot(far.x - 3.0, below), &format!("{} ft ({metres:.1} m)", 2.0 * step), small, Anchor::Start);
    let name = if scale.usual { format!("{}, printed at 100 %", scale.name) } else { scale.name.clone() };
    svg.words(spot(far.x + 64.0, below), &name, small, Anchor::Start);
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: an eighth of an inch is 72 / 8 = 9 points.
    #[test]
    fn an_eighth_of_an_inch_to_the_foot_is_nine_points() {
        let eighth = Scale::usual().find(|scale| scale.name.starts_with("1/8")).unwrap();
        assert!((eighth.points_per_foot - 9.0).abs() < 1e-12);
    }

    #[test]
    fn scales_come_largest_first() {
        let all: Vec<f64> = Scale::usual().map(|scale| scale.points_per_foot).collect();
        assert!(all.windows(2).all(|pair| pair[0] > pair[1]));
    }
}
