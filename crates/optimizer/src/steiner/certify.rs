//! From a tree that is known to be cheapest to a certificate: raised cuts on the instance itself, split where they stay
//! too low. Of the reductions only dropped lines are used, each with its proof, so that all can be checked against the instance.

use super::cases::{case, missed, starts, starts_anywhere};
use super::certificate::{Case, Certificate, Cut, Step};
use super::dropped::droppable;
use super::dual_ascent::{Ascent, ascend};
use super::graph::{Graph, History, NEVER};
use super::instance::{Cost, Instance, Tree};
use super::primal::{Found, NO_ARC};
use super::split::{candidates, within, without};

/// Nodes tried before one is split at.
const TRIALS: usize = 6;

/// Makes a certificate that no tree costs less than this one, with at most so many leaves. `None` where that is not
/// enough, or the tree is not cheapest.
#[must_use]
pub fn certify(instance: &Instance, tree: &Tree, most_leaves: usize) -> Option<Certificate> {
    instance.validate().ok()?;
    let dropped = droppable(instance, &tree.lines);
    let mut there = vec![true; instance.lines.len()];
    dropped.iter().for_each(|one| there[one.line] = false);
    let mut reduced = instance.clone();
    let mut kept = there.iter();
    reduced.lines.retain(|_| kept.next().copied().unwrap_or(true));
    let mut certificate = Certificate { dropped, cases: Vec::new() };
    let mut left = most_leaves;
    let starts = if instance.root.is_none() && !instance.terminals.is_empty() {
        vec![best_start(&reduced)]
    } else {
        starts(instance)
    };
    for (place, &start) in starts.iter().enumerate() {
        let out = &starts[..place];
        if starts_anywhere(instance) && missed(instance, out) >= tree.cost {
            break;
        }
        let (graph, copied) = case(&reduced, &mut History::default(), start, out);
        let begins = Tree { root: Some(start), ..tree.clone() };
        let guide = if holds(instance, tree, start) { guide(instance, &graph, &begins) } else { None };
        let mut proof = Proof { instance, copied, guide, target: tree.cost, left };
        let steps = proof.steps(graph)?;
        left = proof.left;
        certificate.cases.push(Case { start, steps });
    }
    (!starts_anywhere(instance) || missed(instance, &starts) >= tree.cost).then_some(certificate)
}

/// Terminals that are tried as the start.
const STARTS: usize = 12;

/// The terminal from which the raised cuts come highest: every tree holds all of them, and may start at any.
fn best_start(instance: &Instance) -> usize {
    let (count, most) = (instance.terminals.len(), instance.terminals.len().min(STARTS));
    let spread = (0..most).map(|index| instance.terminals[index * count / most]);
    let bound = |start: usize| {
        let (graph, _) = case(instance, &mut History::default(), start, &[]);
        ascend(&graph, graph.root, None, false).bound
    };
    spread.max_by_key(|&start| (bound(start), std::cmp::Reverse(start))).unwrap_or(0)
}

/// Whether an undirected tree holds a node, so that it can be led away from it; another tree must start there.
fn holds(instance: &Instance, tree: &Tree, node: usize) -> bool {
    tree.root == Some(node) || instance.is_undirected() && instance.terminals.contains(&node)
}

struct Proof<'a> {
    instance: &'a Instance,
    copied: Vec<usize>,
    guide: Option<Found>,
    target: Cost,
    left: usize,
}

impl Proof<'_> {
    fn steps(&mut self, first: Graph) -> Option<Vec<Step>> {
        let mut steps = Vec::new();
        let mut open = vec![first];
        while let Some(graph) = open.pop() {
            if let Some(ascent) = self.high_enough(&graph) {
                self.left = self.left.checked_sub(1)?;
                steps.push(Step::Leaf(self.cuts(&ascent)));
                continue;
            }
            let node = self.node_to_split(&graph)?;
            steps.push(Step::Split(node as usize));
            open.push(within(&graph, node));
            open.push(without(&graph, node));
        }
        Some(steps)
    }

    fn high_enough(&self, graph: &Graph) -> Option<Ascent> {
        let flags = self.guide.as_ref().map(|guide| guide.flags(graph));
        let reached = |ascent: &Ascent| ascent.bound >= self.target - graph.bought_cost;
        [None, flags.as_deref()].into_iter().map(|guide| ascend(graph, graph.root, guide, true)).find(reached)
    }

    fn node_to_split(&self, graph: &Graph) -> Option<u32> {
        let nobody = Found { cost: 0, into: vec![NO_ARC; graph.len()] };
        let bound = |graph: Graph| ascend(&graph, graph.root, None, false).bound.min(NEVER);
        candidates(graph, self.guide.as_ref().unwrap_or(&nobody)).into_iter().take(TRIALS).max_by_key(|&node| {
            let bounds = [bound(without(graph, node)), bound(within(graph, node))];
            (bounds[0].min(bounds[1]), bounds[0].max(bounds[1]), std::cmp::Reverse(node))
        })
    }

    fn cuts(&self, ascent: &Ascent) -> Vec<Cut> {
        let mut cuts = Vec::new();
        let mut all: Vec<_> = ascent.cuts.iter().collect();
        // Where a terminal cannot be reached, its last cut has no arcs and any value will do.
        all.retain(|cut| cut.value > 0);
        for cut in all {
            let toward = match (cut.terminal as usize).checked_sub(self.instance.nodes) {
                Some(copy) => self.copied[copy],
                None => cut.terminal as usize,
            };
            let mut nodes: Vec<usize> =
                cut.nodes.iter().map(|&node| node as usize).filter(|&node| node < self.instance.nodes).collect();
            nodes.sort_unstable();
            // A prize's cut without its node only says that the node is left out.
            if nodes.binary_search(&toward).is_ok() {
                cuts.push(Cut { toward, nodes, value: cut.value });
            }
        }
        cuts
    }
}

/// The tree's arcs in the graph.
fn guide(instance: &Instance, graph: &Graph, tree: &Tree) -> Option<Found> {
    let start = tree.root?;
    let mut found = Found { cost: 0, into: vec![NO_ARC; graph.len()] };
    let mut near = vec![Vec::new(); instance.nodes];
    for &line in &tree.lines {
        let line = instance.lines.get(line)?;
        near[line.from].push(line.to as u32);
        near[line.to].push(line.from as u32);
    }
    let mut open = vec![start as u32];
    let mut seen = vec![false; graph.len()];
    *seen.get_mut(start)? = true;
    while let Some(node) = open.pop() {
        for spoke in &graph.around[node as usize] {
            let next = spoke.to as usize;
            let copy = next >= instance.nodes && node != graph.root;
            if (copy || next < instance.nodes && near[node as usize].contains(&spoke.to))
                && graph.cost[spoke.arc as usize] < NEVER
                && !std::mem::replace(&mut seen[next], true)
            {
                found.into[next] = spoke.arc;
                if !copy {
                    open.push(spoke.to);
                }
            }
        }
    }
    // A prize that is missed is joined straight from the root.
    for spoke in &graph.around[start] {
        if spoke.to as usize >= instance.nodes && found.into[spoke.to as usize] == NO_ARC {
            found.into[spoke.to as usize] = spoke.arc;
        }
    }
    Some(found)
}
