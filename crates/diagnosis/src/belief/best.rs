//! The likeliest state of a whole circuit, read off the way up.

use super::likely::{
    ARRIVAL, Best as Likeliest, LOOSE_BEFORE, Likely, MET, beyond_run, ground_number, meets, path_beyond, worse,
};
use super::state::{Arrival, AtBox, GroundRun, Joined, WireState};
use super::stations::{STATES, Stations, WIRINGS, at_box};
use super::up::{Step, Up, at_root, either};

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
    let total = up.total::<Likeliest>();
    if !(total.is_finite() && total > 0.0) {
        return None;
    }
    let has_ground = up.at_panel[0] >= up.at_panel[1];
    let mut told: Vec<Option<Told>> = vec![None; stations.all.len()];
    let mut wanted: Vec<(State, [bool; 2])> = vec![((0, 0), [true; 2]); stations.all.len()];
    for root in &stations.roots {
        let through = &up.steps[*root].through;
        let of = |ground: &usize| through[0][*ground][0].max(through[1][*ground][0]);
        let best = at_root(has_ground).iter().max_by(|left, right| of(left).total_cmp(&of(right)));
        wanted[*root].0 = (best.copied().unwrap_or(0), 0);
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

/// The ground and the path that arrive, by their numbers.
type State = (usize, usize);

/// The best state of a station by what arrives before it, with the state that is wanted of what comes from beyond, and
/// whether a run beyond is loose in its box.
fn at_station(
    stations: &Stations,
    up: &Up,
    number: usize,
    (ground_before, path_before): State,
    loose: [bool; 2],
) -> Option<(Told, State, bool)> {
    let station = &stations.all[number];
    let step: &Step = &up.steps[number];
    let mut best = Best::none();
    for (run, of_run) in station.ground.iter().enumerate() {
        if !loose[usize::from(run == LOOSE_BEFORE)] {
            continue;
        }
        let here = step.here.get(run).or(step.here.first())?;
        for (hot, of_hot) in station.hot.iter().enumerate() {
            for (neutral, of_neutral) in station.neutral.iter().enumerate() {
                let path = path_beyond(run, worse(worse(path_before, STATES, hot), 1, neutral));
                for ground in beyond_run(run, ground_before) {
                    let odds = of_run * of_hot * of_neutral * here[*ground][path];
                    best.try_with(odds, || (run, hot, neutral, (*ground, path)));
                }
            }
        }
    }
    let (run, hot, neutral, (ground, path)) = best.of?;
    let arrival = ARRIVAL[ground];
    let unmet = ground_number(arrival, false);
    let joined = Arrival::ALL[arrival].joined() != Joined::Nothing;
    let mut best = Best::none();
    let all = step.beyond.last()?;
    for (loose, all) in all.iter().enumerate().take(station.loose_matters()) {
        for wiring in 0..WIRINGS {
            let odds = station.odds(run, loose, wiring, arrival)[path];
            let beyond: &[usize] = match (joined, MET[ground], meets(wiring, arrival)) {
                (false, ..) | (true, false, false) => &[unmet],
                (true, false, true) => &[],
                (true, true, false) => &[unmet + 1],
                (true, true, true) => &[unmet, unmet + 1],
            };
            for ground in beyond {
                best.try_with(odds * all[*ground][path], || (wiring, (*ground, path), loose == 1));
            }
        }
    }
    let (wiring, beyond, is_loose) = best.of?;
    let told = Told {
        hot: WireState::ALL[hot],
        neutral: WireState::ALL[neutral],
        ground: GroundRun::ALL[run],
        at: at_box(wiring, arrival, path),
    };
    Some((told, beyond, is_loose))
}

/// How what is wanted of all runs beyond comes about: from those so far, and from one more.
#[derive(Clone, Copy)]
struct Split {
    so_far: State,
    so_far_loose: bool,
    more: State,
    more_loose: [bool; 2],
}

fn apart(so_far: &[Likely; 2], more: &[Likely; 2], seen: bool, wanted: State, loose: bool) -> Option<Split> {
    let mut best = Best::none();
    let (ground, path) = wanted;
    // Two together have met a jumper where either has.
    let ways: &[(usize, usize)] =
        if MET[ground] { &[(ground - 1, ground), (ground, ground - 1), (ground, ground)] } else { &[(ground, ground)] };
    let mut try_all = |one: &Likely, other: &Likely, so_far_loose: bool, more_loose: [bool; 2]| {
        for (so_far, more) in ways {
            best.try_with(one[*so_far][path] * other[*more][path], || Split {
                so_far: (*so_far, path),
                so_far_loose,
                more: (*more, path),
                more_loose,
            });
        }
    };
    let more_either = either::<Likeliest>(&more[0], &more[1]);
    match (seen, loose) {
        (false, _) => try_all(&so_far[0], &more_either, false, [true, true]),
        (true, false) => try_all(&so_far[0], &more[0], false, [true, false]),
        (true, true) => {
            try_all(&so_far[0], &more[1], false, [false, true]);
            try_all(&so_far[1], &more_either, true, [true, true]);
        }
    }
    best.of
}
