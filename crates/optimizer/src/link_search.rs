//! Branch and bound over a part's links: which groups are supplied, and by which link each.

use crate::ascent::Preference;
use crate::bound::{Bound, Bounder};
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::primal::{Feeding, bettered, flipped, lengths, priced, rounded};
use crate::raised::Raised;
use crate::weight::{IMPOSSIBLE, Weight};

/// So many groups are tried before one is branched on.
const MOST_TRIED: usize = 6;

/// What the search of a part found.
#[derive(Debug)]
pub(crate) struct Found {
    /// The best complete state and its weight.
    pub best: Option<(Weight, LinkState)>,
    /// No choice weighs less. Equals the best's weight where the search went to its end.
    pub bound: Weight,
    /// The nodes of the search tree looked at.
    pub nodes: u64,
}

/// A node of the search tree that is still to be looked into.
#[derive(Debug)]
pub(crate) struct OpenNode {
    pub state: LinkState,
    pub bound: Bound,
}

/// Searches a part, looking at no more nodes than allowed, and at one at least; from a feeding that is known, where one is.
pub(crate) fn search(part: &Part<'_>, most_nodes: Option<u64>, known: Option<&Feeding>) -> Found {
    let mut search =
        Search { bounder: Bounder::new(part), best: None, nodes: 0, guide: Vec::new(), preference: Preference::Last };
    if let Some(known) = known.and_then(|feeding| priced(&mut search.bounder, feeding)) {
        search.guide = search.bounder.used(&known.1);
        search.best = Some(known);
    }
    let mut stack = Vec::new();
    search.look_at(LinkState::undecided(part), -IMPOSSIBLE, &mut stack);
    while let Some(node) = stack.pop() {
        if node.bound.value >= search.best_weight() {
            continue;
        }
        if most_nodes.is_some_and(|most| search.nodes >= most) {
            let open = stack.iter().map(|open| open.bound.value).min().unwrap_or(IMPOSSIBLE);
            let bound = node.bound.value.min(open).min(search.best_weight());
            return Found { best: search.best, bound, nodes: search.nodes };
        }
        search.branch(&node, &mut stack);
    }
    let bound = search.best_weight();
    Found { best: search.best, bound, nodes: search.nodes }
}

#[derive(Debug)]
struct Search<'p> {
    bounder: Bounder<'p>,
    best: Option<(Weight, LinkState)>,
    nodes: u64,
    /// What the best uses, by element of the bound's net.
    guide: Vec<bool>,
    /// Which way of ascending went highest at the root.
    preference: Preference,
}

impl Search<'_> {
    fn best_weight(&self) -> Weight {
        self.best.as_ref().map_or(IMPOSSIBLE, |(weight, _)| *weight)
    }

    /// Draws what follows, bounds it and rounds it to what can be had; keeps it where it can be better than the best.
    fn look_at(&mut self, mut state: LinkState, at_least: Weight, open: &mut Vec<OpenNode>) {
        let is_root = self.nodes == 0;
        self.nodes += 1;
        let mut rounds = 0;
        loop {
            rounds += 1;
            let part = self.bounder.part;
            if !state.settle(part) {
                return;
            }
            let mut bound = self.bounder.bound(&state, self.best_weight(), &self.guide, self.preference);
            if !is_root || rounds > 1 {
                self.go_higher(&state, &mut bound, is_root);
            }
            let reckoned = bound.value;
            bound.value = reckoned.max(at_least);
            if bound.value >= self.best_weight() {
                return;
            }
            for length in [&bound.left, &lengths(part, &state)] {
                let feeding = rounded(part, &state, &bound.wishes, length);
                self.try_feeding(&state, feeding);
                if bound.value >= self.best_weight() {
                    return;
                }
            }
            if is_root && rounds == 2 {
                self.flip(&state);
                if bound.value >= self.best_weight() {
                    return;
                }
            }
            let spare = self.best_weight() - reckoned;
            if !state.give_up(part, &bound.left, &bound.moved, spare) && (!is_root || rounds > 1) {
                if !state.is_complete() {
                    open.push(OpenNode { state, bound });
                }
                return;
            }
        }
    }

    /// Ascends in other ways too where a bound does not go high enough; at the root in all of them, to know the best.
    fn go_higher(&mut self, state: &LinkState, bound: &mut Bound, is_root: bool) {
        let others: &[Preference] = if is_root { &Preference::ALL } else { &[Preference::Mixed, Preference::Last] };
        let first = self.preference;
        for &other in others.iter().filter(|other| **other != first) {
            if bound.value >= self.best_weight() {
                return;
            }
            let found = self.bounder.bound(state, self.best_weight(), &self.guide, other);
            if found.value > bound.value {
                *bound = found;
                if is_root {
                    self.preference = other;
                }
            }
        }
    }

    fn try_feeding(&mut self, open: &LinkState, feeding: Feeding) {
        let Some((weight, _)) = priced(&mut self.bounder, &feeding) else { return };
        let (weight, feeding) = bettered(&mut self.bounder, open, feeding, weight);
        if weight < self.best_weight()
            && let Some((weight, state)) = priced(&mut self.bounder, &feeding)
        {
            self.guide = self.bounder.used(&state);
            self.best = Some((weight, state));
        }
    }

    fn flip(&mut self, open: &LinkState) {
        let Some((weight, best)) = self.best.clone() else { return };
        let feeding = best.feeding();
        let (better, feeding) = flipped(&mut self.bounder, open, feeding, weight);
        if better < weight {
            self.try_feeding(open, feeding);
        }
    }

    /// The decisions to try, one of which must hold.
    fn ways_to_branch(&mut self, node: &OpenNode) -> Vec<Proposed> {
        let part = self.bounder.part;
        let state = &node.state;
        let fed = |arc: &usize| state.status[part.arcs[*arc].head] == Status::Fed(*arc);
        if let Some(arcs) = part.forced.iter().find(|arcs| !arcs.iter().any(fed)) {
            return arcs.iter().map(|arc| Proposed::Choose(*arc)).collect();
        }
        if let Some(arc) = move_to_branch(part, node) {
            return vec![Proposed::Choose(arc), Proposed::GiveUp(arc)];
        }
        let mut groups = self.groups_not_paid_for(node);
        if groups.is_empty() {
            groups.extend(group_to_branch(part, node));
        }
        let mut best: Option<((Weight, Weight), [Proposed; 2])> = None;
        for &group in &groups {
            let Some(pair) = self.pair_at(node, group) else { continue };
            if groups.len() == 1 {
                return pair.to_vec();
            }
            let [one, other] = pair.map(|decision| self.bound_after(node, decision));
            match (one < self.best_weight(), other < self.best_weight()) {
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
    fn pair_at(&self, node: &OpenNode, group: usize) -> Option<[Proposed; 2]> {
        let state = &node.state;
        if state.status[group] == Status::Open {
            return Some([Proposed::Supply(group, true), Proposed::Supply(group, false)]);
        }
        let open = |arc: &usize| state.weight[*arc] < IMPOSSIBLE;
        let best = self.best.as_ref().map(|(_, best)| best.status[group]);
        let arc = match best {
            Some(Status::Fed(arc)) if open(&arc) => arc,
            _ => {
                let arcs = self.bounder.part.groups[group].arcs.iter().copied().filter(open);
                arcs.min_by_key(|arc| node.bound.left[*arc])?
            }
        };
        Some([Proposed::Choose(arc), Proposed::GiveUp(arc)])
    }

    /// The bound after a decision, no closer than it takes to rank decisions.
    fn bound_after(&mut self, node: &OpenNode, decision: Proposed) -> Weight {
        self.nodes += 1;
        let mut state = node.state.clone();
        decision.take(self.bounder.part, &mut state);
        if !state.settle(self.bounder.part) {
            return IMPOSSIBLE;
        }
        self.bounder.bound(&state, self.best_weight(), &self.guide, self.preference).value
    }

    /// The undecided groups whose supply the best choice pays more for than the bound does, the most first.
    fn groups_not_paid_for(&self, node: &OpenNode) -> Vec<usize> {
        let Some((_, best)) = self.best.as_ref() else { return Vec::new() };
        let not_paid = |group: usize| match (node.state.status[group], best.status[group]) {
            (Status::Open | Status::Due, Status::Fed(arc)) if node.state.weight[arc] < IMPOSSIBLE => {
                node.bound.left[arc]
            }
            _ => 0,
        };
        let mut groups: Vec<usize> = (0..best.status.len()).filter(|group| not_paid(*group) > 0).collect();
        groups.sort_by_key(|group| std::cmp::Reverse(not_paid(*group)));
        groups.truncate(MOST_TRIED);
        groups
    }

    fn branch(&mut self, node: &OpenNode, stack: &mut Vec<OpenNode>) {
        let ways = self.ways_to_branch(node);
        let mut children = Vec::new();
        for decision in ways {
            let mut state = node.state.clone();
            decision.take(self.bounder.part, &mut state);
            self.look_at(state, node.bound.value, &mut children);
        }
        children.sort_by_key(|child| std::cmp::Reverse(child.bound.value));
        stack.append(&mut children);
    }
}

/// Proposes bounds and decisions around a solution that is known, for those who walk the splits themselves.
pub(crate) struct Proposer<'p> {
    search: Search<'p>,
    /// The way of ascending that is tried first.
    pub preference: Preference,
}

impl<'p> Proposer<'p> {
    /// One that knows of no solution.
    pub fn of(part: &'p Part<'p>) -> Self {
        let preference = Preference::Last;
        let search = Search { bounder: Bounder::new(part), best: None, nodes: 0, guide: Vec::new(), preference };
        Self { search, preference }
    }

    /// One that knows the solution with this feeding, and what that weighs; `None` where it is none.
    pub fn around(part: &'p Part<'p>, feeding: &Feeding) -> Option<(Self, Weight)> {
        let mut proposer = Self::of(part);
        let (weight, state) = priced(&mut proposer.search.bounder, feeding)?;
        proposer.search.guide = proposer.search.bounder.used(&state);
        proposer.search.best = Some((weight, state));
        Some((proposer, weight))
    }

    /// The part.
    pub fn part(&self) -> &'p Part<'p> {
        self.search.bounder.part
    }

    /// A bound of a settled state, and what was raised for it.
    pub fn bound(&self, state: &LinkState, preference: Preference) -> (Bound, Vec<Raised>) {
        self.search.bounder.bound_with_raised(state, self.search.best_weight(), &self.search.guide, preference)
    }

    /// What to decide next.
    pub fn decision(&mut self, state: &LinkState, bound: &Bound) -> Option<Proposed> {
        self.search.preference = self.preference;
        let node = OpenNode { state: state.clone(), bound: bound.clone() };
        self.search.ways_to_branch(&node).first().copied()
    }
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
pub(crate) fn move_to_branch(part: &Part<'_>, node: &OpenNode) -> Option<usize> {
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
