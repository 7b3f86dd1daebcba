//! Inference held against the enumeration of all states of small random trees, by a program that shares none of its steps.

use super::best::best;
use super::down::{Odds, down};
use super::explanations::{About, explanations, to_do};
use super::likely::{Best, Sum};
use super::outlook::Outlook;
use super::stakes::Stakes;
use super::state::{Arrival, AtBox, GroundRun, Joined, WireState, Wiring};
use super::stations::{ARRIVALS, PATHS, RUNS, Station, Stations, WIRINGS, at_box, is_possible};
use super::up::up;
use dwelling::BoxIndex;
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A small generator of numbers, so that a tree follows from one seed.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 >> 33
    }

    fn below(&mut self, bound: u64) -> usize {
        usize::try_from(self.next() % bound).unwrap_or(0)
    }

    fn odds(&mut self) -> f64 {
        (f64::from(u32::try_from(self.next() % 1_000).unwrap_or(0)) + 1.0) / 1_001.0
    }

    /// Odds of so many states, of which only so many are above nought.
    fn few<const N: usize>(&mut self, above: usize) -> [f64; N] {
        let mut odds = [0.0; N];
        for _ in 0..above {
            let bound = u64::try_from(N).unwrap_or(1);
            odds[self.below(bound)] = self.odds();
        }
        odds
    }
}

fn random_tree(seed: u64) -> Stations {
    let mut dice = Dice(seed.wrapping_mul(2_654_435_761).wrapping_add(99));
    let count = 1 + dice.below(7);
    // The more boxes, the fewer states each, so that all can be counted.
    let (wires, grounds, wirings) = match (count, dice.below(2)) {
        (1, _) => (3, 6, 6),
        (2, _) => (2, 4, 6),
        (3, _) => (2, 2, 4),
        (4, _) => (1, 3, 3),
        (_, 0) => (2, 1, 1),
        _ => (1, 2, 2),
    };
    let mut all: Vec<Station> = Vec::new();
    let mut roots = Vec::new();
    for number in 0..count {
        let parent = (number > 0 && dice.below(8) > 0).then(|| dice.below(u64::try_from(number).unwrap_or(1)));
        match parent {
            Some(parent) => Arc::make_mut(&mut all[parent].children).push(number),
            None => roots.push(number),
        }
        let mut local = [[[0.0; PATHS]; ARRIVALS]; WIRINGS];
        let kinds: [f64; WIRINGS] = dice.few(wirings);
        for (wiring, kind) in Wiring::ALL.iter().enumerate().filter(|(wiring, _)| kinds[*wiring] > 0.0) {
            for (arrival, arrives) in Arrival::ALL.iter().enumerate() {
                if is_possible(*kind, *arrives) {
                    local[wiring][arrival] = [(); PATHS].map(|()| dice.odds());
                }
            }
        }
        let mut sighting = || [(); 2].map(|()| [(); RUNS].map(|()| [(); WIRINGS].map(|()| dice.odds())));
        let sight = sighting();
        let sight = (dice.below(2) == 0).then(|| Arc::new(sight));
        let (hot, neutral, ground) = (dice.few(wires), dice.few(wires), dice.few(grounds));
        let (at, is_receptacle) = (BoxIndex(number), dice.below(4) > 0);
        all.push(Station {
            at,
            is_receptacle,
            parent,
            children: Arc::default(),
            hot,
            neutral,
            ground,
            local: Arc::new(local),
            sight,
            only: None,
        });
    }
    Stations { all, roots, panel_has_ground: [0.0, 0.4, 1.0][dice.below(3)] }
}

/// One state of a whole tree: by station the places of the run's hot, neutral and ground and of the wiring, then the path and
/// the arrival that follow.
type Whole = Vec<([usize; 4], usize, usize)>;

/// Every state of the whole tree that can be, with its odds.
fn enumerate(stations: &Stations) -> Vec<(bool, Whole, f64)> {
    let mut found = Vec::new();
    for has_ground in [true, false] {
        let panel = if has_ground { stations.panel_has_ground } else { 1.0 - stations.panel_has_ground };
        if panel > 0.0 {
            extend(stations, has_ground, panel, &mut Vec::new(), &mut found);
        }
    }
    found
}

fn extend(
    stations: &Stations,
    has_ground: bool,
    odds: f64,
    so_far: &mut Vec<[usize; 4]>,
    found: &mut Vec<(bool, Whole, f64)>,
) {
    let Some(station) = stations.all.get(so_far.len()) else {
        if let Some((whole, odds)) = weigh(stations, has_ground, so_far, odds) {
            found.push((has_ground, whole, odds));
        }
        return;
    };
    for (hot, of_hot) in station.hot.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
        for (neutral, of_neutral) in station.neutral.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
            for (ground, of_ground) in station.ground.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
                for wiring in 0..WIRINGS {
                    if station.local[wiring].iter().flatten().all(|odds| *odds <= 0.0) {
                        continue;
                    }
                    so_far.push([hot, neutral, ground, wiring]);
                    extend(stations, has_ground, odds * of_hot * of_neutral * of_ground, so_far, found);
                    so_far.pop();
                }
            }
        }
    }
}

/// What follows from the states of all runs and devices, with its odds; nothing where it cannot be.
fn weigh(stations: &Stations, has_ground: bool, states: &[[usize; 4]], odds: f64) -> Option<(Whole, f64)> {
    let conducts = |number: usize| states[number][2] <= 1;
    // What each box reaches, from the panel on: 0 the panel, 1 poorly, 2 broken, 3 absent; and its bonded group.
    let (mut reach, mut group, mut path) = (Vec::new(), Vec::new(), Vec::new());
    for (number, station) in stations.all.iter().enumerate() {
        let [hot, neutral, ground, _] = states[number];
        let before = station.parent.map_or(if has_ground { 0 } else { 3 }, |parent| reach[parent]);
        reach.push(match (GroundRun::ALL[ground], before) {
            (GroundRun::Sound, before) => before,
            (GroundRun::Weak, before) => before.max(1),
            (GroundRun::Absent, _) | (_, 3) => 3,
            _ => 2,
        });
        let bonded = station.parent.filter(|_| conducts(number));
        group.push(bonded.map_or(number, |parent| group[parent]));
        let arriving = station.parent.map_or((0, 0), |parent| path[parent]);
        // What is open where a bonded group begins has all of the group behind it: state 3.
        let beyond = |before: usize, run: usize| match before.max(run) {
            2 if !conducts(number) => 3,
            state => state,
        };
        path.push((beyond(arriving.0, hot), beyond(arriving.1, neutral)));
    }
    let mut joined: BTreeMap<usize, Joined> = BTreeMap::new();
    for (number, state) in states.iter().enumerate() {
        let by = match Wiring::ALL[state[3]] {
            Wiring::NeutralJumper => Joined::Neutral,
            Wiring::ReversedJumper => Joined::Hot,
            _ => continue,
        };
        if reach[number] <= 1 {
            if by == Joined::Hot {
                return None;
            }
            continue;
        }
        if joined.insert(group[number], by).is_some_and(|other| other != by) {
            return None;
        }
    }
    let mut weight = odds;
    let mut whole = Vec::new();
    for (number, station) in stations.all.iter().enumerate() {
        let to = joined.get(&group[number]).copied().unwrap_or(Joined::Nothing);
        let arrival = match reach[number] {
            0 => Arrival::Panel,
            1 => Arrival::Weak,
            2 => Arrival::Broken(to),
            _ => Arrival::Absent(to),
        };
        let arrival = Arrival::ALL.iter().position(|one| *one == arrival)?;
        let (path, [_, _, ground, wiring]) = (path[number].0 * 4 + path[number].1, states[number]);
        let loose = station.children.iter().any(|child| GroundRun::ALL[states[*child][2]] == GroundRun::LooseBefore);
        weight *= station.local[wiring][arrival][path];
        weight *= station.sight.as_ref().map_or(1.0, |sight| sight[usize::from(loose)][ground][wiring]);
        whole.push((states[number], path, arrival));
    }
    (weight > 0.0).then_some((whole, weight))
}

/// What acting costs, and how likely all is.
fn cost(stations: &Stations, stakes: &Stakes) -> Option<(f64, f64)> {
    let up = up::<Sum>(stations);
    let odds = down(stations, &up)?;
    let of_station = |(station, odds): (&Station, &Odds)| {
        let mut total = stakes.of_broken(odds.ground[2] + odds.ground[3], odds.ground[4]);
        total +=
            Stakes::of_fault(stakes.wire, 1.0 - odds.hot[0]) + Stakes::of_fault(stakes.wire, 1.0 - odds.neutral[0]);
        if station.is_receptacle {
            let (mut ground, mut reversed) = ([0.0; 6], 0.0);
            for (wiring, of_wiring) in odds.local.iter().enumerate() {
                for (arrival, of_arrival) in of_wiring.iter().enumerate() {
                    let at = at_box(wiring, arrival, 0);
                    let odds: f64 = of_arrival.iter().sum();
                    ground[at.ground() as usize] += odds;
                    reversed += if at.is_reversed() { odds } else { 0.0 };
                }
            }
            total += stakes.of_ground(&ground).1 + Stakes::of_fault(stakes.polarity, reversed);
        }
        total
    };
    let total = stations.all.iter().zip(&odds).map(of_station).sum();
    Some((total, up.log_odds::<Sum>().exp()))
}

fn close(left: f64, right: f64) -> bool {
    (left - right).abs() <= 1e-9 * right.abs().max(1.0)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, ..ProptestConfig::default() })]

    /// By hand: the share of a state among all states is what inference says of it.
    #[test]
    fn the_odds_are_those_of_all_states_counted(seed in any::<u64>()) {
        let stations = random_tree(seed);
        let all = enumerate(&stations);
        let total: f64 = all.iter().map(|(_, _, odds)| odds).sum();
        let up = up::<Sum>(&stations);
        let said = up.total::<Sum>() * up.scale.exp();
        prop_assert!((said - total).abs() <= 1e-9 * total, "{said} and {total}");
        let Some(odds) = down(&stations, &up) else {
            prop_assert!(all.is_empty());
            return Ok(());
        };
        for (number, odds) in odds.iter().enumerate() {
            let (mut hot, mut neutral, mut ground) = ([0.0; 3], [0.0; 3], [0.0; 6]);
            let mut local = [[[0.0; PATHS]; ARRIVALS]; WIRINGS];
            for (_, whole, weight) in &all {
                let (states, path, arrival) = whole[number];
                hot[states[0]] += weight / total;
                neutral[states[1]] += weight / total;
                ground[states[2]] += weight / total;
                local[states[3]][arrival][path] += weight / total;
            }
            prop_assert!(hot.iter().zip(odds.hot).all(|(counted, said)| close(said, *counted)));
            prop_assert!(neutral.iter().zip(odds.neutral).all(|(counted, said)| close(said, *counted)));
            prop_assert!(ground.iter().zip(odds.ground).all(|(counted, said)| close(said, *counted)));
            prop_assert!(local.iter().flatten().flatten().zip(odds.local.iter().flatten().flatten()).all(|(counted, said)| close(*said, *counted)));
        }
    }

    /// By hand: the likeliest of all states, and after it the likeliest of those that ask for other work, and so on; each
    /// work's share of all states added up.
    /// By the way up and the way down of the whole tree, which are held against the enumeration above.
    #[test]
    fn what_acting_costs_after_one_more_finding_is_what_it_costs_in_a_tree_with_it(seed in any::<u64>()) {
        let stations = random_tree(seed);
        let stakes = Stakes::default();
        let Some((now, all)) = cost(&stations, &stakes) else { return Ok(()) };
        let outlook = Outlook::of(&stations, &stakes, 0.0);
        prop_assert!(close(outlook.now, now), "{} and {now}", outlook.now);
        let others = random_tree(seed ^ 0x5555);
        for number in 0..stations.all.len() {
            let mut after = stations.clone();
            let other = &others.all[number % others.all.len()];
            // Readings that were taken, or a look into a box.
            after.all[number].local = other.local.clone();
            if let Some(sight) = &other.sight {
                after.all[number] = Station { sight: Some(sight.clone()), ..stations.all[number].clone() };
            }
            match (outlook.with(number, &after.all[number], 0.0), cost(&after, &stakes)) {
                (Some((odds, said)), Some((counted, after))) => {
                    prop_assert!(close(odds, after / all), "{odds} and {}", after / all);
                    prop_assert!(close(said, counted), "{said} and {counted}");
                }
                (said, counted) => prop_assert!(said.is_none() && counted.is_none(), "{said:?} and {counted:?}"),
            }
        }
    }

    #[test]
    fn the_explanations_are_the_likeliest_of_all_states(seed in any::<u64>(), everything in any::<bool>()) {
        let about = if everything { About::Everything } else { About::Ground };
        let stations = random_tree(seed);
        let all = enumerate(&stations);
        let total: f64 = all.iter().map(|(_, _, odds)| odds).sum();
        let mut by_work: BTreeMap<Vec<_>, (f64, f64)> = BTreeMap::new();
        for (_, whole, odds) in &all {
            let work = whole.iter().zip(&stations.all).map(|((states, path, arrival), station)| {
                let state = |state: usize| WireState::ALL[state.min(2)];
                let at = AtBox {
                    hot: state(path / 4),
                    neutral: state(path % 4),
                    arrival: Arrival::ALL[*arrival],
                    is_alone: path / 4 == 3 || path % 4 == 3,
                    wiring: Wiring::ALL[states[3]],
                };
                to_do(about, station.is_receptacle, GroundRun::ALL[states[2]], at)
            });
            let (best, share) = by_work.entry(work.collect()).or_insert((0.0, 0.0));
            *best = best.max(*odds);
            *share += odds / total;
        }
        let mut counted: Vec<f64> = by_work.values().map(|(best, _)| *best).collect();
        counted.sort_by(|left, right| right.total_cmp(left));
        let said = explanations(&stations, about, 4);
        prop_assert_eq!(said.len(), counted.len().min(4));
        for (said, counted) in said.iter().zip(&counted) {
            prop_assert!(close(said.log_odds, counted.ln()), "{} and {}", said.log_odds, counted.ln());
            let whole = said.boxes.iter().zip(&stations.all);
            let whole: Vec<_> =
                whole.map(|(one, station)| to_do(about, station.is_receptacle, one.ground, one.state)).collect();
            let (best, share) = by_work[&whole];
            prop_assert!(close(best.ln(), said.log_odds));
            prop_assert!(close(said.share, share), "{} and {}", said.share, share);
        }
        if let Some((log_odds, ..)) = best(&stations, &up::<Best>(&stations)) {
            prop_assert!(close(log_odds, counted[0].ln()));
        }
    }
}
