//! What the search is asked and what it answers.

use crate::part::Part;
use crate::problem::Cost;

/// Where the search stops, whichever is met first; each independent part of the problem is looked at once at least.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Limits {
    /// The most nodes of the search tree to look at; `None` for any number.
    pub nodes: Option<u64>,
    /// The most work; `None` for any. A node of a part counts as many as links can flow in it, those that can flow both ways
    /// twice, and 40 besides: about what it takes.
    pub work: Option<u64>,
}

/// What a node takes besides its links.
const BESIDES_LINKS: u64 = 40;

impl Limits {
    /// So many nodes.
    #[must_use]
    pub const fn nodes(most: u64) -> Self {
        Self { nodes: Some(most), work: None }
    }

    /// How many nodes of a part they allow.
    pub(crate) fn nodes_of(self, part: &Part<'_>) -> Option<u64> {
        let by_work = self.work.map(|work| work / work_of_node(part));
        self.nodes.into_iter().chain(by_work).min()
    }

    /// What is left of them after so many nodes of a part.
    pub(crate) fn after(self, nodes: u64, part: &Part<'_>) -> Self {
        let work = nodes.saturating_mul(work_of_node(part));
        Self {
            nodes: self.nodes.map(|left| left.saturating_sub(nodes)),
            work: self.work.map(|left| left.saturating_sub(work)),
        }
    }

    /// A share of them, rounded up.
    pub(crate) fn share(self, of: u64, all: u64) -> Self {
        let share = |left: u64| left.saturating_mul(of).div_ceil(all);
        Self { nodes: self.nodes.map(share), work: self.work.map(share) }
    }
}

fn work_of_node(part: &Part<'_>) -> u64 {
    part.arcs.len() as u64 + BESIDES_LINKS
}

/// What the caller lays down beforehand, to ask what it would cost.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Forced {
    /// The node takes one of the allowed options.
    Option {
        /// The node's tree.
        tree: usize,
        /// The node in it.
        node: usize,
        /// The options it may take, by index.
        allowed: Vec<usize>,
    },
    /// The root takes one of the allowed options.
    Root {
        /// The root's tree.
        tree: usize,
        /// The options it may take, by index.
        allowed: Vec<usize>,
    },
    /// The link is chosen, or is not.
    Link {
        /// The link.
        link: usize,
        /// Whether it is chosen.
        chosen: bool,
    },
}

/// What came of the search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// A solution than which none costs less.
    Optimal(Solution),
    /// The node limit stopped the search: the best solution found, and a bound.
    Best {
        /// The best solution found.
        solution: Solution,
        /// No solution costs less than this.
        bound: Cost,
    },
    /// The node limit stopped the search before a solution was found.
    Stopped {
        /// No solution, if there is one, costs less than this.
        bound: Cost,
    },
    /// There is no solution.
    Infeasible,
    /// The question makes no sense, for each of these reasons.
    Malformed(Vec<String>),
}

impl Outcome {
    /// Returns the solution found, be it proved optimal or not.
    #[must_use]
    pub fn solution(&self) -> Option<&Solution> {
        match self {
            Self::Optimal(solution) | Self::Best { solution, .. } => Some(solution),
            Self::Stopped { .. } | Self::Infeasible | Self::Malformed(_) => None,
        }
    }
}

/// One choice of everything.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Solution {
    /// What it costs altogether.
    pub cost: Cost,
    /// The chosen root option of each tree.
    pub roots: Vec<usize>,
    /// What is chosen at each node of each tree.
    pub nodes: Vec<Vec<NodeChoice>>,
    /// The chosen links, by rising index.
    pub links: Vec<ChosenLink>,
    /// Whether each group is supplied.
    pub supplied: Vec<bool>,
}

/// What is chosen at a node.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NodeChoice {
    /// The option, by index.
    pub option: usize,
    /// The children put behind its load side, by rising index.
    pub behind_load_children: Vec<usize>,
}

/// A chosen link.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ChosenLink {
    /// The link, by index.
    pub link: usize,
    /// Whether it flows from `from` to `to`.
    pub forward: bool,
    /// The grade it carries.
    pub grade: usize,
}
