//! How often a meter finds three pairs of terminals together in which bands of volts, by what the slots hang on.
//!
//! The odds were counted over simulated houses: circuits drawn at random from the priors and read by the network solver,
//! with lengths, loads, joints and coupling as they come in dwellings. The three pairs of a set are counted together, since
//! the same voltage of a conductor that hangs on nothing is in two of them: behind an open hot conductor, with a ground that
//! floats, all three read nothing, which no table of single pairs would have. The example `count_readings` of the crate
//! `simulation` writes the file of counts; the tests of that crate count again and hold it to them.

use super::terminals::{Hangs, Slot, Slots};
use super::volt_band::{BANDS, VoltBand};
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// The file of counts: a line for each way in which slots hang, kind of set, instrument and load.
const COUNTED: &str = include_str!("counted_readings.txt");

/// How much current an instrument draws.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Draws {
    /// Next to none: phantoms show.
    Little,
    /// Enough to make phantoms collapse.
    Much,
    /// As a plug-in tester, whose three lamps tie the slots to one another.
    Lamps,
}

/// The load that is on at the opening while it is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Loaded {
    /// None here; something small may be on elsewhere.
    No,
    /// A lamp or another small load.
    Lamp,
    /// A heavy one.
    Heavily,
}

/// Which three pairs are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Three {
    /// Hot–neutral, hot–ground and neutral–ground. Of a plug-in tester's lamps a lit one counts as line voltage, a dark one as
    /// nothing.
    Slots,
    /// Hot, neutral and ground each to an independent earth.
    ToEarth,
}

/// Three bands that are read together.
pub type Bands = [VoltBand; 3];

/// How often three pairs read what together.
#[derive(Clone, Debug, PartialEq)]
pub struct Together {
    /// What was counted, with its share.
    shares: Vec<(Bands, f64)>,
    /// The share that is left to what was not.
    rest: f64,
    /// Each pair alone, for that.
    apart: [[f64; BANDS]; 3],
}

impl Together {
    /// The odds of what was read; of a pair that was not read nothing is asked.
    #[must_use]
    pub fn odds(&self, read: [Option<VoltBand>; 3]) -> f64 {
        let is_like = |bands: &Bands| read.iter().zip(bands).all(|(read, band)| read.is_none_or(|read| read == *band));
        let counted: f64 = self.shares.iter().filter(|(bands, _)| is_like(bands)).map(|(_, share)| share).sum();
        let of_pair =
            |(read, of_band): (&Option<VoltBand>, &[f64; BANDS])| read.map_or(1.0, |band| of_band[band as usize]);
        let apart: f64 = read.iter().zip(&self.apart).map(of_pair).product();
        (1.0 - self.rest) * counted + self.rest * apart
    }

    /// What was counted so often, with its share: the lamps of a tester are lit or dark, nothing between.
    pub(crate) fn shares(&self) -> &[(Bands, f64)] {
        &self.shares
    }

    fn of(shares: Vec<(Bands, f64)>, counted: f64) -> Self {
        let listed: f64 = shares.iter().map(|(_, share)| share).sum();
        // Where little was counted, more is left to what was not.
        let rest = ((1.0 - listed).max(0.0) + UNCOUNTED / (counted + UNCOUNTED)).min(1.0);
        let scale = if listed > 0.0 { 1.0 / listed } else { 0.0 };
        let shares: Vec<(Bands, f64)> = shares.into_iter().map(|(bands, share)| (bands, share * scale)).collect();
        let any = if listed > 0.0 { (UNCOUNTED / (counted + UNCOUNTED)).max(ANY) } else { 1.0 };
        let mut apart = [[any / BANDS as f64; BANDS]; 3];
        for (bands, share) in &shares {
            apart.iter_mut().zip(bands).for_each(|(of_band, band)| of_band[*band as usize] += (1.0 - any) * share);
        }
        Self { shares, rest, apart }
    }

    /// The same with hot and neutral slot exchanged.
    fn exchanged(&self, three: Three) -> Self {
        let exchange = |[one, two, three_]: Bands| match three {
            Three::Slots => [one, three_, two],
            Three::ToEarth => [two, one, three_],
        };
        let [one, two, last] = self.apart;
        let apart = if three == Three::Slots { [one, last, two] } else { [two, one, last] };
        let shares = self.shares.iter().map(|(bands, share)| (exchange(*bands), *share)).collect();
        Self { shares, rest: self.rest, apart }
    }
}

/// As many sets count as read in a way that was not counted.
const UNCOUNTED: f64 = 2.0;
/// The least share of bands that no set was counted in, where one pair is taken by itself.
const ANY: f64 = 0.02;

/// The slots as they are counted, and whether hot and neutral slot are exchanged for that: a meter does not mind.
#[must_use]
pub const fn as_counted(slots: Slots) -> (Slots, bool) {
    let is_hot = matches!(slots.neutral, Hangs::Hot { .. } | Hangs::OpenHot);
    if !is_hot {
        return (slots, false);
    }
    let ground_is = match slots.ground_is {
        Some(Slot::Hot) => Some(Slot::Neutral),
        Some(Slot::Neutral) => Some(Slot::Hot),
        None => None,
    };
    (Slots { hot: slots.neutral, neutral: slots.hot, ground: slots.ground, ground_is }, true)
}

/// How often three pairs read what together, where the slots hang on this.
#[must_use]
pub fn together(slots: Slots, three: Three, draws: Draws, load: Loaded) -> Together {
    let (slots, is_exchanged) = as_counted(slots);
    let counted = counts().get(key(slots, three, draws, load).as_str());
    let counted = counted.cloned().unwrap_or_else(|| Together::of(Vec::new(), 0.0));
    if is_exchanged { counted.exchanged(three) } else { counted }
}

/// Whether a way in which slots hang was counted at all.
#[must_use]
pub fn is_counted(slots: Slots, three: Three, draws: Draws, load: Loaded) -> bool {
    counts().contains_key(key(as_counted(slots).0, three, draws, load).as_str())
}

/// What begins a line of the file of counts.
#[must_use]
pub fn key(slots: Slots, three: Three, draws: Draws, load: Loaded) -> String {
    let ground = match slots.ground_is {
        Some(Slot::Hot) => "=hot",
        Some(Slot::Neutral) => "=neutral",
        None => name(slots.ground),
    };
    let read = match (three, draws) {
        (Three::Slots, Draws::Little) => "little",
        (Three::Slots, Draws::Much) => "much",
        (Three::Slots, Draws::Lamps) => "lamps",
        (Three::ToEarth, Draws::Little) => "little-to-earth",
        (Three::ToEarth, _) => "much-to-earth",
    };
    let load = match load {
        Loaded::No => "none",
        Loaded::Lamp => "lamp",
        Loaded::Heavily => "heavy",
    };
    format!("{} {} {ground} {read} {load}", name(slots.hot), name(slots.neutral))
}

const fn name(of: Hangs) -> &'static str {
    match of {
        Hangs::Hot { weak: false } => "hot",
        Hangs::Hot { weak: true } => "weak-hot",
        Hangs::Neutral { weak: false } => "neutral",
        Hangs::Neutral { weak: true } => "weak-neutral",
        Hangs::Ground { weak: false } => "ground",
        Hangs::Ground { weak: true } => "weak-ground",
        Hangs::NeutralElsewhere { weak: false } => "joined",
        Hangs::NeutralElsewhere { weak: true } => "weak-joined",
        Hangs::OpenNeutral => "open-neutral",
        Hangs::OpenHot => "open-hot",
        Hangs::FloatingGround => "floating",
        Hangs::FloatingAlone => "alone",
        Hangs::FloatingTerminal => "bare",
    }
}

/// The letters of the bands, in their order.
const LETTERS: [char; BANDS] = ['N', 'S', 'D', 'B', 'L', 'O'];

/// Three bands as the file has them.
#[must_use]
pub fn letters(bands: Bands) -> String {
    bands.iter().map(|band| LETTERS[*band as usize]).collect()
}

fn counts() -> &'static BTreeMap<&'static str, Together> {
    static COUNTS: OnceLock<BTreeMap<&'static str, Together>> = OnceLock::new();
    COUNTS.get_or_init(|| COUNTED.lines().filter_map(line).collect())
}

/// A line: its key, a colon, how many were counted, then bands and how many of 10,000 read so.
fn line(text: &'static str) -> Option<(&'static str, Together)> {
    let (key, rest) = text.split_once(": ")?;
    let mut words = rest.split(' ');
    let counted: f64 = words.next()?.parse().ok()?;
    let mut shares = Vec::new();
    while let (Some(bands), Some(share)) = (words.next(), words.next()) {
        let mut three = bands.chars().filter_map(|letter| LETTERS.iter().position(|one| *one == letter));
        let mut band = || three.next().map(|at| VoltBand::ALL[at]);
        shares.push(([band()?, band()?, band()?], share.parse::<f64>().ok()? / 10_000.0));
    }
    Some((key, Together::of(shares, counted)))
}
