//! Faults that are put right whatever else is done at an opening.

use crate::candidate::Step;
use crate::facts::Facts;
use diagnosis::{Certainty, Condition};
use dwelling::BoxIndex;
use estimate::{Line, Task, WorkCondition};

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

/// A piece of work at a box so often, under the condition of its place or of the wall it is done in.
#[must_use]
pub fn work_at(facts: &Facts, index: BoxIndex, task: Task, times: u32) -> Line {
    let room = facts.dwelling.room(facts.dwelling.device_box(index).room);
    let of_wall = || room.walls.filter(|_| task.is_in_a_wall()).and_then(WorkCondition::of_walls);
    Line::Work(task, times, WorkCondition::of_place(room.room_use).or_else(of_wall))
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
