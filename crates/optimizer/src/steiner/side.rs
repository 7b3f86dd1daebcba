//! Conditions that a tree must meet beside those of its instance: budgets, counts, capacities.

use super::instance::{Cost, Instance, MOST, Malformed};

/// A condition beside the instance. Each holds of every part of a tree of which it holds, so that no tree is made lawful by
/// adding to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Side {
    /// What the arcs of the tree take adds up to at most this.
    Budget {
        /// By line: what it takes when it is gone along from `from` to `to`, and the other way.
        taken: Vec<(Cost, Cost)>,
        /// The most.
        most: Cost,
    },
    /// At most so many arcs of the tree lead out of a node.
    OutOf {
        /// The node.
        node: usize,
        /// The most.
        most: usize,
    },
    /// At most so many of these nodes are in the tree.
    Among {
        /// The nodes, each once.
        nodes: Vec<usize>,
        /// The most.
        most: usize,
    },
    /// What lies beyond a line, seen from the root, weighs at most this, where the line is in the tree.
    Beyond {
        /// The line, gone along either way.
        line: usize,
        /// Nodes with what they weigh; a node's weights add up.
        weights: Vec<(usize, Cost)>,
        /// The most.
        most: Cost,
    },
}

/// Why a condition is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MalformedSide {
    /// The instance itself is malformed.
    Instance(Malformed),
    /// The condition at this position names a node or a line that is not there, a node twice, or too few lines.
    WrongNames(usize),
    /// An amount or a limit of the condition at this position is below zero, or all together are too large.
    WrongAmounts(usize),
    /// The condition at this position asks which way a line is gone along, and the instance has no root.
    WithoutRoot(usize),
}

impl Side {
    /// Says why the condition at this position cannot be asked of the instance.
    ///
    /// # Errors
    /// The first fault found.
    pub(crate) fn validate(&self, instance: &Instance, position: usize) -> Result<(), MalformedSide> {
        let (names, amounts, directed) = match self {
            Self::Budget { taken, most } => {
                let all = taken.iter().flat_map(|&(there, back)| [there, back]).chain([*most]);
                (taken.len() == instance.lines.len(), sound(all), taken.iter().any(|(there, back)| there != back))
            }
            Self::OutOf { node, .. } => (*node < instance.nodes, true, true),
            Self::Among { nodes, .. } => {
                let mut sorted = nodes.clone();
                sorted.sort_unstable();
                let once = sorted.is_sorted_by(|one, next| one < next);
                (once && sorted.last().is_none_or(|&last| last < instance.nodes), true, false)
            }
            Self::Beyond { line, weights, most } => {
                let there = weights.iter().all(|&(node, _)| node < instance.nodes);
                let all = weights.iter().map(|&(_, weight)| weight).chain([*most]);
                (there && *line < instance.lines.len(), sound(all), true)
            }
        };
        if !names {
            return Err(MalformedSide::WrongNames(position));
        }
        if !amounts {
            return Err(MalformedSide::WrongAmounts(position));
        }
        if directed && instance.root.is_none() {
            return Err(MalformedSide::WithoutRoot(position));
        }
        Ok(())
    }
}

/// Whether no amount is below zero and all together stay within what sums can hold.
fn sound(amounts: impl Iterator<Item = Cost>) -> bool {
    let mut sum: Cost = 0;
    for amount in amounts {
        if amount < 0 {
            return false;
        }
        sum = sum.saturating_add(amount);
    }
    sum <= MOST
}
