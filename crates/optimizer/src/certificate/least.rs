//! What a tree costs at least at given charges, worked out from its leaves to its root.

use std::collections::BTreeMap;

use super::area::{Price, Question, price_of};
use super::known::Supply;
use crate::problem::{Marks, NodeOption, SupplyNeed, Tree};

/// Whether a node may yet be hung elsewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Elsewhere {
    /// It stays.
    Never,
    /// By a link that supplies its group.
    Supplied,
    /// By some other link.
    Anyhow,
}

/// What the links mean for a node of a tree.
#[derive(Clone, Debug)]
pub(super) struct Outlook {
    /// Below what it hangs, and whether it can be behind that one's load side.
    pub parent: Option<usize>,
    pub behind_load: bool,
    pub supply: Supply,
    /// What it is charged for taking its supply.
    pub charge: Price,
    /// What its options are credited.
    pub credits: BTreeMap<usize, Price>,
    /// How many links land here at least, and the highest grade that one of those carries at least.
    pub landings: u32,
    pub grade: usize,
    /// The least grade of the link that lands here as soon as the supply is taken, where one does.
    pub arrives: Option<usize>,
    pub elsewhere: Elsewhere,
}

/// Returns what a tree costs at least, or nothing where none of its choices can hold. Landings and grades are final
/// where all is decided.
pub(super) fn least(question: &Question<'_>, tree: usize, outlooks: &[Outlook], is_final: bool) -> Option<Price> {
    let given = &question.problem.trees[tree];
    let order = from_the_root_down(outlooks)?;
    let mut solver = Solver {
        question,
        tree,
        given,
        outlooks,
        is_final,
        sights: sights(given),
        children: vec![Vec::new(); outlooks.len()],
        loads: given.nodes.iter().map(|node| (u64::from(node.count), i128::from(node.burden))).collect(),
        in_place: vec![[None; 16]; outlooks.len()],
        elsewhere: vec![None; outlooks.len()],
    };
    for (node, outlook) in outlooks.iter().enumerate() {
        if let Some(parent) = outlook.parent {
            solver.children[parent].push(node);
        }
    }
    for node in order.into_iter().rev() {
        solver.solve(node);
    }
    let burden: i128 = given.nodes.iter().map(|node| i128::from(node.burden)).sum();
    let of_root = |(index, root): (usize, &crate::problem::RootOption)| {
        let bears = root.gives == Marks::NONE || root.burden_limit.is_none_or(|limit| burden <= i128::from(limit));
        if !question.roots[tree][index] || !bears {
            return None;
        }
        let below = (0..outlooks.len()).filter(|node| outlooks[*node].parent.is_none());
        below.map(|node| solver.under(node, root.gives)).sum::<Option<Price>>().map(|sum| sum + price_of(root.cost))
    };
    given.root_options.iter().enumerate().filter_map(of_root).min()
}

/// All nodes, each after the one it hangs below; `None` where they hang in a ring.
pub(super) fn from_the_root_down(outlooks: &[Outlook]) -> Option<Vec<usize>> {
    let mut children = vec![Vec::new(); outlooks.len()];
    let mut order = Vec::with_capacity(outlooks.len());
    for (node, outlook) in outlooks.iter().enumerate() {
        match outlook.parent {
            Some(parent) => children[parent].push(node),
            None => order.push(node),
        }
    }
    let mut next = 0;
    while let Some(&node) = order.get(next) {
        order.extend_from_slice(&children[node]);
        next += 1;
    }
    (order.len() == outlooks.len()).then_some(order)
}

/// Every set of marks that can be seen in the tree.
fn sights(tree: &Tree) -> Vec<Marks> {
    let given = |node: &crate::problem::Node| node.options.iter().map(|option| option.gives).collect::<Vec<_>>();
    let given: Vec<Marks> = tree.nodes.iter().flat_map(given).collect();
    let mut seen: Vec<Marks> = tree.root_options.iter().map(|root| root.gives).collect();
    loop {
        seen.sort_unstable();
        seen.dedup();
        let mut more: Vec<Marks> = seen.iter().flat_map(|sight| given.iter().map(|gives| *sight | *gives)).collect();
        more.retain(|sight| !seen.contains(sight));
        if more.is_empty() {
            return seen;
        }
        seen.extend(more);
    }
}

struct Solver<'s> {
    question: &'s Question<'s>,
    tree: usize,
    given: &'s Tree,
    outlooks: &'s [Outlook],
    is_final: bool,
    sights: Vec<Marks>,
    children: Vec<Vec<usize>>,
    /// The count and burden of each subtree without the nodes that may hang elsewhere.
    loads: Vec<(u64, i128)>,
    /// By node and set of marks seen: what its subtree costs at least in its place.
    in_place: Vec<[Option<Price>; 16]>,
    /// By node: what its subtree costs at least elsewhere.
    elsewhere: Vec<Option<Price>>,
}

impl Solver<'_> {
    fn solve(&mut self, node: usize) {
        for child in self.children[node].clone() {
            if self.outlooks[child].elsewhere == Elsewhere::Never {
                let (count, burden) = self.loads[child];
                self.loads[node].0 += count;
                self.loads[node].1 += burden;
            }
        }
        for sight in self.sights.clone() {
            self.in_place[node][usize::from(sight.0)] = self.at(node, sight, false);
        }
        let must_take = match self.outlooks[node].elsewhere {
            Elsewhere::Never => return,
            Elsewhere::Supplied => true,
            Elsewhere::Anyhow => false,
        };
        self.elsewhere[node] = self.sights.iter().filter_map(|sight| self.at(node, *sight, must_take)).min();
    }

    /// A subtree that sees these marks, unless it hangs elsewhere.
    fn under(&self, node: usize, sight: Marks) -> Option<Price> {
        lesser(self.in_place[node][usize::from(sight.0)], self.elsewhere[node])
    }

    fn at(&self, node: usize, sight: Marks, must_take: bool) -> Option<Price> {
        let options = self.given.nodes[node].options.iter().enumerate();
        let allowed = options.filter(|(index, _)| self.question.options[self.tree][node][*index]);
        let of_option = |(index, option): (usize, &NodeOption)| {
            let own = self.own(node, index, option, sight, must_take)?;
            Some(own + self.below(node, option, sight)?)
        };
        allowed.filter_map(of_option).min()
    }

    /// The option itself, with the supply taken or not.
    fn own(&self, node: usize, index: usize, option: &NodeOption, sight: Marks, must_take: bool) -> Option<Price> {
        if !(sight | option.own).covers(option.needs) {
            return None;
        }
        let outlook = &self.outlooks[node];
        let credit = outlook.credits.get(&index).copied().unwrap_or(0);
        let may_take = outlook.supply != Supply::No && option.supply != SupplyNeed::Unsupplied;
        let may_leave = outlook.supply != Supply::Yes && option.supply != SupplyNeed::Supplied && !must_take;
        // What is known to be supplied lands, if it lands here for certain, among the landings.
        let arrives = outlook.arrives.filter(|_| outlook.supply == Supply::Open);
        let lands_then = u32::from(arrives.is_some());
        let grade_then = arrives.map_or(outlook.grade, |grade| grade.max(outlook.grade));
        let taken =
            (may_take && self.has_room(option, outlook.landings + lands_then, grade_then)).then_some(outlook.charge);
        let left = (may_leave && self.has_room(option, outlook.landings, outlook.grade)).then_some(0);
        lesser(taken, left).map(|charge| price_of(option.cost) - credit + charge)
    }

    fn has_room(&self, option: &NodeOption, landings: u32, grade: usize) -> bool {
        let most = option.most_landings.get(grade..).unwrap_or_default();
        let most = if self.is_final { most.get(..1).unwrap_or_default() } else { most };
        landings == 0 || most.iter().any(|most| landings <= *most)
    }

    /// The children under an option, those for which that is better behind its load side as far as its limits allow.
    fn below(&self, node: usize, option: &NodeOption, sight: Marks) -> Option<Price> {
        let binds = option.own | option.gives != Marks::NONE;
        let burden_limit = option.burden_limit.filter(|_| binds).map_or(i128::MAX, i128::from);
        let count_limit = option.count_limit.map_or(u64::MAX, u64::from);
        let beyond = sight | option.gives;
        let own = (0_u64, i128::from(self.given.nodes[node].burden));
        if own.1 > burden_limit {
            return None;
        }
        let fits = |load: &(u64, i128)| load.0 <= count_limit && load.1 <= burden_limit;
        let mut children: Vec<Child> = Vec::with_capacity(self.children[node].len());
        for &child in &self.children[node] {
            let in_front = self.under(child, sight);
            let behind = self.in_place[child][usize::from(beyond.0)];
            let is_better = |behind: &Price| in_front.is_none_or(|in_front| *behind < in_front);
            let behind = behind.filter(|behind| self.outlooks[child].behind_load && is_better(behind));
            children.push((self.loads[child], in_front, behind));
        }
        let wanted = children.iter().filter(|(.., behind)| behind.is_some());
        if fits(&wanted.fold(own, |sum, (load, ..)| (sum.0 + load.0, sum.1 + load.1))) {
            return children.into_iter().map(|(_, in_front, behind)| behind.or(in_front)).sum();
        }
        // What is behind the load side so far, and the least that all children so far cost with that.
        let mut ways = vec![(own, 0)];
        for (load, in_front, behind) in children {
            let mut next = Vec::new();
            for (so_far, price) in ways {
                next.extend(in_front.map(|in_front| (so_far, price + in_front)));
                let with_it = (so_far.0 + load.0, so_far.1 + load.1);
                next.extend(behind.filter(|_| fits(&with_it)).map(|behind| (with_it, price + behind)));
            }
            ways = unbeaten(next);
        }
        ways.into_iter().map(|(_, price)| price).min()
    }
}

/// A child's load, and what it costs in front of the load side and, where that is less, behind it.
type Child = ((u64, i128), Option<Price>, Option<Price>);

type Way = ((u64, i128), Price);

/// The ways than which no other is as light and as cheap.
fn unbeaten(mut ways: Vec<Way>) -> Vec<Way> {
    ways.sort_unstable();
    let mut kept: Vec<Way> = Vec::with_capacity(ways.len());
    for way in ways {
        if !kept.iter().any(|other| other.0.1 <= way.0.1 && other.1 <= way.1) {
            kept.push(way);
        }
    }
    kept
}

fn lesser(one: Option<Price>, other: Option<Price>) -> Option<Price> {
    one.into_iter().chain(other).min()
}
