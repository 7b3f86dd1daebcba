//! Shares as a bar: each state its own hatch and letter, so that no colour is needed.

use crate::geometry::{Area, Spot, spot};
use crate::svg::{Anchor, BLACK, Pen, Svg, Type, WHITE};
use diagnosis::belief::{Ground, GroundRun};

/// How high a bar is.
pub(crate) const HEIGHT: f64 = 7.6;
const LETTER: Type = Type::bold(5.8);
/// The least width of a part that has its letter.
const LETTERED: f64 = 8.0;
/// How wide the sign of a run is.
pub(crate) const SIGN: f64 = 24.0;

/// The letter of a state.
pub(crate) const fn letter(ground: Ground) -> &'static str {
    match ground {
        Ground::Grounded => "G",
        Ground::Poor => "P",
        Ground::Interrupted => "I",
        Ground::Missing => "M",
        Ground::False => "F",
        Ground::Live => "L",
    }
}

/// Draws the shares of a ground's states, in their order, from a corner on.
pub(crate) fn draw_shares(svg: &mut Svg, corner: Spot, width: f64, shares: &[f64; 6]) {
    let mut left = corner.x;
    for (ground, share) in Ground::ALL.iter().zip(shares) {
        let right = left + share * width;
        if *share >= 0.01 {
            draw_part(svg, &Area::new(left, corner.y, right, corner.y + HEIGHT), *ground);
        }
        left = right;
    }
    let frame = Area::new(corner.x, corner.y, corner.x + width, corner.y + HEIGHT);
    svg.area(&frame, 0.0, &Pen::line(BLACK, 0.7));
}

/// Draws one part of a bar.
pub(crate) fn draw_part(svg: &mut Svg, area: &Area, ground: Ground) {
    let fill = if ground == Ground::Grounded { BLACK } else { WHITE };
    svg.area(area, 0.0, &Pen::line(BLACK, 0.5).filled(fill));
    match ground {
        Ground::Grounded | Ground::Missing => {}
        Ground::Poor => slanted(svg, area, false),
        Ground::Interrupted => {
            let mut x = area.left + 2.0;
            while x < area.right {
                svg.line(spot(x, area.top), spot(x, area.bottom), &Pen::line(BLACK, 0.7));
                x += 2.4;
            }
        }
        Ground::False => {
            slanted(svg, area, false);
            slanted(svg, area, true);
        }
        Ground::Live => {
            for share in [0.2, 0.5, 0.8] {
                let y = area.top + share * area.height();
                svg.line(spot(area.left, y), spot(area.right, y), &Pen::line(BLACK, 1.3));
            }
        }
    }
    if area.width() < LETTERED {
        return;
    }
    let middle = area.centre();
    let (ink, paper) = if ground == Ground::Grounded { (WHITE, BLACK) } else { (BLACK, WHITE) };
    svg.area(&Area::around(middle, (5.6, area.height() - 1.0)), 0.0, &Pen::line(paper, 0.0).filled(paper));
    svg.words(middle.plus(spot(0.0, 2.1)), letter(ground), LETTER.in_colour(ink), Anchor::Middle);
}

/// Slanted lines across an area, cut at its edges.
fn slanted(svg: &mut Svg, area: &Area, falling: bool) {
    let (width, height) = (area.width(), area.height());
    let mut start = 2.6 - height;
    while start < width {
        let (from, to) = (start.max(0.0), (start + height).min(width));
        let rise = |along: f64| if falling { area.top + along - start } else { area.bottom - (along - start) };
        let (one, other) = (spot(area.left + from, rise(from)), spot(area.left + to, rise(to)));
        svg.line(one, other, &Pen::line(BLACK, 0.6));
        start += 3.0;
    }
}

/// Draws where the ground of a run stops: from the box before, left, to this box, right. The spot is its left end.
pub(crate) fn draw_run_sign(svg: &mut Svg, left: Spot, ground: GroundRun) {
    let (from, to) = (left.plus(spot(1.6, 0.0)), left.plus(spot(SIGN - 4.0, 0.0)));
    let along = |share: f64| from.towards(to, share);
    let pen = Pen::line(BLACK, 1.2);
    match ground {
        GroundRun::Sound => svg.line(from, to, &pen),
        GroundRun::Weak => {
            let (rise, fall) = (spot(0.0, -2.4), spot(0.0, 2.4));
            let zigzag = [along(0.3), along(0.4).plus(rise), along(0.55).plus(fall), along(0.65)];
            svg.path(&[&[from], &zigzag[..], &[to]].concat(), &pen);
        }
        GroundRun::LooseHere => svg.line(from, along(0.62), &pen),
        GroundRun::CutOffHere => {
            svg.line(from, along(0.62), &pen);
            svg.line(along(0.62).plus(spot(-1.6, 2.8)), along(0.62).plus(spot(1.6, -2.8)), &pen);
        }
        GroundRun::LooseBefore => svg.line(along(0.38), to, &pen),
        GroundRun::Absent => {
            let middle = along(0.5);
            for (x, y) in [(2.0, 2.0), (-2.0, 2.0)] {
                svg.line(middle.minus(spot(x, y)), middle.plus(spot(x, y)), &Pen::line(BLACK, 0.9));
            }
        }
    }
    for end in [from, to] {
        svg.circle(end, 1.6, &Pen::line(BLACK, 0.8).filled(WHITE));
    }
}
