//! The next step of a search that opens the fewest boxes: a reading while it saves more than it takes, then the likeliest box;
//! and after some boxes opened in vain, one after the other from the panel.

use super::advice::{KnownOutcomes, is_open};
use super::circuit_belief::CircuitBelief;
use super::down::{Odds, down};
use super::likely::Sum;
use super::stakes::Stakes;
use super::state::{GroundRun, Wiring};
use super::stations::{Station, Stations};
use super::test_outcome::Test;
use super::up::{Up, up, up_again};
use dwelling::{BoxIndex, Dwelling};
use std::collections::BTreeSet;
use std::sync::Arc;

/// So many boxes may be opened in vain by what is likely; then walking from the panel is no worse than that by more.
pub const MOST_IN_VAIN: usize = 3;

/// What a minute of reading counts beside a minute of opening, which draws out devices and may break old insulation. Common
/// practice, no source.
const READING: f64 = 0.3;
/// Readings are weighed at so many boxes: the likeliest to show the fault, and those that they feed.
const MOST_BOXES: usize = 12;
/// A box that shows the fault less often than this is not looked for among all others.
const HARDLY: f64 = 1e-6;
/// Outcomes that are less likely are not followed up.
const UNLIKELY: f64 = 1e-4;

impl CircuitBelief {
    /// How likely each box shows an interrupted ground or a jumper to whoever opens it, in the order of [`Self::boxes`].
    #[must_use]
    pub fn shows_fault(&self) -> Vec<f64> {
        let stations = &self.stations;
        let mut shows = vec![0.0; self.boxes.len()];
        for (number, belief) in self.boxes.iter().enumerate() {
            let parent = stations.all[number].parent;
            add_shown(&mut shows, number, parent, &belief.run.ground, &belief.wiring);
        }
        shows.iter_mut().for_each(|odds: &mut f64| *odds = odds.min(1.0));
        shows
    }

    /// What to do next to find where the ground is interrupted or joined with the fewest boxes opened, after these steps; nothing
    /// where every box was opened, or none shows it. What was done is not asked for again.
    ///
    /// Never opens more boxes than walking from the panel does and [`MOST_IN_VAIN`]: so many by what is likely, then in the
    /// order of feeding.
    #[must_use]
    pub fn step_to_fault(
        &self,
        dwelling: &Dwelling,
        stakes: &Stakes,
        so_far: &BTreeSet<(BoxIndex, Test)>,
    ) -> Option<(BoxIndex, Test)> {
        let closed = |number: &usize| is_open(dwelling, self, *number, Test::OpenBox);
        let in_vain = so_far.iter().filter(|(_, test)| *test == Test::OpenBox).count();
        if in_vain >= MOST_IN_VAIN {
            return self.next_from_panel(dwelling).map(|at| (at, Test::OpenBox));
        }
        let shows = self.shows_fault();
        let now = expected(&self.stations, &shows)?;
        let saves =
            |test: Test, after: f64| (now - after) * stakes.minutes(Test::OpenBox) - READING * stakes.minutes(test);
        let known = KnownOutcomes::new();
        let before = up::<Sum>(&self.stations);
        let odds = down(&self.stations, &before)?;
        let mut best: Option<(f64, usize, Test)> = None;
        for number in self.near(&shows) {
            for test in Test::ALL.iter().filter(|test| **test != Test::OpenBox) {
                if !is_open(dwelling, self, number, *test) || so_far.contains(&(self.stations.all[number].at, *test)) {
                    continue;
                }
                let after = self.after(number, *test, &known, &before, &odds[number], now);
                let saved = saves(*test, after);
                if saved > best.map_or(0.0, |(saved, ..)| saved) {
                    best = Some((saved, number, *test));
                }
            }
        }
        if let Some((_, number, test)) = best {
            return Some((self.stations.all[number].at, test));
        }
        let likeliest = (0..shows.len()).filter(closed).max_by(|one, other| {
            let by_odds = shows[*one].total_cmp(&shows[*other]);
            by_odds.then(other.cmp(one))
        });
        likeliest.map(|number| (self.stations.all[number].at, Test::OpenBox))
    }

    /// The first unopened box in the order of feeding; of several the one that stands first in the survey.
    fn next_from_panel(&self, dwelling: &Dwelling) -> Option<BoxIndex> {
        let closed = (0..self.boxes.len()).filter(|number| is_open(dwelling, self, *number, Test::OpenBox));
        let is_next = |number: &usize| {
            let parent = self.stations.all[*number].parent;
            parent.is_none_or(|parent| !is_open(dwelling, self, parent, Test::OpenBox))
        };
        closed.filter(is_next).map(|number| self.stations.all[number].at).min()
    }

    /// The boxes at which a reading may tell most: those that likely show the fault, and those that they feed.
    fn near(&self, shows: &[f64]) -> Vec<usize> {
        let mut likely: Vec<usize> = (0..shows.len()).filter(|number| shows[*number] > HARDLY).collect();
        likely.sort_by(|one, other| shows[*other].total_cmp(&shows[*one]).then(one.cmp(other)));
        let mut near = Vec::new();
        for number in likely {
            for one in std::iter::once(number).chain(self.stations.all[number].children.iter().copied()) {
                if near.len() < MOST_BOXES && !near.contains(&one) {
                    near.push(one);
                }
            }
        }
        near.sort_unstable();
        near
    }

    /// How many boxes are expected to be opened after a reading.
    fn after(&self, number: usize, test: Test, known: &KnownOutcomes, before: &Up, odds: &Odds, now: f64) -> f64 {
        let mut stations = self.stations.clone();
        let (mut sum, mut whole) = (0.0, 0.0);
        for (outcome, likely) in known.likely(&odds.local, test).into_iter().enumerate() {
            if likely < UNLIKELY {
                continue;
            }
            let station = &self.stations.all[number];
            stations.all[number] =
                Station { local: Arc::new(known.with(&station.local, test, outcome)), ..station.clone() };
            let Some(then) = down(&stations, &up_again::<Sum>(&stations, before, number)) else { continue };
            let mut shows = vec![0.0; then.len()];
            for (number, odds) in then.iter().enumerate() {
                let wiring = odds.local.map(|of_wiring| of_wiring.iter().flatten().sum());
                add_shown(&mut shows, number, stations.all[number].parent, &odds.ground, &wiring);
            }
            // Taken that there is a fault, an outcome is as much likelier as it makes one.
            let one_shows = of_closed(&stations, &shows).sum::<f64>();
            sum += likely * one_shows * expected(&stations, &shows).unwrap_or(now);
            whole += likely * one_shows;
        }
        if whole > 0.0 { sum / whole } else { now }
    }
}

/// How likely each unopened box shows the fault.
fn of_closed(stations: &Stations, shows: &[f64]) -> impl Iterator<Item = f64> {
    stations.all.iter().zip(shows).filter(|(station, _)| station.sight.is_none()).map(|(_, odds)| *odds)
}

fn add_shown(shows: &mut [f64], number: usize, parent: Option<usize>, ground: &[f64; 6], wiring: &[f64; 6]) {
    shows[number] += ground[GroundRun::LooseHere as usize] + ground[GroundRun::CutOffHere as usize];
    shows[number] += wiring[Wiring::NeutralJumper as usize] + wiring[Wiring::ReversedJumper as usize];
    if let Some(parent) = parent {
        shows[parent] += ground[GroundRun::LooseBefore as usize];
    }
}

/// How many unopened boxes are opened on average, the likeliest first, until one shows the fault; taken that one does.
fn expected(stations: &Stations, shows: &[f64]) -> Option<f64> {
    let mut odds: Vec<f64> = of_closed(stations, shows).collect();
    odds.sort_by(|one, other| other.total_cmp(one));
    let whole: f64 = odds.iter().sum();
    let places = odds.iter().enumerate().map(|(place, odds)| (place + 1) as f64 * odds / whole);
    (whole > 0.0).then(|| places.sum())
}
