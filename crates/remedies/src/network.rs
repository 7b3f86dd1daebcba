//! The network of grounds: bonded groups, places a ground can be taken from, and the routes between them.

use crate::facts::Facts;
use crate::room_in_box::GRADES;
use diagnosis::Certainty;
use dwelling::{
    BoxIndex, CableInBox, CableKind, Feed, GroundFact, PanelIndex, Route, RouteEnd, RouteKind, SourceIndex, SourceKind,
};
use electrical::{Amperes, ConductorMetal, Gauge};
use estimate::{Material, Price, PriceBook, Task};
use optimizer::{Cost, Group, Link, LinkEnd};
use rulebook::{
    Citation, ConnectionPlace, DeviceSpace, FillVerdict, Lawful, SourceFacts, fill_with, ground_connection,
};

/// The network as the optimizer sees it, and the way back to the survey.
pub struct Network {
    /// Bonded groups first, then one group for each panel's bar, then one for each ground source.
    pub groups: Vec<Group>,
    /// The links that can be bought.
    pub links: Vec<Link>,
    /// By link: what it is in the survey.
    pub bought_as: Vec<BuyableRoute>,
    /// The routes that cannot be bought, and why.
    pub refused: Vec<RefusedRoute>,
    /// By box: how many routes could land there.
    pub links_at: Vec<u32>,
}

/// A route of the survey that can be bought.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuyableRoute {
    /// Its position in the survey.
    pub route: usize,
    /// The ends in the direction in which its link runs forward.
    pub ends: (RouteEnd, RouteEnd),
    /// By grade: what it costs.
    pub prices: Vec<Price>,
    /// Where the code allows the connection, and how that is known.
    pub cites: Vec<Citation>,
    /// The conditions under which it does.
    pub conditions: Vec<String>,
    /// The two readings, where authorities read the connection in two ways.
    pub disputed: Option<String>,
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

impl Network {
    /// Builds the network of a dwelling.
    #[must_use]
    pub fn of(facts: &Facts, book: &PriceBook) -> Self {
        let mut network = Self {
            groups: groups_of(facts),
            links: Vec::new(),
            bought_as: Vec::new(),
            refused: Vec::new(),
            links_at: vec![0; facts.dwelling.boxes.len()],
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
fn carried_by(facts: &Facts, members: &[BoxIndex]) -> usize {
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

/// The largest breaker whose grounds and cables are planned: the grades go no further.
const MOST_AMPERES: u32 = 60;
/// The largest breaker whose cables are planned: their conductors are as large as their ground.
const MOST_AMPERES_OF_A_CABLE: u32 = 30;

fn link_of(facts: &Facts, book: &PriceBook, index: usize, route: &Route) -> Result<(Link, BuyableRoute), RefusedRoute> {
    let refuse =
        |why: String, cites: Vec<Citation>, could_change| RefusedRoute { route: index, why, cites, could_change };
    let RouteEnd::Box(to) = route.to else {
        return Err(refuse("it does not end at a box".into(), Vec::new(), false));
    };
    if route.closed {
        return Err(refuse("the survey says that this way is closed".into(), Vec::new(), false));
    }
    // A way from a box without a ground to one that has it is walked from the ground.
    let turned = match route.from {
        RouteEnd::Box(from) if facts.at(to).supplied && !facts.at(from).supplied && route.kind == RouteKind::Egc => {
            Some(Route { from: route.to, to: route.from, ..route.clone() })
        }
        _ => None,
    };
    let route = turned.as_ref().unwrap_or(route);
    let RouteEnd::Box(to) = route.to else {
        return Err(refuse("it does not end at a box".into(), Vec::new(), false));
    };
    let Some(circuit) = facts.dwelling.circuit_of(to) else {
        let why = "the circuit of the box it leads to is not known".into();
        return Err(refuse(why, Vec::new(), true));
    };
    let most = if route.kind == RouteKind::Egc { MOST_AMPERES } else { MOST_AMPERES_OF_A_CABLE };
    if circuit.breaker.is_some_and(|breaker| breaker.get() > most) {
        let why = format!("no such run is planned for a circuit above {most} A");
        return Err(refuse(why, Vec::new(), false));
    }
    if let RouteEnd::Panel(from) = route.from {
        match facts.dwelling.panel(from).ground_bar {
            Some(true) => {}
            Some(false) => return Err(refuse("the panel it starts at has no ground bar".into(), Vec::new(), false)),
            None => return Err(refuse("find out whether the panel has a ground bar".into(), Vec::new(), true)),
        }
    }
    if let RouteEnd::Source(source) = route.from
        && facts.dwelling.source(source).kind == SourceKind::ServiceNeutral
    {
        match facts.dwelling.source(source).panel.and_then(|panel| facts.dwelling.panel(panel).service) {
            Some(true) => {}
            Some(false) => {
                let why =
                    "a neutral may serve as a ground inside the service equipment only, and this panel is fed from it";
                return Err(refuse(why.into(), Vec::new(), false));
            }
            None => {
                let why = "find out whether this panel is the service equipment: in any other a neutral is no ground";
                return Err(refuse(why.into(), Vec::new(), true));
            }
        }
    }
    if route.kind == RouteKind::NewCable {
        cable_can_be_led(facts, route, to).map_err(|(why, could_change)| refuse(why, Vec::new(), could_change))?;
    }
    let found = ground_connection(source_facts(facts, route, to, circuit.panel, circuit.breaker), &facts.code);
    let disputed = match found.lawful {
        Lawful::Yes => None,
        Lawful::Disputed => Some(found.why),
        Lawful::No => return Err(refuse(found.why, found.cites, false)),
        Lawful::NotChecked => return Err(refuse(found.why, found.cites, true)),
    };
    let prices: Vec<Price> = (0..GRADES.len()).map(|grade| price_of(book, route, grade)).collect();
    let cost = |price: &Price| Cost { cents: price.total().0, openings: i64::from(route.openings), devices: 0 };
    let link = Link {
        from: end_of(facts, route.from),
        to: end_of(facts, route.to),
        both_ways: is_either_way(facts, route),
        cost_by_grade: prices.iter().map(cost).collect(),
        reparents: route.kind == RouteKind::NewCable && fed_from(facts, to) != Some(route.from),
    };
    Ok((
        link,
        BuyableRoute {
            route: index,
            ends: (route.from, route.to),
            prices,
            cites: found.cites,
            conditions: found.conditions,
            disputed,
        },
    ))
}

/// Whether ground may flow either way along a route: between two boxes of which neither has one yet.
fn is_either_way(facts: &Facts, route: &Route) -> bool {
    match (route.kind, route.from, route.to) {
        (RouteKind::Egc, RouteEnd::Box(from), RouteEnd::Box(to)) => !facts.at(from).supplied && !facts.at(to).supplied,
        _ => false,
    }
}

fn fed_from(facts: &Facts, at: BoxIndex) -> Option<RouteEnd> {
    facts.dwelling.device_box(at).fed_by.map(|feed| match feed {
        Feed::Panel(panel) => RouteEnd::Panel(panel),
        Feed::Box(parent) => RouteEnd::Box(parent),
    })
}

/// Whether a new cable may feed a box from the other end of its route without moving it to another circuit.
fn cable_can_be_led(facts: &Facts, route: &Route, to: BoxIndex) -> Result<(), (String, bool)> {
    let tree = facts.at(to).tree;
    let shared = facts.dwelling.neutral_is_shared_to(to) || tree.is_some_and(|tree| facts.trees[tree].is_multiwire());
    match route.from {
        _ if shared => {
            Err(("a new cable for half of a multiwire circuit is not planned: split the set first".into(), false))
        }
        RouteEnd::Source(_) => Err(("a new cable starts at a panel or a box, not at a ground".into(), false)),
        RouteEnd::Panel(panel) if facts.dwelling.circuit_of(to).is_some_and(|circuit| circuit.panel != panel) => {
            Err(("it starts at another panel than the circuit of the box".into(), false))
        }
        RouteEnd::Panel(_) => Ok(()),
        RouteEnd::Box(from) if facts.at(from).tree != tree || tree.is_none() => {
            Err(("it would move the opening to another circuit".into(), false))
        }
        RouteEnd::Box(from) => {
            let behind = tree.is_some_and(|tree| facts.trees[tree].downstream(to).contains(&from));
            if behind {
                return Err(("it would feed the box from behind itself".into(), false));
            }
            if fed_from(facts, to) == Some(route.from) { Ok(()) } else { another_cable_fits(facts, from, to) }
        }
    }
}

/// Whether a box has room for one more cable that feeds another box.
fn another_cable_fits(facts: &Facts, from: BoxIndex, to: BoxIndex) -> Result<(), (String, bool)> {
    let at = facts.at(from);
    let mut contents = at.as_found.fill.clone();
    let (gauge, metal) = (facts.dwelling.gauge_to(to), ConductorMetal::Copper);
    contents.cables.known.push(CableInBox { kind: CableKind::NmWithGround, gauge, metal, insulated: 2 });
    let space = if at.as_found.holds.has_strap() { DeviceSpace::Strap } else { DeviceSpace::None };
    let id = &facts.dwelling.device_box(from).id;
    match fill_with(&contents, space, 0, None, &facts.code).verdict {
        FillVerdict::Fits => Ok(()),
        FillVerdict::TooFull => Err((format!("box {id} has no room for another cable"), false)),
        FillVerdict::NotChecked(missing) => {
            Err((format!("find out whether box {id} has room for another cable: {}", missing.because), true))
        }
    }
}

/// What the far end of a route is, as the rule on ground connections asks it.
fn source_facts(
    facts: &Facts,
    route: &Route,
    to: BoxIndex,
    panel: PanelIndex,
    breaker: Option<Amperes>,
) -> SourceFacts {
    let at = |place, same_panel| SourceFacts {
        place,
        same_panel,
        verified: Some(true),
        from_entry: None,
        gauge: None,
        through_metal: false,
        breaker,
    };
    match route.from {
        RouteEnd::Panel(from) => SourceFacts {
            verified: facts.dwelling.panel(from).ground_bar.filter(|there| *there),
            ..at(ConnectionPlace::Source(SourceKind::GroundBar), Some(from == panel))
        },
        RouteEnd::Source(source) => {
            let source = facts.dwelling.source(source);
            SourceFacts {
                verified: source.verified,
                from_entry: source.from_entry,
                gauge: source.gauge,
                ..at(ConnectionPlace::Source(source.kind), source.panel.map(|of| of == panel))
            }
        }
        RouteEnd::Box(from) => {
            let same_circuit = facts.dwelling.device_box(from).circuit == facts.dwelling.device_box(to).circuit;
            let place =
                if same_circuit { ConnectionPlace::BoxOfTheSameCircuit } else { ConnectionPlace::BoxOfAnotherCircuit };
            let of = facts.dwelling.circuit_of(from);
            // A box that has no ground yet can only get one that this plan brings and proves.
            let state = &facts.diagnosis.ground[from.0];
            let shown = state.fact == GroundFact::Connected && state.sure == Certainty::Shown;
            let verified = if facts.at(from).supplied { shown.then_some(true) } else { Some(true) };
            let group = &facts.groups.group_of(from).members;
            SourceFacts {
                verified,
                gauge: GRADES.get(carried_by(facts, group)).copied(),
                through_metal: !facts.dwelling.cable_to(from).has_ground_wire() && facts.at(from).supplied,
                ..at(place, of.map(|circuit| circuit.panel == panel))
            }
        }
    }
}

fn end_of(facts: &Facts, end: RouteEnd) -> LinkEnd {
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

fn price_of(book: &PriceBook, route: &Route, grade: usize) -> Price {
    let feet = route.length.started_feet();
    let by_the_foot = match (route.kind, grade) {
        (RouteKind::Egc, 0) => Material::GroundWire14,
        (RouteKind::Egc, 1) => Material::GroundWire12,
        (RouteKind::Egc, _) => Material::GroundWire10,
        (RouteKind::NewCable, 0) => Material::Cable14,
        (RouteKind::NewCable, 1) => Material::Cable12,
        (RouteKind::NewCable, _) => Material::Cable10,
    };
    let fished =
        book.minutes(Task::FishSetup) + book.minutes(Task::FishFoot) * u32::try_from(feet).unwrap_or(u32::MAX / 64);
    let minutes = route.minutes.unwrap_or(fished) + book.minutes(Task::PatchOpening) * route.openings;
    let patches = (Material::Patch, i64::from(route.openings));
    book.price(&[(by_the_foot, feet), (Material::GroundFittings, 2), patches], minutes)
}
