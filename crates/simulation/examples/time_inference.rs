//! Measures how long inference, advice and searches take on simulated dwellings of 60 boxes: `time_inference [DWELLINGS]`.
#![allow(clippy::print_stdout, clippy::disallowed_methods, reason = "a measurement prints, and needs a clock")]

use diagnosis::belief::{Priors, Stakes, believe};
use dwelling::Dwelling;
use simulation::{Size, house};
use std::hint::black_box;
use std::time::{Duration, Instant};

const BOXES: usize = 60;

fn main() {
    let count = std::env::args().nth(1).and_then(|word| word.parse().ok()).unwrap_or(100);
    let (priors, stakes) = (Priors::default(), Stakes::default());
    println!("| dwelling | what | median | 95 % | longest |");
    println!("| --- | --- | ---: | ---: | ---: |");
    for (name, size) in [
        ("one circuit of 60", Size { circuits: 1, boxes: (BOXES, BOXES) }),
        ("circuits of 2 to 12", Size { circuits: 12, boxes: (2, 12) }),
    ] {
        let dwellings = (1_u64..).filter_map(|seed| house(seed, size, &priors)).map(|house| house.dwelling);
        let dwellings: Vec<Dwelling> =
            dwellings.filter(|dwelling| (BOXES - 2..=BOXES + 2).contains(&dwelling.boxes.len())).take(count).collect();
        row(name, "inference", &dwellings, 7, |dwelling| {
            black_box(believe(black_box(dwelling), &priors));
        });
        let believed: Vec<_> = dwellings.iter().map(|dwelling| (dwelling, believe(dwelling, &priors))).collect();
        row(name, "next-test advice", &believed, 5, |(dwelling, beliefs)| {
            black_box(beliefs.advice(dwelling, &stakes));
        });
        row(name, "searches of all circuits", &believed, 5, |(dwelling, beliefs)| {
            for circuit in &beliefs.circuits {
                black_box(circuit.search_plan(dwelling, &stakes));
            }
        });
    }
}

/// Prints a row: of each dwelling the time on the processor, or where that is too short to be told the shortest of some runs.
fn row<T>(name: &str, what: &str, all: &[T], runs: u32, run: impl Fn(&T)) {
    let time = |one: &T| {
        let begun = on_processor();
        let times = (0..runs).map(|_| {
            let begun = Instant::now();
            run(one);
            begun.elapsed()
        });
        let shortest = times.min().unwrap_or_default();
        let together = begun.zip(on_processor()).map(|(begun, ended)| ended.saturating_sub(begun));
        together.filter(|together| *together > TOLD).map_or(shortest, |together| together / runs)
    };
    let mut times: Vec<Duration> = all.iter().map(time).collect();
    times.sort();
    let at = |share: usize| times.get((times.len() * share / 100).min(times.len() - 1)).copied().unwrap_or_default();
    println!("| {name} | {what} | {:.2?} | {:.2?} | {:.2?} |", at(50), at(95), at(100));
}

/// The system counts time on the processor by ticks of some milliseconds.
const TOLD: Duration = Duration::from_millis(60);

/// How long this thread was on a processor, where the system tells: what else runs on the machine does not count.
fn on_processor() -> Option<Duration> {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    told.split_whitespace().next()?.parse().ok().map(Duration::from_nanos)
}
