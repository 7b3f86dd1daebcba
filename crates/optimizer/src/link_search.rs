//! Branch and bound over a part's links: which groups are supplied, and by which link each.

use crate::ascent::Preference;
use crate::bound::{Bound, Bounder};
use crate::branching::{Branching, MOST_TRIED, OpenNode, Proposed, group_to_branch, strongest, ways_told};
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::primal::{Feeding, bettered, flipped, lengths, priced, rounded};
use crate::raised::Raised;
use crate::weight::{IMPOSSIBLE, Weight};

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
        if let Some(ways) = ways_told(part, node) {
            return ways;
        }
        let mut groups = self.groups_not_paid_for(node);
        if groups.is_empty() {
            groups.extend(group_to_branch(part, node));
        }
        strongest(self, node, &groups)
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

impl Branching for Search<'_> {
    fn part(&self) -> &Part<'_> {
        self.bounder.part
    }

    fn enough(&self) -> Weight {
        self.best_weight()
    }

    fn likely_arc(&self, group: usize) -> Option<usize> {
        match self.best.as_ref().map(|(_, best)| best.status[group]) {
            Some(Status::Fed(arc)) => Some(arc),
            _ => None,
        }
    }

    fn bound_of_settled(&mut self, state: &LinkState) -> Weight {
        self.nodes += 1;
        self.bounder.bound(state, self.best_weight(), &self.guide, self.preference).value
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
