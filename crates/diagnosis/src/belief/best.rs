//! The likeliest state of a whole circuit, read off the way up.

use super::state::{Arrival, AtBox, GroundRun, Joined, WireState, Wiring};
use super::stations::{ARRIVALS, PATHS, RUNS, Stations, WIRINGS, at_box};
use super::up::{
    Beyond, CLOSED_ABSENT, GROUNDS, Likely, MET, Over, STATES, Step, Up, beyond_run, ground_number, meets, odds_here,
};

/// The state of one station in an explanation of the whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Told {
    /// The run's hot conductor.
    pub(crate) hot: WireState,
    /// The run's neutral.
    pub(crate) neutral: WireState,
    /// The run's ground.
    pub(crate) ground: GroundRun,
    /// What arrives, and how the device is wired.
    pub(crate) at: AtBox,
}

/// The likeliest state of a whole circuit: whether the panel has a ground, and every station; with how likely it is, as the
/// natural logarithm. Nothing where what was found cannot be.
pub(crate) fn best(stations: &Stations, up: &Up) -> Option<(f64, bool, Vec<Told>)> {
    let total = up.total(Over::Best);
    if !(total.is_finite() && total > 0.0) {
        return None;
    }
    let has_ground = up.at_panel[0] >= up.at_panel[1];
    let mut told: Vec<Option<Told>> = vec![None; stations.all.len()];
    let mut wanted: Vec<(usize, [bool; 2])> = vec![(0, [true; 2]); stations.all.len()];
    for root in &stations.roots {
        let grounds: &[usize] = if has_ground { &[0] } else { &CLOSED_ABSENT };
        let through = &up.steps[*root].through;
        let of = |ground: &usize| through[0][*ground].max(through[1][*ground]);
        let best = grounds.iter().max_by(|left, right| of(left).total_cmp(&of(right)));
        wanted[*root].0 = best.copied().unwrap_or(0);
    }
    for number in 0..stations.all.len() {
        let (before, loose) = wanted[number];
        let (state, mut ground, mut is_loose) = at_station(stations, up, number, before, loose)?;
        told[number] = Some(state);
        let station = &stations.all[number];
        let step = &up.steps[number];
        for (at, child) in station.children.iter().enumerate().rev() {
            let through = &up.steps[*child].through;
            let seen = station.sight.is_some();
            let split = apart(&step.beyond[at], through, seen, ground, is_loose)?;
            wanted[*child] = (split.more, split.more_loose);
            (ground, is_loose) = (split.so_far, split.so_far_loose);
        }
    }
    let told: Option<Vec<Told>> = told.into_iter().collect();
    told.map(|told| (total.ln() + up.scale, has_ground, told))
}

/// The best of many, each with its odds.
struct Best<T> {
    odds: f64,
    of: Option<T>,
}

impl<T> Best<T> {
    const fn none() -> Self {
        Self { odds: 0.0, of: None }
    }

    fn try_with(&mut self, odds: f64, of: impl FnOnce() -> T) {
        if odds > self.odds {
            self.odds = odds;
            self.of = Some(of());
        }
    }
}

/// The best state of a station by what arrives before it, with the state that is wanted of what comes from beyond, and
/// whether a run beyond is loose in its box.
fn at_station(
    stations: &Stations,
    up: &Up,
    number: usize,
    before: usize,
    loose: [bool; 2],
) -> Option<(Told, usize, bool)> {
    let station = &stations.all[number];
    let step: &Step = &up.steps[number];
    let (path_before, ground_before) = (before / GROUNDS, before % GROUNDS);
    let mut best = Best::none();
    for (run, of_run) in station.ground.iter().enumerate() {
        if !loose[usize::from(run == 4)] {
            continue;
        }
        let here = step.here.get(run).or(step.here.first())?;
        for hot in 0..3 {
            for neutral in 0..3 {
                let path = (path_before / 3).max(hot) * 3 + (path_before % 3).max(neutral);
                let odds = of_run * station.hot[hot] * station.neutral[neutral];
                let mut try_beyond = |beyond: usize| {
                    let at = path * GROUNDS + beyond;
                    best.try_with(odds * here[at], || (run, hot, neutral, at));
                };
                match beyond_run(run, ground_before) {
                    Beyond::Conducts(beyond) => try_beyond(beyond),
                    Beyond::Ends(_) if MET[ground_before] => {}
                    Beyond::Ends(all) => all.iter().for_each(|beyond| try_beyond(*beyond)),
                }
            }
        }
    }
    let (run, hot, neutral, at) = best.of?;
    let (path, ground) = (at / GROUNDS, at % GROUNDS);
    let arrival = super::up::ARRIVAL[ground];
    let unmet = path * GROUNDS + ground_number(arrival, false);
    let joined = Arrival::ALL[arrival].joined() != Joined::Nothing;
    let mut best = Best::none();
    let all = step.beyond.last()?;
    for (is_loose, all) in all.iter().enumerate().take(1 + usize::from(station.sight.is_some())) {
        for wiring in 0..WIRINGS {
            let odds = odds_here(station, run, is_loose, wiring, path, arrival);
            let met_here = meets(wiring, arrival);
            let mut try_beyond = |at: usize| best.try_with(odds * all[at], || (wiring, at, is_loose == 1));
            match (joined, MET[ground], met_here) {
                (false, ..) | (true, false, false) => try_beyond(unmet),
                (true, false, true) => {}
                (true, true, false) => try_beyond(unmet + 1),
                (true, true, true) => {
                    try_beyond(unmet);
                    try_beyond(unmet + 1);
                }
            }
        }
    }
    let (wiring, beyond, is_loose) = best.of?;
    let told = Told {
        hot: WireState::ALL[hot],
        neutral: WireState::ALL[neutral],
        ground: GroundRun::ALL[run],
        at: at_box(wiring, path, arrival),
    };
    debug_assert!(run < RUNS && path < PATHS && arrival < ARRIVALS && Wiring::ALL.len() == WIRINGS);
    Some((told, beyond, is_loose))
}

/// How what is wanted of all runs beyond comes about: from those so far, and from one more.
#[derive(Clone, Copy)]
struct Split {
    so_far: usize,
    so_far_loose: bool,
    more: usize,
    more_loose: [bool; 2],
}

fn apart(so_far: &[Likely; 2], more: &[Likely; 2], seen: bool, wanted: usize, loose: bool) -> Option<Split> {
    let mut best = Best::none();
    let mut either = more[0];
    either.iter_mut().zip(&more[1]).for_each(|(odds, other)| *odds = odds.max(*other));
    let mut try_all = |one: &Likely, other: &Likely, so_far_loose: bool, more_loose: [bool; 2]| {
        for (so_far, more) in ways(wanted) {
            best.try_with(one[so_far] * other[more], || Split { so_far, so_far_loose, more, more_loose });
        }
    };
    match (seen, loose) {
        (false, _) => try_all(&so_far[0], &either, false, [true, true]),
        (true, false) => try_all(&so_far[0], &more[0], false, [true, false]),
        (true, true) => {
            try_all(&so_far[0], &more[1], false, [false, true]);
            try_all(&so_far[1], &either, true, [true, true]);
        }
    }
    best.of
}

/// The ways in which two together have met a jumper, or not.
fn ways(wanted: usize) -> Vec<(usize, usize)> {
    debug_assert!(wanted < STATES);
    if MET[wanted % GROUNDS] {
        vec![(wanted - 1, wanted), (wanted, wanted - 1), (wanted, wanted)]
    } else {
        vec![(wanted, wanted)]
    }
}
