//! Prints random trees with their odds and what inference makes of them, one a line: `print_trees [COUNT] [SEED]`. Half of them
//! are circuits of simulated houses, half have odds of any size.
#![allow(clippy::print_stdout, clippy::disallowed_methods, reason = "what was asked for is printed")]

use diagnosis::belief::{Arrival, BoxFactors, Factors, Joined, Priors, Wiring, believe};
use serde_json::json;
use simulation::{Chance, Size, house};

fn main() {
    let mut numbers = std::env::args().skip(1).filter_map(|word| word.parse::<u64>().ok());
    let (count, seed) = (numbers.next().unwrap_or(100), numbers.next().unwrap_or(1));
    for number in 0..count {
        let factors = if number % 2 == 0 { Some(random(seed + number)) } else { simulated(seed + number) };
        if let Some(factors) = factors {
            println!("{}", json!({ "factors": factors, "marginals": factors.marginals() }));
        }
    }
}

fn simulated(seed: u64) -> Option<Factors> {
    let priors = Priors::default();
    let house = house(seed, Size { circuits: 1, boxes: (2, 12) }, &priors)?;
    believe(&house.dwelling, &priors).circuits.first().map(|circuit| circuit.factors())
}

fn random(seed: u64) -> Factors {
    let mut chance = Chance::new(seed);
    let count = 1 + chance.below(9);
    let boxes = (0..count).map(|number| random_box(number, &mut chance)).collect();
    Factors { panel_has_ground: [0.0, 0.4, 1.0][chance.below(3)], boxes }
}

fn random_box(number: usize, chance: &mut Chance) -> BoxFactors {
    let fed_by = (number > 0 && !chance.happens(0.1)).then(|| chance.below(number));
    let is_possible = |wiring: usize, arrival: usize| match (Wiring::ALL[wiring], Arrival::ALL[arrival]) {
        (Wiring::NeutralJumper, arrival) => arrival.reaches() || arrival.joined() == Joined::Neutral,
        (Wiring::ReversedJumper, arrival) => arrival.joined() == Joined::Hot,
        _ => true,
    };
    let device = std::array::from_fn(|wiring| {
        std::array::from_fn(|arrival| {
            std::array::from_fn(|_| if is_possible(wiring, arrival) { chance.by_magnitude(1e-3, 1.0) } else { 0.0 })
        })
    });
    let sight =
        chance.happens(0.5).then(|| [(); 2].map(|()| [(); 6].map(|()| [(); 6].map(|()| chance.between(0.01, 1.0)))));
    BoxFactors { fed_by, hot: odds(chance), neutral: odds(chance), ground: odds(chance), device, sight }
}

/// Odds that add up to one, some of them nought.
fn odds<const COUNT: usize>(chance: &mut Chance) -> [f64; COUNT] {
    let mut odds = [(); COUNT].map(|()| if chance.happens(0.2) { 0.0 } else { chance.share() });
    odds[chance.below(COUNT)] += 0.1;
    let total: f64 = odds.iter().sum();
    odds.map(|odds| odds / total)
}
