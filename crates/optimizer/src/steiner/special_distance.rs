//! Reductions by special distance: a line goes where a walk from terminal to terminal does the same with shorter steps.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::graph::{Graph, History, Made, NEVER};
use super::instance::Cost;

/// A search that stops after so many nodes; its labels are kept between searches.
pub(crate) struct Walks {
    label: Vec<(Cost, Cost)>,
    touched: Vec<u32>,
    heap: BinaryHeap<Reverse<(Cost, Cost, u32)>>,
    effort: usize,
}

const UNSEEN: (Cost, Cost) = (Cost::MAX, Cost::MAX);

impl Walks {
    pub(crate) fn new(nodes: usize, effort: usize) -> Self {
        Self { label: vec![UNSEEN; nodes], touched: Vec::new(), heap: BinaryHeap::new(), effort }
    }

    /// Walks from `start` whose longest step between terminals is at most `cap`, without the node or edge to avoid.
    /// Afterwards `step_to` tells the longest step of the best walk found.
    fn search(&mut self, graph: &Graph, start: u32, cap: Cost, avoid: Avoid, aims: &[u32]) {
        for node in self.touched.drain(..) {
            self.label[node as usize] = UNSEEN;
        }
        self.heap.clear();
        self.set(start, (0, 0));
        let mut left = self.effort;
        let mut aims_left = aims.len();
        while let Some(Reverse((longest, step, node))) = self.heap.pop() {
            if self.label[node as usize] != (longest, step) {
                continue;
            }
            if aims.contains(&node) {
                aims_left = aims_left.saturating_sub(1);
            }
            if aims_left == 0 || left == 0 {
                break;
            }
            left -= 1;
            let restart = graph.symmetric && graph.is_terminal(node);
            let step = if restart { 0 } else { step };
            for spoke in &graph.around[node as usize] {
                left = left.saturating_sub(1);
                if avoid == Avoid::Edge(spoke.arc / 2) || avoid == Avoid::Node(spoke.to) {
                    continue;
                }
                let next = step + graph.cost[spoke.arc as usize];
                let label = (longest.max(next), next);
                if label.0 <= cap && label < self.label[spoke.to as usize] {
                    self.set(spoke.to, label);
                }
            }
        }
    }

    fn set(&mut self, node: u32, label: (Cost, Cost)) {
        if self.label[node as usize] == UNSEEN {
            self.touched.push(node);
        }
        self.label[node as usize] = label;
        self.heap.push(Reverse((label.0, label.1, node)));
    }

    fn step_to(&self, node: u32) -> Cost {
        self.label[node as usize].0
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Avoid {
    Edge(u32),
    Node(u32),
}

/// Removes lines that a walk of steps no longer than the line replaces. Where the graph is not symmetric, one plain path
/// must do it.
pub(crate) fn remove_long_lines(graph: &mut Graph, walks: &mut Walks) -> usize {
    let mut gone = 0;
    let mut edges: Vec<u32> = (0..graph.made.len() as u32).filter(|&edge| graph.edge_there(edge)).collect();
    edges.sort_by_key(|&edge| Reverse(graph.cost[2 * edge as usize].min(graph.cost[2 * edge as usize + 1])));
    for edge in edges {
        let arcs = if graph.symmetric { 2 * edge..2 * edge + 1 } else { 2 * edge..2 * edge + 2 };
        for arc in arcs {
            let cap = graph.cost[arc as usize];
            if cap >= NEVER {
                continue;
            }
            let (tail, head) = (graph.tail(arc), graph.head[arc as usize]);
            if graph.degree(tail) < 2 || graph.degree(head) < 2 {
                continue;
            }
            walks.search(graph, tail, cap, Avoid::Edge(edge), &[head]);
            if walks.step_to(head) <= cap {
                gone += 1;
                if graph.symmetric {
                    graph.remove_edge(edge);
                } else {
                    graph.remove_arc(arc);
                }
            }
        }
    }
    gone
}

/// Replaces a node of three or four lines that no best tree branches at by lines between its neighbours.
pub(crate) fn replace_low_nodes(graph: &mut Graph, history: &mut History, walks: &mut Walks) -> usize {
    if !graph.symmetric {
        return 0;
    }
    let mut gone = 0;
    let nodes: Vec<u32> = graph.nodes().filter(|&node| !graph.is_terminal(node)).collect();
    for node in nodes {
        let spokes = graph.around[node as usize].clone();
        if !(3..=4).contains(&spokes.len()) {
            continue;
        }
        let size = spokes.len();
        let cost: Vec<Cost> = spokes.iter().map(|spoke| graph.cost[spoke.arc as usize]).collect();
        let total: Cost = cost.iter().sum();
        let near: Vec<u32> = spokes.iter().map(|spoke| spoke.to).collect();
        let mut apart = vec![vec![NEVER; size]; size];
        for one in 0..size {
            walks.search(graph, near[one], total, Avoid::Node(node), &near[one + 1..]);
            for other in one + 1..size {
                let step = walks.step_to(near[other]).min(NEVER);
                apart[one][other] = step;
                apart[other][one] = step;
            }
        }
        let replaceable = (0u32..1 << size).filter(|set| set.count_ones() >= 3).all(|set| {
            let members: Vec<usize> = (0..size).filter(|index| set >> index & 1 == 1).collect();
            spanning(&apart, &members) <= members.iter().map(|&index| cost[index]).sum()
        });
        if !replaceable {
            continue;
        }
        let parts: Vec<u32> = spokes.iter().map(|spoke| graph.made[(spoke.arc / 2) as usize]).collect();
        graph.remove_node(node);
        gone += 1;
        for one in 0..size {
            for other in one + 1..size {
                let sum = cost[one] + cost[other];
                // A line that a walk replaces at once need not come.
                if apart[one][other] > sum {
                    let made = history.add(Made::Joined(parts[one], parts[other]));
                    graph.add_edge(near[one], near[other], sum, sum, made);
                }
            }
        }
    }
    gone
}

/// The least that joins all members.
fn spanning(apart: &[Vec<Cost>], members: &[usize]) -> Cost {
    let mut open: Vec<usize> = members[1..].to_vec();
    let mut near: Vec<Cost> = open.iter().map(|&member| apart[members[0]][member]).collect();
    let mut sum: Cost = 0;
    while let Some((place, &least)) = near.iter().enumerate().min_by_key(|&(_, cost)| cost) {
        sum = sum.saturating_add(least).min(NEVER);
        let joined = open.swap_remove(place);
        near.swap_remove(place);
        for (index, &member) in open.iter().enumerate() {
            near[index] = near[index].min(apart[joined][member]);
        }
    }
    sum
}
