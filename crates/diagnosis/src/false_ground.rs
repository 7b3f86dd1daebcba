//! False grounds: neutral and ground joined where they must not be, and ground terminals that are live.

use crate::bands::{Level, level};
use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, Evidence, is_loaded, sinks_phantoms};
use crate::finding::{Finding, Site};
use crate::ground_reading::GroundReading;
use dwelling::{BoxIndex, GroundSeen, MeterKind, Reach, TesterVerdict};

/// The caution that goes with every joined neutral and ground.
const HOT_IF_NEUTRAL_OPENS: &str = "if the neutral opens upstream, every case plugged in here is at line voltage";

/// The false grounds and live enclosures of a dwelling.
pub(crate) fn find(case: &Case) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, evidence) in case.boxes() {
        found.extend(reversed(index, evidence));
        found.extend(joined(case, index, evidence));
        found.extend(live_enclosure(case, index, evidence));
        found.extend(spread(case, index, evidence));
    }
    found
}

fn reversed(index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let GroundReading::ReversedJoined(sure) = evidence.ground else { return None };
    Some(
        Finding::new(
            Site::Box(index),
            Condition::ReversedFalseGround,
            sure,
            "The ground terminal is on the hot conductor and polarity is reversed: every metal case plugged in here is \
             live, no plug-in tester shows it and a GFCI cannot clear it. Switch the circuit off and open the box.",
        )
        .danger()
        .because(evidence.words(|reading, _| reading.hot_earth.is_some()))
        .unless(Condition::LiveEnclosure, "with polarity right, the hot slot and not the neutral slot is live to earth")
        .next("switch the circuit off, prove it dead, open this box and look for a jumper", [index]),
    )
}

fn joined(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let seen = evidence.seen == Some(GroundSeen::Jumper);
    let sure = match evidence.ground {
        _ if seen => Certainty::Shown,
        GroundReading::Joined(sure) => sure,
        _ => return None,
    };
    let read = evidence.words(|reading, _| is_loaded(reading) || reading.tester == Some(TesterVerdict::FalseGround));
    let finding = Finding::new(
        Site::Box(index),
        Condition::FalseGround,
        sure,
        format!("Neutral and ground are joined at or near this opening: it is no ground, and {HOT_IF_NEUTRAL_OPENS}."),
    )
    .danger()
    .because(seen.then(|| "a jumper from neutral to the ground terminal or the box was seen".to_owned()))
    .because(read);
    Some(if seen {
        finding
    } else {
        finding
            .unless(Condition::AsItShouldBe, "with a load that surely hangs on this opening, neutral–ground rises")
            .unless(Condition::GroundByPipeOrRod, "a path through earth lets neutral–ground rise under load")
            .next(
                "open this box, and the one before it, and look for a jumper; the join is often not where it shows",
                case.here_and_before(index),
            )
    })
}

/// A ground terminal or enclosure that is live to an independent earth, with polarity right or not looked at.
fn live_enclosure(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    if matches!(evidence.ground, GroundReading::ReversedJoined(_)) {
        return None;
    }
    let live = |reading: &&dwelling::Reading| reading.ground_earth.map(level) == Some(Level::Line);
    let readings = || evidence.taken.iter().map(|(reading, _)| *reading).filter(live);
    readings().next()?;
    let holds = readings().any(|reading| sinks_phantoms(reading) || is_loaded(reading));
    let collapses = evidence.taken.iter().any(|(reading, _)| {
        sinks_phantoms(reading) && reading.ground_earth.is_some_and(|volts| level(volts) == Level::Nothing)
    });
    if collapses && !holds {
        return None;
    }
    let unknown_meter = readings().all(|reading| reading.meter.is_none_or(|meter| meter == MeterKind::PlugInTester));
    let sure = match (holds, unknown_meter) {
        (true, _) => Certainty::Shown,
        (false, false) => Certainty::Likely,
        (false, true) => Certainty::Possible,
    };
    Some(
        Finding::new(
            Site::Box(index),
            Condition::LiveEnclosure,
            sure,
            "The ground terminal or enclosure is at line voltage to earth: do not touch metal here or plug anything in \
             before the circuit is off and the box has been opened.",
        )
        .danger()
        .because(evidence.words(|reading, _| live(&reading)))
        .unless(
            Condition::ReversedFalseGround,
            "read hot and neutral slots to the same earth: reversed if hot reads 0 V",
        )
        .unless(Condition::PhantomVolts, "a phantom, or leakage of a filter, collapses under a low-impedance meter")
        .next(
            if holds {
                "switch the circuit off, prove it dead, and open this box and the one before it"
            } else {
                "unplug everything and repeat ground to earth with a low-impedance meter or a lamp"
            },
            case.here_and_before(index),
        ),
    )
}

/// A box that is tied by its grounding path to another one in which neutral and ground are joined.
fn spread(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    if evidence.seen == Some(GroundSeen::Jumper) || matches!(evidence.ground, GroundReading::Joined(_)) {
        return None;
    }
    let source = jumper_in_group(case, index)?;
    Some(
        Finding::new(
            Site::Box(index),
            Condition::FalseGround,
            Certainty::Likely,
            format!(
                "Its ground is tied to that of `{}`, where a jumper joins neutral and ground: {HOT_IF_NEUTRAL_OPENS}.",
                case.id(source)
            ),
        )
        .danger()
        .because([format!(
            "a jumper was seen in `{}`, and grounded cable or metal joins the two boxes",
            case.id(source)
        )])
        .unless(Condition::OpenGround, "the tie between the two boxes may be broken: continuity with the power off")
        .next("remove the jumper there, then read this opening again", [source]),
    )
}

/// Another box of the same bonded group, not grounded from the panel, in which a jumper was seen.
pub(crate) fn jumper_in_group(case: &Case, index: BoxIndex) -> Option<BoxIndex> {
    let group = case.groups.group_of(index);
    if group.reach == Reach::Panel {
        return None;
    }
    let jumpered = |other: &BoxIndex| case.evidence(*other).seen == Some(GroundSeen::Jumper);
    group.members.iter().copied().filter(|other| *other != index).find(jumpered)
}
