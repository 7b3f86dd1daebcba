//! The work on one graph of the search: reductions, bounds from several roots, trees, and what reduced costs remove.

use super::degree_tests::reduce_by_degree;
use super::dual_ascent::ascend;
use super::graph::{Graph, History, NEVER};
use super::instance::Cost;
use super::local_search::improve;
use super::primal::{Found, NO_ARC, cheapest_over, grow};
use super::reduced_cost::fix_by_reduced_cost;
use super::search::{Open, Search};
use super::special_distance::{Walks, remove_long_lines, replace_low_nodes};
use super::terminal_tests::buy_short_links;

/// How a graph stands after the work.
pub(crate) enum Bounded {
    Closed,
    /// The best tree in this graph, and the bound with what is bought.
    Gap {
        best: Found,
        bound: Cost,
    },
}

/// Nodes that one walk visits at most: in the first graph, and in later ones.
const EFFORT: [usize; 2] = [400, 120];
/// Rounds of bounding at most.
const ROUNDS: [usize; 2] = [12, 3];
/// Roots tried in a round.
const ROOTS: [usize; 2] = [6, 2];
/// Terminals that trees are grown from in a round.
const STARTS: [usize; 2] = [12, 2];

pub(crate) fn reduce(graph: &mut Graph, history: &mut History, effort: usize) {
    let mut walks = Walks::new(graph.len(), effort);
    reduce_by_degree(graph, history);
    loop {
        let before = graph.edges();
        remove_long_lines(graph, &mut walks);
        reduce_by_degree(graph, history);
        replace_low_nodes(graph, history, &mut walks);
        reduce_by_degree(graph, history);
        buy_short_links(graph);
        reduce_by_degree(graph, history);
        if (before - graph.edges().min(before)) * 50 <= before {
            break;
        }
    }
}

/// Reduces, bounds and fixes until little changes.
pub(crate) fn bounded(search: &mut Search, open: &mut Open) -> Bounded {
    let level = open.depth.min(1);
    let mut bound = open.bound;
    for round in 0..ROUNDS[level] {
        if search.methods.distances {
            reduce(&mut open.graph, &mut search.history, EFFORT[level]);
        } else {
            reduce_by_degree(&mut open.graph, &mut search.history);
        }
        open.graph = open.graph.compacted();
        let mut best: Option<Found> = None;
        let terminals = open.graph.terminals();
        if terminals.len() <= 1 {
            search.offer_arcs(open, std::iter::empty());
            return Bounded::Closed;
        }
        if open.graph.symmetric && terminals.len() == open.graph.len() {
            search.offer_spanning(open);
            return Bounded::Closed;
        }
        let before = open.graph.edges();
        for root in roots(&open.graph, &terminals, ROOTS[level], round) {
            if search.is_over() {
                return best.map_or(Bounded::Closed, |best| Bounded::Gap { best, bound });
            }
            open.graph.root = root;
            if climb(search, open, &mut best, &mut bound, level) {
                return Bounded::Closed;
            }
            open.bound = bound;
        }
        if (before - open.graph.edges().min(before)) * 20 <= before {
            break;
        }
    }
    reduce_by_degree(&mut open.graph, &mut search.history);
    open.graph = open.graph.compacted();
    let root = open.graph.root;
    if open.graph.terminals().len() <= 1 {
        search.offer_arcs(open, std::iter::empty());
        return Bounded::Closed;
    }
    match grow(&open.graph, root, root, &open.graph.cost) {
        Some(mut found) => {
            improve(&open.graph, root, &mut found);
            search.offer(open, &found);
            Bounded::Gap { best: found, bound }
        }
        None => Bounded::Closed,
    }
}

/// Two ascents from the root, the second guided, with trees and fixing after each. Says whether the graph is closed.
fn climb(search: &mut Search, open: &mut Open, best: &mut Option<Found>, bound: &mut Cost, level: usize) -> bool {
    let root = open.graph.root;
    for guided in [false, true] {
        let guide = best.as_ref().filter(|_| guided).and_then(|best| turned(&open.graph, root, best));
        if guided && guide.is_none() {
            break;
        }
        let ascent = ascend(&open.graph, root, guide.map(|tree| tree.flags(&open.graph)).as_deref(), false);
        if ascent.bound >= NEVER {
            return true;
        }
        *bound = (*bound).max(ascent.bound + open.graph.bought_cost);
        if *bound >= search.upper {
            return true;
        }
        let both: Vec<Cost> = ascent
            .slack
            .iter()
            .zip(&open.graph.cost)
            .map(|(slack, cost)| if *cost < NEVER { slack * 8 + cost } else { NEVER })
            .collect();
        let starts = if open.graph.symmetric {
            roots(&open.graph, &open.graph.terminals(), STARTS[level], 1)
        } else {
            vec![root]
        };
        let mut round_best: Option<Found> = None;
        for weight in [&both, &ascent.slack, &open.graph.cost] {
            for &start in &starts {
                let Some(found) = grow(&open.graph, root, start, weight) else { return true };
                if round_best.as_ref().is_none_or(|best| found.cost < best.cost) {
                    round_best = Some(found);
                }
            }
        }
        if let Some(mut found) = round_best {
            improve(&open.graph, root, &mut found);
            search.offer(open, &found);
            if best.as_ref().is_none_or(|best| found.cost < best.cost) {
                *best = Some(found);
            }
        }
        if *bound >= search.upper {
            return true;
        }
        let upper = search.upper - open.graph.bought_cost;
        if !search.methods.reduced_costs {
            continue;
        }
        fix_by_reduced_cost(&mut open.graph, root, &ascent, upper);
    }
    false
}

/// The same tree led away from another root.
fn turned(graph: &Graph, root: u32, tree: &Found) -> Option<Found> {
    if !graph.symmetric {
        return Some(tree.clone());
    }
    let mut inside: Vec<bool> = tree.into.iter().map(|&arc| arc != NO_ARC).collect();
    for arc in tree.arcs() {
        inside[graph.tail(arc) as usize] = true;
    }
    let alive = inside.iter().zip(&graph.present).all(|(inside, present)| !inside || *present);
    if alive { cheapest_over(graph, root, &inside) } else { None }
}

/// Some of the terminals, spread over all, others in each round; the root alone where the graph is not symmetric.
fn roots(graph: &Graph, terminals: &[u32], most: usize, round: usize) -> Vec<u32> {
    if !graph.symmetric {
        return vec![graph.root];
    }
    let count = terminals.len().min(most);
    (0..count).map(|index| terminals[(index * terminals.len() / count + round) % terminals.len()]).collect()
}
