//! Times the steps from a survey's text to its answer: `cargo xtask dwellings --boxes 40 --count 40 | cargo run --release
//! -p remedies --example time_text`.

#![allow(clippy::disallowed_methods, clippy::print_stdout, reason = "it measures and prints")]

use estimate::PriceBook;
use remedies::{Facts, LIMITS_OF_A_PLAN, LawAnswer, Planned, assemble, plan_answer};
use rulebook::{CodeInForce, Edition};
use std::time::Instant;
use survey::Format;

/// Each step is timed so often, and the shortest counts: what else runs on the machine only makes it longer.
const TIMES: usize = 5;

fn main() {
    let mut rows: Vec<[f64; 6]> = Vec::new();
    for line in std::io::stdin().lines().map_while(Result::ok).filter(|line| !line.trim().is_empty()) {
        let mut least = [f64::MAX; 6];
        for _ in 0..TIMES {
            let Some(times) = times_of(&line) else { continue };
            least.iter_mut().zip(times).for_each(|(least, time)| *least = least.min(time));
        }
        rows.push(least);
    }
    println!("{} dwellings, milliseconds: median, 95 %", rows.len());
    let steps = ["read", "gather", "assemble", "solve and check", "answer", "all from text to answer"];
    for (at, step) in steps.into_iter().enumerate() {
        let mut sorted: Vec<f64> = rows.iter().map(|row| row[at]).collect();
        sorted.sort_by(f64::total_cmp);
        let rank =
            |percent: usize| sorted.get((sorted.len() * percent).div_ceil(100).max(1) - 1).copied().unwrap_or(0.0);
        println!("{step:<24} {:>8.3} {:>8.3}", rank(50), rank(95));
    }
}

/// Milliseconds of each step and of all of them in one go.
fn times_of(line: &str) -> Option<[f64; 6]> {
    let book = PriceBook::demo();
    let mut last = Instant::now();
    let mut step = || {
        let now = Instant::now();
        let milliseconds = (now - std::mem::replace(&mut last, now)).as_secs_f64() * 1_000.0;
        last = Instant::now();
        milliseconds
    };
    let dwelling = survey::read(line.as_bytes(), Format::Json).dwelling?;
    let read = step();
    let code = CodeInForce::published(dwelling.job.edition.and_then(Edition::of_year).unwrap_or(Edition::Nec2020));
    let facts = Facts::gather(&dwelling, code.clone());
    let gathered = step();
    let assembled = assemble(&facts, &book);
    let put_together = step();
    let outcome = optimizer::solve(&assembled.problem, &LIMITS_OF_A_PLAN);
    outcome.solution().and_then(|solution| optimizer::check(&assembled.problem, solution).ok())?;
    let solved = step();
    let planned = Planned::of(&dwelling, code.clone(), &book).ok()?;
    let _planned = step();
    let answer = plan_answer(&planned, &LawAnswer::of(&planned.facts.code), true);
    let answered = step();
    drop((answer, planned, assembled, facts));
    let _dropped = step();
    let again = survey::read(line.as_bytes(), Format::Json).dwelling?;
    let planned = Planned::of(&again, code, &book).ok()?;
    let answer = plan_answer(&planned, &LawAnswer::of(&planned.facts.code), true);
    let all = step();
    drop(answer);
    Some([read, gathered, put_together, solved, answered, all])
}
