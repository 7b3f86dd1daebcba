//! The exact Pareto frontier of a problem: cents, openings, and what the supplied groups are worth. Each part of the
//! problem has its own; together they are the sums that no other beats.

mod corner_search;
mod corners;
mod part_frontier;
mod points;
mod priced_part;
mod prices;
mod sums;
mod tree_openings;
mod value;

use crate::link_search::search;
use crate::part::Part;
use crate::problem::Problem;
use crate::solution::{Forced, Limits, Solution};
use crate::solve::{Question, cost_of_choices, empty_solution, put_into, put_links_into, put_tree_into, question};
use crate::weight::{IMPOSSIBLE, cost_of};
use part_frontier::part_frontier;
use points::Point;
use sums::{Sums, summed};
use value::Value;

/// The frontier.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Frontier {
    /// Its points by rising cents, then openings: none as good as another in cents, openings and worth.
    pub points: Vec<FrontierPoint>,
    /// Whether all are there. Else the limit stopped the search, and what it found is not beaten by anything found.
    pub complete: bool,
}

/// A point of the frontier.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FrontierPoint {
    /// What its supplied groups are worth together.
    pub worth: u64,
    /// One choice of everything with its cents, openings and worth. Of several the search takes one, always the same.
    pub solution: Solution,
}

/// Returns the frontier of (cents, openings, worth) of all solutions that cost no more than so many cents and keep to what
/// is laid down. `worth` is by group what it is worth when supplied; what is missing is worth nothing. The limit counts
/// nodes of search trees.
///
/// A malformed question has no points and is not complete.
#[must_use]
pub fn frontier(problem: &Problem, worth: &[u64], most_cents: i64, forced: &[Forced], limits: &Limits) -> Frontier {
    let parts = match question(problem, forced) {
        Question::Parts(parts) => parts,
        Question::Infeasible => return Frontier { points: Vec::new(), complete: true },
        Question::Malformed(_) => return Frontier::default(),
    };
    let of_group = |group: usize| worth.get(group).copied().unwrap_or(0);
    let mut left = *limits;
    let mut frontiers: Vec<Vec<(Value, Point)>> = Vec::with_capacity(parts.len());
    let mut complete = true;
    // What the cheapest of every part leaves of the money is what one part may cost more.
    let mut spare = i128::from(most_cents);
    let mut leasts = Vec::with_capacity(parts.len());
    for part in &parts {
        let found = search(part, left.nodes_of(part).map(|left| left / FOR_THE_LEAST), None);
        left = left.after(found.nodes, part);
        if found.bound >= IMPOSSIBLE {
            return Frontier { points: Vec::new(), complete: true };
        }
        let least = cost_of(found.bound).cents;
        leasts.push((least, found.best));
        spare -= i128::from(least);
    }
    if spare < 0 {
        return Frontier { points: Vec::new(), complete: true };
    }
    let size = |part: &Part<'_>| part.arcs.len() as u64 + 5;
    let mut still: u64 = parts.iter().map(size).sum();
    for (part, (least, best)) in parts.iter().zip(leasts) {
        let worth: Vec<i128> = part.groups.iter().map(|group| i128::from(of_group(group.group))).collect();
        let most = (i128::from(least) + spare).min(MOST_OF_A_PART);
        let below = i64::try_from(most).unwrap_or(i64::MAX) + 1;
        // What a part leaves of its share goes to those that follow.
        let before = left.share(size(part), still).nodes_of(part);
        let mut share = before;
        let found = part_frontier(problem, part, &worth, below, best, &mut share);
        left = left.after(before.unwrap_or(0) - share.unwrap_or(0), part);
        still -= size(part);
        complete &= found.complete;
        frontiers.push(found.points);
    }
    let supplied_anyway = problem.groups.iter().enumerate().filter(|(_, group)| group.source);
    let start =
        Value { worth: supplied_anyway.map(|(group, _)| i128::from(of_group(group))).sum(), ..Value::default() };
    let sums = summed(start, &frontiers, most_cents);
    let points = (0..sums.values().len()).filter_map(|at| {
        let solution = solution_of(problem, &parts, &frontiers, &sums, at)?;
        let worth = u64::try_from(sums.values()[at].worth).unwrap_or(u64::MAX);
        Some(FrontierPoint { worth, solution })
    });
    Frontier { points: points.collect(), complete }
}

/// The least of a part may take this share of the nodes left.
const FOR_THE_LEAST: u64 = 4;

/// No part costs more: the sizes of a problem see to it.
const MOST_OF_A_PART: i128 = 1 << 61;

fn solution_of(
    problem: &Problem,
    parts: &[Part<'_>],
    frontiers: &[Vec<(Value, Point)>],
    sums: &Sums,
    at: usize,
) -> Option<Solution> {
    let mut solution = empty_solution(problem);
    for (place, of_part) in sums.parts_of(at).into_iter().enumerate() {
        let point = &frontiers[place][of_part].1;
        match &point.trees {
            None => put_into(&parts[place], &point.state, &mut solution)?,
            Some(trees) => {
                put_links_into(&parts[place], &point.state, &mut solution);
                for (tree, (root, chosen)) in parts[place].trees.iter().zip(trees) {
                    put_tree_into(tree.tree, *root, chosen.clone(), &mut solution);
                }
            }
        }
    }
    solution.links.sort_by_key(|link| link.link);
    solution.cost = cost_of_choices(problem, &solution);
    Some(solution)
}
