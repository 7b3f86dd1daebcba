//! What the owner laid down for a plan, as an answer.

use super::opening::MoneyAnswer;
use crate::planned::Planned;
use schemars::JsonSchema;
use serde::Serialize;

/// What the owner laid down, what became of it, and what it costs above the plan without it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SteeringAnswer {
    /// The wishes, in the order they were laid down.
    pub wishes: Vec<WishAnswer>,
    /// What the plan without any wish costs.
    pub unsteered: MoneyAnswer,
    /// What the plan costs above that, in cents; below zero where a wish gives up something that the survey asks for.
    pub costs_more_cents: i64,
    /// How many openings in finished surfaces it makes above that.
    pub more_wall_openings: i64,
    /// The sum of money that was laid down; null where none was.
    pub budget: Option<BudgetAnswer>,
}

/// A sum of money that the owner is to pay at most, within which the plan is to give the most, by what is plugged in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct BudgetAnswer {
    /// The sum, in cents.
    pub cents: i64,
    /// Whether the plan stays within it.
    pub had: bool,
    /// What is left of it, in cents; below zero what is missing for the cheapest lawful whole.
    pub left_cents: i64,
}

/// One thing that the owner laid down.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WishAnswer {
    /// `ground`, `keep` or `no-open`.
    pub asked: &'static str,
    /// The box or the room.
    pub of: String,
    /// Whether the plan gives it.
    pub had: bool,
    /// What stands in the way, where it does not.
    pub why_not: Vec<String>,
}

impl SteeringAnswer {
    /// What became of what was laid down; nothing where nothing was.
    #[must_use]
    pub fn of(plan: &Planned) -> Option<Self> {
        let steered = plan.steered.as_ref()?;
        let standing = plan.standing();
        let wishes = steered.wishes.iter().map(|(wish, why_not)| WishAnswer {
            asked: wish.kind(),
            of: wish.of(plan.facts.dwelling).to_owned(),
            had: why_not.is_empty(),
            why_not: why_not.clone(),
        });
        Some(Self {
            wishes: wishes.collect(),
            unsteered: MoneyAnswer::of(steered.unsteered.price),
            costs_more_cents: standing.price.total().0 - steered.unsteered.price.total().0,
            more_wall_openings: standing.wall_openings - steered.unsteered.wall_openings,
            budget: steered.budget.map(|budget| {
                let left_cents = budget.0 - plan.book.owner_price(standing.price).total.0;
                BudgetAnswer { cents: budget.0, had: left_cents >= 0, left_cents }
            }),
        })
    }
}
