//! The boxes of a tree in rows and columns: what a box feeds goes on to the right, branches stand in rows below it.

use super::fed::Fed;
use dwelling::{BoxIndex, CircuitTree};

/// How many boxes stand in a row.
pub(super) const COLUMNS: usize = 8;

/// Where the line to a box comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Arrives {
    /// Straight from the panel.
    FromPanel,
    /// From the box before it in its row.
    FromLeft,
    /// From the box above it, which stands in this row.
    FromAbove(usize),
    /// From a box that ends a row above.
    GoesOn(BoxIndex),
    /// Nobody knows.
    Unknown,
}

/// A box at its place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cell {
    pub(super) at: BoxIndex,
    pub(super) row: usize,
    pub(super) column: usize,
    pub(super) arrives: Arrives,
}

/// The boxes of a tree, and how many rows they take.
pub(super) fn cells(fed: &Fed, tree: &CircuitTree) -> (Vec<Cell>, usize) {
    let mut cells = Vec::new();
    // What stands at the panel is told in the first row.
    let mut rows = usize::from(tree.members.is_empty() && !tree.unplaced.is_empty());
    let behind: Vec<BoxIndex> = tree.members.iter().flat_map(|at| tree.children(*at)).copied().collect();
    for root in tree.members.iter().filter(|at| !behind.contains(at)) {
        chain(tree, *root, (0, Arrives::FromPanel), &mut rows, &mut cells);
    }
    for root in &tree.unplaced {
        let fed_by_another = matches!(fed.dwelling.device_box(*root).fed_by, Some(dwelling::Feed::Box(parent)) if tree.unplaced.contains(&parent));
        if !fed_by_another {
            chain(tree, *root, (0, Arrives::Unknown), &mut rows, &mut cells);
        }
    }
    (cells, rows)
}

/// How many boxes hang on one, itself counted.
fn size(tree: &CircuitTree, at: BoxIndex) -> usize {
    tree.downstream(at).len() + 1
}

/// Lays a box and what goes on from it, then the branches: those of the last box first, so that no line crosses another.
fn chain(
    tree: &CircuitTree,
    root: BoxIndex,
    (column, arrives): (usize, Arrives),
    rows: &mut usize,
    cells: &mut Vec<Cell>,
) {
    let mut open: Vec<(BoxIndex, usize, Arrives)> = vec![(root, column, arrives)];
    while let Some((start, column, arrives)) = open.pop() {
        let mut row = *rows;
        *rows += 1;
        let mut next = Some((start, column, arrives));
        let mut branches = Vec::new();
        while let Some((at, column, arrives)) = next {
            cells.push(Cell { at, row, column, arrives });
            let children = tree.children(at);
            let longest = children
                .iter()
                .copied()
                .reduce(|best, one| if size(tree, one) > size(tree, best) { one } else { best });
            let aside = children.iter().filter(|child| Some(**child) != longest).rev();
            branches.push((row, column, aside.copied().collect::<Vec<_>>()));
            next = longest.map(|child| {
                if column + 1 < COLUMNS {
                    (child, column + 1, Arrives::FromLeft)
                } else {
                    row = *rows;
                    *rows += 1;
                    (child, 0, Arrives::GoesOn(at))
                }
            });
        }
        // Taken from the end: the branches of the last box come next.
        let last_row = row;
        for (row, column, aside) in branches {
            for child in aside {
                // A branch below a row that went on below would cross it: it says where it comes from.
                let arrives = if row == last_row {
                    Arrives::FromAbove(row)
                } else {
                    Arrives::GoesOn(parent_of(tree, child).unwrap_or(child))
                };
                open.push((child, if row == last_row { column } else { 0 }, arrives));
            }
        }
    }
}

fn parent_of(tree: &CircuitTree, child: BoxIndex) -> Option<BoxIndex> {
    tree.members.iter().chain(&tree.unplaced).copied().find(|at| tree.children(*at).contains(&child))
}
