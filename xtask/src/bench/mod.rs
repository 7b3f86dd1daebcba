//! Measures the planner on generated dwellings, beside two general-purpose solvers where Python is named: `cargo xtask bench`.

mod measure;
mod page;
mod portfolio;
mod programs;

use crate::dwellings::{Plan, survey};
use measure::Times;
pub use page::KEPT_AT;
use programs::{Fault, Programs, answer_within, answers};
use serde_json::Value;
use std::path::Path;
use std::time::Duration;

/// What is to be measured.
pub struct Wanted {
    /// The sizes at which rivals run, in boxes.
    pub sizes: Vec<usize>,
    /// How many dwellings of each.
    pub count: u64,
    /// The Python that has the rivals' solvers.
    pub rivals: Option<String>,
    /// How many seconds a rival has for a dwelling.
    pub seconds: u64,
    /// The largest dwellings with plans of their floors that are measured, in boxes.
    pub largest_drawn: usize,
    /// How many dwellings the portfolio holds; 0 leaves it out.
    pub portfolio: u64,
}

impl Default for Wanted {
    fn default() -> Self {
        Self { sizes: vec![40, 150], count: 60, rivals: None, seconds: 60, largest_drawn: 2_000, portfolio: 10_000 }
    }
}

impl Wanted {
    /// What these flags ask for; nothing where one of them is wrong.
    pub fn from_flags(flags: &[&str]) -> Option<Self> {
        let mut wanted = Self::default();
        for pair in flags.chunks(2) {
            let value = pair.get(1)?;
            match pair[0] {
                "--sizes" => wanted.sizes = value.split(',').map(|size| size.parse().ok()).collect::<Option<_>>()?,
                "--count" => wanted.count = value.parse().ok()?,
                "--rivals" => wanted.rivals = Some((*value).to_owned()),
                "--seconds" => wanted.seconds = value.parse().ok()?,
                "--largest-drawn" => wanted.largest_drawn = value.parse().ok()?,
                "--portfolio" => wanted.portfolio = value.parse().ok()?,
                _ => return None,
            }
        }
        let sound = wanted.count > 0 && wanted.sizes.iter().all(|size| (2..=2_000).contains(size));
        sound.then_some(wanted)
    }
}

/// The sizes of the table of growth, and how many dwellings of each.
const GROWTH: [(usize, u64); 8] =
    [(10, 40), (20, 40), (40, 40), (80, 40), (150, 40), (400, 12), (1_000, 8), (2_000, 8)];
/// The sizes and numbers of the dwellings whose frontier is measured.
const FRONTIER: [(usize, u64); 2] = [(40, 20), (150, 20)];
/// How long one frontier may take, its plan included; what takes longer counts as this.
pub const FRONTIER_MOST: Duration = Duration::from_secs(20);
/// Seeds of measured dwellings begin here: others than those of the proofs.
const FIRST_SEED: u64 = 10_000;

/// What was measured of the dwellings of one size.
pub struct Measured {
    /// Of which dwellings.
    pub batch: Batch,
    /// The search alone.
    pub solving: Times,
    /// From the text of the survey to the answer.
    pub planning: Times,
    /// How many were proved.
    pub proved: usize,
    /// How many links there were to choose from, the middle one.
    pub links: usize,
    /// Each rival, by name.
    pub rivals: Vec<Rival>,
}

/// What was measured of a rival.
pub struct Rival {
    /// Its name on the page.
    pub name: &'static str,
    /// The search alone; where it did not finish, the time it had.
    pub solving: Times,
    /// How many it finished.
    pub finished: usize,
    /// How many of those cost what thirdwire's cost.
    pub same: usize,
}

/// Measures everything wanted and returns the page.
pub fn run(root: &Path, wanted: &Wanted) -> Result<String, Fault> {
    let programs = Programs::built(root)?;
    let plans = [Plan::NotDrawn, Plan::Drawn];
    let (mut sizes, mut growth, mut offered) = (Vec::new(), Vec::new(), Vec::new());
    for plan in plans {
        let small_enough = |boxes: usize| plan == Plan::NotDrawn || boxes <= wanted.largest_drawn;
        for boxes in wanted.sizes.iter().copied().filter(|boxes| small_enough(*boxes)) {
            sizes.push(measured(
                &programs,
                Batch { boxes, plan, count: wanted.count },
                wanted.rivals.as_deref(),
                wanted,
            )?);
        }
        for (boxes, count) in GROWTH.into_iter().filter(|(boxes, _)| small_enough(*boxes)) {
            growth.push(measured(&programs, Batch { boxes, plan, count }, None, wanted)?);
        }
        for (boxes, count) in FRONTIER.into_iter().filter(|(boxes, _)| small_enough(*boxes)) {
            offered.push(offers(&programs, Batch { boxes, plan, count })?);
        }
    }
    let mut portfolio = Vec::new();
    if wanted.portfolio > 0 {
        let tenth = wanted.portfolio.div_ceil(10);
        for (dwellings, threads) in [(tenth, Some(1)), (tenth, None), (wanted.portfolio, None)] {
            portfolio.push(portfolio::run(&programs, dwellings, Plan::NotDrawn, threads)?);
        }
        if wanted.largest_drawn >= 40 {
            portfolio.push(portfolio::run(&programs, tenth, Plan::Drawn, None)?);
        }
    }
    Ok(page::page(wanted, &sizes, &growth, &offered, &portfolio))
}

/// Dwellings to measure together.
#[derive(Clone, Copy)]
pub struct Batch {
    /// How large they are.
    pub boxes: usize,
    /// Whether their surveys hold plans of the floors.
    pub plan: Plan,
    /// How many.
    pub count: u64,
}

impl Batch {
    fn surveys(self, programs: &Programs) -> Result<std::path::PathBuf, Fault> {
        let seeds = (FIRST_SEED..).take(self.count as usize);
        let name = format!("{:?}-{}.ndjson", self.plan, self.boxes);
        programs.kept(&name, seeds.map(|seed| survey(self.boxes, seed, self.plan).to_string()))
    }
}

fn measured(programs: &Programs, batch: Batch, python: Option<&str>, wanted: &Wanted) -> Result<Measured, Fault> {
    let rows = answers(programs.printer(), &batch.surveys(programs)?)?;
    let micros = |key: &str| Times::of(rows.iter().filter_map(|row| Some(row[key].as_f64()? / 1e6)).collect());
    let mut links: Vec<usize> = rows.iter().filter_map(|row| Some(row["problem"]["links"].as_array()?.len())).collect();
    links.sort_unstable();
    let mut rivals = Vec::new();
    if let Some(python) = python {
        let problems = programs.kept("problems.ndjson", rows.iter().map(Value::to_string))?;
        let told = answers(programs.rivals(python, wanted.seconds), &problems)?;
        for (name, key) in [("MILP with directed cuts", "milp"), ("constraint program", "cp-sat")] {
            let runs: Vec<&Value> = told.iter().map(|row| &row[key]).collect();
            let times = runs.iter().filter_map(|run| run["seconds"].as_f64()).collect();
            let count = |flag: &str| runs.iter().filter(|run| run[flag] == true).count();
            rivals.push(Rival { name, solving: Times::of(times), finished: count("finished"), same: count("same") });
        }
    }
    Ok(Measured {
        batch,
        solving: micros("solve_us"),
        planning: micros("plan_us"),
        proved: rows.iter().filter(|row| row["answer"]["proved"] == true).count(),
        links: links.get(links.len() / 2).copied().unwrap_or(0),
        rivals,
    })
}

/// What was measured of frontiers of offers.
pub struct Offered {
    /// Of which dwellings.
    pub batch: Batch,
    /// How long the whole frontier took.
    pub taking: Times,
    /// How many points there are on it, the middle number.
    pub points: u64,
    /// How many frontiers were whole.
    pub whole: usize,
}

fn offers(programs: &Programs, batch: Batch) -> Result<Offered, Fault> {
    let (mut times, mut points, mut whole) = (Vec::new(), Vec::new(), 0);
    for seed in (FIRST_SEED..).take(batch.count as usize) {
        let one = programs.kept("offers.ndjson", std::iter::once(survey(batch.boxes, seed, batch.plan).to_string()))?;
        let mut printer = programs.printer();
        printer.arg("--offers");
        let row = answer_within(printer, &one, FRONTIER_MOST)?;
        let offers = row.as_ref().map(|row| &row["offers"]);
        times.push(offers.and_then(|offers| offers["us"].as_f64()).map_or(FRONTIER_MOST.as_secs_f64(), |us| us / 1e6));
        points.extend(offers.and_then(|offers| offers["points"].as_u64()));
        whole += usize::from(offers.is_some_and(|offers| offers["complete"] == true));
    }
    points.sort_unstable();
    let points = points.get(points.len() / 2).copied().unwrap_or(0);
    Ok(Offered { batch, taking: Times::of(times), points, whole })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn flags_say_what_is_measured_and_a_wrong_one_is_refused() {
        let wanted = Wanted::from_flags(&["--sizes", "10,20", "--rivals", "python3"]).unwrap();
        assert_eq!((wanted.sizes, wanted.rivals.as_deref()), (vec![10, 20], Some("python3")));
        for wrong in [&["--sizes"][..], &["--sizes", "x"], &["--sizes", "1"], &["--count", "0"], &["--fast", "1"]] {
            assert!(Wanted::from_flags(wrong).is_none(), "{wrong:?}");
        }
    }
}
