//! From the instance to the graphs that together hold all its trees.

use super::graph::{Graph, History, Made, NEVER};
use super::instance::{Cost, Instance};

/// Where a tree may start, in the order in which the cases are tried: in each, the starts before it are left out.
pub(crate) fn starts(instance: &Instance) -> Vec<usize> {
    if let Some(root) = instance.root.or_else(|| instance.terminals.first().copied()) {
        return vec![root];
    }
    let prizes = instance.prize_by_node();
    let mut starts: Vec<usize> = (0..instance.nodes).filter(|&node| prizes[node] > 0).collect();
    starts.sort_by_key(|&node| (std::cmp::Reverse(prizes[node]), node));
    starts
}

/// Whether the starts are tried in turn, because no node is in every tree.
pub(crate) fn starts_anywhere(instance: &Instance) -> bool {
    instance.root.is_none() && instance.terminals.is_empty()
}

/// The graph of all trees that start at `root` and leave the nodes in `out` out. A prize is a terminal of its own,
/// joined to its node for nothing and to the root at the prize; those terminals' nodes are told in order.
pub(crate) fn case(instance: &Instance, history: &mut History, root: usize, out: &[usize]) -> (Graph, Vec<usize>) {
    let prizes = instance.prize_by_node();
    let symmetric = instance.is_undirected() && prizes.iter().all(|&prize| prize == 0);
    let mut graph = Graph::with_nodes(instance.nodes, symmetric);
    graph.root = root as u32;
    instance.terminals.iter().chain([&root]).for_each(|&node| graph.terminal[node] = true);
    for (index, line) in instance.lines.iter().enumerate() {
        let made = history.add(Made::Line(index as u32));
        graph.add_edge(line.from as u32, line.to as u32, line.there, line.back.unwrap_or(NEVER), made);
    }
    for &node in out {
        graph.remove_node(node as u32);
        graph.bought_cost += prizes[node];
    }
    let mut copied = Vec::new();
    let nothing = history.add(Made::Nothing);
    for (node, &prize) in prizes.iter().enumerate() {
        if prize > 0 && graph.present[node] && !graph.terminal[node] {
            let copy = graph.len() as u32;
            copied.push(node);
            graph.around.push(Vec::new());
            graph.terminal.push(true);
            graph.present.push(true);
            graph.add_edge(node as u32, copy, 0, NEVER, nothing);
            graph.add_edge(root as u32, copy, prize, NEVER, nothing);
        }
    }
    (graph, copied)
}

/// What leaving all these nodes out costs.
pub(crate) fn missed(instance: &Instance, out: &[usize]) -> Cost {
    let prizes = instance.prize_by_node();
    out.iter().map(|&node| prizes[node]).sum()
}
