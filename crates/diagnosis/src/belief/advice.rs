//! What to do next: the test whose outcome is worth the most by the minute.

use super::circuit_belief::CircuitBelief;
use super::down::{Odds, down};
use super::likely::Sum;
use super::meter_odds::Draws;
use super::outlook::Outlook;
use super::stakes::Stakes;
use super::state::{Arrival, AtBox, GroundRun, WireState, Wiring};
use super::stations::{ARRIVALS, Local, PATHS, RUNS, Remembered, STATES, Station, Stations, WIRINGS, sight_of};
use super::test_outcome::{Outcome, Test, outcome_odds, sightings};
use super::up::up;
use dwelling::{BoxIndex, Dwelling};
use std::sync::{Arc, OnceLock};

/// A test with what it is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// Where.
    pub at: BoxIndex,
    /// What.
    pub test: Test,
    /// How long it takes.
    pub minutes: f64,
    /// By how much the expected cost of acting wrongly falls, in the minutes that [`Stakes`] counts.
    pub worth: f64,
    /// What may come out, likeliest first.
    pub outcomes: Vec<Expected>,
}

/// An outcome that a test may have.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// It.
    pub outcome: Outcome,
    /// How likely it is.
    pub odds: f64,
    /// What acting would still be expected to cost then.
    pub left: f64,
}

impl Advice {
    /// What it is worth by the minute.
    #[must_use]
    pub fn rate(&self) -> f64 {
        self.worth / self.minutes
    }
}

/// Outcomes that are less likely are not followed up: they count as if they changed nothing.
const UNLIKELY: f64 = 1e-3;
/// Where an outcome changes the odds of what arrives at a station by less in all, what lies beyond is not weighed again: worths are
/// off by some thousandths of a minute at most.
const LEAST_CHANGE: f64 = 1e-6;
/// Tests that gain less are no advice, in minutes.
const LEAST_WORTH: f64 = 0.05;

/// Every test that is worth its minutes, best first: by its worth by the minute, then in the order of the boxes.
pub(crate) fn advice(dwelling: &Dwelling, circuits: &[CircuitBelief], stakes: &Stakes) -> Vec<Advice> {
    let known = KnownOutcomes::new();
    let mut found = Vec::new();
    for circuit in circuits {
        let stations = &circuit.stations;
        let Some(odds) = down(stations, &up::<Sum>(stations)) else { continue };
        let outlook = Outlook::of(stations, stakes, LEAST_CHANGE);
        if outlook.now <= LEAST_WORTH {
            continue;
        }
        let case = Case { dwelling, stations, stakes, outlook, odds };
        for number in 0..stations.all.len() {
            for test in Test::ALL.iter().filter(|test| is_open(dwelling, circuit, number, **test)) {
                found.extend(case.worth_of(number, *test, &known));
            }
        }
    }
    found.retain(|advice| advice.worth > LEAST_WORTH);
    found.sort_by(|left, right| right.rate().total_cmp(&left.rate()).then(left.at.cmp(&right.at)));
    found
}

/// Whether a test can be made and was not: readings at a receptacle, a look where nobody looked yet and hands may go. A
/// set of readings at a box where one is rather wrong than right may be taken again.
pub(crate) fn is_open(dwelling: &Dwelling, circuit: &CircuitBelief, number: usize, test: Test) -> bool {
    let station = &circuit.stations.all[number];
    let device_box = dwelling.device_box(station.at);
    match test {
        Test::OpenBox => station.sight.is_none() && !device_box.do_not_disturb,
        _ => {
            let is_doubted =
                circuit.boxes.get(number).is_some_and(|belief| belief.mistaken.iter().any(|odds| *odds >= 0.5));
            let is_made = device_box.found.iter().any(|reading| test.is_made_by(reading));
            device_box.holds.takes_grounding_plug() && (is_doubted || !is_made)
        }
    }
}

/// The odds of the outcomes of tests that read, by the way in which the slots hang.
pub(crate) struct KnownOutcomes {
    ways: Remembered,
}

impl KnownOutcomes {
    pub(crate) fn new() -> Self {
        Self { ways: Remembered::new(Draws::Much) }
    }

    /// The odds of each outcome of a test, by way: the same for every dwelling, so they are found once.
    fn of(&self, test: Test) -> &'static [Vec<f64>] {
        static ODDS: OnceLock<Vec<Vec<Vec<f64>>>> = OnceLock::new();
        let of_test = |test: &Test| self.ways.ways().iter().map(|slots| outcome_odds(*test, *slots)).collect();
        &ODDS.get_or_init(|| Test::ALL.iter().map(of_test).collect())[test as usize]
    }

    /// The odds of each outcome of a test where this is true.
    pub(crate) fn at(&self, test: Test, at: AtBox) -> &'static [f64] {
        let arrival = Arrival::ALL.iter().position(|one| *one == at.arrival).unwrap_or(0);
        let alone = |state: WireState| usize::from(at.is_alone && state == WireState::Open);
        let [hot, neutral] = [at.hot, at.neutral].map(|state| state as usize + alone(state));
        let path = hot * STATES + neutral;
        &self.of(test)[self.ways.way_of(at.wiring as usize, arrival, path)]
    }

    /// Calls with every state of a device and its way.
    fn each_state(ways: &Remembered, mut call: impl FnMut([usize; 3], usize)) {
        for wiring in 0..WIRINGS {
            for arrival in 0..ARRIVALS {
                for path in 0..PATHS {
                    call([wiring, arrival, path], ways.way_of(wiring, arrival, path));
                }
            }
        }
    }

    /// How likely each way is.
    fn shares(&self, local: &Local) -> Vec<f64> {
        let mut shares = vec![0.0; self.ways.ways().len()];
        Self::each_state(&self.ways, |[wiring, arrival, path], way| shares[way] += local[wiring][arrival][path]);
        shares
    }

    /// How likely each outcome of a test that reads is.
    pub(crate) fn likely(&self, local: &Local, test: Test) -> Vec<f64> {
        let mut likely = vec![0.0; test.outcomes().len()];
        for (share, odds) in self.shares(local).iter().zip(self.of(test)) {
            likely.iter_mut().zip(odds).for_each(|(likely, odds)| *likely += share * odds);
        }
        likely
    }

    /// How likely the device and its readings are together with one more outcome.
    pub(crate) fn with(&self, local: &Local, test: Test, outcome: usize) -> Local {
        let odds: Vec<f64> = self.of(test).iter().map(|odds| odds[outcome]).collect();
        let mut with = *local;
        Self::each_state(&self.ways, |[wiring, arrival, path], way| with[wiring][arrival][path] *= odds[way]);
        with
    }
}

/// A circuit as it is believed.
struct Case<'a> {
    dwelling: &'a Dwelling,
    stations: &'a Stations,
    stakes: &'a Stakes,
    /// What acting costs now, and after one more finding.
    outlook: Outlook<'a>,
    odds: Vec<Odds>,
}

impl Case<'_> {
    /// What a test at a box would change.
    fn worth_of(&self, number: usize, test: Test, known: &KnownOutcomes) -> Option<Advice> {
        let station = &self.stations.all[number];
        let likely = self.likely(&self.odds[number], test, known);
        let now = self.outlook.now;
        let (mut outcomes, mut left, mut odds_of_all) = (Vec::new(), 0.0, 0.0);
        for (place, outcome) in test.outcomes().iter().enumerate() {
            if likely.as_ref().is_some_and(|likely| likely[place] < UNLIKELY) {
                continue;
            }
            let after = match test {
                Test::OpenBox => self.with_sighting(station, *outcome),
                _ => Station { local: Arc::new(known.with(&station.local, test, place)), ..station.clone() },
            };
            let least = if likely.is_some() { 0.0 } else { UNLIKELY };
            let Some((odds, cost)) = self.outlook.with(number, &after, least) else { continue };
            let odds = likely.as_ref().map_or(odds, |likely| likely[place]);
            outcomes.push(Expected { outcome: *outcome, odds, left: cost });
            left += odds * cost;
            odds_of_all += odds;
        }
        left += (1.0 - odds_of_all).max(0.0) * now;
        outcomes.sort_by(|left, right| right.odds.total_cmp(&left.odds));
        let minutes = self.stakes.minutes_beside_work(test, self.to_be_opened(number));
        let advice = Advice { at: station.at, test, minutes, worth: now - left, outcomes };
        (advice.outcomes.len() > 1).then_some(advice)
    }

    /// How likely a box has to be opened for the work on its ground anyway: at most, taking what asks for it to exclude
    /// each other.
    fn to_be_opened(&self, number: usize) -> f64 {
        let station = &self.stations.all[number];
        let of_run = |number: usize, run: GroundRun| self.odds[number].ground[run as usize];
        let mut odds = of_run(number, GroundRun::LooseHere) + of_run(number, GroundRun::CutOffHere);
        odds += station.children.iter().map(|child| of_run(*child, GroundRun::LooseBefore)).sum::<f64>();
        if station.is_receptacle {
            let is_right = |wiring: Wiring| matches!(wiring, Wiring::Right | Wiring::HotNeutralReversed);
            let wirings =
                self.odds[number].local.iter().zip(Wiring::ALL.iter()).filter(|(_, wiring)| !is_right(**wiring));
            odds += wirings.flat_map(|(of_wiring, _)| of_wiring.iter().flatten()).sum::<f64>();
        }
        odds.min(1.0)
    }

    /// How likely each outcome of a test that reads is; nothing for a look into the box.
    fn likely(&self, odds: &Odds, test: Test, known: &KnownOutcomes) -> Option<Vec<f64>> {
        if test == Test::OpenBox {
            return None;
        }
        Some(known.likely(&odds.local, test))
    }

    /// A station after a look into its box.
    fn with_sighting(&self, station: &Station, outcome: Outcome) -> Station {
        let cable = self.dwelling.cable_to(station.at);
        let mut sight = [[[0.0; WIRINGS]; RUNS]; 2];
        for seen in sightings(outcome) {
            let of_one = sight_of(*seen, cable);
            for (to, from) in sight.iter_mut().flatten().flatten().zip(of_one.iter().flatten().flatten()) {
                *to += from;
            }
        }
        Station { sight: Some(Arc::new(sight)), ..station.clone() }
    }
}
