//! How a graph is split: a node is in the tree or it is not; the node whose two bounds rise most is taken.

use super::dual_ascent::ascend;
use super::graph::{Graph, NEVER};
use super::instance::Cost;
use super::primal::{Found, NO_ARC};
use super::search::{Open, Search};

pub(crate) enum Split {
    /// A side was shut out at once: the graph is smaller.
    Again,
    Closed,
    Both(Vec<Open>),
}

/// How many nodes are tried before one is taken.
const TRIALS: usize = 8;

pub(crate) fn split(search: &mut Search, open: &mut Open, best: &Found) -> Split {
    let candidates = candidates(&open.graph, best);
    if candidates.is_empty() {
        return split_at_arc(open);
    }
    let mut chosen: Option<((Cost, Cost), u32, [Cost; 2])> = None;
    let mut shut_out = false;
    for &node in candidates.iter().take(TRIALS) {
        if search.is_over() {
            return Split::Closed;
        }
        let bounds = [without(&open.graph, node), within(&open.graph, node)].map(|graph| bound_of(&graph));
        match bounds.map(|bound| bound >= search.upper) {
            [true, true] => return Split::Closed,
            [true, false] => open.graph.terminal[node as usize] = true,
            [false, true] => open.graph.remove_node(node),
            [false, false] => {
                let score = (bounds[0].min(bounds[1]), bounds[0].max(bounds[1]));
                if chosen.is_none_or(|(old, ..)| score > old) {
                    chosen = Some((score, node, bounds));
                }
                continue;
            }
        }
        shut_out = true;
    }
    if shut_out {
        return Split::Again;
    }
    let Some((_, node, bounds)) = chosen else { return Split::Closed };
    let make = |graph: Graph, bound: Cost| Open {
        graph,
        bound: bound.max(open.bound),
        depth: open.depth + 1,
        start: open.start,
        tried: usize::MAX / 8,
    };
    let out = make(without(&open.graph, node), bounds[0]);
    let inside = make(within(&open.graph, node), bounds[1]);
    // The last one is searched first.
    Split::Both(if bounds[1] <= bounds[0] { vec![out, inside] } else { vec![inside, out] })
}

fn bound_of(graph: &Graph) -> Cost {
    let bound = ascend(graph, graph.root, None, false).bound;
    if bound >= NEVER { NEVER } else { bound + graph.bought_cost }
}

pub(crate) fn without(graph: &Graph, node: u32) -> Graph {
    let mut graph = graph.clone();
    graph.remove_node(node);
    graph
}

pub(crate) fn within(graph: &Graph, node: u32) -> Graph {
    let mut graph = graph.clone();
    graph.terminal[node as usize] = true;
    graph
}

/// Nodes to split at: those that the best tree branches at first, then those with many lines.
pub(crate) fn candidates(graph: &Graph, best: &Found) -> Vec<u32> {
    let mut degree = vec![0usize; graph.len()];
    for arc in best.arcs().filter(|&arc| arc != NO_ARC) {
        degree[graph.tail(arc) as usize] += 1;
        degree[graph.head[arc as usize] as usize] += 1;
    }
    let mut nodes: Vec<u32> = graph.nodes().filter(|&node| !graph.is_terminal(node)).collect();
    nodes.sort_by_key(|&node| {
        (std::cmp::Reverse(degree[node as usize].min(3)), std::cmp::Reverse(graph.degree(node)), node)
    });
    nodes
}

/// Every node is a terminal: an arc is in the tree or it is not.
fn split_at_arc(open: &mut Open) -> Split {
    let graph = &open.graph;
    let arc = (0..graph.cost.len() as u32)
        .filter(|&arc| graph.cost[arc as usize] < NEVER)
        .min_by_key(|&arc| (graph.tail(arc) != graph.root, graph.cost[arc as usize], arc));
    let Some(arc) = arc else { return Split::Closed };
    let make = |graph: Graph| Open {
        graph,
        bound: open.bound,
        depth: open.depth + 1,
        start: open.start,
        tried: usize::MAX / 8,
    };
    let mut out = open.graph.clone();
    out.remove_arc(arc);
    let mut inside = open.graph.clone();
    inside.contract(arc);
    Split::Both(vec![make(out), make(inside)])
}
