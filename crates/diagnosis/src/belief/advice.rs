//! What to do next: the test whose outcome is worth the most by the minute.

use super::circuit_belief::CircuitBelief;
use super::down::{Odds, down};
use super::likely::Sum;
use super::stakes::Stakes;
use super::stations::{ARRIVALS, Local, PATHS, RUNS, Remembered, Station, Stations, WIRINGS, at_box, sight_of};
use super::test_outcome::{Outcome, Test, outcome_odds, sightings};
use super::up::{Up, up, up_again};
use dwelling::{BoxIndex, Dwelling};
use std::collections::BTreeMap;
use std::sync::Arc;

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
/// Tests that gain less are no advice, in minutes.
const LEAST_WORTH: f64 = 0.05;

/// Every test that is worth its minutes, best first: by its worth by the minute, then in the order of the boxes.
pub(crate) fn advice(dwelling: &Dwelling, circuits: &[CircuitBelief], stakes: &Stakes) -> Vec<Advice> {
    let mut known = KnownOutcomes::new();
    let mut found = Vec::new();
    for circuit in circuits {
        let stations = &circuit.stations;
        let up = up::<Sum>(stations);
        let Some(odds) = down(stations, &up) else { continue };
        let now = cost(dwelling, stations, &odds, stakes);
        if now <= LEAST_WORTH {
            continue;
        }
        let case = Case { dwelling, stations, stakes, now, up };
        for (number, odds) in odds.iter().enumerate() {
            for test in Test::ALL.iter().filter(|test| is_open(dwelling, &stations.all[number], **test)) {
                found.extend(case.worth_of(number, odds, *test, &mut known));
            }
        }
    }
    found.retain(|advice| advice.worth > LEAST_WORTH);
    found.sort_by(|left, right| right.rate().total_cmp(&left.rate()).then(left.at.cmp(&right.at)));
    found
}

/// Whether a test can be made: readings at a receptacle, a look where nobody looked yet and hands may go.
fn is_open(dwelling: &Dwelling, station: &Station, test: Test) -> bool {
    let device_box = dwelling.device_box(station.at);
    match test {
        Test::OpenBox => station.sight.is_none() && !device_box.do_not_disturb,
        _ => device_box.holds.takes_grounding_plug(),
    }
}

/// The least that acting on what is believed of a circuit is expected to cost.
pub(crate) fn cost(dwelling: &Dwelling, stations: &Stations, odds: &[Odds], stakes: &Stakes) -> f64 {
    let of_box = |(station, odds): (&Station, &Odds)| {
        let mut total = stakes.of_run(&odds.ground);
        total += Stakes::of_fault(stakes.wire, 1.0 - odds.hot[0]);
        total += Stakes::of_fault(stakes.wire, 1.0 - odds.neutral[0]);
        if dwelling.device_box(station.at).holds.is_receptacle() {
            let (ground, reversed) = of_device(&odds.local);
            total += stakes.of_ground(&ground).1 + Stakes::of_fault(stakes.polarity, reversed);
        }
        total
    };
    stations.all.iter().zip(odds).map(of_box).sum()
}

/// What its ground terminal is, in the order of [`super::Ground`], and how likely hot and neutral are reversed.
fn of_device(local: &Local) -> ([f64; 6], f64) {
    let (mut ground, mut reversed) = ([0.0; 6], 0.0);
    for (wiring, of_wiring) in local.iter().enumerate() {
        for (arrival, of_arrival) in of_wiring.iter().enumerate() {
            let odds: f64 = of_arrival.iter().sum();
            let at = at_box(wiring, arrival, 0);
            ground[at.ground() as usize] += odds;
            reversed += if at.is_reversed() { odds } else { 0.0 };
        }
    }
    (ground, reversed)
}

/// The odds of the outcomes of tests that read, remembered by the way in which the slots hang.
struct KnownOutcomes {
    ways: Remembered,
    odds: BTreeMap<Test, Vec<Vec<f64>>>,
}

impl KnownOutcomes {
    fn new() -> Self {
        Self { ways: Remembered::new(), odds: BTreeMap::new() }
    }

    /// The odds of each outcome of a test, by way.
    fn of(&mut self, test: Test) -> &[Vec<f64>] {
        let ways = self.ways.ways();
        let odds = || ways.iter().map(|slots| outcome_odds(test, *slots)).collect();
        self.odds.entry(test).or_insert_with(odds)
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

    /// How likely the device and its readings are together with one more outcome.
    fn with(&mut self, local: &Local, test: Test, outcome: usize) -> Local {
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
    /// What acting is expected to cost now.
    now: f64,
    up: Up,
}

impl Case<'_> {
    /// What a test at a box would change.
    fn worth_of(&self, number: usize, odds: &Odds, test: Test, known: &mut KnownOutcomes) -> Option<Advice> {
        let station = &self.stations.all[number];
        let mut after = self.stations.clone();
        let likely = self.likely(odds, test, known);
        let (mut outcomes, mut left, mut odds_of_all) = (Vec::new(), 0.0, 0.0);
        for (place, outcome) in test.outcomes().iter().enumerate() {
            if likely.as_ref().is_some_and(|likely| likely[place] < UNLIKELY) {
                continue;
            }
            after.all[number] = match test {
                Test::OpenBox => self.with_sighting(station, *outcome),
                _ => Station { local: Arc::new(known.with(&station.local, test, place)), ..station.clone() },
            };
            let up_after = up_again::<Sum>(&after, &self.up, number);
            let odds_of_it = match &likely {
                Some(likely) => likely[place],
                None => (up_after.log_odds::<Sum>() - self.up.log_odds::<Sum>()).exp(),
            };
            if odds_of_it < UNLIKELY {
                continue;
            }
            let Some(odds) = down(&after, &up_after) else { continue };
            let cost = cost(self.dwelling, &after, &odds, self.stakes);
            outcomes.push(Expected { outcome: *outcome, odds: odds_of_it, left: cost });
            left += odds_of_it * cost;
            odds_of_all += odds_of_it;
        }
        left += (1.0 - odds_of_all).max(0.0) * self.now;
        outcomes.sort_by(|left, right| right.odds.total_cmp(&left.odds));
        let minutes = self.stakes.minutes(test);
        let advice = Advice { at: station.at, test, minutes, worth: self.now - left, outcomes };
        (advice.outcomes.len() > 1).then_some(advice)
    }

    /// How likely each outcome of a test that reads is; nothing for a look into the box.
    fn likely(&self, odds: &Odds, test: Test, known: &mut KnownOutcomes) -> Option<Vec<f64>> {
        if test == Test::OpenBox {
            return None;
        }
        let shares = known.shares(&odds.local);
        let mut likely = vec![0.0; test.outcomes().len()];
        for (share, odds) in shares.iter().zip(known.of(test)) {
            likely.iter_mut().zip(odds).for_each(|(likely, odds)| *likely += share * odds);
        }
        Some(likely)
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
