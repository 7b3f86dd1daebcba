//! Dynamic programming over sets of terminals, guided: labels (node, set) are settled in the order of their cost plus
//! what raised cuts say the rest must cost, and dropped where that is no less than the best tree known.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BinaryHeap};

use super::dual_ascent::{Ascent, RaisedCut};
use super::graph::{Graph, NEVER};
use super::instance::Cost;
use super::label_table::LabelTable;

/// A set of terminals by their places; the root has none.
pub(crate) type Set = u128;

/// How many terminals beside the root fit a set.
pub(crate) const MOST_TERMINALS: usize = 128;

#[derive(Clone, Copy)]
enum From {
    Terminal,
    Along(u32, u32),
    Both(u32, u32),
}

struct Label {
    node: u32,
    set: Set,
    cost: Cost,
    from: From,
    settled: bool,
}

/// How the labels came out.
pub(crate) enum Labelled {
    /// The arcs of a tree that is cheaper than the limit and cheapest.
    Cheapest(Vec<u32>),
    /// The arcs of a tree that is cheaper than the limit, and perhaps not cheapest.
    Perhaps(Vec<u32>),
    /// No tree is cheaper than the limit.
    NoneCheaper,
    /// More labels than allowed; no tree is cheaper than this.
    TooMany(Cost),
}

struct Cuts {
    with_set: Vec<(Set, Cost)>,
    at_node: Vec<Vec<(Set, Cost)>>,
    by_set: BTreeMap<Set, Cost>,
    full: Set,
}

impl Cuts {
    fn new(graph: &Graph, cuts: &[RaisedCut], place: &[usize], full: Set) -> Self {
        let mut with_set: BTreeMap<Set, Cost> = BTreeMap::new();
        let mut at_node: Vec<BTreeMap<Set, Cost>> = vec![BTreeMap::new(); graph.len()];
        for cut in cuts {
            let set = cut.nodes.iter().filter(|&&node| place[node as usize] < MOST_TERMINALS);
            let set: Set = set.map(|&node| 1 << place[node as usize]).sum();
            *with_set.entry(set).or_default() += cut.value;
            for &node in &cut.nodes {
                *at_node[node as usize].entry(set).or_default() += cut.value;
            }
        }
        Self {
            with_set: with_set.into_iter().collect(),
            at_node: at_node.into_iter().map(|sums| sums.into_iter().collect()).collect(),
            by_set: BTreeMap::new(),
            full,
        }
    }

    /// The least that joining the node and every terminal outside the set to the root costs.
    fn rest(&mut self, node: u32, set: Set) -> Cost {
        let open = self.full & !set;
        let with_set = &self.with_set;
        let outside = *self
            .by_set
            .entry(set)
            .or_insert_with(|| with_set.iter().filter(|(cut, _)| cut & open != 0).map(|&(_, value)| value).sum());
        let here: Cost =
            self.at_node[node as usize].iter().filter(|(cut, _)| cut & open == 0).map(|&(_, value)| value).sum();
        outside + here
    }
}

struct Labels<'a> {
    cuts: Cuts,
    labels: Vec<Label>,
    table: LabelTable,
    settled_at: Vec<Vec<u32>>,
    heap: BinaryHeap<Reverse<(Cost, Reverse<u32>, u32)>>,
    upper: Cost,
    graph: &'a Graph,
    terminal_set: Vec<Set>,
    work: u64,
}

/// How far the labels may go.
pub(crate) struct Effort<'a> {
    /// Labels kept at most.
    pub(crate) labels: usize,
    /// Steps at most.
    pub(crate) work: u64,
    /// Asked now and then; `true` stops.
    pub(crate) stop: &'a mut dyn FnMut() -> bool,
}

/// Finds the cheapest tree below `upper`. The ascent must have kept its cuts.
pub(crate) fn label_setting(graph: &Graph, root: u32, ascent: &Ascent, upper: Cost, effort: Effort) -> Labelled {
    let terminals: Vec<u32> = graph.terminals().into_iter().filter(|&node| node != root).collect();
    if terminals.len() > MOST_TERMINALS || terminals.is_empty() {
        return Labelled::TooMany(ascent.bound);
    }
    let mut place = vec![MOST_TERMINALS; graph.len()];
    terminals.iter().enumerate().for_each(|(index, &node)| place[node as usize] = index);
    let full = Set::MAX >> (MOST_TERMINALS - terminals.len());
    let terminal_set =
        place.iter().map(|&place| if place < MOST_TERMINALS { 1 << place } else { 0 }).collect::<Vec<Set>>();
    let mut run = Labels {
        cuts: Cuts::new(graph, &ascent.cuts, &place, full),
        labels: Vec::new(),
        table: LabelTable::default(),
        settled_at: vec![Vec::new(); graph.len()],
        heap: BinaryHeap::new(),
        upper,
        graph,
        terminal_set,
        work: 0,
    };
    for &terminal in &terminals {
        run.offer(terminal, run.terminal_set[terminal as usize], 0, From::Terminal);
    }
    let mut asked = 0u32;
    while let Some(Reverse((least, _, index))) = run.heap.pop() {
        let &Label { node, set, cost, settled, .. } = &run.labels[index as usize];
        if settled || least > cost + run.cuts.rest(node, set) {
            continue;
        }
        run.labels[index as usize].settled = true;
        if node == root && set == full {
            return Labelled::Cheapest(run.arcs(index));
        }
        asked += 1;
        let over = asked.is_multiple_of(4096) && (effort.stop)();
        if run.labels.len() > effort.labels || run.work > effort.work || over {
            return Labelled::TooMany(least);
        }
        run.spread(index, root);
    }
    Labelled::NoneCheaper
}

impl Labels<'_> {
    fn spread(&mut self, index: u32, root: u32) {
        let &Label { node, set, cost, .. } = &self.labels[index as usize];
        let graph = self.graph;
        let own = self.terminal_set[node as usize];
        // A node that is a terminal is always joined before its label moves on.
        if node != root && own & !set == 0 {
            for spoke in &graph.around[node as usize] {
                let into = spoke.arc ^ 1;
                if graph.cost[into as usize] < NEVER {
                    self.offer(spoke.to, set, cost + graph.cost[into as usize], From::Along(index, into));
                }
            }
        }
        self.work += self.settled_at[node as usize].len() as u64;
        for place in 0..self.settled_at[node as usize].len() {
            let other = self.settled_at[node as usize][place];
            let &Label { set: with, cost: more, .. } = &self.labels[other as usize];
            if with & set == 0 {
                self.offer(node, set | with, cost + more, From::Both(index, other));
            }
        }
        self.settled_at[node as usize].push(index);
    }

    fn offer(&mut self, node: u32, set: Set, cost: Cost, from: From) {
        self.work += self.cuts.at_node[node as usize].len() as u64 / 4 + 1;
        if cost >= self.upper {
            return;
        }
        let old =
            self.table.get(node, set, |index| (self.labels[index as usize].node, self.labels[index as usize].set));
        if let Some(index) = old {
            let label = &mut self.labels[index as usize];
            if label.settled || label.cost <= cost {
                return;
            }
            label.cost = cost;
            label.from = from;
            let least = cost + self.cuts.rest(node, set);
            self.heap.push(Reverse((least, Reverse(set.count_ones()), index)));
            return;
        }
        let least = cost + self.cuts.rest(node, set);
        if least >= self.upper {
            return;
        }
        let index = self.labels.len() as u32;
        self.labels.push(Label { node, set, cost, from, settled: false });
        let labels = &self.labels;
        self.table.put(node, set, index, |index| (labels[index as usize].node, labels[index as usize].set));
        self.heap.push(Reverse((least, Reverse(set.count_ones()), index)));
    }

    fn arcs(&self, index: u32) -> Vec<u32> {
        let mut arcs = Vec::new();
        let mut open = vec![index];
        while let Some(index) = open.pop() {
            match self.labels[index as usize].from {
                From::Terminal => {}
                From::Along(below, arc) => {
                    arcs.push(arc);
                    open.push(below);
                }
                From::Both(one, other) => open.extend([one, other]),
            }
        }
        arcs
    }
}
