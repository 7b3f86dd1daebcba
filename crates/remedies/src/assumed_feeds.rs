//! What of a plan rests on feeds that are assumed: it must be found out before anyone relies on it.

use crate::planned::Planned;
use dwelling::{BoxIndex, Feed};
use optimizer::Marks;

/// What to find out of the feeding order before the plan at an opening can be relied on; empty where it rests on no
/// assumed feed.
pub(crate) fn questions(plan: &Planned, at: BoxIndex) -> Vec<String> {
    let dwelling = plan.facts.dwelling;
    let mut list = Vec::new();
    if let Some((device, assumed)) = protected_over_assumed(plan, at).filter(|_| counts_on_protection(plan, at)) {
        let counted: Vec<String> = assumed.iter().map(|of| feed_in_words(plan, *of)).collect();
        list.push(format!(
            "find out the feeding order: the plan counts on {}, so that the device in `{}` protects this opening",
            counted.join(", "),
            dwelling.device_box(device).id
        ));
    }
    if !plan.behind_load(at).is_empty() && plan.chosen(at).gives != Marks::NONE && tree_is_assumed(plan, at) {
        list.push("find out what its load side feeds: the feeding order of this circuit is assumed in part".to_owned());
    }
    list
}

/// Whether anything that the plan does rests on a feed that is assumed.
pub(crate) fn plan_rests_on(plan: &Planned, boxes: &[BoxIndex]) -> bool {
    boxes.iter().any(|at| !questions(plan, *at).is_empty())
}

fn counts_on_protection(plan: &Planned, at: BoxIndex) -> bool {
    plan.facts.dwelling.device_box(at).holds.is_receptacle() && plan.chosen(at).needs != Marks::NONE
}

/// The nearest device whose load side leads to a box, and the boxes of assumed feed on the way, where there are any.
fn protected_over_assumed(plan: &Planned, at: BoxIndex) -> Option<(BoxIndex, Vec<BoxIndex>)> {
    let dwelling = plan.facts.dwelling;
    let mut assumed = Vec::new();
    let mut below = at;
    for _ in 0..dwelling.boxes.len() {
        let device_box = dwelling.device_box(below);
        let Some(Feed::Box(parent)) = device_box.fed_by else { return None };
        if device_box.feed_assumed {
            assumed.push(below);
        }
        if plan.chosen(parent).gives != Marks::NONE && plan.behind_load(parent).contains(&below) {
            return Some((parent, assumed)).filter(|(_, assumed)| !assumed.is_empty());
        }
        below = parent;
    }
    None
}

fn tree_is_assumed(plan: &Planned, at: BoxIndex) -> bool {
    let same = |of: &BoxIndex| plan.facts.at(*of).tree == plan.facts.at(at).tree;
    let dwelling = plan.facts.dwelling;
    dwelling.box_indices().filter(same).any(|of| dwelling.device_box(of).feed_assumed)
}

fn feed_in_words(plan: &Planned, at: BoxIndex) -> String {
    let dwelling = plan.facts.dwelling;
    let id = &dwelling.device_box(at).id;
    match dwelling.device_box(at).fed_by {
        Some(Feed::Box(parent)) => format!("`{}` feeding `{id}`", dwelling.device_box(parent).id),
        _ => format!("the panel feeding `{id}`"),
    }
}
