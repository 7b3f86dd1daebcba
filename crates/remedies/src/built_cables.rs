//! New cables along built ways: each run without a ground led again from what feeds it, and home runs from the panel.

use crate::built_routes::{Targets, length_of};
use crate::facts::Facts;
use crate::network::{Network, Origin};
use crate::route_prices::{lines_as_built, prices_by_grade};
use crate::stated_routes::link_at;
use dwelling::{BoxIndex, Feed, GroundPath, Route, RouteEnd, RouteKind};
use estimate::PriceBook;
use routes::{CheapestWays, RouteEdge, RouteGraph};
use std::collections::BTreeMap;

/// Adds the cheapest new cable to each box that could be given a ground: from what feeds it and from its panel.
pub fn add_cables(facts: &Facts, book: &PriceBook, graph: &RouteGraph, targets: &Targets, network: &mut Network) {
    let places: BTreeMap<RouteEnd, usize> =
        graph.places.iter().enumerate().filter_map(|(place, at)| Some((at.is.route_end()?, place))).collect();
    let mut wanted: BTreeMap<RouteEnd, Vec<BoxIndex>> = BTreeMap::new();
    for at in &targets.all {
        for from in starts(facts, *at) {
            let stated = |route: &&Route| route.kind == RouteKind::NewCable && route.to == RouteEnd::Box(*at);
            let is_stated = facts.dwelling.routes.iter().filter(stated).any(|route| route.from == from);
            if !is_stated && places.contains_key(&RouteEnd::Box(*at)) {
                wanted.entry(from).or_default().push(*at);
            }
        }
    }
    if wanted.keys().all(|from| !places.contains_key(from)) {
        return;
    }
    let lines = |edge: usize| lines_as_built(facts.dwelling, &[&graph.edges[edge]], RouteKind::NewCable, 0);
    let cost = |edge: usize| Some(book.price(&lines(edge)).total().0);
    let cheapest = CheapestWays::new(graph, cost);
    for (from, boxes) in wanted {
        let Some(start) = places.get(&from) else { continue };
        let ends: Vec<usize> = boxes.iter().map(|at| places[&RouteEnd::Box(*at)]).collect();
        for (at, way) in boxes.iter().zip(cheapest.ways(*start, &ends)) {
            if let Some(way) = way {
                add(facts, book, graph, network, (from, *at), *start, &way);
            }
        }
    }
}

/// Where a new cable to a box may start: at what feeds it over a run without a ground, and at its panel.
fn starts(facts: &Facts, at: BoxIndex) -> Vec<RouteEnd> {
    let fed_by = facts.dwelling.device_box(at).known_feed();
    let without_ground = facts.dwelling.ground_path_to(at) != GroundPath::Yes;
    let parent = match fed_by {
        Some(Feed::Box(parent)) if without_ground => Some(RouteEnd::Box(parent)),
        _ => None,
    };
    let panel = facts.dwelling.circuit_of(at).map(|circuit| RouteEnd::Panel(circuit.panel));
    parent.into_iter().chain(panel).collect()
}

fn add(
    facts: &Facts,
    book: &PriceBook,
    graph: &RouteGraph,
    network: &mut Network,
    (from, to): (RouteEnd, BoxIndex),
    start: usize,
    way: &[usize],
) {
    let mut place = start;
    let mut walked = Vec::new();
    for edge in way {
        let forward = graph.edges[*edge].from == place;
        place = if forward { graph.edges[*edge].to } else { graph.edges[*edge].from };
        walked.push((*edge, forward));
    }
    let edges: Vec<&RouteEdge> = way.iter().map(|edge| &graph.edges[*edge]).collect();
    let route = Route {
        id: String::new(),
        from,
        to: RouteEnd::Box(to),
        kind: RouteKind::NewCable,
        length: length_of(&edges),
        minutes: None,
        openings: edges.iter().map(|edge| edge.openings).sum(),
        note: None,
        closed: false,
    };
    let prices =
        prices_by_grade(book, RouteKind::NewCable, lines_as_built(facts.dwelling, &edges, RouteKind::NewCable, 0));
    if let Ok((link, mut buyable)) = link_at(facts, &route, prices, Origin::Built(walked)) {
        buyable.opens = edges.iter().flat_map(|edge| edge.opens.iter().copied()).collect();
        network.links.push(link);
        network.bought_as.push(buyable);
    }
}
