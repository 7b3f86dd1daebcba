//! Reads surveys as JSON, one a line, and prints the optimizer's problem of each and its answer, one a line:
//! `cargo run --release -p remedies --example print_problem < surveys.ndjson`. With `--offers` it also times the whole
//! frontier of offers; with `--random N SEED` it prints so many random problems instead, which hold what no dwelling does.

#![allow(clippy::disallowed_methods, clippy::print_stdout, reason = "it measures and prints")]

mod as_json;
#[path = "../../../optimizer/tests/support/random_problem.rs"]
#[allow(dead_code, reason = "it makes problems as the optimizer's tests do, and no more")]
mod random_problem;

use as_json::{answer_as_json, problem_as_json};
use estimate::PriceBook;
use optimizer::Limits;
use random_problem::{Chance, Size, random_problem};
use remedies::{Facts, LIMITS_OF_A_PLAN, LawAnswer, Planned, Shortfall, assemble, plan_answer};
use rulebook::{CodeInForce, Edition};
use serde_json::{Value, json};
use std::error::Error;
use std::io::{BufRead as _, Write as _};
use std::time::{Duration, Instant};

/// Larger than what can be enumerated.
const MEDIUM: Size = Size { trees: 4, nodes: 8, options: 5, groups: 9, links: 14 };

fn main() -> Result<(), Box<dyn Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let mut out = std::io::BufWriter::new(std::io::stdout().lock());
    let with_offers = match words.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [] => false,
        ["--offers"] => true,
        ["--random", count, seed] => {
            for seed in (seed.parse::<u64>()?..).take(count.parse()?) {
                writeln!(out, "{}", random(seed))?;
            }
            return Ok(());
        }
        _ => return Err("usage: print_problem [--offers | --random N SEED] < surveys.ndjson".into()),
    };
    for line in std::io::stdin().lock().lines() {
        writeln!(out, "{}", printed(line?.as_bytes(), with_offers)?)?;
        out.flush()?;
    }
    Ok(())
}

fn random(seed: u64) -> Value {
    let problem = random_problem(&mut Chance::new(seed), MEDIUM);
    let (solving, outcome) = timed(|| optimizer::solve(&problem, &Limits::default()));
    json!({
        "name": format!("random problem {seed}"),
        "weights": [],
        "problem": problem_as_json(&problem),
        "answer": answer_as_json(&outcome),
        "solve_us": micros(solving),
    })
}

fn printed(line: &[u8], with_offers: bool) -> Result<Value, Box<dyn Error>> {
    let read = survey::read(line, survey::Format::Json);
    let dwelling = read.dwelling.ok_or_else(|| format!("{:?}", read.diagnostics))?;
    let edition = dwelling.job.edition.and_then(Edition::of_year).ok_or("a survey without an edition")?;
    let code = CodeInForce::published(edition);
    let book = PriceBook::demo();

    let facts = Facts::gather(&dwelling, code.clone());
    let problem = assemble(&facts, &book).problem;
    let (solving, outcome) = timed(|| optimizer::solve(&problem, &LIMITS_OF_A_PLAN));
    let (planning, _) = timed(|| {
        let read = survey::read(line, survey::Format::Json);
        let planned = Planned::of(read.dwelling.as_ref().unwrap_or(&dwelling), code.clone(), &book).ok()?;
        Some(plan_answer(&planned, &LawAnswer::of(&planned.facts.code), true).openings.len())
    });

    let offers = if with_offers {
        let planned = Planned::of(&dwelling, code, &book).map_err(|fault| format!("{fault:?}"))?;
        let (taking, offers) = timed(|| planned.offers());
        let offers = offers.map_err(|fault| format!("{fault:?}"))?;
        json!({ "us": micros(taking), "points": offers.frontier.len(), "complete": offers.complete })
    } else {
        Value::Null
    };

    let boxes = dwelling.boxes.len();
    let weight = |shortfall: Shortfall| shortfall.weight(boxes);
    let weights = [
        weight(Shortfall { unlawful: true, ..Shortfall::default() }),
        weight(Shortfall { equipment_without_ground: true, ..Shortfall::default() }),
        weight(Shortfall { wish_unmet: true, ..Shortfall::default() }),
    ];
    Ok(json!({
        "name": dwelling.job.name,
        "boxes": boxes,
        "weights": weights,
        "problem": problem_as_json(&problem),
        "answer": answer_as_json(&outcome),
        "solve_us": micros(solving),
        "plan_us": micros(planning),
        "offers": offers,
    }))
}

fn timed<T>(run: impl FnOnce() -> T) -> (Duration, T) {
    let start = Instant::now();
    let value = run();
    (start.elapsed(), value)
}

fn micros(time: Duration) -> f64 {
    time.as_secs_f64() * 1e6
}
