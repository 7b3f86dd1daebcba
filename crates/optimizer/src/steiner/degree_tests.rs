//! Reductions by the number of lines at a node.

use super::graph::{Graph, History, Made, NEVER};

/// Applies the tests until none does anything; says how many nodes went.
pub(crate) fn reduce_by_degree(graph: &mut Graph, history: &mut History) -> usize {
    let mut gone = 0;
    let mut terminals = graph.terminals().len();
    let mut open: Vec<u32> = graph.nodes().collect();
    while let Some(node) = open.pop() {
        if !graph.present[node as usize] {
            continue;
        }
        let near: Vec<u32> = graph.around[node as usize].iter().map(|spoke| spoke.to).collect();
        if !graph.symmetric && drop_useless_arcs(graph, node) {
            open.extend(&near);
        }
        let bought = if graph.is_terminal(node) && terminals > 1 { forced_arc(graph, node) } else { None };
        if let Some(arc) = bought {
            let (keep, other) = (graph.tail(arc), graph.head[arc as usize]);
            if graph.is_terminal(keep) && graph.is_terminal(other) {
                terminals -= 1;
            }
            graph.contract(arc);
            open.push(keep);
            open.extend(graph.around[keep as usize].iter().map(|spoke| spoke.to));
            open.extend(near);
            gone += 1;
        } else if !graph.is_terminal(node) && graph.degree(node) <= 2 {
            bypass(graph, history, node);
            open.extend(near);
            gone += 1;
        }
    }
    gone
}

/// Arcs into the root, and into or out of a node that then leads nowhere.
fn drop_useless_arcs(graph: &mut Graph, node: u32) -> bool {
    let spokes = graph.around[node as usize].clone();
    let out: Vec<u32> = spokes.iter().map(|spoke| spoke.arc).filter(|&arc| graph.cost[arc as usize] < NEVER).collect();
    let into: Vec<u32> =
        spokes.iter().map(|spoke| spoke.arc ^ 1).filter(|&arc| graph.cost[arc as usize] < NEVER).collect();
    if node == graph.root {
        for &arc in &into {
            graph.remove_arc(arc);
        }
        return !into.is_empty();
    }
    if into.is_empty() || (out.is_empty() && !graph.is_terminal(node)) {
        for &arc in out.iter().chain(&into) {
            graph.remove_arc(arc);
        }
        return !out.is_empty() || !into.is_empty();
    }
    // A way back to the only node that leads here is never taken.
    if let [only] = into[..]
        && graph.cost[(only ^ 1) as usize] < NEVER
    {
        graph.remove_arc(only ^ 1);
        return true;
    }
    false
}

/// The arc that every solution has because nothing else reaches the terminal; it leads away from the node that stays.
fn forced_arc(graph: &Graph, terminal: u32) -> Option<u32> {
    let spokes = &graph.around[terminal as usize];
    if graph.symmetric {
        return match spokes[..] {
            [only] => Some(only.arc),
            _ => None,
        };
    }
    if terminal == graph.root {
        return None;
    }
    let mut into = spokes.iter().map(|spoke| spoke.arc ^ 1).filter(|&arc| graph.cost[arc as usize] < NEVER);
    match (into.next(), into.next()) {
        (Some(only), None) => Some(only),
        _ => None,
    }
}

/// Removes a node with at most two lines; what passes through it goes along one line instead.
fn bypass(graph: &mut Graph, history: &mut History, node: u32) {
    let spokes = graph.around[node as usize].clone();
    if let [one, other] = spokes[..]
        && one.to != other.to
    {
        let sum = |first: u32, second: u32| {
            let (first, second) = (graph.cost[first as usize], graph.cost[second as usize]);
            if first >= NEVER || second >= NEVER { NEVER } else { first + second }
        };
        let there = sum(one.arc ^ 1, other.arc);
        let back = sum(other.arc ^ 1, one.arc);
        let made = history.add(Made::Joined(graph.made_of(one.arc ^ 1), graph.made_of(other.arc)));
        graph.remove_node(node);
        graph.add_edge(one.to, other.to, there, back, made);
    } else {
        graph.remove_node(node);
    }
}
