//! How far the searches go before they settle for the best found: a second or two, however large the dwelling.

use optimizer::Limits;

/// The search for a plan.
pub const OF_A_PLAN: Limits = Limits { nodes: Some(1_000), work: Some(440_000) };

/// The search for everything that can be offered.
pub(crate) const OF_OFFERS: Limits = Limits { nodes: None, work: Some(130_000) };

/// The search for one offer beside these.
pub(crate) const OF_AN_OFFER: Limits = Limits { nodes: OF_A_PLAN.nodes, work: Some(40_000) };

/// Each of so many plans that are made beside the plan, to be compared: all of them take no longer than twice that one.
pub(crate) fn of_plans_beside(count: u64) -> Limits {
    let share = |most: u64| 2 * most / (count + 1);
    Limits { nodes: OF_A_PLAN.nodes, work: OF_A_PLAN.work.map(|most| most.min(share(most))) }
}

/// The certificate of a plan; where that is proved the cheapest, more than the search took, since its cuts may lie elsewhere.
pub(crate) fn of_a_certificate(is_proved: bool) -> Limits {
    let times = |most: u64| if is_proved { 20 * most } else { most };
    Limits { nodes: OF_A_PLAN.nodes.map(times), work: OF_A_PLAN.work.map(times) }
}
