//! The least boxes that any search could open: with every reading there is, and knowing that there is one fault of this kind.

use crate::chance::Chance;
use crate::searching::{Fault, Scene};
use crate::visit::tested_at;
use diagnosis::belief::{BoxFactors, Factors, GroundRun, Priors, Test, Wiring, believe};
use dwelling::BoxIndex;
use std::collections::BTreeMap;

/// Where the fault may be, with what is asked of the odds for that.
struct Guess {
    /// The box that shows it.
    seen_in: usize,
    factors: Factors,
}

/// How many boxes the best search of all is expected to open on the circuit that [`crate::searched`] draws from this seed.
///
/// It makes every test that opens nothing at every opening, which costs no box, and knows that there is one fault of this kind
/// that shows. What is seen in a box without the fault says nothing of where it is; so nobody can do better than to open the
/// likeliest box first, then the next.
#[must_use]
pub fn least_opened(seed: u64, fault: Fault, boxes: usize, priors: &Priors) -> Option<f64> {
    let mut chance = Chance::new(seed);
    let mut scene = (0..1_000).find_map(|_| Scene::drawn(fault, boxes, priors, &mut chance))?;
    for number in 0..scene.dwelling.boxes.len() {
        if !scene.dwelling.boxes[number].holds.takes_grounding_plug() {
            continue;
        }
        for test in [Test::Pairs, Test::UnderLoad, Test::ToEarth, Test::Impedance] {
            let reading = tested_at(&scene.layout, &scene.truth, number, test, &mut chance).ok()?;
            scene.dwelling.boxes[number].found.push(reading);
        }
    }
    let mut logs: Vec<(usize, f64)> = Vec::new();
    for circuit in &believe(&scene.dwelling, priors).circuits {
        let at: Vec<BoxIndex> = circuit.boxes.iter().map(|belief| belief.at).collect();
        for guess in guesses(fault, &circuit.factors()) {
            let log = guess.factors.log_odds();
            logs.extend(at.get(guess.seen_in).zip(log).map(|(at, log)| (at.0, log)));
        }
    }
    let greatest = logs.iter().fold(f64::NEG_INFINITY, |greatest, (_, log)| greatest.max(*log));
    let mut odds: BTreeMap<usize, f64> = BTreeMap::new();
    logs.iter().for_each(|(at, log)| *odds.entry(*at).or_default() += (log - greatest).exp());
    let total: f64 = odds.values().sum();
    let mut shares: Vec<f64> = odds.values().map(|odds| odds / total).collect();
    shares.sort_by(|one, other| other.total_cmp(one));
    (total > 0.0).then(|| shares.iter().enumerate().map(|(at, share)| (at + 1) as f64 * share).sum())
}

fn guesses(fault: Fault, factors: &Factors) -> Vec<Guess> {
    let mut found = Vec::new();
    for (number, one) in factors.boxes.iter().enumerate() {
        let with = |change: &dyn Fn(&mut BoxFactors)| {
            let mut factors = factors.clone();
            for (other, one) in factors.boxes.iter_mut().enumerate() {
                if other == number { change(one) } else { sound(one) }
            }
            factors
        };
        match fault {
            Fault::Jumper => {
                let factors = with(&|one| {
                    without_breaks(one);
                    only_jumpers(one);
                });
                found.push(Guess { seen_in: number, factors });
            }
            Fault::Interrupted => {
                for end in BREAKS {
                    let seen_in = if end == GroundRun::LooseBefore { one.fed_by } else { Some(number) };
                    let factors = with(&|one| {
                        one.ground = std::array::from_fn(|run| if run == end as usize { one.ground[run] } else { 0.0 });
                        without_jumpers(one);
                        only_broken(one);
                    });
                    found.extend(seen_in.map(|seen_in| Guess { seen_in, factors }));
                }
            }
        }
    }
    found
}

const BREAKS: [GroundRun; 3] = [GroundRun::LooseHere, GroundRun::CutOffHere, GroundRun::LooseBefore];
const JUMPERS: [Wiring; 2] = [Wiring::NeutralJumper, Wiring::ReversedJumper];

/// A box without a fault of either kind.
fn sound(one: &mut BoxFactors) {
    without_breaks(one);
    without_jumpers(one);
}

fn without_breaks(one: &mut BoxFactors) {
    BREAKS.iter().for_each(|run| one.ground[*run as usize] = 0.0);
}

fn without_jumpers(one: &mut BoxFactors) {
    JUMPERS.iter().for_each(|wiring| one.device[*wiring as usize] = Default::default());
}

fn only_jumpers(one: &mut BoxFactors) {
    let jumpers = JUMPERS.map(|wiring| wiring as usize);
    let others = one.device.iter_mut().enumerate().filter(|(wiring, _)| !jumpers.contains(wiring));
    others.for_each(|(_, odds)| *odds = Default::default());
}

/// What arrives is broken, and a conductor lies all the way: the third of the arrivals.
fn only_broken(one: &mut BoxFactors) {
    for of_wiring in &mut one.device {
        for (arrival, odds) in of_wiring.iter_mut().enumerate() {
            if !(2..=4).contains(&arrival) {
                *odds = Default::default();
            }
        }
    }
}
