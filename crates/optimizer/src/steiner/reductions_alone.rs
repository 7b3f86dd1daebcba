//! Each reduction by itself: the cheapest tree costs the same before and after, and what is left maps back to the instance.

use super::cases::case;
use super::degree_tests::reduce_by_degree;
use super::dual_ascent::ascend;
use super::graph::{Graph, History, NEVER};
use super::instance::{Cost, Instance, Line};
use super::reduced_cost::fix_by_reduced_cost;
use super::special_distance::{Walks, remove_long_lines, replace_low_nodes};
use super::terminal_tests::buy_short_links;
use super::tree::tree_over;

/// Graphs that each reduction is tried on, of each kind.
const GRAPHS: u64 = 500;
/// No walk is cut short.
const EFFORT: usize = 100_000;

/// A linear congruential generator.
struct Chance(u64);

impl Chance {
    fn below(&mut self, end: u64) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % end) as usize
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Undirected,
    Directed,
    Prizes,
}

const KINDS: [Kind; 3] = [Kind::Undirected, Kind::Directed, Kind::Prizes];

fn instance(seed: u64, kind: Kind) -> Instance {
    let mut chance = Chance(seed.wrapping_mul(0x9E37_79B9));
    let nodes = 2 + chance.below(8);
    let dear = [2, 5, 20][chance.below(3)];
    let mut lines = Vec::new();
    for index in 0..nodes - 1 + chance.below(8) {
        let to = if index + 1 < nodes { index + 1 } else { chance.below(nodes as u64) };
        let from = if index + 1 < nodes { chance.below(to as u64) } else { chance.below(nodes as u64) };
        if from != to {
            let there = chance.below(dear) as Cost;
            let back = match (kind, chance.below(3)) {
                (Kind::Directed, 0) => None,
                (Kind::Directed, 1) => Some(chance.below(dear) as Cost),
                _ => Some(there),
            };
            lines.push(Line { from, to, there, back });
        }
    }
    let terminals = (0..1 + chance.below(4)).map(|_| chance.below(nodes as u64)).collect();
    let prize = |chance: &mut Chance| (chance.below(nodes as u64), chance.below(dear) as Cost);
    let prizes = if kind == Kind::Prizes { (0..3).map(|_| prize(&mut chance)).collect() } else { Vec::new() };
    Instance { nodes, lines, root: Some(0), terminals, prizes }
}

/// A tree's cost and arcs, where there is one.
type Best = Option<(Cost, Vec<u32>)>;

/// The least cost of a tree of the graph from its root to all terminals, with what is bought, and the arcs of one: by the sets of
/// terminals that each node can lead to, every set split in every way.
fn optimum(graph: &Graph) -> Best {
    let terminals: Vec<u32> = graph.terminals().into_iter().filter(|&node| node != graph.root).collect();
    let full = (1usize << terminals.len()) - 1;
    let mut best: Vec<Vec<Best>> = vec![vec![None; graph.len()]; full + 1];
    for node in graph.nodes() {
        best[0][node as usize] = Some((0, Vec::new()));
    }
    for set in 1..=full {
        for node in graph.nodes() {
            let at = node as usize;
            let own = terminals.iter().position(|&terminal| terminal == node).map_or(0, |place| 1usize << place) & set;
            let mut found = if own == 0 { None } else { best[set ^ own][at].clone() };
            let mut part = (set - 1) & set;
            while part > 0 {
                if let (Some(one), Some(other)) = (&best[part][at], &best[set ^ part][at])
                    && found.as_ref().is_none_or(|found| one.0 + other.0 < found.0)
                {
                    found = Some((one.0 + other.0, one.1.iter().chain(&other.1).copied().collect()));
                }
                part = (part - 1) & set;
            }
            best[set][at] = found;
        }
        // Led on from node to node, until nothing gets cheaper.
        let mut changed = true;
        while changed {
            changed = false;
            for arc in (0..graph.cost.len() as u32).filter(|&arc| graph.cost[arc as usize] < NEVER) {
                let (tail, head) = (graph.tail(arc) as usize, graph.head[arc as usize] as usize);
                let Some((cost, arcs)) = best[set][head].clone() else { continue };
                let sum = cost + graph.cost[arc as usize];
                if best[set][tail].as_ref().is_none_or(|(old, _)| sum < *old) {
                    best[set][tail] = Some((sum, arcs.into_iter().chain([arc]).collect()));
                    changed = true;
                }
            }
        }
    }
    let (cost, arcs) = best[full][graph.root as usize].clone()?;
    Some((cost + graph.bought_cost, arcs))
}

/// Tries a reduction alone on many graphs; it says whether it did something. The optimum is that of before, and the arcs of the
/// reduced graph's tree with what was bought are a tree of the instance that costs no more.
fn tried(kinds: &[Kind], reduce: impl Fn(&mut Graph, &mut History, Cost) -> bool) {
    let mut effective = 0;
    for &kind in kinds {
        for seed in 1..=GRAPHS {
            let instance = instance(seed, kind);
            let mut history = History::default();
            let (mut graph, _) = case(&instance, &mut history, 0, &[]);
            let Some((before, _)) = optimum(&graph) else { continue };
            let did = reduce(&mut graph, &mut history, before);
            let told = format!("{kind:?} {seed} {instance:?}");
            let after = optimum(&graph);
            assert_eq!(after.as_ref().map(|(cost, _)| *cost), Some(before), "{told}");
            let compacted = graph.compacted();
            assert_eq!(optimum(&compacted).map(|(cost, _)| cost), Some(before), "compacted: {told}");
            let arcs = after.map(|(_, arcs)| arcs).unwrap_or_default();
            let parts = arcs.iter().map(|&arc| graph.made_of(arc)).chain(graph.bought.iter().copied());
            let tree = tree_over(&instance, 0, &history.lines(parts));
            assert_eq!(tree.map(|tree| tree.cost), Some(before), "mapped back: {told}");
            effective += u64::from(did);
        }
    }
    assert!(effective > GRAPHS / 10, "it did something to {effective} graphs");
}

#[test]
fn degree_tests_alone_keep_the_optimum() {
    tried(&KINDS, |graph, history, _| reduce_by_degree(graph, history) > 0);
}

#[test]
fn removing_long_lines_alone_keeps_the_optimum() {
    tried(&KINDS, |graph, _, _| remove_long_lines(graph, &mut Walks::new(graph.len(), EFFORT)) > 0);
}

#[test]
fn removing_long_lines_by_walks_cut_short_keeps_the_optimum() {
    tried(&KINDS, |graph, _, _| remove_long_lines(graph, &mut Walks::new(graph.len(), 12)) > 0);
}

#[test]
fn replacing_low_nodes_alone_keeps_the_optimum() {
    tried(&[Kind::Undirected], |graph, history, _| {
        replace_low_nodes(graph, history, &mut Walks::new(graph.len(), EFFORT)) > 0
    });
}

#[test]
fn buying_short_links_alone_keeps_the_optimum() {
    tried(&[Kind::Undirected], |graph, _, _| buy_short_links(graph) > 0);
}

/// Only trees as dear as the upper bound may go: one unit above the optimum it stays.
#[test]
fn fixing_by_reduced_costs_alone_keeps_what_is_cheaper_than_the_upper_bound() {
    for above in [1, 3] {
        tried(&KINDS, |graph, _, optimum| {
            let root = graph.root;
            let ascent = ascend(graph, root, None, false);
            assert!(ascent.bound <= optimum, "the bound of the ascent is above the optimum");
            fix_by_reduced_cost(graph, root, &ascent, optimum + above) > 0
        });
    }
}

/// From every terminal of a symmetric graph as the root.
#[test]
fn fixing_from_another_root_keeps_what_is_cheaper_than_the_upper_bound() {
    tried(&[Kind::Undirected], |graph, _, optimum| {
        let mut gone = 0;
        for root in graph.terminals() {
            let ascent = ascend(graph, root, None, false);
            gone += fix_by_reduced_cost(graph, root, &ascent, optimum + 1);
        }
        gone > 0
    });
}

/// An arc of a tree that is cheapest, bought: the optimum stays.
#[test]
fn buying_an_arc_of_a_best_tree_keeps_the_optimum() {
    tried(&KINDS, |graph, _, _| {
        let arcs = optimum(graph).map(|(_, arcs)| arcs).unwrap_or_default();
        let first = arcs.into_iter().find(|&arc| graph.symmetric || graph.tail(arc) == graph.root);
        first.inspect(|&arc| graph.contract(arc)).is_some()
    });
}
