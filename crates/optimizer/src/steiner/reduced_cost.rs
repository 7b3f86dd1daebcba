//! Reductions by reduced costs: what would make every tree at least as dear as the best one known goes.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::dual_ascent::Ascent;
use super::graph::{Graph, NEVER};
use super::instance::Cost;

/// Removes nodes and arcs that no tree cheaper than `upper` (without what is bought) has, by the slacks for `root`.
/// In a symmetric graph a line goes when both its arcs do. Says how many went.
pub(crate) fn fix_by_reduced_cost(graph: &mut Graph, root: u32, ascent: &Ascent, upper: Cost) -> usize {
    let room = upper - ascent.bound;
    let from_root = distances(graph, &ascent.slack, &[root], true);
    let terminals: Vec<u32> = graph.terminals().into_iter().filter(|&node| node != root).collect();
    let to_terminal = distances(graph, &ascent.slack, &terminals, false);
    let mut gone = 0;
    let nodes: Vec<u32> = graph.nodes().filter(|&node| !graph.is_terminal(node)).collect();
    for node in nodes {
        if from_root[node as usize].saturating_add(to_terminal[node as usize]) >= room {
            graph.remove_node(node);
            gone += 1;
        }
    }
    for edge in 0..graph.made.len() as u32 {
        if !graph.edge_there(edge) {
            continue;
        }
        let useless = [2 * edge, 2 * edge + 1].map(|arc| {
            let (tail, head) = (graph.tail(arc) as usize, graph.head[arc as usize] as usize);
            graph.cost[arc as usize] >= NEVER
                || from_root[tail].saturating_add(ascent.slack[arc as usize]).saturating_add(to_terminal[head]) >= room
        });
        if useless == [true; 2] {
            graph.remove_edge(edge);
            gone += 1;
        } else if !graph.symmetric {
            for (arc, useless) in [2 * edge, 2 * edge + 1].into_iter().zip(useless) {
                if useless && graph.cost[arc as usize] < NEVER {
                    graph.remove_arc(arc);
                    gone += 1;
                }
            }
        }
    }
    gone
}

/// How far each node is from (or, backwards, to) the nearest start, by the weights of the arcs that are there.
pub(crate) fn distances(graph: &Graph, weight: &[Cost], starts: &[u32], forwards: bool) -> Vec<Cost> {
    let mut far = vec![NEVER; graph.len()];
    let mut heap = BinaryHeap::new();
    for &start in starts {
        far[start as usize] = 0;
        heap.push(Reverse((0, start)));
    }
    while let Some(Reverse((distance, node))) = heap.pop() {
        if distance > far[node as usize] {
            continue;
        }
        for spoke in &graph.around[node as usize] {
            let arc = if forwards { spoke.arc } else { spoke.arc ^ 1 } as usize;
            if graph.cost[arc] >= NEVER {
                continue;
            }
            let next = distance + weight[arc];
            if next < far[spoke.to as usize] {
                far[spoke.to as usize] = next;
                heap.push(Reverse((next, spoke.to)));
            }
        }
    }
    far
}
