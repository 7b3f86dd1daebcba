//! What could change a plan, as an answer.

use super::law::LawAnswer;
use super::opening::MoneyAnswer;
use crate::planned::Planned;
use crate::price_line::PriceLine;
use crate::sensitivity::{MOVES, SensitivePrice, Sensitivity, Tried};
use crate::unknowns::{Unknown, UnknownAt};
use diagnosis::Site;
use schemars::JsonSchema;
use serde::Serialize;

/// What could change a plan: things that the survey leaves open, and prices, each tried and planned anew, one at a time.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SensitivityAnswer {
    /// The code in force.
    pub law: LawAnswer,
    /// What the plan costs as the survey stands.
    pub price: MoneyAnswer,
    /// What the owner pays then, in cents.
    pub owner_cents: i64,
    /// What is not known and could change the plan, what could change most first.
    pub unknowns: Vec<UnknownAnswer>,
    /// What is not known and changed nothing, whichever value was tried.
    pub without_effect: Vec<String>,
    /// What is not known and was not tried, since there is too much of it.
    pub not_tried: Vec<String>,
    /// By how many percent each line of the price book was moved, one line at a time.
    pub moved_by_percent: Vec<i64>,
    /// The lines of the price book that change what is done within that, in the order of the book.
    pub prices: Vec<PriceMovedAnswer>,
    /// The charges that change nothing of what is done and only what is paid for it, in the order of the book.
    pub charges: Vec<PriceMovedAnswer>,
    /// The other lines that the plan uses or could use and that change nothing of what is done within that.
    pub prices_without_effect: Vec<&'static str>,
}

/// Something that is not known and could change the plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct UnknownAnswer {
    /// `panel`, `source`, `circuit` or `box`.
    pub at: &'static str,
    /// The id of that.
    pub id: String,
    /// What is not known.
    pub what: String,
    /// The most that the plan would cost more, in cents; null where some value leaves something unlawful, or equipment
    /// without the ground it needs, on which no price is put.
    pub worst_cents: Option<i64>,
    /// The least that the plan would cost more, in cents; below zero where it would cost less.
    pub best_cents: Option<i64>,
    /// What comes of each value that was tried.
    pub values: Vec<TriedAnswer>,
}

/// What comes of one value of something unknown, or of one move of a price.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TriedAnswer {
    /// What was tried.
    pub value: String,
    /// What the plan would cost more, in cents; null where it would leave something unlawful, or equipment without the
    /// ground it needs: no price is put on that.
    pub costs_more_cents: Option<i64>,
    /// What the owner would pay more, in cents, with all that is charged besides; null where no price is put on it.
    pub owner_costs_more_cents: Option<i64>,
    /// What it would fall short of.
    pub falls_short: Vec<String>,
    /// What would be done differently.
    pub changes: Vec<String>,
}

/// A line of the price book that changes what is done.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PriceMovedAnswer {
    /// Its name in the book.
    pub line: &'static str,
    /// The table in which it stands: `material`, `minutes`, `conditions`, `crew`, `charges`, or null for the hours.
    pub table: Option<&'static str>,
    /// How far down it was moved without a change of what is done, in percent: the furthest that was tried.
    pub holds_from_percent: i64,
    /// How far up.
    pub holds_to_percent: i64,
    /// What comes of each move.
    pub moves: Vec<TriedAnswer>,
}

/// What could change a plan, as an answer.
#[must_use]
pub fn sensitivity_answer(plan: &Planned, law: &LawAnswer, found: &Sensitivity) -> SensitivityAnswer {
    let in_words = |unknown: &Unknown| {
        let (at, id) = place_of(plan, unknown.at);
        format!("{at} {id}: {}", unknown.what)
    };
    let unknowns = found.unknowns.iter().filter(|one| one.changes_anything()).map(|one| {
        let (at, id) = place_of(plan, one.unknown.at);
        UnknownAnswer {
            at,
            id,
            what: one.unknown.what.clone(),
            worst_cents: one.worst_cents(),
            best_cents: one.best_cents(),
            values: one.tried.iter().map(TriedAnswer::of).collect(),
        }
    });
    let (moving, still): (Vec<_>, Vec<_>) =
        found.prices.iter().partition(|price| price.tried.iter().any(|tried| !tried.changes.is_empty()));
    let (charges, still): (Vec<_>, Vec<_>) =
        still.into_iter().partition(|price| matches!(price.line, PriceLine::Charge(_)));
    let without_effect = found.unknowns.iter().filter(|one| !one.changes_anything());
    SensitivityAnswer {
        law: law.clone(),
        price: MoneyAnswer::of(plan.total()),
        owner_cents: plan.book.owner_price(plan.total()).total.0,
        unknowns: unknowns.collect(),
        without_effect: without_effect.map(|one| in_words(&one.unknown)).collect(),
        not_tried: found.not_tried.iter().map(in_words).collect(),
        moved_by_percent: MOVES.to_vec(),
        prices: moving.into_iter().map(PriceMovedAnswer::of).collect(),
        charges: charges.into_iter().map(PriceMovedAnswer::of).collect(),
        prices_without_effect: still.into_iter().map(|price| price.line.name()).collect(),
    }
}

impl PriceMovedAnswer {
    fn of(price: &SensitivePrice) -> Self {
        let (holds_from_percent, holds_to_percent) = price.holds_within();
        let moves = price.tried.iter().map(TriedAnswer::of).collect();
        let (line, table) = (price.line.name(), price.line.table());
        Self { line, table, holds_from_percent, holds_to_percent, moves }
    }
}

impl TriedAnswer {
    fn of(tried: &Tried) -> Self {
        Self {
            value: tried.value.clone(),
            costs_more_cents: tried.costs_more_cents,
            owner_costs_more_cents: tried.owner_costs_more_cents,
            falls_short: tried.falls_short.clone(),
            changes: tried.changes.clone(),
        }
    }
}

fn place_of(plan: &Planned, at: UnknownAt) -> (&'static str, String) {
    let dwelling = plan.facts.dwelling;
    match at {
        UnknownAt::Source(at) => ("source", dwelling.source(at).id.clone()),
        UnknownAt::Site(Site::Panel(at)) => ("panel", dwelling.panel(at).id.clone()),
        UnknownAt::Site(Site::Circuit(at)) => ("circuit", dwelling.circuit(at).id.clone()),
        UnknownAt::Site(Site::Box(at)) => ("box", dwelling.device_box(at).id.clone()),
    }
}
