//! A question made ready for the walk over sets: the heads of known parts as bits, and which of them may lie below what.

use super::question::{Fact, Node, Onward, Question};

/// A set of heads.
pub(crate) type Heads = u32;

/// A question made ready.
#[derive(Debug)]
pub(crate) struct Shape<'q> {
    pub(crate) question: &'q Question,
    /// The boxes of unknown feed, each the head of the part that hangs on it by known runs. Its bit is its position here.
    pub(crate) heads: Vec<usize>,
    /// By node: the bit of the part it belongs to; zero for the root's.
    pub(crate) own: Vec<Heads>,
    /// By node: the boxes it is known to feed.
    pub(crate) feeds: Vec<Vec<usize>>,
    /// By node: how likely each number of further onward runs is.
    pub(crate) onward: Vec<Onward>,
    /// By node: the heads that may lie below it.
    pub(crate) may: Vec<Heads>,
    /// By node: the heads that must lie below it.
    pub(crate) must: Vec<Heads>,
    /// Every node, what is known to be fed before what feeds it; the root last.
    pub(crate) order: Vec<Node>,
    /// By node: its place in `order`, and how many nodes it feeds by known runs, however far. They stand right before it.
    below: Vec<(usize, usize)>,
}

impl<'q> Shape<'q> {
    /// Makes a question ready; nothing where its facts contradict one another or its known runs on their face, or where
    /// it has more boxes of unknown feed than a set can hold.
    pub(crate) fn of(question: &'q Question) -> Option<Self> {
        let heads = question.unknown();
        if heads.len() >= Heads::BITS as usize {
            return None;
        }
        let root = question.root();
        let bit_of = |head: usize| heads.iter().position(|known| *known == head).map_or(0, |bit| 1 << bit);
        let mut own: Vec<Heads> = (0..root).map(|at| question.head_of(at).map_or(0, bit_of)).collect();
        own.push(0);
        let mut feeds = vec![Vec::new(); root + 1];
        for (at, feed) in question.known.iter().enumerate() {
            if let Some(feed) = feed {
                feeds[*feed].push(at);
            }
        }
        // No box feeds more further runs than there are heads.
        let onward = question.onward.iter().zip(&feeds).map(|(onward, fed)| {
            let mut onward = onward.after(fed.len());
            onward.shares.truncate(heads.len() + 1);
            onward
        });
        let onward = onward.collect();
        let mut order: Vec<Node> = Vec::with_capacity(root + 1);
        let mut next = vec![root];
        next.extend(&heads);
        while let Some(node) = next.pop() {
            order.push(node);
            next.extend(&feeds[node]);
        }
        order.reverse();
        let below = known_below(&order, &feeds);
        // The root is met last of all: nothing in another part waits for it within one set.
        order.retain(|node| *node != root);
        order.push(root);
        let all = (1 << heads.len()) - 1;
        let may = own.iter().map(|own| all & !own).collect();
        let mut shape = Self { question, heads, own, feeds, onward, may, must: vec![0; root + 1], order, below };
        shape.take_facts(&question.facts)?;
        Some(shape)
    }

    /// Every head.
    pub(crate) fn all(&self) -> Heads {
        (1 << self.heads.len()) - 1
    }

    /// Whether a box is fed, however far, through a node by known runs alone.
    pub(crate) fn known_above(&self, node: Node, at: usize) -> bool {
        let (place, count) = self.below[node];
        let (of, _) = self.below[at];
        of < place && of + count >= place
    }

    /// Narrows what may and must lie below each box, until nothing more follows.
    fn take_facts(&mut self, facts: &[Fact]) -> Option<()> {
        if facts.is_empty() {
            return Some(());
        }
        for fact in facts {
            let bit = self.own[fact.below];
            let known = self.known_above(fact.above, fact.below);
            let apart = bit == 0 || bit == self.own[fact.above];
            match (fact.holds, known, apart) {
                (true, true, _) | (false, false, true) => {}
                (true, false, true) | (false, true, _) => return None,
                (true, false, false) => self.must[fact.above] |= bit,
                (false, false, false) => self.may[fact.above] &= !bit,
            }
        }
        self.close()
    }

    /// What lies below a box lies below all above it, and two boxes above the same third lie one above the other.
    fn close(&mut self) -> Option<()> {
        loop {
            let before = (self.must.clone(), self.may.clone());
            for above in 0..self.question.boxes() {
                for below in 0..self.question.boxes() {
                    let is_known = self.known_above(above, below);
                    let bit = self.own[below];
                    let other_part = bit != 0 && bit != self.own[above];
                    if is_known || (other_part && self.must[above] & bit != 0) {
                        self.must[above] |= self.must[below] & !self.own[above];
                        // Nothing that is above a box is below it.
                        self.may[below] &= self.may[above] & !self.own[above];
                    }
                    let share_some = above != below && self.must[above] & self.must[below] != 0;
                    if share_some && self.own[above] == self.own[below] {
                        if !is_known && !self.known_above(below, above) {
                            return None;
                        }
                    } else if share_some && other_part && self.may[below] & self.own[above] == 0 {
                        self.must[above] |= bit;
                    }
                }
            }
            if (0..self.question.boxes()).any(|at| self.must[at] & !self.may[at] != 0) {
                return None;
            }
            if before == (self.must.clone(), self.may.clone()) {
                return Some(());
            }
        }
    }

    /// Whether these heads may be all that lies below a node.
    pub(crate) fn fits(&self, node: Node, below: Heads) -> bool {
        below & !self.may[node] == 0 && self.must[node] & !below == 0
    }

    /// The positions of the heads of a set.
    pub(crate) fn bits(set: Heads) -> impl Iterator<Item = usize> {
        let mut left = set;
        std::iter::from_fn(move || {
            let bit = left.trailing_zeros();
            (left != 0).then(|| {
                left &= left - 1;
                bit as usize
            })
        })
    }
}

/// By node: its place in an order in which all that it feeds by known runs stands right before it, and how many those are.
fn known_below(order: &[Node], feeds: &[Vec<usize>]) -> Vec<(usize, usize)> {
    let mut below = vec![(0, 0); feeds.len()];
    for (place, node) in order.iter().enumerate() {
        let count = feeds[*node].iter().map(|fed| below[*fed].1 + 1).sum();
        below[*node] = (place, count);
    }
    below
}
