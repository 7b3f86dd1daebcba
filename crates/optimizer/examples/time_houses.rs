//! Prints how long problems shaped like houses take: `cargo run --release -p optimizer --example time_houses [BOXES]`.
#![allow(clippy::disallowed_methods, clippy::print_stdout, dead_code, reason = "it measures and prints")]

use std::time::{Duration, Instant};

use optimizer::{Limits, Outcome, check, solve};

#[path = "../tests/support"]
mod support {
    pub mod house_problem;
    pub mod random_problem;
}

use support::house_problem::house_problem;
use support::random_problem::Chance;

const RUNS: u64 = 60;

fn main() {
    let sizes: Vec<usize> = std::env::args().skip(1).filter_map(|size| size.parse().ok()).collect();
    println!("boxes  links   median       95 %       most   proved");
    for boxes in if sizes.is_empty() { vec![20, 40, 80, 150] } else { sizes } {
        measure(boxes);
    }
}

fn measure(boxes: usize) {
    let mut times: Vec<Duration> = Vec::new();
    let (mut proved, mut links) = (0, 0);
    for seed in 0..RUNS {
        let problem = house_problem(&mut Chance::new(seed + 1), boxes);

        links += problem.links.len();
        let start = Instant::now();
        let outcome = solve(&problem, &Limits::nodes(2_000));
        times.push(start.elapsed());
        match &outcome {
            Outcome::Optimal(solution) => {
                assert_eq!(check(&problem, solution), Ok(solution.cost));
                proved += 1;
            }
            Outcome::Best { solution, bound } => {
                println!("seed {seed}: best {} bound {}", solution.cost.cents, bound.cents);
            }
            other => println!("seed {seed}: {other:?}"),
        }
    }
    times.sort();
    let at = |percent: usize| format!("{:.3} ms", times[(times.len() - 1) * percent / 100].as_secs_f64() * 1000.0);
    let links = links as u64 / RUNS;
    println!("{boxes:5} {links:6} {:>9} {:>10} {:>10} {proved:5}/{RUNS}", at(50), at(95), at(100));
}
