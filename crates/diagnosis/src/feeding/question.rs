//! What is asked: boxes and a panel, which runs are known, how likely each other run is, and who lies below whom.

/// A box of the question by its position, or its root, whose position is the number of boxes.
pub type Node = usize;

/// Which feeding orders fit? Boxes are told by position; the root is the panel, or a box whose order above is settled.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// By box: what feeds it, where known. Known runs close no ring.
    pub known: Vec<Option<Node>>,
    /// By node that feeds, the root last, then by box fed: how likely such a run is beside others. Zero rules it out.
    pub weight: Vec<Vec<f64>>,
    /// By node, the root last: how likely each number of onward runs is.
    pub onward: Vec<Onward>,
    /// What is known of who lies below whom.
    pub facts: Vec<Fact>,
}

/// How likely each number of onward runs from one node is, beside the other numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Onward {
    /// By number of runs, from none on. Not empty.
    pub shares: Vec<f64>,
    /// By what the share falls for each run beyond the last of these.
    pub beyond: f64,
}

/// Whether one box lies downstream of another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fact {
    /// The box further up.
    pub above: usize,
    /// The box that is, or is not, downstream of it.
    pub below: usize,
    /// Whether it is.
    pub holds: bool,
    /// Which observation says so.
    pub said_by: usize,
}

impl Onward {
    /// Any number of runs, each as likely as another.
    #[must_use]
    pub fn any() -> Self {
        Self { shares: vec![1.0], beyond: 1.0 }
    }

    /// The share of a number of runs.
    #[must_use]
    pub fn share(&self, runs: usize) -> f64 {
        let last = self.shares.len().saturating_sub(1);
        match self.shares.get(runs) {
            Some(share) => *share,
            None => (last..runs).fold(self.shares.last().copied().unwrap_or(0.0), |share, _| share * self.beyond),
        }
    }

    /// The shares of further runs, where some are known to be there.
    pub(crate) fn after(&self, known: usize) -> Self {
        let kept = self.shares.get(known..).filter(|kept| !kept.is_empty());
        Self { shares: kept.map_or_else(|| vec![self.share(known)], <[f64]>::to_vec), beyond: self.beyond }
    }
}

impl Question {
    /// How many boxes there are.
    #[must_use]
    pub fn boxes(&self) -> usize {
        self.known.len()
    }

    /// The root.
    #[must_use]
    pub fn root(&self) -> Node {
        self.known.len()
    }

    /// The boxes whose feed is not known.
    #[must_use]
    pub fn unknown(&self) -> Vec<usize> {
        (0..self.boxes()).filter(|at| self.known[*at].is_none()).collect()
    }

    /// Whether a box is fed, however far, through a node by known runs alone.
    pub(crate) fn known_above(&self, node: Node, at: usize) -> bool {
        let mut feed = self.known[at];
        while let Some(parent) = feed {
            if parent == node {
                return true;
            }
            feed = self.known.get(parent).copied().flatten();
        }
        false
    }

    /// The first box of the known part that a box belongs to; nothing where known runs lead to the root.
    pub(crate) fn head_of(&self, at: usize) -> Option<usize> {
        let mut head = at;
        while let Some(parent) = self.known[head] {
            if parent == self.root() {
                return None;
            }
            head = parent;
        }
        Some(head)
    }

    /// How likely one whole order is beside others; zero where it does not fit. `feeds` gives the feed of every box.
    #[must_use]
    pub fn weight_of(&self, feeds: &[Node]) -> f64 {
        let mut weight = 1.0;
        let mut runs = vec![0; self.boxes() + 1];
        for (at, feed) in feeds.iter().enumerate() {
            runs[*feed] += 1;
            match self.known[at] {
                Some(known) if known != *feed => return 0.0,
                Some(_) => {}
                None => weight *= self.weight[*feed][at],
            }
        }
        let is_above = |above: usize, below: usize| {
            let mut at = below;
            for _ in 0..self.boxes() {
                at = feeds[at];
                if at == above {
                    return true;
                }
                if at == self.root() {
                    return false;
                }
            }
            false
        };
        if self.facts.iter().any(|fact| is_above(fact.above, fact.below) != fact.holds) {
            return 0.0;
        }
        runs.iter().zip(&self.onward).fold(weight, |weight, (runs, onward)| weight * onward.share(*runs))
    }
}
