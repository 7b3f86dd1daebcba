//! The likeliest explanations of all that was found on a circuit, each with another thing to do at some box.

use super::best::{Told, best};
use super::likely::{Best, Sum};
use super::state::{AtBox, Ground, GroundRun, WireState};
use super::stations::{ARRIVALS, PATHS, RUNS, Station, Stations, WIRINGS, at_box};
use super::up::{Up, up, up_again};
use dwelling::BoxIndex;
use std::sync::Arc;

/// A state of a whole circuit that explains what was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Explanation {
    /// The natural logarithm of how likely it is together with what was found: only differences count.
    pub log_odds: f64,
    /// How likely it is, with everything that differs from it in nothing one would do, given what was found: from 0 to 1.
    pub share: f64,
    /// Whether the panel has a ground for the circuit.
    pub panel_has_ground: bool,
    /// The state of every box and of the run that feeds it, what feeds before what is fed.
    pub boxes: Vec<Explained>,
}

/// The state of one box in an explanation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Explained {
    /// The box.
    pub at: BoxIndex,
    /// The hot conductor of the run that feeds it.
    pub hot: WireState,
    /// The neutral of that run.
    pub neutral: WireState,
    /// The ground of that run.
    pub ground: GroundRun,
    /// What arrives, and how the device is wired.
    pub state: AtBox,
}

/// What explanations are told apart by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// All that one would do.
    Everything,
    /// What one would do about grounds: those of receptacles, and where to open a run for one.
    Ground,
}

/// What one would do about a box: explanations that agree on it at every box are one to whoever does the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct ToDo {
    ground: Option<Ground>,
    /// Polarity, and the paths of hot and neutral.
    rest: Option<(bool, WireState, WireState)>,
    /// Which box to open for the run's ground, where a conductor of it is not connected.
    mend: Option<GroundRun>,
}

/// What one would do where this is true.
pub(crate) fn to_do(about: About, is_receptacle: bool, run: GroundRun, at: AtBox) -> ToDo {
    let broken = matches!(run, GroundRun::LooseHere | GroundRun::CutOffHere | GroundRun::LooseBefore);
    let everything = about == About::Everything;
    ToDo {
        ground: (everything || is_receptacle).then(|| at.ground()),
        rest: everything.then(|| (at.is_reversed(), at.hot, at.neutral)),
        mend: broken.then_some(run),
    }
}

/// The likeliest explanations that differ in what one would do, likeliest first, at most so many.
///
/// Exact: what is left after each answer is parted, box by box, into what agrees with it up to there and differs at that
/// box, and the best of every part is kept.
///
/// # Source
/// Lawler's procedure for the k best solutions (1972).
pub(crate) fn explanations(stations: &Stations, about: About, most: usize) -> Vec<Explanation> {
    let all = up::<Sum>(stations).log_odds::<Sum>();
    let mut parts: Vec<Part> = Vec::new();
    parts.extend(Part::of(stations.clone(), up::<Best>(stations), 0));
    let mut found = Vec::new();
    while found.len() < most {
        let likeliest = parts.iter().enumerate().max_by(|left, right| left.1.log_odds.total_cmp(&right.1.log_odds));
        let Some(number) = likeliest.map(|(number, _)| number) else { break };
        let Part { stations: mut fixed, up: mut fixed_up, first_free, .. } = parts.swap_remove(number);
        let Some((log_odds, has_ground, told)) = best(&fixed, &fixed_up) else { continue };
        for (at, told) in told.iter().enumerate().skip(first_free) {
            let done = to_do(about, fixed.all[at].is_receptacle, told.ground, told.at);
            // After as many as asked for nothing is parted any more.
            if found.len() + 1 < most {
                let mut other = fixed.clone();
                restrict(&mut other.all[at], about, |to_do| to_do != done);
                let other_up = up_again::<Best>(&other, &fixed_up, at);
                parts.extend(Part::of(other, other_up, at));
            }
            restrict(&mut fixed.all[at], about, |to_do| to_do == done);
            fixed_up = up_again::<Best>(&fixed, &fixed_up, at);
        }
        let share = (up::<Sum>(&fixed).log_odds::<Sum>() - all).exp();
        found.push(explanation(&fixed, log_odds, share, has_ground, &told));
    }
    found
}

/// A part of all states, with how likely its best is.
struct Part {
    stations: Stations,
    up: Up,
    /// The stations before this one are fixed.
    first_free: usize,
    log_odds: f64,
}

impl Part {
    fn of(stations: Stations, up: Up, first_free: usize) -> Option<Self> {
        let total = up.total::<Best>();
        let is_possible = total.is_finite() && total > 0.0;
        is_possible.then(|| Self { log_odds: up.log_odds::<Best>(), stations, up, first_free })
    }
}

fn explanation(stations: &Stations, log_odds: f64, share: f64, panel_has_ground: bool, told: &[Told]) -> Explanation {
    let boxes = stations.all.iter().zip(told).map(|(station, told)| Explained {
        at: station.at,
        hot: told.hot,
        neutral: told.neutral,
        ground: told.ground,
        state: told.at,
    });
    Explanation { log_odds, share, panel_has_ground, boxes: boxes.collect() }
}

/// Leaves of a station's states those of which this holds.
fn restrict(station: &mut Station, about: About, holds: impl Fn(ToDo) -> bool) {
    let everything = || Arc::new([[[[1.0; PATHS]; ARRIVALS]; WIRINGS]; RUNS]);
    let mut all = station.only.take().unwrap_or_else(everything);
    let only = Arc::make_mut(&mut all);
    for (run, of_run) in GroundRun::ALL.iter().zip(only.iter_mut()) {
        for (wiring, of_wiring) in of_run.iter_mut().enumerate() {
            for (arrival, of_arrival) in of_wiring.iter_mut().enumerate() {
                for (path, only) in of_arrival.iter_mut().enumerate() {
                    if !holds(to_do(about, station.is_receptacle, *run, at_box(wiring, arrival, path))) {
                        *only = 0.0;
                    }
                }
            }
        }
    }
    station.only = Some(all);
}
