//! Every choice there is, tried one after the other: all sets of links and ways of flow, all root and node options, all
//! load sides. Shares nothing with the search.

use optimizer::{Cost, Forced, Marks, Problem, SupplyNeed};
use std::collections::BTreeSet;

/// What ranks a choice: its cost, how many links it has, the sum of their indices.
pub type Rank = (Cost, usize, usize);

/// Returns the least rank, or `None` where no choice holds.
pub fn least(problem: &Problem, forced: &[Forced]) -> Option<Rank> {
    let ranks = all_flows(problem, forced).into_iter().filter_map(|flows| {
        let (mut cost, _, trees) = under_flows(problem, forced, &flows)?;
        for tree in trees {
            let mut best: Option<Cost> = None;
            tree.each(&mut |cost| best = Some(best.map_or(cost, |before| before.min(cost))));
            cost = cost + best?;
        }
        Some((cost, flows.len(), flows.iter().map(|flow| flow.link).sum()))
    });
    ranks.min()
}

/// Cents, openings, and by group whether it is supplied.
pub type Whole = (i64, i64, Vec<bool>);

/// Returns what every choice that holds comes to.
pub fn wholes(problem: &Problem, forced: &[Forced]) -> BTreeSet<Whole> {
    let mut wholes = BTreeSet::new();
    for flows in all_flows(problem, forced) {
        let Some((cost, supplied, trees)) = under_flows(problem, forced, &flows) else { continue };
        let mut sums = BTreeSet::from([(cost.cents, cost.openings)]);
        for tree in trees {
            let mut of_tree = BTreeSet::new();
            tree.each(&mut |cost| {
                of_tree.insert((cost.cents, cost.openings));
            });
            sums = sums.iter().flat_map(|sum| of_tree.iter().map(|one| (sum.0 + one.0, sum.1 + one.1))).collect();
        }
        wholes.extend(sums.into_iter().map(|(cents, openings)| (cents, openings, supplied.clone())));
    }
    wholes
}

/// Every set of links with their ways that is as laid down.
fn all_flows(problem: &Problem, forced: &[Forced]) -> Vec<Vec<Flow>> {
    let links = problem.links.len() as u32;
    let mut all = Vec::new();
    for code in 0..3_usize.pow(links) {
        let ways: Vec<usize> = (0..links).map(|link| code / 3_usize.pow(link) % 3).collect();
        let as_laid_down = forced.iter().all(|one| match one {
            Forced::Link { link, chosen } => (ways[*link] > 0) == *chosen,
            _ => true,
        });
        if as_laid_down {
            let chosen = ways.iter().enumerate().filter(|(_, way)| **way > 0);
            all.push(chosen.map(|(link, way)| Flow { link, back: *way == 2 }).collect());
        }
    }
    all
}

#[derive(Clone, Copy)]
struct Flow {
    link: usize,
    back: bool,
}

/// What the links cost, what they supply, and the trees under them; nothing where they cannot be.
fn under_flows<'p>(
    problem: &'p Problem,
    forced: &'p [Forced],
    flows: &[Flow],
) -> Option<(Cost, Vec<bool>, Vec<Enumeration<'p>>)> {
    let tail = |flow: &Flow| {
        let link = &problem.links[flow.link];
        if flow.back { link.to.group } else { link.from.group }
    };
    let head = |flow: &Flow| {
        let link = &problem.links[flow.link];
        if flow.back { link.from.group } else { link.to.group }
    };
    if flows.iter().any(|flow| flow.back && !problem.links[flow.link].both_ways) {
        return None;
    }
    // Supply spreads from the sources, each link once, and never into what already has it.
    let mut supplied: Vec<bool> = problem.groups.iter().map(|group| group.source).collect();
    let mut order: Vec<usize> = Vec::new();
    while let Some(next) = (0..flows.len()).find(|flow| !order.contains(flow) && supplied[tail(&flows[*flow])]) {
        if supplied[head(&flows[next])] {
            return None;
        }
        supplied[head(&flows[next])] = true;
        order.push(next);
    }
    if order.len() < flows.len() {
        return None;
    }
    let mut grades = vec![0; flows.len()];
    for &place in order.iter().rev() {
        let group = head(&flows[place]);
        let beyond = (0..flows.len()).filter(|other| tail(&flows[*other]) == group).map(|other| grades[other]).max();
        grades[place] = problem.groups[group].grade.max(beyond.unwrap_or(0));
    }
    let mut cost = Cost::default();
    for (flow, grade) in flows.iter().zip(&grades) {
        if *grade > problem.groups[tail(flow)].carries {
            return None;
        }
        cost = cost + *problem.links[flow.link].cost_by_grade.get(*grade)?;
    }
    let mut trees = Vec::new();
    for tree in 0..problem.trees.len() {
        let landings = landings(problem, flows, &grades, tree);
        let (parents, can_be_behind) = hanging(problem, flows, tree)?;
        let supplied = supplied.clone();
        trees.push(Enumeration { problem, forced, tree, parents, can_be_behind, supplied, landings });
    }
    Some((cost, supplied, trees))
}

/// For each node how many links land, and the highest grade of them.
fn landings(problem: &Problem, flows: &[Flow], grades: &[usize], tree: usize) -> Vec<(u32, usize)> {
    let mut landings = vec![(0, 0); problem.trees[tree].nodes.len()];
    for (flow, grade) in flows.iter().zip(grades) {
        let link = &problem.links[flow.link];
        for (of, node) in [link.from.lands_at, link.to.lands_at].into_iter().flatten() {
            if of == tree {
                landings[node] = (landings[node].0 + 1, landings[node].1.max(*grade));
            }
        }
    }
    landings
}

type Hanging = (Vec<Option<usize>>, Vec<bool>);

fn hanging(problem: &Problem, flows: &[Flow], tree: usize) -> Option<Hanging> {
    let nodes = &problem.trees[tree].nodes;
    let mut parents: Vec<Option<usize>> = nodes.iter().map(|node| node.parent).collect();
    let mut can_be_behind: Vec<bool> = nodes.iter().map(|node| node.behind_load && node.parent.is_some()).collect();
    let mut hung = Vec::new();
    for flow in flows {
        let link = &problem.links[flow.link];
        if let (true, Some((of, node))) = (link.reparents, link.to.lands_at) {
            if link.from.lands_at.is_some_and(|(from, _)| from != of) || hung.contains(&(of, node)) {
                return None;
            }
            hung.push((of, node));
            if of == tree {
                parents[node] = link.from.lands_at.map(|(_, parent)| parent);
                can_be_behind[node] = false;
            }
        }
    }
    for node in 0..nodes.len() {
        let mut up = parents[node];
        for _ in 0..nodes.len() {
            up = up.and_then(|up| parents[up]);
        }
        if up.is_some() {
            return None;
        }
    }
    Some((parents, can_be_behind))
}

struct Enumeration<'p> {
    problem: &'p Problem,
    forced: &'p [Forced],
    tree: usize,
    parents: Vec<Option<usize>>,
    can_be_behind: Vec<bool>,
    supplied: Vec<bool>,
    landings: Vec<(u32, usize)>,
}

impl Enumeration<'_> {
    /// Tells the cost of every choice that holds.
    fn each(&self, tell: &mut dyn FnMut(Cost)) {
        let tree = &self.problem.trees[self.tree];
        for root in 0..tree.root_options.len() {
            let mut options = vec![0; tree.nodes.len()];
            let mut behind = vec![false; tree.nodes.len()];
            self.try_all(root, 0, &mut options, &mut behind, tell);
        }
    }

    fn try_all(
        &self,
        root: usize,
        node: usize,
        options: &mut Vec<usize>,
        behind: &mut Vec<bool>,
        tell: &mut dyn FnMut(Cost),
    ) {
        let tree = &self.problem.trees[self.tree];
        if node == tree.nodes.len() {
            if self.holds(root, options, behind) {
                let nodes = tree.nodes.iter().zip(options).map(|(node, option)| node.options[*option].cost);
                tell(tree.root_options[root].cost + nodes.sum());
            }
            return;
        }
        for option in 0..tree.nodes[node].options.len() {
            for side in [false, true] {
                if side && !self.can_be_behind[node] {
                    continue;
                }
                options[node] = option;
                behind[node] = side;
                self.try_all(root, node + 1, options, behind, tell);
            }
        }
    }

    fn holds(&self, root: usize, options: &[usize], behind: &[bool]) -> bool {
        let tree = &self.problem.trees[self.tree];
        let as_laid_down = self.forced.iter().all(|one| match one {
            Forced::Option { tree, node, allowed } => *tree != self.tree || allowed.contains(&options[*node]),
            Forced::Root { tree, allowed } => *tree != self.tree || allowed.contains(&root),
            Forced::Link { .. } => true,
        });
        let at_root = &tree.root_options[root];
        let burden: i64 = tree.nodes.iter().map(|node| node.burden).sum();
        let root_bears = at_root.gives == Marks::NONE || at_root.burden_limit.is_none_or(|limit| burden <= limit);
        as_laid_down && root_bears && (0..tree.nodes.len()).all(|node| self.node_holds(root, options, behind, node))
    }

    fn node_holds(&self, root: usize, options: &[usize], behind: &[bool], node: usize) -> bool {
        let tree = &self.problem.trees[self.tree];
        let option = &tree.nodes[node].options[options[node]];
        let seen = self.seen(root, options, behind, node);
        if option.needs.0 & !(seen.0 | option.own.0) != 0 {
            return false;
        }
        let supply_holds = match option.supply {
            SupplyNeed::Any => true,
            SupplyNeed::Supplied => self.supplied[tree.nodes[node].group],
            SupplyNeed::Unsupplied => !self.supplied[tree.nodes[node].group],
        };
        let (landings, grade) = self.landings[node];
        let landings_hold = landings == 0 || option.most_landings.get(grade).copied().unwrap_or(0) >= landings;
        if !supply_holds || !landings_hold {
            return false;
        }
        let (mut count, mut burden) = (0, tree.nodes[node].burden);
        for child in (0..behind.len()).filter(|child| self.parents[*child] == Some(node) && behind[*child]) {
            let of_child = self.subtree(child);
            count += of_child.0;
            burden += of_child.1;
        }
        let binds = option.own.0 | option.gives.0 != 0;
        option.count_limit.is_none_or(|limit| count <= limit)
            && (!binds || option.burden_limit.is_none_or(|limit| burden <= limit))
    }

    fn seen(&self, root: usize, options: &[usize], behind: &[bool], node: usize) -> Marks {
        let tree = &self.problem.trees[self.tree];
        match self.parents[node] {
            None => tree.root_options[root].gives,
            Some(parent) => {
                let above = self.seen(root, options, behind, parent);
                let gives = tree.nodes[parent].options[options[parent]].gives;
                Marks(above.0 | if behind[node] { gives.0 } else { 0 })
            }
        }
    }

    fn subtree(&self, node: usize) -> (u32, i64) {
        let own = &self.problem.trees[self.tree].nodes[node];
        let children = (0..self.parents.len()).filter(|child| self.parents[*child] == Some(node));
        children.map(|child| self.subtree(child)).fold((own.count, own.burden), |sum, of| (sum.0 + of.0, sum.1 + of.1))
    }
}
