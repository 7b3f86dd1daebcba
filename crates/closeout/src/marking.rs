//! Markings: exactly those that the code asks for here, and none that says what is not so.

use crate::case::OpeningCase;
use crate::claim::{ClaimAnswer, ClaimKind, Claimed, against};
use crate::source::{sections_or, source_of};
use dwelling::LabelSeen;
use remedies::Device;

/// The claims about the labels at an opening.
pub(crate) fn claims(case: &OpeningCase) -> Vec<ClaimAnswer> {
    let opening = case.opening;
    let seen = case.seen.last(|after| after.labels.as_ref());
    let mut claims: Vec<ClaimAnswer> = Vec::new();
    for words in &opening.markings {
        let claimed = Claimed {
            claim: ClaimKind::Marking,
            of: Some((*words).to_owned()),
            says: format!("it is marked “{words}”, to be seen with the plate on"),
            must_read: format!("the label “{words}”"),
            source: sections_or(&opening.cites, ClaimKind::Marking),
        };
        claims.push(match seen {
            None => claimed.open("look, and write the labels that are seen"),
            Some(labels) if labels.iter().any(|label| label.name() == *words) => {
                claimed.proved(format!("“{words}” seen"))
            }
            Some(_) => claimed.contradicted(against(
                "no such label",
                "the label was not put on, fell off, or is behind the plate",
                format!("put “{words}” on where it is seen after the work"),
            )),
        });
    }
    let kept_two_slot = opening.device == Device::Kept && !opening.holds.takes_grounding_plug();
    if opening.device == Device::Blank || (kept_two_slot && seen.is_none()) {
        return claims;
    }
    let claimed = Claimed {
        claim: ClaimKind::NoFalseMarking,
        of: None,
        says: "no label says what is not so".to_owned(),
        must_read: match opening.markings.as_slice() {
            [] => "no label".to_owned(),
            markings => format!("no label but “{}”", markings.join("”, “")),
        },
        source: source_of(ClaimKind::NoFalseMarking),
    };
    let false_ones = seen.map(|labels| {
        let not_asked = |label: &&LabelSeen| **label != LabelSeen::Other && !opening.markings.contains(&label.name());
        labels.iter().filter(not_asked).map(|label| label.name()).collect::<Vec<&str>>()
    });
    claims.push(match false_ones.as_deref() {
        None => claimed.open("look, and write the labels that are seen; `labels = []` where there is none"),
        Some([]) => claimed.proved("no label that says what is not so"),
        Some(labels) => {
            let cause = if labels.contains(&"No Equipment Ground") && opening.grounded {
                "the opening has a ground by the plan: the label is left from before, or the ground was not brought"
            } else {
                "the label belongs to another opening, or the work differs from the plan"
            };
            let next = "take the label off if the other readings bear the plan out; plan anew if they do not";
            claimed.contradicted(against(format!("“{}”", labels.join("”, “")), cause, next))
        }
    });
    claims
}
