//! Branch and bound over a part's links: which groups are supplied, and by which link each.

use crate::bound::{Bound, Bounder};
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::primal::{Feeding, bettered, priced, rounded};
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

/// A node of the search tree that is still to be looked into.
#[derive(Debug)]
struct OpenNode {
    state: LinkState,
    bound: Bound,
}

/// Searches a part, looking at no more nodes than allowed, and at one at least.
pub(crate) fn search(part: &Part<'_>, most_nodes: Option<u64>) -> Found {
    let mut search = Search { bounder: Bounder::new(part), best: None, nodes: 0 };
    let mut stack = Vec::new();
    search.look_at(LinkState::undecided(part), &mut stack);
    let mut at_root = true;
    while let Some(node) = stack.pop() {
        if node.bound.value >= search.best_weight() {
            continue;
        }
        let feeding = rounded(part, &node.state, &node.bound.wishes);
        search.try_feeding(&feeding);
        if at_root && node.bound.value < search.best_weight() {
            search.better(&node.state);
        }
        at_root = false;
        if node.bound.value >= search.best_weight() || node.state.is_complete() {
            continue;
        }
        if most_nodes.is_some_and(|most| search.nodes >= most) {
            let open = stack.iter().map(|open| open.bound.value).min().unwrap_or(IMPOSSIBLE);
            let bound = node.bound.value.min(open).min(search.best_weight());
            return Found { best: search.best.map(|(weight, state, _)| (weight, state)), bound, nodes: search.nodes };
        }
        search.branch(&node, &mut stack);
    }
    let bound = search.best_weight();
    Found { best: search.best.map(|(weight, state, _)| (weight, state)), bound, nodes: search.nodes }
}

#[derive(Debug)]
struct Search<'p> {
    bounder: Bounder<'p>,
    best: Option<(Weight, LinkState, Feeding)>,
    nodes: u64,
}

impl Search<'_> {
    fn best_weight(&self) -> Weight {
        self.best.as_ref().map_or(IMPOSSIBLE, |(weight, ..)| *weight)
    }

    /// Draws what follows and bounds it; keeps it where it can be better than the best.
    fn look_at(&mut self, mut state: LinkState, open: &mut Vec<OpenNode>) {
        self.nodes += 1;
        if state.settle(self.bounder.part) {
            let enough = self.best_weight();
            let bound = self.bounder.bound(&state, enough);
            if bound.value < self.best_weight() {
                open.push(OpenNode { state, bound });
            }
        }
    }

    fn try_feeding(&mut self, feeding: &Feeding) {
        if let Some((weight, state)) = priced(&mut self.bounder, feeding)
            && weight < self.best_weight()
        {
            self.best = Some((weight, state, feeding.clone()));
        }
    }

    fn better(&mut self, open: &LinkState) {
        if let Some((weight, _, feeding)) = self.best.clone() {
            let (_, feeding) = bettered(&mut self.bounder, open, feeding, weight);
            self.try_feeding(&feeding);
        }
    }

    fn branch(&mut self, node: &OpenNode, stack: &mut Vec<OpenNode>) {
        let part = self.bounder.part;
        let ways = ways_to_branch(part, node);
        let mut children = Vec::new();
        for (group, status) in ways {
            let mut state = node.state.clone();
            state.status[group] = status;
            self.look_at(state, &mut children);
        }
        children.sort_by_key(|child| std::cmp::Reverse(child.bound.value));
        stack.append(&mut children);
    }
}

/// The decisions to try, one of which must hold.
fn ways_to_branch(part: &Part<'_>, node: &OpenNode) -> Vec<(usize, Status)> {
    let state = &node.state;
    let fed = |arc: &usize| state.status[part.arcs[*arc].head] == Status::Fed(*arc);
    if let Some(arcs) = part.forced.iter().find(|arcs| !arcs.iter().any(fed)) {
        return arcs.iter().map(|arc| (part.arcs[*arc].head, Status::Fed(*arc))).collect();
    }
    let Some(group) = group_to_branch(part, node) else { return Vec::new() };
    let arcs = part.groups[group].arcs.iter().filter(|arc| state.weight[**arc] < IMPOSSIBLE);
    let mut ways: Vec<(usize, Status)> = arcs.map(|arc| (group, Status::Fed(*arc))).collect();
    if state.status[group] == Status::Open {
        ways.push((group, Status::Off));
    }
    ways
}

/// The undecided group that spoils the bound most: one whose nodes disagree, else one through which a wished supply
/// would have to come, else one that is wished for, else any.
fn group_to_branch(part: &Part<'_>, node: &OpenNode) -> Option<usize> {
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
