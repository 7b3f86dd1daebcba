//! The walk back: what all orders give in which a node has a certain set below it, or one box feeds another.

use super::inside::{Inside, divisions, subsets};
use super::question::Node;
use super::reckoned::Reckoned;
use super::shape::{Heads, Shape};

/// What stands around every node with every set below it.
pub(crate) struct Outside<'s> {
    inside: &'s Inside<'s>,
    below: Vec<Reckoned>,
    run: Vec<Reckoned>,
    runs: Vec<Vec<Reckoned>>,
    joined: Vec<Vec<Vec<Reckoned>>>,
}

impl<'s> Outside<'s> {
    /// Walks back over all sets.
    pub(crate) fn of(inside: &'s Inside<'s>) -> Self {
        let shape = inside.shape;
        let mut outside = Self {
            inside,
            below: vec![Reckoned::NONE; inside.below.len()],
            run: vec![Reckoned::NONE; inside.run.len()],
            runs: inside.runs.iter().map(|values| vec![Reckoned::NONE; values.len()]).collect(),
            joined: inside
                .joined
                .iter()
                .map(|steps| steps.iter().map(|values| vec![Reckoned::NONE; values.len()]).collect())
                .collect(),
        };
        outside.below[shape.at(shape.question.root(), shape.all())] = Reckoned::ONE;
        for set in (0..=shape.all()).rev() {
            for node in shape.order.iter().rev() {
                if set & !shape.may[*node] == 0 {
                    outside.known_runs(*node, set);
                    outside.all_runs(*node, set);
                    outside.one_run(*node, set);
                }
            }
        }
        outside
    }

    /// What all orders give in which everything below a node is this set.
    pub(crate) fn with_below(&self, node: Node, set: Heads) -> Reckoned {
        let at = self.inside.shape.at(node, set);
        self.below[at].both(self.inside.below[at])
    }

    /// What all orders give in which a node feeds a box of unknown feed, told by its bit.
    pub(crate) fn with_run(&self, node: Node, bit: usize) -> Reckoned {
        let shape = self.inside.shape;
        let head = shape.heads[bit];
        let weight = shape.question.weight[node][head];
        let mut value = Reckoned::NONE;
        let others = shape.may[node] & !(1 << bit);
        if shape.may[node] & (1 << bit) == 0 {
            return value;
        }
        for behind in subsets(others) {
            let around = self.run[shape.at(node, behind | (1 << bit))];
            if !around.is_none() {
                value.add(around.both(self.inside.below_at(head, behind)).times(weight));
            }
        }
        value
    }

    fn known_runs(&mut self, node: Node, set: Heads) {
        let shape = self.inside.shape;
        let fed = &shape.feeds[node];
        if shape.fits(node, set) {
            self.joined[node][fed.len()][set as usize].add(self.below[shape.at(node, set)]);
        }
        for (position, fed) in fed.iter().enumerate().rev() {
            let around = self.joined[node][position + 1][set as usize];
            if around.is_none() {
                continue;
            }
            for part in subsets(set) {
                let rest = (set & !part) as usize;
                let behind = self.inside.below_at(*fed, part);
                let joined = self.inside.joined[node][position][rest];
                self.joined[node][position][rest].add(around.both(behind));
                self.below[shape.at(*fed, part)].add(around.both(joined));
            }
        }
        let around = self.joined[node][0][set as usize];
        let levels = shape.levels(node);
        for (level, share) in shape.onward[node].shares.iter().enumerate() {
            self.runs[node][set as usize * levels + level].add(around.times(*share));
        }
    }

    fn all_runs(&mut self, node: Node, set: Heads) {
        if set == 0 {
            return;
        }
        let shape = self.inside.shape;
        let (levels, last) = (shape.levels(node), shape.levels(node) - 1);
        let beyond = shape.onward[node].beyond;
        let around = self.runs[node][set as usize * levels..][..levels].to_vec();
        if around.iter().all(|value| value.is_none()) {
            return;
        }
        let inside = self.inside;
        for (first, others) in divisions(set) {
            let run = inside.run_at(node, first);
            let base = others as usize * levels;
            let rest = &inside.runs[node][base..base + levels];
            let mut of_run = Reckoned::NONE;
            for (level, around) in around.iter().enumerate() {
                if level > 0 {
                    of_run.add(around.both(rest[level - 1]));
                    self.runs[node][base + level - 1].add(around.both(run));
                }
                if level == last {
                    let further = around.times(beyond);
                    of_run.add(further.both(rest[last]));
                    self.runs[node][base + last].add(further.both(run));
                }
            }
            self.run[shape.at(node, first)].add(of_run);
        }
    }

    fn one_run(&mut self, node: Node, set: Heads) {
        let shape = self.inside.shape;
        let around = self.run[shape.at(node, set)];
        if around.is_none() {
            return;
        }
        for bit in Shape::bits(set) {
            let head = shape.heads[bit];
            let weight = shape.question.weight[node][head];
            self.below[shape.at(head, set & !(1 << bit))].add(around.times(weight));
        }
    }
}
