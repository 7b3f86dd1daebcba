//! Counts in which band a meter finds terminals, over houses each of which has one fault of a kind chosen evenly.

use crate::chance::Chance;
use crate::instrument::{Instrument, On, PlugInTester, solved};
use crate::layout::{Layout, layout};
use crate::sketch::{Size, sketch};
use crate::truth::{Forced, truth};
use crate::visit::{ground_ohms, switched_on};
use diagnosis::belief::{
    AtBox, Draws, Floats, GroundRun, Hangs, Loaded, Odds, Priors, Slot, VoltBand, WireState, Wiring, floats, slots,
    volt_band,
};
use dwelling::LoadState;
use electrical::Volts;
use electrical::network::{NetworkError, Opening, SolvedCircuit, Wire};
use std::collections::BTreeMap;

/// A terminal as the table has it: what it hangs on, and where it floats if it does.
type Terminal = (Hangs, Floats);

/// What is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Key {
    /// Where a terminal floats; the first four counts are the places.
    Place(Hangs),
    /// The band of a pair.
    Pair(Terminal, Terminal),
    /// The band of a slot against an independent earth.
    Earth(Terminal),
    /// The band of two slots that are one conductor here.
    One,
    /// The impedance of a ground: sound, poor, or earth.
    Impedance(Hangs),
}

/// The counts, by what the instrument draws and the load.
#[derive(Clone, Debug, Default)]
pub struct Counts {
    /// The counts.
    pub of: BTreeMap<(Key, Draws, Loaded), [u32; 6]>,
}

impl Counts {
    fn add(&mut self, key: Key, draws: Draws, load: Loaded, place: usize) {
        self.of.entry((key, draws, load)).or_default()[place] += 1;
    }

    /// The shares of a key, where it was counted.
    #[must_use]
    pub fn shares(counts: &[u32; 6]) -> Odds {
        let total: u32 = counts.iter().sum();
        counts.map(|count| f64::from(count) / f64::from(total.max(1)))
    }
}

/// What was counted in houses as they come stands, unless it is rarer than this.
const ENOUGH: u32 = 400;

/// Counts over so many houses as they come, and over as many that have one fault of a kind chosen evenly: these stand for
/// what is rare in the others.
#[must_use]
pub fn count(houses: u64, seed: u64, priors: &Priors) -> Counts {
    let (mut plain, mut faulty) = (Counts::default(), Counts::default());
    for seed in (seed..).take(usize::try_from(houses).unwrap_or(usize::MAX)) {
        // A network that has no answer counts nothing.
        let _ = count_house(seed, false, priors, &mut plain);
        let _ = count_house(seed, true, priors, &mut faulty);
    }
    for (key, counts) in plain.of {
        let all = faulty.of.entry(key).or_default();
        if counts.iter().sum::<u32>() >= ENOUGH {
            *all = counts;
        } else {
            all.iter_mut().zip(counts).for_each(|(sum, count)| *sum += count);
        }
    }
    faulty
}

fn count_house(seed: u64, has_fault: bool, priors: &Priors, counts: &mut Counts) -> Result<(), NetworkError> {
    let mut chance = Chance::new(seed);
    let size = Size { circuits: 1, ..Size::default() };
    let dwelling = sketch(size, &mut chance);
    let place = chance.below(dwelling.boxes.len());
    let forced = match chance.below(9) {
        0 => Forced::Hot(WireState::Weak),
        1 => Forced::Hot(WireState::Open),
        2 => Forced::Neutral(WireState::Weak),
        3 => Forced::Neutral(WireState::Open),
        4 => Forced::Ground(GroundRun::ALL[chance.below(6)]),
        _ => Forced::Wiring(Wiring::ALL[chance.below(6)]),
    };
    let forced = has_fault.then_some((place, forced));
    let Some((has_ground, truth)) = truth(&dwelling, priors, forced, &mut chance) else { return Ok(()) };
    let layout = layout(&dwelling, has_ground, &truth, &mut chance);
    // The opening of the fault, and any other.
    let other = chance.below(truth.len());
    for number in [place, other] {
        count_opening(&layout, layout.openings[number], truth[number].at, &mut chance, counts)?;
    }
    Ok(())
}

const LOADS: [(Loaded, LoadState); 3] =
    [(Loaded::No, LoadState::None), (Loaded::Lamp, LoadState::Lamp), (Loaded::Heavily, LoadState::Heavy)];

fn count_opening(
    layout: &Layout,
    at: Opening,
    truth: AtBox,
    chance: &mut Chance,
    counts: &mut Counts,
) -> Result<(), NetworkError> {
    for (load, state) in LOADS {
        let on = switched_on(layout, at, state, chance);
        let plain = solved(layout, &on)?;
        for draws in [Draws::Little, Draws::Much] {
            let instrument = match draws {
                Draws::Little => Instrument::high_impedance(chance),
                _ => Instrument::low_impedance(chance),
            };
            Read { solved: &plain, instrument, at, draws, load }.count(truth, chance, counts);
        }
        count_tester(layout, &on, at, truth, load, chance, counts)?;
    }
    let slots = slots(truth);
    let is_right =
        matches!(slots.hot, Hangs::Hot { .. }) && !matches!(slots.neutral, Hangs::Hot { .. } | Hangs::OpenNeutral);
    if is_right && !matches!(slots.ground, Hangs::Hot { .. }) {
        let ohms = ground_ohms(layout, at)?;
        let band = usize::from(ohms > 1.0) + usize::from(ohms > 5.0);
        counts.add(Key::Impedance(slots.ground), Draws::Much, Loaded::Heavily, band);
    }
    Ok(())
}

/// One way of reading an opening.
struct Read<'a> {
    solved: &'a SolvedCircuit,
    instrument: Instrument,
    at: Opening,
    draws: Draws,
    load: Loaded,
}

impl Read<'_> {
    fn count(&self, truth: AtBox, chance: &mut Chance, counts: &mut Counts) {
        let slots = slots(truth);
        let mut ends = Vec::new();
        for (wire, hangs) in [(Wire::LegA, slots.hot), (Wire::Neutral, slots.neutral), (Wire::Ground, slots.ground)] {
            let place = if floats(hangs) { self.place(wire, chance) } else { Floats::Nowhere };
            if floats(hangs) {
                counts.add(Key::Place(hangs), self.draws, self.load, place as usize);
            }
            ends.push((wire, (hangs, place)));
            let earth = volt_band(self.instrument.shows_to_earth(self.solved, self.at, wire, chance));
            counts.add(Key::Earth((hangs, place)), self.draws, self.load, earth as usize);
        }
        for (first, second) in [(0, 1), (0, 2), (1, 2)] {
            let band = volt_band(self.instrument.shows(self.solved, self.at, ends[first].0, ends[second].0, chance));
            let one = matches!((first, second, slots.ground_is), (0, 2, Some(Slot::Hot)) | (1, 2, Some(Slot::Neutral)));
            let key = if one { Key::One } else { pair_key(ends[first].1, ends[second].1) };
            counts.add(key, self.draws, self.load, band as usize);
        }
    }

    /// Where a terminal floats, against hot and neutral of the panel.
    fn place(&self, wire: Wire, chance: &mut Chance) -> Floats {
        let mut against = |panel| {
            let (from, to) = (self.solved.terminal(self.at, wire), self.solved.terminal(Opening::PANEL, panel));
            let volts = self.solved.reading_of_nodes(from, to, self.instrument.meter).as_volts();
            volt_band(self.instrument.written(volts, chance))
        };
        place_of(against(Wire::LegA), against(Wire::Neutral))
    }
}

fn place_of(hot: VoltBand, neutral: VoltBand) -> Floats {
    match (hot, neutral) {
        (hot, _) if hot >= VoltBand::Line => Floats::AtNeutral,
        (_, neutral) if neutral >= VoltBand::Line => Floats::AtHot,
        (VoltBand::Between, VoltBand::Between) => Floats::Between,
        _ => Floats::Nowhere,
    }
}

fn pair_key(one: Terminal, other: Terminal) -> Key {
    if one <= other { Key::Pair(one, other) } else { Key::Pair(other, one) }
}

fn count_tester(
    layout: &Layout,
    on: &On,
    at: Opening,
    truth: AtBox,
    load: Loaded,
    chance: &mut Chance,
    counts: &mut Counts,
) -> Result<(), NetworkError> {
    let tester = PlugInTester::any(chance);
    let slots = slots(truth);
    let (volts, from_panel) = tester.volts_and_panel(layout, on, at)?;
    let band = |volts: f64| volt_band(Volts::millivolts((volts * 1e3).round() as i64));
    let ends: Vec<Terminal> = [slots.hot, slots.neutral, slots.ground]
        .into_iter()
        .zip(from_panel)
        .map(|(hangs, [hot, neutral])| {
            let place = if floats(hangs) { place_of(band(hot), band(neutral)) } else { Floats::Nowhere };
            if floats(hangs) {
                counts.add(Key::Place(hangs), Draws::Lamps, load, place as usize);
            }
            (hangs, place)
        })
        .collect();
    for ((first, second), volts) in [(0, 1), (0, 2), (1, 2)].into_iter().zip(volts) {
        let one = matches!((first, second, slots.ground_is), (0, 2, Some(Slot::Hot)) | (1, 2, Some(Slot::Neutral)));
        let key = if one { Key::One } else { pair_key(ends[first], ends[second]) };
        counts.add(key, Draws::Lamps, load, band(volts) as usize);
    }
    Ok(())
}
