//! What to do next: one check for every opening in doubt, what decides most openings first.

use crate::condition::{Certainty, Condition};
use crate::evidence::Case;
use crate::finding::{Diagnosis, Finding, GroundState, NextCheck, Site};
use dwelling::{BondedGroups, BoxIndex, Dwelling, Feed, GroundFact};
use std::collections::BTreeSet;

/// Findings that give every box of unknown ground a next check, where no other finding names it.
pub(crate) fn for_the_unnamed(case: &Case, ground: &[GroundState], found: &[Finding]) -> Vec<Finding> {
    let named: BTreeSet<BoxIndex> =
        found.iter().filter_map(|finding| finding.next.as_ref()).flat_map(|next| next.boxes.iter().copied()).collect();
    let unnamed = |index: &BoxIndex| ground[index.0].fact == GroundFact::Unknown && !named.contains(index);
    case.dwelling.box_indices().filter(unnamed).map(|index| unread(case, index)).collect()
}

/// What finds the circuit of every box of which nobody knows it, in one round.
const FIND_CIRCUIT: &str = "plug a lamp in at each of these, switch the breakers off or take the fuses out one at a time, and see \
                            which go dark: write it down as `dead_when`, by `breaker_off`";

fn unread(case: &Case, index: BoxIndex) -> Finding {
    let device_box = case.dwelling.device_box(index);
    let unverified = |says: &'static str| {
        Finding::new(Site::Box(index), Condition::GroundUnverified, Certainty::Possible, says)
            .unless(Condition::OpenGround, "no conductor and no grounding metal in the box")
            .unless(Condition::LooseGround, "a conductor in the box, connected to nothing")
    };
    if device_box.circuit.is_none() && device_box.fed_by.is_none() {
        let lost = |at: &BoxIndex| {
            let device_box = case.dwelling.device_box(*at);
            device_box.circuit.is_none() && device_box.fed_by.is_none()
        };
        return unverified("Nobody knows which circuit this box is on, so neither is its ground known.")
            .because(["no circuit stated, and no breaker seen to kill it".to_owned()])
            .next(FIND_CIRCUIT, case.dwelling.box_indices().filter(lost).collect::<Vec<_>>());
    }
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
    unverified(says).because([format!("wiring method: {}", case.dwelling.cable_to(index))]).next(what, [index])
}

/// What to do on the next visit: what decides most openings first, then what is dangerous, then in survey order.
///
/// A check of the ground decides every box of the bonded groups it names; of these, grounds that nobody knows count before
/// those that are merely not shown. Any other check decides the boxes it names.
#[must_use]
pub fn next_visit(diagnosis: &Diagnosis, dwelling: &Dwelling) -> Vec<NextCheck> {
    let groups = BondedGroups::of(dwelling);
    let mut checks: Vec<Ranked> = Vec::new();
    for finding in &diagnosis.findings {
        let Some(check) = finding.next.clone() else { continue };
        let of_ground = is_about_ground(finding.condition);
        match checks.iter_mut().find(|ranked| ranked.check == check) {
            Some(ranked) => {
                ranked.danger |= finding.danger;
                ranked.of_ground |= of_ground;
            }
            None => checks.push(Ranked { check, danger: finding.danger, of_ground }),
        }
    }
    checks.sort_by_cached_key(|ranked| {
        let first = ranked.check.boxes.first().copied().unwrap_or(BoxIndex(usize::MAX));
        (std::cmp::Reverse(ranked.decides(diagnosis, &groups, dwelling.boxes.len())), !ranked.danger, first)
    });
    checks.into_iter().map(|ranked| ranked.check).collect()
}

/// A check with what ranks it.
struct Ranked {
    check: NextCheck,
    danger: bool,
    of_ground: bool,
}

impl Ranked {
    /// How many unknown grounds it decides, and how many openings in doubt in all.
    fn decides(&self, diagnosis: &Diagnosis, groups: &BondedGroups, boxes: usize) -> (usize, usize) {
        if !self.of_ground {
            return (0, self.check.boxes.len());
        }
        // A diagnosis of another dwelling may name boxes that this one does not have.
        let named = self.check.boxes.iter().filter(|index| index.0 < boxes);
        let tied: BTreeSet<BoxIndex> =
            named.flat_map(|index| groups.group_of(*index).members.iter().copied()).collect();
        let states: Vec<&GroundState> = tied.iter().filter_map(|index| diagnosis.ground.get(index.0)).collect();
        let unknown = states.iter().filter(|state| state.fact == GroundFact::Unknown).count();
        let doubted = states.iter().filter(|state| state.sure != Certainty::Shown).count();
        (unknown, doubted)
    }
}

/// Whether a check that a condition asks for decides a ground.
const fn is_about_ground(condition: Condition) -> bool {
    !matches!(
        condition,
        Condition::OpenNeutral
            | Condition::PoorNeutral
            | Condition::OpenHot
            | Condition::HotNeutralReversed
            | Condition::HotGroundReversed
            | Condition::OverVoltage
            | Condition::TesterCannotTell
            | Condition::GfciTestNotPossible
            | Condition::GfciDoesNotTrip
            | Condition::SharedNeutralSinglePole
            | Condition::NeutralFuse
    )
}
