//! What can be offered to an owner, as an answer.

use super::findings::ids;
use super::opening::MoneyAnswer;
use crate::offers::{OfferKind, Offers, Point};
use crate::planned::Planned;
use dwelling::BoxIndex;
use schemars::JsonSchema;
use serde::Serialize;

/// What can be offered: a few plans side by side, and the whole frontier on which they lie.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OffersAnswer {
    /// The offers, by rising price.
    pub offers: Vec<OfferAnswer>,
    /// The offer that this plan is, counted from 1.
    pub taken: usize,
    /// Receptacles without a real ground that no offer grounds.
    pub never_grounded: Vec<String>,
    /// Every plan that no other beats in money, wall openings and worth at once, by rising price.
    pub frontier: Vec<PointAnswer>,
    /// Whether the frontier is whole; else the search was stopped at its limit.
    pub complete: bool,
}

/// A plan that no other beats in money, wall openings and worth at once.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PointAnswer {
    /// What its material and labour cost, in cents.
    pub total_cents: i64,
    /// What the owner pays, in cents.
    pub owner_cents: i64,
    /// Openings made in finished surfaces.
    pub wall_openings: i64,
    /// What the grounds that it brings are worth, by what is plugged in: no money.
    pub worth: u64,
    /// The receptacles that have a real ground afterwards.
    pub grounded: Vec<String>,
}

/// One offer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OfferAnswer {
    /// What it is for.
    pub kind: OfferKind,
    /// Its name: what it gives.
    pub name: String,
    /// What its material and labour cost.
    pub price: MoneyAnswer,
    /// What the owner pays, in cents.
    pub owner_cents: i64,
    /// How many receptacles have a real ground afterwards.
    pub grounded: usize,
    /// Openings made in finished surfaces.
    pub wall_openings: i64,
    /// Openings that carry a marking, since they have no ground of their own or are protected from elsewhere.
    pub markings: usize,
    /// Working days begun, of as many hours as the price book says.
    pub days: u32,
    /// What the grounds that it brings are worth, by what is plugged in: no money.
    pub worth: u64,
    /// What it buys above the offer before it; null for the first.
    pub step_up: Option<StepUpAnswer>,
}

/// What an offer buys above the offer before it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct StepUpAnswer {
    /// What its material and labour cost more, in cents.
    pub costs_more_cents: i64,
    /// What the owner pays more, in cents.
    pub owner_costs_more_cents: i64,
    /// Receptacles that it grounds and the offer before does not.
    pub grounds: Vec<String>,
    /// Receptacles that the offer before grounds and it does not.
    pub gives_up: Vec<String>,
    /// How many more openings in finished surfaces it makes; below zero for fewer.
    pub more_wall_openings: i64,
    /// What one more receptacle with a ground costs the owner, in cents, rounded half up; null where it grounds no more of them.
    pub cents_per_opening: Option<i64>,
}

/// What can be offered; the plan is the offer counted so from 1.
#[must_use]
pub fn offers_answer(plan: &Planned, offers: &Offers, taken: usize) -> OffersAnswer {
    let dwelling = plan.facts.dwelling;
    let ever = |at: &BoxIndex| offers.offers.iter().any(|offer| grounded_in(offers, offer.point).contains(at));
    let never: Vec<BoxIndex> =
        dwelling.box_indices().filter(|at| dwelling.device_box(*at).holds.is_receptacle() && !ever(at)).collect();
    let receptacles = dwelling.box_indices().filter(|at| dwelling.device_box(*at).holds.is_receptacle()).count();
    let owner = |point: &Point| plan.book.owner_price(point.standing.price);
    let fewest = offers.frontier.iter().map(|point| point.standing.wall_openings).min().unwrap_or(0);
    let told = offers.offers.iter().enumerate().map(|(index, offer)| {
        let point = &offers.frontier[offer.point];
        let before = index.checked_sub(1).map(|before| &offers.frontier[offers.offers[before].point]);
        let all = point.standing.grounded.len() == receptacles;
        OfferAnswer {
            kind: offer.kind,
            name: name_of(offer.kind, all, fewest).to_owned(),
            price: MoneyAnswer::of(point.standing.price),
            owner_cents: owner(point).total.0,
            grounded: point.standing.grounded.len(),
            wall_openings: point.standing.wall_openings,
            markings: point.standing.marked,
            days: owner(point).days,
            worth: point.worth,
            step_up: before.map(|before| step_up(plan, before, point)),
        }
    });
    let frontier = offers.frontier.iter().map(|point| PointAnswer {
        total_cents: point.cents(),
        owner_cents: owner(point).total.0,
        wall_openings: point.standing.wall_openings,
        worth: point.worth,
        grounded: ids(dwelling, &point.standing.grounded),
    });
    OffersAnswer {
        offers: told.collect(),
        taken,
        never_grounded: ids(dwelling, &never),
        frontier: frontier.collect(),
        complete: offers.complete,
    }
}

fn grounded_in(offers: &Offers, point: usize) -> &[BoxIndex] {
    &offers.frontier[point].standing.grounded
}

/// What an offer of a kind is called, on pages and papers.
#[must_use]
pub const fn called(kind: OfferKind) -> &'static [&'static str] {
    match kind {
        OfferKind::LeastMoney => &["Lawful, least money"],
        OfferKind::LeastDisturbance => &["Fewest walls opened", "No wall opened"],
        OfferKind::Electronics => &["Grounds where electronics stand"],
        OfferKind::MostGrounds => &["All that can be grounded", "Every opening grounded"],
        OfferKind::BestValue => &["Most ground for the money"],
    }
}

/// Its name; where it has two, the last says that nothing is left over: no wall is opened, every opening is grounded.
fn name_of(kind: OfferKind, all_grounded: bool, fewest_openings: i64) -> &'static str {
    let whole = match kind {
        OfferKind::LeastDisturbance => fewest_openings == 0,
        OfferKind::MostGrounds => all_grounded,
        _ => false,
    };
    let names = called(kind);
    let name = if whole { names.last() } else { names.first() };
    name.copied().unwrap_or_default()
}

fn step_up(plan: &Planned, before: &Point, point: &Point) -> StepUpAnswer {
    let (old, new) = (&before.standing.grounded, &point.standing.grounded);
    let only_in = |these: &[BoxIndex], not: &[BoxIndex]| -> Vec<BoxIndex> {
        these.iter().filter(|at| !not.contains(at)).copied().collect()
    };
    let owner = |point: &Point| plan.book.owner_price(point.standing.price).total.0;
    let more = owner(point) - owner(before);
    let gained = i64::try_from(new.len()).unwrap_or(i64::MAX) - i64::try_from(old.len()).unwrap_or(i64::MAX);
    StepUpAnswer {
        costs_more_cents: point.cents() - before.cents(),
        owner_costs_more_cents: more,
        grounds: ids(plan.facts.dwelling, &only_in(new, old)),
        gives_up: ids(plan.facts.dwelling, &only_in(old, new)),
        more_wall_openings: point.standing.wall_openings - before.standing.wall_openings,
        cents_per_opening: (gained > 0).then(|| (2 * more + gained).div_euclid(2 * gained)),
    }
}
