//! A tree as the chosen reparenting links leave it.

use crate::problem::Tree;

/// Who hangs below whom, and in which order to go down.
#[derive(Clone, Debug)]
pub(crate) struct EffectiveTree {
    /// All nodes, parents before children.
    pub order: Vec<usize>,
    /// The nodes that hang on the root, by rising index.
    pub on_root: Vec<usize>,
    /// The children of each node, by rising index.
    pub children: Vec<Vec<usize>>,
    /// Whether each node can be put behind its parent's load side.
    pub behind_load: Vec<bool>,
}

/// A node that a link hangs elsewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Move {
    /// The node.
    pub node: usize,
    /// Its new parent; `None` is the root.
    pub parent: Option<usize>,
}

impl EffectiveTree {
    /// Returns the tree after the moves, or `None` where two move one node or a node would hang below itself.
    pub fn new(tree: &Tree, moves: &[Move]) -> Option<Self> {
        let size = tree.nodes.len();
        let mut parents: Vec<Option<usize>> = tree.nodes.iter().map(|node| node.parent).collect();
        let mut behind_load: Vec<bool> = tree.nodes.iter().map(|node| node.behind_load).collect();
        for (place, one) in moves.iter().enumerate() {
            if moves[..place].iter().any(|other| other.node == one.node) {
                return None;
            }
            parents[one.node] = one.parent;
            behind_load[one.node] = false;
        }
        let mut children = vec![Vec::new(); size];
        let mut on_root = Vec::new();
        for (node, parent) in parents.iter().enumerate() {
            match parent {
                Some(parent) => children[*parent].push(node),
                None => on_root.push(node),
            }
        }
        let mut order = on_root.clone();
        let mut next = 0;
        while let Some(&node) = order.get(next) {
            order.extend_from_slice(&children[node]);
            next += 1;
        }
        (order.len() == size).then_some(Self { order, on_root, children, behind_load })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::Node;

    fn chain() -> Tree {
        let node = |parent| Node { parent, behind_load: true, group: 0, burden: 0, count: 1, options: Vec::new() };
        Tree { root_options: Vec::new(), nodes: vec![node(None), node(Some(0)), node(Some(1))] }
    }

    #[test]
    fn a_move_to_the_root_takes_the_node_out_of_its_old_subtree() {
        let tree = EffectiveTree::new(&chain(), &[Move { node: 1, parent: None }]).unwrap();
        assert_eq!(tree.on_root, [0, 1]);
        assert!(tree.children[0].is_empty());
        assert_eq!(tree.children[1], [2]);
        assert!(!tree.behind_load[1]);
    }

    #[test]
    fn a_node_cannot_hang_below_itself_nor_be_moved_twice() {
        assert!(EffectiveTree::new(&chain(), &[Move { node: 0, parent: Some(2) }]).is_none());
        assert!(EffectiveTree::new(&chain(), &[Move { node: 1, parent: Some(1) }]).is_none());
        let twice = [Move { node: 2, parent: None }, Move { node: 2, parent: Some(0) }];
        assert!(EffectiveTree::new(&chain(), &twice).is_none());
    }

    #[test]
    fn two_moves_together_may_do_what_one_alone_may_not() {
        let moves = [Move { node: 0, parent: Some(2) }, Move { node: 1, parent: None }];
        let tree = EffectiveTree::new(&chain(), &moves).unwrap();
        assert_eq!(tree.order, [1, 2, 0]);
    }
}
