//! The way up the tree: each box tells what feeds it how likely everything from there on is, by what arrives there.
//!
//! What arrives is a path (hot and neutral) and a ground. A ground that does not reach the panel belongs to a bonded group,
//! which may be joined to the neutral or the hot conductor by a jumper at any of its boxes: the group's boxes agree on what
//! it is joined to, and a bit goes up the tree with it that says whether a jumper was met yet. At the top of the group one
//! must have been. So every state of the whole tree is counted once, and none that cannot be.

use super::state::{Arrival, Joined, Wiring};
use super::stations::{ARRIVALS, PATHS, RUNS, Station, Stations, WIRINGS, place, place_with_run};

/// Grounds as they go up the tree: an arrival, and where it is joined, whether its jumper was met.
pub(crate) const GROUNDS: usize = 12;
/// All states of what arrives.
pub(crate) const STATES: usize = PATHS * GROUNDS;

/// How likely all from here on is, by what arrives: the path, and the ground.
pub(crate) type Likely = [f64; STATES];

/// The arrival of a ground, by its number.
pub(crate) const ARRIVAL: [usize; GROUNDS] = [0, 1, 2, 3, 3, 4, 4, 5, 6, 6, 7, 7];
/// Whether its jumper was met.
pub(crate) const MET: [bool; GROUNDS] =
    [false, false, false, false, true, false, true, false, false, true, false, true];
/// The grounds at which a bonded group may end, each broken here, or lacking here.
pub(crate) const CLOSED_BROKEN: [usize; 3] = [2, 4, 6];
pub(crate) const CLOSED_ABSENT: [usize; 3] = [7, 9, 11];
/// The ground of which the second says that the jumper was met, for each joined arrival.
const JOINED: [(usize, usize); 4] = [(3, 4), (5, 6), (8, 9), (10, 11)];

/// The number of a ground by its arrival's number and whether its jumper was met; none where there is no such.
pub(crate) fn ground_number(arrival: usize, met: bool) -> usize {
    let first = [0, 1, 2, 3, 5, 7, 8, 10][arrival];
    first + usize::from(met)
}

/// Whether a device so wired is the jumper that joins what arrives.
pub(crate) fn meets(wiring: usize, arrival: usize) -> bool {
    matches!(
        (Wiring::ALL[wiring], Arrival::ALL[arrival].joined()),
        (Wiring::NeutralJumper, Joined::Neutral) | (Wiring::ReversedJumper, Joined::Hot)
    )
}

/// How the odds of alternatives are put together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Over {
    /// Added: how likely all of them are.
    Sum,
    /// The greatest: how likely the likeliest is.
    Best,
}

impl Over {
    pub(crate) fn add(self, to: &mut f64, more: f64) {
        match self {
            Self::Sum => *to += more,
            Self::Best if more > *to => *to = more,
            Self::Best => {}
        }
    }
}

/// What goes up from one station, and what it is made of.
#[derive(Clone, Debug)]
pub(crate) struct Step {
    /// What comes up from the runs beyond, put together one after the other; the first is that of none. In each, how likely
    /// it is without and with one of them loose in this box.
    pub(crate) beyond: Vec<[Likely; 2]>,
    /// What the device, its readings and sightings make of it, by the state of the run's ground where that matters.
    pub(crate) here: Vec<Likely>,
    /// What goes up through the run, by what arrives in the box before: where its ground is not, and is, loose there.
    pub(crate) through: [Likely; 2],
}

/// The way up a whole tree.
#[derive(Clone, Debug)]
pub(crate) struct Up {
    /// By station.
    pub(crate) steps: Vec<Step>,
    /// How likely all that was found is, with and without a ground at the panel.
    pub(crate) at_panel: [f64; 2],
    /// The natural logarithm of what the odds were divided by on the way, to keep them near one.
    pub(crate) scale: f64,
}

impl Up {
    /// How likely all that was found is, but for the scale.
    pub(crate) fn total(&self, over: Over) -> f64 {
        let mut total = 0.0;
        self.at_panel.iter().for_each(|odds| over.add(&mut total, *odds));
        total
    }
}

/// Goes up a tree.
pub(crate) fn up(stations: &Stations, over: Over) -> Up {
    let mut steps: Vec<Option<Step>> = stations.all.iter().map(|_| None).collect();
    let mut scale = 0.0;
    for number in (0..stations.all.len()).rev() {
        let mut step = step(stations, number, &steps, over);
        scale += rescale(&mut step.through);
        steps[number] = Some(step);
    }
    let steps: Vec<Step> = steps.into_iter().flatten().collect();
    let mut at_panel = [stations.panel_has_ground, 1.0 - stations.panel_has_ground];
    for root in &stations.roots {
        for (with, odds) in at_panel.iter_mut().enumerate() {
            *odds *= from_panel(&steps[*root], with == 0, over);
        }
    }
    Up { steps, at_panel, scale }
}

/// How likely all beyond a root is, with or without a ground at the panel.
fn from_panel(step: &Step, has_ground: bool, over: Over) -> f64 {
    let mut odds = 0.0;
    for through in &step.through {
        if has_ground {
            over.add(&mut odds, through[0]);
        } else {
            CLOSED_ABSENT.iter().for_each(|ground| over.add(&mut odds, through[*ground]));
        }
    }
    odds
}

/// Divides by the greatest, and answers its logarithm.
fn rescale(through: &mut [Likely; 2]) -> f64 {
    let greatest = through.iter().flatten().fold(0.0, |greatest: f64, odds| greatest.max(*odds));
    if greatest <= 0.0 {
        return 0.0;
    }
    through.iter_mut().flatten().for_each(|odds| *odds /= greatest);
    greatest.ln()
}

fn step(stations: &Stations, number: usize, steps: &[Option<Step>], over: Over) -> Step {
    let station = &stations.all[number];
    let mut none = [0.0; STATES];
    for (at, odds) in none.iter_mut().enumerate() {
        *odds = if MET[at % GROUNDS] { 0.0 } else { 1.0 };
    }
    let mut beyond = vec![[none, [0.0; STATES]]];
    for child in &station.children {
        let (Some(last), Some(step)) = (beyond.last(), &steps[*child]) else { continue };
        let next = together(last, &step.through, station.sight.is_some(), over);
        beyond.push(next);
    }
    let here = match beyond.last() {
        Some(all) => here(station, all, over),
        None => Vec::new(),
    };
    let through = through(station, &here, over);
    Step { beyond, here, through }
}

/// What comes from the runs beyond so far, together with one more run.
fn together(so_far: &[Likely; 2], more: &[Likely; 2], seen: bool, over: Over) -> [Likely; 2] {
    if seen {
        let loose_now = both(&so_far[0], &more[1], over);
        let loose_before = both(&so_far[1], &more[0], over);
        let loose_twice = both(&so_far[1], &more[1], over);
        let mut loose = loose_now;
        for (at, odds) in loose.iter_mut().enumerate() {
            over.add(odds, loose_before[at]);
            over.add(odds, loose_twice[at]);
        }
        [both(&so_far[0], &more[0], over), loose]
    } else {
        let mut either = more[0];
        either.iter_mut().zip(&more[1]).for_each(|(odds, other)| over.add(odds, *other));
        [both(&so_far[0], &either, over), [0.0; STATES]]
    }
}

/// Two together: a jumper is met where either meets it.
fn both(one: &Likely, other: &Likely, over: Over) -> Likely {
    let mut result = [0.0; STATES];
    for path in 0..PATHS {
        let at = path * GROUNDS;
        for ground in [0, 1, 2, 7] {
            result[at + ground] = one[at + ground] * other[at + ground];
        }
        for (unmet, met) in JOINED {
            let (unmet, met) = (at + unmet, at + met);
            result[unmet] = one[unmet] * other[unmet];
            let mut odds = one[unmet] * other[met];
            over.add(&mut odds, one[met] * other[unmet]);
            over.add(&mut odds, one[met] * other[met]);
            result[met] = odds;
        }
    }
    result
}

/// What the device, its readings and sightings make of what comes from beyond.
fn here(station: &Station, beyond: &[Likely; 2], over: Over) -> Vec<Likely> {
    let by_run = station.sight.is_some() || station.only.is_some();
    let runs = if by_run { RUNS } else { 1 };
    (0..runs)
        .map(|run| {
            let mut result = [0.0; STATES];
            for (loose, beyond) in beyond.iter().enumerate().take(1 + usize::from(station.sight.is_some())) {
                add_here(station, run, loose, beyond, &mut result, over);
            }
            result
        })
        .collect()
}

/// How likely a wiring at a station is with all that was found there, by its run, what is loose beyond, path and arrival.
pub(crate) fn odds_here(
    station: &Station,
    run: usize,
    loose: usize,
    wiring: usize,
    path: usize,
    arrival: usize,
) -> f64 {
    if station.only.as_ref().is_some_and(|only| !only[place_with_run(run, wiring, path, arrival)]) {
        return 0.0;
    }
    station.local[place(wiring, path, arrival)] * station.sight.map_or(1.0, |sight| sight[loose][run][wiring])
}

fn add_here(station: &Station, run: usize, loose: usize, beyond: &Likely, result: &mut Likely, over: Over) {
    for path in 0..PATHS {
        for arrival in 0..ARRIVALS {
            let (mut plain, mut meeting) = (0.0, 0.0);
            for wiring in 0..WIRINGS {
                let odds = odds_here(station, run, loose, wiring, path, arrival);
                over.add(if meets(wiring, arrival) { &mut meeting } else { &mut plain }, odds);
            }
            let unmet = path * GROUNDS + ground_number(arrival, false);
            over.add(&mut result[unmet], plain * beyond[unmet]);
            if Arrival::ALL[arrival].joined() != Joined::Nothing {
                let met = unmet + 1;
                over.add(&mut result[met], plain * beyond[met]);
                over.add(&mut result[met], meeting * beyond[unmet]);
                over.add(&mut result[met], meeting * beyond[met]);
            }
        }
    }
}

/// What a run's ground makes of what arrives before it: the arrivals beyond it, with the grounds they may have.
///
/// A run that conducts hands on what arrives, and a bad joint makes a path poor; one that does not ends the bonded group,
/// and what is joined beyond it must have met its jumper.
pub(crate) fn beyond_run(run: usize, ground: usize) -> Beyond {
    let absent_before = ground >= 7;
    match run {
        0 => Beyond::Conducts(ground),
        1 => Beyond::Conducts(if ground == 0 { 1 } else { ground }),
        5 => Beyond::Ends(&CLOSED_ABSENT),
        _ if absent_before => Beyond::Ends(&CLOSED_ABSENT),
        _ => Beyond::Ends(&CLOSED_BROKEN),
    }
}

/// What lies beyond a run.
pub(crate) enum Beyond {
    /// The same bonded group, with this ground.
    Conducts(usize),
    /// Another one, with one of these; what comes before has met nothing there.
    Ends(&'static [usize; 3]),
}

/// What goes up through a run, by what arrives in the box before: where its ground is not, and is, loose there.
fn through(station: &Station, here: &[Likely], over: Over) -> [Likely; 2] {
    const LOOSE_BEFORE: usize = 4;
    let mut result = [[0.0; STATES]; 2];
    for (run, of_run) in station.ground.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
        let Some(here) = here.get(run).or(here.first()) else { continue };
        let result = &mut result[usize::from(run == LOOSE_BEFORE)];
        for path in 0..PATHS {
            let at = path * GROUNDS;
            for ground in 0..GROUNDS {
                match beyond_run(run, ground) {
                    Beyond::Conducts(beyond) => over.add(&mut result[at + ground], of_run * here[at + beyond]),
                    Beyond::Ends(_) if MET[ground] => {}
                    Beyond::Ends(beyond) => {
                        for beyond in beyond {
                            over.add(&mut result[at + ground], of_run * here[at + beyond]);
                        }
                    }
                }
            }
        }
    }
    result.map(|likely| through_wire(&through_wire(&likely, &station.hot, 3, over), &station.neutral, 1, over))
}

/// What goes up through the hot conductor or the neutral: the worse of what arrives and of the run counts.
fn through_wire(beyond: &Likely, run: &[f64; 3], step: usize, over: Over) -> Likely {
    let mut result = [0.0; STATES];
    for path in 0..PATHS {
        let before = path / step % 3;
        for (state, odds) in run.iter().enumerate() {
            let worse = path - before * step + before.max(state) * step;
            for ground in 0..GROUNDS {
                over.add(&mut result[path * GROUNDS + ground], odds * beyond[worse * GROUNDS + ground]);
            }
        }
    }
    result
}
