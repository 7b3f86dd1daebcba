//! The network of grounds: bonded groups, places a ground can be taken from, and the routes between them.

use crate::built_routes::add_built;
use crate::facts::Facts;
use crate::room_in_box::GRADES;
use crate::stated_routes::link_of;
use dwelling::{BoxIndex, CableKind, Feed, PanelIndex, RoomIndex, Route, RouteEnd, RouteKind, SourceIndex};
use electrical::{Amperes, Gauge, Length};
use estimate::{Price, PriceBook};
use optimizer::{Group, Link, LinkEnd};
use routes::RouteGraph;
use rulebook::Citation;

/// The network as the optimizer sees it, and the way back to the survey.
pub struct Network {
    /// Bonded groups first, then one group for each panel's bar, then one for each ground source, then the junctions of
    /// the route graph, for each panel its own.
    pub groups: Vec<Group>,
    /// The links that can be bought.
    pub links: Vec<Link>,
    /// By link: what it is in the survey or in the route graph.
    pub bought_as: Vec<BuyableRoute>,
    /// The routes of the survey that cannot be bought, and why.
    pub refused: Vec<RefusedRoute>,
    /// What no way could be built of, and why: in the order of their ids.
    pub not_built: Vec<NotBuilt>,
    /// By box: how many routes could land there.
    pub links_at: Vec<u32>,
    /// The route graph that the tool built itself.
    pub graph: RouteGraph,
}

/// Where a route comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Origin {
    /// The survey, at this position.
    Stated(usize),
    /// The route graph: the edges in the order they are walked, each with whether it is walked from its first end.
    Built(Vec<(usize, bool)>),
}

/// An end of a route that can be bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum WayEnd {
    /// A box, a panel or a ground source.
    At(RouteEnd),
    /// A junction, by its group.
    Junction(usize),
}

/// A route that can be bought.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuyableRoute {
    /// Where it comes from.
    pub origin: Origin,
    /// What is brought along it.
    pub kind: RouteKind,
    /// The ends in the direction in which its link runs forward.
    pub ends: (WayEnd, WayEnd),
    /// Its length.
    pub length: Length,
    /// Openings in finished surfaces.
    pub openings: u32,
    /// The rooms whose finished surfaces it opens.
    pub opens: Vec<RoomIndex>,
    /// By grade: what it costs.
    pub prices: Vec<Price>,
    /// Where the code allows the connection, and how that is known; nothing for a part of a way that has no source of its
    /// own.
    pub cites: Vec<Citation>,
    /// The conditions under which it does.
    pub conditions: Vec<String>,
    /// The two readings, where authorities read the connection in two ways.
    pub disputed: Option<String>,
}

impl BuyableRoute {
    /// Whether it ends at a box, a panel or a source.
    #[must_use]
    pub fn ends_at(&self, end: RouteEnd) -> bool {
        [self.ends.0, self.ends.1].contains(&WayEnd::At(end))
    }

    /// The position of the route in the survey, where it is stated there.
    #[must_use]
    pub const fn stated(&self) -> Option<usize> {
        match self.origin {
            Origin::Stated(route) => Some(route),
            Origin::Built(_) => None,
        }
    }
}

/// A route of the survey that cannot be bought.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RefusedRoute {
    /// Its position in the survey.
    pub route: usize,
    /// Why not.
    pub why: String,
    /// Where the code says so, where it is the code that does.
    pub cites: Vec<Citation>,
    /// Whether finding something out could change this.
    pub could_change: bool,
}

/// Something of which no way could be built.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct NotBuilt {
    /// Why, in plain words.
    pub why: String,
    /// The box, room, panel or source.
    pub of: String,
}

impl Network {
    /// Builds the network of a dwelling.
    #[must_use]
    pub fn of(facts: &Facts, book: &PriceBook) -> Self {
        let mut network = Self {
            groups: groups_of(facts),
            links: Vec::new(),
            bought_as: Vec::new(),
            refused: Vec::new(),
            not_built: Vec::new(),
            links_at: vec![0; facts.dwelling.boxes.len()],
            graph: RouteGraph::of(facts.dwelling),
        };
        for (index, route) in facts.dwelling.routes.iter().enumerate() {
            match link_of(facts, book, index, route) {
                Ok((link, buyable)) => {
                    for end in [route.from, route.to] {
                        if let RouteEnd::Box(at) = end {
                            network.links_at[at.0] += 1;
                        }
                    }
                    network.links.push(link);
                    network.bought_as.push(buyable);
                }
                Err(refused) => network.refused.push(refused),
            }
        }
        add_built(facts, book, &mut network);
        network
    }
}

/// The grade of ground that a breaker asks for: an unknown rating asks for what 20 A does.
#[must_use]
pub fn grade_for(breaker: Option<Amperes>) -> usize {
    match breaker.map(Amperes::get) {
        Some(0..=15) => 0,
        Some(16..=20) | None => 1,
        Some(_) => 2,
    }
}

fn groups_of(facts: &Facts) -> Vec<Group> {
    let bonded = facts.groups.groups.iter().map(|group| {
        let breakers = group.members.iter().map(|member| facts.dwelling.circuit_of(*member));
        let grade = breakers.map(|circuit| grade_for(circuit.and_then(|circuit| circuit.breaker))).max().unwrap_or(1);
        let source = group.members.iter().any(|member| facts.at(*member).supplied);
        Group { source, grade, carries: carried_by(facts, &group.members) }
    });
    let places = facts.dwelling.panels.len() + facts.dwelling.sources.len();
    let place = Group { source: true, grade: 0, carries: GRADES.len() - 1 };
    bonded.chain(std::iter::repeat_n(place, places)).collect()
}

/// The highest grade that can be led on through the ground of these boxes: that of its thinnest wire.
pub fn carried_by(facts: &Facts, members: &[BoxIndex]) -> usize {
    let inside = |at: &BoxIndex| match facts.dwelling.device_box(*at).fed_by {
        Some(Feed::Box(parent)) => members.contains(&parent),
        Some(Feed::Panel(_)) => true,
        None => false,
    };
    let wires = members.iter().filter(|at| inside(at)).filter_map(|at| {
        let kind = facts.dwelling.cable_to(*at);
        let thinner = kind == CableKind::NmReducedGround;
        kind.has_ground_wire().then(|| if thinner { Some(Gauge::AWG_16) } else { facts.dwelling.gauge_to(*at) })
    });
    wires.map(|gauge| gauge.map_or(0, grade_of)).min().unwrap_or(GRADES.len() - 1)
}

/// The grade of a conductor: that of the thickest listed size it is not thinner than.
fn grade_of(gauge: Gauge) -> usize {
    GRADES.iter().rposition(|listed| gauge >= *listed).unwrap_or(0)
}

/// The end of a link at a box, a panel or a source.
#[must_use]
pub fn end_of(facts: &Facts, end: RouteEnd) -> LinkEnd {
    let bonded = facts.groups.groups.len();
    match end {
        RouteEnd::Box(at) => LinkEnd { group: facts.groups.index_of(at), lands_at: node_of(facts, at) },
        RouteEnd::Panel(PanelIndex(panel)) => LinkEnd { group: bonded + panel, lands_at: None },
        RouteEnd::Source(SourceIndex(source)) => {
            LinkEnd { group: bonded + facts.dwelling.panels.len() + source, lands_at: None }
        }
    }
}

/// The tree and the node that stand for a box in the optimizer's problem.
#[must_use]
pub fn node_of(facts: &Facts, at: BoxIndex) -> Option<(usize, usize)> {
    let tree = facts.at(at).tree?;
    let known = &facts.trees[tree];
    let node = known.members.iter().chain(&known.unplaced).position(|member| *member == at)?;
    Some((tree, node))
}

/// The rooms at the ends of a route of the survey that opens finished surfaces.
#[must_use]
pub fn rooms_opened(facts: &Facts, route: &Route) -> Vec<RoomIndex> {
    let ends = [route.from, route.to].into_iter().filter(|_| route.openings > 0);
    let boxes = ends.filter_map(|end| match end {
        RouteEnd::Box(at) => Some(facts.dwelling.device_box(at).room),
        _ => None,
    });
    boxes.collect()
}
