//! Counts in which bands a meter finds three pairs of terminals together, over houses as they come and houses with faults.

use crate::chance::Chance;
use crate::instrument::{Instrument, On, PlugInTester, solved};
use crate::layout::{Layout, layout};
use crate::sketch::{Size, sketch};
use crate::truth::{Forced, truth};
use crate::visit::{ground_ohms, switched_on};
use diagnosis::belief::{
    AtBox, Bands, Draws, GroundRun, Hangs, Loaded, Priors, Slots, Three, VoltBand, WireState, Wiring, as_counted, key,
    letters, slots, volt_band,
};
use dwelling::LoadState;
use electrical::network::{NetworkError, Opening, SolvedCircuit, Wire};
use std::collections::BTreeMap;

/// What is counted together: how the slots hang, hot before neutral, and how they are read.
pub type Way = (Slots, Three, Draws, Loaded);

/// The counts.
#[derive(Clone, Debug, Default)]
pub struct Counts {
    /// How often three pairs were found in which bands.
    pub of: BTreeMap<Way, BTreeMap<Bands, u32>>,
    /// How often the impedance of a ground was found sound, poor, and as earth or nothing.
    pub impedance: BTreeMap<Hangs, [u32; 3]>,
}

impl Counts {
    fn add(&mut self, slots: Slots, three: Three, draws: Draws, load: Loaded, bands: Bands) {
        let (slots, is_exchanged) = as_counted(slots);
        let [one, two, last] = bands;
        let bands = match three {
            Three::Slots if is_exchanged => [one, last, two],
            Three::ToEarth if is_exchanged => [two, one, last],
            _ => bands,
        };
        *self.of.entry((slots, three, draws, load)).or_default().entry(bands).or_default() += 1;
    }

    /// How many sets were counted of a way.
    #[must_use]
    pub fn all(counts: &BTreeMap<Bands, u32>) -> u32 {
        counts.values().sum()
    }

    /// The file of counts that inference rests on.
    #[must_use]
    pub fn file(&self) -> String {
        self.of.iter().map(|(way, counts)| Self::line(*way, counts)).collect()
    }

    /// A line: what is counted, how many sets, then bands with how many of 10,000 sets read so, most first.
    fn line((slots, three, draws, load): Way, counts: &BTreeMap<Bands, u32>) -> String {
        let all = Self::all(counts);
        let mut shares: Vec<(u32, Bands)> = counts
            .iter()
            .map(|(bands, count)| ((f64::from(*count) * 10_000.0 / f64::from(all)).round() as u32, *bands))
            .filter(|(share, _)| *share >= HARDLY)
            .collect();
        shares.sort_by(|one, other| other.0.cmp(&one.0).then(one.1.cmp(&other.1)));
        let shares: String = shares.iter().map(|(share, bands)| format!(" {} {share}", letters(*bands))).collect();
        format!("{}: {all}{shares}\n", key(slots, three, draws, load))
    }
}

/// Bands that fewer of 10,000 sets read are left out.
const HARDLY: u32 = 4;
/// What was counted in houses as they come stands, unless it is rarer than this.
const ENOUGH: u32 = 400;

/// Counts over so many houses as they come, and over as many that have one or two faults of a kind chosen evenly: these stand
/// for what is rare in the others.
#[must_use]
pub fn count(houses: u64, seed: u64, priors: &Priors) -> Counts {
    let (mut plain, mut faulty) = (Counts::default(), Counts::default());
    for seed in (seed..).take(usize::try_from(houses).unwrap_or(usize::MAX)) {
        // A network that has no answer counts nothing.
        let _ = count_house(seed, false, priors, &mut plain);
        let _ = count_house(seed, true, priors, &mut faulty);
    }
    for (way, counts) in plain.of {
        let all = faulty.of.entry(way).or_default();
        if Counts::all(&counts) >= ENOUGH {
            *all = counts;
        } else {
            counts.into_iter().for_each(|(bands, count)| *all.entry(bands).or_default() += count);
        }
    }
    faulty
}

fn count_house(seed: u64, has_fault: bool, priors: &Priors, counts: &mut Counts) -> Result<(), NetworkError> {
    let mut chance = Chance::new(seed);
    let size = Size { circuits: 1, ..Size::default() };
    let dwelling = sketch(size, &mut chance);
    let place = chance.below(dwelling.boxes.len());
    let mut forced = Vec::new();
    if has_fault {
        forced.push((place, any_fault(&mut chance)));
        if chance.happens(0.5) {
            // Another at the same opening or on the way to it.
            forced.push((place - chance.below(place.min(2) + 1), any_fault(&mut chance)));
        }
    }
    let Some((has_ground, truth)) = truth(&dwelling, priors, &forced, &mut chance) else { return Ok(()) };
    let layout = layout(&dwelling, has_ground, &truth, &mut chance);
    // The opening of the fault, and any other.
    let other = chance.below(truth.len());
    for number in [place, other] {
        count_opening(&layout, layout.openings[number], truth[number].at, &mut chance, counts)?;
    }
    Ok(())
}

fn any_fault(chance: &mut Chance) -> Forced {
    match chance.below(9) {
        0 => Forced::Hot(WireState::Weak),
        1 => Forced::Hot(WireState::Open),
        2 => Forced::Neutral(WireState::Weak),
        3 => Forced::Neutral(WireState::Open),
        4 => Forced::Ground(GroundRun::ALL[chance.below(6)]),
        _ => Forced::Wiring(Wiring::ALL[chance.below(6)]),
    }
}

const LOADS: [(Loaded, LoadState); 3] =
    [(Loaded::No, LoadState::None), (Loaded::Lamp, LoadState::Lamp), (Loaded::Heavily, LoadState::Heavy)];
const SLOTS: [Wire; 3] = [Wire::LegA, Wire::Neutral, Wire::Ground];
const PAIRS: [(Wire, Wire); 3] =
    [(Wire::LegA, Wire::Neutral), (Wire::LegA, Wire::Ground), (Wire::Neutral, Wire::Ground)];

fn count_opening(
    layout: &Layout,
    at: Opening,
    truth: AtBox,
    chance: &mut Chance,
    counts: &mut Counts,
) -> Result<(), NetworkError> {
    let slots = slots(truth);
    for (load, state) in LOADS {
        let on = switched_on(layout, at, state, chance);
        let plain = solved(layout, &on)?;
        for draws in [Draws::Little, Draws::Much] {
            let instrument = match draws {
                Draws::Little => Instrument::high_impedance(chance),
                _ => Instrument::low_impedance(chance),
            };
            let bands = PAIRS.map(|(from, to)| volt_band(instrument.shows(&plain, at, from, to, chance)));
            counts.add(slots, Three::Slots, draws, load, bands);
            counts.add(slots, Three::ToEarth, draws, load, to_earth(&plain, instrument, at, chance));
        }
        counts.add(slots, Three::Slots, Draws::Lamps, load, lamps(layout, &on, at, chance)?);
    }
    let is_right =
        matches!(slots.hot, Hangs::Hot { .. }) && !matches!(slots.neutral, Hangs::Hot { .. } | Hangs::OpenNeutral);
    if is_right && !matches!(slots.ground, Hangs::Hot { .. }) {
        let ohms = ground_ohms(layout, at)?;
        let band = usize::from(ohms > 1.0) + usize::from(ohms > 5.0);
        counts.impedance.entry(slots.ground).or_default()[band] += 1;
    }
    Ok(())
}

fn to_earth(solved: &SolvedCircuit, instrument: Instrument, at: Opening, chance: &mut Chance) -> Bands {
    SLOTS.map(|wire| volt_band(instrument.shows_to_earth(solved, at, wire, chance)))
}

/// Which lamps of a plug-in tester are lit.
fn lamps(layout: &Layout, on: &On, at: Opening, chance: &mut Chance) -> Result<Bands, NetworkError> {
    let tester = PlugInTester::any(chance);
    let lit = tester.lit(tester.volts(layout, on, at)?);
    Ok(lit.map(|is_lit| if is_lit { VoltBand::Line } else { VoltBand::Zero }))
}
