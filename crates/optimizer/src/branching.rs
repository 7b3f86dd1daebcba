//! What a search over links decides next: the one decision, of a few tried, after which the bounds are highest.

use crate::bound::Bound;
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::weight::{IMPOSSIBLE, Weight};

/// So many groups are tried before one is branched on.
pub(crate) const MOST_TRIED: usize = 6;

/// A node of the search tree that is still to be looked into.
#[derive(Debug)]
pub(crate) struct OpenNode {
    pub state: LinkState,
    pub bound: Bound,
}

/// A decision of the search.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Proposed {
    /// The arc is chosen.
    Choose(usize),
    /// The arc is not.
    GiveUp(usize),
    /// The group is supplied, or not.
    Supply(usize, bool),
}

impl Proposed {
    /// Decides it.
    pub fn take(self, part: &Part<'_>, state: &mut LinkState) {
        match self {
            Self::Choose(arc) => state.status[part.arcs[arc].head] = Status::Fed(arc),
            Self::GiveUp(arc) => state.weight[arc] = IMPOSSIBLE,
            Self::Supply(group, true) => state.status[group] = Status::Due,
            Self::Supply(group, false) => state.status[group] = Status::Off,
        }
    }
}

/// The lightest open link that moves a node of the tree whose bound most depends on one being chosen.
fn move_to_branch(part: &Part<'_>, node: &OpenNode) -> Option<usize> {
    let (place, more) = node.bound.unmoved.iter().enumerate().max_by_key(|(_, more)| **more)?;
    let open = |arc: &&usize| {
        let (index, arc) = (**arc, &part.arcs[**arc]);
        node.state.weight[index] < IMPOSSIBLE
            && arc.moves.is_some_and(|(tree, _)| tree == place)
            && node.state.status[arc.head] != Status::Fed(index)
    };
    let arcs = part.trees[place].arcs.iter().filter(open);
    arcs.copied().min_by_key(|arc| node.bound.left[*arc]).filter(|_| *more > 0)
}

/// The undecided group that spoils the bound most: one whose nodes disagree, else one through which a wished supply
/// would have to come, else one that is wished for, else any.
pub(crate) fn group_to_branch(part: &Part<'_>, node: &OpenNode) -> Option<usize> {
    let state = &node.state;
    let is_undecided = |group: usize| matches!(state.status[group], Status::Open | Status::Due);
    let undecided = || (0..state.status.len()).filter(|group| is_undecided(*group));
    let weight = |group: &usize| state.least_into(part, *group);
    let is_open = |group: usize| state.status[group] == Status::Open;
    let wish = |group: usize| node.bound.wishes[group];
    let torn = undecided()
        .filter(|group| is_open(*group) && wish(*group).wanting > 0 && wish(*group).wanting < wish(*group).nodes);
    if let Some(group) = torn.max_by_key(weight) {
        return Some(group);
    }
    let wanted = |group: usize| !is_open(group) || wish(group).wanting > 0;
    let through = undecided()
        .filter(|group| wanted(*group))
        .filter_map(|group| part.arcs[state.best_into(part, group)?].tail)
        .filter(|tail| is_open(*tail) && wish(*tail).wanting == 0);
    through
        .max_by_key(weight)
        .or_else(|| undecided().find(|group| state.status[*group] == Status::Due))
        .or_else(|| undecided().filter(|group| wish(*group).wanting > 0).max_by_key(weight))
        .or_else(|| undecided().max_by_key(weight))
}

/// The decisions of which one must hold where the part or the bound says which: a forced supply, or a link that moves a
/// node of a tree.
pub(crate) fn ways_told(part: &Part<'_>, node: &OpenNode) -> Option<Vec<Proposed>> {
    let fed = |arc: &usize| node.state.status[part.arcs[*arc].head] == Status::Fed(*arc);
    if let Some(arcs) = part.forced.iter().find(|arcs| !arcs.iter().any(fed)) {
        return Some(arcs.iter().map(|arc| Proposed::Choose(*arc)).collect());
    }
    move_to_branch(part, node).map(|arc| vec![Proposed::Choose(arc), Proposed::GiveUp(arc)])
}

/// A search that tries decisions before it takes one.
pub(crate) trait Branching {
    /// The part that is searched.
    fn part(&self) -> &Part<'_>;
    /// What weighs this or more is not looked into.
    fn enough(&self) -> Weight;
    /// The arc by which the group is likely to be supplied, where the search knows of one.
    fn likely_arc(&self, group: usize) -> Option<usize>;
    /// The bound of a settled state, no closer than it takes to rank decisions.
    fn bound_of_settled(&mut self, state: &LinkState) -> Weight;
}

/// Of what can be decided of these groups, the decision after which the lower of its two bounds is highest; what is left of
/// it where one side is not worth looking into, and nothing where neither is. A single group is not tried.
pub(crate) fn strongest(search: &mut impl Branching, node: &OpenNode, groups: &[usize]) -> Vec<Proposed> {
    let mut best: Option<((Weight, Weight), [Proposed; 2])> = None;
    for &group in groups {
        let Some(pair) = pair_at(search, node, group) else { continue };
        if groups.len() == 1 {
            return pair.to_vec();
        }
        let [one, other] = pair.map(|decision| bound_after(search, node, decision));
        let enough = search.enough();
        match (one < enough, other < enough) {
            (true, true) => {}
            (true, false) => return vec![pair[0]],
            (false, true) => return vec![pair[1]],
            (false, false) => return Vec::new(),
        }
        let score = (one.min(other), one.max(other));
        if best.is_none_or(|(other, _)| score > other) {
            best = Some((score, pair));
        }
    }
    best.map_or_else(Vec::new, |(_, pair)| pair.to_vec())
}

/// What can be decided of a group: whether it is supplied or, where it is, one of its arcs.
fn pair_at(search: &impl Branching, node: &OpenNode, group: usize) -> Option<[Proposed; 2]> {
    if node.state.status[group] == Status::Open {
        return Some([Proposed::Supply(group, true), Proposed::Supply(group, false)]);
    }
    let is_open = |arc: &usize| node.state.weight[*arc] < IMPOSSIBLE;
    let arc = search.likely_arc(group).filter(is_open).or_else(|| {
        let arcs = search.part().groups[group].arcs.iter().copied().filter(is_open);
        arcs.min_by_key(|arc| node.bound.left[*arc])
    })?;
    Some([Proposed::Choose(arc), Proposed::GiveUp(arc)])
}

fn bound_after(search: &mut impl Branching, node: &OpenNode, decision: Proposed) -> Weight {
    let mut state = node.state.clone();
    decision.take(search.part(), &mut state);
    if state.settle(search.part()) { search.bound_of_settled(&state) } else { IMPOSSIBLE }
}
