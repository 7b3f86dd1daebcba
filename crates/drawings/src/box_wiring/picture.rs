//! The drawing of one box: cables above it, rails in it, the device at its foot.

use super::layout::{CELL, HEAD, LINE, Layout, NAMES, NOTE, NOTE_LINE, Rail, Screw, TITLE, WHAT, Wire};
use super::value::{BoxWiring, CablePart, Carries, EndKind, Joint, JointState, OpenBecause, Side};
use super::words;
use crate::geometry::{Area, Spot, spot};
use crate::svg::{Anchor, BLACK, Pen, Svg, Type, WHITE};
use crate::symbol::draw_source;
use crate::text_width::{cut_to, wrapped};
use dwelling::CableKind;

const LETTER: Type = Type::bold(7.0);
const RING: f64 = 5.4;
const DOT: f64 = 2.3;
/// What is left white beside a line that passes over another.
const HALO: f64 = 2.4;
/// The left wall of the box.
const WALL: f64 = 4.0;

/// The drawing, and its size in points.
pub(super) fn picture(wiring: &BoxWiring, title: &str) -> (Svg, (f64, f64)) {
    let layout = Layout::of(wiring);
    let mut svg = Svg::default();
    let width = layout.width;
    svg.words(spot(0.0, 9.0), &cut_to(title, TITLE.size, true, width), TITLE, Anchor::Start);
    draw_cables(&mut svg, wiring, &layout);
    draw_box(&mut svg, wiring, &layout);
    draw_joints(&mut svg, wiring, &layout);
    draw_device(&mut svg, wiring, &layout);
    draw_jumpers(&mut svg, &layout);
    let foot = draw_foot(&mut svg, wiring, &layout);
    (svg, (width, foot))
}

/// The line of what a conductor carries: hot thick, neutral hollow, ground broken.
fn conductor(svg: &mut Svg, points: &[Spot], carries: Carries) {
    match carries {
        Carries::Hot => svg.path(points, &Pen::line(BLACK, 2.2)),
        Carries::OtherHot => svg.path(points, &Pen::line(BLACK, 2.2).dashed("7 2")),
        Carries::Neutral => {
            svg.path(points, &Pen::line(BLACK, 3.4));
            svg.path(points, &Pen::line(WHITE, 1.4));
        }
        Carries::Ground => svg.path(points, &Pen::line(BLACK, 1.6).dashed("6 1.8 1.6 1.8")),
    }
}

/// A line that passes over others.
fn passing(svg: &mut Svg, from: Spot, to: Spot, carries: Carries) {
    let over = to.minus(from).unit().map_or(from, |along| from.plus(along.times(2.0)));
    svg.line(over, to, &Pen::line(WHITE, 2.4 + 2.0 * HALO));
    conductor(svg, &[from, to], carries);
}

fn draw_cables(svg: &mut Svg, wiring: &BoxWiring, layout: &Layout) {
    for (position, (slot, cable)) in layout.slots.iter().zip(&wiring.cables).enumerate() {
        let middle = slot.left + slot.width / 2.0;
        let lines = slot.head.iter().map(|line| (line, HEAD)).chain(slot.what.iter().map(|line| (line, WHAT)));
        let count = slot.head.len() + slot.what.len();
        let top = layout.cables_top - 4.0 - count as f64 * LINE;
        for (number, (line, kind)) in lines.enumerate() {
            svg.words(spot(middle, top + (number + 1) as f64 * LINE - 2.0), line, kind, Anchor::Middle);
        }
        let wires: Vec<&Wire> = layout.wires.iter().filter(|wire| wire.cable == position).collect();
        let (Some(first), Some(last)) = (wires.first(), wires.last()) else { continue };
        svg.open("cable", cable.to.as_deref().unwrap_or(""), "");
        let (top, bottom) = (layout.cables_top, layout.box_top + 3.0);
        let sheath = Area::new(first.x - 5.0, top, last.x + 5.0, bottom);
        let pen = Pen::line(BLACK, 1.0).filled(WHITE);
        match (cable.part, cable.kind) {
            (_, None) => {
                conductor(svg, &[spot(first.x, top), spot(first.x, bottom)], Carries::Ground);
            }
            (_, Some(CableKind::KnobAndTube)) => {
                for wire in &wires {
                    svg.area(&Area::new(wire.x - 3.4, top, wire.x + 3.4, bottom), 3.0, &pen);
                }
            }
            (_, kind) => {
                svg.area(&sheath, 2.0, &pen);
                if is_armored(kind) {
                    let mut y = top + 3.0;
                    while y + 3.0 < bottom {
                        svg.line(spot(sheath.left, y + 3.0), spot(sheath.right, y), &Pen::line(BLACK, 0.7));
                        y += 4.0;
                    }
                }
            }
        }
        let arrow = spot(last.x + 9.0, top + 7.0);
        match cable.part {
            CablePart::Line => triangle(svg, arrow, 1.0),
            CablePart::Onward | CablePart::Load => triangle(svg, arrow, -1.0),
            CablePart::Ground | CablePart::GroundOnward => draw_source(svg, spot(first.x + 9.0, top + 6.0), 3.6),
            CablePart::Abandoned => {
                let area = sheath.grown(1.0);
                let pen = Pen::line(BLACK, 1.4);
                svg.line(spot(area.left, area.top), spot(area.right, area.bottom - 4.0), &pen);
                svg.line(spot(area.right, area.top), spot(area.left, area.bottom - 4.0), &pen);
            }
            CablePart::Unknown => svg.words(arrow.plus(spot(0.0, 3.0)), "?", Type::bold(9.0), Anchor::Middle),
        }
        svg.close();
    }
}

const fn is_armored(kind: Option<CableKind>) -> bool {
    matches!(
        kind,
        Some(
            CableKind::ArmoredWithStrip
                | CableKind::ArmoredNoStrip
                | CableKind::ArmoredUnknown
                | CableKind::MetalCladWithGround
                | CableKind::FlexibleMetalConduit
        )
    )
}

fn triangle(svg: &mut Svg, at: Spot, down: f64) {
    let points = [at.plus(spot(-2.6, -3.0 * down)), at.plus(spot(2.6, -3.0 * down)), at.plus(spot(0.0, 3.0 * down))];
    svg.polygon(&points, &Pen::line(BLACK, 0.0).filled(BLACK));
}

/// The box: two lines where it is metal, one where it is not, a broken one where nobody knows.
fn draw_box(svg: &mut Svg, wiring: &BoxWiring, layout: &Layout) {
    let area = Area::new(WALL, layout.box_top, layout.width - 2.0, layout.box_bottom);
    svg.open("box", &wiring.box_id, "");
    let pen = Pen::line(BLACK, 1.6);
    match wiring.metal {
        Some(true) => {
            svg.area(&area, 3.0, &pen);
            svg.area(&area.grown(-2.6), 2.0, &Pen::line(BLACK, 0.6));
        }
        Some(false) => svg.area(&area, 7.0, &pen),
        None => svg.area(&area, 3.0, &pen.dashed("6 3")),
    }
    svg.close();
}

/// How far down the letters of the conductors stand.
const fn letters(layout: &Layout) -> f64 {
    layout.box_top + 11.0
}

fn draw_joints(svg: &mut Svg, wiring: &BoxWiring, layout: &Layout) {
    for rail in &layout.rails {
        draw_rail(svg, layout, rail);
    }
    for rail in &layout.rails {
        for end in &rail.joint.ends {
            if let Some(wire) = end.cable.and_then(|cable| layout.wire(cable, end.carries)) {
                passing(svg, spot(wire.x, rail.y), spot(wire.x, letters(layout)), wire.carries);
            }
            if let Some(screw) = screw_of(layout, end) {
                passing(svg, spot(screw.x, rail.y), spot(screw.x, layout.device_top), rail.joint.carries);
            }
        }
    }
    for rail in &layout.rails {
        draw_dots(svg, layout, rail);
    }
    draw_open(svg, layout);
    for wire in &layout.wires {
        let at = spot(wire.x, letters(layout));
        svg.circle(at, RING, &Pen::line(BLACK, 0.9).filled(WHITE));
        svg.words(
            at.plus(spot(0.0, 2.5)),
            words::letter(wire.carries, wiring.cables.get(wire.cable)),
            LETTER,
            Anchor::Middle,
        );
    }
}

fn screw_of<'l>(layout: &'l Layout, end: &super::value::End) -> Option<&'l Screw> {
    let is_it = |screw: &&Screw| end.side == Some(screw.terminal.side) && end.carries == screw.terminal.carries;
    layout.screws.iter().filter(|_| end.kind == EndKind::Terminal).find(is_it)
}

/// The places along a rail where something is joined to it.
fn places(layout: &Layout, joint: &Joint) -> Vec<f64> {
    let place = |end: &super::value::End| match end.kind {
        EndKind::Conductor => end.cable.and_then(|cable| layout.wire(cable, end.carries)).map(|wire| wire.x),
        EndKind::Terminal => screw_of(layout, end).map(|screw| screw.x),
        EndKind::BoxMetal => Some(WALL),
        EndKind::PipeOrRod => None,
    };
    joint.ends.iter().filter_map(place).collect()
}

fn draw_rail(svg: &mut Svg, layout: &Layout, rail: &Rail) {
    let places = places(layout, rail.joint);
    let left = places.iter().copied().fold(f64::MAX, f64::min);
    let right = places.iter().copied().fold(0.0, f64::max);
    if left < right {
        conductor(svg, &[spot(left, rail.y), spot(right, rail.y)], rail.joint.carries);
    }
    let name = words::rail(rail.joint.carries, rail.joint.behind_load);
    svg.words(spot(WALL + 6.0, rail.y - 2.6), name, HEAD, Anchor::Start);
    let to_box = rail.joint.ends.iter().any(|end| end.kind == EndKind::BoxMetal);
    let splice = rail.joint.ends.len() > 2;
    let says = match (rail.joint.state, splice, to_box) {
        (JointState::NotSeen, ..) => "not seen how",
        (JointState::Loose, ..) => "LOOSE",
        (_, true, true) => "splice, box",
        (_, true, false) => "splice",
        (_, false, true) => "to the box",
        (_, false, false) => "",
    };
    svg.words(spot(WALL + 6.0, rail.y + 7.2), says, Type::plain(6.6), Anchor::Start);
}

/// Dots where three and more are joined; open ones where nobody has seen how.
fn draw_dots(svg: &mut Svg, layout: &Layout, rail: &Rail) {
    let is_seen = !matches!(rail.joint.state, JointState::NotSeen | JointState::Loose);
    let fill = if is_seen { BLACK } else { WHITE };
    if rail.joint.ends.len() > 2 || !is_seen {
        for x in places(layout, rail.joint) {
            svg.circle(spot(x, rail.y), DOT, &Pen::line(BLACK, 1.0).filled(fill));
        }
    }
    if rail.joint.ends.iter().any(|end| end.kind == EndKind::BoxMetal) {
        svg.circle(spot(WALL, rail.y), DOT + 0.6, &Pen::line(BLACK, 1.0).filled(fill));
    }
}

/// Conductors that are joined to nothing: a stub with a cap or a ring, and the reason once for those side by side.
fn draw_open(svg: &mut Svg, layout: &Layout) {
    let end = layout.box_top + 24.0;
    let mut told: Vec<(usize, OpenBecause, f64, f64)> = Vec::new();
    for wire in &layout.wires {
        let Some(because) = wire.open else { continue };
        let at = spot(wire.x, end);
        conductor(svg, &[spot(wire.x, letters(layout)), at], wire.carries);
        match because {
            OpenBecause::Capped => {
                svg.area(
                    &Area::new(at.x - 3.2, at.y - 1.0, at.x + 3.2, at.y + 4.0),
                    1.2,
                    &Pen::line(BLACK, 0.0).filled(BLACK),
                );
            }
            OpenBecause::FindOut => svg.circle(at, 2.6, &Pen::line(BLACK, 1.0).filled(WHITE)),
            OpenBecause::Loose | OpenBecause::CutOff | OpenBecause::Nothing => {
                svg.line(at.minus(spot(3.0, 0.0)), at.plus(spot(3.0, 0.0)), &Pen::line(BLACK, 1.0));
            }
        }
        match told.last_mut() {
            Some((cable, last, _, right))
                if *cable == wire.cable && *last == because && wire.x - *right <= CELL + 0.1 =>
            {
                *right = wire.x;
            }
            _ => told.push((wire.cable, because, wire.x, wire.x)),
        }
    }
    for (_, because, left, right) in told {
        svg.words(spot((left + right) / 2.0, end + 11.5), words::because(because), Type::bold(6.6), Anchor::Middle);
    }
}

fn draw_device(svg: &mut Svg, wiring: &BoxWiring, layout: &Layout) {
    let Some(device) = &wiring.device else { return };
    let top = layout.device_top;
    let (Some(first), Some(last)) = (layout.screws.first(), layout.screws.last()) else {
        svg.words(spot(layout.width / 2.0, top + 9.0), device, HEAD, Anchor::Middle);
        return;
    };
    let area = Area::new(first.x - CELL, top, last.x + CELL, top + layout.device_height);
    svg.open("device", "", device);
    svg.area(&area, 3.0, &Pen::line(BLACK, 1.2).filled(WHITE));
    for screw in &layout.screws {
        let at = spot(screw.x, top);
        svg.circle(at, 3.4, &Pen::line(BLACK, 1.1).filled(WHITE));
        svg.line(at.minus(spot(2.2, 0.0)), at.plus(spot(2.2, 0.0)), &Pen::line(BLACK, 0.8));
        svg.words(at.plus(spot(0.0, 12.0)), words::screw(screw.terminal.carries), Type::plain(7.0), Anchor::Middle);
        if let Some(because) = screw.open {
            svg.words(at.plus(spot(0.0, 20.0)), words::because(because), Type::bold(6.6), Anchor::Middle);
        }
    }
    for side in [Side::Line, Side::Load] {
        let of_pair = |screw: &&Screw| screw.terminal.side == side && screw.terminal.carries != Carries::Ground;
        let xs: Vec<f64> = layout.screws.iter().filter(of_pair).map(|screw| screw.x).collect();
        if let [from, .., to] = xs.as_slice() {
            let y = top + layout.device_height - 9.0;
            svg.line(spot(from - 10.0, y), spot(to + 10.0, y), &Pen::line(BLACK, 0.8));
            svg.words(spot((from + to) / 2.0, y + 7.4), words::pair(side), HEAD, Anchor::Middle);
        }
    }
    svg.close();
    let room = layout.width - 16.0;
    let middle = area.centre().x.clamp(WALL + 4.0 + HEAD.width_of(device) / 2.0, layout.width);
    svg.words(
        spot(middle, top + layout.device_height + 9.5),
        &cut_to(device, HEAD.size, true, room),
        HEAD,
        Anchor::Middle,
    );
}

/// What makes a ground look as if it were there: as it was found, or crossed out.
fn draw_jumpers(svg: &mut Svg, layout: &Layout) {
    for joint in &layout.jumpers {
        let screws: Vec<&Screw> = joint.ends.iter().filter_map(|end| screw_of(layout, end)).collect();
        let to_pipe = joint.ends.iter().any(|end| end.kind == EndKind::PipeOrRod);
        let Some(green) = screws.iter().find(|screw| screw.terminal.carries == Carries::Ground) else { continue };
        let over = layout.device_top - if to_pipe { 9.0 } else { 12.0 };
        let other = screws.iter().find(|screw| screw.terminal.carries != Carries::Ground);
        let end = match other {
            Some(other) => spot(other.x, over),
            None => spot(WALL, over),
        };
        let out = joint.state == JointState::TakeOut;
        let pen = Pen::line(BLACK, 1.4);
        let pen = if out { pen.dashed("2.4 1.8") } else { pen };
        svg.path(&[spot(green.x, layout.device_top - 3.4), spot(green.x, over), end], &pen);
        if other.is_some() {
            svg.circle(end, DOT, &Pen::line(BLACK, 1.0).filled(if out { WHITE } else { BLACK }));
        }
        if out {
            let middle = spot((green.x + end.x) / 2.0, over);
            for across in [spot(5.0, 5.0), spot(5.0, -5.0)] {
                svg.line(middle.minus(across), middle.plus(across), &Pen::line(BLACK, 2.0));
            }
        }
        let lines: [&str; 2] = match (to_pipe, out) {
            (false, true) => ["take this", "jumper out"],
            (false, false) => ["jumper:", "false ground"],
            (true, true) => ["take out: wire", "to pipe or rod"],
            (true, false) => ["wire to a", "pipe or rod"],
        };
        let right = if to_pipe { NAMES + 2.0 } else { green.x - 7.0 };
        let base = if to_pipe { over - 10.0 } else { over + 1.0 };
        for (number, line) in lines.iter().enumerate() {
            svg.words(spot(right, base + number as f64 * 7.6), line, Type::bold(7.0), Anchor::End);
        }
    }
}

/// What stands below the box: what it is, its markings, cautions, notes.
fn draw_foot(svg: &mut Svg, wiring: &BoxWiring, layout: &Layout) -> f64 {
    let mut y = layout.box_bottom + 3.0;
    let room = layout.width - 8.0;
    let mut say = |svg: &mut Svg, text: &str, kind: Type, left: f64| {
        for line in wrapped(text, kind.size, kind.bold, room - left + 4.0) {
            svg.words(spot(left, y + 7.4), &line, kind, Anchor::Start);
            y += NOTE_LINE;
        }
    };
    say(svg, &format!("Box: {}.", wiring.body), NOTE, 4.0);
    if !wiring.markings.is_empty() {
        let words: Vec<String> = wiring.markings.iter().map(|words| format!("“{words}”")).collect();
        say(svg, &format!("Mark: {}", words.join(" and ")), Type::bold(NOTE.size), 4.0);
    }
    if let (Some(own), Some(other)) = (&wiring.circuit, &wiring.other_circuit) {
        say(
            svg,
            &format!("H: circuit {own}. H2: circuit {other}. Switch both off at once."),
            Type::bold(NOTE.size),
            4.0,
        );
    }
    for caution in &wiring.cautions {
        say(svg, &format!("! {caution}"), Type::bold(NOTE.size), 4.0);
    }
    for note in &wiring.notes {
        say(svg, note, NOTE, 4.0);
    }
    y + 2.0
}
