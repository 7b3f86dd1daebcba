//! Faults that are put right whatever else is done at an opening.

use crate::facts::Facts;
use diagnosis::{Certainty, Condition};
use dwelling::BoxIndex;
use estimate::Task;

/// The repairs that what was found at a box asks for, each once.
#[must_use]
pub fn repairs_at(facts: &Facts, index: BoxIndex) -> Vec<Task> {
    let mut repairs = Vec::new();
    for finding in facts.diagnosis.findings_at(index) {
        let Some(task) = repair_of(finding.condition, finding.sure) else { continue };
        if !repairs.contains(&task) {
            repairs.push(task);
        }
    }
    repairs
}

/// The repair that a condition asks for, where it is sure enough to be planned.
const fn repair_of(condition: Condition, sure: Certainty) -> Option<Task> {
    if matches!(sure, Certainty::Possible) {
        return None;
    }
    match condition {
        Condition::FalseGround | Condition::ReversedFalseGround | Condition::GroundByPipeOrRod => {
            Some(Task::RemoveFalseGround)
        }
        Condition::HotNeutralReversed => Some(Task::CorrectPolarity),
        _ => None,
    }
}
