//! Protection: the device's own button, and that what it protects goes dead with it – and nothing else.

use crate::case::OpeningCase;
use crate::claim::{ClaimAnswer, ClaimKind, Claimed, against};
use crate::source::{sections_or, source_of};
use diagnosis::Condition;
use dwelling::Holding;
use remedies::Device;

/// The claims about protection at an opening.
pub(crate) fn claims(case: &OpeningCase) -> Vec<ClaimAnswer> {
    let mut claims = Vec::new();
    let planned = case.case.state.dwelling.device_box(case.at).holds;
    let there = case.seen.last(|after| after.fitted).unwrap_or(planned);
    let protective = |holds: Holding| matches!(holds, Holding::Gfci | Holding::Afci | Holding::Dual);
    if protective(planned) || protective(there) {
        claims.push(trips(case.seen.button(), "the device in this box"));
    }
    if case.opening.device != Device::Blank && planned.is_receptacle() {
        claims.extend(dead_with_it(case));
    }
    claims
}

/// Whether a device opens on its own button.
pub(crate) fn trips(button: Option<bool>, device: &str) -> ClaimAnswer {
    let claimed = Claimed {
        claim: ClaimKind::Trips,
        of: None,
        says: format!("{device} opens when its own test button is pressed"),
        must_read: "it opens".to_owned(),
        source: source_of(ClaimKind::Trips),
    };
    match button {
        Some(true) => claimed.proved("opened by its own test button"),
        Some(false) => claimed.contradicted(against(
            "it did not open",
            "the device is worn out, wired with line and load changed over, or not fed",
            "take it out of use and fit a new one; see that the feeding cable is on its line side",
        )),
        None => claimed.open("press its own test button, see that it opens, and reset it: no plug-in tester can do this where no ground is"),
    }
}

fn dead_with_it(case: &OpeningCase) -> Option<ClaimAnswer> {
    let dead = case.seen.last(|after| after.dead_when_tripped);
    let Some(by) = case.opening.protected_by.as_deref() else {
        // Where no device protects it by the plan, there is nothing to press; what went dead all the same is told.
        return dead.filter(|dead| *dead).map(|_| {
            let claimed = Claimed {
                claim: ClaimKind::NotProtected,
                of: None,
                says: "no device protects this opening by the plan".to_owned(),
                must_read: "alive while every protective device is tripped".to_owned(),
                source: source_of(ClaimKind::NotProtected),
            };
            claimed.contradicted(against(
                "it went dead when a device was tripped",
                "the load side of a device feeds more than the plan says",
                "see what hangs on the load side: its leakage and its count of openings were reckoned without this one",
            ))
        });
    };
    let device = match by.split_once(": ") {
        _ if by == "itself" => "its own device".to_owned(),
        Some((panel, what)) => format!("the {}", remedies::in_words::device_at(what, panel)),
        None => format!("the device in {by}"),
    };
    let claimed = Claimed {
        claim: ClaimKind::DeadWhenTripped,
        of: None,
        says: format!("the opening goes dead when {device} is tripped"),
        must_read: "dead".to_owned(),
        source: sections_or(&[], ClaimKind::DeadWhenTripped),
    };
    Some(match dead {
        Some(true) => claimed.proved(format!("dead when {device} was tripped")),
        Some(false) => {
            let cause = match case.looks_like(&[Condition::GfciDoesNotTrip]) {
                Some(says) => says,
                None if by == "itself" => "line and load are changed over on the device".to_owned(),
                None => "it hangs on the line side, or on another circuit: line and load are changed over, or its cable was \
                         joined to the wrong side"
                    .to_owned(),
            };
            claimed.contradicted(against(
                "it stayed alive",
                cause,
                format!("it is not protected: do not use it; join what feeds it to the load side of {device}, and press again"),
            ))
        }
        None => {
            claimed.open(format!("press the test button of {device}, and see with a lamp whether this opening is dead"))
        }
    })
}
