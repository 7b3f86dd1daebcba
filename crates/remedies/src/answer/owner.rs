//! What the owner pays, as an answer.

use estimate::OwnerPrice;
use schemars::JsonSchema;
use serde::Serialize;

/// What the owner pays, part by part: the total is the sum of the other sums. Trips are charged for the days of this plan, and
/// steer no choice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OwnerPriceAnswer {
    /// Material and labour, in cents: what the plan is the cheapest in.
    pub work_cents: i64,
    /// Working days begun.
    pub days: u32,
    /// The trips of those days, in cents.
    pub trips_cents: i64,
    /// For what nobody could see, in cents.
    pub contingency_cents: i64,
    /// The fee of the permit, in cents.
    pub permit_cents: i64,
    /// What is missing to the least that a job is done for, in cents.
    pub to_minimum_cents: i64,
    /// What rounding up adds, in cents.
    pub rounding_cents: i64,
    /// The sum, in cents.
    pub total_cents: i64,
}

impl OwnerPriceAnswer {
    /// An owner's price as an answer.
    #[must_use]
    pub fn of(price: OwnerPrice) -> Self {
        Self {
            work_cents: price.work.0,
            days: price.days,
            trips_cents: price.trips.0,
            contingency_cents: price.contingency.0,
            permit_cents: price.permit.0,
            to_minimum_cents: price.to_minimum.0,
            rounding_cents: price.rounding.0,
            total_cents: price.total.0,
        }
    }
}
