//! Where everything of a wiring drawing lies: cables side by side above the box, one rail for each joint in it, the device
//! below the rails.

use super::value::{BoxWiring, Carries, EndKind, Joint, JointState, OpenBecause, OpenEnd, TerminalAnswer};
use super::words;
use crate::svg::Type;
use crate::text_width::wrapped;

/// How far conductors stand apart; terminals stand between them, so that no line runs along another.
pub(super) const CELL: f64 = 15.0;
/// The column of the rails' names.
pub(super) const NAMES: f64 = 50.0;
/// What is left free at the right.
const RIGHT: f64 = 10.0;
/// The least width of a drawing: half a page.
const LEAST_WIDTH: f64 = 230.0;
/// The least cells of a cable.
const LEAST_CELLS: usize = 4;
/// How far terminals stand apart, in cells.
const TERMINAL_CELLS: usize = 2;
/// How far rails stand apart.
const RAIL: f64 = 18.0;
pub(super) const TITLE: Type = Type::bold(9.5);
pub(super) const HEAD: Type = Type::bold(7.6);
pub(super) const WHAT: Type = Type::plain(7.2);
pub(super) const NOTE: Type = Type::plain(7.6);
pub(super) const LINE: f64 = 8.8;
pub(super) const NOTE_LINE: f64 = 9.4;

/// A conductor of a cable at its place.
#[derive(Clone, Debug)]
pub(super) struct Wire {
    pub(super) cable: usize,
    pub(super) carries: Carries,
    pub(super) x: f64,
    /// Why it is joined to nothing.
    pub(super) open: Option<OpenBecause>,
}

/// A cable at its place.
#[derive(Clone, Debug)]
pub(super) struct Slot {
    pub(super) left: f64,
    pub(super) width: f64,
    pub(super) head: Vec<String>,
    pub(super) what: Vec<String>,
}

/// A terminal at its place.
#[derive(Clone, Debug)]
pub(super) struct Screw {
    pub(super) terminal: TerminalAnswer,
    pub(super) x: f64,
    pub(super) open: Option<OpenBecause>,
}

/// A joint at its height.
#[derive(Clone, Debug)]
pub(super) struct Rail<'a> {
    pub(super) joint: &'a Joint,
    pub(super) y: f64,
}

/// Everything at its place.
#[derive(Clone, Debug)]
pub(super) struct Layout<'a> {
    pub(super) width: f64,
    pub(super) slots: Vec<Slot>,
    pub(super) wires: Vec<Wire>,
    pub(super) screws: Vec<Screw>,
    pub(super) rails: Vec<Rail<'a>>,
    /// What makes a ground look as if it were there: drawn at the device, not on a rail.
    pub(super) jumpers: Vec<&'a Joint>,
    pub(super) cables_top: f64,
    pub(super) box_top: f64,
    pub(super) device_top: f64,
    pub(super) device_height: f64,
    pub(super) box_bottom: f64,
}

/// Where the ends of open conductors are told.
pub(super) const OPEN_ROW: f64 = 20.0;
/// The height of a device with the words in it, and what its pairs of terminals take besides.
const DEVICE: f64 = 24.0;
const PAIRS: f64 = 10.0;

impl<'a> Layout<'a> {
    pub(super) fn of(wiring: &'a BoxWiring) -> Self {
        let open_of = |cable: usize, carries: Carries| {
            let found = wiring.open_ends.iter().find(|open| is_conductor(open, cable, carries));
            found.map(|open| open.because)
        };
        let mut needed: Vec<usize> = Vec::new();
        let mut offsets: Vec<Vec<usize>> = Vec::new();
        for (position, cable) in wiring.cables.iter().enumerate() {
            let mut cells = Vec::new();
            let (mut next, mut last) = (0, None);
            for carries in &cable.conductors {
                let open = open_of(position, *carries);
                // Two ends that are open for different reasons have room for a word each.
                if let (Some(Some(before)), Some(because)) = (last, open)
                    && before != because
                {
                    next += 1;
                }
                cells.push(next);
                next += 1;
                last = Some(open);
            }
            let (head, what) = words::above_cable(cable, wiring.protective);
            let widest =
                |text: &str, kind: Type| text.split_whitespace().map(|word| kind.width_of(word)).fold(0.0, f64::max);
            let words = what.iter().map(|line| widest(line, WHAT)).fold(widest(&head, HEAD), f64::max);
            let words = (words + 6.0) / CELL;
            needed.push((next + 1).max(LEAST_CELLS).max(words.ceil() as usize));
            offsets.push(cells);
        }
        let screws = wiring.terminals.len();
        let least = (((LEAST_WIDTH - NAMES - RIGHT) / CELL).floor() as usize).max(screws * TERMINAL_CELLS + 1);
        let count = needed.len().max(1);
        let mut spare = least.saturating_sub(needed.iter().sum());
        for (position, cells) in needed.iter_mut().enumerate() {
            let share = spare / (count - position);
            *cells += share;
            spare -= share;
        }
        let cells: usize = needed.iter().sum::<usize>().max(least);
        let width = NAMES + cells as f64 * CELL + RIGHT;
        let (mut slots, mut wires) = (Vec::new(), Vec::new());
        let mut from = 0;
        for (position, cable) in wiring.cables.iter().enumerate() {
            let (left, wide) = (NAMES + from as f64 * CELL, needed[position] as f64 * CELL);
            let (head, what) = words::above_cable(cable, wiring.protective);
            slots.push(Slot {
                left,
                width: wide,
                head: wrapped(&head, HEAD.size, true, wide - 4.0),
                what: what.iter().flat_map(|line| wrapped(line, WHAT.size, false, wide - 4.0)).collect(),
            });
            let taken = offsets[position].last().map_or(0, |last| last + 1);
            let aside = (needed[position] - taken) / 2;
            for (carries, cell) in cable.conductors.iter().zip(&offsets[position]) {
                let x = NAMES + (from + aside + cell) as f64 * CELL + CELL / 2.0;
                wires.push(Wire { cable: position, carries: *carries, x, open: open_of(position, *carries) });
            }
            from += needed[position];
        }
        let first = (cells.saturating_sub((screws.max(1) - 1) * TERMINAL_CELLS)) / 2;
        let screws = wiring.terminals.iter().enumerate().map(|(position, terminal)| {
            let x = NAMES + (first + position * TERMINAL_CELLS) as f64 * CELL;
            let open = wiring.open_ends.iter().find(|open| {
                open.end.kind == EndKind::Terminal
                    && open.end.side == Some(terminal.side)
                    && open.end.carries == terminal.carries
            });
            Screw { terminal: *terminal, x, open: open.map(|open| open.because) }
        });
        let screws: Vec<Screw> = screws.collect();
        let labels = slots.iter().map(|slot| slot.head.len() + slot.what.len()).max().unwrap_or(0);
        let cables_top = 16.0 + labels as f64 * LINE + 4.0;
        let box_top = cables_top + 17.0;
        let mut y = box_top + 17.0;
        if wires.iter().any(|wire| wire.open.is_some()) {
            y += OPEN_ROW;
        }
        let (jumpers, mut joints): (Vec<&Joint>, Vec<&Joint>) =
            wiring.joints.iter().partition(|joint| is_jumper(joint));
        joints.sort_by_key(|joint| (joint.behind_load, joint.carries != Carries::Ground, joint.carries));
        let rails = joints.into_iter().map(|joint| {
            y += RAIL;
            Rail { joint, y: y - 8.0 }
        });
        let rails: Vec<Rail> = rails.collect();
        y += if jumpers.is_empty() { 8.0 } else { 26.0 };
        let device_top = y;
        let device_height = if wiring.protective { DEVICE + PAIRS } else { DEVICE };
        let device =
            if wiring.device.is_some() { if screws.is_empty() { 16.0 } else { device_height + 11.0 } } else { 0.0 };
        Self {
            width,
            slots,
            wires,
            screws,
            rails,
            jumpers,
            cables_top,
            box_top,
            device_top,
            device_height,
            box_bottom: y + device + 6.0,
        }
    }

    /// The place of a conductor.
    pub(super) fn wire(&self, cable: usize, carries: Carries) -> Option<&Wire> {
        self.wires.iter().find(|wire| wire.cable == cable && wire.carries == carries)
    }
}

fn is_conductor(open: &OpenEnd, cable: usize, carries: Carries) -> bool {
    open.end.kind == EndKind::Conductor && open.end.cable == Some(cable) && open.end.carries == carries
}

/// Whether a joint is one that makes a ground look as if it were there.
fn is_jumper(joint: &Joint) -> bool {
    joint.state == JointState::TakeOut
        || joint.ends.iter().any(|end| end.kind == EndKind::PipeOrRod)
        || (joint.ends.len() == 2 && joint.ends.iter().all(|end| end.kind == EndKind::Terminal))
}
