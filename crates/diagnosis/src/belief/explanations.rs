//! The likeliest explanations of all that was found on a circuit, each with another thing to do at some box.

use super::best::{Told, best};
use super::likely::Best;
use super::state::{AtBox, Ground, GroundRun, WireState};
use super::stations::{ARRIVALS, PATHS, RUNS, Stations, WIRINGS, at_box};
use super::up::up;
use dwelling::BoxIndex;

/// A state of a whole circuit that explains what was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Explanation {
    /// The natural logarithm of how likely it is together with what was found: only differences count.
    pub log_odds: f64,
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

/// What one would do about a box: explanations that agree on it at every box are one to whoever does the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct ToDo {
    ground: Ground,
    reversed: bool,
    hot: WireState,
    neutral: WireState,
    /// Which box to open for the run's ground, where a conductor of it is not connected.
    mend: Option<GroundRun>,
}

/// What one would do where this is true.
pub(crate) fn to_do(run: GroundRun, at: AtBox) -> ToDo {
    let broken = matches!(run, GroundRun::LooseHere | GroundRun::CutOffHere | GroundRun::LooseBefore);
    let reversed = at.is_reversed();
    ToDo { ground: at.ground(), reversed, hot: at.hot, neutral: at.neutral, mend: broken.then_some(run) }
}

/// The likeliest explanations that differ in what one would do, likeliest first, at most so many.
///
/// Exact: what is left after each answer is parted, box by box, into what agrees with it up to there and differs at that
/// box, and the best of every part is kept.
///
/// # Source
/// Lawler's procedure for the k best solutions (1972).
pub(crate) fn explanations(stations: &Stations, most: usize) -> Vec<Explanation> {
    let mut parts: Vec<Part> = Vec::new();
    parts.extend(Part::of(stations.clone(), 0));
    let mut found = Vec::new();
    while found.len() < most {
        let best = parts.iter().enumerate().max_by(|left, right| left.1.log_odds.total_cmp(&right.1.log_odds));
        let Some(number) = best.map(|(number, _)| number) else { break };
        let part = parts.swap_remove(number);
        let mut fixed = part.stations.clone();
        for at in part.first_free..fixed.all.len() {
            let done = to_do(part.told[at].ground, part.told[at].at);
            let mut other = fixed.clone();
            restrict(&mut other, at, |to_do| to_do != done);
            parts.extend(Part::of(other, at));
            restrict(&mut fixed, at, |to_do| to_do == done);
        }
        found.push(part.explanation());
    }
    found
}

/// A part of all states, with its best.
struct Part {
    stations: Stations,
    /// The stations before this one are fixed.
    first_free: usize,
    log_odds: f64,
    has_ground: bool,
    told: Vec<Told>,
}

impl Part {
    fn of(stations: Stations, first_free: usize) -> Option<Self> {
        let up = up::<Best>(&stations);
        let (log_odds, has_ground, told) = best(&stations, &up)?;
        Some(Self { stations, first_free, log_odds, has_ground, told })
    }

    fn explanation(self) -> Explanation {
        let boxes = self.stations.all.iter().zip(&self.told).map(|(station, told)| Explained {
            at: station.at,
            hot: told.hot,
            neutral: told.neutral,
            ground: told.ground,
            state: told.at,
        });
        Explanation { log_odds: self.log_odds, panel_has_ground: self.has_ground, boxes: boxes.collect() }
    }
}

/// Leaves of a station's states those of which this holds.
fn restrict(stations: &mut Stations, at: usize, holds: impl Fn(ToDo) -> bool) {
    let station = &mut stations.all[at];
    let everything = || Box::new([[[[1.0; PATHS]; ARRIVALS]; WIRINGS]; RUNS]);
    let mut only = station.only.take().unwrap_or_else(everything);
    for (run, of_run) in GroundRun::ALL.iter().zip(only.iter_mut()) {
        for (wiring, of_wiring) in of_run.iter_mut().enumerate() {
            for (arrival, of_arrival) in of_wiring.iter_mut().enumerate() {
                for (path, only) in of_arrival.iter_mut().enumerate() {
                    if !holds(to_do(*run, at_box(wiring, arrival, path))) {
                        *only = 0.0;
                    }
                }
            }
        }
    }
    station.only = Some(only);
}
