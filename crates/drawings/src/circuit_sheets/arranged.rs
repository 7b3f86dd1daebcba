//! The boxes of a circuit in rows as they are fed: the longest branch goes straight on, the others stand out before it.

use dwelling::{BoxIndex, CircuitTree, Dwelling, Feed};
use std::collections::BTreeMap;

/// Where the line to a box comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum From {
    /// From the panel.
    Panel,
    /// From the box in this row.
    Row(usize),
    /// Nobody knows.
    Unknown,
    /// From a box that is said to be on another circuit.
    Elsewhere(BoxIndex),
}

/// A box in its row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Placed {
    /// The box.
    pub(crate) at: BoxIndex,
    /// How many times the way from the panel has stood out.
    pub(crate) level: usize,
    /// What feeds it.
    pub(crate) from: From,
    /// Whether its line goes straight on from what feeds it.
    pub(crate) is_straight: bool,
}

/// The boxes that are known to reach the panel, what feeds before what is fed.
pub(crate) fn placed_rows(tree: &CircuitTree) -> Vec<Placed> {
    let sizes = sizes(tree, &tree.members);
    let roots: Vec<BoxIndex> = {
        let behind: Vec<BoxIndex> = tree.members.iter().flat_map(|at| tree.children(*at)).copied().collect();
        tree.members.iter().filter(|at| !behind.contains(at)).copied().collect()
    };
    let mut rows = Vec::new();
    walk(tree, &sizes, branches(&roots, &sizes, 0, From::Panel), &mut rows);
    rows
}

/// The boxes that nobody knows to reach the panel, part by part.
pub(crate) fn unplaced_rows(dwelling: &Dwelling, tree: &CircuitTree) -> Vec<Placed> {
    let sizes = sizes(tree, &tree.unplaced);
    let mut rows = Vec::new();
    for at in &tree.unplaced {
        let from = match dwelling.device_box(*at).fed_by {
            Some(Feed::Box(parent)) if tree.unplaced.contains(&parent) => continue,
            Some(Feed::Box(parent)) => From::Elsewhere(parent),
            _ => From::Unknown,
        };
        walk(tree, &sizes, vec![Placed { at: *at, level: 0, from, is_straight: true }], &mut rows);
    }
    rows
}

/// How many boxes hang on each, itself counted; of boxes that come before what they feed.
fn sizes(tree: &CircuitTree, boxes: &[BoxIndex]) -> BTreeMap<BoxIndex, usize> {
    let mut sizes = BTreeMap::new();
    for at in boxes.iter().rev() {
        let behind: usize = tree.children(*at).iter().filter_map(|child| sizes.get(child)).sum();
        sizes.insert(*at, behind + 1);
    }
    sizes
}

/// What hangs on one place, to be taken from the end: first what stands out, then the longest, which goes straight on.
fn branches(fed: &[BoxIndex], sizes: &BTreeMap<BoxIndex, usize>, level: usize, from: From) -> Vec<Placed> {
    let size = |at: &BoxIndex| sizes.get(at).copied().unwrap_or(0);
    let Some(longest) = fed.iter().copied().reduce(|best, one| if size(&one) > size(&best) { one } else { best })
    else {
        return Vec::new();
    };
    let aside = fed.iter().rev().filter(|at| **at != longest);
    let aside = aside.map(|at| Placed { at: *at, level: level + 1, from, is_straight: false });
    [Placed { at: longest, level, from, is_straight: true }].into_iter().chain(aside).collect()
}

fn walk(tree: &CircuitTree, sizes: &BTreeMap<BoxIndex, usize>, mut next: Vec<Placed>, rows: &mut Vec<Placed>) {
    while let Some(placed) = next.pop() {
        let from = From::Row(rows.len());
        rows.push(placed);
        next.extend(branches(tree.children(placed.at), sizes, placed.level, from));
    }
}
