//! Where wiring method, sighting and reading do not agree, and where a right reading has not been proven.

use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, Evidence};
use crate::finding::{Finding, GroundState, Site};
use crate::ground_reading::GroundReading;
use crate::grounding_path::{lacks_only_the_bar, seen_against_wiring};
use dwelling::{BoxIndex, GroundFact, GroundPath, GroundSeen, Reach};

/// The contradictions of a dwelling, and what reads right.
pub(crate) fn find(case: &Case, ground: &[GroundState]) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, evidence) in case.boxes() {
        found.extend(contradicted(case, index, evidence));
        found.extend(reads_right(case, index, evidence, &ground[index.0]));
    }
    found
}

fn contradicted(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let cable = case.dwelling.cable_to(index);
    let because =
        [format!("wiring method: {cable}; {}", evidence.seen.map_or("the box was not opened", GroundSeen::name))];
    let finding = |sure, says| {
        Finding::new(Site::Box(index), Condition::GroundContradicted, sure, says)
            .because(because.clone())
            .because(evidence.all_words())
    };
    let unexplained = !matches!(evidence.seen, Some(GroundSeen::Jumper | GroundSeen::PipeOrRod))
        && !matches!(evidence.ground, GroundReading::Joined(_) | GroundReading::ReversedJoined(_));
    let reads = evidence.speaks_for_ground() || matches!(evidence.ground, GroundReading::Poor(_));
    if case.reach(index) == Reach::Isolated && reads && unexplained && !lacks_only_the_bar(case, index) {
        return Some(suspicious(case, index, evidence, finding));
    }
    if seen_against_wiring(case, index) {
        return Some(
            finding(Certainty::Shown, "A ground is connected here, but the wiring method of the run brings none.")
                .unless(
                    Condition::AsItShouldBe,
                    "a grounding conductor brought later: it ends at the panel or a lawful point",
                )
                .unless(Condition::GroundByPipeOrRod, "follow the conductor: it ends at a pipe or a rod")
                .next("follow the grounding conductor to where it ends", case.here_and_before(index)),
        );
    }
    let should = matches!(cable.ground_path(), GroundPath::Yes | GroundPath::Disputed);
    if should && evidence.seen == Some(GroundSeen::NoneSeen) {
        return Some(
            finding(Certainty::Shown, "The wiring method should bring a ground and none was seen in the box.")
                .unless(
                    Condition::CutOffGround,
                    "look at the sheath and behind the clamp for a conductor cut off or folded back",
                )
                .unless(Condition::OpenGround, "the run may be of an older kind than the rest of its circuit")
                .next("look at the sheath, behind the clamp and outside the box for a grounding conductor", [index]),
        );
    }
    (lacks_only_the_bar(case, index) && case.dwelling.device_box(index).fed_by.is_some()).then(|| {
        finding(Certainty::Shown, "The cable brings a grounding conductor to a panel that has no ground bar.")
            .unless(Condition::AsItShouldBe, "in service equipment it may end at the neutral bar")
            .unless(Condition::OpenGround, "it may end at nothing")
            .next(
                "open the panel, licensed hands only, and see where the grounding conductor of this circuit ends",
                [index],
            )
    })
}

/// It reads as if grounded and no wiring method brings a ground: a false ground until something else is shown.
fn suspicious(
    case: &Case,
    index: BoxIndex,
    evidence: &Evidence,
    finding: impl Fn(Certainty, &'static str) -> Finding,
) -> Finding {
    let by_itself = matches!(evidence.ground, GroundReading::Separate | GroundReading::Poor(_));
    let finding = if by_itself {
        finding(
            Certainty::Likely,
            "It reads as if it had a ground of its own, but no wiring method brings one: likely a pipe, a rod or a wire \
             brought later.",
        )
        .unless(Condition::GroundByPipeOrRod, "follow the conductor from the ground terminal to where it ends")
        .unless(Condition::FalseGround, "a join farther upstream lets neutral–ground rise under load too")
    } else {
        finding(
            Certainty::Likely,
            "It reads as if it were grounded, but no wiring method brings a ground: likely a jumper to the neutral, which \
             puts line voltage on every case when the neutral opens.",
        )
        .unless(Condition::FalseGround, "under a heavy load neutral–ground stays at 0 V, or a jumper is seen in the box")
        .unless(Condition::ReversedFalseGround, "only readings to an independent earth show it: the hot slot then reads 0 V")
        .unless(Condition::GroundByPipeOrRod, "under load neutral–ground rises; the conductor leads to a pipe or a rod")
    };
    let finding = finding.unless(Condition::PhantomVolts, "a low-impedance meter makes a phantom collapse");
    let opened = evidence.seen.is_some();
    finding.danger().next(
        if opened {
            "read all three pairs again under a heavy load, and both slots to an independent earth"
        } else {
            "switch the circuit off, prove it dead, open this box and the one before it: look for a jumper, then for where \
             the ground leads"
        },
        case.here_and_before(index),
    )
}

/// A reading that is right: proven, or not.
fn reads_right(case: &Case, index: BoxIndex, evidence: &Evidence, state: &GroundState) -> Option<Finding> {
    let connected = state.fact == GroundFact::Connected;
    if connected && state.sure == Certainty::Shown {
        return Some(
            Finding::new(
                Site::Box(index),
                Condition::AsItShouldBe,
                Certainty::Shown,
                "Wired as it should be, as far as readings and the open box show.",
            )
            .because(state.because.clone()),
        );
    }
    let right = matches!(evidence.ground, GroundReading::Right | GroundReading::Separate);
    let path = !matches!(case.reach(index), Reach::Isolated);
    let settled = matches!(state.fact, GroundFact::False | GroundFact::Loose | GroundFact::CutOff | GroundFact::None);
    if !right || !path || settled {
        return None;
    }
    let loaded = evidence.ground == GroundReading::Separate;
    let says = match (loaded, connected && evidence.seen.is_some()) {
        (true, _) => {
            "It reads right under load, but nobody has seen the path to the panel: that remains to be looked at."
        }
        (false, true) => {
            "It reads right without load and a sound ground was seen in the box: a loaded test would prove it."
        }
        (false, false) => {
            "It reads right without load, and so would a false or a poor ground: this proves no ground yet."
        }
    };
    let finding = Finding::new(Site::Box(index), Condition::GroundUnverified, Certainty::Shown, says)
        .because(evidence.all_words())
        .unless(Condition::FalseGround, "under a heavy load neutral–ground stays at 0 V")
        .unless(Condition::PoorGround, "a loaded test of the ground reads over 1 Ω")
        .unless(Condition::ReversedFalseGround, "to an independent earth the hot slot reads 0 V and the ground 120 V");
    let what = if loaded {
        "open this box, and follow the grounding path to the panel"
    } else {
        "read all three pairs again with a heavy load on at this opening, or open the box"
    };
    Some(finding.next(what, [index]))
}
