//! Whole ways of what is bought: from where the ground is taken to the box it is brought to, branch by branch.

use crate::network::{BuyableRoute, Origin, WayEnd};
use crate::planned::Planned;
use crate::room_in_box::GRADES;
use crate::stated_routes::connection;
use dwelling::{BoxIndex, RouteEnd, RouteKind};
use electrical::{Gauge, Length};
use estimate::Price;
use optimizer::{ChosenLink, Solution};
use routes::{Difficulty, EdgeKind, LinePoint};
use rulebook::{Citation, Lawful};
use std::collections::BTreeMap;

/// A way along which a ground or a new cable is brought to a box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// Its name: that of the survey, or `to` and the box.
    pub id: String,
    /// Where the ground is taken from.
    pub from: RouteEnd,
    /// The box.
    pub to: BoxIndex,
    /// What is brought.
    pub kind: RouteKind,
    /// The chosen links from the start to the box, in the direction of the flow.
    pub links: Vec<ChosenLink>,
    /// How many of the first of them another way pays for.
    pub shared: usize,
    /// The way from which it branches off.
    pub branches_from: Option<String>,
    /// Where the code allows the connection.
    pub cites: Vec<Citation>,
    /// The conditions under which it does.
    pub conditions: Vec<String>,
    /// The two readings, where authorities read the connection in two ways.
    pub disputed: Option<String>,
}

/// A stretch of a built way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Leg {
    /// How it is worked.
    pub kind: EdgeKind,
    /// How hard it is.
    pub difficulty: Difficulty,
    /// Its length.
    pub length: Length,
    /// Openings in finished surfaces.
    pub openings: u32,
    /// The way in plain words, and why it costs what it costs.
    pub says: String,
    /// The way on the floor plans, in the direction in which it is walked.
    pub line: Vec<LinePoint>,
}

impl Leg {
    /// Whether another stretch goes on along the same attic, crawl space or basement.
    #[must_use]
    pub fn goes_on_in(&self, next: &Self) -> bool {
        let layer = |leg: &Self| leg.line.last().map(|corner| corner.layer);
        (self.kind, next.kind) == (EdgeKind::Along, EdgeKind::Along) && layer(self) == layer(next)
    }

    /// A stretch along a space in words.
    #[must_use]
    pub fn along_its_space(&self) -> String {
        let space = self.line.last().map_or("it", |corner| corner.layer.words());
        format!("along {space}, {}", self.length)
    }
}

impl Way {
    /// The links that no way before it pays for.
    #[must_use]
    pub fn own(&self) -> &[ChosenLink] {
        self.links.get(self.shared..).unwrap_or(&[])
    }

    /// The size of the conductor at its end.
    #[must_use]
    pub fn size(&self) -> Gauge {
        GRADES[self.links.last().map_or(0, |link| link.grade)]
    }
}

impl Planned<'_> {
    /// The ways that the plan buys: one for each box to which something is brought.
    #[must_use]
    pub fn ways(&self) -> Vec<Way> {
        self.ways_in(&self.solution)
    }

    /// The ways that another choice of everything buys, in the order of their last links; the first that uses a stretch
    /// pays for it.
    #[must_use]
    pub fn ways_in(&self, solution: &Solution) -> Vec<Way> {
        let flow = |link: &ChosenLink| {
            let (start, end) = self.assembled.network.bought_as[link.link].ends;
            if link.forward { (start, end) } else { (end, start) }
        };
        let into: BTreeMap<WayEnd, &ChosenLink> = solution.links.iter().map(|link| (flow(link).1, link)).collect();
        let mut ways: Vec<Way> = Vec::new();
        for last in &solution.links {
            let WayEnd::At(RouteEnd::Box(to)) = flow(last).1 else { continue };
            let mut links = vec![*last];
            while let WayEnd::Junction(_) = flow(&links[0]).0
                && links.len() <= solution.links.len()
                && let Some(before) = into.get(&flow(&links[0]).0)
            {
                links.insert(0, **before);
            }
            let WayEnd::At(from) = flow(&links[0]).0 else { continue };
            ways.push(self.way(from, to, links));
        }
        let mut paid: BTreeMap<usize, String> = BTreeMap::new();
        for way in &mut ways {
            way.shared = way.links.iter().take_while(|link| paid.contains_key(&link.link)).count();
            way.branches_from = way.shared.checked_sub(1).and_then(|last| paid.get(&way.links[last].link).cloned());
            for link in &way.links[way.shared..] {
                paid.insert(link.link, way.id.clone());
            }
        }
        ways
    }

    fn way(&self, from: RouteEnd, to: BoxIndex, links: Vec<ChosenLink>) -> Way {
        let last = links.last().map(|link| self.bought(link));
        let stated = last.and_then(BuyableRoute::stated);
        let id = match stated {
            Some(route) => self.facts.dwelling.routes[route].id.clone(),
            None => format!("to {}", self.facts.dwelling.device_box(to).id),
        };
        let kind = last.map_or(RouteKind::Egc, |last| last.kind);
        // What the survey states was judged as it stands there; a built way may be walked either way.
        let judged = last.filter(|last| last.stated().is_some());
        let (cites, conditions, disputed) = match (judged, connection(&self.facts, from, to, kind)) {
            (Some(stated), _) => (stated.cites.clone(), stated.conditions.clone(), stated.disputed.clone()),
            (None, Ok(found)) => {
                let disputed = (found.lawful == Lawful::Disputed).then_some(found.why);
                (found.cites, found.conditions, disputed)
            }
            (None, Err(refusal)) => (refusal.cites, Vec::new(), Some(refusal.why)),
        };
        Way { id, from, to, kind, links, shared: 0, branches_from: None, cites, conditions, disputed }
    }

    /// The ends of a chosen link in the direction in which it brings the ground.
    #[must_use]
    pub fn flow_of(&self, chosen: &ChosenLink) -> (WayEnd, WayEnd) {
        let (start, end) = self.bought(chosen).ends;
        if chosen.forward { (start, end) } else { (end, start) }
    }

    /// The length of the whole way from where the ground is taken.
    #[must_use]
    pub fn length_of(&self, links: &[ChosenLink]) -> Length {
        links.iter().fold(Length::ZERO, |sum, link| sum + self.bought(link).length)
    }

    /// What links cost together.
    #[must_use]
    pub fn price_of_links(&self, links: &[ChosenLink]) -> Price {
        links.iter().map(|link| self.price_of(link)).sum()
    }

    /// The sizes of conductor along a way, from its start: what it shares with a larger circuit's ground is as large as that.
    #[must_use]
    pub fn sizes_along(&self, way: &Way) -> Vec<Gauge> {
        let mut sizes: Vec<Gauge> = way.own().iter().map(|link| self.size_of(link)).collect();
        sizes.dedup();
        sizes
    }

    /// Openings in finished surfaces that links cost.
    #[must_use]
    pub fn openings_of(&self, links: &[ChosenLink]) -> u32 {
        links.iter().map(|link| self.bought(link).openings).sum()
    }

    /// The stretches of a chosen link that the tool built, with the way of each on the floor plans; none of a route that
    /// the survey states.
    #[must_use]
    pub fn legs_of(&self, chosen: &ChosenLink) -> Vec<Leg> {
        let Origin::Built(walked) = &self.bought(chosen).origin else { return Vec::new() };
        let leg = |(position, forward): (usize, bool)| {
            let edge = &self.assembled.network.graph.edges[position];
            let line = if forward { edge.line.clone() } else { turned(&edge.line) };
            let says = if forward { edge.reason.clone() } else { edge.back.clone() };
            let (kind, difficulty, length, openings) = (edge.kind, edge.difficulty, edge.length, edge.openings);
            Leg { kind, difficulty, length, openings, says, line }
        };
        let walked = walked.iter().map(|(edge, forward)| (*edge, *forward));
        if chosen.forward {
            walked.map(leg).collect()
        } else {
            walked.rev().map(|(edge, forward)| leg((edge, !forward))).collect()
        }
    }
}

/// A way on the floor plans the other way round: each stretch keeps its layer, which is told where it ends.
fn turned(line: &[LinePoint]) -> Vec<LinePoint> {
    let layers = line.last().into_iter().chain(line.iter().skip(1).rev()).map(|corner| corner.layer);
    line.iter().rev().zip(layers).map(|(corner, layer)| LinePoint { layer, ..*corner }).collect()
}
