//! What a part costs at least while links are undecided, and exactly once all are decided.
//!
//! Each node is [charged](crate::ascent) for taking an open supply, and each tree is then solved for itself, its limits
//! and all: whatever is decided later, the trees and links cost at least the sum.

use std::collections::BTreeMap;

use crate::ascent::{Ascent, Charges, Preference};
use crate::effective_tree::{EffectiveTree, Move};
use crate::link_state::{LinkState, Status};
use crate::net::{Element, Net, TreeNode};
use crate::part::{NodeSupply, Part, PartTree};
use crate::raised::Raised;
use crate::tree_solver::{Credits, Movable, Outlook, Supply, TreeSolver};
use crate::weight::{IMPOSSIBLE, Weight, plus};

/// A charge at which no tree takes a supply that it can do without.
const MORE_THAN_ANY_GAIN: Weight = IMPOSSIBLE >> 3;
/// So often what is charged for a supply is held to what it gains; then everything is charged that can be.
const MOST_CAREFUL_ROUNDS: u32 = 6;
/// Beyond so many remembered results of a tree, all are forgotten, to bound the memory.
const MOST_REMEMBERED: usize = 1 << 14;

/// What a tree costs at least, and which nodes take their open supply for that.
#[derive(Debug)]
pub(crate) struct TreeBound {
    pub value: Weight,
    /// By node.
    pub wants_supply: Vec<bool>,
    /// How much more the tree costs at least where no undecided link moves a node of it.
    pub unmoved: Weight,
    /// How much more it costs at least, besides what is left to pay of a link, where that link moves a node of it.
    pub moved: Weight,
}

impl TreeBound {
    fn impossible() -> Self {
        Self { value: IMPOSSIBLE, wants_supply: Vec::new(), unmoved: 0, moved: -IMPOSSIBLE }
    }
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
    /// By tree: how much more it costs at least where no undecided link moves a node of it.
    pub unmoved: Vec<Weight>,
    /// By tree: how much more it costs at least, besides what is left to pay of a link, where that link moves a node.
    pub moved: Vec<Weight>,
    /// By arc: what choosing it costs beyond what the bound charges for it.
    pub left: Vec<Weight>,
}

/// Bounds states of one part, remembering each tree's results.
#[derive(Debug)]
pub(crate) struct Bounder<'p> {
    pub part: &'p Part<'p>,
    /// Whether charges are held to what they gain at first: higher where supplies are worth something, and slower.
    is_careful: bool,
    net: Net,
    remembered: Vec<BTreeMap<Vec<u32>, Weight>>,
}

impl<'p> Bounder<'p> {
    pub fn new(part: &'p Part<'p>) -> Self {
        Self { part, is_careful: false, net: Net::new(part), remembered: vec![BTreeMap::new(); part.trees.len()] }
    }

    /// One that at first charges for a supply no more than a tree gains by it.
    pub fn careful(part: &'p Part<'p>) -> Self {
        Self { is_careful: true, ..Self::new(part) }
    }

    /// Returns what a settled state costs at least, no closer than is enough.
    pub fn bound(&self, state: &LinkState, enough: Weight, guide: &[bool], preference: Preference) -> Bound {
        self.ascended(state, enough, Ascent::new(&self.net, self.part, state, (guide, preference))).0
    }

    /// The same, with everything that was raised for it.
    pub fn bound_with_raised(
        &self,
        state: &LinkState,
        enough: Weight,
        guide: &[bool],
        preference: Preference,
    ) -> (Bound, Vec<Raised>) {
        let raised = Some(Vec::new());
        self.ascended(state, enough, Ascent::noting(&self.net, self.part, state, (guide, preference), raised))
    }

    fn ascended(&self, state: &LinkState, enough: Weight, mut ascent: Ascent<'_>) -> (Bound, Vec<Raised>) {
        let trees = 0..self.part.trees.len();
        let mut bounds: Vec<TreeBound> =
            trees.clone().map(|place| self.solved(place, state, ascent.charges(), false)).collect();
        trees.clone().for_each(|place| _ = ascent.take_credited(place));
        let mut careful_rounds = if self.is_careful { MOST_CAREFUL_ROUNDS } else { 0 };
        loop {
            let value = bounds.iter().fold(ascent.charges().certain, |sum, tree| plus(sum, tree.value));
            if value >= enough {
                break;
            }
            let mut raised = false;
            for place in trees.clone() {
                let mut changed = false;
                for node in 0..bounds[place].wants_supply.len() {
                    if bounds[place].wants_supply.get(node) != Some(&true) {
                        continue;
                    }
                    let is_held = careful_rounds > 0;
                    let most = if is_held {
                        self.gain_of(place, node, state, &mut ascent, &bounds[place])
                    } else {
                        IMPOSSIBLE
                    };
                    let is_raised = most > 0 && self.raise_supply(place, node, &mut ascent, most);
                    changed |= is_raised;
                    if is_raised && is_held {
                        bounds[place] = self.solved(place, state, ascent.charges(), false);
                    }
                }
                if changed {
                    ascent.take_credited(place);
                    bounds[place] = self.solved(place, state, ascent.charges(), false);
                    raised = true;
                }
            }
            for place in trees.clone() {
                if ascent.take_credited(place) {
                    bounds[place] = self.solved(place, state, ascent.charges(), false);
                }
            }
            match (raised, careful_rounds) {
                (false, 0) => break,
                (false, _) => careful_rounds = 0,
                (true, _) => careful_rounds = careful_rounds.saturating_sub(1),
            }
        }
        let raised = ascent.take_raised();
        (self.bound_of(state, ascent.into_charges(), &bounds), raised)
    }

    /// What a tree gains by the supply that it wants at a node: to charge that more would only pay twice.
    fn gain_of(
        &self,
        place: usize,
        node: usize,
        state: &LinkState,
        ascent: &mut Ascent<'_>,
        bound: &TreeBound,
    ) -> Weight {
        let at = TreeNode { tree: place, node };
        let value = |charges: &Charges| self.solved(place, state, charges, false).value;
        ascent.with_more_at(at, MORE_THAN_ANY_GAIN, value) - bound.value
    }

    fn raise_supply(&self, place: usize, node: usize, ascent: &mut Ascent<'_>, most: Weight) -> bool {
        let NodeSupply::As { group } = self.part.trees[place].supply[node] else { return false };
        ascent.raise_supply(group, self.part.groups[group].grade, TreeNode { tree: place, node }, most)
    }

    /// By element of the net: whether a complete state uses it.
    pub fn used(&self, state: &LinkState) -> Vec<bool> {
        let trees = 0..self.part.trees.len();
        let Some(chosen) = trees.map(|place| tree_choices(self.part, place, state)).collect::<Option<Vec<_>>>() else {
            return Vec::new();
        };
        let is_used = |(index, element): (usize, &Element)| match *element {
            Element::Arc => {
                let (level, arc) = (index / self.net.arcs, index % self.net.arcs);
                let head = self.part.arcs[arc].head;
                state.status[head] == Status::Fed(arc) && self.net.level_of(state.grade[head]) >= level
            }
            Element::Root { tree, option } => chosen[tree].0 == option,
            Element::Option { at, option } => chosen[at.tree].1[at.node].option == option,
        };
        self.net.stands_for.iter().enumerate().map(is_used).collect()
    }

    /// Returns the bound for given charges.
    pub fn bound_at(&self, state: &LinkState, charges: Charges) -> Bound {
        let trees = 0..self.part.trees.len();
        let bounds: Vec<TreeBound> = trees.map(|place| self.solved(place, state, &charges, false)).collect();
        self.bound_of(state, charges, &bounds)
    }

    /// By arc: what choosing it at the grade known costs beyond the charges.
    fn left(&self, state: &LinkState, charges: &Charges) -> Vec<Weight> {
        let left_of = |(index, arc): (usize, &crate::part::Arc)| {
            let levels = 0..=self.net.level_of(state.grade[arc.head]);
            let of_levels = levels.map(|level| charges.left.get(level * self.net.arcs + index).copied());
            of_levels.fold(0, |sum, left| plus(sum, left.unwrap_or(0)))
        };
        self.part.arcs.iter().enumerate().map(left_of).collect()
    }

    fn bound_of(&self, state: &LinkState, charges: Charges, bounds: &[TreeBound]) -> Bound {
        let value = bounds.iter().fold(charges.certain, |sum, tree| plus(sum, tree.value));
        let mut wishes = vec![Wish::default(); state.status.len()];
        for (tree, bound) in self.part.trees.iter().zip(bounds) {
            for (supply, wants) in tree.supply.iter().zip(&bound.wants_supply) {
                if let NodeSupply::As { group } = supply {
                    wishes[*group].nodes += 1;
                    wishes[*group].wanting += usize::from(*wants);
                }
            }
        }
        let unmoved = bounds.iter().map(|tree| tree.unmoved).collect();
        let moved = bounds.iter().map(|tree| tree.moved).collect();
        Bound { value, wishes, unmoved, moved, left: self.left(state, &charges) }
    }

    /// Returns what a complete state costs, and the links' share of it must be exact in the state.
    pub fn exact(&mut self, state: &LinkState, links: Weight) -> Weight {
        (0..self.part.trees.len())
            .fold(links, |sum, place| if sum >= IMPOSSIBLE { sum } else { plus(sum, self.exact_tree(place, state)) })
    }

    fn exact_tree(&mut self, place: usize, state: &LinkState) -> Weight {
        let key = self.key(place, state);
        if let Some(known) = self.remembered[place].get(&key) {
            return *known;
        }
        let found = self.solved(place, state, &Charges::default(), true).value;
        if self.remembered[place].len() >= MOST_REMEMBERED {
            self.remembered[place].clear();
        }
        self.remembered[place].insert(key, found);
        found
    }

    fn solved(&self, place: usize, state: &LinkState, charges: &Charges, exact: bool) -> TreeBound {
        let tree = &self.part.trees[place];
        let (shape, mut outlooks) = view(self.part, place, state, charges);
        let is_ring = shape.is_none() && outlooks.iter().any(|outlook| outlook.movable == Movable::Freely(0));
        let Some(shape) = shape.as_ref().map_or(Some(&tree.compiled.unmoved), Option::as_ref) else {
            return TreeBound::impossible();
        };
        let (root, nodes) = &self.net.first_of[place];
        let credits = Credits { list: &charges.credits, root: *root, nodes };
        if exact {
            let value = TreeSolver::new(&tree.compiled, shape, &outlooks, credits, true).value();
            return TreeBound { value, ..TreeBound::impossible() };
        }
        let solved = |outlooks: &[Outlook]| {
            let mut solver = TreeSolver::new(&tree.compiled, shape, outlooks, credits, false);
            match solver.choices() {
                Some((_, chosen)) => {
                    let wants_supply = chosen.iter().map(|chosen| chosen.wants_supply).collect();
                    TreeBound { value: solver.value(), wants_supply, unmoved: 0, moved: -IMPOSSIBLE }
                }
                None => TreeBound::impossible(),
            }
        };
        let lightest = outlooks.iter().filter_map(|outlook| outlook.movable.weight()).min();
        let Some(lightest) = lightest.filter(|_| !is_ring) else { return solved(&outlooks) };
        // Either nothing moves, or at least one node does and the lightest move is paid for.
        let still: Vec<Outlook> = outlooks.iter().map(|outlook| Outlook { movable: Movable::No, ..*outlook }).collect();
        let still = solved(&still);
        for outlook in &mut outlooks {
            outlook.movable = outlook.movable.for_nothing();
        }
        let moved = solved(&outlooks);
        let value = plus(moved.value, lightest);
        if value < still.value {
            TreeBound { value, unmoved: still.value - value, moved: -lightest, ..moved }
        } else {
            TreeBound { moved: moved.value.min(IMPOSSIBLE) - still.value, ..still }
        }
    }

    /// Everything of a complete state that the tree's result depends on.
    fn key(&self, place: usize, state: &LinkState) -> Vec<u32> {
        let tree = &self.part.trees[place];
        let fed = |group: &usize| u32::from(matches!(state.status[*group], Status::Fed(_)));
        let mut key: Vec<u32> = tree.groups.iter().map(fed).collect();
        for &arc in &tree.arcs {
            let head = self.part.arcs[arc].head;
            if state.status[head] == Status::Fed(arc) {
                key.extend([arc as u32, state.grade[head] as u32]);
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
    let supply = tree.supply.iter().enumerate().map(|(node, supply)| match supply {
        NodeSupply::Never => Supply::Off,
        NodeSupply::Always => Supply::On,
        NodeSupply::As { group } => match state.status[*group] {
            Status::Off => Supply::Off,
            Status::Due | Status::Fed(_) => Supply::On,
            Status::Open => {
                let lands = part.groups[*group].lands_at == Some((place, node));
                Supply::Open { charge: charges.at(place, node), lands: lands.then(|| state.grade[*group]) }
            }
        },
    });
    let mut outlooks: Vec<Outlook> =
        supply.map(|supply| Outlook { supply, movable: Movable::No, landings: 0, grade: 0 }).collect();
    for &group in tree.groups.iter().filter(|group| state.status[**group] == Status::Due) {
        if let Some((_, node)) = part.groups[group].lands_at.filter(|(tree, _)| *tree == place) {
            outlooks[node].landings += 1;
            outlooks[node].grade = state.grade[group];
        }
    }
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
            let supplies_it = matches!(tree.supply[one.node], NodeSupply::As { group } if group == arc.head);
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

fn distinct(moves: &[Move]) -> bool {
    moves.iter().enumerate().all(|(place, one)| moves[..place].iter().all(|other| other.node != one.node))
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
    TreeSolver::new(&tree.compiled, shape, &outlooks, Credits::default(), true).choices()
}
