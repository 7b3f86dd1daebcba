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
                let leaves = near.iter().filter(|spoke| seen[spoke.to as usize] && left[spoke.to as usize] == 1).count();
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
pub(crate) fn along_front(graph: &Graph, ascent: &Ascent, upper: Cost, widest: usize, effort: Effort) -> Labelled {
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
    let (mut come, mut work) = (0, 0u64);
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
            Labelled::Cheapest(arcs)
        }
        _ => Labelled::NoneCheaper,
    }
}
