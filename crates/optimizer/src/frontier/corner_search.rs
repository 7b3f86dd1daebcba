//! Branch and bound within one corner: the cheapest with at most so many openings and at least so much worth.

use crate::ascent::Preference;
use crate::branching::{Branching, MOST_TRIED, OpenNode, Proposed, group_to_branch, strongest, ways_told};
use crate::frontier::corners::{Corner, Corners};
use crate::frontier::points::{Point, PointMaker};
use crate::frontier::priced_part::PricedPart;
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::primal::{Feeding, lengths, priced, rounded};
use crate::weight::{IMPOSSIBLE, Weight};

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
        if let Some(ways) = ways_told(part, node) {
            return ways;
        }
        let torn = |group: &usize| (fractions[*group] - 0.5).abs();
        let status = &node.state.status;
        let mut groups: Vec<usize> =
            (0..status.len()).filter(|group| status[*group] == Status::Open && torn(group) < 0.499).collect();
        groups.sort_by(|one, other| torn(one).total_cmp(&torn(other)));
        groups.truncate(MOST_TRIED);
        if groups.is_empty() {
            groups.extend(group_to_branch(part, node));
        }
        strongest(self, node, &groups)
    }
}

impl Branching for CornerSearch<'_, '_, '_> {
    fn part(&self) -> &Part<'_> {
        self.priced.bounder.part
    }

    fn enough(&self) -> Weight {
        self.priced.enough(&self.corner)
    }

    fn likely_arc(&self, _group: usize) -> Option<usize> {
        None
    }

    fn bound_of_settled(&mut self, state: &LinkState) -> Weight {
        self.nodes += 1;
        if !self.is_within_reach(state) {
            return IMPOSSIBLE;
        }
        let enough = self.enough();
        self.priced.bounder.bound(state, enough, &self.priced.guide, self.priced.preference).value
    }
}
