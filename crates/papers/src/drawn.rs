//! The drawings that papers hold beside the plans of the floors.

use drawings::{BoxWiring, SheetAnswer, WayMap, one_line_before_and_after, way_maps, wiring_as_planned};
use remedies::Planned;

/// What is drawn of a job beside the plans of its floors.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawn {
    /// The one-line as it was found and as the plan leaves it, on one sheet where that holds both.
    pub one_line: Vec<SheetAnswer>,
    /// How the plan leaves each box wired, in the order of the survey.
    pub wirings: Vec<BoxWiring>,
    /// The maps of the ways that are brought.
    pub ways: Vec<WayMap>,
}

impl Drawn {
    /// What is drawn of a plan.
    #[must_use]
    pub fn of(plan: &Planned) -> Self {
        let facts = &plan.facts;
        Self {
            one_line: one_line_before_and_after(plan),
            wirings: facts.dwelling.box_indices().map(|at| wiring_as_planned(plan, at)).collect(),
            ways: way_maps(plan),
        }
    }
}
