//! Counts how many boxes a search opens on simulated circuits, beside walking from the panel: `search [HOUSES] [SEED]`.
#![allow(
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a count is printed, of as many houses as asked for"
)]

use diagnosis::belief::{Priors, Stakes};
use simulation::{Fault, Searched, least_opened, searched};

/// The lengths of circuits.
const BOXES: [usize; 5] = [4, 6, 9, 12, 16];

fn main() {
    let mut numbers = std::env::args().skip(1).filter_map(|word| word.parse::<u64>().ok());
    let (houses, seed) = (numbers.next().unwrap_or(1_000), numbers.next().unwrap_or(1));
    let (priors, stakes) = (Priors::default(), Stakes::default());
    println!(
        "| fault | boxes | circuits | walked | opened | least | share | least share | share if the box were known | mean of shares | least mean | worst | over half | readings |"
    );
    println!("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- | ---: | ---: |");
    let mut all: Vec<(Searched, f64)> = Vec::new();
    for (fault, name) in [(Fault::Interrupted, "interrupted ground"), (Fault::Jumper, "jumper")] {
        for boxes in BOXES {
            let seeds = (seed..).take(usize::try_from(houses).unwrap_or(usize::MAX));
            let found: Vec<(Searched, f64)> = seeds
                .filter_map(|seed| {
                    let one = searched(seed, fault, boxes, &priors, &stakes)?;
                    Some((one, least_opened(seed, fault, boxes, &priors)?))
                })
                .collect();
            row(name, &boxes.to_string(), &found);
            all.extend(found);
        }
    }
    row("**both**", "all", &all);
}

fn row(name: &str, boxes: &str, all: &[(Searched, f64)]) {
    let found: Vec<Searched> = all.iter().map(|(one, _)| *one).collect();
    let least = all.iter().map(|(_, least)| least).sum::<f64>();
    let least_ratio = all.iter().map(|(one, least)| least / one.walked as f64).sum::<f64>();
    let sum = |of: fn(&Searched) -> usize| found.iter().map(|one| of(one) as f64).sum::<f64>();
    let count = found.len() as f64;
    let ratio = |one: &Searched| one.opened as f64 / one.walked as f64;
    let mean = found.iter().map(ratio).sum::<f64>() / count;
    let Some(worst) = found.iter().max_by(|one, other| {
        let by_excess = (one.opened as i64 - one.walked as i64).cmp(&(other.opened as i64 - other.walked as i64));
        by_excess.then(ratio(one).total_cmp(&ratio(other)))
    }) else {
        return;
    };
    let (walked, opened) = (sum(|one| one.walked), sum(|one| one.opened));
    let over = found.iter().filter(|one| 2 * one.opened > one.walked.max(2)).count() as f64 / count;
    println!(
        "| {name} | {boxes} | {count} | {:.2} | {:.2} | {:.2} | {:.2} | {:.2} | {:.2} | {:.2} | {:.2} | {} against {} | {:.1} % | {:.1} |",
        walked / count,
        opened / count,
        least / count,
        opened / walked,
        least / walked,
        count / walked,
        mean,
        least_ratio / count,
        worst.opened,
        worst.walked,
        over * 100.0,
        sum(|one| one.readings) / count,
    );
}
