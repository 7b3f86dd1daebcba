//! Grounds that do not arrive, or arrive poorly, and the phantom volts that hide it.

use crate::bands::{EARTH_PATH_ABOVE, Level, POOR_ABOVE, level};
use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, Evidence, is_loaded, sinks_phantoms};
use crate::finding::{Finding, Site};
use crate::ground_reading::GroundReading;
use crate::pattern::Pattern;
use dwelling::{BoxIndex, MeterKind, Reach, Reading, TesterVerdict};

/// The open and poor grounds of a dwelling.
pub(crate) fn find(case: &Case) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, evidence) in case.boxes() {
        found.extend(open(case, index, evidence));
        found.extend(mixed(case, index, evidence));
        found.extend(phantom(index, evidence));
        found.extend(poor(case, index, evidence));
    }
    found
}

fn open(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let GroundReading::Open(sure) = evidence.ground else { return None };
    let finding = Finding::new(
        Site::Box(index),
        Condition::OpenGround,
        sure,
        "No ground arrives at this opening, whatever the box holds.",
    )
    .because(evidence.words(speaks_for_open))
    .unless(Condition::LooseGround, "open the box: a grounding conductor may be in it, connected to nothing")
    .unless(Condition::CutOffGround, "open the box: look at the cable sheath for a conductor cut off there")
    .unless(
        Condition::HotNeutralReversed,
        "without a ground no tester sees polarity: read hot and neutral slots to an independent earth",
    );
    let finding = match sure {
        _ if evidence.seen.is_some() => finding,
        Certainty::Possible => finding
            .unless(Condition::PoorGround, "a low-impedance meter: a phantom collapses to 0 V, a poor ground does not")
            .next("read hot–ground again with a low-impedance meter or a test lamp", [index]),
        Certainty::Shown | Certainty::Likely => {
            finding.next("open this box and look for a grounding conductor, at the cable sheath too", [index])
        }
    };
    Some(with_neighbour(case, index, finding))
}

/// Where the box before this one reads right, the two ends of one run are worth opening together.
fn with_neighbour(case: &Case, index: BoxIndex, mut finding: Finding) -> Finding {
    let before =
        case.previous(index).filter(|at| case.evidence(*at).speaks_for_ground() && case.reach(*at) != Reach::Isolated);
    if let (Some(next), Some(before)) = (&mut finding.next, before)
        && !next.boxes.contains(&before)
        && finding.sure != Certainty::Possible
    {
        next.boxes.push(before);
    }
    finding
}

fn mixed(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    (evidence.ground == GroundReading::Mixed).then(|| {
        Finding::new(
            Site::Box(index),
            Condition::ReadingsDisagree,
            Certainty::Shown,
            "Some readings here speak for a ground and some against it: it counts as unknown until one test decides.",
        )
        .because(evidence.words(|_, _| true))
        .unless(Condition::LooseGround, "a loose joint reads differently each time: open the box and look")
        .unless(Condition::PhantomVolts, "repeat with a low-impedance meter, everything unplugged")
        .next(
            "unplug everything, read all three pairs again with a low-impedance meter, then open the box",
            case.here_and_before(index),
        )
    })
}

fn phantom(index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let floats = |reading: &Reading| {
        !sinks_phantoms(reading)
            && [reading.hot_ground, reading.neutral_ground, reading.hot_box, reading.ground_earth]
                .iter()
                .flatten()
                .any(|volts| level(*volts) == Level::Between)
    };
    let floating = || evidence.taken.iter().filter(|(_, pattern)| *pattern != Pattern::NeutralDrop);
    let readings: Vec<&Reading> = floating().map(|(reading, _)| *reading).filter(|r| floats(r)).collect();
    let first = readings.first()?;
    let collapsed = evidence.ground == GroundReading::Open(Certainty::Shown);
    let finding = |sure, says| {
        Finding::new(Site::Box(index), Condition::PhantomVolts, sure, says)
            .because(evidence.words(|reading, _| floats(reading) || (collapsed && sinks_phantoms(reading))))
    };
    Some(match first.meter {
        _ if collapsed => {
            finding(Certainty::Shown, "The volts to ground were phantoms: they collapsed under a meter that draws current.")
        }
        Some(MeterKind::HighImpedance) => finding(
            Certainty::Likely,
            "The volts to ground are likely phantoms, which a high-impedance meter shows on a conductor connected to nothing.",
        )
        .unless(Condition::PoorGround, "repeat with a low-impedance meter: a phantom collapses to 0 V"),
        _ => finding(
            Certainty::Possible,
            "The volts to ground may be phantoms or a poor ground: the kind of meter was not recorded, so nobody can tell.",
        )
        .unless(Condition::PoorGround, "repeat with a low-impedance meter: a phantom collapses to 0 V")
        .next("read all three pairs again with a low-impedance meter or a test lamp, everything unplugged", [index]),
    })
}

fn poor(case: &Case, index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let GroundReading::Poor(sure) = evidence.ground else { return None };
    let through_earth = |reading: &Reading| reading.ground_impedance.is_some_and(|ohms| ohms > EARTH_PATH_ABOVE);
    let finding = Finding::new(
        Site::Box(index),
        Condition::PoorGround,
        sure,
        format!(
            "A ground arrives, but over {POOR_ABOVE} or falling under load: a fault may make metal live here without \
             opening the breaker."
        ),
    )
    .danger()
    .because(
        evidence
            .words(|reading, _| reading.ground_impedance.is_some() || is_loaded(reading) || sinks_phantoms(reading)),
    )
    .unless(Condition::LooseGround, "tighten and re-splice in this box and the one before it, then repeat the test");
    let finding = if evidence.taken.iter().any(|(reading, _)| through_earth(reading)) {
        finding.unless(
            Condition::GroundByPipeOrRod,
            "look where the grounding conductor leads: earth is never below some ohms",
        )
    } else {
        finding
    };
    Some(finding.next("open this box and the one before it: look for a loose joint", case.here_and_before(index)))
}

fn speaks_for_open(reading: &Reading, pattern: Pattern) -> bool {
    pattern == Pattern::OpenGround || reading.tester == Some(TesterVerdict::OpenGround)
}
