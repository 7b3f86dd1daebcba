//! What of the plan itself keeps a job from being closed out, and what it rests on that only the authority decides.

use crate::answer::HeldBackAnswer;
use crate::case::Case;
use dwelling::{BoxIndex, GroundFact, GroundSeen};
use remedies::PlanStatus;

/// How the plan's question about a ground that was cut off begins: what was seen in the open box answers it.
const CUT_OFF: &str = "see whether the cut-off ground can be reached";
/// How the plan's questions to the authority begin.
const ASK: &str = "ask the authority";

/// What of the plan keeps it back, and what rests on the authority.
pub(crate) fn held_back(case: &Case) -> (Vec<HeldBackAnswer>, Vec<String>) {
    let (mut holds_back, mut rests_on) = (Vec::new(), Vec::new());
    if case.plan.status == PlanStatus::Complete {
        return (holds_back, rests_on);
    }
    for said in &case.plan.in_the_way {
        let (box_id, what) = match said.split_once(": ") {
            Some((id, what)) if case.dwelling().box_named(id).is_some() => (Some(id.to_owned()), what),
            _ => (None, said.as_str()),
        };
        let at = box_id.as_deref().and_then(|id| case.dwelling().box_named(id));
        if what.starts_with(CUT_OFF) && at.is_some_and(|at| seen_cut_off(case, at)) {
            continue;
        }
        // What the plan does not give is no question to the authority, whatever words it uses.
        let falls_short = case.plan.openings.iter().any(|opening| opening.shortfalls.iter().any(|short| short == what));
        let asked = said.split_once(": ").map_or(what, |(_, asked)| asked);
        let asks = what.starts_with(ASK) || asked.starts_with(ASK);
        if case.plan.law.doubts.contains(said) || (asks && !falls_short) {
            rests_on.push(said.clone());
        } else {
            holds_back.push(HeldBackAnswer { box_id, what: what.to_owned() });
        }
    }
    (holds_back, rests_on)
}

/// Whether the work showed that a ground that was cut off cannot be reached, or that it was.
fn seen_cut_off(case: &Case, at: BoxIndex) -> bool {
    let seen = case.seen(at).last(|after| after.reading.ground);
    case.planned.facts.at(at).ground == GroundFact::CutOff
        && matches!(seen, Some(GroundSeen::CutOff | GroundSeen::NoneSeen | GroundSeen::Connected))
}
