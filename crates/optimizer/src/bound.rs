//! What a part costs at least while links are undecided, and exactly once all are decided.
//!
//! Taking an open group's supply costs at least its [charge](crate::charges). That charge is shared out among the
//! group's nodes, and each tree is then solved for itself: whatever is decided later, the trees and links cost at least
//! the sum.

use std::collections::BTreeMap;
use std::rc::Rc;

use crate::charges::Charges;
use crate::effective_tree::{EffectiveTree, Move};
use crate::link_state::{LinkState, Status};
use crate::part::{NodeSupply, Part, PartTree};
use crate::tree_solver::{Movable, Outlook, Supply, TreeSolver};
use crate::weight::{IMPOSSIBLE, Weight, plus};

/// Beyond so many remembered results of a tree, all are forgotten, to bound the memory.
const MOST_REMEMBERED: usize = 1 << 14;

/// How often the charges may rise for what the trees wish at them.
const MOST_RISES: usize = 6;

/// What a tree costs at least, and which nodes take their open supply for that.
#[derive(Debug)]
pub(crate) struct TreeBound {
    pub value: Weight,
    /// By node.
    pub wants_supply: Vec<bool>,
}

/// What is known of each group's wish for supply.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Wish {
    pub wanting: usize,
    pub nodes: usize,
}

/// A lower bound, and what the trees wish for it.
#[derive(Clone, Debug)]
pub(crate) struct Bound {
    pub value: Weight,
    pub wishes: Vec<Wish>,
}

/// Bounds states of one part, remembering each tree's results.
#[derive(Debug)]
pub(crate) struct Bounder<'p> {
    pub part: &'p Part<'p>,
    remembered: Vec<BTreeMap<Vec<u64>, Rc<TreeBound>>>,
}

impl<'p> Bounder<'p> {
    pub fn new(part: &'p Part<'p>) -> Self {
        Self { part, remembered: vec![BTreeMap::new(); part.trees.len()] }
    }

    /// Returns what a settled state costs at least, no closer than is enough.
    pub fn bound(&mut self, state: &LinkState, enough: Weight) -> Bound {
        let mut charges = Charges::new(self.part, state);
        let mut bound = self.bound_at(state, &charges);
        for _ in 0..MOST_RISES {
            let takes = |(status, wish): (&Status, &Wish)| match status {
                Status::Off => false,
                Status::Due | Status::Fed(_) => true,
                Status::Open => wish.wanting > 0,
            };
            let takes: Vec<bool> = state.status.iter().zip(&bound.wishes).map(takes).collect();
            if bound.value >= enough || !charges.rise(self.part, state, &takes) {
                break;
            }
            bound = self.bound_at(state, &charges);
        }
        bound
    }

    fn bound_at(&mut self, state: &LinkState, charges: &Charges) -> Bound {
        let mut value = 0;
        for (group, status) in state.status.iter().enumerate() {
            value = match status {
                Status::Off => value,
                Status::Fed(_) | Status::Due => plus(value, charges.by_group[group]),
                Status::Open if self.part.groups[group].nodes.is_empty() => plus(value, charges.by_group[group].min(0)),
                Status::Open => value,
            };
        }
        let mut wishes = vec![Wish::default(); state.status.len()];
        for place in 0..self.part.trees.len() {
            if value >= IMPOSSIBLE {
                break;
            }
            let tree = self.tree_bound(place, state, charges, false);
            value = plus(value, tree.value);
            for (supply, wants) in self.part.trees[place].supply.iter().zip(&tree.wants_supply) {
                if let NodeSupply::As { group, .. } = supply {
                    wishes[*group].nodes += 1;
                    wishes[*group].wanting += usize::from(*wants);
                }
            }
        }
        Bound { value, wishes }
    }

    /// Returns what a complete state costs, and the links' share of it must be exact in the state.
    pub fn exact(&mut self, state: &LinkState, links: Weight) -> Weight {
        (0..self.part.trees.len()).fold(links, |sum, place| {
            if sum >= IMPOSSIBLE {
                sum
            } else {
                plus(sum, self.tree_bound(place, state, &Charges::default(), true).value)
            }
        })
    }

    fn tree_bound(&mut self, place: usize, state: &LinkState, charges: &Charges, exact: bool) -> Rc<TreeBound> {
        let key = self.key(place, state, charges, exact);
        if let Some(known) = self.remembered[place].get(&key) {
            return Rc::clone(known);
        }
        let found = Rc::new(self.solved(place, state, charges, exact));
        if self.remembered[place].len() >= MOST_REMEMBERED {
            self.remembered[place].clear();
        }
        self.remembered[place].insert(key, Rc::clone(&found));
        found
    }

    fn solved(&self, place: usize, state: &LinkState, charges: &Charges, exact: bool) -> TreeBound {
        let nothing = || TreeBound { value: IMPOSSIBLE, wants_supply: Vec::new() };
        let tree = &self.part.trees[place];
        let (shape, outlooks) = view(self.part, place, state, charges);
        let Some(shape) = shape.as_ref().map_or(Some(&tree.compiled.unmoved), Option::as_ref) else {
            return nothing();
        };
        let mut solver = TreeSolver::new(&tree.compiled, shape, &outlooks, exact);
        if exact {
            return TreeBound { value: solver.value(), wants_supply: Vec::new() };
        }
        match solver.choices() {
            Some((_, chosen)) => {
                let wants_supply = chosen.iter().map(|chosen| chosen.wants_supply).collect();
                TreeBound { value: solver.value(), wants_supply }
            }
            None => nothing(),
        }
    }

    /// Everything of the state that the tree's result depends on.
    fn key(&self, place: usize, state: &LinkState, charges: &Charges, exact: bool) -> Vec<u64> {
        let tree = &self.part.trees[place];
        let mut key = Vec::with_capacity(3 * tree.groups.len() + tree.arcs.len() + 1);
        key.push(u64::from(exact));
        for &group in &tree.groups {
            match state.status[group] {
                Status::Off => key.push(0),
                Status::Due | Status::Fed(_) => key.push(1),
                Status::Open => {
                    key.push(2);
                    push(&mut key, charges.of_group(group));
                }
            }
        }
        for &arc in &tree.arcs {
            let head = self.part.arcs[arc].head;
            if state.status[head] == Status::Fed(arc) {
                key.push(2 + state.grade[head] as u64);
            } else if state.weight[arc] < IMPOSSIBLE && self.part.arcs[arc].moves.is_some() {
                key.push(1);
                push(&mut key, charges.beyond(arc));
            } else {
                key.push(0);
            }
        }
        key
    }
}

/// The tree's shape where links move nodes – `None` within, where it is none – and what the links mean for each node.
pub(crate) fn view(
    part: &Part<'_>,
    place: usize,
    state: &LinkState,
    charges: &Charges,
) -> (Option<Option<EffectiveTree>>, Vec<Outlook>) {
    let tree = &part.trees[place];
    let supply = tree.supply.iter().map(|supply| supply_of(part, state, charges, *supply));
    let mut outlooks: Vec<Outlook> =
        supply.map(|supply| Outlook { supply, movable: Movable::No, landings: 0, grade: 0 }).collect();
    let mut moves: Vec<Move> = Vec::new();
    let mut may_move = false;
    for &index in &tree.arcs {
        let arc = &part.arcs[index];
        if state.status[arc.head] == Status::Fed(index) {
            for (_, node) in arc.landings.iter().filter(|(tree, _)| *tree == place) {
                outlooks[*node].landings += 1;
                outlooks[*node].grade = outlooks[*node].grade.max(state.grade[arc.head]);
            }
            moves.extend(arc.moves.map(|(_, one)| one));
        } else if state.weight[index] < IMPOSSIBLE
            && let Some((_, one)) = arc.moves
        {
            may_move = true;
            let supplies_it = matches!(tree.supply[one.node], NodeSupply::As { group, .. } if group == arc.head);
            let movable = &mut outlooks[one.node].movable;
            let weight = charges.beyond(index);
            *movable = match *movable {
                Movable::No if supplies_it => Movable::WithSupply(weight),
                Movable::No => Movable::Freely(weight),
                Movable::WithSupply(other) if supplies_it => Movable::WithSupply(other.min(weight)),
                Movable::WithSupply(other) | Movable::Freely(other) => Movable::Freely(other.min(weight)),
            };
        }
    }
    if moves.is_empty() {
        return (None, outlooks);
    }
    let shape = EffectiveTree::new(tree.compiled.given, &moves);
    if shape.is_none() && may_move && distinct(&moves) {
        // An open link may yet break the ring that the chosen ones close.
        for one in moves {
            outlooks[one.node].movable = Movable::Freely(0);
        }
        return (None, outlooks);
    }
    (Some(shape), outlooks)
}

/// Adds a weight to a key.
fn push(key: &mut Vec<u64>, weight: Weight) {
    for half in weight.to_le_bytes().chunks_exact(8) {
        key.push(half.iter().rev().fold(0, |sum, byte| sum << 8 | u64::from(*byte)));
    }
}

fn distinct(moves: &[Move]) -> bool {
    moves.iter().enumerate().all(|(place, one)| moves[..place].iter().all(|other| other.node != one.node))
}

fn supply_of(part: &Part<'_>, state: &LinkState, charges: &Charges, supply: NodeSupply) -> Supply {
    match supply {
        NodeSupply::Never => Supply::Off,
        NodeSupply::Always => Supply::On,
        NodeSupply::As { group, share } => match state.status[group] {
            Status::Off => Supply::Off,
            Status::Due | Status::Fed(_) => Supply::On,
            Status::Open => {
                let nodes = part.groups[group].nodes.len() as Weight;
                let whole = charges.of_group(group);
                let rest = if share == 0 { whole.rem_euclid(nodes) } else { 0 };
                Supply::Open(whole.div_euclid(nodes) + rest)
            }
        },
    }
}

/// Returns the root option and node choices of a tree of a complete state.
pub(crate) fn tree_choices(
    part: &Part<'_>,
    place: usize,
    state: &LinkState,
) -> Option<(usize, Vec<crate::tree_solver::Chosen>)> {
    let tree: &PartTree<'_> = &part.trees[place];
    let (shape, outlooks) = view(part, place, state, &Charges::default());
    let shape = shape.as_ref().map_or(Some(&tree.compiled.unmoved), Option::as_ref)?;
    TreeSolver::new(&tree.compiled, shape, &outlooks, true).choices()
}
