//! The search of a part in stages: what proves the cost goes before what decides between equal costs.

use crate::bound::Bounder;
use crate::link_search::{Found, search};
use crate::part::Part;
use crate::primal::priced;
use crate::problem::Problem;
use crate::weight::{IMPOSSIBLE, weight_of};

/// So many nodes are looked at with ties in mind from the start: nearly all parts take fewer.
const AT_FIRST: u64 = 60;

/// Searches a part to its end, or to the limit. Where the limit leaves no room for it, what is proved is the cost alone, and
/// the bound is then the weight of the best.
pub(crate) fn search_in_stages(problem: &Problem, part: &Part<'_>, most_nodes: Option<u64>) -> Found {
    let at_first = most_nodes.map_or(AT_FIRST, |most| most.div_ceil(2).min(AT_FIRST));
    let first = search(part, Some(at_first), None);
    let is_proved = |found: &Found| found.bound >= found.best.as_ref().map_or(IMPOSSIBLE, |(weight, _)| *weight);
    let left = most_nodes.map(|most| most.saturating_sub(first.nodes));
    if is_proved(&first) || left == Some(0) {
        return first;
    }
    let known = first.best.as_ref().map(|(_, state)| state.feeding());
    let plain = search(&without_ties(problem, part), left, known.as_ref());
    let nodes = first.nodes + plain.nodes;
    let is_cost_proved = is_proved(&plain);
    let mut bounder = Bounder::new(part);
    let found = [first.best, plain.best].into_iter().flatten();
    let weighed = found.filter_map(|(_, state)| priced(&mut bounder, &state.feeding()));
    let best = weighed.min_by_key(|(weight, _)| *weight);
    match best {
        Some((_, state)) if most_nodes.is_none() => {
            let found = search(part, None, Some(&state.feeding()));
            Found { nodes: nodes + found.nodes, ..found }
        }
        Some((weight, state)) if is_cost_proved => Found { best: Some((weight, state)), bound: weight, nodes },
        best => Found { best, bound: first.bound.max(plain.bound), nodes },
    }
}

/// The part where of equal costs all are as good.
pub(crate) fn without_ties<'p>(problem: &Problem, part: &Part<'p>) -> Part<'p> {
    let mut part = part.clone();
    for arc in &mut part.arcs {
        for (weight, cost) in arc.by_grade.iter_mut().zip(&problem.links[arc.link].cost_by_grade) {
            *weight = weight_of(*cost);
        }
    }
    part
}
