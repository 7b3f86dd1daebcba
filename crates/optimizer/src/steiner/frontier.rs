//! Dynamic programming along a narrow front: nodes come one by one, and a state says which of the nodes that still have
//! lines to come hang together. States that reduced costs show to be too dear are dropped.

use super::dual_ascent::Ascent;
use super::graph::Graph;
use super::instance::Cost;
use super::label_setting::{Effort, Labelled};
use super::label_table::LabelTable;

/// Four bits for each place of the front: 0 is not in the tree, others name the part it belongs to.
type Front = u128;

/// Places of a front, and parts of one.
const PLACES: usize = 32;
const PARTS: usize = 15;
const NO_BACK: u32 = u32::MAX;

#[derive(Clone, Copy)]
struct State {
    front: Front,
    cost: Cost,
    /// The slacks of the lines taken, each in its cheaper direction.
    slack: Cost,
    back: u32,
}

/// The states of one step, the cheapest for each front.
#[derive(Default)]
struct Layer {
    states: Vec<State>,
    table: LabelTable,
}

impl Layer {
    fn add(&mut self, state: State) {
        let states = &self.states;
        match self.table.get(0, state.front, |index| (0, states[index as usize].front)) {
            Some(index) => {
                let old = &mut self.states[index as usize];
                if (state.cost, old.slack) < (old.cost, state.slack) {
                    *old = state;
                }
            }
            None => {
                let index = self.states.len() as u32;
                self.states.push(state);
                let states = &self.states;
                self.table.put(0, state.front, index, |index| (0, states[index as usize].front));
            }
        }
    }
}

fn part(front: Front, place: usize) -> usize {
    (front >> (4 * place) & 15) as usize
}

/// The same front with its parts named by first occurrence; `None` where there are too many.
fn named(parts: &[u8; PLACES]) -> Option<Front> {
    let mut name = [0u8; 2 * PLACES];
    let (mut next, mut front) = (0, 0);
    for (place, &part) in parts.iter().enumerate().filter(|&(_, &part)| part > 0) {
        if name[part as usize] == 0 {
            next += 1;
            name[part as usize] = next;
        }
        front |= Front::from(name[part as usize]) << (4 * place);
    }
    (usize::from(next) <= PARTS).then_some(front)
}

fn parts(front: Front) -> [u8; PLACES] {
    std::array::from_fn(|place| part(front, place) as u8)
}

/// The order in which nodes come: each time one that leaves the narrowest front. `None` where it gets too wide.
fn order(graph: &Graph, widest: usize) -> Option<Vec<u32>> {
    let mut best: Option<(usize, Vec<u32>)> = None;
    let mut starts: Vec<u32> = graph.nodes().collect();
    starts.sort_by_key(|&node| (graph.degree(node), node));
    for &start in starts.iter().take(4) {
        let mut left: Vec<usize> = graph.around.iter().map(Vec::len).collect();
        let mut seen = vec![false; graph.len()];
        let (mut order, mut width, mut most) = (Vec::new(), 0usize, 0);
        let mut rim: Vec<u32> = vec![start];
        while !rim.is_empty() {
            // What joins the front, less what leaves it, and then the node that was seen first.
            let (place, _) = rim.iter().enumerate().min_by_key(|&(place, &node)| {
                let near = &graph.around[node as usize];
                let back = near.iter().filter(|spoke| seen[spoke.to as usize]).count();
                let leaves =
                    near.iter().filter(|spoke| seen[spoke.to as usize] && left[spoke.to as usize] == 1).count();
                (usize::from(back < near.len()) + PLACES - leaves.min(PLACES), usize::MAX - back, place)
            })?;
            let node = rim.remove(place);
            seen[node as usize] = true;
            order.push(node);
            width += 1;
            most = most.max(width);
            for spoke in &graph.around[node as usize] {
                if seen[spoke.to as usize] {
                    for end in [node, spoke.to] {
                        left[end as usize] -= 1;
                        width -= usize::from(left[end as usize] == 0);
                    }
                } else if !rim.contains(&spoke.to) {
                    rim.push(spoke.to);
                }
            }
        }
        if order.len() == graph.nodes().count() && best.as_ref().is_none_or(|(width, _)| most < *width) {
            best = Some((most, order));
        }
    }
    best.filter(|(width, _)| *width <= widest).map(|(_, order)| order)
}

/// Finds the cheapest tree of a symmetric graph below `upper` where a front of at most so many places passes over it.
/// Of the states of each step only the `kept` most promising go on; where some were dropped for that, a tree found is
/// only perhaps cheapest.
pub(crate) fn along_front(
    graph: &Graph,
    ascent: &Ascent,
    upper: Cost,
    (widest, kept): (usize, usize),
    effort: Effort,
) -> Labelled {
    let too_many = Labelled::TooMany(ascent.bound);
    let Some(order) = order(graph, widest.min(PLACES)) else { return too_many };
    let room = upper - ascent.bound;
    let total = graph.terminals().len();
    let mut left: Vec<usize> = graph.around.iter().map(Vec::len).collect();
    let mut place_of = vec![PLACES; graph.len()];
    let mut free: Vec<usize> = (0..PLACES).rev().collect();
    let mut backs: Vec<(u32, u32)> = Vec::new();
    let mut best: Option<State> = None;
    let mut states = vec![State { front: 0, cost: 0, slack: 0, back: NO_BACK }];
    let (mut come, mut work, mut dropped) = (0, 0u64, false);
    for &node in &order {
        let Some(place) = free.pop() else { return too_many };
        place_of[node as usize] = place;
        if graph.is_terminal(node) {
            come += 1;
            for state in &mut states {
                let mut parts = parts(state.front);
                parts[place] = (PARTS + 1) as u8;
                let Some(front) = named(&parts) else { return too_many };
                state.front = front;
            }
        }
        let mut leaving: Vec<u32> = Vec::new();
        for spoke in graph.around[node as usize].iter().filter(|spoke| place_of[spoke.to as usize] < PLACES) {
            if spoke.to == node {
                continue;
            }
            let other = place_of[spoke.to as usize];
            let (cost, into) = (graph.cost[spoke.arc as usize], (spoke.arc ^ 1) as usize);
            let slack = ascent.slack[spoke.arc as usize].min(ascent.slack[into]);
            let mut layer = Layer::default();
            for state in &states {
                layer.add(*state);
                let (one, two) = (part(state.front, place), part(state.front, other));
                if state.slack + slack >= room || state.cost + cost >= upper || one == two && one > 0 {
                    continue;
                }
                let mut parts = parts(state.front);
                let (merged, gone) = if one > 0 { (one, two) } else { (two, one) };
                let merged = if merged == 0 { PARTS + 1 } else { merged } as u8;
                if gone > 0 {
                    parts.iter_mut().filter(|part| usize::from(**part) == gone).for_each(|part| *part = merged);
                }
                parts[place] = merged;
                parts[other] = merged;
                let Some(front) = named(&parts) else { return too_many };
                backs.push((state.back, spoke.arc));
                let back = (backs.len() - 1) as u32;
                layer.add(State { front, cost: state.cost + cost, slack: state.slack + slack, back });
            }
            work += layer.states.len() as u64;
            if work > effort.work || backs.len() > effort.labels * 8 || (effort.stop)() {
                return too_many;
            }
            states = layer.states;
            if states.len() > kept {
                dropped = true;
                states.select_nth_unstable_by_key(kept, |state| (state.slack, state.cost, state.front));
                states.truncate(kept);
            }
            for end in [node, spoke.to] {
                left[end as usize] -= 1;
                if left[end as usize] == 0 {
                    leaving.push(end);
                }
            }
        }
        for end in leaving {
            let place = place_of[end as usize];
            place_of[end as usize] = PLACES;
            free.push(place);
            let mut layer = Layer::default();
            for state in &states {
                let own = part(state.front, place);
                let rest = state.front & !(15 << (4 * place));
                if own == 0 || (0..PLACES).any(|other| part(rest, other) == own) {
                    let Some(front) = named(&parts(rest)) else { return too_many };
                    layer.add(State { front, ..*state });
                } else if rest == 0 && come == total && best.is_none_or(|best| state.cost < best.cost) {
                    best = Some(*state);
                }
            }
            states = layer.states;
        }
    }
    match best {
        Some(state) if state.cost < upper => {
            let mut arcs = Vec::new();
            let mut back = state.back;
            while back != NO_BACK {
                let (before, arc) = backs[back as usize];
                arcs.push(arc);
                back = before;
            }
            if dropped { Labelled::Perhaps(arcs) } else { Labelled::Cheapest(arcs) }
        }
        _ if dropped => too_many,
        _ => Labelled::NoneCheaper,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::steiner::cases::case;
    use crate::steiner::dual_ascent::ascend;
    use crate::steiner::graph::History;
    use crate::steiner::instance::{Instance, Line};
    use crate::steiner::label_setting::label_setting;

    /// A square grid whose lines cost 3 to 7, with a terminal at every fifth node.
    fn grid(side: usize) -> Graph {
        let mut lines = Vec::new();
        for node in 0..side * side {
            let cost = |salt: usize| ((node * 7 + salt * 5) % 11 % 5 + 3) as Cost;
            let mut line = |to: usize, there| lines.push(Line { from: node, to, there, back: Some(there) });
            if node % side + 1 < side {
                line(node + 1, cost(1));
            }
            if node / side + 1 < side {
                line(node + side, cost(2));
            }
        }
        let terminals = (0..side * side).step_by(5).collect();
        let instance = Instance { nodes: side * side, lines, terminals, ..Instance::default() };
        case(&instance, &mut History::default(), 0, &[]).0
    }

    fn effort(stop: &mut dyn FnMut() -> bool) -> Effort<'_> {
        Effort { labels: 1 << 20, work: 1 << 30, stop }
    }

    fn cost(graph: &Graph, arcs: &[u32]) -> Cost {
        arcs.iter().map(|&arc| graph.cost[arc as usize]).sum()
    }

    /// The two ways of programming share no recursion.
    #[test]
    fn a_front_and_sets_of_terminals_give_the_same_cost_and_few_states_none_below() {
        for side in 3..=7 {
            let graph = grid(side);
            let ascent = ascend(&graph, 0, None, true);
            let upper = 10_000;
            let by_front = along_front(&graph, &ascent, upper, (20, usize::MAX), effort(&mut || false));
            let Labelled::Cheapest(arcs) = by_front else { panic!("side {side}: the front settles it") };
            let by_sets = label_setting(&graph, 0, &ascent, upper, effort(&mut || false));
            let Labelled::Cheapest(others) = by_sets else { panic!("side {side}: the sets settle it") };
            let least = cost(&graph, &arcs);
            assert_eq!(least, cost(&graph, &others), "side {side}");
            assert!(ascent.bound <= least);
            let none = along_front(&graph, &ascent, least, (20, usize::MAX), effort(&mut || false));
            assert!(matches!(none, Labelled::NoneCheaper), "side {side}: nothing is cheaper than {least}");
            for kept in [1, 3, 10] {
                match along_front(&graph, &ascent, upper, (20, kept), effort(&mut || false)) {
                    Labelled::Perhaps(arcs) => assert!(cost(&graph, &arcs) >= least, "side {side}"),
                    Labelled::TooMany(bound) => assert!(bound <= least),
                    Labelled::Cheapest(arcs) => assert_eq!(cost(&graph, &arcs), least),
                    Labelled::NoneCheaper => panic!("side {side}: there is a tree"),
                }
            }
        }
    }

    #[test]
    fn a_front_that_gets_too_wide_or_is_stopped_claims_only_the_bound() {
        let graph = grid(6);
        let ascent = ascend(&graph, 0, None, true);
        let narrow = along_front(&graph, &ascent, 10_000, (3, usize::MAX), effort(&mut || false));
        let stopped = along_front(&graph, &ascent, 10_000, (20, usize::MAX), effort(&mut || true));
        for result in [narrow, stopped] {
            assert!(matches!(result, Labelled::TooMany(bound) if bound == ascent.bound));
        }
    }
}
