//! Polarity: against a ground that is proved, or against an independent earth. No tester tells it without a ground.

use crate::case::OpeningCase;
use crate::claim::{ClaimAnswer, ClaimKind, Claimed, ProofVerdict, against};
use crate::meter_error::size;
use crate::seen::pairs;
use crate::source::source_of;
use diagnosis::Condition;
use dwelling::TesterVerdict;
use electrical::Volts;

/// Whether hot and neutral are where they belong, given what became of the claim of a ground here.
pub(crate) fn claim(case: &OpeningCase, ground: Option<ProofVerdict>) -> ClaimAnswer {
    let claimed = Claimed {
        claim: ClaimKind::Polarity,
        of: None,
        says: "hot and neutral are not changed over".to_owned(),
        must_read: if case.opening.grounded {
            "hot to ground at line voltage and neutral to ground near nought".to_owned()
        } else {
            "hot slot to an independent earth at line voltage, neutral slot near nought".to_owned()
        },
        source: source_of(ClaimKind::Polarity),
    };
    let against_ground = case.seen.last(|after| pairs(&after.reading)).filter(|_| case.opening.grounded);
    let against_ground = against_ground.and_then(|[_, hot, neutral]| told(hot, neutral));
    let earth = case.seen.last(|after| Some((after.reading.hot_earth?, after.reading.neutral_earth?)));
    let against_earth = earth.and_then(|(hot, neutral)| told(size(hot), size(neutral)));
    let tester = case.seen.last(|after| after.reading.tester);
    let reversed = tester == Some(TesterVerdict::HotNeutralReversed);
    if reversed || against_ground == Some(false) || against_earth == Some(false) {
        let reads = match (earth, against_earth, reversed) {
            (Some(earth), Some(false), _) => in_words(earth),
            (_, _, true) => "a plug-in tester says hot and neutral reversed".to_owned(),
            _ => "hot to ground near nought, neutral to ground at line voltage".to_owned(),
        };
        let likely = case.looks_like(&[
            Condition::ReversedFalseGround,
            Condition::HotNeutralReversed,
            Condition::HotGroundReversed,
            Condition::LiveEnclosure,
        ]);
        let cause =
            likely.unwrap_or_else(|| "hot and neutral are changed over here or at a splice before it".to_owned());
        let next =
            "do not use it; switch off, prove dead, and put the conductors right, here or where they were changed over";
        return claimed.contradicted(against(reads, cause, next));
    }
    match (earth, against_earth, against_ground, ground) {
        (Some(earth), Some(true), ..) => claimed.proved(in_words(earth)),
        (.., Some(true), Some(ProofVerdict::Proved)) => {
            claimed.proved("hot reads against the proved ground, neutral does not")
        }
        (.., Some(true), _) => claimed.open("prove the ground first, or read both slots to an independent earth"),
        _ if case.opening.grounded => claimed.open("read hot to ground and neutral to ground"),
        _ => claimed.open(
            "read the hot and the neutral slot to an independent earth, such as a cord from a proved ground, and write \
             `hot_earth` and `neutral_earth`: without a ground no tester tells polarity",
        ),
    }
}

/// Whether the hot slot is the live one of the two; nothing where the two do not tell.
fn told(hot: f64, neutral: f64) -> Option<bool> {
    // Halfway between nought and the least line voltage, 114 V: what a slot on the neutral never reaches.
    let live = |volts: f64| volts > 57.0;
    match (live(hot), live(neutral)) {
        (true, false) => Some(true),
        (false, true) => Some(false),
        _ => None,
    }
}

fn in_words((hot, neutral): (Volts, Volts)) -> String {
    format!("to an independent earth the hot slot reads {hot}, the neutral slot {neutral}")
}
