//! Counts over simulated houses how often what inference says with some confidence is true: `calibrate [HOUSES] [SEED]`.
#![allow(
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a count is printed, of as many houses as asked for"
)]

use diagnosis::belief::Priors;
use simulation::{BINS, Bin, Calibration, Size, house};

fn main() {
    let mut numbers = std::env::args().skip(1).filter_map(|word| word.parse::<u64>().ok());
    let (houses, seed) = (numbers.next().unwrap_or(10_000), numbers.next().unwrap_or(1));
    let priors = Priors::default();
    let mut calibration = Calibration::default();
    for seed in (seed..).take(usize::try_from(houses).unwrap_or(usize::MAX)) {
        if let Some(house) = house(seed, Size::default(), &priors) {
            calibration.add(&house, &priors);
        }
    }
    println!("{} houses, {} openings", calibration.houses, calibration.openings);
    println!();
    println!("| statement | confidence | said | mean confidence | true |");
    println!("| --- | --- | ---: | ---: | ---: |");
    for (kind, bins) in &calibration.kinds {
        rows(kind, bins);
    }
    rows("**all**", &calibration.all());
    println!();
    let ninety = calibration.about_ninety;
    println!(
        "said with 85 to 95 %: {}, mean {:.2} %, true {:.2} %",
        ninety.said,
        ninety.mean() * 100.0,
        ninety.share() * 100.0
    );
    println!("verdicts of the ground: {}, wrong {}", calibration.verdicts, calibration.wrong_verdicts);
    println!("said to be grounded: {}", calibration.grounded);
    println!(
        "of these false in truth: {} without, {} with a loaded test",
        calibration.false_grounds_without, calibration.false_grounds_with
    );
    println!("at the opening itself: {}", calibration.false_grounds_here);
    println!("circuits of which no state reads as found: {}", calibration.unread);
}

fn rows(kind: &str, bins: &[Bin]) {
    for (at, bin) in bins.iter().enumerate().filter(|(_, bin)| bin.said > 0) {
        let to = BINS.get(at + 1).map_or(1.0, |to| *to);
        println!(
            "| {kind} | {:.1}–{:.1} % | {} | {:.2} % | {:.2} % |",
            BINS[at] * 100.0,
            to * 100.0,
            bin.said,
            bin.mean() * 100.0,
            bin.share() * 100.0
        );
    }
}
