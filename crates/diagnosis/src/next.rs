//! What to do next: one check for every opening in doubt, what decides most openings first.

use crate::condition::{Certainty, Condition};
use crate::evidence::Case;
use crate::finding::{Diagnosis, Finding, GroundState, NextCheck, Site};
use dwelling::{BondedGroups, BoxIndex, Dwelling, Feed, GroundFact, circuit_trees};
use std::collections::BTreeSet;

/// Findings that give every box of unknown ground a next check, where no other finding names it.
pub(crate) fn for_the_unnamed(case: &Case, ground: &[GroundState], found: &[Finding]) -> Vec<Finding> {
    let named: BTreeSet<BoxIndex> =
        found.iter().filter_map(|finding| finding.next.as_ref()).flat_map(|next| next.boxes.iter().copied()).collect();
    let unnamed = |index: &BoxIndex| ground[index.0].fact == GroundFact::Unknown && !named.contains(index);
    case.dwelling.box_indices().filter(unnamed).map(|index| unread(case, index)).collect()
}

fn unread(case: &Case, index: BoxIndex) -> Finding {
    let device_box = case.dwelling.device_box(index);
    let (says, what) = match device_box.fed_by {
        None => (
            "What feeds this box is not known, so neither is its ground.",
            "find out what feeds this box, open it and look for a grounding conductor",
        ),
        Some(Feed::Panel(panel)) if case.dwelling.panel(panel).ground_bar.is_none() => (
            "Whether the panel has a ground bar for this circuit is not known, so neither is the ground here.",
            "look whether the panel has a ground bar, then open this box and look for a grounding conductor",
        ),
        _ if device_box.holds.is_receptacle() => (
            "Nothing read or seen at this box says whether it is grounded.",
            "read all three pairs with and without a heavy load, then open the box and look for a grounding conductor",
        ),
        _ => (
            "Nothing seen at this box says whether it is grounded.",
            "open this box and look for a grounding conductor, at the cable sheath too",
        ),
    };
    Finding::new(Site::Box(index), Condition::GroundUnverified, Certainty::Possible, says)
        .because([format!("wiring method: {}", case.dwelling.cable_to(index))])
        .unless(Condition::OpenGround, "no conductor and no grounding metal in the box")
        .unless(Condition::LooseGround, "a conductor in the box, connected to nothing")
        .next(what, [index])
}

/// What to do on the next visit: what decides most openings first, then what is dangerous, then in survey order.
#[must_use]
pub fn next_visit(diagnosis: &Diagnosis, dwelling: &Dwelling) -> Vec<NextCheck> {
    let groups = BondedGroups::of(dwelling);
    let trees = circuit_trees(dwelling);
    let undecided = |index: &BoxIndex| {
        let state = diagnosis.ground.get(index.0);
        state.is_some_and(|state| state.fact == GroundFact::Unknown || state.sure != Certainty::Shown)
    };
    let mut checks: Vec<(NextCheck, bool)> = Vec::new();
    for finding in &diagnosis.findings {
        let Some(next) = finding.next.clone() else { continue };
        match checks.iter_mut().find(|(check, _)| *check == next) {
            Some((_, danger)) => *danger |= finding.danger,
            None => checks.push((next, finding.danger)),
        }
    }
    let decides = |check: &NextCheck| {
        let mut decided: BTreeSet<BoxIndex> = BTreeSet::new();
        for index in check.boxes.iter().copied().filter(|index| index.0 < dwelling.boxes.len()) {
            decided.insert(index);
            decided.extend(&groups.group_of(index).members);
            for tree in trees.iter().filter(|tree| tree.members.contains(&index)) {
                decided
                    .extend(tree.downstream(index).iter().filter(|at| groups.index_of(**at) == groups.index_of(index)));
            }
        }
        decided.iter().filter(|index| undecided(index)).count()
    };
    let key = |check: &NextCheck, danger: bool| {
        (std::cmp::Reverse(decides(check)), !danger, check.boxes.first().copied().unwrap_or(BoxIndex(usize::MAX)))
    };
    checks.sort_by_cached_key(|(check, danger)| key(check, *danger));
    checks.into_iter().map(|(check, _)| check).collect()
}
