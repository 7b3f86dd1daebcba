//! Local search on a tree in a symmetric graph: nodes put in, and paths exchanged, while that makes the tree cheaper.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::graph::Graph;
use super::instance::Cost;
use super::primal::{Found, NO_ARC, cheapest_over, prune};

/// How many rounds of both moves at most.
const ROUNDS: usize = 12;

pub(crate) fn improve(graph: &Graph, root: u32, found: &mut Found) {
    if !graph.symmetric {
        return;
    }
    for _ in 0..ROUNDS {
        let before = found.cost;
        put_nodes_in(graph, root, found);
        exchange_paths(graph, root, found);
        if found.cost == before {
            break;
        }
    }
}

fn inside(graph: &Graph, root: u32, found: &Found, node: u32) -> bool {
    node == root || graph.present[node as usize] && found.into[node as usize] != NO_ARC
}

/// Puts in each node that makes the cheapest spanning tree cheaper.
fn put_nodes_in(graph: &Graph, root: u32, found: &mut Found) {
    let mut mark = vec![0u32; graph.len()];
    let mut stamp = 0;
    for node in graph.nodes() {
        if inside(graph, root, found, node) {
            continue;
        }
        let mut near: Vec<(Cost, u32)> = graph.around[node as usize]
            .iter()
            .filter(|spoke| inside(graph, root, found, spoke.to))
            .map(|spoke| (graph.cost[spoke.arc as usize], spoke.arc ^ 1))
            .collect();
        if near.len() < 3 {
            continue;
        }
        near.sort_unstable();
        let mut into = found.into.clone();
        into[node as usize] = near[0].1;
        let mut change = near[0].0;
        for &(cost, arc) in &near[1..] {
            stamp += 1;
            change += swap_in(graph, &mut into, arc, cost, &mut mark, stamp);
        }
        if change < 0 {
            found.into = into;
            found.cost += change;
        }
    }
    prune(graph, root, found);
}

/// Adds the arc where it is cheaper than the dearest on the ring it closes; returns the change of cost.
fn swap_in(graph: &Graph, into: &mut [u32], arc: u32, cost: Cost, mark: &mut [u32], stamp: u32) -> Cost {
    let (tail, head) = (graph.tail(arc), graph.head[arc as usize]);
    let mut step = tail;
    mark[step as usize] = stamp;
    while into[step as usize] != NO_ARC {
        step = graph.tail(into[step as usize]);
        mark[step as usize] = stamp;
    }
    let mut dearest = (0, NO_ARC, false);
    let mut meet = head;
    while mark[meet as usize] != stamp {
        let up = into[meet as usize];
        dearest = dearest.max((graph.cost[up as usize], up, true));
        meet = graph.tail(up);
    }
    step = tail;
    while step != meet {
        let up = into[step as usize];
        dearest = dearest.max((graph.cost[up as usize], up, false));
        step = graph.tail(up);
    }
    let (most, gone, on_head_side) = dearest;
    if most <= cost {
        return 0;
    }
    // The part below the arc that goes is turned so that it hangs on the new arc.
    let (mut node, mut enter) = if on_head_side { (head, arc) } else { (tail, arc ^ 1) };
    loop {
        let old = std::mem::replace(&mut into[node as usize], enter);
        if old == gone {
            break;
        }
        enter = old ^ 1;
        node = graph.tail(old);
    }
    cost - most
}

/// Takes each path between branchings or terminals out and joins the two parts by the shortest path there is.
fn exchange_paths(graph: &Graph, root: u32, found: &mut Found) {
    let ends: Vec<u32> = graph.nodes().collect();
    for end in ends {
        if found.into[end as usize] == NO_ARC {
            continue;
        }
        let mut degree = vec![0u32; graph.len()];
        for arc in found.arcs() {
            degree[graph.tail(arc) as usize] += 1;
            degree[graph.head[arc as usize] as usize] += 1;
        }
        let key = |node: u32| node == root || graph.is_terminal(node) || degree[node as usize] > 2;
        if !key(end) {
            continue;
        }
        let mut removed = Vec::new();
        let mut step = end;
        let mut length = 0;
        loop {
            let arc = found.into[step as usize];
            length += graph.cost[arc as usize];
            removed.push(step);
            step = graph.tail(arc);
            if key(step) {
                break;
            }
        }
        let mut side = sides(graph, root, found, end);
        for &node in &removed[1..] {
            side[node as usize] = Side::Out;
        }
        let Some(path) = shortest_across(graph, &side, length) else { continue };
        let mut nodes: Vec<bool> = side.iter().map(|&side| side != Side::Out).collect();
        for arc in path {
            nodes[graph.head[arc as usize] as usize] = true;
            nodes[graph.tail(arc) as usize] = true;
        }
        if let Some(mut other) = cheapest_over(graph, root, &nodes) {
            prune(graph, root, &mut other);
            if other.cost < found.cost {
                *found = other;
            }
        }
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Out,
    Above,
    Below,
}

/// Which nodes hang at or below `end`, and which elsewhere in the tree.
fn sides(graph: &Graph, root: u32, found: &Found, end: u32) -> Vec<Side> {
    let mut side = vec![Side::Out; graph.len()];
    side[root as usize] = Side::Above;
    side[end as usize] = Side::Below;
    for node in graph.nodes().filter(|&node| inside(graph, root, found, node)) {
        let mut way = Vec::new();
        let mut step = node;
        while side[step as usize] == Side::Out {
            way.push(step);
            step = graph.tail(found.into[step as usize]);
        }
        let found_side = side[step as usize];
        way.into_iter().for_each(|passed| side[passed as usize] = found_side);
    }
    side
}

/// The arcs of the shortest path from below to above that is shorter than `length`.
fn shortest_across(graph: &Graph, side: &[Side], length: Cost) -> Option<Vec<u32>> {
    let mut far = vec![length; graph.len()];
    let mut back = vec![NO_ARC; graph.len()];
    let mut heap = BinaryHeap::new();
    for node in graph.nodes().filter(|&node| side[node as usize] == Side::Below) {
        far[node as usize] = 0;
        heap.push(Reverse((0, node)));
    }
    while let Some(Reverse((distance, node))) = heap.pop() {
        if distance > far[node as usize] {
            continue;
        }
        if side[node as usize] == Side::Above {
            let mut path = Vec::new();
            let mut step = node;
            while back[step as usize] != NO_ARC {
                path.push(back[step as usize]);
                step = graph.tail(back[step as usize]);
            }
            return Some(path);
        }
        for spoke in &graph.around[node as usize] {
            let next = distance + graph.cost[spoke.arc as usize];
            if next < far[spoke.to as usize] {
                far[spoke.to as usize] = next;
                back[spoke.to as usize] = spoke.arc;
                heap.push(Reverse((next, spoke.to)));
            }
        }
    }
    None
}
