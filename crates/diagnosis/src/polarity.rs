//! Conductors that have changed places, and neutral joints that are failing.

use crate::bands::{Level, level};
use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, Evidence};
use crate::finding::{Finding, Site};
use crate::ground_reading::GroundReading;
use crate::pattern::Pattern;
use dwelling::{BoxIndex, Reach, Reading, TesterVerdict};

/// The reversals, poor neutrals and impossible readings of a dwelling.
pub(crate) fn find(case: &Case) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, evidence) in case.boxes() {
        found.extend(reversed(case, index, evidence));
        found.extend(poor_neutral(case, index, evidence));
        found.extend(impossible(index, evidence));
    }
    found
}

fn reversed(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    if matches!(evidence.ground, GroundReading::ReversedJoined(_)) {
        return None;
    }
    let by_earth = |reading: &Reading| {
        reading.hot_earth.map(level) == Some(Level::Nothing) && reading.neutral_earth.map(level) == Some(Level::Line)
    };
    let shown = evidence.taken.iter().any(|(reading, _)| by_earth(reading));
    let read = evidence.looks(Pattern::HotNeutralReversed);
    let tested = evidence.tester_said(TesterVerdict::HotNeutralReversed);
    if !shown && !read && !tested && !evidence.looks(Pattern::OpenGroundOrReversed) {
        return None;
    }
    // Where no ground can be, a tester has nothing to compare with: a load on a floating ground is as likely.
    let compared = read || (tested && case.reach(index) != Reach::Isolated);
    let sure = match (shown, compared) {
        (true, _) => Certainty::Shown,
        (false, true) => Certainty::Likely,
        (false, false) => Certainty::Possible,
    };
    let finding = Finding::new(
        Site::Box(index),
        Condition::HotNeutralReversed,
        sure,
        "Hot and neutral have changed places: the screw shell of a lamp and the unswitched side of an appliance are live.",
    )
    .danger()
    .because(evidence.words(|reading, pattern| {
        by_earth(reading)
            || matches!(pattern, Pattern::HotNeutralReversed | Pattern::OpenGroundOrReversed)
            || reading.tester == Some(TesterVerdict::HotNeutralReversed)
    }));
    Some(if shown {
        finding
    } else {
        finding
            .unless(Condition::OpenGround, "a load on a floating ground reads alike: unplug every load and read again")
            .next("unplug every load, then read both slots to an independent earth", case.here_and_before(index))
    })
}

fn poor_neutral(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let not_listed = evidence.tester_said(TesterVerdict::NotListed);
    let drops = evidence.looks(Pattern::NeutralDrop);
    if !not_listed && !drops && !evidence.looks(Pattern::LowVoltage) {
        return None;
    }
    let finding = Finding::new(
        Site::Box(index),
        Condition::PoorNeutral,
        if drops { Certainty::Likely } else { Certainty::Possible },
        "The neutral may have a poor joint here or upstream: such a joint heats under load.",
    )
    .because(evidence.words(|reading, pattern| {
        matches!(pattern, Pattern::NeutralDrop | Pattern::LowVoltage)
            || reading.tester == Some(TesterVerdict::NotListed)
    }))
    .unless(Condition::OpenNeutral, "with every load unplugged, an open neutral still reads a phantom or nothing");
    let finding = if evidence.looks(Pattern::LowVoltage) {
        finding.unless(Condition::OpenHot, "a phantom on an open hot conductor collapses under a low-impedance meter")
    } else {
        finding
    };
    let finding = if drops {
        finding.unless(
            Condition::AsItShouldBe,
            "a long run with a heavy load drops as much: reckon the drop of its length",
        )
    } else {
        finding.unless(
            Condition::TesterCannotTell,
            "loads elsewhere confuse a plug-in tester: unplug them and use a meter",
        )
    };
    let finding = if drops { finding.danger() } else { finding };
    Some(finding.next(
        "unplug every load and read again, then look at the neutral joints here and in the box before",
        case.here_and_before(index),
    ))
}

fn impossible(index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    evidence.looks(Pattern::Disagree).then(|| {
        Finding::new(
            Site::Box(index),
            Condition::ReadingsDisagree,
            Certainty::Shown,
            "These readings fit no single state of the wiring: a slip of the probe or of the pen, or two faults at once.",
        )
        .because(evidence.words(|_, pattern| pattern == Pattern::Disagree))
        .next("read all three pairs again with a low-impedance meter, everything unplugged", [index])
    })
}
