//! Every claim about one opening, in the order in which they are read.

use crate::case::OpeningCase;
use crate::claim::{ClaimAnswer, ClaimKind, Claimed, ProofVerdict, against};
use crate::source::source_of;
use crate::{device, ground, marking, no_ground, polarity, protection, volts};
use diagnosis::Condition;
use dwelling::{Day, Holding, Taken};
use remedies::{BoxWork, Device};

/// What was judged at an opening.
pub(crate) struct OpeningJudged {
    pub(crate) claims: Vec<ClaimAnswer>,
    /// Whether neutral and ground read as joined.
    pub(crate) joined: bool,
}

/// The claims about an opening; none where the plan promises nothing there that could be read.
pub(crate) fn judged(case: &OpeningCase) -> OpeningJudged {
    let opening = case.opening;
    let receptacle = case.case.state.dwelling.device_box(case.at).holds.is_receptacle();
    let mut claims = Vec::new();
    let mut joined = false;
    if receptacle {
        claims.extend(device::claims(case));
        claims.extend(volts::claims(case));
        let mut of_ground = None;
        if opening.grounded {
            let judged = ground::ground(case);
            joined = judged.joined;
            of_ground = Some(judged.claim.verdict);
            claims.push(judged.claim);
            claims.extend(ground::connected(case));
            claims.push(ground::path(case));
        } else if takes_a_tester(case) {
            claims.push(no_ground::claim(case));
        }
        claims.push(polarity::claim(case, of_ground));
    } else {
        if opening.device == Device::Blank || opening.box_work != BoxWork::Keep {
            claims.extend(device::claims(case));
        }
        claims.extend(ground::connected(case));
    }
    claims.extend(protection::claims(case));
    if receptacle {
        claims.extend(marking::claims(case));
    }
    if !claims.is_empty() || !case.seen.0.is_empty() {
        claims.extend(danger(case, &claims));
    }
    if !claims.is_empty() && !case.seen.0.is_empty() {
        claims.push(recorded(case.seen.0.iter().map(|after| &after.taken)));
    }
    OpeningJudged { claims, joined }
}

/// Whether something with a grounding pin can be plugged in, by the plan or by what was fitted.
fn takes_a_tester(case: &OpeningCase) -> bool {
    let planned = case.case.state.dwelling.device_box(case.at).holds;
    let fitted = case.seen.last(|after| after.fitted);
    planned.takes_grounding_plug() || fitted.is_some_and(Holding::takes_grounding_plug)
}

/// What the readings show that can hurt somebody, where no claim was contradicted by it yet.
fn danger(case: &OpeningCase, claims: &[ClaimAnswer]) -> Option<ClaimAnswer> {
    if claims.iter().any(|claim| claim.verdict == ProofVerdict::Contradicts) {
        return None;
    }
    // The readings alone do not know of a conductor that the plan brings: to them such a ground has no wiring method.
    let brought = [Condition::GroundByPipeOrRod, Condition::GroundContradicted];
    // Nor do they know how long the runs are: a neutral that drops more than bands allow, and no more than is reckoned, is sound.
    let reckoned =
        claims.iter().any(|claim| claim.claim == ClaimKind::HotNeutralLoaded && claim.verdict == ProofVerdict::Proved);
    let not_of_the_plan = |condition: Condition| {
        let known = case.opening.grounded && brought.contains(&condition);
        !(known || (reckoned && condition == Condition::PoorNeutral))
    };
    let mut findings = case.case.looks_like.findings_at(case.at);
    let found = findings.find(|finding| finding.danger && not_of_the_plan(finding.condition))?;
    let claimed = Claimed {
        claim: ClaimKind::NoDanger,
        of: None,
        says: "nothing that was read points at a danger".to_owned(),
        must_read: "readings that fit a sound opening".to_owned(),
        source: source_of(ClaimKind::NoDanger),
    };
    let next = found.next.as_ref().map_or("switch the circuit off and find the cause", |next| next.what.as_str());
    let reads = if found.because.is_empty() { found.condition.to_string() } else { found.because.join("; ") };
    Some(claimed.contradicted(against(reads, found.says.clone(), next)))
}

/// Whether everything that was read has its day and its initials.
pub(crate) fn recorded<'a>(taken: impl Iterator<Item = &'a Taken>) -> ClaimAnswer {
    let claimed = Claimed {
        claim: ClaimKind::Recorded,
        of: None,
        says: "the day and the initials stand beside every reading".to_owned(),
        must_read: "day and initials".to_owned(),
        source: source_of(ClaimKind::Recorded),
    };
    let mut people: Vec<&str> = Vec::new();
    let mut days: Vec<Day> = Vec::new();
    for taken in taken {
        let (Some(day), Some(by)) = (taken.day, taken.by.as_deref()) else {
            return claimed.open("write `day` and `by` beside it, or once for all under `[close_out]`");
        };
        if !people.contains(&by) {
            people.push(by);
        }
        if !days.contains(&day) {
            days.push(day);
        }
    }
    days.sort_unstable();
    let days: Vec<String> = days.iter().map(ToString::to_string).collect();
    claimed.proved(format!("{}, {}", days.join(", "), people.join(", ")))
}
