//! A ground that is claimed: one of its own by a reading that separates it from a jumper, connected, and able to bear a fault.

use crate::case::{Case, OpeningCase};
use crate::claim::{Against, ClaimAnswer, ClaimKind, Claimed, against};
use crate::meter_error::{may_be_off, size};
use crate::seen::{in_words, is_loaded, pairs};
use crate::source::source_of;
use crate::volts::{load_in_words, predicted};
use diagnosis::{Condition, JOINED_UP_TO, POOR_ABOVE};
use dwelling::{AfterReading, BoxIndex, GroundSeen, Reading, TesterVerdict};
use remedies::{Device, Step};

/// What a jumper does, in words: the caution of every false ground.
const JUMPER: &str = "neutral and ground are joined at or near this opening: it is no ground, and if the neutral opens every \
                      case plugged in is at line voltage";
const OPEN_IT: &str =
    "do not use it; switch off, prove dead, and open this box and those tied to it: take the jumper out";

/// What became of the ground at an opening, and whether it reads as joined with the neutral.
pub(crate) struct GroundJudged {
    pub(crate) claim: ClaimAnswer,
    pub(crate) joined: bool,
}

/// Whether the ground here is one of its own.
pub(crate) fn ground(case: &OpeningCase) -> GroundJudged {
    let claimed = |must: Option<String>| Claimed {
        claim: ClaimKind::Ground,
        of: None,
        says: "the ground is one of its own, and no jumper to the neutral".to_owned(),
        must_read: must.unwrap_or_else(|| {
            "under a stated load: neutral to ground at the neutral's own drop, hot to ground the sum of the other two"
                .to_owned()
        }),
        source: source_of(ClaimKind::Ground),
    };
    if let Some((against, joined)) = plainly_wrong(case) {
        return GroundJudged { claim: claimed(None).contradicted(against), joined };
    }
    let Some(after) = case.seen.loaded(|reading| pairs(reading).is_some()) else {
        let next = "read all three pairs with the load of the test record on: without load a jumper reads as a ground does, \
                    and no plug-in tester tells them apart";
        return GroundJudged { claim: claimed(None).open(next), joined: false };
    };
    let Some([_, _, neutral]) = pairs(&after.reading) else {
        return GroundJudged { claim: claimed(None).open("read all three pairs under load"), joined: false };
    };
    let off = may_be_off(neutral, after.reading.meter);
    let joined_up_to = size(JOINED_UP_TO);
    let reads = format!("{} with {}", in_words(&after.reading), load_in_words(case, after));
    let expected = match predicted(case, after) {
        Ok(expected) => expected.neutral_rises,
        Err(missing) => return unreckoned(claimed(None), after, (neutral, off), (reads, missing)),
    };
    let (least, most) = expected;
    let must = format!(
        "neutral to ground {least:.2} to {most:.2} V with {}, hot to ground the sum of the other two",
        load_in_words(case, after)
    );
    let claimed = claimed(Some(must));
    if least - may_be_off(least, after.reading.meter) <= joined_up_to {
        let next = format!(
            "with {} a jumper would read the same as a ground: plug a heavier load in at this opening or beyond it, and \
             read again",
            load_in_words(case, after)
        );
        return GroundJudged { claim: claimed.open(next), joined: false };
    }
    if neutral < least - off {
        let cause = case.looks_like(&[Condition::FalseGround]).unwrap_or_else(|| JUMPER.to_owned());
        let cause = format!("{}; or the load was smaller than stated", cause.trim_end_matches('.'));
        let joined = neutral <= joined_up_to + off;
        return GroundJudged { claim: claimed.contradicted(against(reads, cause, OPEN_IT)), joined };
    }
    if neutral > most + off {
        let cause = "a bad joint in the neutral, here or on the way to the panel; or a larger load than stated";
        let next = "stop using the circuit under load; switch off, prove dead, and remake the neutral's joints toward the panel";
        return GroundJudged { claim: claimed.contradicted(against(reads, cause, next)), joined: false };
    }
    let how = format!("{reads}: it rises by the neutral's own drop, reckoned {least:.2} to {most:.2} V");
    GroundJudged { claim: claimed.proved(how), joined: false }
}

/// A separating reading on a circuit whose runs are not known: that it rises can be told, not whether by what it should.
fn unreckoned(
    claimed: Claimed,
    after: &AfterReading,
    (neutral, off): (f64, f64),
    (reads, missing): (String, String),
) -> GroundJudged {
    let heavy = after.load_current.is_some();
    let joined = neutral <= size(JOINED_UP_TO) + off;
    let claim = match (joined, heavy) {
        (false, true) => {
            claimed.proved(format!("{reads}: it rises under load; by how much it must was not reckoned: {missing}"))
        }
        _ => claimed.open(missing),
    };
    GroundJudged { claim, joined: false }
}

/// What speaks against a ground whatever else was read, and whether it is a join.
fn plainly_wrong(case: &OpeningCase) -> Option<(Against, bool)> {
    let seen = case.seen.last(|after| after.reading.ground.filter(|seen| *seen != GroundSeen::NotOpened));
    match seen {
        Some(GroundSeen::Jumper) => return Some((against("a jumper was seen", JUMPER, OPEN_IT), true)),
        Some(GroundSeen::PipeOrRod) => {
            let cause = "a way through earth lets no breaker open: it is no ground of a circuit";
            let next = "take it off, and bring the conductor that the plan names";
            return Some((against("the conductor leads to a pipe or a rod of its own", cause, next), false));
        }
        _ => {}
    }
    let tester = case.seen.last(|after| after.reading.tester);
    if let Some(verdict) = tester.filter(|verdict| *verdict != TesterVerdict::Correct) {
        let joined = verdict == TesterVerdict::FalseGround;
        let cause = match verdict {
            TesterVerdict::FalseGround => JUMPER.to_owned(),
            TesterVerdict::OpenGround => {
                "the ground does not arrive: not connected here, not landed at its source, or broken between".to_owned()
            }
            other => format!("a tester does not say `{other}` where hot, neutral and ground are sound"),
        };
        let next = if joined {
            OPEN_IT
        } else {
            "switch off, prove dead, and look at the joints here and at the ground's source"
        };
        return Some((against(format!("a plug-in tester says {verdict}"), cause, next), joined));
    }
    // The last set without load and the last under load: neither makes the other good.
    let last = |loaded: bool| {
        case.seen
            .last(|after| (is_loaded(after) == loaded && pairs(&after.reading).is_some()).then_some(&after.reading))
    };
    let wrong = [last(false), last(true)].into_iter().flatten().find(|reading| !adds_up(reading))?;
    let cause = case
        .looks_like(&[
            Condition::OpenGround,
            Condition::PoorGround,
            Condition::HotNeutralReversed,
            Condition::OpenNeutral,
        ])
        .unwrap_or_else(|| {
            "the ground floats: not connected here, not landed at its source, or broken between".to_owned()
        });
    let next = "switch off, prove dead, and look at the joints of the ground here and where it starts";
    Some((against(in_words(wrong), cause, next), false))
}

/// Whether hot to ground is the sum of the other two, as far as the meter tells: not where the ground floats.
fn adds_up(reading: &Reading) -> bool {
    let Some([hot, ground, neutral]) = pairs(reading) else { return true };
    let off =
        may_be_off(ground, reading.meter).max(may_be_off(hot, reading.meter)) + may_be_off(neutral, reading.meter);
    (ground - hot - neutral).abs() <= off
}

/// A ground whose group holds a join elsewhere: a contradiction here too.
pub(crate) fn joined_elsewhere(claim: ClaimAnswer, case: &Case, at: BoxIndex, join: BoxIndex) -> ClaimAnswer {
    let claimed = Claimed {
        claim: claim.claim,
        of: claim.of,
        says: claim.says,
        must_read: "no join of neutral and ground in any box that is tied to this one".to_owned(),
        source: claim.source,
    };
    let (here, there) = (case.id(at), case.id(join));
    claimed.contradicted(against(
        format!("{there} reads as joined, and the grounds of {here} and {there} are tied together"),
        JUMPER,
        format!("take the join at {there} out, then read both again"),
    ))
}

/// Whether the conductor is connected in this box, where the plan works on it.
pub(crate) fn connected(case: &OpeningCase) -> Option<ClaimAnswer> {
    let opening = case.opening;
    let steps = [Step::RestoreKept, Step::RestoreFitted, Step::ConnectKept, Step::ConnectFitted];
    let fitted = opening.grounded && !matches!(opening.device, Device::Kept | Device::Blank);
    let works_on_it = steps.contains(&opening.step) || !opening.routes_joined.is_empty() || fitted;
    if !works_on_it {
        return None;
    }
    let claimed = Claimed {
        claim: ClaimKind::GroundConnected,
        of: None,
        says: "the grounding conductor is connected in this box".to_owned(),
        must_read: "connected, seen before the box was closed".to_owned(),
        source: source_of(ClaimKind::GroundConnected),
    };
    let seen = case.seen.last(|after| after.reading.ground.filter(|seen| *seen != GroundSeen::NotOpened));
    Some(match seen {
        None => claimed
            .open("look into the box before it is closed, and write `ground = \"connected\"` or what else is seen"),
        Some(seen @ (GroundSeen::Connected | GroundSeen::MetalTight)) => claimed.proved(format!("ground seen {seen}")),
        Some(seen) => claimed.contradicted(against(
            format!("seen: {seen}"),
            "the ground was not connected, or not the one that the plan names",
            "switch off, prove dead, connect it, and read again",
        )),
    })
}

/// Whether the way back bears the current of a fault.
pub(crate) fn path(case: &OpeningCase) -> ClaimAnswer {
    let claimed = Claimed {
        claim: ClaimKind::GroundPath,
        of: None,
        says: format!("the grounding path bears the current of a fault: {POOR_ABOVE} or less"),
        must_read: format!("impedance of the grounding path, by a loaded test, {POOR_ABOVE} or less"),
        source: source_of(ClaimKind::GroundPath),
    };
    match case.seen.last(|after| after.reading.ground_impedance) {
        None => claimed
            .open("test it under load, and write `ground_ohms`: a meter that draws nothing does not see a bad joint"),
        Some(ohms) if ohms <= POOR_ABOVE => claimed.proved(format!("ground {ohms} by a loaded test")),
        Some(ohms) => claimed.contradicted(against(
            format!("{ohms}"),
            "a bad joint in the ground, a way too thin or too long, or earth in it",
            "do not rely on it; look at every joint from here to the ground's source, and test again",
        )),
    }
}
