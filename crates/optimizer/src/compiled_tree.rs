//! A tree made ready for solving: weights for costs, the options that are allowed, the sets of marks that can be seen.

use crate::effective_tree::EffectiveTree;
use crate::problem::{Marks, SupplyNeed, Tree};
use crate::weight::{Weight, weight_of};

/// A tree ready for solving.
#[derive(Clone, Debug)]
pub(crate) struct CompiledTree<'p> {
    /// The tree as it was given.
    pub given: &'p Tree,
    /// The tree when no link reparents.
    pub unmoved: EffectiveTree,
    /// The root options that are allowed and bear the burden.
    pub roots: Vec<CompiledRoot>,
    /// The options of each node that are allowed and whose needs do not fail whatever else is chosen.
    pub options: Vec<Vec<CompiledOption<'p>>>,
    /// Every set of marks that can be seen in the tree.
    pub sights: Vec<Marks>,
    /// The place of each set among the sights.
    pub sight_of: [usize; 16],
}

/// A root option.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CompiledRoot {
    pub index: usize,
    pub weight: Weight,
    pub gives: Marks,
}

/// A node's option.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CompiledOption<'p> {
    pub index: usize,
    pub weight: Weight,
    /// What must be seen from above: the needs without what it has of its own.
    pub needs_from_above: Marks,
    pub gives: Marks,
    pub supply: SupplyNeed,
    pub most_landings: &'p [u32],
    pub count_limit: u64,
    /// The most burden of the subtrees behind its load side.
    pub burden_left: i64,
}

impl CompiledOption<'_> {
    /// Whether a link of this grade or a higher one may land.
    pub fn has_room(&self, grade: usize) -> bool {
        self.most_landings.iter().skip(grade).any(|most| *most > 0)
    }
}

impl<'p> CompiledTree<'p> {
    /// Compiles a tree of a well-formed problem. The filters tell which options are allowed.
    pub fn new(
        given: &'p Tree,
        root_allowed: impl Fn(usize) -> bool,
        option_allowed: impl Fn(usize, usize) -> bool,
    ) -> Option<Self> {
        let burden: i64 = given.nodes.iter().map(|node| node.burden).sum();
        let bears =
            |gives: Marks, limit: Option<i64>| gives == Marks::NONE || limit.is_none_or(|limit| burden <= limit);
        let roots: Vec<CompiledRoot> = given
            .root_options
            .iter()
            .enumerate()
            .filter(|(index, option)| root_allowed(*index) && bears(option.gives, option.burden_limit))
            .map(|(index, option)| CompiledRoot { index, weight: weight_of(option.cost), gives: option.gives })
            .collect();
        let mut options = Vec::with_capacity(given.nodes.len());
        for (place, node) in given.nodes.iter().enumerate() {
            let allowed = node.options.iter().enumerate().filter(|(index, _)| option_allowed(place, *index));
            let compiled = allowed.filter_map(|(index, option)| {
                let limit = option.burden_limit.filter(|_| option.own | option.gives != Marks::NONE);
                let burden_left = limit.map_or(i64::MAX, |limit| limit.saturating_sub(node.burden));
                (burden_left >= 0).then(|| CompiledOption {
                    index,
                    weight: weight_of(option.cost),
                    needs_from_above: Marks(option.needs.0 & !option.own.0),
                    gives: option.gives,
                    supply: option.supply,
                    most_landings: &option.most_landings,
                    count_limit: option.count_limit.map_or(u64::MAX, u64::from),
                    burden_left,
                })
            });
            options.push(compiled.collect());
        }
        let (sights, sight_of) = sights(&roots, &options);
        Some(Self { given, unmoved: EffectiveTree::new(given, &[])?, roots, options, sights, sight_of })
    }
}

impl CompiledTree<'_> {
    /// How much more the cheapest option with room for a link weighs at a node than the cheapest of all.
    pub fn room_at(&self, node: usize) -> Weight {
        let least = |with_room: bool| {
            let options = self.options[node].iter().filter(|option| !with_room || option.has_room(0));
            options.map(|option| option.weight).min()
        };
        least(true).zip(least(false)).map_or(0, |(with_room, any)| with_room - any)
    }
}

/// Returns every set of marks that can be seen below these roots through these options, and where each stands.
fn sights(roots: &[CompiledRoot], options: &[Vec<CompiledOption<'_>>]) -> (Vec<Marks>, [usize; 16]) {
    let mut seen = [false; 16];
    for root in roots {
        seen[usize::from(root.gives.0)] = true;
    }
    let mut given = [false; 16];
    for option in options.iter().flatten() {
        given[usize::from(option.gives.0)] = true;
    }
    // Marks only grow on the way down, so one pass upwards per set of marks given reaches all.
    for gives in (0..16).filter(|gives| given[*gives]) {
        for sight in 0..16 {
            if seen[sight] {
                seen[sight | gives] = true;
            }
        }
    }
    let mut sights = Vec::new();
    let mut sight_of = [0; 16];
    for sight in (0_u8..16).filter(|sight| seen[usize::from(*sight)]) {
        sight_of[usize::from(sight)] = sights.len();
        sights.push(Marks(sight));
    }
    (sights, sight_of)
}
