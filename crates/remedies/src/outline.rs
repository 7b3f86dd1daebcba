//! What a plan does, thing by thing in words, so that plans of differing surveys and prices can be held side by side.

use crate::changes::{done_at, panel_words};
use crate::planned::Planned;
use std::collections::BTreeMap;

/// By thing – a circuit, a route, a box – what a plan does there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outline(BTreeMap<String, String>);

impl Outline {
    /// The outline of a plan.
    #[must_use]
    pub fn of(plan: &Planned) -> Self {
        let dwelling = plan.facts.dwelling;
        let mut things = BTreeMap::new();
        for (at, tree) in plan.facts.trees.iter().enumerate() {
            let words = panel_words(plan.chosen_at_panel(at).choice);
            for circuit in &tree.circuits {
                things.insert(format!("circuit {}", dwelling.circuit(*circuit).id), words.to_owned());
            }
        }
        for way in plan.ways() {
            things.insert(format!("route {}", way.id), format!("bought, {}", way.size()));
        }
        for at in dwelling.box_indices() {
            let feeds = plan.behind_load(at);
            let feeds: Vec<&str> = feeds.iter().map(|child| dwelling.device_box(*child).id.as_str()).collect();
            let load_side = if feeds.is_empty() || plan.chosen(at).gives == optimizer::Marks::NONE {
                String::new()
            } else {
                format!(", load side feeding {}", feeds.join(", "))
            };
            let words = done_at(plan, &plan.solution, at);
            things.insert(format!("box {}", dwelling.device_box(at).id), format!("{words}{load_side}"));
        }
        Self(things)
    }

    /// What another plan does differently, in sentences.
    #[must_use]
    pub fn changes_to(&self, other: &Self) -> Vec<String> {
        let nothing = || "nothing".to_owned();
        let mut list = Vec::new();
        for (thing, before) in &self.0 {
            let after = other.0.get(thing).cloned().unwrap_or_else(nothing);
            if after != *before {
                list.push(format!("{thing}: {after} instead of {before}"));
            }
        }
        let new = other.0.iter().filter(|(thing, _)| !self.0.contains_key(*thing));
        list.extend(new.map(|(thing, after)| format!("{thing}: {after}")));
        list
    }
}
