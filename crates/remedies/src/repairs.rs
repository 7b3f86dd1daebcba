//! Faults that are put right whatever else is done at an opening.

use crate::candidate::Step;
use crate::facts::Facts;
use diagnosis::{Certainty, Condition};
use dwelling::BoxIndex;
use estimate::Task;

/// The repairs that what was found at a box asks for, each once.
#[must_use]
pub fn repairs_at(facts: &Facts, index: BoxIndex) -> Vec<Task> {
    let mut repairs = Vec::new();
    for finding in facts.diagnosis.findings_at(index) {
        for task in repairs_of(finding.condition, finding.sure) {
            if !repairs.contains(task) {
                repairs.push(*task);
            }
        }
    }
    repairs
}

/// Whether a step has to part a grounding conductor that joins this receptacle to others without a ground.
#[must_use]
pub fn parts_a_ground(facts: &Facts, index: BoxIndex, step: Step) -> bool {
    let joined = &facts.groups.group_of(index).members;
    let receptacles = joined.iter().filter(|member| facts.dwelling.device_box(**member).holds.is_receptacle());
    step.is_protected_without_ground() && receptacles.count() > 1
}

/// The repairs that a condition asks for, where it is sure enough to be planned.
const fn repairs_of(condition: Condition, sure: Certainty) -> &'static [Task] {
    if matches!(sure, Certainty::Possible) {
        return &[];
    }
    match condition {
        Condition::FalseGround | Condition::GroundByPipeOrRod => &[Task::RemoveFalseGround],
        Condition::HotNeutralReversed => &[Task::CorrectPolarity],
        Condition::ReversedFalseGround => &[Task::RemoveFalseGround, Task::CorrectPolarity],
        _ => &[],
    }
}
