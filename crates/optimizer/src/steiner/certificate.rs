//! What proves a lower bound: for each case, a tree of splits whose leaves hold raised cuts.

use super::instance::Cost;

/// A proof that no tree costs less than a bound.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Certificate {
    /// Lines that some cheapest tree does without, one after the other. Only an undirected instance without prizes has them.
    pub dropped: Vec<Dropped>,
    /// The cases; together with the trees that hold no start they are all trees.
    pub cases: Vec<Case>,
}

/// A line that is left out, and what does the same: a walk between its ends over lines that are there, none of whose steps from
/// terminal to terminal is longer than the line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dropped {
    /// The line.
    pub line: usize,
    /// The lines of the walk, from where the line begins to where it ends.
    pub walk: Vec<usize>,
}

/// All trees that start here and hold no start of an earlier case.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Case {
    /// Where the trees start.
    pub start: usize,
    /// The splits and leaves: after a split first all of its side without the node, then all of its side with it.
    pub steps: Vec<Step>,
}

/// A split or a leaf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Step {
    /// First the trees without the node, then those with it.
    Split(usize),
    /// Cuts that no arc is charged more for than it costs.
    Leaf(Vec<Cut>),
}

/// A set of nodes, without the start, that an arc must lead into if the node it stands for is in the tree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cut {
    /// The node it stands for: a terminal, or one whose prize is charged too.
    pub toward: usize,
    /// The nodes, by rising index.
    pub nodes: Vec<usize>,
    /// What each arc into the set is charged.
    pub value: Cost,
}
