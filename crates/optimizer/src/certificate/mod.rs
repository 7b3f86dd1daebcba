//! What proves a lower bound of a problem: splits of everything that can be chosen, and for each leaf of them prices
//! that show what it costs at least.
//!
//! # The argument
//! A [cut](Cut) says: if its place is supplied, then the supply comes over a link that leads into the cut's groups.
//! Each such link pays the cut's value out of its own cost, and the place is charged the value for taking its supply.
//! A link need not pay where it could be chosen only together with certain options of a node: then these are credited
//! the value instead. Where no link pays more than it costs, whatever is chosen costs at least what the trees cost
//! at these charges and credits, each tree for itself. That is all that [`check`] relies on. It shares nothing with the
//! search but the problem.

mod area;
mod certify;
mod check;
mod known;
mod least;
mod prices;

pub use certify::{certify, solve_with_certificate};
pub use check::{Fault, Proved, check};

use crate::problem::Cost;

/// A proof that nothing costs less than a bound.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Certificate {
    /// The proof of each part of the problem that touches no other, the one with the lowest tree first; those without
    /// a tree stand last, the one with the lowest group first.
    pub parts: Vec<PartProof>,
}

/// The proof of one part.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PartProof {
    /// Nothing costs less; `None` says that there is no solution.
    pub bound: Option<Cost>,
    /// The splits and leaves: after a split first all of the side on which its decision holds, then all of the other.
    pub steps: Vec<Step>,
}

/// One step of a proof.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Step {
    /// First all choices for which the decision holds, then all others.
    Split(Decision),
    /// Every link that is too dear at the prices of these cuts to be part of anything below the bound is given up.
    GiveUp(Vec<Cut>),
    /// These cuts show that nothing below the bound is left.
    Leaf(Vec<Cut>),
}

/// Something that holds or does not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decision {
    /// The group is supplied.
    Supplied(usize),
    /// The link is chosen and flows this way.
    Chosen {
        /// The link.
        link: usize,
        /// Whether it flows from `from` to `to`.
        forward: bool,
    },
}

/// Groups into which a link must lead if a place is supplied.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cut {
    /// What each link that leads into the groups is charged. Below zero only where the group stands alone and no node
    /// is named: then it is what the group is credited for a link that pays for being chosen.
    pub value: Cost,
    /// What is charged for it.
    pub toward: Toward,
    /// The groups, by rising index; none of them a source.
    pub groups: Vec<usize>,
    /// Nodes, by rising order, whose options are credited in place of links that land there.
    pub lands: Vec<(usize, usize)>,
    /// Nodes, by rising order, whose options are credited in place of links into the node's own group.
    pub suits: Vec<(usize, usize)>,
}

/// What is charged for a cut. Its group is one of the cut's groups.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Toward {
    /// A node of a tree, if it takes its group's supply.
    Node {
        /// The tree.
        tree: usize,
        /// The node.
        node: usize,
    },
    /// A group that is known to be supplied; where it is not known, nothing is charged.
    Group(usize),
}
