//! What a box's neighbours tell: where the ground stops, and which box is the odd one.

use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, Evidence};
use crate::finding::{Finding, Site};
use crate::ground_reading::GroundReading;
use dwelling::{BoxIndex, CircuitTree, GroundSeen, Reach, TesterVerdict};

/// How many boxes must agree before one that differs stands out.
///
/// Common practice, no source.
const ENOUGH_TO_AGREE: usize = 2;

/// Where grounds stop, odd boxes, and polarity that nobody has been able to see.
pub(crate) fn find(case: &Case, known: &[Finding]) -> Vec<Finding> {
    let mut found: Vec<Finding> = case.boxes().filter_map(|(index, _)| ground_stops(case, index)).collect();
    found.extend(case.trees.iter().filter_map(|tree| odd_one(case, tree)).map(|odd| without_repeat(odd, known)));
    found.extend(case.trees.iter().filter_map(|tree| polarity_unseen(case, tree)));
    found
}

/// Leaves the next check out where another finding at the same place already sends someone to the same boxes.
fn without_repeat(mut finding: Finding, known: &[Finding]) -> Finding {
    let boxes = |finding: &Finding| finding.next.as_ref().map(|next| next.boxes.clone());
    if known.iter().any(|other| other.at == finding.at && boxes(other) == boxes(&finding)) {
        finding.next = None;
    }
    finding
}

/// What a box shows of its ground, in four classes.
fn class(evidence: &Evidence) -> Option<&'static str> {
    match evidence.ground {
        GroundReading::Joined(_) | GroundReading::ReversedJoined(_) => Some("a false ground"),
        GroundReading::Open(_) => Some("no ground"),
        GroundReading::Right | GroundReading::Separate => Some("a ground"),
        GroundReading::Poor(_) => Some("a poor ground"),
        GroundReading::Mixed | GroundReading::Silent => None,
    }
}

/// The first box without a ground behind one that has it.
fn ground_stops(case: &Case, index: BoxIndex) -> Option<Finding> {
    let lacks = |at: BoxIndex| {
        let evidence = case.evidence(at);
        matches!(evidence.ground, GroundReading::Open(_)) || evidence.seen == Some(GroundSeen::NoneSeen)
    };
    let has = |at: BoxIndex| {
        let right = matches!(case.evidence(at).ground, GroundReading::Right | GroundReading::Separate);
        right && !lacks(at) && case.reach(at) != Reach::Isolated
    };
    if !lacks(index) {
        return None;
    }
    let upstream = case.upstream(index);
    let good = upstream.iter().copied().find(|at| has(*at) || lacks(*at)).filter(|at| has(*at))?;
    let behind: Vec<BoxIndex> = case.downstream(index).into_iter().filter(|at| lacks(*at)).collect();
    let between: Vec<BoxIndex> = upstream.iter().copied().take_while(|at| *at != good).collect();
    let mut boxes = vec![good];
    boxes.extend(between.iter().rev());
    boxes.push(index);
    let mut finding = Finding::new(
        Site::Box(index),
        Condition::UpstreamBreak,
        Certainty::Likely,
        format!("The ground stops between `{}`, which reads grounded, and this box.", case.id(good)),
    )
    .because(case.evidence(good).words(|_, _| true))
    .because(case.evidence(index).words(|_, _| true))
    .unless(Condition::FalseGround, "the box that reads grounded may be the false one: load it")
    .unless(Condition::OpenGround, "the wiring may change to an older kind between the two: look at the cable in both");
    if !behind.is_empty() {
        finding = finding.because([format!("{} downstream lacks it too", case.ids(&behind))]);
    }
    Some(finding.next("open these boxes in this order and look at the grounding splice in each", boxes))
}

/// The one box of a circuit that reads otherwise than all the others, which agree.
fn odd_one(case: &Case, tree: &CircuitTree) -> Option<Finding> {
    let classes: Vec<(BoxIndex, &str)> = tree
        .members
        .iter()
        .chain(&tree.unplaced)
        .filter_map(|index| class(case.evidence(*index)).map(|class| (*index, class)))
        .collect();
    let (odd, says) = classes.iter().copied().find(|(index, class)| {
        let mut others = classes.iter().filter(|(other, _)| other != index);
        classes.len() > ENOUGH_TO_AGREE
            && others
                .all(|(_, other)| other != class && Some(other) == classes.iter().find(|c| c.0 != *index).map(|c| &c.1))
    })?;
    let rest = classes.iter().find(|(index, _)| *index != odd).map(|(_, class)| *class)?;
    let danger = rest == "a false ground" || says == "a false ground";
    let finding = Finding::new(
        Site::Box(odd),
        Condition::OddOneOut,
        Certainty::Likely,
        format!("This box shows {says} and all others on its circuit show {rest}: the fault is often in the odd box."),
    )
    .because([format!("{} others read on the circuit show {rest}", classes.len() - 1)])
    .unless(Condition::OpenGround, "an older run left over feeds this box alone")
    .unless(Condition::FalseGround, "neutral and ground are joined in the bundle behind this device")
    .next("open this box first, then the one before it", case.here_and_before(odd));
    Some(if danger { finding.danger() } else { finding })
}

/// The boxes of a circuit where a plug-in tester saw no ground, and so could not see polarity.
fn polarity_unseen(case: &Case, tree: &CircuitTree) -> Option<Finding> {
    let unseen = |index: &BoxIndex| {
        let evidence = case.evidence(*index);
        evidence.tester_said(TesterVerdict::OpenGround)
            && !evidence.taken.iter().any(|(r, _)| r.hot_earth.is_some() || r.neutral_earth.is_some())
    };
    let boxes: Vec<BoxIndex> = tree.members.iter().chain(&tree.unplaced).copied().filter(unseen).collect();
    let first = boxes.first()?;
    let circuit = case.dwelling.device_box(*first).circuit.or(tree.circuits.first().copied())?;
    Some(
        Finding::new(
            Site::Circuit(circuit),
            Condition::TesterCannotTell,
            Certainty::Shown,
            "A plug-in tester that shows an open ground says nothing of polarity: old two-wire circuits were often never \
             checked.",
        )
        .because([format!("tested without a ground to compare with: {}", case.ids(&boxes))])
        .unless(Condition::HotNeutralReversed, "read both slots to an independent earth: the hot slot must read 120 V")
        .next("read both slots to an independent earth, such as a lead from a sound ground", boxes),
    )
}
