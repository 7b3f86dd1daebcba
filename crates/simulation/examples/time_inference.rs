//! Measures how long inference takes on simulated dwellings of 60 boxes: `time_inference [DWELLINGS]`.
#![allow(clippy::print_stdout, clippy::disallowed_methods, reason = "a measurement prints, and needs a clock")]

use diagnosis::belief::{Priors, believe};
use simulation::{Size, house};
use std::hint::black_box;
use std::time::{Duration, Instant};

const BOXES: usize = 60;

fn main() {
    let count = std::env::args().nth(1).and_then(|word| word.parse().ok()).unwrap_or(100);
    let priors = Priors::default();
    for (name, size) in [
        ("one circuit of 60", Size { circuits: 1, boxes: (BOXES, BOXES) }),
        ("circuits of 2 to 12", Size { circuits: 12, boxes: (2, 12) }),
    ] {
        let dwellings = (1_u64..).filter_map(|seed| house(seed, size, &priors)).map(|house| house.dwelling);
        let dwellings =
            dwellings.filter(|dwelling| (BOXES - 2..=BOXES + 2).contains(&dwelling.boxes.len())).take(count);
        let mut times: Vec<Duration> = dwellings
            .map(|dwelling| {
                // The shortest of some runs is the one that nothing else on the machine held up.
                let runs = (0..7).map(|_| {
                    let begun = Instant::now();
                    black_box(believe(black_box(&dwelling), &priors));
                    begun.elapsed()
                });
                runs.min().unwrap_or_default()
            })
            .collect();
        times.sort();
        let at =
            |share: usize| times.get((times.len() * share / 100).min(times.len() - 1)).copied().unwrap_or_default();
        println!("{name}, {} dwellings: median {:?}, 95 % {:?}, longest {:?}", times.len(), at(50), at(95), at(100));
    }
}
