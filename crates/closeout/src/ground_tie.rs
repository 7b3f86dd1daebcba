//! Which boxes' grounds are tied together once the plan is carried out: a jumper in one of them is in all of them.

use calculations::State;
use dwelling::{BondedGroups, BoxIndex, RouteEnd};

/// By box: the number of its group, tied by cables and metal and by the conductors that the plan brings.
pub(crate) fn grounds_tied(state: &State) -> Vec<usize> {
    let groups = BondedGroups::of(&state.dwelling);
    let mut label: Vec<usize> = state.dwelling.box_indices().map(|at| groups.index_of(at)).collect();
    for brought in &state.brought {
        if let (RouteEnd::Box(one), RouteEnd::Box(other)) = (brought.from, brought.to) {
            let (from, into) = (of(&label, one), of(&label, other));
            label.iter_mut().filter(|label| **label == from).for_each(|label| *label = into);
        }
    }
    label
}

fn of(label: &[usize], at: BoxIndex) -> usize {
    label[at.0]
}
