//! Routes as links: those of the survey, and what the code says of where any route takes its ground from.

use crate::facts::Facts;
use crate::network::{BuyableRoute, Origin, RefusedRoute, WayEnd, carried_by, end_of, rooms_opened};
use crate::room_in_box::GRADES;
use crate::route_prices::{lines_as_stated, prices_by_grade};
use diagnosis::Certainty;
use dwelling::{
    BoxIndex, CableInBox, CableKind, Circuit, Feed, GroundFact, PanelIndex, Route, RouteEnd, RouteKind, SourceKind,
};
use electrical::{Amperes, ConductorMetal};
use estimate::{Price, PriceBook};
use optimizer::{Cost, Link};
use rulebook::{
    Citation, ConnectionPlace, DeviceSpace, FillVerdict, GroundConnection, Lawful, SourceFacts, fill_with,
    ground_connection,
};

/// The largest breaker whose grounds and cables are planned: the grades go no further.
const MOST_AMPERES: u32 = 60;
/// The largest breaker whose cables are planned: their conductors are as large as their ground.
const MOST_AMPERES_OF_A_CABLE: u32 = 30;

/// Why a route cannot be bought.
pub struct Refusal {
    /// Why not.
    pub why: String,
    /// Where the code says so, where it is the code that does.
    pub cites: Vec<Citation>,
    /// Whether finding something out could change this.
    pub could_change: bool,
}

impl Refusal {
    fn plain(why: impl Into<String>, could_change: bool) -> Self {
        Self { why: why.into(), cites: Vec::new(), could_change }
    }
}

/// A route of the survey as a link.
pub fn link_of(
    facts: &Facts,
    book: &PriceBook,
    index: usize,
    route: &Route,
) -> Result<(Link, BuyableRoute), RefusedRoute> {
    let refused = |Refusal { why, cites, could_change }| RefusedRoute { route: index, why, cites, could_change };
    if route.closed {
        return Err(refused(Refusal::plain("the survey says that this way is closed", false)));
    }
    let prices = prices_by_grade(book, route.kind, lines_as_stated(route, 0));
    let (link, mut buyable) = link_at(facts, route, prices, Origin::Stated(index)).map_err(refused)?;
    buyable.opens = rooms_opened(facts, route);
    Ok((link, buyable))
}

/// A route between a box, a panel or a source and a box as a link at these prices.
pub fn link_at(
    facts: &Facts,
    route: &Route,
    prices: Vec<Price>,
    origin: Origin,
) -> Result<(Link, BuyableRoute), Refusal> {
    let RouteEnd::Box(to) = route.to else {
        return Err(Refusal::plain("it does not end at a box", false));
    };
    // A way from a box without a ground to one that has it is walked from the ground.
    let (from, to) = match route.from {
        RouteEnd::Box(from) if facts.at(to).supplied && !facts.at(from).supplied && route.kind == RouteKind::Egc => {
            (RouteEnd::Box(to), from)
        }
        from => (from, to),
    };
    let origin = match origin {
        Origin::Built(walked) if from != route.from => {
            Origin::Built(walked.into_iter().rev().map(|(edge, forward)| (edge, !forward)).collect())
        }
        origin => origin,
    };
    let found = connection(facts, from, to, route.kind)?;
    let disputed = (found.lawful == Lawful::Disputed).then_some(found.why);
    let cost = |price: &Price| Cost { cents: price.total().0, openings: i64::from(route.openings), devices: 0 };
    let link = Link {
        from: end_of(facts, from),
        to: end_of(facts, RouteEnd::Box(to)),
        both_ways: is_either_way(facts, route),
        cost_by_grade: prices.iter().map(cost).collect(),
        reparents: route.kind == RouteKind::NewCable && fed_from(facts, to) != Some(from),
    };
    let buyable = BuyableRoute {
        origin,
        kind: route.kind,
        ends: (WayEnd::At(from), WayEnd::At(RouteEnd::Box(to))),
        length: route.length,
        openings: route.openings,
        opens: Vec::new(),
        prices,
        cites: found.cites,
        conditions: found.conditions,
        disputed,
    };
    Ok((link, buyable))
}

/// What the code says of bringing a ground from one place to a box; lawful or disputed.
///
/// # Errors
/// Why it cannot be brought.
pub fn connection(facts: &Facts, from: RouteEnd, to: BoxIndex, kind: RouteKind) -> Result<GroundConnection, Refusal> {
    let Some(circuit) = facts.dwelling.circuit_of(to) else {
        return Err(Refusal::plain("the circuit of the box it leads to is not known", true));
    };
    let most = if kind == RouteKind::Egc { MOST_AMPERES } else { MOST_AMPERES_OF_A_CABLE };
    if circuit.breaker.is_some_and(|breaker| breaker.get() > most) {
        return Err(Refusal::plain(format!("no such run is planned for a circuit above {most} A"), false));
    }
    can_be_a_start(facts, from)?;
    if kind == RouteKind::NewCable {
        cable_can_be_led(facts, from, to).map_err(|(why, could_change)| Refusal::plain(why, could_change))?;
    }
    let found = ground_connection(source_facts(facts, from, to, circuit), &facts.code);
    let refusal = |could_change| Refusal { why: found.why.clone(), cites: found.cites.clone(), could_change };
    match found.lawful {
        Lawful::Yes | Lawful::Disputed => Ok(found),
        Lawful::No => Err(refusal(false)),
        Lawful::NotChecked => Err(refusal(true)),
    }
}

/// Whether a panel has a bar to start from, and a neutral is where it may serve as a ground.
fn can_be_a_start(facts: &Facts, from: RouteEnd) -> Result<(), Refusal> {
    let dwelling = facts.dwelling;
    if let RouteEnd::Panel(from) = from {
        match dwelling.panel(from).ground_bar {
            Some(true) => {}
            Some(false) => return Err(Refusal::plain("the panel it starts at has no ground bar", false)),
            None => return Err(Refusal::plain("find out whether the panel has a ground bar", true)),
        }
    }
    if let RouteEnd::Source(source) = from
        && dwelling.source(source).kind == SourceKind::ServiceNeutral
    {
        match dwelling.source(source).panel.and_then(|panel| dwelling.panel(panel).service) {
            Some(true) => {}
            Some(false) => {
                let why =
                    "a neutral may serve as a ground inside the service equipment only, and this panel is fed from it";
                return Err(Refusal::plain(why, false));
            }
            None => {
                let why = "find out whether this panel is the service equipment: in any other a neutral is no ground";
                return Err(Refusal::plain(why, true));
            }
        }
    }
    Ok(())
}

/// Whether ground may flow either way along a route: between two boxes of which neither has one yet.
fn is_either_way(facts: &Facts, route: &Route) -> bool {
    match (route.kind, route.from, route.to) {
        (RouteKind::Egc, RouteEnd::Box(from), RouteEnd::Box(to)) => !facts.at(from).supplied && !facts.at(to).supplied,
        _ => false,
    }
}

fn fed_from(facts: &Facts, at: BoxIndex) -> Option<RouteEnd> {
    facts.dwelling.device_box(at).known_feed().map(|feed| match feed {
        Feed::Panel(panel) => RouteEnd::Panel(panel),
        Feed::Box(parent) => RouteEnd::Box(parent),
    })
}

/// Whether a new cable may feed a box from the other end of its route without moving it to another circuit.
fn cable_can_be_led(facts: &Facts, from: RouteEnd, to: BoxIndex) -> Result<(), (String, bool)> {
    let tree = facts.at(to).tree;
    let shared = facts.dwelling.neutral_is_shared_to(to) || tree.is_some_and(|tree| facts.trees[tree].is_multiwire());
    match from {
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
            if fed_from(facts, to) == Some(RouteEnd::Box(from)) { Ok(()) } else { another_cable_fits(facts, from, to) }
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
fn source_facts(facts: &Facts, from: RouteEnd, to: BoxIndex, circuit: &Circuit) -> SourceFacts {
    let (panel, breaker): (PanelIndex, Option<Amperes>) = (circuit.panel, circuit.breaker);
    let at = |place, same_panel| SourceFacts {
        place,
        same_panel,
        verified: Some(true),
        from_entry: None,
        gauge: None,
        through_metal: false,
        breaker,
    };
    match from {
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

/// Whether a ground may be led on from a box to any other of these, past junctions at which the other is not yet known.
///
/// The rule is asked for the smallest of their breakers: the larger ones are kept off by what the conductor there carries.
#[must_use]
pub fn leads_on(facts: &Facts, from: BoxIndex, boxes: &[BoxIndex]) -> bool {
    let breaker = |at: &BoxIndex| facts.dwelling.circuit_of(*at).and_then(|circuit| circuit.breaker);
    let others = || boxes.iter().filter(|at| **at != from);
    let same = |at: &&BoxIndex| facts.dwelling.device_box(**at).circuit == facts.dwelling.device_box(from).circuit;
    let may = |at: &BoxIndex| connection(facts, RouteEnd::Box(from), *at, RouteKind::Egc).is_ok();
    let smallest = others().filter(|at| !same(at)).min_by_key(|at| breaker(at));
    let any = others().next().is_some();
    any && smallest.is_none_or(may) && others().find(same).is_none_or(may)
}
