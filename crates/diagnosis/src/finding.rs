//! What a diagnosis says: findings, the ground at every box, and what to do next.

use crate::condition::{Certainty, Condition};
use dwelling::{BoxIndex, CircuitIndex, GroundFact, PanelIndex};
use schemars::JsonSchema;
use serde::Serialize;

/// All that follows from the readings and sightings of a dwelling.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Diagnosis {
    /// What was found: panels first, then circuits, then boxes in survey order.
    pub findings: Vec<Finding>,
    /// The ground at every box, in the order of the boxes.
    pub ground: Vec<GroundState>,
}

impl Diagnosis {
    /// What was found at one box.
    pub fn findings_at(&self, device_box: BoxIndex) -> impl Iterator<Item = &Finding> {
        self.findings.iter().filter(move |finding| finding.at == Site::Box(device_box))
    }
}

/// What is known of the ground at a box, all evidence taken together.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct GroundState {
    /// The fact.
    pub fact: GroundFact,
    /// How sure it is.
    pub sure: Certainty,
    /// The evidence for it, one sentence each.
    pub because: Vec<String>,
}

/// Where a finding holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Site {
    /// At a panel.
    Panel(PanelIndex),
    /// On a circuit as a whole.
    Circuit(CircuitIndex),
    /// At a box.
    Box(BoxIndex),
}

/// One thing found.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Where.
    pub at: Site,
    /// What.
    pub condition: Condition,
    /// How sure.
    pub sure: Certainty,
    /// Whether someone can be hurt by it as it stands.
    pub danger: bool,
    /// It in one plain sentence, with the caution where there is one.
    pub says: String,
    /// The evidence for it, one sentence each.
    pub because: Vec<String>,
    /// What else would look the same, and what tells them apart.
    pub look_alikes: Vec<LookAlike>,
    /// The single most useful thing to do next, where doubt is left.
    pub next: Option<NextCheck>,
}

/// Another state that would give the same evidence.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LookAlike {
    /// The other state.
    pub condition: Condition,
    /// What tells the two apart.
    pub separate_by: String,
}

/// Something to look at or measure on the next visit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NextCheck {
    /// What to do, in one sentence.
    pub what: String,
    /// The boxes to do it at, the first one first.
    pub boxes: Vec<BoxIndex>,
}

impl Finding {
    /// A finding without evidence, look-alikes or a next check yet.
    pub(crate) fn new(at: Site, condition: Condition, sure: Certainty, says: impl Into<String>) -> Self {
        let says = says.into();
        Self { at, condition, sure, danger: false, says, because: vec![], look_alikes: vec![], next: None }
    }

    /// Marks the finding as one that can hurt someone as it stands.
    pub(crate) fn danger(mut self) -> Self {
        self.danger = true;
        self
    }

    /// Adds evidence.
    pub(crate) fn because(mut self, evidence: impl IntoIterator<Item = String>) -> Self {
        self.because.extend(evidence);
        self
    }

    /// Adds a state that would look the same.
    pub(crate) fn unless(mut self, condition: Condition, separate_by: impl Into<String>) -> Self {
        self.look_alikes.push(LookAlike { condition, separate_by: separate_by.into() });
        self
    }

    /// Says what to do next, and where.
    pub(crate) fn next(mut self, what: impl Into<String>, boxes: impl Into<Vec<BoxIndex>>) -> Self {
        self.next = Some(NextCheck { what: what.into(), boxes: boxes.into() });
        self
    }
}
