//! Reductions around terminals: lines that some best tree has for sure, found from each terminal's region.

use std::cmp::{Ordering, Reverse};
use std::collections::BinaryHeap;

use super::graph::{Graph, NEVER};
use super::instance::Cost;

/// The nearest terminal of each node and how far it is.
pub(crate) struct Regions {
    pub(crate) base: Vec<u32>,
    pub(crate) far: Vec<Cost>,
}

const NOBODY: u32 = u32::MAX;

pub(crate) fn regions(graph: &Graph) -> Regions {
    let mut base = vec![NOBODY; graph.len()];
    let mut far = vec![NEVER; graph.len()];
    let mut heap = BinaryHeap::new();
    for terminal in graph.terminals() {
        base[terminal as usize] = terminal;
        far[terminal as usize] = 0;
        heap.push(Reverse((0, terminal)));
    }
    while let Some(Reverse((distance, node))) = heap.pop() {
        if distance > far[node as usize] {
            continue;
        }
        for spoke in &graph.around[node as usize] {
            let next = distance + graph.cost[spoke.arc as usize];
            if next < far[spoke.to as usize] {
                far[spoke.to as usize] = next;
                base[spoke.to as usize] = base[node as usize];
                heap.push(Reverse((next, spoke.to)));
            }
        }
    }
    Regions { base, far }
}

/// Buys lines that lie in some best tree: the cheapest line out of a terminal's region, where going over it to the next
/// terminal is no longer than the second cheapest alone. Only for symmetric graphs.
pub(crate) fn buy_short_links(graph: &mut Graph) -> usize {
    let mut bought = 0;
    while graph.symmetric {
        let (sure, possible) = sure_arcs(graph);
        // Lines that every best tree has can be bought together; of the others, one at a time.
        let mut touched = vec![false; graph.len()];
        for &arc in if sure.is_empty() { possible.get(..1).unwrap_or_default() } else { &sure[..] } {
            let ends = [graph.tail(arc) as usize, graph.head[arc as usize] as usize];
            if ends.iter().all(|&end| !touched[end]) {
                ends.iter().for_each(|&end| touched[end] = true);
                graph.contract(arc);
                bought += 1;
            }
        }
        if sure.is_empty() && possible.is_empty() {
            break;
        }
    }
    bought
}

/// Arcs that every best tree has, and arcs that each, alone, some best tree has.
fn sure_arcs(graph: &Graph) -> (Vec<u32>, Vec<u32>) {
    let (mut sure, mut possible) = (Vec::new(), Vec::new());
    let terminals = graph.terminals();
    if terminals.len() < 2 {
        return (sure, possible);
    }
    let regions = regions(graph);
    // Per region the cheapest and the second cheapest line out of it.
    let mut least: Vec<[(Cost, u32); 2]> = vec![[(NEVER, NOBODY); 2]; graph.len()];
    for node in graph.nodes() {
        let base = regions.base[node as usize];
        for spoke in &graph.around[node as usize] {
            if base == NOBODY || regions.base[spoke.to as usize] == base {
                continue;
            }
            let cost = graph.cost[spoke.arc as usize];
            let two = &mut least[base as usize];
            if cost < two[0].0 {
                *two = [(cost, spoke.arc), two[0]];
            } else if cost < two[1].0 {
                two[1] = (cost, spoke.arc);
            }
        }
    }
    for &terminal in &terminals {
        let [(cost, arc), (second, _)] = least[terminal as usize];
        if arc == NOBODY {
            continue;
        }
        let (inside, outside) = (graph.tail(arc) as usize, graph.head[arc as usize] as usize);
        if regions.base[outside] != NOBODY {
            sort(regions.far[inside] + cost + regions.far[outside], second, arc, &mut sure, &mut possible);
        }
        if let Some((through, second, arc)) = nearest_arc(graph, &regions, terminal) {
            sort(through, second, arc, &mut sure, &mut possible);
        }
    }
    (sure, possible)
}

fn sort(through: Cost, second: Cost, arc: u32, sure: &mut Vec<u32>, possible: &mut Vec<u32>) {
    match through.cmp(&second) {
        Ordering::Less => sure.push(arc),
        Ordering::Equal => possible.push(arc),
        Ordering::Greater => {}
    }
}

/// The shortest line at the terminal: how far it is over it to another terminal, and the second shortest line.
fn nearest_arc(graph: &Graph, regions: &Regions, terminal: u32) -> Option<(Cost, Cost, u32)> {
    let mut spokes: Vec<(Cost, u32, u32)> = graph.around[terminal as usize]
        .iter()
        .map(|spoke| (graph.cost[spoke.arc as usize], spoke.arc, spoke.to))
        .collect();
    spokes.sort_unstable();
    let (&(cost, arc, to), second) = (spokes.first()?, spokes.get(1).map_or(NEVER, |spoke| spoke.0));
    let other = regions.base[to as usize] != terminal;
    other.then_some((cost + regions.far[to as usize], second, arc))
}
