//! The ways that the tool built itself as links: for each panel its own junctions, since a ground serves only circuits of
//! the panel it comes from.

use crate::built_cables::add_cables;
use crate::facts::Facts;
use crate::network::{BuyableRoute, Network, NotBuilt, Origin, WayEnd, end_of};
use crate::room_in_box::GRADES;
use crate::route_prices::{lines_as_built, prices_by_grade};
use crate::stated_routes::{connection, leads_on, link_at};
use dwelling::{BoxIndex, PanelIndex, Route, RouteEnd, RouteKind};
use electrical::Length;
use estimate::{Price, PriceBook};
use optimizer::{Cost, Group, Link, LinkEnd};
use routes::{PlaceKind, RouteEdge, RouteGraph, UnbuiltOf};
use std::collections::{BTreeMap, BTreeSet};

/// How many built ways are planned to end in one box: one that brings the ground and one that leads it on.
const MOST_BUILT_AT_A_BOX: u32 = 2;

/// Adds what the route graph gives to the network: grounds over junctions and straight ones, then cables.
pub fn add_built(facts: &Facts, book: &PriceBook, network: &mut Network) {
    let graph = std::mem::take(&mut network.graph);
    if !graph.places.is_empty() || !graph.unbuilt.is_empty() {
        let mut targets = Targets::of(facts, &mut network.not_built);
        targets.keep_what_a_ground_can_reach(facts, &graph, &mut network.not_built);
        tell_unbuilt(facts, &graph, &targets, &mut network.not_built);
        let mut built =
            Building { facts, graph: &graph, prices: priced(facts, book, &graph), network, at_box: BTreeMap::new() };
        built.add_straight(&targets);
        for (panel, boxes) in &targets.by_panel {
            built.add_layer(*panel, boxes);
        }
        add_cables(facts, book, &graph, &targets, built.network);
        network.not_built.sort();
        network.not_built.dedup();
    }
    network.graph = graph;
}

/// The boxes that could be given a ground.
pub struct Targets {
    /// By panel: the boxes of its circuits that have none and would gain by one.
    pub by_panel: BTreeMap<PanelIndex, Vec<BoxIndex>>,
    /// All of them.
    pub all: BTreeSet<BoxIndex>,
}

impl Targets {
    fn of(facts: &Facts, not_built: &mut Vec<NotBuilt>) -> Self {
        let mut targets = Self { by_panel: BTreeMap::new(), all: BTreeSet::new() };
        for at in facts.dwelling.box_indices().filter(|at| would_gain(facts, *at)) {
            let of = || facts.dwelling.device_box(at).id.clone();
            let Some(circuit) = facts.dwelling.circuit_of(at) else {
                not_built.push(NotBuilt { why: "its circuit is not known".to_owned(), of: of() });
                continue;
            };
            // Where a bar may not serve the box, what is missing is not missing from the plan of the house.
            match connection(facts, RouteEnd::Panel(circuit.panel), at, RouteKind::Egc) {
                Err(refusal) if circuit.breaker.is_none() => {
                    not_built.push(NotBuilt { why: refusal.why, of: of() });
                }
                _ => {
                    targets.by_panel.entry(circuit.panel).or_default().push(at);
                    targets.all.insert(at);
                }
            }
        }
        targets
    }
}

impl Targets {
    /// Leaves out the panels from which no ground starts on the plan: neither at their bar, nor at a source, nor at a box
    /// that has one.
    fn keep_what_a_ground_can_reach(&mut self, facts: &Facts, graph: &RouteGraph, not_built: &mut Vec<NotBuilt>) {
        let starts = |panel: PanelIndex, boxes: &[BoxIndex]| {
            graph.places.iter().filter_map(|place| place.is.route_end()).any(|end| match end {
                RouteEnd::Panel(other) if other != panel => false,
                RouteEnd::Box(at) => {
                    let of_panel = facts.dwelling.circuit_of(at).is_some_and(|circuit| circuit.panel == panel);
                    facts.at(at).supplied && of_panel && leads_on(facts, at, boxes)
                }
                end => boxes.first().is_some_and(|at| connection(facts, end, *at, RouteKind::Egc).is_ok()),
            })
        };
        self.by_panel.retain(|panel, boxes| {
            let kept = starts(*panel, boxes);
            if !kept {
                let of_panel = |unbuilt: &&routes::Unbuilt| unbuilt.of == UnbuiltOf::Panel(*panel);
                let why = graph.unbuilt.iter().find(of_panel).map(|unbuilt| unbuilt.why.clone());
                let first = boxes.first().map(|at| connection(facts, RouteEnd::Panel(*panel), *at, RouteKind::Egc));
                let why = why.or_else(|| first.and_then(Result::err).map(|refusal| refusal.why));
                let of = facts.dwelling.panel(*panel).id.clone();
                not_built.extend(why.map(|why| NotBuilt { why, of }));
            }
            kept
        });
        self.all = self.by_panel.values().flatten().copied().collect();
    }
}

/// Whether a box has no ground, and its group has a receptacle that could use one.
fn would_gain(facts: &Facts, at: BoxIndex) -> bool {
    let members = &facts.groups.group_of(at).members;
    !facts.at(at).supplied && members.iter().any(|member| facts.at(*member).as_found.holds.is_receptacle())
}

/// Tells of what could serve the plan and was left out of the route graph.
fn tell_unbuilt(facts: &Facts, graph: &RouteGraph, targets: &Targets, not_built: &mut Vec<NotBuilt>) {
    let dwelling = facts.dwelling;
    for unbuilt in &graph.unbuilt {
        let of = match unbuilt.of {
            UnbuiltOf::Box(at) if targets.all.contains(&at) => dwelling.device_box(at).id.clone(),
            UnbuiltOf::Room(room) if targets.all.iter().any(|at| dwelling.device_box(*at).room == room) => {
                dwelling.room(room).id.clone()
            }
            UnbuiltOf::Panel(panel) if targets.by_panel.contains_key(&panel) => dwelling.panel(panel).id.clone(),
            UnbuiltOf::Source(source) => {
                let may = |at: &BoxIndex| connection(facts, RouteEnd::Source(source), *at, RouteKind::Egc).is_ok();
                if !targets.by_panel.values().filter_map(|boxes| boxes.first()).any(may) {
                    continue;
                }
                dwelling.source(source).id.clone()
            }
            _ => continue,
        };
        not_built.push(NotBuilt { why: unbuilt.why.clone(), of });
    }
}

/// By edge: what it costs by grade.
fn priced(facts: &Facts, book: &PriceBook, graph: &RouteGraph) -> Vec<Vec<Price>> {
    let lines = |edge: &RouteEdge| lines_as_built(facts.dwelling, &[edge], RouteKind::Egc, 0);
    graph.edges.iter().map(|edge| prices_by_grade(book, RouteKind::Egc, lines(edge))).collect()
}

struct Building<'a, 'b> {
    facts: &'a Facts<'a>,
    graph: &'a RouteGraph,
    prices: Vec<Vec<Price>>,
    network: &'b mut Network,
    /// By box: how many built ways could end there.
    at_box: BTreeMap<BoxIndex, u32>,
}

/// A link of a layer before it is known whether a ground can reach it.
struct Draft {
    edge: usize,
    /// Whether it starts at the edge's first end.
    forward: bool,
    both_ways: bool,
}

impl Building<'_, '_> {
    /// Ways straight from a box, a panel or a source to a box.
    fn add_straight(&mut self, targets: &Targets) {
        let mut cheapest: BTreeMap<(usize, usize), Vec<usize>> = BTreeMap::new();
        for (position, edge) in self.graph.edges.iter().enumerate() {
            cheapest.entry((edge.from.min(edge.to), edge.from.max(edge.to))).or_default().push(position);
        }
        for (position, edge) in self.graph.edges.iter().enumerate() {
            let ends = (self.graph.places[edge.from].is.route_end(), self.graph.places[edge.to].is.route_end());
            let (Some(one), Some(other)) = ends else { continue };
            let (from, to, forward) =
                if matches!(other, RouteEnd::Box(_)) { (one, other, true) } else { (other, one, false) };
            let gains = |end: RouteEnd| matches!(end, RouteEnd::Box(at) if targets.all.contains(&at));
            let rivals = &cheapest[&(edge.from.min(edge.to), edge.from.max(edge.to))];
            if !(gains(from) || gains(to)) || rivals.iter().any(|rival| self.is_dearer(position, *rival)) {
                continue;
            }
            if self.joins_a_group_to_itself(from, to) {
                continue;
            }
            let route = Route {
                id: String::new(),
                from,
                to,
                kind: RouteKind::Egc,
                length: edge.length,
                minutes: None,
                openings: edge.openings,
                note: None,
                closed: false,
            };
            let origin = Origin::Built(vec![(position, forward)]);
            if let Ok((link, mut buyable)) = link_at(self.facts, &route, self.prices[position].clone(), origin) {
                buyable.opens.clone_from(&edge.opens);
                self.push(link, buyable);
            }
        }
    }

    /// Whether another way between the same places costs no more at any grade, opens no more, and less in something.
    fn is_dearer(&self, this: usize, rival: usize) -> bool {
        let rank = |edge: usize| -> Vec<i64> {
            let cents = self.prices[edge].iter().map(|price| price.total().0);
            cents.chain([i64::from(self.graph.edges[edge].openings)]).collect()
        };
        let (mine, theirs) = (rank(this), rank(rival));
        this != rival
            && theirs.iter().zip(&mine).all(|(theirs, mine)| theirs <= mine)
            && (theirs != mine || rival < this)
    }

    fn joins_a_group_to_itself(&self, from: RouteEnd, to: RouteEnd) -> bool {
        matches!((from, to), (RouteEnd::Box(from), RouteEnd::Box(to))
            if self.facts.groups.index_of(from) == self.facts.groups.index_of(to))
    }

    /// The junctions of one panel with the ways along spaces and into and out of them.
    fn add_layer(&mut self, panel: PanelIndex, boxes: &[BoxIndex]) {
        let drafts: Vec<Draft> =
            (0..self.graph.edges.len()).filter_map(|edge| self.draft(panel, boxes, edge)).collect();
        let reached = self.reached(&drafts);
        let mut groups: BTreeMap<usize, usize> = BTreeMap::new();
        for draft in drafts {
            let edge = &self.graph.edges[draft.edge];
            if !reached.contains(&edge.from) || !reached.contains(&edge.to) {
                continue;
            }
            let (start, end) = if draft.forward { (edge.from, edge.to) } else { (edge.to, edge.from) };
            let [(from, start), (to, end)] = [start, end].map(|place| self.end(place, &mut groups));
            let prices = self.prices[draft.edge].clone();
            let openings = i64::from(edge.openings);
            let cost = |price: &Price| Cost { cents: price.total().0, openings, devices: 0 };
            let cost_by_grade = prices.iter().map(cost).collect();
            let link = Link { from, to, both_ways: draft.both_ways, cost_by_grade, reparents: false };
            let buyable = BuyableRoute {
                origin: Origin::Built(vec![(draft.edge, draft.forward)]),
                kind: RouteKind::Egc,
                ends: (start, end),
                length: edge.length,
                openings: edge.openings,
                opens: edge.opens.clone(),
                prices,
                cites: Vec::new(),
                conditions: Vec::new(),
                disputed: None,
            };
            self.push(link, buyable);
        }
    }

    /// An edge at a junction as a link of a panel's layer, where it is one.
    fn draft(&self, panel: PanelIndex, boxes: &[BoxIndex], position: usize) -> Option<Draft> {
        let edge = &self.graph.edges[position];
        let (from, to) = (self.graph.places[edge.from].is, self.graph.places[edge.to].is);
        // Every edge of one end at a junction begins at the other.
        match (from.route_end(), to) {
            (None, PlaceKind::Junction(_)) => Some(Draft { edge: position, forward: true, both_ways: true }),
            (Some(RouteEnd::Box(at)), PlaceKind::Junction(_)) => {
                let of_panel = self.facts.dwelling.circuit_of(at).is_some_and(|circuit| circuit.panel == panel);
                let out = of_panel && leads_on(self.facts, at, boxes);
                match (boxes.contains(&at), self.facts.at(at).supplied) {
                    (true, _) => Some(Draft { edge: position, forward: false, both_ways: out }),
                    (false, true) if out => Some(Draft { edge: position, forward: true, both_ways: false }),
                    _ => None,
                }
            }
            (Some(end), PlaceKind::Junction(_)) => {
                let may = |at: &BoxIndex| connection(self.facts, end, *at, RouteKind::Egc).is_ok();
                let of_panel = !matches!(end, RouteEnd::Panel(other) if other != panel);
                let open = of_panel && boxes.first().is_some_and(may);
                open.then_some(Draft { edge: position, forward: true, both_ways: false })
            }
            _ => None,
        }
    }

    /// The places that a ground could reach over these links.
    fn reached(&self, drafts: &[Draft]) -> BTreeSet<usize> {
        let mut ways: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        let mut open: Vec<usize> = Vec::new();
        for draft in drafts {
            let edge = &self.graph.edges[draft.edge];
            let (start, end) = if draft.forward { (edge.from, edge.to) } else { (edge.to, edge.from) };
            ways.entry(start).or_default().push(end);
            if draft.both_ways {
                ways.entry(end).or_default().push(start);
            }
            match self.graph.places[start].is {
                PlaceKind::Junction(_) => {}
                PlaceKind::Panel(_) | PlaceKind::Source(_) => open.push(start),
                // A box with a ground, or one that another way may bring one to.
                PlaceKind::Box(_) => open.push(start),
            }
            if let PlaceKind::Box(at) = self.graph.places[end].is
                && draft.both_ways
                && self.is_reached_otherwise(at)
            {
                open.push(end);
            }
        }
        let mut reached = BTreeSet::new();
        while let Some(place) = open.pop() {
            if reached.insert(place) {
                open.extend(ways.get(&place).into_iter().flatten());
            }
        }
        reached
    }

    /// Whether a link that does not pass a junction ends at a box or at one that is joined with it.
    fn is_reached_otherwise(&self, at: BoxIndex) -> bool {
        let group = self.facts.groups.index_of(at);
        self.network.links.iter().any(|link| link.from.group == group || link.to.group == group)
    }

    /// A place as the end of a link.
    fn end(&mut self, place: usize, groups: &mut BTreeMap<usize, usize>) -> (LinkEnd, WayEnd) {
        if let Some(end) = self.graph.places[place].is.route_end() {
            return (end_of(self.facts, end), WayEnd::At(end));
        }
        let network = &mut *self.network;
        let group = *groups.entry(place).or_insert_with(|| {
            network.groups.push(Group { source: false, grade: 0, carries: GRADES.len() - 1 });
            network.groups.len() - 1
        });
        (LinkEnd { group, lands_at: None }, WayEnd::Junction(group))
    }

    fn push(&mut self, link: Link, buyable: BuyableRoute) {
        for end in [buyable.ends.0, buyable.ends.1] {
            if let WayEnd::At(RouteEnd::Box(at)) = end {
                let count = self.at_box.entry(at).or_default();
                *count += 1;
                self.network.links_at[at.0] += u32::from(*count <= MOST_BUILT_AT_A_BOX);
            }
        }
        self.network.links.push(link);
        self.network.bought_as.push(buyable);
    }
}

/// The whole length of edges.
#[must_use]
pub fn length_of(edges: &[&RouteEdge]) -> Length {
    edges.iter().fold(Length::ZERO, |sum, edge| sum + edge.length)
}
