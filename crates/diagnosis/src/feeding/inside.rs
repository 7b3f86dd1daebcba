//! The walk over sets of boxes, each node with each set that may lie below it: all orders at once, none twice.
//!
//! What lies below a node is divided into one part for each onward run; the part that holds the first box of the set is
//! split off first, so that no division is met twice. What a smaller set gives is reckoned once and used by all larger ones.

use super::question::Node;
use super::reckoned::Reckoned;
use super::shape::{Heads, Shape};

/// What every node gives with every set below it.
pub(crate) struct Inside<'s> {
    pub(crate) shape: &'s Shape<'s>,
    /// By node and set: everything below the node is this set.
    pub(crate) below: Vec<Reckoned>,
    /// By node and set: one onward run leads to this whole set.
    pub(crate) run: Vec<Reckoned>,
    /// By node, then by set and number of runs: these runs lead to this whole set. The last number stands for itself and more.
    pub(crate) runs: Vec<Vec<Reckoned>>,
    /// By node, then by how many of its known runs are in, then by set.
    pub(crate) joined: Vec<Vec<Vec<Reckoned>>>,
}

impl<'s> Inside<'s> {
    /// Walks over all sets.
    pub(crate) fn of(shape: &'s Shape<'s>) -> Self {
        let nodes = shape.order.len();
        let sets = 1_usize << shape.heads.len();
        let mut inside = Self {
            shape,
            below: vec![Reckoned::NONE; nodes * sets],
            run: vec![Reckoned::NONE; nodes * sets],
            runs: (0..nodes).map(|node| vec![Reckoned::NONE; sets * shape.levels(node)]).collect(),
            joined: (0..nodes).map(|node| vec![vec![Reckoned::NONE; sets]; shape.feeds[node].len() + 1]).collect(),
        };
        for set in 0..=shape.all() {
            for node in &shape.order {
                if set & !shape.may[*node] == 0 {
                    inside.one_run(*node, set);
                    inside.all_runs(*node, set);
                    inside.known_runs(*node, set);
                }
            }
        }
        inside
    }

    /// What all orders give together.
    pub(crate) fn total(&self) -> Reckoned {
        self.below_at(self.shape.question.root(), self.shape.all())
    }

    /// What a node gives with a set below it.
    #[inline]
    pub(crate) fn below_at(&self, node: Node, set: Heads) -> Reckoned {
        self.below[self.shape.at(node, set)]
    }

    /// What one onward run gives that leads to a whole set.
    #[inline]
    pub(crate) fn run_at(&self, node: Node, set: Heads) -> Reckoned {
        self.run[self.shape.at(node, set)]
    }

    fn one_run(&mut self, node: Node, set: Heads) {
        let shape = self.shape;
        let mut value = Reckoned::NONE;
        for bit in Shape::bits(set) {
            let head = shape.heads[bit];
            let behind = self.below_at(head, set & !(1 << bit));
            if !behind.is_none() {
                let weight = shape.question.weight[node][head];
                value.add(behind.times(weight));
            }
        }
        self.run[shape.at(node, set)] = value;
    }

    fn all_runs(&mut self, node: Node, set: Heads) {
        let shape = self.shape;
        let (levels, last) = (shape.levels(node), shape.levels(node) - 1);
        if set == 0 {
            self.runs[node][0] = Reckoned::ONE;
            return;
        }
        let beyond = shape.onward[node].beyond;
        let base = set as usize * levels;
        let mut values = vec![Reckoned::NONE; levels];
        for (first, others) in divisions(set) {
            let run = self.run_at(node, first);
            if run.is_none() {
                continue;
            }
            let rest = &self.runs[node][others as usize * levels..][..levels];
            for (level, value) in values.iter_mut().enumerate() {
                if level > 0 {
                    value.add(run.both(rest[level - 1]));
                }
                if level == last {
                    value.add(run.both(rest[last]).times(beyond));
                }
            }
        }
        self.runs[node][base..base + levels].copy_from_slice(&values);
    }

    fn known_runs(&mut self, node: Node, set: Heads) {
        let shape = self.shape;
        let levels = shape.levels(node);
        let mut value = Reckoned::NONE;
        for (level, share) in shape.onward[node].shares.iter().enumerate() {
            let runs = self.runs[node][set as usize * levels + level];
            value.add(runs.times(*share));
        }
        self.joined[node][0][set as usize] = value;
        for (position, fed) in shape.feeds[node].iter().enumerate() {
            let mut value = Reckoned::NONE;
            for part in subsets(set) {
                let behind = self.below_at(*fed, part);
                if !behind.is_none() {
                    value.add(behind.both(self.joined[node][position][(set & !part) as usize]));
                }
            }
            self.joined[node][position + 1][set as usize] = value;
        }
        if shape.fits(node, set) {
            self.below[shape.at(node, set)] = self.joined[node][shape.feeds[node].len()][set as usize];
        }
    }
}

impl Shape<'_> {
    /// Where the value of a node and a set stands.
    #[inline]
    pub(crate) fn at(&self, node: Node, set: Heads) -> usize {
        (node << self.heads.len()) + set as usize
    }

    /// How many numbers of further runs a node tells apart.
    #[inline]
    pub(crate) fn levels(&self, node: Node) -> usize {
        self.onward[node].shares.len()
    }
}

/// Every subset of a set, itself and the empty one included.
pub(crate) fn subsets(set: Heads) -> impl Iterator<Item = Heads> {
    let mut next = Some(set);
    std::iter::from_fn(move || {
        let subset = next?;
        next = (subset != 0).then(|| (subset - 1) & set);
        Some(subset)
    })
}

/// Every division of a set, not empty, in the part that holds its first box and the others.
pub(crate) fn divisions(set: Heads) -> impl Iterator<Item = (Heads, Heads)> {
    let first = set & set.wrapping_neg();
    subsets(set & !first).map(move |others| (set & !others, others))
}
