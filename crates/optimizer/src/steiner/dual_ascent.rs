//! Wong's dual ascent: directed cuts around terminals are raised until every terminal is joined to the root by arcs
//! that have no slack. The sum is a lower bound, the slacks are reduced costs.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::graph::{Graph, NEVER};
use super::instance::{Cost, MOST};

/// A set of nodes around a terminal, and by how much the arcs into it were charged.
#[derive(Clone, Debug)]
pub(crate) struct RaisedCut {
    pub(crate) terminal: u32,
    pub(crate) nodes: Vec<u32>,
    pub(crate) value: Cost,
}

#[derive(Clone, Debug)]
pub(crate) struct Ascent {
    /// The lower bound without what is bought; [`NEVER`] where a terminal cannot be reached.
    pub(crate) bound: Cost,
    /// What is left of each arc's cost.
    pub(crate) slack: Vec<Cost>,
    pub(crate) cuts: Vec<RaisedCut>,
}

/// How many more arcs in its cut one more arc of the guiding tree weighs.
const BESIDE_THE_GUIDE: usize = 1 << 20;

struct Climb<'a> {
    graph: &'a Graph,
    root: u32,
    guide: Option<&'a [bool]>,
    slack: Vec<Cost>,
    mark: Vec<u32>,
    stamp: u32,
    active: Vec<bool>,
}

/// Raises cuts in a fixed order: the terminal whose cut has the fewest arcs first. With a guide (one flag for each
/// arc), cuts that the guiding tree crosses once go before all others.
pub(crate) fn ascend(graph: &Graph, root: u32, guide: Option<&[bool]>, keep_cuts: bool) -> Ascent {
    let mut active = graph.terminal.clone();
    active[root as usize] = false;
    let mut climb =
        Climb { graph, root, guide, slack: graph.cost.clone(), mark: vec![0; graph.len()], stamp: 0, active };
    let mut heap: BinaryHeap<Reverse<(usize, u32)>> = graph
        .terminals()
        .into_iter()
        .filter(|&node| node != root)
        .map(|node| Reverse((graph.degree(node), node)))
        .collect();
    let mut ascent = Ascent { bound: 0, slack: Vec::new(), cuts: Vec::new() };
    while let Some(Reverse((_, terminal))) = heap.pop() {
        let next = heap.peek().map_or(usize::MAX, |Reverse((score, _))| *score);
        match climb.raise(terminal, next, &mut ascent, keep_cuts) {
            Raised::Joined => climb.active[terminal as usize] = false,
            Raised::Later(score) => heap.push(Reverse((score, terminal))),
            Raised::Unreachable => {
                ascent.bound = NEVER;
                break;
            }
        }
    }
    ascent.slack = climb.slack;
    ascent
}

enum Raised {
    Joined,
    Later(usize),
    Unreachable,
}

impl Climb<'_> {
    fn raise(&mut self, terminal: u32, next: usize, ascent: &mut Ascent, keep_cuts: bool) -> Raised {
        self.stamp += 1;
        let mut inside = vec![terminal];
        self.mark[terminal as usize] = self.stamp;
        let mut seen = 0;
        let mut cut: Vec<u32> = Vec::new();
        loop {
            while seen < inside.len() {
                let node = inside[seen];
                seen += 1;
                for spoke in &self.graph.around[node as usize] {
                    let into = (spoke.arc ^ 1) as usize;
                    if self.mark[spoke.to as usize] == self.stamp || self.graph.cost[into] >= NEVER {
                        continue;
                    }
                    if self.slack[into] > 0 {
                        cut.push(into as u32);
                        continue;
                    }
                    if spoke.to == self.root || self.active[spoke.to as usize] {
                        return Raised::Joined;
                    }
                    self.mark[spoke.to as usize] = self.stamp;
                    inside.push(spoke.to);
                }
            }
            cut.retain(|&arc| self.mark[self.graph.tail(arc) as usize] != self.stamp);
            if cut.is_empty() {
                if keep_cuts {
                    ascent.cuts.push(RaisedCut { terminal, nodes: inside, value: MOST });
                }
                return Raised::Unreachable;
            }
            let mut score = cut.len();
            if let Some(guide) = self.guide {
                let crossings = cut.iter().filter(|&&arc| guide[arc as usize]).count();
                score += BESIDE_THE_GUIDE * crossings.saturating_sub(1);
            }
            if score > next {
                return Raised::Later(score);
            }
            let value = cut.iter().map(|&arc| self.slack[arc as usize]).min().unwrap_or(0);
            ascent.bound += value;
            if keep_cuts {
                ascent.cuts.push(RaisedCut { terminal, nodes: inside.clone(), value });
            }
            let mut joined = false;
            for &arc in &cut {
                self.slack[arc as usize] -= value;
                let tail = self.graph.tail(arc);
                if self.slack[arc as usize] == 0 && self.mark[tail as usize] != self.stamp {
                    joined |= tail == self.root || self.active[tail as usize];
                    self.mark[tail as usize] = self.stamp;
                    inside.push(tail);
                }
            }
            if joined {
                return Raised::Joined;
            }
        }
    }
}
