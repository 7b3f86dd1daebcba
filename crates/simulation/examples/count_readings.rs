//! Counts in which band of volts a meter finds terminals, beside the odds that inference reckons with: `count_readings [HOUSES]`.
#![allow(
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a count is printed, of as many houses as asked for"
)]

use diagnosis::belief::{Draws, Hangs, Loaded, Priors, pair, places};
use simulation::{Counts, Key, count};

fn main() {
    let houses = std::env::args().nth(1).and_then(|word| word.parse().ok()).unwrap_or(20_000);
    for ((key, draws, load), counts) in &count(houses, 1, &Priors::default()).of {
        let total: u32 = counts.iter().sum();
        let shares = Counts::shares(counts).map(|share| format!("{share:.3}")).join(" ");
        println!("{key:?} {draws:?} {load:?}: {total} counted {shares} | reckoned {}", reckoned(*key, *draws, *load));
    }
}

fn reckoned(key: Key, draws: Draws, load: Loaded) -> String {
    let earth = (Hangs::Ground { weak: false }, diagnosis::belief::Floats::Nowhere);
    let odds: Vec<f64> = match key {
        Key::Place(of) => places(of, draws, load).to_vec(),
        Key::Pair(one, other) => pair(one, other, draws, load).to_vec(),
        Key::Earth(one) => pair(one, earth, draws, load).to_vec(),
        Key::One | Key::Impedance(_) => Vec::new(),
    };
    odds.iter().map(|odds| format!("{odds:.3}")).collect::<Vec<_>>().join(" ")
}
