//! A circuit's tree as inference sees it: each box with what is likely of its run, and how likely what was found there is.

use super::priors::Priors;
use super::reading_odds::{MISTAKEN, Signs};
use super::sighting_odds::sighting_odds;
use super::state::{Arrival, AtBox, GroundRun, Joined, WireState, Wiring};
use super::terminals::{Slots, slots};
use dwelling::{BoxIndex, CableKind, CircuitTree, Dwelling, Feed, GroundPath, GroundSeen};
use std::collections::BTreeMap;

/// Pairs of the states of hot and neutral.
pub(crate) const PATHS: usize = 9;
/// Arrivals of the ground.
pub(crate) const ARRIVALS: usize = Arrival::ALL.len();
/// Ways of wiring a device.
pub(crate) const WIRINGS: usize = 6;
/// States of a run's ground.
pub(crate) const RUNS: usize = 6;

/// One box of a circuit.
#[derive(Clone, Debug)]
pub(crate) struct Station {
    /// The box.
    pub(crate) at: BoxIndex,
    /// The station that feeds it; none where the panel does, or nobody knows.
    pub(crate) parent: Option<usize>,
    /// The stations that it feeds.
    pub(crate) children: Vec<usize>,
    /// The odds of its run's hot conductor, neutral and ground.
    pub(crate) hot: [f64; 3],
    pub(crate) neutral: [f64; 3],
    pub(crate) ground: [f64; RUNS],
    /// How likely the device and its readings are: by wiring, path and arrival.
    pub(crate) local: Vec<f64>,
    /// How likely what was seen in the box is: by whether a run beyond is loose here, by its own run, by wiring.
    pub(crate) sight: Option<[[[f64; WIRINGS]; RUNS]; 2]>,
    /// What can be true here at all, where a question restricts it: by run, wiring, path and arrival.
    pub(crate) only: Option<Vec<bool>>,
}

/// A circuit, or the circuits of a multiwire set.
#[derive(Clone, Debug)]
pub(crate) struct Stations {
    /// The boxes, what feeds before what is fed.
    pub(crate) all: Vec<Station>,
    /// Those that no station feeds.
    pub(crate) roots: Vec<usize>,
    /// How likely the panel has a ground for them.
    pub(crate) panel_has_ground: f64,
}

/// The place of a device's wiring, path and arrival in a station's odds.
pub(crate) const fn place(wiring: usize, path: usize, arrival: usize) -> usize {
    (wiring * PATHS + path) * ARRIVALS + arrival
}

/// The place of a run's ground, wiring, path and arrival in a station's restriction.
pub(crate) const fn place_with_run(run: usize, wiring: usize, path: usize, arrival: usize) -> usize {
    run * WIRINGS * PATHS * ARRIVALS + place(wiring, path, arrival)
}

/// What is true at a box, by the places in the lists of states.
pub(crate) fn at_box(wiring: usize, path: usize, arrival: usize) -> AtBox {
    AtBox {
        hot: WireState::ALL[path / 3],
        neutral: WireState::ALL[path % 3],
        arrival: Arrival::ALL[arrival],
        wiring: Wiring::ALL[wiring],
    }
}

/// Whether a device so wired can be in a box where this arrives: a jumper joins what it is bonded to, and a hot conductor
/// that meets a path to the panel opens the breaker.
pub(crate) fn is_possible(wiring: Wiring, arrival: Arrival) -> bool {
    match wiring {
        Wiring::NeutralJumper => arrival.reaches() || arrival.joined() == Joined::Neutral,
        Wiring::ReversedJumper => arrival.joined() == Joined::Hot,
        _ => true,
    }
}

/// How likely sets of readings are, remembered: most boxes of a dwelling read like others.
#[derive(Debug, Default)]
pub(crate) struct Remembered {
    odds: BTreeMap<(Signs, Slots), f64>,
}

impl Remembered {
    pub(crate) fn odds(&mut self, signs: &Signs, at: Slots) -> f64 {
        if let Some(odds) = self.odds.get(&(signs.clone(), at)) {
            return *odds;
        }
        let odds = signs.odds(at);
        self.odds.insert((signs.clone(), at), odds);
        odds
    }
}

/// Every different set of readings at a box.
pub(crate) fn signs_at(dwelling: &Dwelling, index: BoxIndex) -> Vec<Signs> {
    let mut found: Vec<Signs> = Vec::new();
    for signs in dwelling.device_box(index).found.iter().filter_map(Signs::of) {
        if !found.contains(&signs) {
            found.push(signs);
        }
    }
    found
}

/// What was last seen of a ground in a box.
pub(crate) fn seen_at(dwelling: &Dwelling, index: BoxIndex) -> Option<GroundSeen> {
    let seen = dwelling.device_box(index).found.iter().rev().filter_map(|reading| reading.ground);
    seen.into_iter().find(|seen| *seen != GroundSeen::NotOpened)
}

impl Stations {
    /// The stations of a tree.
    pub(crate) fn of(dwelling: &Dwelling, tree: &CircuitTree, priors: &Priors, known: &mut Remembered) -> Self {
        let order: Vec<BoxIndex> = tree.members.iter().chain(&tree.unplaced).copied().collect();
        let number: BTreeMap<BoxIndex, usize> = order.iter().enumerate().map(|(at, index)| (*index, at)).collect();
        let mut all: Vec<Station> = order.iter().map(|index| station(dwelling, *index, priors, known)).collect();
        let mut roots = Vec::new();
        for (at, index) in order.iter().enumerate() {
            let parent = match dwelling.device_box(*index).fed_by {
                Some(Feed::Box(parent)) => number.get(&parent).copied(),
                _ => None,
            };
            match parent {
                Some(parent) => {
                    all[at].parent = Some(parent);
                    all[parent].children.push(at);
                }
                None => roots.push(at),
            }
        }
        let panel_has_ground = match dwelling.panel(tree.panel).ground_bar {
            Some(true) => 1.0 - priors.cable_misrecorded,
            // Grounds may end at the neutral bar of service equipment, or at nothing.
            Some(false) => 0.3,
            None => priors.unseen_panel_has_ground,
        };
        Self { all, roots, panel_has_ground }
    }
}

fn station(dwelling: &Dwelling, index: BoxIndex, priors: &Priors, known: &mut Remembered) -> Station {
    let device_box = dwelling.device_box(index);
    let mut local = vec![0.0; WIRINGS * PATHS * ARRIVALS];
    let signs = signs_at(dwelling, index);
    for (arrival_number, arrival) in Arrival::ALL.iter().enumerate() {
        let odds = priors.wiring(device_box.holds, *arrival);
        for (wiring_number, wiring) in Wiring::ALL.iter().enumerate() {
            if odds[wiring_number] <= 0.0 || !is_possible(*wiring, *arrival) {
                continue;
            }
            for path in 0..PATHS {
                let at = slots(at_box(wiring_number, path, arrival_number));
                let mut likely = odds[wiring_number];
                for signs in &signs {
                    likely *= (1.0 - MISTAKEN) * known.odds(signs, at) + MISTAKEN * signs.odds_if_mistaken();
                }
                local[place(wiring_number, path, arrival_number)] = likely;
            }
        }
    }
    let cable = dwelling.cable_to(index);
    let sight = seen_at(dwelling, index).map(|seen| sight_of(seen, cable));
    Station {
        at: index,
        parent: None,
        children: Vec::new(),
        hot: priors.hot,
        neutral: priors.neutral,
        ground: priors.ground(cable, dwelling.job.built),
        local,
        sight,
        only: None,
    }
}

/// How likely a sighting is, by all that it depends on.
pub(crate) fn sight_of(seen: GroundSeen, cable: CableKind) -> [[[f64; WIRINGS]; RUNS]; 2] {
    let is_wire = cable.has_ground_wire() || cable.ground_path() == GroundPath::No;
    let metal = !is_wire && cable != CableKind::Unknown;
    [false, true].map(|loose_beyond| {
        let mut odds = [[0.0; WIRINGS]; RUNS];
        for (run_number, run) in GroundRun::ALL.iter().enumerate() {
            for (wiring_number, wiring) in Wiring::ALL.iter().enumerate() {
                odds[run_number][wiring_number] = sighting_odds(seen, *run, *wiring, loose_beyond, metal);
            }
        }
        odds
    })
}
