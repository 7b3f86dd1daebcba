//! One tree solved exactly for given links: the least of every subtree for every set of marks that it may see.
//!
//! The same walk bounds a tree whose links are not all decided: an open supply is taken at a charge, an open landing
//! is not counted, and a node that an open link may move takes the best place of all.

use crate::compiled_tree::{CompiledOption, CompiledTree};
use crate::effective_tree::EffectiveTree;
use crate::load_side::{Candidate, least};
use crate::problem::SupplyNeed;
use crate::weight::{IMPOSSIBLE, Weight, plus};

/// What a node knows of its group's supply.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Supply {
    Off,
    On,
    /// Undecided: it can be had at this charge.
    Open {
        charge: Weight,
        /// The grade of the link that then lands here for certain, where one does.
        lands: Option<usize>,
    },
}

/// Whether an undecided link may move a node.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Movable {
    No,
    /// At this weight beyond the charge; if it moves, its group is supplied.
    WithSupply(Weight),
    /// At this weight.
    Freely(Weight),
}

impl Movable {
    /// What the move weighs.
    pub fn weight(self) -> Option<Weight> {
        match self {
            Self::No => None,
            Self::WithSupply(weight) | Self::Freely(weight) => Some(weight),
        }
    }

    /// The same, weighing nothing.
    pub fn for_nothing(self) -> Self {
        match self {
            Self::No => Self::No,
            Self::WithSupply(_) => Self::WithSupply(0),
            Self::Freely(_) => Self::Freely(0),
        }
    }
}

/// What the links mean for a node.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Outlook {
    pub supply: Supply,
    pub movable: Movable,
    /// How many links land here.
    pub landings: u32,
    /// The highest grade of those.
    pub grade: usize,
}

/// What the options of a tree are credited; without a list, nothing.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Credits<'t> {
    pub list: &'t [Weight],
    /// Where the root's options begin in the list, and those of each node.
    pub root: usize,
    pub nodes: &'t [usize],
}

impl Credits<'_> {
    fn of_root(&self, option: usize) -> Weight {
        self.list.get(self.root + option).copied().unwrap_or(0)
    }

    fn of_option(&self, node: usize, option: usize) -> Weight {
        self.nodes.get(node).and_then(|first| self.list.get(first + option)).copied().unwrap_or(0)
    }
}

/// A tree under given links.
#[derive(Debug)]
pub(crate) struct TreeSolver<'t> {
    pub tree: &'t CompiledTree<'t>,
    pub shape: &'t EffectiveTree,
    pub outlooks: &'t [Outlook],
    /// Whether the landings and grades are final.
    pub exact: bool,
    pub credits: Credits<'t>,
    counts: Vec<u64>,
    burdens: Vec<i64>,
    /// The least of each node's subtree in its place, by sight.
    least: Vec<Weight>,
    /// The least of each node's subtree elsewhere.
    elsewhere: Vec<Weight>,
    /// The options that may be chosen at the node in hand.
    own: Vec<Own>,
    scratch: Vec<Candidate>,
}

/// What an option itself costs at its node, whatever is seen there.
#[derive(Clone, Copy, Debug)]
struct Own {
    /// Its place among the node's options.
    place: usize,
    weight: Weight,
    /// Whether it takes an open supply.
    wants_supply: bool,
}

/// The children of a node where each is on the side of the load that costs it least.
#[derive(Clone, Copy, Debug, Default)]
struct EachAtItsBest {
    weight: Weight,
    count: u64,
    burden: i64,
}

/// What is chosen at a node.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Chosen {
    pub option: usize,
    pub behind: Vec<usize>,
    /// Whether the supply is taken, where it is undecided.
    pub wants_supply: bool,
}

impl<'t> TreeSolver<'t> {
    /// Solves the tree.
    pub fn new(
        tree: &'t CompiledTree<'t>,
        shape: &'t EffectiveTree,
        outlooks: &'t [Outlook],
        credits: Credits<'t>,
        exact: bool,
    ) -> Self {
        let size = outlooks.len();
        let counts = tree.given.nodes.iter().map(|node| u64::from(node.count)).collect();
        let burdens = tree.given.nodes.iter().map(|node| node.burden).collect();
        let mut solver = Self {
            tree,
            shape,
            outlooks,
            exact,
            credits,
            counts,
            burdens,
            least: vec![IMPOSSIBLE; size * tree.sights.len()],
            elsewhere: vec![IMPOSSIBLE; size],
            own: Vec::new(),
            scratch: Vec::new(),
        };
        for &node in shape.order.iter().rev() {
            solver.add_children_that_stay(node);
            solver.solve_node(node);
        }
        solver
    }

    /// Returns the least that the tree costs.
    pub fn value(&self) -> Weight {
        (0..self.tree.roots.len()).map(|root| self.with_root(root)).min().unwrap_or(IMPOSSIBLE)
    }

    /// Returns the root option and what is chosen at each node at the least cost: of equal ones the lowest option,
    /// from the root down. Nothing, where the tree has no solution.
    pub fn choices(&mut self) -> Option<(usize, Vec<Chosen>)> {
        let value = self.value();
        if value >= IMPOSSIBLE {
            return None;
        }
        let root = self.tree.roots[(0..self.tree.roots.len()).find(|root| self.with_root(*root) == value)?];
        let mut chosen = vec![Chosen::default(); self.outlooks.len()];
        let sight = self.tree.sight_of[usize::from(root.gives.0)];
        let mut open: Vec<(usize, usize)> = self.shape.on_root.iter().map(|&node| (node, sight)).collect();
        while let Some((node, sight)) = open.pop() {
            let (sight, must_want) = self.place(node, sight);
            let choice = self.choice(node, sight, must_want)?;
            let gives = self.tree.options[node].iter().find(|option| option.index == choice.option)?.gives;
            let behind = self.sight_with(sight, gives.0);
            for &child in &self.shape.children[node] {
                open.push((child, if choice.behind.binary_search(&child).is_ok() { behind } else { sight }));
            }
            chosen[node] = choice;
        }
        Some((root.index, chosen))
    }

    fn with_root(&self, root: usize) -> Weight {
        let option = &self.tree.roots[root];
        let sight = self.tree.sight_of[usize::from(option.gives.0)];
        let weight = option.weight - self.credits.of_root(root);
        self.shape.on_root.iter().fold(weight, |sum, &node| plus(sum, self.subtree(node, sight)))
    }

    /// The least of a node's subtree, in its place or elsewhere.
    fn subtree(&self, node: usize, sight: usize) -> Weight {
        self.least[node * self.tree.sights.len() + sight].min(self.elsewhere[node])
    }

    fn sight_with(&self, sight: usize, gives: u8) -> usize {
        self.tree.sight_of[usize::from(self.tree.sights[sight].0 | gives)]
    }

    /// A subtree that may move away need not count above.
    fn add_children_that_stay(&mut self, node: usize) {
        for &child in &self.shape.children[node] {
            if self.outlooks[child].movable == Movable::No {
                self.counts[node] += self.counts[child];
                self.burdens[node] += self.burdens[child];
            }
        }
    }

    fn solve_node(&mut self, node: usize) {
        let sights = self.tree.sights.len();
        self.weigh_options(node, false);
        for sight in 0..sights {
            self.least[node * sights + sight] = self.node_value(node, sight);
        }
        self.elsewhere[node] = match self.outlooks[node].movable {
            Movable::No => IMPOSSIBLE,
            Movable::WithSupply(weight) => plus(weight, self.least_anywhere(node, true)),
            Movable::Freely(weight) => plus(weight, self.least_anywhere(node, false)),
        };
    }

    fn least_anywhere(&mut self, node: usize, must_want: bool) -> Weight {
        self.weigh_options(node, must_want);
        let sights = 0..self.tree.sights.len();
        sights.map(|sight| self.node_value(node, sight)).min().unwrap_or(IMPOSSIBLE)
    }

    /// The least of a node's subtree at a sight, of the options that were weighed last.
    fn node_value(&mut self, node: usize, sight: usize) -> Weight {
        let tree = self.tree;
        let in_front = self.in_front(node, sight);
        let own = std::mem::take(&mut self.own);
        let mut at_best: [Option<EachAtItsBest>; 16] = [None; 16];
        let mut best = IMPOSSIBLE;
        for own in &own {
            let option = &tree.options[node][own.place];
            if !tree.sights[sight].covers(option.needs_from_above) {
                continue;
            }
            let beyond = self.sight_with(sight, option.gives.0);
            let below = if beyond == sight || self.shape.children[node].is_empty() {
                in_front
            } else {
                let at_best = *at_best[beyond].get_or_insert_with(|| self.each_at_its_best(node, sight, beyond));
                let fits = at_best.count <= option.count_limit && at_best.burden <= option.burden_left;
                // Beyond the limits it is no more than a bound, and where that is no better the option is out.
                if fits || plus(own.weight, at_best.weight) >= best {
                    at_best.weight
                } else {
                    self.below(node, option, sight, in_front, None)
                }
            };
            best = best.min(plus(own.weight, below));
        }
        self.own = own;
        best
    }

    /// The children, each in front of the load side or behind it, without a look at the limits.
    fn each_at_its_best(&self, node: usize, sight: usize, beyond: usize) -> EachAtItsBest {
        let mut all = EachAtItsBest::default();
        for &child in &self.shape.children[node] {
            let in_front = self.subtree(child, sight);
            let behind = self.least[child * self.tree.sights.len() + beyond];
            if self.shape.behind_load[child] && behind < in_front {
                all.count += self.counts[child];
                all.burden += self.burdens[child];
                all.weight = plus(all.weight, behind);
            } else {
                all.weight = plus(all.weight, in_front);
            }
        }
        all
    }

    /// Where a node is best, given what it would see in its place: what it then sees, and whether it must be supplied.
    fn place(&mut self, node: usize, sight: usize) -> (usize, bool) {
        let sights = self.tree.sights.len();
        if self.elsewhere[node] >= self.least[node * sights + sight] {
            return (sight, false);
        }
        let must_want = matches!(self.outlooks[node].movable, Movable::WithSupply(_));
        let value = self.least_anywhere(node, must_want);
        let best = (0..sights).find(|sight| self.node_value(node, *sight) == value);
        (best.unwrap_or(sight), must_want)
    }

    fn choice(&mut self, node: usize, sight: usize, must_want: bool) -> Option<Chosen> {
        let tree = self.tree;
        self.weigh_options(node, must_want);
        let value = self.node_value(node, sight);
        let in_front = self.in_front(node, sight);
        let own = std::mem::take(&mut self.own);
        let seen = tree.sights[sight];
        let found =
            own.iter().filter(|own| seen.covers(tree.options[node][own.place].needs_from_above)).find_map(|own| {
                let option = &tree.options[node][own.place];
                let mut behind = Vec::new();
                let weight = plus(own.weight, self.below(node, option, sight, in_front, Some(&mut behind)));
                (weight == value).then_some(Chosen { option: option.index, behind, wants_supply: own.wants_supply })
            });
        self.own = own;
        found
    }

    /// The children all in front of the load side.
    fn in_front(&self, node: usize, sight: usize) -> Weight {
        self.shape.children[node].iter().fold(0, |sum, &child| plus(sum, self.subtree(child, sight)))
    }

    /// Weighs what can be chosen at a node, whatever is seen there.
    fn weigh_options(&mut self, node: usize, must_want: bool) {
        let mut own = std::mem::take(&mut self.own);
        own.clear();
        own.extend((0..self.tree.options[node].len()).filter_map(|place| self.own_weight(node, place, must_want)));
        self.own = own;
    }

    /// What the option itself costs here and whether it takes an open supply; `None` where it cannot be chosen.
    fn own_weight(&self, node: usize, place: usize, must_want: bool) -> Option<Own> {
        let option = &self.tree.options[node][place];
        let weight = option.weight - self.credits.of_option(node, place);
        let outlook = &self.outlooks[node];
        if !self.lands(outlook.landings, outlook.grade, option) {
            return None;
        }
        let unwanting = Own { place, weight, wants_supply: false };
        match (outlook.supply, option.supply) {
            (Supply::Off, SupplyNeed::Supplied) | (Supply::On, SupplyNeed::Unsupplied) => None,
            (Supply::Open { .. }, SupplyNeed::Unsupplied) if must_want => None,
            (Supply::Open { charge, lands }, need)
                if need == SupplyNeed::Supplied || need == SupplyNeed::Any && (must_want || charge < 0) =>
            {
                let may_land =
                    lands.is_none_or(|grade| self.lands(outlook.landings + 1, outlook.grade.max(grade), option));
                match need {
                    _ if may_land => Some(Own { place, weight: weight + charge, wants_supply: true }),
                    SupplyNeed::Any if !must_want => Some(unwanting),
                    _ => None,
                }
            }
            _ => Some(unwanting),
        }
    }

    /// Whether the links that land here may: where more may come, under the kindest grade that they can end with.
    fn lands(&self, landings: u32, grade: usize, option: &CompiledOption<'_>) -> bool {
        if landings == 0 {
            return true;
        }
        let mut most = option.most_landings.iter().skip(grade);
        if self.exact { most.next().is_some_and(|most| landings <= *most) } else { most.any(|most| landings <= *most) }
    }

    /// The least of the children under an option; notes who is behind its load side, where asked.
    fn below(
        &mut self,
        node: usize,
        option: &CompiledOption<'_>,
        sight: usize,
        in_front: Weight,
        chosen: Option<&mut Vec<usize>>,
    ) -> Weight {
        let beyond = self.sight_with(sight, option.gives.0);
        if beyond == sight || self.shape.children[node].is_empty() {
            return in_front;
        }
        let mut candidates = std::mem::take(&mut self.scratch);
        candidates.clear();
        let mut others = 0;
        for &child in &self.shape.children[node] {
            let in_front = self.subtree(child, sight);
            if self.shape.behind_load[child] {
                candidates.push(Candidate {
                    child,
                    count: self.counts[child],
                    burden: self.burdens[child],
                    in_front,
                    behind: self.least[child * self.tree.sights.len() + beyond],
                });
            } else {
                others = plus(others, in_front);
            }
        }
        let weight = plus(others, least(&candidates, option.count_limit, option.burden_left, chosen));
        self.scratch = candidates;
        weight
    }
}
