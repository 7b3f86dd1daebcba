//! The parts of a problem that touch no other, as the checker sees them: trees, groups, and links by the way they flow.

use crate::problem::{Problem, SupplyNeed};
use crate::solution::Forced;

/// A price, or what things cost at prices: one integer, ordered as costs are.
pub(super) type Price = i128;

/// The price of a cost.
pub(super) fn price_of(cost: crate::problem::Cost) -> Price {
    (Price::from(cost.cents) << 32) + (Price::from(cost.openings) << 16) + Price::from(cost.devices)
}

/// The cost that has this price.
pub(super) fn cost_of(price: Price) -> crate::problem::Cost {
    let low = |price: Price| {
        let bits = price & 0xffff;
        if bits >= 0x8000 { bits - 0x1_0000 } else { bits }
    };
    let devices = low(price);
    let above = (price - devices) >> 16;
    let openings = low(above);
    let whole = |part: Price| i64::try_from(part).unwrap_or(i64::MAX);
    crate::problem::Cost { cents: whole((above - openings) >> 16), openings: whole(openings), devices: whole(devices) }
}

/// A link flowing one way.
#[derive(Debug)]
pub(super) struct Flow {
    pub link: usize,
    pub forward: bool,
    pub tail: usize,
    pub head: usize,
    /// The nodes it lands at; one at which both ends land stands twice.
    pub lands: Vec<(usize, usize)>,
    /// The tree in which it hangs a node elsewhere, the node, and what that then hangs below.
    pub hangs: Option<(usize, usize, Option<usize>)>,
    /// What it costs by grade, as far as its tail carries.
    pub prices: Vec<Price>,
}

/// A part that touches no other.
#[derive(Debug, Default)]
pub(super) struct Area {
    pub trees: Vec<usize>,
    /// The groups into which something may flow.
    pub groups: Vec<usize>,
    pub flows: Vec<Flow>,
    /// By group of the problem: the flows into it.
    pub into: Vec<Vec<usize>>,
    /// The flows of each link that is laid down to be chosen.
    pub laid_down: Vec<Vec<usize>>,
}

/// A problem and what is laid down for it.
pub(super) struct Question<'p> {
    pub problem: &'p Problem,
    /// By tree: whether each root option is allowed.
    pub roots: Vec<Vec<bool>>,
    /// By tree and node: whether each option is allowed.
    pub options: Vec<Vec<Vec<bool>>>,
    /// By link.
    links: Vec<Option<bool>>,
    /// Whether what is laid down contradicts itself.
    contradicts: bool,
}

impl<'p> Question<'p> {
    /// Reads what is laid down; `None` where it speaks of what is not there.
    pub fn new(problem: &'p Problem, forced: &[Forced]) -> Option<Self> {
        let all = |count: usize| vec![true; count];
        let mut question = Self {
            problem,
            roots: problem.trees.iter().map(|tree| all(tree.root_options.len())).collect(),
            options: problem
                .trees
                .iter()
                .map(|tree| tree.nodes.iter().map(|node| all(node.options.len())).collect())
                .collect(),
            links: vec![None; problem.links.len()],
            contradicts: false,
        };
        for one in forced {
            match one {
                Forced::Root { tree, allowed } => narrow(question.roots.get_mut(*tree)?, allowed)?,
                Forced::Option { tree, node, allowed } => {
                    narrow(question.options.get_mut(*tree)?.get_mut(*node)?, allowed)?;
                }
                Forced::Link { link, chosen } => {
                    let known = question.links.get_mut(*link)?;
                    question.contradicts |= known.is_some_and(|known| known != *chosen);
                    *known = Some(*chosen);
                }
            }
        }
        Some(question)
    }

    /// The parts, those with the lowest tree first, then those without a tree; `None` where a link that is laid down to be
    /// chosen can never be.
    pub fn areas(&self) -> Option<Vec<Area>> {
        let problem = self.problem;
        let flows: Vec<Flow> = (0..problem.links.len()).flat_map(|link| self.flows_of(link)).collect();
        let hopeless = |(link, chosen): (usize, &Option<bool>)| {
            *chosen == Some(true) && !flows.iter().any(|flow| flow.link == link)
        };
        if self.contradicts || self.links.iter().enumerate().any(hopeless) {
            return None;
        }
        let mut is_open = vec![false; problem.groups.len()];
        flows.iter().for_each(|flow| is_open[flow.head] = true);
        // Trees come before groups, so that the lowest member of a part with a tree is its lowest tree.
        let first_group = problem.trees.len();
        let mut lowest: Vec<usize> = (0..first_group + problem.groups.len()).collect();
        for (tree, given) in problem.trees.iter().enumerate() {
            for node in given.nodes.iter().filter(|node| is_open[node.group]) {
                join(&mut lowest, tree, first_group + node.group);
            }
        }
        for flow in &flows {
            if !problem.groups[flow.tail].source {
                join(&mut lowest, first_group + flow.tail, first_group + flow.head);
            }
            for (tree, _) in &flow.lands {
                join(&mut lowest, *tree, first_group + flow.head);
            }
        }
        let mut areas: Vec<(usize, Area)> = Vec::new();
        let mut place_of = vec![None; lowest.len()];
        for place in 0..lowest.len() {
            if place >= first_group && !is_open[place - first_group] {
                continue;
            }
            let lowest = end_of(&lowest, place);
            let at = *place_of[lowest].get_or_insert_with(|| {
                areas.push((lowest, Area::default()));
                areas.len() - 1
            });
            match place.checked_sub(first_group) {
                None => areas[at].1.trees.push(place),
                Some(group) => areas[at].1.groups.push(group),
            }
        }
        for flow in flows {
            if let Some(at) = place_of[end_of(&lowest, first_group + flow.head)] {
                areas[at].1.flows.push(flow);
            }
        }
        for (_, area) in &mut areas {
            let mut laid_down = std::collections::BTreeMap::<usize, Vec<usize>>::new();
            for (index, flow) in area.flows.iter().enumerate().filter(|(_, flow)| self.links[flow.link] == Some(true)) {
                laid_down.entry(flow.link).or_default().push(index);
            }
            area.laid_down = laid_down.into_values().collect();
            area.into = vec![Vec::new(); problem.groups.len()];
            area.flows.iter().enumerate().for_each(|(index, flow)| area.into[flow.head].push(index));
        }
        Some(areas.into_iter().map(|(_, area)| area).collect())
    }

    /// The ways in which a link may flow at all.
    fn flows_of(&self, index: usize) -> Vec<Flow> {
        let (problem, link) = (self.problem, &self.problem.links[index]);
        let trees = [link.from.lands_at, link.to.lands_at].map(|end| end.map(|(tree, _)| tree));
        let leaves_its_tree = link.reparents && matches!(trees, [Some(from), Some(to)] if from != to);
        if self.links[index] == Some(false) || link.from.group == link.to.group || leaves_its_tree {
            return Vec::new();
        }
        let mut flows = Vec::new();
        for (forward, from, to) in [(true, link.from, link.to), (false, link.to, link.from)] {
            if problem.groups[to.group].source || (!forward && !link.both_ways) {
                continue;
            }
            let below = link.from.lands_at.map(|(_, node)| node);
            let carried = problem.groups[from.group].carries.saturating_add(1);
            flows.push(Flow {
                link: index,
                forward,
                tail: from.group,
                head: to.group,
                lands: [link.from, link.to].iter().filter_map(|end| end.lands_at).collect(),
                hangs: link.to.lands_at.filter(|_| link.reparents).map(|(tree, node)| (tree, node, below)),
                prices: link.cost_by_grade.iter().take(carried).map(|cost| price_of(*cost)).collect(),
            });
        }
        flows
    }

    /// Whether an option may be chosen at a node while a flow that carries at least a grade is chosen.
    pub fn goes_with(&self, flow: &Flow, grade: usize, at: (usize, usize), option: usize) -> bool {
        let node = &self.problem.trees[at.0].nodes[at.1];
        let given = &node.options[option];
        let landings = flow.lands.iter().filter(|place| **place == at).count();
        let has_room = landings == 0 || given.most_landings.iter().skip(grade).any(|most| landings <= *most as usize);
        let is_supplied = node.group == flow.head || node.group == flow.tail;
        self.options[at.0][at.1][option] && has_room && !(is_supplied && given.supply == SupplyNeed::Unsupplied)
    }
}

fn narrow(known: &mut [bool], allowed: &[usize]) -> Option<()> {
    if allowed.iter().any(|option| *option >= known.len()) {
        return None;
    }
    for (option, known) in known.iter_mut().enumerate() {
        *known &= allowed.contains(&option);
    }
    Some(())
}

fn join(lowest: &mut [usize], one: usize, other: usize) {
    let (one, other) = (end_of(lowest, one), end_of(lowest, other));
    lowest[one.max(other)] = one.min(other);
}

fn end_of(lowest: &[usize], mut place: usize) -> usize {
    while lowest[place] != place {
        place = lowest[place];
    }
    place
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::Cost;

    #[test]
    fn a_cost_comes_back_from_its_price() {
        for cents in [-1_000_000, -1, 0, 7, 1 << 60] {
            for openings in [-16_384, -1, 0, 3, 16_384] {
                for devices in [-16_384, -2, 0, 5, 16_384] {
                    let cost = Cost { cents, openings, devices };
                    assert_eq!(cost_of(price_of(cost)), cost);
                }
            }
        }
    }
}
