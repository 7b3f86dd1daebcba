//! The way up the tree: each box tells what feeds it how likely everything from there on is, by what arrives there.
//!
//! What arrives is a path (hot and neutral) and a ground. A ground that does not reach the panel belongs to a bonded group,
//! which may be joined to the neutral or the hot conductor by a jumper at any of its boxes: the group's boxes agree on what
//! it is joined to, and a bit goes up the tree with it that says whether a jumper was met yet. At the top of the group one
//! must have been. So every state of the whole tree is counted once, and none that cannot be.

use super::likely::{
    CLOSED_ABSENT, JOINED, LOOSE_BEFORE, Likely, MET, NEVER, Over, SINGLE, beyond_run, ground_number, meets,
    path_beyond, through_wire,
};
use super::state::{Arrival, Joined};
use super::stations::{ARRIVALS, PATHS, RUNS, STATES, Station, Stations, WIRINGS};
use std::sync::Arc;

/// What goes up from one station, and what it is made of.
#[derive(Clone, Debug)]
pub(crate) struct Step {
    /// What comes up from the runs beyond, put together one after the other; the first is that of none. In each, how likely
    /// it is without and with one of them loose in this box.
    pub(crate) beyond: Vec<[Likely; 2]>,
    /// What the device, its readings and sightings make of it, by the state of the run's ground where that matters.
    pub(crate) here: Vec<Likely>,
    /// What goes up through the run's ground: where it is not, and is, loose in the box before.
    pub(crate) after_ground: [Likely; 2],
    /// And through its hot conductor.
    pub(crate) after_hot: [Likely; 2],
    /// And through its neutral: what arrives at the box before.
    pub(crate) through: [Likely; 2],
    /// The natural logarithm of what the odds were divided by, to keep them near one.
    scale: f64,
}

/// The way up a whole tree.
#[derive(Clone, Debug)]
pub(crate) struct Up {
    /// By station.
    pub(crate) steps: Vec<Arc<Step>>,
    /// How likely all that was found is, with and without a ground at the panel.
    pub(crate) at_panel: [f64; 2],
    /// The natural logarithm of what the odds were divided by on the way.
    pub(crate) scale: f64,
}

impl Up {
    /// How likely all that was found is, but for the scale.
    pub(crate) fn total<O: Over>(&self) -> f64 {
        let mut total = 0.0;
        self.at_panel.iter().for_each(|odds| O::add(&mut total, *odds));
        total
    }

    /// How likely all that was found is.
    pub(crate) fn log_odds<O: Over>(&self) -> f64 {
        self.total::<O>().ln() + self.scale
    }
}

/// Goes up a tree.
pub(crate) fn up<O: Over>(stations: &Stations) -> Up {
    let empty = Arc::new(Step {
        beyond: Vec::new(),
        here: Vec::new(),
        after_ground: [NEVER; 2],
        after_hot: [NEVER; 2],
        through: [NEVER; 2],
        scale: 0.0,
    });
    let mut steps = vec![empty; stations.all.len()];
    for number in (0..stations.all.len()).rev() {
        steps[number] = Arc::new(step::<O>(stations, number, &steps));
    }
    at_panel::<O>(stations, steps)
}

/// Goes up again where one station has changed.
pub(crate) fn up_again<O: Over>(stations: &Stations, before: &Up, changed: usize) -> Up {
    let mut steps = before.steps.clone();
    let mut next = Some(changed);
    while let Some(number) = next {
        steps[number] = Arc::new(step::<O>(stations, number, &steps));
        next = stations.all[number].parent;
    }
    at_panel::<O>(stations, steps)
}

fn at_panel<O: Over>(stations: &Stations, steps: Vec<Arc<Step>>) -> Up {
    let mut at_panel = [stations.panel_has_ground, 1.0 - stations.panel_has_ground];
    for root in &stations.roots {
        for (without, odds) in at_panel.iter_mut().enumerate() {
            *odds *= from_panel::<O>(&steps[*root], without == 0);
        }
    }
    let scale = steps.iter().map(|step| step.scale).sum();
    Up { steps, at_panel, scale }
}

/// The grounds that a root may have, with or without a ground at the panel.
pub(crate) const fn at_root(has_ground: bool) -> &'static [usize] {
    if has_ground { &[0] } else { &CLOSED_ABSENT }
}

/// How likely all beyond a root is.
fn from_panel<O: Over>(step: &Step, has_ground: bool) -> f64 {
    let mut odds = 0.0;
    for through in &step.through {
        at_root(has_ground).iter().for_each(|ground| O::add(&mut odds, through[*ground][0]));
    }
    odds
}

fn step<O: Over>(stations: &Stations, number: usize, steps: &[Arc<Step>]) -> Step {
    let station = &stations.all[number];
    let mut none = NEVER;
    for (ground, odds) in none.iter_mut().enumerate() {
        *odds = if MET[ground] { [0.0; PATHS] } else { [1.0; PATHS] };
    }
    let mut beyond = Vec::with_capacity(1 + station.children.len());
    beyond.push([none, NEVER]);
    for child in station.children.iter() {
        if let Some(last) = beyond.last() {
            let next = together::<O>(last, &steps[*child].through, station.sight.is_some());
            beyond.push(next);
        }
    }
    let here = beyond.last().map_or(Vec::new(), |all| here::<O>(station, all));
    let after_ground = after_ground::<O>(station, &here);
    let after_hot = after_ground.each_ref().map(|likely| through_wire::<O, STATES>(likely, &station.hot));
    let mut through = after_hot.each_ref().map(|likely| through_wire::<O, 1>(likely, &station.neutral));
    let scale = rescale(&mut through);
    Step { beyond, here, after_ground, after_hot, through, scale }
}

/// Divides by the greatest, and answers its logarithm.
fn rescale(through: &mut [Likely; 2]) -> f64 {
    let greatest = through.iter().flatten().flatten().fold(0.0, |greatest: f64, odds| greatest.max(*odds));
    if greatest <= 0.0 {
        return 0.0;
    }
    let factor = 1.0 / greatest;
    through.iter_mut().flatten().flatten().for_each(|odds| *odds *= factor);
    greatest.ln()
}

/// What comes from the runs beyond so far, together with one more run.
pub(crate) fn together<O: Over>(so_far: &[Likely; 2], more: &[Likely; 2], seen: bool) -> [Likely; 2] {
    if !seen {
        return [both::<O>(&so_far[0], &either::<O>(&more[0], &more[1])), NEVER];
    }
    let loose_now = both::<O>(&so_far[0], &more[1]);
    let loose_before = both::<O>(&so_far[1], &either::<O>(&more[0], &more[1]));
    [both::<O>(&so_far[0], &more[0]), either::<O>(&loose_now, &loose_before)]
}

/// One or the other.
pub(crate) fn either<O: Over>(one: &Likely, other: &Likely) -> Likely {
    let mut result = *one;
    for (to, more) in result.iter_mut().zip(other) {
        to.iter_mut().zip(more).for_each(|(to, more)| O::add(to, *more));
    }
    result
}

/// Two together: a jumper is met where either meets it.
pub(crate) fn both<O: Over>(one: &Likely, other: &Likely) -> Likely {
    let mut result = NEVER;
    for ground in SINGLE {
        for path in 0..PATHS {
            result[ground][path] = one[ground][path] * other[ground][path];
        }
    }
    for (unmet, met) in JOINED {
        for path in 0..PATHS {
            result[unmet][path] = one[unmet][path] * other[unmet][path];
            let mut odds = one[unmet][path] * other[met][path];
            O::add(&mut odds, one[met][path] * other[unmet][path]);
            O::add(&mut odds, one[met][path] * other[met][path]);
            result[met][path] = odds;
        }
    }
    result
}

/// What the device, its readings and sightings make of what comes from beyond.
fn here<O: Over>(station: &Station, beyond: &[Likely; 2]) -> Vec<Likely> {
    let by_run = station.sight.is_some() || station.only.is_some();
    let runs = if by_run { RUNS } else { 1 };
    let mut result = vec![NEVER; runs];
    for (run, result) in result.iter_mut().enumerate() {
        if by_run && station.ground[run] <= 0.0 {
            continue;
        }
        for (loose, beyond) in beyond.iter().enumerate().take(station.loose_matters()) {
            add_here::<O>(station, run, loose, beyond, result);
        }
    }
    result
}

fn add_here<O: Over>(station: &Station, run: usize, loose: usize, beyond: &Likely, result: &mut Likely) {
    // Devices that do not, and that do, join what arrives to something.
    let mut plain = [[0.0; PATHS]; ARRIVALS];
    let mut meeting = [[0.0; PATHS]; ARRIVALS];
    for wiring in 0..WIRINGS {
        for arrival in 0..ARRIVALS {
            let to = if meets(wiring, arrival) { &mut meeting[arrival] } else { &mut plain[arrival] };
            let odds = station.odds(run, loose, wiring, arrival);
            to.iter_mut().zip(odds).for_each(|(to, odds)| O::add(to, odds));
        }
    }
    for (arrival, arrives) in Arrival::ALL.iter().enumerate() {
        let unmet = ground_number(arrival, false);
        let joined = arrives.joined() != Joined::Nothing;
        for path in 0..PATHS {
            O::add(&mut result[unmet][path], plain[arrival][path] * beyond[unmet][path]);
            if joined {
                let met = unmet + 1;
                O::add(&mut result[met][path], plain[arrival][path] * beyond[met][path]);
                O::add(&mut result[met][path], meeting[arrival][path] * beyond[unmet][path]);
                O::add(&mut result[met][path], meeting[arrival][path] * beyond[met][path]);
            }
        }
    }
}

/// What goes up through a run's ground, by what arrives in the box before: where it is not, and is, loose there.
fn after_ground<O: Over>(station: &Station, here: &[Likely]) -> [Likely; 2] {
    let mut result = [NEVER; 2];
    for (run, of_run) in station.ground.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
        let Some(here) = here.get(run).or(here.first()) else { continue };
        let result = &mut result[usize::from(run == LOOSE_BEFORE)];
        for (ground, result) in result.iter_mut().enumerate() {
            for beyond in beyond_run(run, ground) {
                for (path, result) in result.iter_mut().enumerate() {
                    O::add(result, of_run * here[*beyond][path_beyond(run, path)]);
                }
            }
        }
    }
    result
}
