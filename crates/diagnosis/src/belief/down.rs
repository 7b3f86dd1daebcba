//! The way down again: how likely each state of each run and each device is, given all that was found on the circuit.
//!
//! What the way up made is a sum of products, each factor at most once in a product. So how likely a factor's state is, is
//! the factor times the slope of the whole along it: the slopes are handed down the tree, from the whole to each part.

use super::likely::{
    JOINED, LOOSE_BEFORE, Likely, NEVER, SINGLE, Sum, beyond_run, ground_number, meets, path_beyond, worse,
};
use super::sighting_odds::odds_if_misseen;
use super::state::{Arrival, Joined};
use super::stations::{ARRIVALS, Local, PATHS, STATES, Station, Stations, WIRINGS};
use super::up::{Step, Up, at_root, either};

/// How likely each state at one station is; each list adds up to one.
#[derive(Clone, Debug)]
pub(crate) struct Odds {
    /// The run's hot conductor.
    pub(crate) hot: [f64; 3],
    /// The run's neutral.
    pub(crate) neutral: [f64; 3],
    /// The run's ground.
    pub(crate) ground: [f64; 6],
    /// The device with what arrives: by wiring, arrival and path.
    pub(crate) local: Local,
    /// How likely it is that what was seen here was written down wrongly.
    pub(crate) misseen: f64,
}

/// How likely each state of every station is; nothing where what was found cannot be.
pub(crate) fn down(stations: &Stations, up: &Up) -> Option<Vec<Odds>> {
    let total = up.total::<Sum>();
    if !(total.is_finite() && total > 0.0) {
        return None;
    }
    let mut slopes: Vec<[Likely; 2]> = vec![[NEVER; 2]; stations.all.len()];
    for root in &stations.roots {
        root_slopes(stations, up, *root, &mut slopes[*root]);
    }
    let mut found = Vec::with_capacity(stations.all.len());
    for (number, station) in stations.all.iter().enumerate() {
        let step = &up.steps[number];
        even(&mut slopes[number]);
        let (odds, beyond) = at_station(station, step, &slopes[number]);
        found.push(odds);
        hand_on(station, up, step, beyond, &mut slopes);
    }
    Some(found)
}

/// Divides slopes by the greatest: only their ratios count.
fn even(slopes: &mut [Likely; 2]) {
    let greatest = slopes.iter().flatten().flatten().fold(0.0, |greatest: f64, slope| greatest.max(*slope));
    if greatest > 0.0 {
        let factor = 1.0 / greatest;
        slopes.iter_mut().flatten().flatten().for_each(|slope| *slope *= factor);
    }
}

/// The slopes of the whole along what comes up from one root.
fn root_slopes(stations: &Stations, up: &Up, root: usize, slopes: &mut [Likely; 2]) {
    let at_panel = [(true, stations.panel_has_ground), (false, 1.0 - stations.panel_has_ground)];
    for (has_ground, odds) in at_panel {
        let others = stations.roots.iter().filter(|other| **other != root).map(|other| {
            let through = &up.steps[*other].through;
            at_root(has_ground).iter().map(|ground| through[0][*ground][0] + through[1][*ground][0]).sum::<f64>()
        });
        let slope = odds * others.product::<f64>();
        for ground in at_root(has_ground) {
            slopes.iter_mut().for_each(|loose| loose[*ground][0] += slope);
        }
    }
}

/// What is likely at a station, and the slopes along what comes from beyond it.
fn at_station(station: &Station, step: &Step, slopes: &[Likely; 2]) -> (Odds, [Likely; 2]) {
    let (mut hot, mut neutral) = ([0.0; 3], [0.0; 3]);
    let mut of_ground = [NEVER; 2];
    for loose in 0..2 {
        let of_hot = wire_slopes::<1>(&step.after_hot[loose], &slopes[loose], &station.neutral, &mut neutral);
        of_ground[loose] = wire_slopes::<STATES>(&step.after_ground[loose], &of_hot, &station.hot, &mut hot);
    }
    let (ground, of_here) = ground_slopes(station, step, &of_ground);
    let mut local = [[[0.0; PATHS]; ARRIVALS]; WIRINGS];
    let mut beyond = [NEVER; 2];
    let mut misseen = 0.0;
    for (run, slopes) in of_here.iter().enumerate() {
        for loose in 0..station.loose_matters() {
            if let Some(all) = step.beyond.last() {
                misseen += here_slopes(station, [run, loose], &all[loose], slopes, &mut local, &mut beyond[loose]);
            }
        }
    }
    let all: f64 = local.iter().flatten().flatten().sum();
    if all > 0.0 {
        let factor = 1.0 / all;
        local.iter_mut().flatten().flatten().for_each(|odds| *odds *= factor);
        misseen *= factor;
    }
    (Odds { hot: shares(hot), neutral: shares(neutral), ground: shares(ground), local, misseen }, beyond)
}

fn shares<const N: usize>(odds: [f64; N]) -> [f64; N] {
    let total: f64 = odds.iter().sum();
    if total > 0.0 { odds.map(|odds| odds / total) } else { odds }
}

/// The slopes along what lies beyond a wire, and how likely each of its states is.
fn wire_slopes<const STEP: usize>(beyond: &Likely, slopes: &Likely, run: &[f64; 3], likely: &mut [f64; 3]) -> Likely {
    let mut result = NEVER;
    for (ground, slopes) in slopes.iter().enumerate() {
        for (path, slope) in slopes.iter().enumerate() {
            for (state, odds) in run.iter().enumerate() {
                let worse = worse(path, STEP, state);
                result[ground][worse] += odds * slope;
                likely[state] += odds * slope * beyond[ground][worse];
            }
        }
    }
    result
}

/// How likely each state of the run's ground is, and the slopes along what the station makes, by that state where it matters.
fn ground_slopes(station: &Station, step: &Step, slopes: &[Likely; 2]) -> ([f64; 6], Vec<Likely>) {
    let mut likely = [0.0; 6];
    let mut of_here = vec![NEVER; step.here.len()];
    for (run, of_run) in station.ground.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
        let variant = if run < step.here.len() { run } else { 0 };
        let (here, of_here) = (&step.here[variant], &mut of_here[variant]);
        let slopes = &slopes[usize::from(run == LOOSE_BEFORE)];
        for (ground, slopes) in slopes.iter().enumerate() {
            for beyond in beyond_run(run, ground) {
                for (path, slope) in slopes.iter().enumerate() {
                    let (path, slope) = (path_beyond(run, path), of_run * slope);
                    likely[run] += slope * here[*beyond][path];
                    of_here[*beyond][path] += slope;
                }
            }
        }
    }
    (likely, of_here)
}

/// Adds what is likely at the device, and the slopes along what comes from beyond; answers how likely it is with the
/// sighting written down wrongly.
fn here_slopes(
    station: &Station,
    [run, loose]: [usize; 2],
    all: &Likely,
    slopes: &Likely,
    local: &mut Local,
    beyond: &mut Likely,
) -> f64 {
    let mut misseen = 0.0;
    for (arrival, arrives) in Arrival::ALL.iter().enumerate() {
        let unmet = ground_number(arrival, false);
        let joined = arrives.joined() != Joined::Nothing;
        let met = if joined { unmet + 1 } else { unmet };
        let any = slopes[unmet].iter().chain(&slopes[met]).any(|slope| *slope > 0.0);
        if !any {
            continue;
        }
        // How likely the rest is, with a device that does not, and that does, join what arrives to something.
        let (mut plain, mut meeting) = ([0.0; PATHS], [0.0; PATHS]);
        for path in 0..PATHS {
            plain[path] = all[unmet][path] * slopes[unmet][path];
            if joined {
                plain[path] += all[met][path] * slopes[met][path];
                meeting[path] = (all[unmet][path] + all[met][path]) * slopes[met][path];
            }
        }
        for wiring in 0..WIRINGS {
            let odds = station.odds(run, loose, wiring, arrival);
            let is_jumper = meets(wiring, arrival);
            let rest = if is_jumper { &meeting } else { &plain };
            let mut sum = 0.0;
            for path in 0..PATHS {
                let whole = odds[path] * rest[path];
                local[wiring][arrival][path] += whole;
                sum += whole;
                let of_unmet = if is_jumper { slopes[met][path] } else { slopes[unmet][path] };
                beyond[unmet][path] += odds[path] * of_unmet;
                if joined {
                    beyond[met][path] += odds[path] * slopes[met][path];
                }
            }
            if let Some(sight) = station.sight.as_ref().filter(|_| sum > 0.0) {
                misseen += sum * odds_if_misseen() / sight[loose][run][wiring];
            }
        }
    }
    misseen
}

/// Hands the slopes along what comes from beyond on to each run beyond.
fn hand_on(station: &Station, up: &Up, step: &Step, beyond: [Likely; 2], slopes: &mut [[Likely; 2]]) {
    let mut of_all = beyond;
    for (at, child) in station.children.iter().enumerate().rev() {
        let so_far = &step.beyond[at];
        let more = &up.steps[*child].through;
        let more_either = either::<Sum>(&more[0], &more[1]);
        if station.sight.is_some() {
            let so_far_either = either::<Sum>(&so_far[0], &so_far[1]);
            let sound = either::<Sum>(&of_both(&of_all[0], &more[0]), &of_both(&of_all[1], &more[1]));
            let more_sound = either::<Sum>(&of_both(&of_all[0], &so_far[0]), &of_both(&of_all[1], &so_far[1]));
            slopes[*child] = [more_sound, of_both(&of_all[1], &so_far_either)];
            of_all = [sound, of_both(&of_all[1], &more_either)];
        } else {
            let of_more = of_both(&of_all[0], &so_far[0]);
            slopes[*child] = [of_more, of_more];
            of_all[0] = of_both(&of_all[0], &more_either);
        }
    }
}

/// The slopes along one of two that were put together, by the slopes along both and by the other.
pub(crate) fn of_both(slopes: &Likely, other: &Likely) -> Likely {
    let mut result = NEVER;
    for ground in SINGLE {
        for path in 0..PATHS {
            result[ground][path] = slopes[ground][path] * other[ground][path];
        }
    }
    for (unmet, met) in JOINED {
        for path in 0..PATHS {
            let of_met = slopes[met][path];
            result[unmet][path] = slopes[unmet][path] * other[unmet][path] + of_met * other[met][path];
            result[met][path] = of_met * (other[unmet][path] + other[met][path]);
        }
    }
    result
}
