//! Good sets of links, found fast: what the bound's trees wish for, made whole, and bettered one link at a time.

use crate::bound::{Bounder, Wish};
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::weight::{IMPOSSIBLE, Weight, plus};

/// The arc into each group; `None` leaves it unsupplied.
pub(crate) type Feeding = Vec<Option<usize>>;

/// At most so many rounds of betterment.
const MOST_ROUNDS: usize = 8;

/// Returns what a feeding costs and its state; `None` where it is none that may be chosen.
pub(crate) fn priced(bounder: &mut Bounder<'_>, feeding: &Feeding) -> Option<(Weight, LinkState)> {
    let part = bounder.part;
    let mut state = LinkState::undecided(part);
    state.status = feeding.iter().map(|arc| arc.map_or(Status::Off, Status::Fed)).collect();
    if !state.settle(part) || !state.is_complete() {
        return None;
    }
    let links = feeding.iter().flatten().fold(0, |sum, &arc| {
        let arc = &part.arcs[arc];
        plus(sum, arc.by_grade.get(state.grade[arc.head]).copied().unwrap_or(IMPOSSIBLE))
    });
    let weight = bounder.exact(&state, links);
    (weight < IMPOSSIBLE).then_some((weight, state))
}

/// Returns a feeding that gives supply to what is decided and to what is wished for, where it can be had.
pub(crate) fn rounded(part: &Part<'_>, state: &LinkState, wishes: &[Wish]) -> Feeding {
    let mut feeding: Feeding = state
        .status
        .iter()
        .zip(wishes)
        .enumerate()
        .map(|(group, (status, wish))| match status {
            Status::Fed(arc) => Some(*arc),
            Status::Due => state.best_into(part, group),
            Status::Open if wish.wanting > 0 => state.best_into(part, group),
            Status::Open | Status::Off => None,
        })
        .collect();
    let mut wanted: Vec<usize> = (0..feeding.len()).filter(|group| feeding[*group].is_some()).collect();
    let mut fed = fed_from_sources(part, &feeding);
    wanted.retain(|group| !fed[*group]);
    while !wanted.is_empty() {
        let (far, by) = distances(part, state, &fed);
        let Some(&next) = wanted.iter().min_by_key(|group| far[**group]) else { break };
        if far[next] >= IMPOSSIBLE {
            break;
        }
        let mut group = next;
        while !fed[group]
            && let Some(arc) = by[group]
        {
            fed[group] = true;
            feeding[group] = Some(arc);
            let Some(tail) = part.arcs[arc].tail else { break };
            group = tail;
        }
        fed = fed_from_sources(part, &feeding);
        wanted.retain(|group| !fed[*group]);
    }
    for group in 0..feeding.len() {
        if !fed[group] {
            feeding[group] = None;
        }
    }
    feeding
}

/// Takes away, adds or exchanges one link at a time while that costs less.
pub(crate) fn bettered(
    bounder: &mut Bounder<'_>,
    open: &LinkState,
    start: Feeding,
    weight: Weight,
) -> (Weight, Feeding) {
    let part = bounder.part;
    let (mut best, mut feeding) = (weight, start);
    for _ in 0..MOST_ROUNDS {
        let before = best;
        for group in 0..feeding.len() {
            let arcs = part.groups[group].arcs.iter().copied().filter(|arc| open.weight[*arc] < IMPOSSIBLE);
            let choices: Vec<Option<usize>> = std::iter::once(None).chain(arcs.map(Some)).collect();
            for choice in choices {
                if choice == feeding[group] {
                    continue;
                }
                let mut other = feeding.clone();
                other[group] = choice;
                if let Some((weight, _)) = priced(bounder, &other)
                    && weight < best
                {
                    (best, feeding) = (weight, other);
                }
            }
        }
        if best == before {
            break;
        }
    }
    (best, feeding)
}

fn fed_from_sources(part: &Part<'_>, feeding: &Feeding) -> Vec<bool> {
    let mut fed = vec![false; feeding.len()];
    loop {
        let mut more = false;
        for (group, arc) in feeding.iter().enumerate() {
            if let Some(arc) = arc
                && !fed[group]
                && part.arcs[*arc].tail.is_none_or(|tail| fed[tail])
            {
                fed[group] = true;
                more = true;
            }
        }
        if !more {
            return fed;
        }
    }
}

/// How far each group is from what is fed, and by which arc it is reached.
fn distances(part: &Part<'_>, state: &LinkState, fed: &[bool]) -> (Vec<Weight>, Vec<Option<usize>>) {
    let mut far: Vec<Weight> = fed.iter().map(|fed| if *fed { 0 } else { IMPOSSIBLE }).collect();
    let mut by = vec![None; fed.len()];
    loop {
        let mut nearer = false;
        for (index, arc) in part.arcs.iter().enumerate() {
            let length = if state.weight[index] < IMPOSSIBLE { state.weight[index].max(1) } else { IMPOSSIBLE };
            let through = plus(arc.tail.map_or(0, |tail| far[tail]), length);
            if through < far[arc.head] {
                far[arc.head] = through;
                by[arc.head] = Some(index);
                nearer = true;
            }
        }
        if !nearer {
            return (far, by);
        }
    }
}
