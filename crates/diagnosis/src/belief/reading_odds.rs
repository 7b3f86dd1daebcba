//! How likely a set of readings is at an opening whose slots hang on this or that.

use super::meter_odds::{Draws, Floats, Loaded, Odds, one_conductor, pair, places};
use super::terminals::{Hangs, Slot, Slots};
use super::volt_band::{VoltBand, volt_band};
use crate::bands::{EARTH_PATH_ABOVE, POOR_ABOVE};
use dwelling::{LoadState, MeterKind, Reading, TesterVerdict};

/// What a set of readings says, in bands; two sets that are alike count once.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Signs {
    /// Each measured pair with its band.
    pairs: Vec<(Pair, VoltBand)>,
    tester: Option<TesterVerdict>,
    impedance: Option<ImpedanceBand>,
    draws: Option<Draws>,
    load: Option<Loaded>,
}

/// A pair of terminals that is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Pair {
    HotNeutral,
    HotGround,
    NeutralGround,
    HotEarth,
    NeutralEarth,
    GroundEarth,
}

impl Pair {
    const ALL: [Self; 6] =
        [Self::HotNeutral, Self::HotGround, Self::NeutralGround, Self::HotEarth, Self::NeutralEarth, Self::GroundEarth];
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum ImpedanceBand {
    Sound,
    Poor,
    Earth,
}

/// How often a set of readings is written down wrongly, or taken at another opening. Common practice, no source.
pub const MISTAKEN: f64 = 0.004;
/// How likely any band is when a set is wrong.
const ANY_BAND: f64 = 1.0 / 5.0;
/// How likely any verdict of a plug-in tester, or band of impedance, is when a set is wrong.
const ANY_VERDICT: f64 = 1.0 / 6.0;
/// The share of every band that the odds leave to what they do not know of.
const UNFORESEEN: f64 = 0.000_5;

impl Signs {
    /// What a set of readings says; nothing where nothing was measured.
    pub(crate) fn of(reading: &Reading) -> Option<Self> {
        let measured = [
            (Pair::HotNeutral, reading.hot_neutral),
            (Pair::HotGround, reading.hot_ground),
            (Pair::NeutralGround, reading.neutral_ground),
            (Pair::HotEarth, reading.hot_earth),
            (Pair::NeutralEarth, reading.neutral_earth),
            (Pair::GroundEarth, reading.ground_earth),
        ];
        let pairs: Vec<_> =
            measured.into_iter().filter_map(|(pair, volts)| volts.map(|volts| (pair, volt_band(volts)))).collect();
        let impedance = reading.ground_impedance.map(|ohms| match ohms {
            ohms if ohms > EARTH_PATH_ABOVE => ImpedanceBand::Earth,
            ohms if ohms > POOR_ABOVE => ImpedanceBand::Poor,
            _ => ImpedanceBand::Sound,
        });
        let load_tester = reading.meter == Some(MeterKind::LoadTester);
        let load = match reading.load {
            _ if load_tester => Some(Loaded::Heavily),
            Some(LoadState::None) => Some(Loaded::No),
            Some(LoadState::Lamp) => Some(Loaded::Lamp),
            Some(LoadState::Heavy) => Some(Loaded::Heavily),
            None => None,
        };
        let draws = match reading.meter {
            Some(MeterKind::HighImpedance) => Some(Draws::Little),
            Some(MeterKind::LowImpedance | MeterKind::TestLamp | MeterKind::LoadTester) => Some(Draws::Much),
            Some(MeterKind::PlugInTester) | None => None,
        };
        let says = !pairs.is_empty() || reading.tester.is_some() || impedance.is_some();
        says.then_some(Self { pairs, tester: reading.tester, impedance, draws, load })
    }

    /// The odds of these readings if they were written down wrongly.
    pub(crate) fn odds_if_mistaken(&self) -> f64 {
        let verdicts = usize::from(self.tester.is_some()) + usize::from(self.impedance.is_some());
        power(ANY_BAND, self.pairs.len()) * power(ANY_VERDICT, verdicts)
    }

    /// The odds of these readings where the slots hang on this and so much is foreseen.
    pub(crate) fn odds(&self, slots: Slots, foreseen: &Foreseen) -> f64 {
        let draws: &[(Draws, f64)] = match self.draws {
            _ if self.pairs.is_empty() => &[(Draws::Much, 1.0)],
            Some(Draws::Little) => &[(Draws::Little, 1.0)],
            Some(Draws::Much | Draws::Lamps) => &[(Draws::Much, 1.0)],
            None => &[(Draws::Little, 0.7), (Draws::Much, 0.3)],
        };
        let loads: &[(Loaded, f64)] = match self.load {
            Some(Loaded::No) => &[(Loaded::No, 1.0)],
            Some(Loaded::Lamp) => &[(Loaded::Lamp, 1.0)],
            Some(Loaded::Heavily) => &[(Loaded::Heavily, 1.0)],
            None => &[(Loaded::No, 0.8), (Loaded::Lamp, 0.15), (Loaded::Heavily, 0.05)],
        };
        let mut sum = 0.0;
        for (load, of_load) in loads {
            let of_pairs =
                draws.iter().map(|(draws, of_draws)| of_draws * self.odds_under(foreseen.under(*draws, *load)));
            let of_lamps = || foreseen.under(Draws::Lamps, *load);
            let of_tester = self.tester.map_or(1.0, |verdict| tester_odds(slots, of_lamps(), verdict));
            sum += of_load * of_pairs.sum::<f64>() * of_tester;
        }
        sum * self.impedance.map_or(1.0, |band| impedance_odds(slots, band))
    }

    /// The same with a meter and a load that are known: every place where a slot may float, weighed.
    fn odds_under(&self, places: &[AtPlace]) -> f64 {
        let of_place = |(odds, of_pair): &AtPlace| {
            let each = self.pairs.iter().map(|(which, band)| of_pair[*which as usize][*band as usize]);
            odds * each.product::<f64>()
        };
        places.iter().map(of_place).sum()
    }
}

/// What is foreseen of every pair where the slots hang on this: by what the instrument draws, and the load.
#[derive(Clone, Debug)]
pub(crate) struct Foreseen([[Vec<AtPlace>; 3]; 3]);

/// One way in which slots may float: its odds, and those of every pair, in the order of [`Pair::ALL`].
type AtPlace = (f64, [Odds; 6]);

impl Foreseen {
    /// What is foreseen of slots.
    pub(crate) fn of(slots: Slots) -> Self {
        Self([Draws::Little, Draws::Much, Draws::Lamps].map(|draws| {
            [Loaded::No, Loaded::Lamp, Loaded::Heavily].map(|load| {
                let mut places = Vec::new();
                each_place(slots, draws, load, |at, odds| {
                    places.push((odds, Pair::ALL.map(|which| pair_odds(slots, at, which, draws, load).map(allowing))));
                });
                places
            })
        }))
    }

    /// Every place where a slot may float, with its odds and those of every pair.
    fn under(&self, draws: Draws, load: Loaded) -> &[AtPlace] {
        &self.0[draws as usize][load as usize]
    }
}

/// Calls with every place where the slots may float, and its odds.
fn each_place(slots: Slots, draws: Draws, load: Loaded, mut call: impl FnMut([Floats; 3], f64)) {
    let weights = |of: Hangs| places(of, draws, load);
    let (hot, neutral) = (weights(slots.hot), weights(slots.neutral));
    let ground = if slots.ground_is.is_some() { [1.0, 0.0, 0.0, 0.0] } else { weights(slots.ground) };
    for (h, of_hot) in Floats::ALL.iter().zip(hot).filter(|(_, of)| *of > 0.0) {
        for (n, of_neutral) in Floats::ALL.iter().zip(neutral).filter(|(_, of)| *of > 0.0) {
            for (g, of_ground) in Floats::ALL.iter().zip(ground).filter(|(_, of)| *of > 0.0) {
                call([*h, *n, *g], of_hot * of_neutral * of_ground);
            }
        }
    }
}

/// The odds of one pair where the slots hang on this and float there.
fn pair_odds(slots: Slots, at: [Floats; 3], which: Pair, draws: Draws, load: Loaded) -> Odds {
    let [hot, neutral, ground] = at;
    let hot = (slots.hot, hot);
    let neutral = (slots.neutral, neutral);
    let ground = match slots.ground_is {
        Some(Slot::Hot) => hot,
        Some(Slot::Neutral) => neutral,
        None => (slots.ground, ground),
    };
    let earth = (Hangs::Ground { weak: false }, Floats::Nowhere);
    match (which, slots.ground_is) {
        (Pair::HotGround, Some(Slot::Hot)) | (Pair::NeutralGround, Some(Slot::Neutral)) => one_conductor(load),
        (Pair::HotNeutral, _) => pair(hot, neutral, draws, load),
        (Pair::HotGround, _) => pair(hot, ground, draws, load),
        (Pair::NeutralGround, _) => pair(neutral, ground, draws, load),
        (Pair::HotEarth, _) => pair(hot, earth, draws, load),
        (Pair::NeutralEarth, _) => pair(neutral, earth, draws, load),
        (Pair::GroundEarth, _) => pair(ground, earth, draws, load),
    }
}

/// Calls with every three bands that three pairs may read together, and their odds.
pub(crate) fn each_three(
    slots: Slots,
    pairs: [Pair; 3],
    draws: Draws,
    load: Loaded,
    mut call: impl FnMut([VoltBand; 3], f64),
) {
    each_place(slots, draws, load, |at, odds| {
        let [first, second, third] = pairs.map(|which| pair_odds(slots, at, which, draws, load).map(allowing));
        for (one, of_one) in VoltBand::ALL.iter().zip(first) {
            for (two, of_two) in VoltBand::ALL.iter().zip(second) {
                for (three, of_three) in VoltBand::ALL.iter().zip(third) {
                    call([*one, *two, *three], odds * of_one * of_two * of_three);
                }
            }
        }
    });
}

/// How often a loaded test of the ground reads sound, poor, and as earth or nothing.
pub(crate) fn impedances(slots: Slots) -> [f64; 3] {
    [ImpedanceBand::Sound, ImpedanceBand::Poor, ImpedanceBand::Earth].map(|band| impedance_odds(slots, band))
}

/// How often a plug-in tester gives a verdict where the slots hang on this.
fn tester_odds(slots: Slots, places: &[AtPlace], verdict: TesterVerdict) -> f64 {
    let finds_join = finds_join(slots);
    let of_place = |(odds, [hot_neutral, hot_ground, neutral_ground, ..]): &AtPlace| {
        odds * verdict_odds([hot_neutral, hot_ground, neutral_ground].map(|odds| lights(*odds)), finds_join, verdict)
    };
    places.iter().map(of_place).sum()
}

fn allowing(odds: f64) -> f64 {
    (1.0 - UNFORESEEN) * odds + UNFORESEEN
}

fn power(base: f64, times: usize) -> f64 {
    (0..times).fold(1.0, |product, _| product * base)
}

/// How often a plug-in tester takes a pair for live. Common practice, no source: it shows some phantoms and not others.
fn lights(odds: Odds) -> f64 {
    let [_, _, _, between, line, over] = odds;
    0.002 * between + 0.998 * (line + over) + 0.000_5
}

/// How often a tester says that neutral and ground are joined: three in ten are of the kind that looks for it, and these find
/// half of the joins in other boxes. Common practice, no source.
fn finds_join(slots: Slots) -> f64 {
    match (slots.ground_is, slots.ground) {
        (Some(Slot::Neutral), _) => 0.3,
        (_, Hangs::NeutralElsewhere { .. }) => 0.15,
        _ => 0.000_5,
    }
}

/// How often a plug-in tester gives a verdict, from how often it takes each of three pairs for live.
///
/// Common practice, no source: the meanings of its eight cases.
fn verdict_odds([hot_neutral, hot_ground, neutral_ground]: [f64; 3], finds_join: f64, verdict: TesterVerdict) -> f64 {
    let not = |odds: f64| 1.0 - odds;
    let correct = hot_neutral * hot_ground * not(neutral_ground);
    match verdict {
        TesterVerdict::Correct => correct * (1.0 - finds_join),
        TesterVerdict::FalseGround => correct * finds_join,
        TesterVerdict::OpenGround => hot_neutral * not(hot_ground) * not(neutral_ground),
        TesterVerdict::OpenNeutral => not(hot_neutral) * hot_ground * not(neutral_ground),
        TesterVerdict::OpenHot => not(hot_neutral) * not(hot_ground) * not(neutral_ground),
        TesterVerdict::HotNeutralReversed => hot_neutral * not(hot_ground) * neutral_ground,
        TesterVerdict::HotGroundReversed => not(hot_neutral) * hot_ground * neutral_ground,
        TesterVerdict::NotListed => {
            hot_neutral * hot_ground * neutral_ground + not(hot_neutral) * not(hot_ground) * neutral_ground + 0.002
        }
    }
}

/// How often a loaded test of the ground reads in a band. Common practice, no source.
fn impedance_odds(slots: Slots, band: ImpedanceBand) -> f64 {
    let odds = match (slots.ground_is, slots.ground) {
        (_, Hangs::Neutral { weak: false } | Hangs::Ground { weak: false }) => [0.998, 0.001, 0.001],
        (_, Hangs::Ground { weak: true }) => [0.005, 0.31, 0.685],
        (_, Hangs::NeutralElsewhere { weak: false }) => [0.81, 0.06, 0.13],
        (_, Hangs::NeutralElsewhere { weak: true }) => [0.41, 0.26, 0.33],
        (_, Hangs::Neutral { weak: true }) => [0.31, 0.39, 0.30],
        _ => [0.001, 0.001, 0.998],
    };
    odds[band as usize]
}
