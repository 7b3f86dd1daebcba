//! A circuit's tree as inference sees it: each box with what is likely of its run, and how likely what was found there is.

use super::meter_odds::Draws;
use super::priors::Priors;
use super::reading_odds::{Foreseen, MISTAKEN, Signs};
use super::sighting_odds::{allowing_mistakes, odds_if_misseen, sighting_odds};
use super::state::{Arrival, AtBox, GroundRun, Joined, WireState, Wiring};
use super::terminals::{Slots, slots};
use dwelling::{BoxIndex, CableKind, CircuitTree, Dwelling, Feed, GroundSeen};
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

/// States of the path of one conductor: sound, high resistance, open, and open with all of the bonded group behind the break.
pub(crate) const STATES: usize = 4;
/// Pairs of the states of hot and neutral, hot first.
pub(crate) const PATHS: usize = STATES * STATES;
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
    pub(crate) children: Arc<Vec<usize>>,
    /// Whether something can be plugged in here.
    pub(crate) is_receptacle: bool,
    /// The odds of its run's hot conductor, neutral and ground.
    pub(crate) hot: [f64; 3],
    pub(crate) neutral: [f64; 3],
    pub(crate) ground: [f64; RUNS],
    /// How likely the device and its readings are.
    pub(crate) local: Arc<Local>,
    /// How likely what was seen in the box is: by whether a run beyond is loose here, by its own run, by wiring.
    pub(crate) sight: Option<Arc<Sight>>,
    /// What can be true here at all, where a question restricts it: by run, wiring, arrival and path, 1 or 0.
    pub(crate) only: Option<Arc<[Local; RUNS]>>,
}

/// Odds by a device's wiring, the ground that arrives, and the path.
pub(crate) type Local = [[[f64; PATHS]; ARRIVALS]; WIRINGS];

/// Odds of a sighting, by whether a run beyond is loose in the box, by its own run, by the device's wiring.
pub(crate) type Sight = [[[f64; WIRINGS]; RUNS]; 2];

impl Station {
    /// How likely a wiring with all that was found here is, by path, where the run's ground is such, a run beyond is loose in
    /// this box or not, and this arrives.
    pub(crate) fn odds(&self, run: usize, loose: usize, wiring: usize, arrival: usize) -> [f64; PATHS] {
        let mut odds = self.local[wiring][arrival];
        if let Some(sight) = &self.sight {
            let seen = sight[loose][run][wiring];
            odds.iter_mut().for_each(|odds| *odds *= seen);
        }
        if let Some(only) = &self.only {
            odds.iter_mut().zip(&only[run][wiring][arrival]).for_each(|(odds, only)| *odds *= only);
        }
        odds
    }

    /// How many cases of a run beyond that is or is not loose in this box are told apart: where nobody looked, none are.
    pub(crate) const fn loose_matters(&self) -> usize {
        if self.sight.is_some() { 2 } else { 1 }
    }
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

/// What is true at a box, by the places in the lists of states.
pub(crate) fn at_box(wiring: usize, arrival: usize, path: usize) -> AtBox {
    let state = |state: usize| WireState::ALL.get(state).copied().unwrap_or(WireState::Open);
    let (hot, neutral) = (path / STATES, path % STATES);
    AtBox {
        hot: state(hot),
        neutral: state(neutral),
        arrival: Arrival::ALL[arrival],
        is_alone: hot == OPEN_ALONE || neutral == OPEN_ALONE,
        wiring: Wiring::ALL[wiring],
    }
}

/// Open, with all of the bonded group behind the break.
const OPEN_ALONE: usize = 3;

/// Whether a device so wired can be in a box where this arrives: a jumper joins what it is bonded to, and a hot conductor
/// that meets a path to the panel opens the breaker.
pub(crate) fn is_possible(wiring: Wiring, arrival: Arrival) -> bool {
    match wiring {
        Wiring::NeutralJumper => arrival.reaches() || arrival.joined() == Joined::Neutral,
        Wiring::ReversedJumper => arrival.joined() == Joined::Hot,
        _ => true,
    }
}

/// The different ways in which the slots of an opening can hang.
#[derive(Debug)]
struct Ways {
    all: Vec<Slots>,
    /// What is foreseen of each.
    foreseen: Vec<Foreseen>,
    /// Which of them each state of a device and what arrives makes.
    of: [[[usize; PATHS]; ARRIVALS]; WIRINGS],
}

impl Ways {
    /// All ways: the same for every dwelling, so they are found once.
    fn get() -> &'static Self {
        static WAYS: OnceLock<Ways> = OnceLock::new();
        WAYS.get_or_init(|| {
            let mut number: BTreeMap<Slots, usize> = BTreeMap::new();
            let mut all = Vec::new();
            let mut of = [[[0; PATHS]; ARRIVALS]; WIRINGS];
            for (wiring, of_wiring) in of.iter_mut().enumerate() {
                for (arrival, of_arrival) in of_wiring.iter_mut().enumerate() {
                    for (path, way) in of_arrival.iter_mut().enumerate() {
                        let slots = slots(at_box(wiring, arrival, path));
                        *way = *number.entry(slots).or_insert_with(|| {
                            all.push(slots);
                            all.len() - 1
                        });
                    }
                }
            }
            let foreseen = all.iter().map(|slots| Foreseen::of(*slots)).collect();
            Self { all, foreseen, of }
        })
    }
}

/// Every different way in which the slots of an opening can hang.
#[must_use]
pub fn ways() -> &'static [Slots] {
    &Ways::get().all
}

/// How likely sets of readings are, remembered: most boxes of a dwelling read like others.
#[derive(Debug)]
pub(crate) struct Remembered {
    ways: &'static Ways,
    /// With which kind of meter sets were taken of which nobody wrote it down.
    unwritten: Draws,
    /// The odds of each set of readings, by the way in which the slots hang.
    odds: BTreeMap<Signs, Vec<f64>>,
}

impl Remembered {
    /// Nothing remembered yet.
    pub(crate) fn new(unwritten: Draws) -> Self {
        Self { ways: Ways::get(), unwritten, odds: BTreeMap::new() }
    }

    /// The different ways in which slots hang.
    pub(crate) fn ways(&self) -> &[Slots] {
        &self.ways.all
    }

    /// The way in which the slots hang, by a device's wiring, the ground that arrives, and the path.
    pub(crate) const fn way_of(&self, wiring: usize, arrival: usize, path: usize) -> usize {
        self.ways.of[wiring][arrival][path]
    }

    /// The odds of a set of readings, by the way in which the slots hang.
    pub(crate) fn odds(&mut self, signs: &Signs) -> &[f64] {
        if !self.odds.contains_key(signs) {
            let ways = self.ways.all.iter().zip(&self.ways.foreseen);
            let taken = signs.taken_with(self.unwritten);
            let odds = ways.map(|(slots, foreseen)| taken.odds(*slots, foreseen)).collect();
            self.odds.insert(signs.clone(), odds);
        }
        self.odds.get(signs).map_or(&[], Vec::as_slice)
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
            let parent = match dwelling.device_box(*index).known_feed() {
                Some(Feed::Box(parent)) => number.get(&parent).copied(),
                _ => None,
            };
            match parent {
                Some(parent) => {
                    all[at].parent = Some(parent);
                    Arc::make_mut(&mut all[parent].children).push(at);
                }
                None => roots.push(at),
            }
        }
        let panel_has_ground = priors.panel_has_ground(dwelling.panel(tree.panel).ground_bar);
        Self { all, roots, panel_has_ground }
    }
}

fn station(dwelling: &Dwelling, index: BoxIndex, priors: &Priors, known: &mut Remembered) -> Station {
    let local = local_trusting(dwelling, index, priors, known, None);
    let cable = dwelling.cable_to(index);
    let sight = seen_at(dwelling, index).map(|seen| sight_of(seen, cable));
    Station {
        at: index,
        is_receptacle: dwelling.device_box(index).holds.is_receptacle(),
        parent: None,
        children: Arc::default(),
        hot: priors.hot,
        neutral: priors.neutral,
        ground: priors.ground(cable, dwelling.job.built),
        local: Arc::new(local),
        sight: sight.map(Arc::new),
        only: None,
    }
}

/// How likely each wiring of a device is with all its readings, by the path and arrival; of these, one set may be taken for
/// right.
pub(crate) fn local_trusting(
    dwelling: &Dwelling,
    index: BoxIndex,
    priors: &Priors,
    known: &mut Remembered,
    trusted: Option<usize>,
) -> Local {
    let mut likely = vec![1.0; known.ways().len()];
    for (set, signs) in signs_at(dwelling, index).into_iter().enumerate() {
        let if_wrong = if trusted == Some(set) { 0.0 } else { MISTAKEN * signs.odds_if_mistaken() };
        let odds = known.odds(&signs);
        likely.iter_mut().zip(odds).for_each(|(likely, odds)| *likely *= (1.0 - MISTAKEN) * odds + if_wrong);
    }
    let holds = dwelling.device_box(index).holds;
    let mut local = [[[0.0; PATHS]; ARRIVALS]; WIRINGS];
    for (arrival, arrives) in Arrival::ALL.iter().enumerate() {
        let odds = priors.wiring(holds, *arrives);
        for (wiring, kind) in Wiring::ALL.iter().enumerate() {
            if odds[wiring] <= 0.0 || !is_possible(*kind, *arrives) {
                continue;
            }
            for (path, local) in local[wiring][arrival].iter_mut().enumerate() {
                *local = odds[wiring] * likely[known.way_of(wiring, arrival, path)];
            }
        }
    }
    local
}

/// How likely a sighting is, by all that it depends on.
pub(crate) fn sight_of(seen: GroundSeen, cable: CableKind) -> Sight {
    [false, true].map(|loose_beyond| {
        let mut odds = [[0.0; WIRINGS]; RUNS];
        for (run_number, run) in GroundRun::ALL.iter().enumerate() {
            for (wiring_number, wiring) in Wiring::ALL.iter().enumerate() {
                let seen = sighting_odds(seen, cable, *run, *wiring, loose_beyond);
                odds[run_number][wiring_number] = allowing_mistakes(seen);
            }
        }
        odds
    })
}

/// The same where the sighting is right.
pub(crate) fn sight_trusted(seen: GroundSeen, cable: CableKind) -> Sight {
    let mut odds = sight_of(seen, cable);
    odds.iter_mut().flatten().flatten().for_each(|odds| *odds -= odds_if_misseen());
    odds
}
