//! Branch and bound within one corner: the cheapest with at most so many openings and at least so much worth.

use crate::ascent::Preference;
use crate::frontier::corners::{Corner, Corners};
use crate::frontier::points::{Point, PointMaker};
use crate::frontier::priced_part::PricedPart;
use crate::link_search::{OpenNode, Proposed, group_to_branch, move_to_branch};
use crate::link_state::{LinkState, Status};
use crate::primal::{Feeding, lengths, priced, rounded};
use crate::weight::{IMPOSSIBLE, Weight};

/// So many groups are tried before one is branched on.
const MOST_TRIED: usize = 6;

/// The search of a corner.
pub(super) struct CornerSearch<'s, 'c, 'm> {
    maker: &'s PointMaker<'m>,
    priced: &'s mut PricedPart<'c>,
    pub corners: &'s mut Corners<Point>,
    corner: Corner,
    has_found: bool,
    nodes: u64,
}

impl<'s, 'c, 'm> CornerSearch<'s, 'c, 'm> {
    pub fn new(
        maker: &'s PointMaker<'m>,
        priced: &'s mut PricedPart<'c>,
        corners: &'s mut Corners<Point>,
        corner: Corner,
    ) -> Self {
        Self { maker, priced, corners, corner, has_found: false, nodes: 0 }
    }

    /// Searches until a point is found in the corner, the corner is closed, or the nodes left are used up. What is likely
    /// to be torn between supplied and not is branched on first.
    pub fn run(&mut self, fractions: &[f64], left: &mut Option<u64>) {
        let mut stack = Vec::new();
        self.look_at(LinkState::undecided(self.priced.bounder.part), &mut stack);
        let mut is_stopped = false;
        while !self.has_found && !is_stopped {
            let Some(node) = stack.pop() else { break };
            is_stopped = left.is_some_and(|left| self.nodes >= left);
            self.branch(&node, fractions, &mut stack);
        }
        if !self.has_found && !is_stopped {
            self.corners.close(&self.corner);
        }
        *left = left.map(|left| left.saturating_sub(self.nodes));
    }

    /// Draws what follows, bounds it, and rounds it to points.
    fn look_at(&mut self, mut state: LinkState, open: &mut Vec<OpenNode>) {
        self.nodes += 1;
        loop {
            let part = self.priced.bounder.part;
            if !state.settle(part) || !self.is_within_reach(&state) {
                return;
            }
            let Some(bound) = self.bound_of(&state) else { return };
            for length in [&bound.left, &lengths(part, &state)] {
                let feeding = rounded(part, &state, &bound.wishes, length);
                self.try_feeding(&feeding);
                if self.has_found {
                    return;
                }
            }
            let enough = self.priced.enough(&self.corner);
            if bound.value >= enough {
                return;
            }
            if !state.give_up(part, &bound.left, &bound.moved, enough - bound.value) {
                if !state.is_complete() {
                    open.push(OpenNode { state, bound });
                }
                return;
            }
        }
    }

    /// Whether enough worth can still be supplied.
    fn is_within_reach(&self, state: &LinkState) -> bool {
        let supplied = state.status.iter().zip(self.maker.worth);
        let most: i128 = supplied.filter(|(status, _)| **status != Status::Off).map(|(_, worth)| worth).sum();
        most >= self.corner.worth
    }

    /// The bound, where it leaves anything in the corner.
    fn bound_of(&self, state: &LinkState) -> Option<crate::bound::Bound> {
        let enough = self.priced.enough(&self.corner);
        let mut best: Option<crate::bound::Bound> = None;
        let first = self.priced.preference;
        let other = if first == Preference::Mixed { Preference::Last } else { Preference::Mixed };
        for preference in [first, other] {
            let bound = self.priced.bounder.bound(state, enough, &self.priced.guide, preference);
            if bound.value >= enough {
                return None;
            }
            if best.as_ref().is_none_or(|best| best.value < bound.value) {
                best = Some(bound);
            }
        }
        best
    }

    fn try_feeding(&mut self, feeding: &Feeding) {
        let Some((weight, state)) = priced(&mut self.priced.bounder, feeding) else { return };
        self.maker.add(self.priced.prices, weight, &state, self.corners);
        // What lies in the corner takes it from those that are open.
        self.has_found |= !self.corners.open.contains(&self.corner);
    }

    fn branch(&mut self, node: &OpenNode, fractions: &[f64], stack: &mut Vec<OpenNode>) {
        let mut children = Vec::new();
        for decision in self.ways_to_branch(node, fractions) {
            let mut state = node.state.clone();
            decision.take(self.priced.bounder.part, &mut state);
            self.look_at(state, &mut children);
        }
        children.sort_by_key(|child| std::cmp::Reverse(child.bound.value));
        stack.append(&mut children);
    }

    /// The decisions to try, one of which must hold.
    fn ways_to_branch(&mut self, node: &OpenNode, fractions: &[f64]) -> Vec<Proposed> {
        let part = self.priced.bounder.part;
        let state = &node.state;
        let fed = |arc: &usize| state.status[part.arcs[*arc].head] == Status::Fed(*arc);
        if let Some(arcs) = part.forced.iter().find(|arcs| !arcs.iter().any(fed)) {
            return arcs.iter().map(|arc| Proposed::Choose(*arc)).collect();
        }
        if let Some(arc) = move_to_branch(part, node) {
            return vec![Proposed::Choose(arc), Proposed::GiveUp(arc)];
        }
        let torn = |group: &usize| (fractions[*group] - 0.5).abs();
        let mut groups: Vec<usize> = (0..state.status.len())
            .filter(|group| state.status[*group] == Status::Open && torn(group) < 0.499)
            .collect();
        groups.sort_by(|one, other| torn(one).total_cmp(&torn(other)));
        groups.truncate(MOST_TRIED);
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
            let enough = self.priced.enough(&self.corner);
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
    fn pair_at(&self, node: &OpenNode, group: usize) -> Option<[Proposed; 2]> {
        if node.state.status[group] == Status::Open {
            return Some([Proposed::Supply(group, true), Proposed::Supply(group, false)]);
        }
        let arcs = self.priced.bounder.part.groups[group].arcs.iter().copied();
        let open = arcs.filter(|arc| node.state.weight[*arc] < IMPOSSIBLE);
        let arc = open.min_by_key(|arc| node.bound.left[*arc])?;
        Some([Proposed::Choose(arc), Proposed::GiveUp(arc)])
    }

    /// The bound after a decision, no closer than it takes to rank decisions.
    fn bound_after(&mut self, node: &OpenNode, decision: Proposed) -> Weight {
        self.nodes += 1;
        let part = self.priced.bounder.part;
        let mut state = node.state.clone();
        decision.take(part, &mut state);
        if !state.settle(part) || !self.is_within_reach(&state) {
            return IMPOSSIBLE;
        }
        let enough = self.priced.enough(&self.corner);
        self.priced.bounder.bound(&state, enough, &self.priced.guide, self.priced.preference).value
    }
}
