//! What is hidden behind the covers of a simulated house, drawn from the odds that inference begins with.

use crate::chance::Chance;
use diagnosis::belief::{Arrival, AtBox, GroundRun, Joined, Priors, WireState, Wiring};
use dwelling::{Dwelling, Feed};

/// What is true at a box and of the run that feeds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BoxTruth {
    /// The run's hot conductor.
    pub hot: WireState,
    /// The run's neutral.
    pub neutral: WireState,
    /// The run's ground.
    pub ground: GroundRun,
    /// What arrives in the box, and how its device is wired.
    pub at: AtBox,
    /// Whether the wiring method of its run is recorded wrongly.
    pub is_misrecorded: bool,
}

/// A fault that a house must have, for counting what is rare.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Forced {
    Hot(WireState),
    Neutral(WireState),
    Ground(GroundRun),
    Wiring(Wiring),
}

/// Draws what is hidden in a dwelling, and again until it can be: jumpers of two kinds cannot meet in one bonded group, nor
/// a hot conductor a path to the panel. Answers with whether the panel has a ground. Nothing where chance finds no way.
pub(crate) fn truth(
    dwelling: &Dwelling,
    priors: &Priors,
    forced: &[(usize, Forced)],
    chance: &mut Chance,
) -> Option<(bool, Vec<BoxTruth>)> {
    (0..1_000).find_map(|_| drawn(dwelling, priors, forced, chance))
}

fn drawn(
    dwelling: &Dwelling,
    priors: &Priors,
    forced: &[(usize, Forced)],
    chance: &mut Chance,
) -> Option<(bool, Vec<BoxTruth>)> {
    let has_ground = chance.happens(priors.panel_has_ground(dwelling.panels[0].ground_bar));
    let mut boxes: Vec<BoxTruth> = Vec::new();
    let mut group: Vec<usize> = Vec::new();
    for (number, device_box) in dwelling.boxes.iter().enumerate() {
        let here: Vec<Forced> = forced.iter().filter(|(at, _)| *at == number).map(|(_, forced)| *forced).collect();
        let cable = dwelling.cable_to(dwelling::BoxIndex(number));
        let is_misrecorded = cable != dwelling::CableKind::Unknown && chance.happens(priors.cable_misrecorded);
        let built = dwelling.job.built;
        let odds = if is_misrecorded { priors.unseen(built) } else { priors.by_record(cable, built) };
        let mut ground = GroundRun::ALL[chance.place_of(&odds)];
        let mut hot = WireState::ALL[chance.place_of(&priors.hot)];
        let mut neutral = WireState::ALL[chance.place_of(&priors.neutral)];
        for forced in &here {
            match forced {
                Forced::Hot(state) => hot = *state,
                Forced::Neutral(state) => neutral = *state,
                Forced::Ground(state) => ground = *state,
                Forced::Wiring(_) => {}
            }
        }
        let parent = match device_box.fed_by {
            Some(Feed::Box(parent)) => Some(parent.0),
            _ => None,
        };
        let at_panel = if has_ground { Arrival::Panel } else { Arrival::Absent(Joined::Nothing) };
        let before = parent.map_or(at_panel, |parent| boxes[parent].at.arrival);
        let arrival = beyond(ground, before);
        let path = parent
            .map_or((WireState::Sound, WireState::Sound), |parent| (boxes[parent].at.hot, boxes[parent].at.neutral));
        let (hot_path, neutral_path) = (path.0.max(hot), path.1.max(neutral));
        let conducts = matches!(ground, GroundRun::Sound | GroundRun::Weak);
        group.push(parent.filter(|_| conducts).map_or(number, |parent| group[parent]));
        let forced_wiring = here.iter().find_map(|forced| match forced {
            Forced::Wiring(wiring) => Some(*wiring),
            _ => None,
        });
        let wiring =
            forced_wiring.unwrap_or_else(|| Wiring::ALL[chance.place_of(&priors.wiring(device_box.holds, arrival))]);
        let is_open = hot_path == WireState::Open || neutral_path == WireState::Open;
        let is_alone = if conducts { parent.is_some_and(|parent| boxes[parent].at.is_alone) } else { is_open };
        let at = AtBox { hot: hot_path, neutral: neutral_path, arrival, is_alone, wiring };
        boxes.push(BoxTruth { hot, neutral, ground, at, is_misrecorded });
    }
    join(&mut boxes, &group).then_some((has_ground, boxes))
}

/// What arrives beyond a run, jumpers left aside.
fn beyond(run: GroundRun, before: Arrival) -> Arrival {
    match (run, before) {
        (GroundRun::Sound, before) => before,
        (GroundRun::Weak, Arrival::Panel) => Arrival::Weak,
        (GroundRun::Weak, before) => before,
        (GroundRun::Absent, _) | (_, Arrival::Absent(_)) => Arrival::Absent(Joined::Nothing),
        _ => Arrival::Broken(Joined::Nothing),
    }
}

/// Joins each bonded group to what its jumpers join it to; whether that can be.
fn join(boxes: &mut [BoxTruth], group: &[usize]) -> bool {
    let mut joined = vec![Joined::Nothing; boxes.len()];
    for (number, truth) in boxes.iter().enumerate() {
        let by = match truth.at.wiring {
            Wiring::NeutralJumper => Joined::Neutral,
            Wiring::ReversedJumper => Joined::Hot,
            _ => continue,
        };
        if truth.at.arrival.reaches() {
            if by == Joined::Hot {
                return false;
            }
            continue;
        }
        let so_far = &mut joined[group[number]];
        if *so_far != Joined::Nothing && *so_far != by {
            return false;
        }
        *so_far = by;
    }
    for (number, truth) in boxes.iter_mut().enumerate() {
        let to = joined[group[number]];
        truth.at.arrival = match truth.at.arrival {
            Arrival::Broken(_) => Arrival::Broken(to),
            Arrival::Absent(_) => Arrival::Absent(to),
            reaches => reaches,
        };
    }
    true
}
