//! The next best at an opening, as an answer.

use crate::planned::{PlanFault, Planned};
use dwelling::BoxIndex;
use schemars::JsonSchema;
use serde::Serialize;

/// The best plan that deals with one opening in another way.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct NextBestAnswer {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// What it does there, in words; null where nothing else that is lawful is possible.
    pub instead: Option<String>,
    /// What the whole costs more, in cents; null where it leaves something unlawful, or equipment without the ground it
    /// needs, that the plan does not: such a plan has no price.
    pub costs_more_cents: Option<i64>,
    /// What it would fall short of.
    pub falls_short: Vec<String>,
    /// What else would change.
    pub elsewhere: Vec<String>,
    /// Whether the search for it went to its end.
    pub exact: bool,
}

impl NextBestAnswer {
    /// The next best at an opening; nothing for a box without a receptacle and for one for which nothing lawful was found.
    ///
    /// # Errors
    /// [`PlanFault`] where the search meets a fault of this program.
    pub fn of(plan: &Planned, at: BoxIndex) -> Result<Option<Self>, PlanFault> {
        Ok(plan.next_best(at)?.map(|next| Self {
            box_id: plan.facts.dwelling.device_box(at).id.clone(),
            instead: next.instead,
            costs_more_cents: next.costs_more_cents,
            falls_short: next.falls_short,
            elsewhere: next.elsewhere,
            exact: next.exact,
        }))
    }
}

/// The next best at every receptacle, in survey order: a search for each.
///
/// # Errors
/// [`PlanFault`] where a search meets a fault of this program.
pub fn next_best_answers(plan: &Planned) -> Result<Vec<NextBestAnswer>, PlanFault> {
    let found = plan.facts.dwelling.box_indices().map(|at| NextBestAnswer::of(plan, at));
    found.filter_map(Result::transpose).collect()
}
