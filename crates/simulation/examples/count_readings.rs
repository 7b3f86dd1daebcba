//! Counts in which bands a meter finds three pairs of terminals together, and prints the file of counts that inference rests on:
//! `count_readings [HOUSES]`. With `impedance` as a second word: how often a ground's impedance is sound, poor, or none.
#![allow(
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a count is printed, of as many houses as asked for"
)]

use diagnosis::belief::Priors;
use simulation::count;

fn main() {
    let houses = std::env::args().nth(1).and_then(|word| word.parse().ok()).unwrap_or(300_000);
    let counts = count(houses, 1, &Priors::default());
    if std::env::args().nth(2).is_some() {
        for (ground, [sound, poor, earth]) in counts.impedance {
            println!("{ground:?}: {sound} {poor} {earth}");
        }
        return;
    }
    print!("{}", counts.file());
}
