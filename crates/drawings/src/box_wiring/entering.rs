//! The cables that enter a box, as they were found and as a plan leaves them.

use super::value::{CablePart, Carries, FarEnd, WiredCable};
use dwelling::{
    BoxIndex, CableKind, CircuitIndex, CircuitTree, Dwelling, Feed, GroundFact, GroundPath, RouteEnd, RouteKind,
};
use electrical::ConductorMetal;
use remedies::{Planned, Way};
use std::collections::BTreeSet;

/// What is asked of the dwelling around a box.
pub(crate) struct Around<'a> {
    pub(crate) dwelling: &'a Dwelling,
    pub(crate) at: BoxIndex,
    /// What is known of the ground at each box.
    pub(crate) grounds: Vec<GroundFact>,
    pub(crate) trees: &'a [CircuitTree],
}

/// A cable, and the box at the lower end of its run where it is one.
pub(crate) struct Entering {
    pub(crate) cable: WiredCable,
    /// The box at the end of the run away from the panel: the box itself for the run that feeds it.
    pub(crate) run_to: Option<BoxIndex>,
}

impl Around<'_> {
    /// The boxes that are fed straight from here, on the same circuit or multiwire set.
    pub(crate) fn fed(&self) -> Vec<BoxIndex> {
        let tree = self.trees.iter().find(|tree| tree.members.contains(&self.at) || tree.unplaced.contains(&self.at));
        tree.map_or_else(Vec::new, |tree| tree.children(self.at).to_vec())
    }

    /// The circuit of the box, where known.
    fn own(&self) -> Option<CircuitIndex> {
        self.dwelling.device_box(self.at).circuit
    }

    /// Whether the ground of a run goes through it, by its wiring method and by what was seen at its lower end.
    pub(crate) fn run_carries_ground(&self, to: BoxIndex) -> bool {
        match self.dwelling.ground_path_to(to) {
            GroundPath::Yes | GroundPath::Disputed => true,
            GroundPath::No => false,
            // Nobody has looked, but what was read below it needs a ground that came through it.
            GroundPath::Unknown => {
                matches!(self.grounds[to.0], GroundFact::Connected | GroundFact::Poor | GroundFact::Disputed)
            }
        }
    }

    /// The conductors of a run, from left to right.
    fn conductors(&self, to: BoxIndex, kind: CableKind) -> Vec<Carries> {
        let dwelling = self.dwelling;
        let circuit = dwelling.device_box(to).circuit;
        let own = self.own().or(circuit);
        let partner = own.and_then(|own| dwelling.partner_of(own));
        let is_other = circuit.is_some() && circuit == partner;
        let mut conductors = match (dwelling.neutral_is_shared_to(to), is_other) {
            (true, _) => vec![Carries::Hot, Carries::OtherHot, Carries::Neutral],
            (false, true) => vec![Carries::OtherHot, Carries::Neutral],
            (false, false) => vec![Carries::Hot, Carries::Neutral],
        };
        if kind.has_ground_wire() || self.run_carries_ground(to) {
            conductors.push(Carries::Ground);
        }
        conductors
    }

    fn run(&self, part: CablePart, to: BoxIndex, far: (FarEnd, Option<String>)) -> Entering {
        let dwelling = self.dwelling;
        let kind = dwelling.cable_to(to);
        let cable = WiredCable {
            part,
            far_end: far.0,
            to: far.1,
            kind: Some(kind),
            size: dwelling.gauge_to(to).map(|gauge| gauge.to_string()),
            aluminium: dwelling.metal_to(to) == ConductorMetal::Aluminium,
            route: None,
            assumed: dwelling.device_box(to).feed_assumed,
            conductors: self.conductors(to, kind),
        };
        Entering { cable, run_to: Some(to) }
    }

    fn id(&self, at: BoxIndex) -> Option<String> {
        Some(self.dwelling.device_box(at).id.clone())
    }

    /// The run that feeds the box, where known.
    fn feed(&self, part: CablePart) -> Option<Entering> {
        let far = match self.dwelling.device_box(self.at).fed_by? {
            Feed::Panel(panel) => (FarEnd::Panel, Some(self.dwelling.panel(panel).id.clone())),
            Feed::Box(from) => (FarEnd::Box, self.id(from)),
        };
        Some(self.run(part, self.at, far))
    }

    /// The cables that a count says are there and nobody knows of; one where not even a feed is known.
    fn unknown(&self, known: usize) -> Vec<Entering> {
        let device_box = self.dwelling.device_box(self.at);
        let counted = device_box.cables_in_box.map(|count| count as usize);
        let least = usize::from(device_box.fed_by.is_none());
        let missing = counted.map_or(least, |counted| counted.saturating_sub(known).max(least));
        let one = || {
            let mut entering = self.run(CablePart::Unknown, self.at, (FarEnd::Unknown, None));
            entering.cable.assumed = false;
            Entering { run_to: None, ..entering }
        };
        (0..missing).map(|_| one()).collect()
    }

    /// As they were found.
    pub(crate) fn as_found(&self) -> Vec<Entering> {
        let fed = self.fed();
        let mut list: Vec<Entering> = self.feed(CablePart::Line).into_iter().collect();
        let known = list.len() + fed.len();
        list.extend(self.unknown(known));
        list.extend(fed.into_iter().map(|to| self.run(CablePart::Onward, to, (FarEnd::Box, self.id(to)))));
        list
    }

    /// As a plan leaves them.
    pub(crate) fn as_planned(&self, plan: &Planned, ways: &[Way]) -> Vec<Entering> {
        let cable_to = |to: BoxIndex| ways.iter().find(|way| way.kind == RouteKind::NewCable && way.to == to);
        let load = if plan.chosen(self.at).gives_protection() { plan.behind_load(self.at) } else { Vec::new() };
        let part = |to: &BoxIndex| if load.contains(to) { CablePart::Load } else { CablePart::Onward };
        let fed = self.fed();
        let mut list = Vec::new();
        let replaced = cable_to(self.at);
        match replaced {
            Some(way) => list.push(self.new_cable(CablePart::Line, way, way.from)),
            None => list.extend(self.feed(CablePart::Line)),
        }
        let known = usize::from(self.dwelling.device_box(self.at).fed_by.is_some()) + fed.len();
        let unknown = self.unknown(known);
        list.extend(unknown.into_iter().skip(usize::from(replaced.is_some() && known == fed.len())));
        let kept = fed.iter().filter(|to| cable_to(**to).is_none());
        let kept = kept.map(|to| self.run(part(to), *to, (FarEnd::Box, self.id(*to))));
        let starting = ways.iter().filter(|way| way.kind == RouteKind::NewCable && way.from == RouteEnd::Box(self.at));
        let starting = starting.map(|way| self.new_cable(part(&way.to), way, RouteEnd::Box(way.to)));
        let mut further: Vec<Entering> = kept.chain(starting).collect();
        further.sort_by_key(|entering| entering.cable.part);
        list.extend(further);
        list.extend(self.grounds_brought(ways));
        if replaced.is_some() {
            list.extend(self.feed(CablePart::Abandoned));
        }
        let gone = fed.iter().filter(|to| cable_to(**to).is_some());
        list.extend(gone.map(|to| self.run(CablePart::Abandoned, *to, (FarEnd::Box, self.id(*to)))));
        list
    }

    fn new_cable(&self, part: CablePart, way: &Way, far: RouteEnd) -> Entering {
        let (far_end, to) = self.far(far);
        let cable = WiredCable {
            part,
            far_end,
            to,
            kind: Some(CableKind::NmWithGround),
            size: Some(way.size().to_string()),
            aluminium: false,
            route: Some(way.id.clone()),
            assumed: false,
            conductors: vec![Carries::Hot, Carries::Neutral, Carries::Ground],
        };
        Entering { cable, run_to: None }
    }

    fn far(&self, end: RouteEnd) -> (FarEnd, Option<String>) {
        match end {
            RouteEnd::Panel(panel) => (FarEnd::Panel, Some(self.dwelling.panel(panel).id.clone())),
            RouteEnd::Box(at) => (FarEnd::Box, self.id(at)),
            RouteEnd::Source(source) => (FarEnd::Source, Some(self.dwelling.source(source).id.clone())),
        }
    }

    /// The grounding conductors that the plan brings to the box, and those that it leads on from it: ways that share their
    /// first stretch leave as one.
    fn grounds_brought(&self, ways: &[Way]) -> Vec<Entering> {
        let brought = |part: CablePart, way: &Way, far: RouteEnd| {
            let (far_end, to) = self.far(far);
            let cable = WiredCable {
                part,
                far_end,
                to,
                kind: None,
                size: Some(way.size().to_string()),
                aluminium: false,
                route: Some(way.id.clone()),
                assumed: false,
                conductors: vec![Carries::Ground],
            };
            Entering { cable, run_to: None }
        };
        let of_grounds = || ways.iter().filter(|way| way.kind == RouteKind::Egc);
        let arriving = of_grounds().filter(|way| RouteEnd::Box(way.to) == RouteEnd::Box(self.at));
        let mut list: Vec<Entering> = arriving.map(|way| brought(CablePart::Ground, way, way.from)).collect();
        let mut left: BTreeSet<usize> = BTreeSet::new();
        for way in of_grounds().filter(|way| way.from == RouteEnd::Box(self.at)) {
            if way.links.first().is_some_and(|link| left.insert(link.link)) {
                list.push(brought(CablePart::GroundOnward, way, RouteEnd::Box(way.to)));
            }
        }
        list
    }
}
