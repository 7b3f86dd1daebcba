//! Where the plan leaves no ground, none may seem to be: what reads as one is a fake, or the work is not what was planned.

use crate::case::OpeningCase;
use crate::claim::{Against, ClaimAnswer, ClaimKind, Claimed, against};
use crate::meter_error::{may_be_off, size};
use crate::seen::{in_words, is_loaded, sinks_phantoms};
use crate::source::source_of;
use diagnosis::{Condition, PHANTOM_UP_TO};
use dwelling::{AfterReading, GroundSeen, TesterVerdict};

const CAUSE: &str =
    "a ground was faked by a jumper to the neutral, or a real one was brought that the plan does not know";
const NEXT: &str = "switch off, prove dead, and open the box: take a jumper out; if a real ground was brought, put it into the \
                    survey as found and plan anew, since it must be used and the markings are then false";

/// Whether no ground is faked at an opening that has none.
pub(crate) fn claim(case: &OpeningCase) -> ClaimAnswer {
    let claimed = Claimed {
        claim: ClaimKind::NoGround,
        of: None,
        says: "no ground is faked where the plan leaves none".to_owned(),
        must_read: "a plug-in tester says open ground, or hot to ground collapses under a low-impedance meter"
            .to_owned(),
        source: source_of(ClaimKind::NoGround),
    };
    if let Some(against) = seems_grounded(case) {
        return claimed.contradicted(against);
    }
    let tester = case.seen.last(|after| after.reading.tester);
    if let Some(verdict) = tester.filter(|verdict| *verdict != TesterVerdict::OpenGround) {
        let cause = case.looks_like(&[
            Condition::OpenNeutral,
            Condition::OpenHot,
            Condition::HotNeutralReversed,
            Condition::HotGroundReversed,
        ]);
        let cause = cause.unwrap_or_else(|| "hot or neutral is not sound here".to_owned());
        let next = "read the three pairs, and each slot to an independent earth, before anything is plugged in";
        return claimed.contradicted(against(format!("a plug-in tester says {verdict}"), cause, next));
    }
    let collapses = case.seen.last(|after| {
        let low = after.reading.hot_ground.filter(|volts| sinks_phantoms(&after.reading) && size(*volts) < 57.0);
        low.map(|volts| (volts, after.reading.meter))
    });
    match (tester, collapses) {
        (Some(_), _) => claimed.proved("a plug-in tester says open ground: expected here, and no fault"),
        (None, Some((volts, _))) => claimed.proved(format!("hot to ground {volts} under a low-impedance meter")),
        (None, None) => claimed.open(
            "plug a tester in and write what it says, or read hot to ground with a low-impedance meter: a look into this \
             box alone does not show a jumper in another that is tied to it",
        ),
    }
}

fn seems_grounded(case: &OpeningCase) -> Option<Against> {
    let seen = case.seen.last(|after| after.reading.ground);
    if let Some(seen @ (GroundSeen::Jumper | GroundSeen::PipeOrRod | GroundSeen::Connected)) = seen {
        return Some(against(format!("seen: {seen}"), CAUSE, NEXT));
    }
    let tester = case.seen.last(|after| after.reading.tester);
    if let Some(verdict @ (TesterVerdict::Correct | TesterVerdict::FalseGround)) = tester {
        return Some(against(format!("a plug-in tester says {verdict}"), CAUSE, NEXT));
    }
    if case.seen.last(|after| after.reading.tester_trips_gfci) == Some(true) {
        let reads = "a plug-in tester's button opened the device: its current found a way back";
        return Some(against(reads, CAUSE, NEXT));
    }
    if let Some(ohms) = case.seen.last(|after| after.reading.ground_impedance) {
        return Some(against(format!("a loaded test finds a path of {ohms}"), CAUSE, NEXT));
    }
    let wrong = case.seen.last(|after| reads_as_ground(after).then_some(after))?;
    let likely = case.looks_like(&[Condition::FalseGround, Condition::HotNeutralReversed]);
    Some(against(in_words(&wrong.reading), likely.unwrap_or_else(|| CAUSE.to_owned()), NEXT))
}

/// Whether hot to ground, or neutral to ground, reads line voltage by more than a phantom can.
fn reads_as_ground(after: &AfterReading) -> bool {
    let reading = &after.reading;
    // What draws current collapses a phantom: half the line voltage is then no phantom.
    let draws = sinks_phantoms(reading) || (is_loaded(after) && reading.meter.is_none());
    let limit = if draws { 57.0 } else { size(PHANTOM_UP_TO) };
    let beyond = |volts: f64| volts > limit + may_be_off(volts, reading.meter);
    reading.hot_ground.map(size).is_some_and(beyond)
}
