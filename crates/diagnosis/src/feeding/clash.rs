//! Which of what was seen cannot all be true: the fewest that clash, so that one of them is looked at again.

use super::on_circuit::OnCircuit;
use super::question::{Onward, Question};
use super::weighing::any_fits;
use dwelling::BoxIndex;
use std::collections::BTreeSet;

/// Observations and counts that cannot all be true with the feeding order that is written down. Leaving out any one of
/// them mends it, so far as each was tried.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Clash {
    /// The observations, by position in the dwelling's list.
    pub observations: Vec<usize>,
    /// The boxes whose count of cables is part of it.
    pub counted: Vec<BoxIndex>,
}

/// What clashes on a circuit whose question fits no order.
pub(super) fn clash(on: &OnCircuit) -> Clash {
    if let Some(across) = on.across.first() {
        return Clash { observations: vec![*across], counted: Vec::new() };
    }
    let said_by: BTreeSet<usize> = on.question.facts.iter().map(|fact| fact.said_by).collect();
    let counts: Vec<usize> = (0..on.question.boxes()).filter(|at| on.question.onward[*at].beyond == 0.0).collect();
    let mut question = on.question.clone();
    let (mut observations, mut counted) = (Vec::new(), Vec::new());
    leave_out(on, &mut question, &counts, &mut counted);
    for said_by in said_by {
        let kept = question.facts.clone();
        question.facts.retain(|fact| fact.said_by != said_by);
        if still_clashes(&question) {
            continue;
        }
        question.facts = kept;
        observations.push(said_by);
    }
    Clash { observations, counted }
}

/// Leaves out the counts at these boxes that the clash does not need, many at once where it can, and names the others.
fn leave_out(on: &OnCircuit, question: &mut Question, counts: &[usize], needed: &mut Vec<BoxIndex>) {
    if counts.is_empty() {
        return;
    }
    let kept: Vec<Onward> =
        counts.iter().map(|at| std::mem::replace(&mut question.onward[*at], Onward::any())).collect();
    if still_clashes(question) {
        return;
    }
    for (at, kept) in counts.iter().zip(kept) {
        question.onward[*at] = kept;
    }
    match counts {
        [one] => needed.push(on.boxes[*one]),
        _ => {
            let (first, second) = counts.split_at(counts.len() / 2);
            leave_out(on, question, first, needed);
            leave_out(on, question, second, needed);
        }
    }
}

/// Whether no order fits; a question too large to tell counts as one that some order fits.
fn still_clashes(question: &Question) -> bool {
    any_fits(question) == Some(false)
}
