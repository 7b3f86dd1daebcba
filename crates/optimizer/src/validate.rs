//! What makes a problem malformed: indices that point nowhere, and sizes beyond those that are added exactly.

use crate::problem::{Cost, Link, Marks, Problem, Tree};

/// The most links of a problem.
pub(crate) const MOST_LINKS: usize = 1 << 14;
/// The most cents, openings and devices of a whole choice, the largest of each place taken as positive.
pub(crate) const MOST_CENTS: u128 = 1 << 60;
pub(crate) const MOST_OPENINGS: u128 = 1 << 14;
pub(crate) const MOST_DEVICES: u128 = 1 << 14;
/// The most burden of a tree.
const MOST_BURDEN: i128 = 1 << 62;
/// Every kind of mark there is.
const ALL_MARKS: Marks = Marks(0b1111);

impl Problem {
    /// Returns everything that makes this problem malformed; nothing where it is well formed.
    ///
    /// A tree without a root option or a node without an option is well formed: it has no solution.
    #[must_use]
    pub fn faults(&self) -> Vec<String> {
        let mut faults = Vec::new();
        for (index, tree) in self.trees.iter().enumerate() {
            self.tree_faults(index, tree, &mut faults);
        }
        if self.links.len() > MOST_LINKS {
            faults.push(format!("{} links are more than {MOST_LINKS}", self.links.len()));
        }
        for (index, link) in self.links.iter().enumerate() {
            self.link_faults(index, link, &mut faults);
        }
        self.size_faults(&mut faults);
        faults
    }

    fn tree_faults(&self, index: usize, tree: &Tree, faults: &mut Vec<String>) {
        if tree.root_options.iter().any(|option| !ALL_MARKS.covers(option.gives)) {
            faults.push(format!("a root option of tree {index} has a mark beyond the fourth"));
        }
        let mut burden = 0_i128;
        for (place, node) in tree.nodes.iter().enumerate() {
            if node.parent.is_some_and(|parent| parent >= place) {
                faults.push(format!("node {place} of tree {index} does not stand after its parent"));
            }
            if node.group >= self.groups.len() {
                faults.push(format!("node {place} of tree {index} is in group {}, which is not there", node.group));
            }
            if node.burden < 0 {
                faults.push(format!("node {place} of tree {index} has a burden below zero"));
            }
            burden += i128::from(node.burden.max(0));
            let marks = |option: &crate::NodeOption| option.needs | option.own | option.gives;
            if node.options.iter().any(|option| !ALL_MARKS.covers(marks(option))) {
                faults.push(format!("an option of node {place} of tree {index} has a mark beyond the fourth"));
            }
        }
        if burden > MOST_BURDEN {
            faults.push(format!("the burdens of tree {index} are too large to add"));
        }
    }

    fn link_faults(&self, index: usize, link: &Link, faults: &mut Vec<String>) {
        for end in [link.from, link.to] {
            if end.group >= self.groups.len() {
                faults.push(format!("link {index} joins group {}, which is not there", end.group));
            }
            if let Some((tree, node)) = end.lands_at
                && self.trees.get(tree).is_none_or(|tree| node >= tree.nodes.len())
            {
                faults.push(format!("link {index} lands at node {node} of tree {tree}, which is not there"));
            }
        }
        if link.reparents && link.to.lands_at.is_none() {
            faults.push(format!("link {index} reparents, and `to` has no node"));
        }
    }

    fn size_faults(&self, faults: &mut Vec<String>) {
        let sum = |part: fn(&Cost) -> i64| -> u128 {
            let largest = |costs: &mut dyn Iterator<Item = Cost>| -> u128 {
                costs.map(|cost| u128::from(part(&cost).unsigned_abs())).max().unwrap_or(0)
            };
            let of_trees = self.trees.iter().map(|tree| {
                let of_nodes =
                    tree.nodes.iter().map(|node| largest(&mut node.options.iter().map(|option| option.cost)));
                of_nodes.sum::<u128>() + largest(&mut tree.root_options.iter().map(|option| option.cost))
            });
            let of_links = self.links.iter().map(|link| largest(&mut link.cost_by_grade.iter().copied()));
            of_trees.sum::<u128>() + of_links.sum::<u128>()
        };
        if sum(|cost| cost.cents) > MOST_CENTS {
            faults.push("the cents of all costs are too large to add".to_owned());
        }
        if sum(|cost| cost.openings) > MOST_OPENINGS {
            faults.push("the openings of all costs are too large to add".to_owned());
        }
        if sum(|cost| cost.devices) > MOST_DEVICES {
            faults.push("the devices of all costs are too large to add".to_owned());
        }
    }
}
