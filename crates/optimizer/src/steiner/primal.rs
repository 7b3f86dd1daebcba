//! Trees by the repeated shortest path heuristic, made cheaper by what their nodes allow and pruned.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::graph::{Graph, NEVER};
use super::instance::Cost;

/// No arc leads into the node.
pub(crate) const NO_ARC: u32 = u32::MAX;

/// A tree: the arc into each node, and what it costs without what is bought.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    pub(crate) cost: Cost,
    pub(crate) into: Vec<u32>,
}

impl Found {
    pub(crate) fn arcs(&self) -> impl Iterator<Item = u32> + '_ {
        self.into.iter().copied().filter(|&arc| arc != NO_ARC)
    }

    /// One flag for each arc of the graph. In a symmetric graph the tree must be led away from its root first.
    pub(crate) fn flags(&self, graph: &Graph) -> Vec<bool> {
        let mut flags = vec![false; graph.cost.len()];
        self.arcs().for_each(|arc| flags[arc as usize] = true);
        flags
    }
}

/// Grows a tree from `start` (the root, unless the graph is symmetric), joining the terminal that is nearest by
/// `weight` each time, and makes it cheaper. `None` where a terminal cannot be reached.
pub(crate) fn grow(graph: &Graph, root: u32, start: u32, weight: &[Cost]) -> Option<Found> {
    let mut far = vec![NEVER; graph.len()];
    let mut back = vec![NO_ARC; graph.len()];
    let mut inside = vec![false; graph.len()];
    let mut left = graph.terminals().len() - usize::from(graph.is_terminal(start));
    inside[start as usize] = true;
    far[start as usize] = 0;
    let mut heap = BinaryHeap::from([Reverse((0, start))]);
    while left > 0 {
        let Reverse((distance, node)) = heap.pop()?;
        if distance > far[node as usize] {
            continue;
        }
        if graph.is_terminal(node) && !inside[node as usize] {
            left -= 1;
            let mut step = node;
            while !inside[step as usize] {
                inside[step as usize] = true;
                far[step as usize] = 0;
                heap.push(Reverse((0, step)));
                step = graph.tail(back[step as usize]);
            }
            continue;
        }
        for spoke in &graph.around[node as usize] {
            if graph.cost[spoke.arc as usize] >= NEVER || inside[spoke.to as usize] {
                continue;
            }
            let next = distance + weight[spoke.arc as usize];
            if next < far[spoke.to as usize] {
                far[spoke.to as usize] = next;
                back[spoke.to as usize] = spoke.arc;
                heap.push(Reverse((next, spoke.to)));
            }
        }
    }
    let mut found = if graph.symmetric {
        cheapest_over(graph, root, &inside)?
    } else {
        let into = back.iter().zip(&inside).map(|(&arc, &inside)| if inside { arc } else { NO_ARC }).collect();
        let mut found = Found { cost: 0, into };
        found.into[start as usize] = NO_ARC;
        choose_cheaper_parents(graph, root, &mut found);
        give_up_dear_branches(graph, root, &mut found);
        found
    };
    prune(graph, root, &mut found);
    Some(found)
}

/// The cheapest spanning tree over the nodes inside.
pub(crate) fn cheapest_over(graph: &Graph, root: u32, inside: &[bool]) -> Option<Found> {
    let mut into = vec![NO_ARC; graph.len()];
    let mut best = vec![NEVER; graph.len()];
    let mut done = vec![false; graph.len()];
    let mut heap = BinaryHeap::from([Reverse((0, root))]);
    let mut reached = 0;
    while let Some(Reverse((_, node))) = heap.pop() {
        if std::mem::replace(&mut done[node as usize], true) {
            continue;
        }
        reached += 1;
        for spoke in &graph.around[node as usize] {
            let to = spoke.to as usize;
            let cost = graph.cost[spoke.arc as usize];
            if inside[to] && !done[to] && cost < best[to] {
                best[to] = cost;
                into[to] = spoke.arc;
                heap.push(Reverse((cost, spoke.to)));
            }
        }
    }
    (reached == inside.iter().filter(|&&inside| inside).count()).then_some(Found { cost: 0, into })
}

/// Cuts leaves that are no terminals, and adds the cost up.
pub(crate) fn prune(graph: &Graph, root: u32, found: &mut Found) {
    let mut children = vec![0u32; graph.len()];
    found.arcs().for_each(|arc| children[graph.tail(arc) as usize] += 1);
    let mut open: Vec<u32> = graph.nodes().filter(|&node| children[node as usize] == 0).collect();
    while let Some(node) = open.pop() {
        let arc = found.into[node as usize];
        if node == root || graph.is_terminal(node) || arc == NO_ARC {
            continue;
        }
        found.into[node as usize] = NO_ARC;
        let parent = graph.tail(arc);
        children[parent as usize] -= 1;
        if children[parent as usize] == 0 {
            open.push(parent);
        }
    }
    found.cost = found.arcs().map(|arc| graph.cost[arc as usize]).sum();
}

/// Hangs nodes elsewhere in the tree where that is cheaper.
fn choose_cheaper_parents(graph: &Graph, root: u32, found: &mut Found) {
    let mut changed = true;
    while std::mem::take(&mut changed) {
        for node in graph.nodes() {
            let arc = found.into[node as usize];
            if arc == NO_ARC {
                continue;
            }
            for spoke in &graph.around[node as usize] {
                let other = spoke.arc ^ 1;
                let joined = spoke.to == root || found.into[spoke.to as usize] != NO_ARC;
                let cheaper = graph.cost[other as usize] < graph.cost[found.into[node as usize] as usize];
                if joined && cheaper && !is_below(graph, found, spoke.to, node) {
                    found.into[node as usize] = other;
                    changed = true;
                }
            }
        }
    }
}

/// Whether going up from `node` meets `above`.
fn is_below(graph: &Graph, found: &Found, node: u32, above: u32) -> bool {
    let mut step = node;
    loop {
        if step == above {
            return true;
        }
        match found.into[step as usize] {
            NO_ARC => return false,
            arc => step = graph.tail(arc),
        }
    }
}

/// Where joining all terminals of a branch straight from the root is cheaper than the branch, does so.
fn give_up_dear_branches(graph: &Graph, root: u32, found: &mut Found) {
    let mut straight = vec![NO_ARC; graph.len()];
    for spoke in &graph.around[root as usize] {
        let cost = graph.cost[spoke.arc as usize];
        let old = straight[spoke.to as usize];
        if cost < NEVER && (old == NO_ARC || cost < graph.cost[old as usize]) {
            straight[spoke.to as usize] = spoke.arc;
        }
    }
    let mut children: Vec<Vec<u32>> = vec![Vec::new(); graph.len()];
    found.arcs().for_each(|arc| children[graph.tail(arc) as usize].push(graph.head[arc as usize]));
    let mut order = vec![root];
    let mut seen = 0;
    while seen < order.len() {
        order.extend(&children[order[seen] as usize]);
        seen += 1;
    }
    let mut gain = vec![0; graph.len()];
    for &node in order.iter().skip(1).rev() {
        if graph.is_terminal(node) {
            let leaf = children[node as usize].is_empty();
            gain[node as usize] = match straight[node as usize] {
                arc if arc != NO_ARC && leaf => graph.cost[arc as usize],
                _ => NEVER,
            };
        }
        let arc = found.into[node as usize];
        let left = gain[node as usize] - graph.cost[arc as usize];
        let parent = graph.tail(arc);
        if left > 0 {
            gain[parent as usize] = (gain[parent as usize] + left).min(NEVER);
        } else if parent != root || !graph.is_terminal(node) {
            let mut open = vec![node];
            while let Some(below) = open.pop() {
                open.extend(&children[below as usize]);
                found.into[below as usize] = if graph.is_terminal(below) { straight[below as usize] } else { NO_ARC };
            }
        }
    }
}
