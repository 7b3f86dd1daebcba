//! How likely a set of readings is at an opening whose slots hang on this or that.

use super::meter_odds::{Bands, Draws, Loaded, Three, Together, together};
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

/// A pair of terminals that is measured: three of slots, then three to earth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Pair {
    HotNeutral,
    HotGround,
    NeutralGround,
    HotEarth,
    NeutralEarth,
    GroundEarth,
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

    /// Whether it matters with which kind of meter they were taken, and nobody wrote it down.
    pub(crate) const fn lacks_meter(&self) -> bool {
        self.draws.is_none() && !self.pairs.is_empty()
    }

    /// The same as taken with a meter of this kind, where nobody wrote down the kind.
    pub(crate) fn taken_with(&self, draws: Draws) -> Self {
        Self { draws: self.draws.or(Some(draws)), ..self.clone() }
    }

    /// The odds of these readings if they were written down wrongly.
    pub(crate) fn odds_if_mistaken(&self) -> f64 {
        let verdicts = usize::from(self.tester.is_some()) + usize::from(self.impedance.is_some());
        power(ANY_BAND, self.pairs.len()) * power(ANY_VERDICT, verdicts)
    }

    /// The odds of these readings where the slots hang on this and so much is foreseen.
    pub(crate) fn odds(&self, slots: Slots, foreseen: &Foreseen) -> f64 {
        let draws = self.draws.unwrap_or(Draws::Little);
        let loads: &[(Loaded, f64)] = match self.load {
            Some(Loaded::No) => &[(Loaded::No, 1.0)],
            Some(Loaded::Lamp) => &[(Loaded::Lamp, 1.0)],
            Some(Loaded::Heavily) => &[(Loaded::Heavily, 1.0)],
            None => &[(Loaded::No, 0.8), (Loaded::Lamp, 0.15), (Loaded::Heavily, 0.05)],
        };
        let mut sum = 0.0;
        for (load, of_load) in loads {
            let of_pairs = self.odds_under(foreseen, draws, *load);
            let of_lamps = || foreseen.under(Three::Slots, Draws::Lamps, *load);
            let of_tester = self.tester.map_or(1.0, |verdict| tester_odds(slots, of_lamps(), verdict));
            sum += of_load * of_pairs * of_tester;
        }
        sum * self.impedance.map_or(1.0, |band| impedance_odds(slots, band))
    }

    /// The same with a meter and a load that are known.
    fn odds_under(&self, foreseen: &Foreseen, draws: Draws, load: Loaded) -> f64 {
        let mut read = [[None; 3]; 2];
        for (pair, band) in &self.pairs {
            let place = *pair as usize;
            read[place / 3][place % 3] = Some(*band);
        }
        let [of_slots, to_earth] = read;
        let of = |three: Three, read: [Option<VoltBand>; 3]| {
            if read == [None; 3] { 1.0 } else { foreseen.under(three, draws, load).odds(read) }
        };
        of(Three::Slots, of_slots) * of(Three::ToEarth, to_earth)
    }
}

/// What is foreseen of every three pairs where the slots hang on this: by the pairs, what the instrument draws, and the load.
#[derive(Clone, Debug)]
pub(crate) struct Foreseen([[[Together; 3]; 3]; 2]);

impl Foreseen {
    /// What is foreseen of slots.
    pub(crate) fn of(slots: Slots) -> Self {
        Self([Three::Slots, Three::ToEarth].map(|three| {
            [Draws::Little, Draws::Much, Draws::Lamps].map(|draws| {
                [Loaded::No, Loaded::Lamp, Loaded::Heavily].map(|load| together(slots, three, draws, load))
            })
        }))
    }

    const fn under(&self, three: Three, draws: Draws, load: Loaded) -> &Together {
        &self.0[three as usize][draws as usize][load as usize]
    }
}

/// Calls with every three bands that three pairs may read together, and their odds.
pub(crate) fn each_three(slots: Slots, three: Three, draws: Draws, load: Loaded, mut call: impl FnMut(Bands, f64)) {
    let foreseen = together(slots, three, draws, load);
    for one in VoltBand::ALL {
        for two in VoltBand::ALL {
            for last in VoltBand::ALL {
                call([one, two, last], foreseen.odds([Some(one), Some(two), Some(last)]));
            }
        }
    }
}

/// How often a loaded test of the ground reads sound, poor, and as earth or nothing.
pub(crate) fn impedances(slots: Slots) -> [f64; 3] {
    [ImpedanceBand::Sound, ImpedanceBand::Poor, ImpedanceBand::Earth].map(|band| impedance_odds(slots, band))
}

/// How often a plug-in tester gives a verdict where the slots hang on this.
fn tester_odds(slots: Slots, foreseen: &Together, verdict: TesterVerdict) -> f64 {
    let finds_join = finds_join(slots);
    let of_lamps = |(bands, share): &(Bands, f64)| share * verdict_odds(bands.map(lights), finds_join, verdict);
    foreseen.shares().iter().map(of_lamps).sum()
}

fn power(base: f64, times: usize) -> f64 {
    (0..times).fold(1.0, |product, _| product * base)
}

/// How often a lamp of a plug-in tester is taken for lit, by how it was counted. Common practice, no source.
const fn lights(band: VoltBand) -> f64 {
    match band {
        VoltBand::Line | VoltBand::Over => 0.998,
        _ => 0.002,
    }
}

/// How often a tester says that neutral and ground are joined: three in ten are of the kind that looks for it, and these find
/// half of the joins in other boxes. Common practice, no source.
fn finds_join(slots: Slots) -> f64 {
    match (slots.ground_is, slots.ground) {
        (Some(Slot::Neutral), _) => 0.3,
        (_, Hangs::NeutralElsewhere { .. } | Hangs::OpenNeutral) => 0.15,
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
