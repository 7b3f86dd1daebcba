//! Counting any box, item by item.

use crate::cited::{Citation, NotChecked};
use crate::code::CodeInForce;
use crate::fill::{BoxFill, Counted, FillLine};
use crate::tables::box_counting;
use crate::tables::conductor_allowance::allowance;
use electrical::{Gauge, Volume};

/// Conductors of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Conductors {
    /// How many.
    pub count: u32,
    /// Their size.
    pub gauge: Gauge,
}

/// A strap with one or more devices on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StrapInBox {
    /// The largest conductor connected to it.
    pub largest: Gauge,
    /// How many gangs it needs: 1 for anything no wider than a single device box.
    pub gangs: u32,
}

/// Everything in a box that a count may have to take in. Pigtails and other conductors that never leave it take nothing,
/// nor do locknuts, bushings and wire connectors: there is no field for them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct BoxContents {
    /// Insulated conductors that enter from outside: spliced, ended, or passing straight through.
    pub insulated: Vec<Conductors>,
    /// Unbroken insulated conductors looped in the box over at least 12 in.
    pub looped: Vec<Conductors>,
    /// Fixture wires smaller than 14 AWG that enter from under a domed luminaire or canopy and end here.
    pub from_canopy: Vec<Conductors>,
    /// Equipment grounding conductors and bonding jumpers that enter.
    pub grounding: Vec<Conductors>,
    /// A second set of equipment grounding conductors, isolated from the first.
    pub isolated_grounding: Vec<Conductors>,
    /// Whether cable clamps are inside.
    pub clamps_inside: bool,
    /// How many kinds of support fittings (stud, hickey) are inside.
    pub support_fittings: u32,
    /// The straps with their devices.
    pub straps: Vec<StrapInBox>,
    /// The largest conductor on each terminal block.
    pub terminal_blocks: Vec<Gauge>,
}

/// Counts a box. A box without conductors takes nothing.
///
/// # Errors
/// [`NotChecked`] for a size outside the table of allowances and an edition nobody has entered.
pub fn count(contents: &BoxContents, code: &CodeInForce) -> Result<BoxFill, NotChecked> {
    let mut lines = Lines { lines: Vec::new(), code };
    let once = box_counting::INSULATED.in_force(code)?;
    for entering in &contents.insulated {
        lines.add(
            Counted::Insulated(entering.count),
            entering.count.saturating_mul(once.value * WHOLE),
            entering.gauge,
            once.cite,
        )?;
    }
    let twice = box_counting::LOOPED.in_force(code)?;
    for looped in &contents.looped {
        lines.add(
            Counted::Looped(looped.count),
            looped.count.saturating_mul(twice.value * WHOLE),
            looped.gauge,
            twice.cite,
        )?;
    }
    let left_out = box_counting::UNDER_CANOPY.in_force(code)?;
    let fixture_wires = number(&contents.from_canopy);
    let all_small = contents.from_canopy.iter().all(|wires| wires.gauge < Gauge::AWG_14);
    for wires in &contents.from_canopy {
        let free = fixture_wires <= left_out.value && all_small;
        lines.add(
            Counted::FromCanopy(wires.count),
            if free { 0 } else { wires.count.saturating_mul(WHOLE) },
            wires.gauge,
            left_out.cite,
        )?;
    }
    if let (true, Some(largest)) = (contents.clamps_inside, largest(contents)) {
        let clamps = box_counting::CLAMPS.in_force(code)?;
        lines.add(Counted::Clamps, clamps.value * WHOLE, largest, clamps.cite)?;
    }
    if let (1.., Some(largest)) = (contents.support_fittings, largest(contents)) {
        let fittings = box_counting::FITTINGS.in_force(code)?;
        let what = Counted::SupportFittings(contents.support_fittings);
        lines.add(what, contents.support_fittings.saturating_mul(fittings.value * WHOLE), largest, fittings.cite)?;
    }
    let strap_allowances = box_counting::STRAPS.in_force(code)?;
    for strap in &contents.straps {
        let gangs = strap.gangs.max(1);
        lines.add(
            Counted::Strap(gangs),
            gangs.saturating_mul(strap_allowances.value * WHOLE),
            strap.largest,
            strap_allowances.cite,
        )?;
    }
    lines.add_grounding(&contents.grounding, Counted::Grounding)?;
    lines.add_grounding(&contents.isolated_grounding, Counted::IsolatedGrounding)?;
    for largest in &contents.terminal_blocks {
        let blocks = box_counting::TERMINAL_BLOCKS.in_force(code)?;
        if let Some(allowances) = blocks.value {
            lines.add(Counted::TerminalBlock, allowances * WHOLE, *largest, blocks.cite)?;
        }
    }
    let taken = lines.lines.iter().map(|line| line.volume).sum();
    Ok(BoxFill { lines: lines.lines, taken })
}

/// The quarters in a whole allowance.
const WHOLE: u32 = 4;

struct Lines<'a> {
    lines: Vec<FillLine>,
    code: &'a CodeInForce,
}

impl Lines<'_> {
    fn add(&mut self, counted: Counted, quarters: u32, gauge: Gauge, cite: Citation) -> Result<(), NotChecked> {
        let volume: Volume = allowance(gauge, self.code)?.value.quarter() * i64::from(quarters);
        self.lines.push(FillLine { counted, quarters, gauge, volume, cite });
        Ok(())
    }

    /// One allowance of the largest for as many as share it, and a quarter of it for each further one.
    fn add_grounding(&mut self, conductors: &[Conductors], named: fn(u32) -> Counted) -> Result<(), NotChecked> {
        let number = number(conductors);
        let largest = conductors.iter().filter(|conductors| conductors.count > 0).map(|conductors| conductors.gauge);
        let Some(largest) = largest.max() else { return Ok(()) };
        let sharing = box_counting::SHARING_FIRST_ALLOWANCE.in_force(self.code)?;
        let further = sharing.value.map_or(0, |sharing| number.saturating_sub(sharing));
        self.add(named(number), WHOLE.saturating_add(further), largest, sharing.cite)
    }
}

fn number(conductors: &[Conductors]) -> u32 {
    conductors.iter().fold(0, |number, conductors| number.saturating_add(conductors.count))
}

/// The largest conductor in the box, of any kind.
fn largest(contents: &BoxContents) -> Option<Gauge> {
    let kinds = [&contents.insulated, &contents.looped, &contents.from_canopy, &contents.grounding];
    let kinds = kinds.into_iter().chain([&contents.isolated_grounding]);
    kinds.flatten().filter(|conductors| conductors.count > 0).map(|conductors| conductors.gauge).max()
}
