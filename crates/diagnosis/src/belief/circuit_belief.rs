//! What is believed of a circuit: of every box, of every run, and what does not fit together.

use super::clash::{Clash, clashes};
use super::down::{Odds, down};
use super::likely::Sum;
use super::priors::Priors;
use super::reading_odds::MISTAKEN;
use super::state::{Ground, GroundRun, Wiring};
use super::stations::{Remembered, Station, Stations, WIRINGS, at_box, seen_at, signs_at};
use super::up::up;
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

/// What is believed of a tree.
pub(crate) fn believe_tree(
    dwelling: &Dwelling,
    tree: &CircuitTree,
    priors: &Priors,
    known: &mut Remembered,
) -> CircuitBelief {
    let stations = Stations::of(dwelling, tree, priors, known);
    let boxes = beliefs_of(dwelling, &stations, priors, known);
    let clashes = clashes(dwelling, &stations, &boxes, priors, known);
    CircuitBelief { circuits: tree.circuits.clone(), boxes, clashes, stations }
}

/// What is believed of every station; nothing where what was found cannot be.
pub(crate) fn beliefs_of(
    dwelling: &Dwelling,
    stations: &Stations,
    priors: &Priors,
    known: &mut Remembered,
) -> Vec<BoxBelief> {
    let odds = down(stations, &up::<Sum>(stations)).unwrap_or_default();
    let of_station = |(odds, station): (&Odds, &Station)| box_belief(dwelling, station.at, odds, priors, known);
    odds.iter().zip(&stations.all).map(of_station).collect()
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
                hot_path[path / 3] += odds;
                neutral_path[path % 3] += odds;
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
