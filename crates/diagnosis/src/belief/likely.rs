//! How likely things are by what arrives: the numbers of grounds and paths, and what a run makes of them.

use super::state::{Arrival, Joined, Wiring};
use super::stations::{PATHS, STATES};

/// Grounds as they go up the tree: an arrival, and where it is joined, whether its jumper was met.
pub(crate) const GROUNDS: usize = 12;

/// How likely all from here on is, by the ground and the path that arrive.
pub(crate) type Likely = [[f64; PATHS]; GROUNDS];

/// Nothing is likely.
pub(crate) const NEVER: Likely = [[0.0; PATHS]; GROUNDS];

/// The arrival of a ground, by its number.
pub(crate) const ARRIVAL: [usize; GROUNDS] = [0, 1, 2, 3, 3, 4, 4, 5, 6, 6, 7, 7];
/// Whether its jumper was met.
pub(crate) const MET: [bool; GROUNDS] =
    [false, false, false, false, true, false, true, false, false, true, false, true];
/// The grounds that are joined to nothing.
pub(crate) const SINGLE: [usize; 4] = [0, 1, 2, 7];
/// The grounds that are joined, without and with their jumper met.
pub(crate) const JOINED: [(usize, usize); 4] = [(3, 4), (5, 6), (8, 9), (10, 11)];
/// The grounds at which a bonded group may begin behind a run whose conductor is broken.
pub(crate) const CLOSED_BROKEN: [usize; 3] = [2, 4, 6];
/// The same behind a run that has none.
pub(crate) const CLOSED_ABSENT: [usize; 3] = [7, 9, 11];
/// The number of the state of a run's ground that is seen in the box before.
pub(crate) const LOOSE_BEFORE: usize = 4;

/// The number of a ground by its arrival's number and whether its jumper was met.
pub(crate) const fn ground_number(arrival: usize, met: bool) -> usize {
    const FIRST: [usize; 8] = [0, 1, 2, 3, 5, 7, 8, 10];
    FIRST[arrival] + met as usize
}

/// Whether a device so wired is the jumper that joins what arrives.
pub(crate) fn meets(wiring: usize, arrival: usize) -> bool {
    matches!(
        (Wiring::ALL[wiring], Arrival::ALL[arrival].joined()),
        (Wiring::NeutralJumper, Joined::Neutral) | (Wiring::ReversedJumper, Joined::Hot)
    )
}

/// What a run's ground makes of what arrives before it: the grounds that may lie beyond it.
///
/// A run that conducts hands on what arrives, and a bad joint makes a path poor; one that does not ends the bonded group:
/// what is joined beyond it must have met its jumper, and what comes before has met nothing there.
pub(crate) const fn beyond_run(run: usize, ground: usize) -> &'static [usize] {
    const SAME: [[usize; 1]; GROUNDS] = [[0], [1], [2], [3], [4], [5], [6], [7], [8], [9], [10], [11]];
    let absent_before = ground >= 7;
    match run {
        0 => &SAME[ground],
        1 => &SAME[if ground == 0 { 1 } else { ground }],
        _ if MET[ground] => &[],
        5 => &CLOSED_ABSENT,
        _ if absent_before => &CLOSED_ABSENT,
        _ => &CLOSED_BROKEN,
    }
}

/// The path beyond a run whose ground does not conduct, by the path before it: the bonded group that begins there lies wholly
/// behind what is open already.
pub(crate) const ALONE: [usize; PATHS] = [0, 1, 3, 3, 4, 5, 7, 7, 12, 13, 15, 15, 12, 13, 15, 15];

/// The path beyond a run's ground.
pub(crate) const fn path_beyond(run: usize, path: usize) -> usize {
    if run < 2 { path } else { ALONE[path] }
}

/// How the odds of alternatives are put together.
pub(crate) trait Over {
    /// Puts one more alternative to those so far.
    fn add(to: &mut f64, more: f64);
}

/// Added: how likely all of them are.
pub(crate) struct Sum;

/// The greatest: how likely the likeliest is.
pub(crate) struct Best;

impl Over for Sum {
    fn add(to: &mut f64, more: f64) {
        *to += more;
    }
}

impl Over for Best {
    fn add(to: &mut f64, more: f64) {
        *to = to.max(more);
    }
}

/// The path beyond a wire in this state, by the path before it: the worse counts. The step between the states of the wire is
/// [`STATES`] for the hot conductor and 1 for the neutral.
pub(crate) const fn worse(path: usize, step: usize, state: usize) -> usize {
    let before = path / step % STATES;
    if state > before { path + (state - before) * step } else { path }
}

/// What goes up through the hot conductor or the neutral.
pub(crate) fn through_wire<O: Over, const STEP: usize>(beyond: &Likely, run: &[f64; 3]) -> Likely {
    let mut result = NEVER;
    for (result, beyond) in result.iter_mut().zip(beyond) {
        for (path, result) in result.iter_mut().enumerate() {
            for (state, odds) in run.iter().enumerate() {
                O::add(result, odds * beyond[worse(path, STEP, state)]);
            }
        }
    }
    result
}
