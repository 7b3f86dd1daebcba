//! The routes of a plan as answers: what is bought, leg by leg, what cannot be bought, and what could not be built.

use super::duties::sections;
use super::findings::ids;
use super::lines::LineAnswer;
use super::opening::MoneyAnswer;
use crate::planned::Planned;
use crate::ways::{Leg, Way};
use dwelling::{RouteEnd, RouteKind};
use electrical::Gauge;
use estimate::Price;
use routes::{Difficulty, EdgeKind};
use schemars::JsonSchema;
use serde::Serialize;

/// A route that is bought: from where the ground is taken, or from the route that it branches off, to a box.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RouteAnswer {
    /// The route: its name in the survey, or `to` and the box where the tool built it.
    pub id: String,
    /// Where it starts.
    pub from: String,
    /// Where it ends.
    pub to: String,
    /// What is brought along it.
    pub kind: RouteKind,
    /// The size of the grounding conductor at its end.
    pub size: String,
    /// Its length, without what it shares with the route it branches off.
    pub length: String,
    /// Openings in finished surfaces.
    pub openings: u32,
    /// The remark of the survey.
    pub note: Option<String>,
    /// Whether the tool built it from the floor plan, rather than the survey stating it.
    pub built: bool,
    /// The route from which it branches off; all that it shares with that one is told and priced there.
    pub branches_from: Option<String>,
    /// Its stretches from its start to the box, those that go on along one space in one size told as one; none of a route
    /// that the survey states.
    pub legs: Vec<LegAnswer>,
    /// The boxes that it grounds.
    pub grounds: Vec<String>,
    /// The sections that allow the connection.
    pub cites: Vec<String>,
    /// The conditions under which they do.
    pub conditions: Vec<String>,
    /// What it costs.
    pub price: MoneyAnswer,
    /// The lines of that price.
    pub lines: Vec<LineAnswer>,
}

/// A stretch of a route that the tool built.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LegAnswer {
    /// How it is worked.
    pub kind: EdgeKind,
    /// How hard it is.
    pub difficulty: Difficulty,
    /// Its length.
    pub length: String,
    /// What it costs; null for a part of a cable, which is priced in one piece.
    pub price: Option<MoneyAnswer>,
    /// Openings in finished surfaces.
    pub openings: u32,
    /// The size of the grounding conductor along it.
    pub size: String,
    /// The way in plain words, and why it costs what it costs.
    pub says: String,
}

/// A route of the survey that cannot be bought.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RefusedRouteAnswer {
    /// The route.
    pub id: String,
    /// Why not.
    pub why: String,
    /// The sections that say so, where it is the code.
    pub cites: Vec<String>,
    /// Whether finding something out could change this.
    pub could_change: bool,
}

/// What the tool could build no way of.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct NotBuiltAnswer {
    /// Why, in plain words.
    pub why: String,
    /// The boxes, rooms, panels and sources of which that is so.
    pub of: Vec<String>,
}

impl RouteAnswer {
    /// A way of a plan as an answer.
    #[must_use]
    pub fn of(plan: &Planned, way: &Way) -> Self {
        let dwelling = plan.facts.dwelling;
        let stated = way.links.last().and_then(|link| plan.bought(link).stated());
        let group = &plan.facts.groups.group_of(way.to).members;
        Self {
            id: way.id.clone(),
            from: end_name(plan, way.from),
            to: dwelling.device_box(way.to).id.clone(),
            kind: way.kind,
            size: way.size().to_string(),
            length: plan.length_of(way.own()).to_string(),
            openings: plan.openings_of(way.own()),
            note: stated.and_then(|route| dwelling.routes[route].note.clone()),
            built: stated.is_none(),
            branches_from: way.branches_from.clone(),
            legs: legs(plan, way),
            grounds: ids(dwelling, group),
            cites: sections(&way.cites),
            conditions: way.conditions.clone(),
            price: MoneyAnswer::of(plan.price_of_links(way.own())),
            lines: LineAnswer::all(&plan.book, way.own().iter().flat_map(|link| plan.lines_of(link))),
        }
    }
}

/// The stretches of a way, those that go on along one space in one size told as one.
fn legs(plan: &Planned, way: &Way) -> Vec<LegAnswer> {
    let mut told: Vec<(Leg, Gauge, Option<Price>)> = Vec::new();
    for link in way.own() {
        let (legs, size) = (plan.legs_of(link), plan.size_of(link));
        let alone = legs.len() == 1;
        for leg in legs {
            let price = alone.then(|| plan.price_of(link));
            match told.last_mut() {
                Some((last, of, paid)) if *of == size && last.goes_on_in(&leg) => {
                    last.length = last.length + leg.length;
                    last.says = last.along_its_space();
                    *paid = paid.zip(price).map(|(before, more)| before + more);
                }
                _ => told.push((leg, size, price)),
            }
        }
    }
    let answer = |(leg, size, price): (Leg, Gauge, Option<Price>)| LegAnswer {
        kind: leg.kind,
        difficulty: leg.difficulty,
        length: leg.length.to_string(),
        price: price.map(MoneyAnswer::of),
        openings: leg.openings,
        size: size.to_string(),
        says: leg.says,
    };
    told.into_iter().map(answer).collect()
}

/// The routes of the survey that cannot be bought.
pub(super) fn refused(plan: &Planned) -> Vec<RefusedRouteAnswer> {
    let refused = plan.assembled.network.refused.iter();
    refused
        .map(|refused| RefusedRouteAnswer {
            id: plan.facts.dwelling.routes[refused.route].id.clone(),
            why: refused.why.clone(),
            cites: sections(&refused.cites),
            could_change: refused.could_change,
        })
        .collect()
}

impl NotBuiltAnswer {
    /// What no way could be built of, each reason once.
    #[must_use]
    pub fn all(plan: &Planned) -> Vec<Self> {
        let mut list: Vec<Self> = Vec::new();
        for not_built in &plan.assembled.network.not_built {
            match list.last_mut().filter(|last| last.why == not_built.why) {
                Some(last) => last.of.push(not_built.of.clone()),
                None => list.push(Self { why: not_built.why.clone(), of: vec![not_built.of.clone()] }),
            }
        }
        list
    }
}

fn end_name(plan: &Planned, end: RouteEnd) -> String {
    match end {
        RouteEnd::Box(at) => plan.facts.dwelling.device_box(at).id.clone(),
        RouteEnd::Panel(at) => plan.facts.dwelling.panel(at).id.clone(),
        RouteEnd::Source(at) => plan.facts.dwelling.source(at).id.clone(),
    }
}
