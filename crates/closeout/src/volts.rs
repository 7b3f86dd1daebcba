//! Hot to neutral: line voltage without load, and under a stated load no lower than sound conductors and joints explain.

use crate::case::OpeningCase;
use crate::claim::{Against, ClaimAnswer, ClaimKind, Claimed, against};
use crate::meter_error::{difference_may_be_off, may_be_off, size};
use crate::source::source_of;
use calculations::{UnderLoad, under_load};
use diagnosis::Condition;
use dwelling::AfterReading;

/// What hot to neutral may be at a dwelling of 120 V. From memory: ANSI C84.1, range A, at the service.
const LINE: (f64, f64) = (114.0, 126.0);

/// The claims about hot to neutral at an opening.
pub(crate) fn claims(case: &OpeningCase) -> Vec<ClaimAnswer> {
    vec![without_load(case), with_load(case)]
}

fn without_load(case: &OpeningCase) -> ClaimAnswer {
    let claimed = Claimed {
        claim: ClaimKind::HotNeutral,
        of: None,
        says: "hot to neutral reads line voltage without load".to_owned(),
        must_read: format!("hot to neutral {:.0} to {:.0} V, nothing switched on", LINE.0, LINE.1),
        source: source_of(ClaimKind::HotNeutral),
    };
    let Some((reading, volts)) = case.seen.quiet().and_then(|reading| Some((reading, reading.hot_neutral?))) else {
        return claimed.open("read it with nothing switched on, and write `hn` with `load = \"none\"`");
    };
    let read = size(volts);
    let off = may_be_off(read, reading.meter);
    if (LINE.0 - off..=LINE.1 + off).contains(&read) {
        return claimed.proved(format!("hot to neutral {volts} without load"));
    }
    let likely = case.looks_like(&[
        Condition::OpenNeutral,
        Condition::OpenHot,
        Condition::PoorNeutral,
        Condition::HotGroundReversed,
        Condition::OverVoltage,
    ]);
    let cause = likely.unwrap_or_else(|| {
        "if every opening reads so, the supply; if only this one or those behind it, a bad joint on the way here".into()
    });
    claimed.contradicted(against(
        format!("hot to neutral {volts}"),
        cause,
        "read the openings before and behind it; switch off, prove dead, and open the first that reads so",
    ))
}

/// What the network solver makes of the load under which a set was taken.
pub(crate) fn predicted(case: &OpeningCase, after: &AfterReading) -> Result<UnderLoad, String> {
    let load = after.load_current.ok_or("write what the load draws, `load_current`")?;
    under_load(&case.case.state, case.at, after.load_at.unwrap_or(case.at), load)
}

/// A load in words.
pub(crate) fn load_in_words(case: &OpeningCase, after: &AfterReading) -> String {
    let current = after.load_current.map_or("a load".to_owned(), |current| current.to_string());
    match after.load_at.filter(|at| *at != case.at) {
        Some(at) => format!("{current} at {}", case.case.id(at)),
        None => format!("{current} here"),
    }
}

fn with_load(case: &OpeningCase) -> ClaimAnswer {
    let claimed = |must: Option<&str>| Claimed {
        claim: ClaimKind::HotNeutralLoaded,
        of: None,
        says: "hot to neutral falls under load by what sound conductors and joints explain".to_owned(),
        must_read: must.unwrap_or("hot to neutral, without load and with one whose current is known").to_owned(),
        source: source_of(ClaimKind::HotNeutralLoaded),
    };
    let loaded = case.seen.loaded(|reading| reading.hot_neutral.is_some());
    let (Some(quiet), Some(after)) = (case.seen.quiet(), loaded) else {
        return claimed(None)
            .open("read it with the load of the test record on, and write `hn` with `load = \"heavy\"`");
    };
    let (Some(before), Some(under)) = (quiet.hot_neutral, after.reading.hot_neutral) else {
        return claimed(None).open("read hot to neutral without load and with it");
    };
    let expected = match predicted(case, after) {
        Ok(expected) => expected,
        Err(missing) => return claimed(None).open(missing),
    };
    let (least, most) = expected.falls_by;
    let (before, under) = (size(before), size(under));
    let falls = before - under;
    let off = difference_may_be_off(quiet, &after.reading, (before, under));
    let must = format!("a fall of {} to {} V with {}", tenth(least), tenth(most), load_in_words(case, after));
    let reads = format!("a fall of {falls:.1} V, from {before:.1} to {under:.1} V");
    if falls > most + off {
        return claimed(Some(&must)).contradicted(falls_too_far(case, after, &expected, reads));
    }
    if falls < least - off {
        return claimed(Some(&must)).contradicted(against(
            reads,
            "the load was smaller than stated, or did not hang on the wires that were read",
            "plug the load in at this opening, measure its current, and read again",
        ));
    }
    claimed(None).proved(format!(
        "falls by {falls:.1} V with {}, reckoned {} to {} V",
        load_in_words(case, after),
        tenth(least),
        tenth(most)
    ))
}

fn tenth(volts: f64) -> String {
    // No sign before a nought.
    let rounded = (volts * 10.0).round() / 10.0;
    format!("{:.1}", if rounded == 0.0 { 0.0 } else { rounded })
}

/// A fall beyond what is reckoned: which conductor it lies in shows where there is a ground to read against.
fn falls_too_far(case: &OpeningCase, after: &AfterReading, expected: &UnderLoad, reads: String) -> Against {
    let neutral = after.reading.neutral_ground.filter(|_| case.opening.grounded).map(size);
    let cause = match neutral {
        Some(volts) if volts > expected.neutral_rises.1 + may_be_off(volts, after.reading.meter) => {
            "a bad joint in the neutral, here or on the way to the panel: neutral to ground rises with it"
        }
        Some(_) => "a bad joint in the hot conductor, here or on the way to the panel: the neutral rises as it should",
        None => {
            "a bad joint in the hot or the neutral conductor, here or on the way to the panel; or a larger load than stated"
        }
    };
    against(
        reads,
        cause,
        "stop using the circuit under load; switch off, prove dead, and tighten or remake the joints from here toward the panel",
    )
}
