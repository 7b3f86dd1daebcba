//! The cheapest whole by trying everything: every set of routes each way round, every panel choice, every candidate,
//! every load side. It walks the dwelling itself and knows nothing of the optimizer.

use dwelling::{BoxIndex, Feed, RouteEnd, RouteKind};
use estimate::Price;
use remedies::{AtPanel, Candidate, Device, Planned, WayEnd};
use std::collections::BTreeMap;

/// Cents with the weights of shortfalls, openings, devices.
pub type Sum = (i64, i64, i64);

fn add(left: Sum, right: Sum) -> Sum {
    (left.0 + right.0, left.1 + right.1, left.2 + right.2)
}

const GFCI: u8 = 1;
/// Published: UL 943 Class A, no trip below 4 mA, as trade texts state it.
const MAY_TRIP_FROM_MICROAMPERES: i64 = 4_000;
/// Published: UL 101, 0.5 mA for cord-connected equipment, as trade texts state it.
const LEAKAGE_OF_EACH: i64 = 500;

/// A place that a ground can be taken from or brought to.
#[derive(Clone, Copy, PartialEq)]
enum Place {
    /// A bonded group, or a junction of the ways that the tool built.
    Group(usize),
    /// A panel or a source.
    Elsewhere,
}

/// A route that may be bought, as bought in one of its ways.
struct Bought {
    from: WayEnd,
    to: WayEnd,
    /// The box that it feeds anew, and from what.
    moves: Option<(BoxIndex, RouteEnd)>,
    openings: i64,
    prices: Vec<Price>,
}

/// What a set of routes leaves behind.
struct Laid {
    cost: Sum,
    grounded: Vec<bool>,
    /// By box: how many routes end there, and the largest grade of them.
    landings: Vec<(u32, usize)>,
    /// By box: what feeds it.
    fed_by: Vec<Option<BoxIndex>>,
    moved: Vec<bool>,
}

/// What is done with one box: which candidate, and whether it hangs behind the load side of what feeds it.
#[derive(Clone, Copy)]
struct Done<'a> {
    candidate: &'a Candidate,
    behind: bool,
    sees: u8,
}

/// What was reckoned before of a tree, by what the routes leave of grounds, landings and feeding.
type Known = BTreeMap<(usize, Vec<bool>, Vec<(u32, usize)>, Vec<Option<BoxIndex>>, Vec<bool>), Option<Sum>>;

/// The least that any lawful whole of these choices costs; nothing where there is none.
pub fn least(plan: &Planned) -> Option<Sum> {
    let mut best: Option<Sum> = None;
    let mut known = Known::new();
    every_set(plan, &mut |laid| {
        let mut total = Some(laid.cost);
        for tree in 0..plan.assembled.boxes.len() {
            let left = total.filter(|total| best.is_none_or(|best| *total < best));
            let key = || (tree, laid.grounded.clone(), laid.landings.clone(), laid.fed_by.clone(), laid.moved.clone());
            let of_tree = |_: Sum| *known.entry(key()).or_insert_with(|| least_of_tree(plan, laid, tree));
            total = left.and_then(|total| Some(add(total, left.and_then(of_tree)?)));
        }
        best = match (best, total) {
            (Some(best), Some(total)) => Some(best.min(total)),
            (best, total) => best.or(total),
        };
    });
    best
}

/// What the least whole costs with each set of routes that can be bought, and which groups it grounds.
pub fn least_of_each_set(plan: &Planned) -> Vec<(Sum, Vec<bool>)> {
    let mut found = Vec::new();
    every_set(plan, &mut |laid| {
        let trees = 0..plan.assembled.boxes.len();
        let total =
            trees.into_iter().try_fold(laid.cost, |total, tree| Some(add(total, least_of_tree(plan, laid, tree)?)));
        found.extend(total.map(|total| (total, laid.grounded.clone())));
    });
    found
}

/// Every set of routes that can be bought together: each left, bought, or bought the other way round.
fn every_set(plan: &Planned, look: &mut impl FnMut(&Laid)) {
    let ways: Vec<[Option<Bought>; 2]> =
        (0..plan.assembled.network.bought_as.len()).map(|at| [1, 2].map(|way| bought(plan, at, way))).collect();
    let mut entered = vec![false; plan.assembled.network.groups.len()];
    look_further(plan, &ways, &mut Vec::new(), &mut entered, look);
}

/// Buys or leaves the next route. No group is entered twice.
fn look_further<'a>(
    plan: &Planned,
    left: &'a [[Option<Bought>; 2]],
    taken: &mut Vec<&'a Bought>,
    entered: &mut Vec<bool>,
    look: &mut impl FnMut(&Laid),
) {
    let Some((ways, left)) = left.split_first() else {
        if let Some(laid) = laid(plan, taken) {
            look(&laid);
        }
        return;
    };
    look_further(plan, left, taken, entered, look);
    for way in ways.iter().flatten() {
        let Place::Group(group) = place(plan, way.to) else { continue };
        if !std::mem::replace(&mut entered[group], true) {
            taken.push(way);
            look_further(plan, left, taken, entered, look);
            taken.pop();
            entered[group] = false;
        }
    }
}

fn place(plan: &Planned, end: WayEnd) -> Place {
    match end {
        WayEnd::At(RouteEnd::Box(at)) => Place::Group(plan.facts.groups.index_of(at)),
        WayEnd::Junction(group) => Place::Group(group),
        WayEnd::At(_) => Place::Elsewhere,
    }
}

/// A route as bought (1) or as bought the other way round (2), where it can be.
fn bought(plan: &Planned, position: usize, way: u8) -> Option<Bought> {
    let dwelling = plan.facts.dwelling;
    let route = &plan.assembled.network.bought_as[position];
    let (ends, either_way) = match route.stated() {
        Some(stated) => {
            let stated = &dwelling.routes[stated];
            let either_way = stated.kind == RouteKind::Egc && matches!(stated.from, RouteEnd::Box(_));
            ((WayEnd::At(stated.from), WayEnd::At(stated.to)), either_way)
        }
        None => (route.ends, plan.assembled.network.links[position].both_ways),
    };
    let moves = match (ends, route.kind) {
        ((WayEnd::At(from), WayEnd::At(RouteEnd::Box(to))), RouteKind::NewCable) => {
            let old = dwelling.device_box(to).fed_by.map(|feed| match feed {
                Feed::Box(parent) => RouteEnd::Box(parent),
                Feed::Panel(panel) => RouteEnd::Panel(panel),
            });
            (old != Some(from)).then_some((to, from))
        }
        _ => None,
    };
    let (from, to) = match way {
        1 => ends,
        _ if either_way => (ends.1, ends.0),
        _ => return None,
    };
    Some(Bought { from, to, moves, openings: i64::from(route.openings), prices: route.prices.clone() })
}

/// The routes bought these ways, where every one of them brings a ground to what has none, and can carry it.
fn laid(plan: &Planned, bought: &[&Bought]) -> Option<Laid> {
    let dwelling = plan.facts.dwelling;
    let from_the_start = |group: usize| {
        let bonded = plan.facts.groups.groups.get(group);
        bonded.is_some_and(|bonded| bonded.members.iter().any(|at| plan.facts.at(*at).supplied))
    };
    let mut grounded: Vec<bool> = (0..plan.assembled.network.groups.len()).map(from_the_start).collect();
    let has_ground = |grounded: &[bool], end: WayEnd| match place(plan, end) {
        Place::Group(group) => grounded[group],
        Place::Elsewhere => true,
    };
    let mut done = vec![false; bought.len()];
    while let Some(next) = (0..bought.len())
        .find(|at| !done[*at] && has_ground(&grounded, bought[*at].from) && !has_ground(&grounded, bought[*at].to))
    {
        done[next] = true;
        if let Place::Group(group) = place(plan, bought[next].to) {
            grounded[group] = true;
        }
    }
    if done.contains(&false) {
        return None;
    }
    let mut laid = Laid {
        cost: (0, 0, 0),
        grounded,
        landings: vec![(0, 0); dwelling.boxes.len()],
        fed_by: dwelling.box_indices().map(|at| fed_by(plan, at)).collect(),
        moved: vec![false; dwelling.boxes.len()],
    };
    for route in bought {
        let grade = grade_through(plan, bought, route);
        if let Place::Group(group) = place(plan, route.from)
            && plan.assembled.network.groups[group].carries < grade
        {
            return None;
        }
        let price = route.prices.get(grade)?;
        laid.cost = add(laid.cost, (price.total().0, route.openings, 0));
        for end in [route.from, route.to] {
            if let WayEnd::At(RouteEnd::Box(at)) = end {
                let (count, largest) = laid.landings[at.0];
                laid.landings[at.0] = (count + 1, largest.max(grade));
            }
        }
        if let Some((at, from)) = route.moves {
            if std::mem::replace(&mut laid.moved[at.0], true) {
                return None;
            }
            laid.fed_by[at.0] = match from {
                RouteEnd::Box(parent) => Some(parent),
                _ => None,
            };
        }
    }
    // What lies beyond a junction is of no concern to a tree.
    laid.grounded.truncate(plan.facts.groups.groups.len());
    (!has_ring(&laid.fed_by)).then_some(laid)
}

/// What feeds a box, where that is a box of the same circuit set.
fn fed_by(plan: &Planned, at: BoxIndex) -> Option<BoxIndex> {
    match plan.facts.dwelling.device_box(at).fed_by {
        Some(Feed::Box(parent)) if plan.facts.at(parent).tree == plan.facts.at(at).tree => Some(parent),
        _ => None,
    }
}

fn has_ring(fed_by: &[Option<BoxIndex>]) -> bool {
    (0..fed_by.len()).any(|start| {
        let mut at = fed_by[start];
        for _ in 0..fed_by.len() {
            at = at.and_then(|at| fed_by[at.0]);
        }
        at.is_some()
    })
}

/// The largest grade that any group beyond a route asks for; a junction asks for none of its own.
fn grade_through(plan: &Planned, bought: &[&Bought], route: &Bought) -> usize {
    let Place::Group(group) = place(plan, route.to) else { return 0 };
    let beyond = bought.iter().filter(|next| place(plan, next.from) == Place::Group(group));
    let own = if group < plan.facts.groups.groups.len() { grade_of_group(plan, group) } else { 0 };
    beyond.map(|next| grade_through(plan, bought, next)).fold(own, usize::max)
}

/// Published: NEC Table 250.122: 14 AWG copper to 15 A, 12 AWG to 20 A, 10 AWG to 60 A. Unknown: what 20 A asks for.
fn grade_of_group(plan: &Planned, group: usize) -> usize {
    let of = |at: &BoxIndex| {
        let breaker = plan.facts.dwelling.circuit_of(*at).and_then(|circuit| circuit.breaker);
        match breaker.map(electrical::Amperes::get) {
            Some(..=15) => 0,
            Some(..=20) | None => 1,
            Some(_) => 2,
        }
    };
    plan.facts.groups.groups[group].members.iter().map(of).max().unwrap_or(1)
}

struct Search<'a> {
    plan: &'a Planned<'a>,
    laid: &'a Laid,
    /// The boxes of the tree, each after what feeds it.
    order: Vec<BoxIndex>,
    /// By place in the order: the candidates that the grounds and landings allow, and the least that all from here on cost.
    open: Vec<Vec<&'a Candidate>>,
    at_least: Vec<Sum>,
    best: Option<Sum>,
}

fn cost_of(plan: &Planned, candidate: &Candidate) -> Sum {
    let weight = candidate.shortfall.weight(plan.facts.dwelling.boxes.len());
    (candidate.price.total().0 + weight, 0, i64::from(candidate.device != Device::Kept))
}

fn least_of_tree(plan: &Planned, laid: &Laid, tree: usize) -> Option<Sum> {
    let mut left = plan.assembled.boxes[tree].clone();
    let mut order: Vec<BoxIndex> = Vec::new();
    while let Some(next) = left.iter().position(|at| laid.fed_by[at.0].is_none_or(|parent| order.contains(&parent))) {
        order.push(left.remove(next));
    }
    assert!(left.is_empty(), "every box of a tree hangs on its panel or on another of its boxes");
    let allowed = |at: &BoxIndex| {
        let grounded = laid.grounded[plan.facts.groups.index_of(*at)];
        let (landings, grade) = laid.landings[at.0];
        let fits = |candidate: &&Candidate| {
            let ground_suits = match format!("{:?}", candidate.supply).as_str() {
                "Supplied" => grounded,
                "Unsupplied" => !grounded,
                _ => true,
            };
            ground_suits && (landings == 0 || candidate.landings.get(grade).is_some_and(|most| *most >= landings))
        };
        plan.assembled.candidates[at.0].iter().filter(fits).collect::<Vec<_>>()
    };
    let open: Vec<Vec<&Candidate>> = order.iter().map(allowed).collect();
    let mut at_least = vec![(0, 0, 0); order.len() + 1];
    for place in (0..order.len()).rev() {
        let cheapest = open[place].iter().map(|candidate| cost_of(plan, candidate)).min()?;
        at_least[place] = add(at_least[place + 1], cheapest);
    }
    let mut search = Search { plan, laid, order, open, at_least, best: None };
    let roots = plan.assembled.at_panel.get(tree).map_or(&[] as &[_], Vec::as_slice);
    if roots.is_empty() {
        search.look(&mut Vec::new(), (0, 0, 0), 0);
    }
    for root in roots {
        let leakage: i64 = search.order.iter().map(|at| leakage(plan, *at)).sum();
        if root.gives.0 & GFCI == 0 || root.choice == AtPanel::AsItIs || leakage < leakage_below(plan) {
            // A breaker that stays and is too large for its conductors is changed for money too.
            let repair = root.repair.as_ref().map_or(0, |repair| repair.price.total().0);
            let cost = (root.price.total().0 + repair, 0, i64::from(root.choice != AtPanel::AsItIs));
            search.look(&mut Vec::new(), cost, root.gives.0);
        }
    }
    search.best
}

/// The stated share of 4 mA, all of it by default.
fn leakage_below(plan: &Planned) -> i64 {
    let percent = plan.facts.dwelling.job.leakage_percent.map_or(100, i64::from);
    MAY_TRIP_FROM_MICROAMPERES * percent / 100
}

fn leakage(plan: &Planned, at: BoxIndex) -> i64 {
    LEAKAGE_OF_EACH * plan.facts.dwelling.device_box(at).serves.len() as i64
}

impl<'a> Search<'a> {
    fn look(&mut self, done: &mut Vec<Done<'a>>, cost: Sum, root: u8) {
        let place = done.len();
        if self.best.is_some_and(|best| add(cost, self.at_least[place]) >= best) {
            return;
        }
        if place == self.order.len() {
            if self.leakage_is_borne(done) && self.outlets_are_few_enough(done) {
                self.best = Some(cost);
            }
            return;
        }
        let at = self.order[place];
        let parent = self.laid.fed_by[at.0].and_then(|parent| self.order.iter().position(|other| *other == parent));
        let from_parent = parent.map_or(root, |parent| done[parent].sees);
        for behind in [false, true] {
            let Some(sees) = (if behind { self.behind_load(at, parent, done) } else { Some(from_parent) }) else {
                continue;
            };
            for choice in 0..self.open[place].len() {
                let candidate = self.open[place][choice];
                if candidate.needs.0 & !(sees | candidate.own.0) == 0 {
                    done.push(Done { candidate, behind, sees });
                    self.look(done, add(cost, cost_of(self.plan, candidate)), root);
                    done.pop();
                }
            }
        }
    }

    /// What a box sees behind the load side of what feeds it, where it may hang there.
    fn behind_load(&self, at: BoxIndex, parent: Option<usize>, done: &[Done]) -> Option<u8> {
        let parent = parent?;
        let dwelling = self.plan.facts.dwelling;
        let same = dwelling.device_box(self.order[parent]).circuit == dwelling.device_box(at).circuit;
        let can = same && !dwelling.neutral_is_shared_to(at) && !self.laid.moved[at.0];
        let gives = done[parent].candidate.gives.0;
        (can && gives != 0).then_some(done[parent].sees | gives)
    }

    /// The places of a box and of everything that it feeds.
    fn below(&self, top: usize, places: usize) -> impl Iterator<Item = usize> {
        (0..places).filter(move |at| {
            let mut up = Some(*at);
            while let Some(here) = up {
                if here == top {
                    return true;
                }
                up = self.laid.fed_by[self.order[here].0]
                    .and_then(|parent| self.order.iter().position(|other| *other == parent));
            }
            false
        })
    }

    /// Whether no load side feeds more outlets than the survey says that instructions allow.
    fn outlets_are_few_enough(&self, done: &[Done]) -> bool {
        let Some(most) = self.plan.facts.dwelling.job.outlets_behind_one_device else { return true };
        let is_outlet = |place: &usize| self.plan.facts.dwelling.device_box(self.order[*place]).holds.is_receptacle();
        (0..done.len()).filter(|at| done[*at].candidate.gives.0 != 0).all(|at| {
            let children = (0..done.len())
                .filter(|child| done[*child].behind && self.laid.fed_by[self.order[*child].0] == Some(self.order[at]));
            children.flat_map(|child| self.below(child, done.len())).filter(is_outlet).count() <= most as usize
        })
    }

    /// Whether no GFCI that is fitted, or whose load side is newly used, has more standing leakage than it bears.
    fn leakage_is_borne(&self, done: &[Done]) -> bool {
        let planned = |at: &usize| {
            let candidate = done[*at].candidate;
            candidate.own.0 & GFCI != 0 && (candidate.device != Device::Kept || candidate.gives.0 != 0)
        };
        (0..done.len()).filter(planned).all(|at| {
            let children = (0..done.len())
                .filter(|child| done[*child].behind && self.laid.fed_by[self.order[*child].0] == Some(self.order[at]));
            let behind: i64 = children
                .flat_map(|child| self.below(child, done.len()))
                .map(|place| leakage(self.plan, self.order[place]))
                .sum();
            behind + leakage(self.plan, self.order[at]) < leakage_below(self.plan)
        })
    }
}
