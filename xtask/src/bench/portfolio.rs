//! Many dwellings in one go: how many a second, and how much memory that takes.

use super::programs::{Fault, Programs};
use crate::dwellings::{Plan, survey};
use std::fs::File;
use std::process::Stdio;
use std::time::{Duration, Instant};

/// What a run over many dwellings took.
pub struct Run {
    /// How many dwellings.
    pub dwellings: u64,
    /// Whether their surveys held plans of the floors.
    pub plan: Plan,
    /// How many threads worked; `None` is one for each core.
    pub threads: Option<usize>,
    /// How long it took.
    pub seconds: f64,
    /// The most memory held, in kilobytes, where the system tells it.
    pub most_memory: Option<u64>,
}

/// Plans so many dwellings of 40 boxes as a stream.
pub fn run(programs: &Programs, dwellings: u64, plan: Plan, threads: Option<usize>) -> Result<Run, Fault> {
    let surveys = (1..=dwellings).map(|seed| survey(40, seed, plan).to_string());
    let path = programs.kept("portfolio.ndjson", surveys)?;
    let file = File::open(&path).map_err(|error| format!("cannot read the portfolio: {error}"))?;
    let mut planner = programs.planner();
    planner.args(["plan", "--stream"]).stdin(file).stdout(Stdio::null());
    if let Some(threads) = threads {
        planner.env("RAYON_NUM_THREADS", threads.to_string());
    }
    let start = Instant::now();
    let mut running = planner.spawn().map_err(|error| format!("cannot run the planner: {error}"))?;
    let mut most_memory = None;
    loop {
        most_memory = most_memory.max(memory_of(running.id()));
        match running.try_wait() {
            Ok(Some(status)) if matches!(status.code(), Some(0 | 3)) => break,
            Ok(Some(status)) => return Err(format!("the planner ended with {status}")),
            Ok(None) => std::thread::sleep(Duration::from_millis(20)),
            Err(error) => return Err(format!("the planner is lost: {error}")),
        }
    }
    let seconds = start.elapsed().as_secs_f64();
    std::fs::remove_file(&path).map_err(|error| format!("cannot remove the portfolio: {error}"))?;
    Ok(Run { dwellings, plan, threads, seconds, most_memory })
}

/// The most memory that a process has held so far.
fn memory_of(process: u32) -> Option<u64> {
    let status = std::fs::read_to_string(format!("/proc/{process}/status")).ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    line.split_whitespace().next()?.parse().ok()
}
