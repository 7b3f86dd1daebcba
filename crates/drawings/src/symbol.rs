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
        Ground::None | Ground::Unsound => svg.circle(centre, RADIUS, &outline.filled(WHITE)),
        Ground::Unknown => svg.circle(centre, RADIUS, &outline.filled(WHITE).dashed("1.6 1.4")),
    }
    inside(svg, centre, kind, into, Inks::on(ground));
    if ground == Ground::Unsound {
        // Struck through from rim to rim and beyond: there, and not to be relied on.
        let reach = RADIUS + STROKES_OUT - 0.6;
        svg.line(centre.plus(spot(-reach, reach)), centre.plus(spot(reach, -reach)), &Pen::line(BLACK, 1.2));
    }
    if matches!(kind, Kind::Receptacle | Kind::SwitchAndReceptacle) {
        for side in receptacle_sides(centre, into) {
            svg.line(
                side.plus(into.times(RADIUS)),
                side.plus(into.times(RADIUS + STROKES_OUT)),
                &Pen::line(BLACK, 1.0),
            );
        }
    }
}

/// The colours of what stands inside a disc: above its middle, and below.
#[derive(Clone, Copy)]
struct Inks {
    above: &'static str,
    below: &'static str,
}

impl Inks {
    const fn on(ground: Ground) -> Self {
        match ground {
            Ground::Whole => Self { above: WHITE, below: WHITE },
            Ground::ByPlan => Self { above: BLACK, below: WHITE },
            Ground::Unsound | Ground::None | Ground::Unknown => Self { above: BLACK, below: BLACK },
        }
    }
}

/// What stands inside the disc.
fn inside(svg: &mut Svg, centre: Spot, kind: Kind, into: Spot, inks: Inks) {
    let reach = RADIUS * std::f64::consts::FRAC_1_SQRT_2;
    match kind {
        Kind::Receptacle | Kind::SwitchAndReceptacle => {
            for side in receptacle_sides(centre, into) {
                let (from, to) = (side.minus(into.times(RADIUS * 0.94)), side.plus(into.times(RADIUS * 0.94)));
                stroke(svg, from, to, centre.y, inks);
            }
            if kind == Kind::SwitchAndReceptacle {
                let across = into.turned().times(RADIUS * 0.94);
                stroke(svg, centre.minus(across), centre.plus(across), centre.y, inks);
            }
        }
        Kind::Luminaire => {
            for (x, y) in [(reach, reach), (-reach, reach)] {
                stroke(svg, centre.minus(spot(x, y)), centre.plus(spot(x, y)), centre.y, inks);
            }
        }
        Kind::NoSlots => {
            let corners = Area::around(centre, (RADIUS, RADIUS)).corners();
            for (index, corner) in corners.iter().enumerate() {
                stroke(svg, *corner, corners[(index + 1) % corners.len()], centre.y, inks);
            }
        }
        Kind::Switch => letter(svg, centre, "S", inks),
        Kind::Splice => letter(svg, centre, "J", inks),
        Kind::NotSeen => letter(svg, centre, "?", inks),
        Kind::Empty => {}
    }
}

/// A letter in a disc; where the disc is of two colours it stands on a light one of its own.
fn letter(svg: &mut Svg, centre: Spot, text: &str, inks: Inks) {
    if inks.above != inks.below {
        svg.circle(centre, RADIUS - 1.6, &Pen::line(WHITE, 0.0).filled(WHITE));
    }
    svg.words(centre.plus(spot(0.0, 2.5)), text, Type::bold(7.0).in_colour(inks.above), Anchor::Middle);
}

/// A stroke that changes its colour where it crosses a height.
fn stroke(svg: &mut Svg, from: Spot, to: Spot, height: f64, inks: Inks) {
    let ink = |one: Spot, other: Spot| if one.y + other.y < 2.0 * height { inks.above } else { inks.below };
    let crosses = (from.y - height) * (to.y - height) < -1e-9;
    if inks.above == inks.below || !crosses {
        svg.line(from, to, &Pen::line(ink(from, to), 1.0));
        return;
    }
    let middle = from.towards(to, (height - from.y) / (to.y - from.y));
    svg.line(from, middle, &Pen::line(ink(from, middle), 1.0));
    svg.line(middle, to, &Pen::line(ink(middle, to), 1.0));
}

/// The middles of the two parallel strokes of a receptacle.
fn receptacle_sides(centre: Spot, into: Spot) -> [Spot; 2] {
    let aside = into.turned().times(1.7);
    [centre.plus(aside), centre.minus(aside)]
}

/// The area that a panel or a ground source takes at a wall.
pub(crate) fn fixed_area(centre: Spot, into: Spot) -> Area {
    let (along, deep) = (into.turned().times(PANEL.0), into.times(PANEL.1));
    Area::around(centre, (along.x.abs() + deep.x.abs(), along.y.abs() + deep.y.abs())).grown(1.0)
}

/// Draws a panel: a bar along its wall, half of it black from corner to corner.
pub(crate) fn draw_panel(svg: &mut Svg, centre: Spot, into: Spot) {
    let (along, deep) = (into.turned().times(PANEL.0 / 2.0), into.times(PANEL.1 / 2.0));
    let (one, two) = (centre.minus(along), centre.plus(along));
    let corners = [one.minus(deep), two.minus(deep), two.plus(deep), one.plus(deep)];
    svg.polygon(&corners, &Pen::line(BLACK, 1.0).filled(WHITE));
    svg.polygon(&[corners[0], corners[2], corners[3]], &Pen::line(BLACK, 0.0).filled(BLACK));
}

/// Draws a place at which a ground can be taken: a stem on three bars, each shorter than the one above.
pub(crate) fn draw_source(svg: &mut Svg, centre: Spot, size: f64) {
    let pen = Pen::line(BLACK, f64::max(size * 0.16, 0.6));
    svg.line(centre.plus(spot(0.0, -size)), centre, &pen);
    for (row, half) in [(0.0, 0.85), (0.4, 0.55), (0.8, 0.25)] {
        let middle = centre.plus(spot(0.0, row * size));
        svg.line(middle.minus(spot(half * size, 0.0)), middle.plus(spot(half * size, 0.0)), &pen);
    }
}
