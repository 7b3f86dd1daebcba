//! What is believed of a circuit: of every box, of every run, and what does not fit together.

use super::clash::{Clash, clashes};
use super::down::{Odds, down};
use super::likely::Sum;
use super::meter_odds::Draws;
use super::priors::Priors;
use super::reading_odds::{MISTAKEN, Signs};
use super::state::{Ground, GroundRun, Wiring};
use super::stations::{Remembered, Station, Stations, WIRINGS, at_box, seen_at, signs_at};
use super::up::{Up, up};
use crate::ground_reading::{GroundReading, ground_reading};
use dwelling::{BoxIndex, CircuitIndex, CircuitTree, Dwelling};

/// How sure a statement must be to be made.
pub const SURE_ENOUGH: f64 = 0.9;

/// What is believed of a circuit, or of the circuits of a multiwire set.
#[derive(Clone, Debug)]
pub struct CircuitBelief {
    /// The circuits.
    pub circuits: Vec<CircuitIndex>,
    /// What is believed of its boxes, what feeds before what is fed; nothing where no state at all reads as it was found.
    pub boxes: Vec<BoxBelief>,
    /// What of it does not fit together.
    pub clashes: Vec<Clash>,
    /// Its stations, with the likelier kind of meter where none was written down.
    pub(crate) stations: Stations,
}

/// What is believed of a box and of the run that feeds it. All odds lie between 0 and 1.
#[derive(Clone, Debug, PartialEq)]
pub struct BoxBelief {
    /// The box.
    pub at: BoxIndex,
    /// What its ground terminal is in truth: the odds in the order of [`Ground`].
    pub ground: [f64; 6],
    /// How its device is wired: the odds in the order of [`Wiring`].
    pub wiring: [f64; 6],
    /// The hot conductor's way from the panel: the odds in the order of [`super::WireState`].
    pub hot_path: [f64; 3],
    /// The neutral's way from the panel.
    pub neutral_path: [f64; 3],
    /// The run that feeds it.
    pub run: RunBelief,
    /// How likely each set of its readings is wrong, in the order taken, sets that are alike once.
    pub mistaken: Vec<f64>,
    /// How likely what was seen in it is wrong, where anything was.
    pub misseen: Option<f64>,
    /// How likely the wiring method of its run is recorded wrongly.
    pub misrecorded: f64,
    /// Whether a loaded test here has shown that its ground goes back by a way of its own.
    pub is_separate: bool,
}

/// What is believed of a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunBelief {
    /// Its hot conductor: the odds in the order of [`super::WireState`].
    pub hot: [f64; 3],
    /// Its neutral.
    pub neutral: [f64; 3],
    /// Its ground: the odds in the order of [`GroundRun`].
    pub ground: [f64; 6],
}

impl BoxBelief {
    /// The likeliest state of its ground terminal, with its odds.
    #[must_use]
    pub fn likeliest(&self) -> (Ground, f64) {
        let odds = Ground::ALL.iter().copied().zip(self.ground);
        odds.fold((Ground::Missing, 0.0), |best, one| if one.1 > best.1 { one } else { best })
    }

    /// What may be said of its ground: the likeliest state where it is sure enough. That it is grounded may be said only
    /// where a loaded test has shown it: nothing else tells a ground from a jumper.
    #[must_use]
    pub fn verdict(&self) -> Option<Ground> {
        let (ground, odds) = self.likeliest();
        let shown = !matches!(ground, Ground::Grounded | Ground::Poor) || self.is_separate;
        (odds >= SURE_ENOUGH && shown && !self.is_contradicted()).then_some(ground)
    }

    /// Whether a reading or sighting here fits so badly that it is rather wrong than right.
    #[must_use]
    pub fn is_contradicted(&self) -> bool {
        self.mistaken.iter().chain(&self.misseen).any(|odds| *odds >= 0.5)
    }

    /// How likely its hot and neutral slots have changed places.
    #[must_use]
    pub fn reversed(&self) -> f64 {
        self.wiring[Wiring::HotNeutralReversed as usize] + self.wiring[Wiring::ReversedJumper as usize]
    }
}

/// How likely the meter is of each kind where nobody wrote it down. Common practice, no source.
const KINDS_OF_METER: [(Draws, f64); 2] = [(Draws::Little, 0.7), (Draws::Much, 0.3)];
/// A kind of meter that is less likely than this by all that was read counts for nothing.
const IMPOSSIBLE: f64 = 1e-13;

/// A dwelling as it would be believed if its readings without a kind of meter were taken with one of this kind.
struct Case {
    known: Remembered,
    /// By tree.
    trees: Vec<(Stations, Up)>,
    /// How likely it is, given all that was read.
    share: f64,
}

/// What is believed of every tree.
///
/// Where the kind of meter was not written down, it is one hidden fact of all these sets: they were taken on one visit. So
/// everything is weighed with each kind, and the two are put together by how likely all readings are with each.
pub(crate) fn believe_trees(dwelling: &Dwelling, trees: &[CircuitTree], priors: &Priors) -> Vec<CircuitBelief> {
    let mut cases = cases(dwelling, trees, priors);
    let mut boxes: Vec<Vec<BoxBelief>> = vec![Vec::new(); trees.len()];
    for case in &mut cases {
        for ((stations, up), boxes) in case.trees.iter().zip(&mut boxes) {
            let more = beliefs_by(dwelling, stations, up, priors, &mut case.known);
            if boxes.is_empty() {
                boxes.extend(more.into_iter().map(|belief| belief.times(case.share)));
            } else {
                boxes.iter_mut().zip(more).for_each(|(to, more)| to.add(&more.times(case.share)));
            }
        }
    }
    let likeliest = cases.into_iter().max_by(|one, other| one.share.total_cmp(&other.share));
    let Some(Case { mut known, trees: all, .. }) = likeliest else { return Vec::new() };
    let of_tree = |((tree, (stations, _)), boxes): ((&CircuitTree, (Stations, Up)), Vec<BoxBelief>)| {
        let clashes = clashes(dwelling, &stations, &boxes, priors, &mut known);
        CircuitBelief { circuits: tree.circuits.clone(), boxes, clashes, stations }
    };
    trees.iter().zip(all).zip(boxes).map(of_tree).collect()
}

/// The kinds of meter with which the readings can have been taken.
fn cases(dwelling: &Dwelling, trees: &[CircuitTree], priors: &Priors) -> Vec<Case> {
    let lacks_meter = |tree: &CircuitTree| {
        tree.members.iter().chain(&tree.unplaced).any(|index| signs_at(dwelling, *index).iter().any(Signs::lacks_meter))
    };
    let kinds = if trees.iter().any(lacks_meter) { &KINDS_OF_METER[..] } else { &KINDS_OF_METER[..1] };
    let mut cases = Vec::new();
    let mut logs = Vec::new();
    for (draws, odds) in kinds {
        let mut known = Remembered::new(*draws);
        let up_tree = |tree: &CircuitTree| {
            let stations = Stations::of(dwelling, tree, priors, &mut known);
            let up = up::<Sum>(&stations);
            (stations, up)
        };
        let trees: Vec<(Stations, Up)> = trees.iter().map(up_tree).collect();
        // A tree that cannot be as it was found says nothing of the meter.
        let of_trees = trees.iter().map(|(_, up)| up.log_odds::<Sum>()).filter(|log| log.is_finite()).sum::<f64>();
        logs.push(odds.ln() + of_trees);
        cases.push(Case { known, trees, share: 1.0 });
    }
    let greatest = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let total: f64 = logs.iter().map(|log| (log - greatest).exp()).sum();
    for (case, log) in cases.iter_mut().zip(&logs) {
        case.share = (log - greatest).exp() / total;
    }
    cases.retain(|case| case.share > IMPOSSIBLE);
    cases
}

/// What is believed of every station; nothing where what was found cannot be.
pub(crate) fn beliefs_of(
    dwelling: &Dwelling,
    stations: &Stations,
    priors: &Priors,
    known: &mut Remembered,
) -> Vec<BoxBelief> {
    beliefs_by(dwelling, stations, &up::<Sum>(stations), priors, known)
}

fn beliefs_by(
    dwelling: &Dwelling,
    stations: &Stations,
    up: &Up,
    priors: &Priors,
    known: &mut Remembered,
) -> Vec<BoxBelief> {
    let odds = down(stations, up).unwrap_or_default();
    let of_station = |(odds, station): (&Odds, &Station)| box_belief(dwelling, station.at, odds, priors, known);
    odds.iter().zip(&stations.all).map(of_station).collect()
}

impl BoxBelief {
    /// All its odds.
    fn odds(&mut self) -> impl Iterator<Item = &mut f64> {
        let Self { ground, wiring, hot_path, neutral_path, run, mistaken, misseen, misrecorded, .. } = self;
        let of_run = run.hot.iter_mut().chain(&mut run.neutral).chain(&mut run.ground);
        let of_box = ground.iter_mut().chain(wiring).chain(hot_path).chain(neutral_path);
        of_box.chain(of_run).chain(mistaken).chain(misseen).chain([misrecorded])
    }

    /// With all its odds so many times as great.
    fn times(mut self, share: f64) -> Self {
        self.odds().for_each(|odds| *odds *= share);
        self
    }

    fn add(&mut self, more: &Self) {
        let mut more = more.clone();
        self.odds().zip(more.odds()).for_each(|(to, more)| *to += *more);
    }
}

fn box_belief(dwelling: &Dwelling, index: BoxIndex, odds: &Odds, priors: &Priors, known: &mut Remembered) -> BoxBelief {
    let signs = signs_at(dwelling, index);
    let (mut ground, mut wirings) = ([0.0; 6], [0.0; WIRINGS]);
    let (mut hot_path, mut neutral_path) = ([0.0; 3], [0.0; 3]);
    let mut by_way = vec![0.0; known.ways().len()];
    for (wiring, of_wiring) in wirings.iter_mut().enumerate() {
        for (arrival, of_arrival) in odds.local[wiring].iter().enumerate() {
            for (path, odds) in of_arrival.iter().enumerate() {
                let at = at_box(wiring, arrival, path);
                ground[at.ground() as usize] += odds;
                *of_wiring += odds;
                hot_path[at.hot as usize] += odds;
                neutral_path[at.neutral as usize] += odds;
                by_way[known.way_of(wiring, arrival, path)] += odds;
            }
        }
    }
    let mistaken = signs.iter().map(|signs| {
        let if_wrong = MISTAKEN * signs.odds_if_mistaken();
        let wrong = |odds: f64| if_wrong / ((1.0 - MISTAKEN) * odds + if_wrong);
        known.odds(signs).iter().zip(&by_way).map(|(odds, believed)| believed * wrong(*odds)).sum()
    });
    let mistaken = mistaken.collect();
    let cable = dwelling.cable_to(index);
    let misrecorded = GroundRun::ALL.iter().zip(odds.ground);
    let misrecorded = misrecorded.map(|(run, odds)| odds * priors.misrecorded(cable, dwelling.job.built, *run)).sum();
    BoxBelief {
        at: index,
        ground,
        wiring: wirings,
        hot_path,
        neutral_path,
        run: RunBelief { hot: odds.hot, neutral: odds.neutral, ground: odds.ground },
        mistaken,
        misseen: seen_at(dwelling, index).map(|_| odds.misseen),
        misrecorded,
        is_separate: ground_reading(&dwelling.device_box(index).found) == GroundReading::Separate,
    }
}
