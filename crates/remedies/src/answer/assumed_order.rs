//! The feeding order that a plan assumes, and what another order would change, as an answer.

use super::feeding::{FeedAnswer, feed_answers, rounded};
use crate::assumed_feeds::plan_rests_on;
use crate::candidate::Step;
use crate::planned::{PlanFault, Planned, Proof};
use crate::search_limits::of_plans_beside;
use crate::steering::Wish;
use diagnosis::feeding::{FeedingOrder, LikelyOrder, MOST_COUNTED, Orders, feeding_orders};
use dwelling::{BoxIndex, Dwelling, Feed};
use estimate::PriceBook;
use schemars::JsonSchema;
use serde::Serialize;

/// A feeding order that the plan assumes since nobody knows it.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AssumedOrderAnswer {
    /// The circuit, or both circuits of a multiwire set.
    pub circuits: Vec<String>,
    /// It in a sentence.
    pub says: String,
    /// What is assumed to feed each box of unknown feed; empty where what was seen contradicts itself.
    pub assumed: Vec<FeedAnswer>,
    /// How likely this whole order is; null where not all orders were looked at.
    pub share: Option<f64>,
    /// How many orders fit; null where not all were looked at.
    pub orders_left: Option<u64>,
    /// Whether anything that the plan does rests on it: then it must be found out first.
    pub plan_rests_on_it: bool,
    /// The next most probable orders, and what each would change.
    pub otherwise: Vec<OtherOrderAnswer>,
    /// The box to open to find out; null where no test tells anything. `thirdwire findings` tells how.
    pub open_next: Option<String>,
}

/// Another order that fits, and what it would change.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OtherOrderAnswer {
    /// How likely it is.
    pub share: f64,
    /// What feeds the boxes that it has fed otherwise.
    pub feeds: Vec<FeedAnswer>,
    /// What the plan would cost more, in cents; below zero where it would cost less.
    pub costs_more_cents: i64,
    /// Whether both are proved the cheapest; else either could be had for less than was found.
    pub exact: bool,
    /// The openings at which something else would be done.
    pub changes: Vec<StepChangeAnswer>,
}

/// What would be done otherwise at an opening.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct StepChangeAnswer {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// What this plan does.
    pub planned: Step,
    /// What would be done.
    pub then: Step,
}

/// The orders that a plan assumes; `otherwise` is left empty: see [`with_other_orders`].
pub(super) fn assumed_orders(plan: &Planned, orders: &[FeedingOrder]) -> Vec<AssumedOrderAnswer> {
    orders.iter().map(|order| assumed_order(plan, order)).collect()
}

/// The same answers, each told what the next most probable orders would change: a plan is made for each of those, under the
/// same wishes; a sum of money or an offer that was picked has no part in the comparison. Plans that are compared are
/// searched equally far.
///
/// # Errors
/// [`PlanFault`], a fault of this program.
pub fn with_other_orders(
    answers: &[AssumedOrderAnswer],
    plan: &Planned,
    book: &PriceBook,
) -> Result<Vec<AssumedOrderAnswer>, PlanFault> {
    let mut answers = answers.to_vec();
    if answers.is_empty() {
        return Ok(answers);
    }
    let dwelling = plan.facts.dwelling;
    let wishes: Vec<Wish> = plan.steered.iter().flat_map(|steered| &steered.wishes).map(|(wish, _)| *wish).collect();
    let orders = feeding_orders(dwelling);
    let limits = of_plans_beside(orders.iter().map(|order| others(order).len() as u64).sum());
    let planned_anew = |on: &Dwelling| -> Result<Told, PlanFault> {
        Ok(told(&Planned::steered_within(on, plan.facts.code.clone(), book, &wishes, &limits)?))
    };
    let is_comparable = plan.is_as_wished_for() && plan.proof == Proof::Cheapest;
    let this = if is_comparable { told(plan) } else { planned_anew(dwelling)? };
    for (answer, order) in answers.iter_mut().zip(orders) {
        for likely in others(&order) {
            let other = order.assumed(dwelling, &likely.feeds);
            let that = planned_anew(&other)?;
            let differing: Vec<(BoxIndex, Feed)> = likely
                .feeds
                .iter()
                .copied()
                .filter(|(at, feed)| dwelling.device_box(*at).fed_by != Some(*feed))
                .collect();
            let changes = dwelling.box_indices().zip(this.steps.iter().zip(&that.steps));
            let changes = changes.filter(|(_, (planned, then))| planned != then).map(|(at, (planned, then))| {
                StepChangeAnswer { box_id: dwelling.device_box(at).id.clone(), planned: *planned, then: *then }
            });
            answer.otherwise.push(OtherOrderAnswer {
                share: rounded(likely.share),
                feeds: feed_answers(dwelling, &differing),
                costs_more_cents: that.cents - this.cents,
                exact: this.is_proved && that.is_proved,
                changes: changes.collect(),
            });
        }
    }
    Ok(answers)
}

/// What is compared of a plan.
struct Told {
    cents: i64,
    steps: Vec<Step>,
    is_proved: bool,
}

fn told(plan: &Planned) -> Told {
    let steps = plan.facts.dwelling.box_indices().map(|at| plan.chosen(at).step);
    Told { cents: plan.total().total().0, steps: steps.collect(), is_proved: plan.proof == Proof::Cheapest }
}

/// The next most probable orders.
fn others(order: &FeedingOrder) -> &[LikelyOrder] {
    match &order.orders {
        Orders::Weighed { likeliest, .. } => likeliest.get(1..).unwrap_or_default(),
        Orders::NotAll { .. } | Orders::Clash(_) => &[],
    }
}

fn assumed_order(plan: &Planned, order: &FeedingOrder) -> AssumedOrderAnswer {
    let dwelling = plan.facts.dwelling;
    let assumed = order.to_plan_on().first().map(|feeds| feed_answers(dwelling, feeds)).unwrap_or_default();
    let (share, orders_left) = match &order.orders {
        Orders::Weighed { count, likeliest, .. } => {
            (likeliest.first().map(|likely| rounded(likely.share)), Some(*count))
        }
        Orders::NotAll { .. } | Orders::Clash(_) => (None, None),
    };
    AssumedOrderAnswer {
        circuits: order.circuits.iter().map(|circuit| dwelling.circuit(*circuit).id.clone()).collect(),
        says: in_words(&assumed, order),
        plan_rests_on_it: plan_rests_on(plan, &order.boxes),
        assumed,
        share,
        orders_left,
        otherwise: Vec::new(),
        open_next: order.next.as_ref().map(|test| dwelling.device_box(test.open).id.clone()),
    }
}

fn in_words(assumed: &[FeedAnswer], order: &FeedingOrder) -> String {
    let feeds: Vec<String> =
        assumed.iter().map(|feed| format!("`{}` is fed by `{}`", feed.box_id, feed.fed_by)).collect();
    let fits = match &order.orders {
        Orders::Clash(_) => {
            return "what was seen of the feeding order contradicts itself: nothing is assumed; see `thirdwire findings`"
                .to_owned();
        }
        Orders::NotAll { .. } => "not all orders were looked at".to_owned(),
        Orders::Weighed { count: 1, .. } => "no other order fits what was seen".to_owned(),
        Orders::Weighed { count: 2, .. } => "one other order fits".to_owned(),
        Orders::Weighed { count: MOST_COUNTED.., .. } => format!("{MOST_COUNTED} other orders or more fit"),
        Orders::Weighed { count, .. } => format!("{} other orders fit", count - 1),
    };
    if feeds.is_empty() { fits } else { format!("assumed: {}; {fits}", feeds.join(", ")) }
}
