//! Plan symbols: a disc whose inside tells what a box holds, and whose filling tells its ground.

use crate::geometry::{Area, Spot, spot};
use crate::shown::Ground;
use crate::svg::{Anchor, BLACK, Pen, Svg, Type, WHITE};
use dwelling::Holding;

/// The radius of a box's disc, in points.
pub(crate) const RADIUS: f64 = 5.0;
/// How far the strokes of a receptacle stand out of its disc.
const STROKES_OUT: f64 = 2.0;
/// The size of a panel's bar.
pub(crate) const PANEL: (f64, f64) = (18.0, 8.0);

/// What a symbol tells of what a box holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Kind {
    Receptacle,
    Switch,
    SwitchAndReceptacle,
    Luminaire,
    Splice,
    NoSlots,
    Empty,
    NotSeen,
}

impl Kind {
    pub(crate) const ALL: [Self; 8] = [
        Self::Receptacle,
        Self::Switch,
        Self::SwitchAndReceptacle,
        Self::Luminaire,
        Self::Splice,
        Self::NoSlots,
        Self::Empty,
        Self::NotSeen,
    ];

    pub(crate) const fn of(holds: Holding) -> Self {
        match holds {
            Holding::TwoSlot | Holding::ThreeSlot | Holding::Gfci | Holding::Afci | Holding::Dual => Self::Receptacle,
            Holding::DeadFront => Self::NoSlots,
            Holding::Switch => Self::Switch,
            Holding::SwitchAndReceptacle => Self::SwitchAndReceptacle,
            Holding::Luminaire => Self::Luminaire,
            Holding::Splice => Self::Splice,
            Holding::Nothing => Self::Empty,
            Holding::Unknown => Self::NotSeen,
        }
    }

    pub(crate) const fn meaning(self) -> &'static str {
        match self {
            Self::Receptacle => "receptacle: three-slot unless noted 2-slot, GFCI or AFCI",
            Self::Switch => "switch",
            Self::SwitchAndReceptacle => "switch and three-slot receptacle",
            Self::Luminaire => "luminaire",
            Self::Splice => "splices behind a blank cover",
            Self::NoSlots => "protective device without slots",
            Self::Empty => "empty box",
            Self::NotSeen => "nobody has seen what it holds",
        }
    }
}

/// The area that a box's symbol takes.
pub(crate) fn symbol_area(centre: Spot) -> Area {
    Area::around(centre, (2.0 * (RADIUS + STROKES_OUT), 2.0 * (RADIUS + STROKES_OUT)))
}

/// Draws the symbol of a box; its strokes stand along a direction, which is that into the room.
pub(crate) fn draw(svg: &mut Svg, centre: Spot, kind: Kind, ground: Ground, into: Spot) {
    let outline = Pen::line(BLACK, 1.0);
    match ground {
        Ground::Whole => svg.circle(centre, RADIUS, &outline.filled(BLACK)),
        Ground::ByPlan => {
            svg.circle(centre, RADIUS, &outline.filled(WHITE));
            svg.half_disc(centre, RADIUS, &Pen::line(BLACK, 0.0).filled(BLACK));
        }
        Ground::Unsound => {
            svg.circle(centre, RADIUS, &outline.filled(WHITE));
            svg.circle(centre, RADIUS - 2.0, &Pen::line(BLACK, 0.8).dashed("1.2 1.2"));
        }
        Ground::None => svg.circle(centre, RADIUS, &outline.filled(WHITE)),
        Ground::Unknown => svg.circle(centre, RADIUS, &outline.filled(WHITE).dashed("1.6 1.4")),
    }
    match ground {
        Ground::Whole => inside(svg, centre, kind, into, WHITE, 1.0),
        Ground::ByPlan => {
            inside(svg, centre, kind, into, WHITE, 2.6);
            inside(svg, centre, kind, into, BLACK, 1.0);
        }
        _ => inside(svg, centre, kind, into, BLACK, 1.0),
    }
    if matches!(kind, Kind::Receptacle | Kind::SwitchAndReceptacle) {
        strokes(svg, centre, into, BLACK, 1.0, RADIUS, RADIUS + STROKES_OUT);
    }
}

/// What stands inside the disc.
fn inside(svg: &mut Svg, centre: Spot, kind: Kind, into: Spot, colour: &'static str, width: f64) {
    let pen = Pen::line(colour, width);
    let letter = |svg: &mut Svg, text: &str| {
        // A letter has no outline: it is set again, fatter, as its own background.
        if width <= 1.0 {
            svg.words(centre.plus(spot(0.0, 2.5)), text, Type::bold(7.0).in_colour(colour), Anchor::Middle);
        } else {
            svg.circle(centre, RADIUS - 1.6, &Pen::line(colour, 0.0).filled(colour));
        }
    };
    match kind {
        Kind::Receptacle => strokes(svg, centre, into, colour, width, -RADIUS, RADIUS),
        Kind::SwitchAndReceptacle => {
            strokes(svg, centre, into, colour, width, -RADIUS, RADIUS);
            let across = into.turned();
            svg.line(centre.minus(across.times(RADIUS)), centre.plus(across.times(RADIUS)), &pen);
        }
        Kind::Switch => letter(svg, "S"),
        Kind::Luminaire => {
            let reach = RADIUS * std::f64::consts::FRAC_1_SQRT_2;
            svg.line(centre.plus(spot(-reach, -reach)), centre.plus(spot(reach, reach)), &pen);
            svg.line(centre.plus(spot(-reach, reach)), centre.plus(spot(reach, -reach)), &pen);
        }
        Kind::Splice => letter(svg, "J"),
        Kind::NoSlots => {
            let half = RADIUS * 0.5;
            svg.area(&Area::around(centre, (2.0 * half, 2.0 * half)), 0.0, &pen);
        }
        Kind::Empty => {}
        Kind::NotSeen => letter(svg, "?"),
    }
}

/// The two parallel strokes of a receptacle, from and to so far from its centre.
fn strokes(svg: &mut Svg, centre: Spot, into: Spot, colour: &'static str, width: f64, from: f64, to: f64) {
    let aside = into.turned().times(1.7);
    let shorten = if from.abs() >= RADIUS && from < 0.0 { 0.94 } else { 1.0 };
    for side in [centre.plus(aside), centre.minus(aside)] {
        let (start, end) = (side.plus(into.times(from * shorten)), side.plus(into.times(to)));
        svg.line(start, end, &Pen::line(colour, width));
    }
}

/// Draws a panel: a bar, half of it black from corner to corner.
pub(crate) fn draw_panel(svg: &mut Svg, centre: Spot) {
    let bar = Area::around(centre, PANEL);
    let [one, _, three, four] = bar.corners();
    svg.area(&bar, 0.0, &Pen::line(BLACK, 1.0).filled(WHITE));
    svg.polygon(&[one, three, four], &Pen::line(BLACK, 0.0).filled(BLACK));
}

/// Draws a place at which a ground can be taken: a stem on three bars, each shorter than the one above.
pub(crate) fn draw_source(svg: &mut Svg, centre: Spot, size: f64) {
    let pen = Pen::line(BLACK, size * 0.16);
    svg.line(centre.plus(spot(0.0, -size)), centre, &pen);
    for (row, half) in [(0.0, 0.85), (0.4, 0.55), (0.8, 0.25)] {
        let middle = centre.plus(spot(0.0, row * size));
        svg.line(middle.minus(spot(half * size, 0.0)), middle.plus(spot(half * size, 0.0)), &pen);
    }
}
