//! The way down again: how likely each state of each run and each device is, given all that was found on the circuit.
//!
//! What the way up made is a sum of products, each factor at most once in a product. So how likely a factor's state is, is
//! the factor times the slope of the whole along it: the slopes are handed down the tree, from the whole to each part.

use super::sighting_odds::odds_if_misseen;
use super::state::{Arrival, Joined};
use super::stations::{ARRIVALS, PATHS, Station, Stations, WIRINGS, place};
use super::up::{
    Beyond, CLOSED_ABSENT, GROUNDS, Likely, MET, Over, STATES, Step, Up, beyond_run, ground_number, meets, odds_here,
};

/// How likely each state at one station is; each list adds up to one.
#[derive(Clone, Debug)]
pub(crate) struct Odds {
    /// The run's hot conductor.
    pub(crate) hot: [f64; 3],
    /// The run's neutral.
    pub(crate) neutral: [f64; 3],
    /// The run's ground.
    pub(crate) ground: [f64; 6],
    /// The device with what arrives: by wiring, path and arrival.
    pub(crate) local: Vec<f64>,
    /// How likely it is that what was seen here was written down wrongly.
    pub(crate) misseen: f64,
}

/// How likely each state of every station is; nothing where what was found cannot be.
pub(crate) fn down(stations: &Stations, up: &Up) -> Option<Vec<Odds>> {
    let total = up.total(Over::Sum);
    if !(total.is_finite() && total > 0.0) {
        return None;
    }
    let mut slopes: Vec<[Likely; 2]> = vec![[[0.0; STATES]; 2]; stations.all.len()];
    for root in &stations.roots {
        slopes[*root] = root_slopes(stations, up, *root);
    }
    let mut found = Vec::with_capacity(stations.all.len());
    for (number, station) in stations.all.iter().enumerate() {
        let step = &up.steps[number];
        let mut slope = slopes[number];
        even(&mut slope);
        let (odds, beyond) = at_station(station, step, &slope);
        found.push(odds);
        hand_on(station, up, step, beyond, &mut slopes);
    }
    Some(found)
}

/// Divides slopes by the greatest: only their ratios count.
fn even(slopes: &mut [Likely; 2]) {
    let greatest = slopes.iter().flatten().fold(0.0, |greatest: f64, slope| greatest.max(*slope));
    if greatest > 0.0 {
        slopes.iter_mut().flatten().for_each(|slope| *slope /= greatest);
    }
}

/// The slopes of the whole along what comes up from one root.
fn root_slopes(stations: &Stations, up: &Up, root: usize) -> [Likely; 2] {
    let mut slopes = [[0.0; STATES]; 2];
    let at_panel = [stations.panel_has_ground, 1.0 - stations.panel_has_ground];
    for (without, odds) in at_panel.into_iter().enumerate() {
        let others = stations.roots.iter().filter(|other| **other != root).map(|other| {
            let through = &up.steps[*other].through;
            let grounds: &[usize] = if without == 0 { &[0] } else { &CLOSED_ABSENT };
            grounds.iter().map(|ground| through[0][*ground] + through[1][*ground]).sum::<f64>()
        });
        let slope = odds * others.product::<f64>();
        let grounds: &[usize] = if without == 0 { &[0] } else { &CLOSED_ABSENT };
        for ground in grounds {
            slopes.iter_mut().for_each(|loose| loose[*ground] += slope);
        }
    }
    slopes
}

/// What is likely at a station, and the slopes along what comes from beyond it.
fn at_station(station: &Station, step: &Step, slopes: &[Likely; 2]) -> (Odds, [Likely; 2]) {
    let before_wires = before_wires(station, step);
    let (mut hot, mut neutral) = ([0.0; 3], [0.0; 3]);
    let mut of_ground = [[0.0; STATES]; 2];
    for loose in 0..2 {
        let after_hot = wire(&before_wires[loose], &station.hot, 3);
        let of_hot = wire_slopes(&after_hot, &slopes[loose], &station.neutral, 1, &mut neutral);
        of_ground[loose] = wire_slopes(&before_wires[loose], &of_hot, &station.hot, 3, &mut hot);
    }
    let (ground, of_here) = ground_slopes(station, step, &of_ground);
    let mut local = vec![0.0; WIRINGS * PATHS * ARRIVALS];
    let mut beyond = [[0.0; STATES]; 2];
    let mut misseen = 0.0;
    let loose_counts = 1 + usize::from(station.sight.is_some());
    for (run, slopes) in of_here.iter().enumerate() {
        for loose in 0..loose_counts {
            if let Some(all) = step.beyond.last() {
                misseen += here_slopes(station, [run, loose], &all[loose], slopes, &mut local, &mut beyond[loose]);
            }
        }
    }
    let all: f64 = local.iter().sum();
    let misseen = if all > 0.0 { misseen / all } else { 0.0 };
    let odds =
        Odds { hot: shares(hot), neutral: shares(neutral), ground: shares(ground), local: all_shares(local), misseen };
    (odds, beyond)
}

fn shares<const N: usize>(odds: [f64; N]) -> [f64; N] {
    let total: f64 = odds.iter().sum();
    if total > 0.0 { odds.map(|odds| odds / total) } else { odds }
}

fn all_shares(mut odds: Vec<f64>) -> Vec<f64> {
    let total: f64 = odds.iter().sum();
    if total > 0.0 {
        odds.iter_mut().for_each(|odds| *odds /= total);
    }
    odds
}

/// What goes up through the run's ground, before its wires.
fn before_wires(station: &Station, step: &Step) -> [Likely; 2] {
    let mut result = [[0.0; STATES]; 2];
    each_way(station, step, |run, at, of_run, beyond, here| {
        result[usize::from(run == LOOSE_BEFORE)][at] += of_run * here[beyond];
    });
    result
}

const LOOSE_BEFORE: usize = 4;

/// Calls with every way in which the run's ground hands on: its state, the state before it, the odds of the run, the state
/// beyond it, and how likely that is.
fn each_way(station: &Station, step: &Step, mut call: impl FnMut(usize, usize, f64, usize, &Likely)) {
    for (run, of_run) in station.ground.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
        let Some(here) = step.here.get(run).or(step.here.first()) else { continue };
        for path in 0..PATHS {
            let at = path * GROUNDS;
            for (ground, met) in MET.iter().enumerate() {
                match beyond_run(run, ground) {
                    Beyond::Conducts(beyond) => call(run, at + ground, *of_run, at + beyond, here),
                    Beyond::Ends(_) if *met => {}
                    Beyond::Ends(all) => {
                        all.iter().for_each(|beyond| call(run, at + ground, *of_run, at + beyond, here))
                    }
                }
            }
        }
    }
}

fn wire(beyond: &Likely, run: &[f64; 3], step: usize) -> Likely {
    let mut result = [0.0; STATES];
    each_wire(run, step, |_, at, worse, odds| result[at] += odds * beyond[worse]);
    result
}

/// The slopes along what lies beyond a wire, and how likely each of its states is.
fn wire_slopes(beyond: &Likely, slopes: &Likely, run: &[f64; 3], step: usize, likely: &mut [f64; 3]) -> Likely {
    let mut result = [0.0; STATES];
    each_wire(run, step, |state, at, worse, odds| {
        result[worse] += odds * slopes[at];
        likely[state] += odds * slopes[at] * beyond[worse];
    });
    result
}

fn each_wire(run: &[f64; 3], step: usize, mut call: impl FnMut(usize, usize, usize, f64)) {
    for path in 0..PATHS {
        let before = path / step % 3;
        for (state, odds) in run.iter().enumerate() {
            let worse = path - before * step + before.max(state) * step;
            for ground in 0..GROUNDS {
                call(state, path * GROUNDS + ground, worse * GROUNDS + ground, *odds);
            }
        }
    }
}

/// How likely each state of the run's ground is, and the slopes along what the station makes, by that state where it matters.
fn ground_slopes(station: &Station, step: &Step, slopes: &[Likely; 2]) -> ([f64; 6], Vec<Likely>) {
    let mut likely = [0.0; 6];
    let mut of_here = vec![[0.0; STATES]; step.here.len()];
    let variants = step.here.len();
    each_way(station, step, |run, at, of_run, beyond, here| {
        let slope = of_run * slopes[usize::from(run == LOOSE_BEFORE)][at];
        likely[run] += slope * here[beyond];
        of_here[if run < variants { run } else { 0 }][beyond] += slope;
    });
    (likely, of_here)
}

/// Adds what is likely at the device, and the slopes along what comes from beyond; answers how likely it is with the
/// sighting written down wrongly.
fn here_slopes(
    station: &Station,
    [run, loose]: [usize; 2],
    all: &Likely,
    slopes: &Likely,
    local: &mut [f64],
    beyond: &mut Likely,
) -> f64 {
    let mut misseen = 0.0;
    for path in 0..PATHS {
        for arrival in 0..ARRIVALS {
            let unmet = path * GROUNDS + ground_number(arrival, false);
            let joined = Arrival::ALL[arrival].joined() != Joined::Nothing;
            for wiring in 0..WIRINGS {
                let odds = odds_here(station, run, loose, wiring, path, arrival);
                if odds <= 0.0 {
                    continue;
                }
                // The slopes along what comes from beyond, without and with the jumper met there.
                let (of_unmet, of_met) = match (joined, meets(wiring, arrival)) {
                    (false, _) => (slopes[unmet], 0.0),
                    (true, false) => (slopes[unmet], slopes[unmet + 1]),
                    (true, true) => (slopes[unmet + 1], slopes[unmet + 1]),
                };
                beyond[unmet] += odds * of_unmet;
                let mut whole = all[unmet] * of_unmet;
                if joined {
                    beyond[unmet + 1] += odds * of_met;
                    whole += all[unmet + 1] * of_met;
                }
                local[place(wiring, path, arrival)] += odds * whole;
                if let Some(sight) = station.sight {
                    misseen += odds * whole * odds_if_misseen() / sight[loose][run][wiring];
                }
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
        let (of_so_far, of_more) = if station.sight.is_some() {
            let of_either = |one: &Likely, other: &Likely, sum: fn(f64, f64) -> f64| {
                let mut result = [0.0; STATES];
                result.iter_mut().zip(one.iter().zip(other)).for_each(|(to, (one, other))| *to = sum(*one, *other));
                result
            };
            let plus = |one: f64, other: f64| one + other;
            let more_either = of_either(&more[0], &more[1], plus);
            let so_far_either = of_either(&so_far[0], &so_far[1], plus);
            let sound = of_either(&of_both(&of_all[0], &more[0]), &of_both(&of_all[1], &more[1]), plus);
            let loose = of_both(&of_all[1], &more_either);
            let more_sound = of_either(&of_both(&of_all[0], &so_far[0]), &of_both(&of_all[1], &so_far[1]), plus);
            let more_loose = of_both(&of_all[1], &so_far_either);
            ([sound, loose], [more_sound, more_loose])
        } else {
            let mut either = more[0];
            either.iter_mut().zip(&more[1]).for_each(|(odds, other)| *odds += other);
            let of_more = of_both(&of_all[0], &so_far[0]);
            ([of_both(&of_all[0], &either), [0.0; STATES]], [of_more, of_more])
        };
        slopes[*child] = of_more;
        of_all = of_so_far;
    }
}

/// The slopes along one of two that were put together, by the slopes along both and by the other.
fn of_both(slopes: &Likely, other: &Likely) -> Likely {
    let mut result = [0.0; STATES];
    for path in 0..PATHS {
        let at = path * GROUNDS;
        for ground in 0..GROUNDS {
            let at = at + ground;
            let has_met = ground + 1 < GROUNDS && MET[ground + 1];
            result[at] = if MET[ground] {
                slopes[at] * (other[at - 1] + other[at])
            } else if has_met {
                slopes[at] * other[at] + slopes[at + 1] * other[at + 1]
            } else {
                slopes[at] * other[at]
            };
        }
    }
    result
}
