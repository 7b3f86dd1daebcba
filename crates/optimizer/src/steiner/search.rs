//! Branch and bound over the graphs of an instance: each is reduced, bounded by dual ascent, tried with label setting,
//! and split at a node that is either in the tree or not.

use super::cases::{case, missed, starts, starts_anywhere};
use super::dual_ascent::{Ascent, ascend};
use super::frontier::along_front;
use super::graph::{Graph, History};
use super::instance::{Cost, Instance, MOST, Tree};
use super::label_setting::{Effort, Labelled, MOST_TERMINALS, label_setting};
use super::node_work::{Bounded, bounded};
use super::primal::{Found, cheapest_over};
use super::split::{Split, split};
use super::tree::tree_over;

/// No tree costs as much.
const NO_TREE: Cost = MOST * 2;
/// Labels at the first graphs, and at all later ones.
const LABELS: [usize; 2] = [3_000_000, 150_000];
/// Steps of label setting likewise.
const LABEL_WORK: [u64; 2] = [400_000_000, 10_000_000];
/// How wide a front may be, and how many states it passes, likewise.
const WIDEST: [usize; 2] = [20, 16];
const FRONT_WORK: [u64; 2] = [8_000_000, 1_000_000];
/// How wide a front may be where few states are kept, and how many are, likewise.
const FEW_WIDEST: usize = 32;
const FEW: [usize; 2] = [2000, 200];

/// When to stop before the search has ended.
pub struct SteinerLimits<'a> {
    /// The most graphs that are searched.
    pub nodes: Option<u64>,
    /// Asked now and then; `true` stops.
    pub stop: &'a mut dyn FnMut() -> bool,
    /// What the search may use.
    pub methods: Methods,
}

/// What the search may use beside branching on bounds: for measuring, and for holding one against another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Methods {
    /// Reductions by distances and around terminals.
    pub distances: bool,
    /// Reductions by reduced costs.
    pub reduced_costs: bool,
    /// Dynamic programming over sets of terminals.
    pub labels: bool,
    /// Dynamic programming along a narrow front.
    pub front: bool,
}

impl Default for Methods {
    fn default() -> Self {
        Self { distances: true, reduced_costs: true, labels: true, front: true }
    }
}

/// A graph still to be searched.
pub(crate) struct Open {
    pub(crate) graph: Graph,
    pub(crate) bound: Cost,
    pub(crate) depth: usize,
    pub(crate) start: usize,
    /// The lines when label setting was tried last.
    pub(crate) tried: usize,
}

/// How dynamic programming left a graph.
enum Settled {
    Closed,
    /// A better tree was found.
    Better,
    Open,
}

pub(crate) struct Search<'a, 'b> {
    pub(crate) instance: &'a Instance,
    pub(crate) history: History,
    pub(crate) best: Option<Tree>,
    pub(crate) upper: Cost,
    pub(crate) nodes: u64,
    pub(crate) methods: Methods,
    limits: &'a mut SteinerLimits<'b>,
    stopped: bool,
}

impl<'a, 'b> Search<'a, 'b> {
    pub(crate) fn new(instance: &'a Instance, limits: &'a mut SteinerLimits<'b>) -> Self {
        Self {
            instance,
            history: History::default(),
            best: None,
            upper: NO_TREE,
            nodes: 0,
            methods: limits.methods,
            limits,
            stopped: false,
        }
    }

    /// Searches all cases; returns a bound that no tree goes below. Where it is the best tree's cost, that is optimal;
    /// `None` where there is no tree.
    pub(crate) fn run(&mut self) -> Option<Cost> {
        let starts = starts(self.instance);
        let anywhere = starts_anywhere(self.instance);
        if anywhere {
            let cost = missed(self.instance, &starts);
            self.offer_tree(Tree { cost, root: None, lines: Vec::new() });
        }
        let mut bound = NO_TREE;
        for (place, &start) in starts.iter().enumerate() {
            let out = &starts[..place];
            if missed(self.instance, out) >= self.upper {
                break;
            }
            if self.stopped {
                bound = bound.min(missed(self.instance, out));
                break;
            }
            let (graph, _) = case(self.instance, &mut self.history, start, out);
            bound = bound.min(self.search(Open {
                bound: graph.bought_cost,
                graph,
                depth: 0,
                start,
                tried: usize::MAX / 8,
            }));
        }
        let bound = bound.min(self.upper);
        (bound < NO_TREE).then_some(bound)
    }

    /// Depth first; returns the least bound of what is left open.
    fn search(&mut self, first: Open) -> Cost {
        let mut stack = vec![first];
        while let Some(open) = stack.pop() {
            if open.bound >= self.upper {
                continue;
            }
            if self.is_over() || self.limits.nodes.is_some_and(|most| self.nodes >= most) {
                self.stopped = true;
                return stack.iter().map(|open| open.bound).fold(open.bound, Cost::min);
            }
            self.nodes += 1;
            let mut open = open;
            if let Some(both) = self.visit(&mut open) {
                stack.extend(both);
            }
            if self.stopped {
                return stack.iter().map(|open| open.bound).fold(open.bound, Cost::min);
            }
        }
        NO_TREE
    }

    pub(crate) fn is_over(&mut self) -> bool {
        self.stopped = self.stopped || (self.limits.stop)();
        self.stopped
    }

    /// Works on one graph until it is closed or must be split.
    fn visit(&mut self, open: &mut Open) -> Option<Vec<Open>> {
        loop {
            let Bounded::Gap { best, bound } = bounded(self, open) else { return None };
            open.bound = open.bound.max(bound);
            if self.stopped {
                return None;
            }
            match self.programmed(open) {
                Settled::Closed => return None,
                Settled::Better => continue,
                Settled::Open => {}
            }
            match split(self, open, &best) {
                Split::Again => {}
                Split::Closed => return None,
                Split::Both(both) => return Some(both),
            }
        }
    }

    /// Whether dynamic programming settles the graph.
    fn programmed(&mut self, open: &mut Open) -> Settled {
        let size = open.graph.edges();
        if size * 5 > open.tried * 4 {
            return Settled::Open;
        }
        open.tried = size;
        let graph = &open.graph;
        let level = open.depth.min(1);
        let upper = self.upper - graph.bought_cost;
        let ascent = ascend(graph, graph.root, None, true);
        if self.labels_close(open, &ascent, LABEL_WORK[1]) {
            return Settled::Closed;
        }
        let graph = &open.graph;
        if self.methods.front && graph.symmetric && ascent.bound < upper {
            for (widest, kept) in [(FEW_WIDEST, FEW[level]), (WIDEST[level], usize::MAX)] {
                let effort = Effort { labels: LABELS[level], work: FRONT_WORK[level], stop: &mut *self.limits.stop };
                let result = along_front(&open.graph, &ascent, upper, (widest, kept), effort);
                let before = self.upper;
                if self.settle(open, result) {
                    return Settled::Closed;
                }
                if self.upper < before {
                    // What is now too dear goes first.
                    open.tried = usize::MAX / 8;
                    return Settled::Better;
                }
            }
        }
        if level == 0 && self.labels_close(open, &ascent, LABEL_WORK[0]) {
            return Settled::Closed;
        }
        Settled::Open
    }

    fn labels_close(&mut self, open: &mut Open, ascent: &Ascent, work: u64) -> bool {
        let graph = &open.graph;
        if !self.methods.labels || graph.terminals().len() > MOST_TERMINALS {
            return false;
        }
        let labels = LABELS[open.depth.min(1)].min(400_000_000 / (graph.len() + 1));
        let effort = Effort { labels, work, stop: &mut *self.limits.stop };
        let result = label_setting(graph, graph.root, ascent, self.upper - graph.bought_cost, effort);
        self.settle(open, result)
    }

    fn settle(&mut self, open: &mut Open, result: Labelled) -> bool {
        match result {
            Labelled::Cheapest(arcs) => {
                self.offer_arcs(open, arcs.into_iter());
                true
            }
            Labelled::Perhaps(arcs) => {
                let graph = &open.graph;
                let mut inside = vec![false; graph.len()];
                for &arc in &arcs {
                    inside[graph.head[arc as usize] as usize] = true;
                    inside[graph.tail(arc) as usize] = true;
                }
                if let Some(mut found) = cheapest_over(graph, graph.root, &inside) {
                    super::primal::prune(graph, graph.root, &mut found);
                    super::local_search::improve(graph, graph.root, &mut found);
                    self.offer(open, &found);
                }
                open.bound >= self.upper
            }
            Labelled::NoneCheaper => true,
            Labelled::TooMany(bound) => {
                open.bound = open.bound.max(bound + open.graph.bought_cost);
                open.bound >= self.upper
            }
        }
    }

    pub(crate) fn offer(&mut self, open: &Open, found: &Found) {
        if found.cost + open.graph.bought_cost < self.upper {
            self.offer_arcs(open, found.arcs());
        }
    }

    /// All nodes are terminals of a symmetric graph.
    pub(crate) fn offer_spanning(&mut self, open: &Open) {
        if let Some(mut found) = cheapest_over(&open.graph, open.graph.root, &open.graph.present) {
            super::primal::prune(&open.graph, open.graph.root, &mut found);
            self.offer(open, &found);
        }
    }

    pub(crate) fn offer_arcs(&mut self, open: &Open, arcs: impl Iterator<Item = u32>) {
        let graph = &open.graph;
        let parts = arcs.map(|arc| graph.made_of(arc)).chain(graph.bought.iter().copied());
        let lines = self.history.lines(parts);
        if let Some(tree) = tree_over(self.instance, open.start, &lines) {
            self.offer_tree(tree);
        }
    }

    fn offer_tree(&mut self, tree: Tree) {
        if tree.cost < self.upper {
            self.upper = tree.cost;
            self.best = Some(tree);
        }
    }
}
