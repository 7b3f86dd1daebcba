//! The checks, one file each.

mod ampacity;
mod breaker;
mod fault_loop;
mod fill;
mod grounding_conductor;
mod leakage;
mod voltage_drop;

pub use fault_loop::{ADVISED_MULTIPLE, FaultLoop, LoopSource, fault_loop, loop_with};
pub use leakage::{LeakageBudget, leakage_budget};
pub use voltage_drop::load_on;

use crate::row::{CheckRow, SubjectAnswer, SubjectKind};
use crate::state::State;
use dwelling::BoxIndex;

/// Every check of the wiring at a moment: box by box in survey order, then circuit by circuit.
#[must_use]
pub fn checks_of(state: &State) -> Vec<CheckRow> {
    let mut rows = Vec::new();
    for at in state.dwelling.box_indices() {
        rows.push(fill::row(state, at));
        rows.push(breaker::row(state, at));
        rows.push(ampacity::row(state, at));
        rows.extend(fault_loop::row(state, at));
        rows.extend(voltage_drop::row(state, at));
    }
    rows.extend(grounding_conductor::rows(state));
    rows.extend(leakage::rows(state));
    rows
}

/// A box as what a check is of.
fn the_box(state: &State, at: BoxIndex) -> SubjectAnswer {
    SubjectAnswer { kind: SubjectKind::Box, id: state.dwelling.device_box(at).id.clone() }
}

/// The run that feeds a box as what a check is of.
fn the_run(state: &State, at: BoxIndex) -> SubjectAnswer {
    SubjectAnswer { kind: SubjectKind::Run, id: state.dwelling.device_box(at).id.clone() }
}
