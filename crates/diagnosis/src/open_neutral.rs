//! Breaks in the neutral and in the hot conductor, and between which two boxes they lie.

use crate::bands::{Level, level};
use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, Evidence, sinks_phantoms};
use crate::finding::{Finding, Site};
use crate::pattern::Pattern;
use dwelling::{BoxIndex, Reading, TesterVerdict};

/// What a box tells of the conductors that feed it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Supply {
    /// Line voltage from hot to neutral.
    Whole,
    /// The neutral is open.
    NeutralOpen,
    /// No line voltage anywhere.
    Dead,
    /// Nothing.
    Silent,
}

/// The broken neutrals and hot conductors of a dwelling.
pub(crate) fn find(case: &Case) -> Vec<Finding> {
    let supplies: Vec<Supply> = case.at.iter().map(supply).collect();
    case.boxes().filter_map(|(index, evidence)| broken(case, &supplies, index, evidence)).collect()
}

/// Whether the neutral reads open at a box.
pub(crate) fn neutral_reads_open(evidence: &Evidence) -> bool {
    supply(evidence) == Supply::NeutralOpen
}

/// Whether line voltage reads from hot to neutral at a box.
pub(crate) fn supply_reads_whole(evidence: &Evidence) -> bool {
    supply(evidence) == Supply::Whole
}

fn supply(evidence: &Evidence) -> Supply {
    let tested = |verdict| evidence.tester_said(verdict);
    if evidence.looks(Pattern::OpenNeutral)
        || evidence.looks(Pattern::NeutralHot)
        || tested(TesterVerdict::OpenNeutral)
        || tested(TesterVerdict::HotGroundReversed)
    {
        return Supply::NeutralOpen;
    }
    if evidence.looks(Pattern::Dead) || tested(TesterVerdict::OpenHot) {
        return Supply::Dead;
    }
    let whole = [Pattern::Right, Pattern::HotGroundPresent, Pattern::OpenGround, Pattern::HotNeutralReversed];
    let passed = [TesterVerdict::Correct, TesterVerdict::OpenGround, TesterVerdict::HotNeutralReversed];
    if whole.iter().any(|like| evidence.looks(*like)) || passed.into_iter().any(tested) {
        Supply::Whole
    } else {
        Supply::Silent
    }
}

/// Shown where an instrument that draws current found line voltage to ground and none to neutral, else likely.
fn sureness(evidence: &Evidence, neutral: bool) -> Certainty {
    let wanted = if neutral { Pattern::OpenNeutral } else { Pattern::Dead };
    let nothing = |reading: &Reading| reading.hot_neutral.map(level) == Some(Level::Nothing);
    let drawn = evidence.taken.iter().any(|(r, like)| *like == wanted && sinks_phantoms(r) && nothing(r));
    if drawn { Certainty::Shown } else { Certainty::Likely }
}

fn broken(case: &Case, supplies: &[Supply], index: BoxIndex, evidence: &Evidence) -> Option<Finding> {
    let here = supplies[index.0];
    let neutral = match here {
        Supply::NeutralOpen => true,
        Supply::Dead => false,
        Supply::Whole | Supply::Silent => return None,
    };
    let sure = sureness(evidence, neutral);
    let alike = |other: &BoxIndex| supplies[other.0] == here;
    let upstream = case.upstream(index);
    // Between this box and the first whole one upstream, the farthest box that reads alike is where the break shows first.
    let until_whole = upstream.iter().take_while(|other| supplies[other.0] != Supply::Whole);
    let first = until_whole.copied().filter(|other| alike(other)).last();
    let last_whole = upstream.iter().copied().find(|other| supplies[other.0] == Supply::Whole);
    let condition = if neutral { Condition::OpenNeutral } else { Condition::OpenHot };
    let read = evidence.words(|reading, pattern| pattern != Pattern::Silent || reading.tester.is_some());
    if let Some(first) = first {
        let says = format!("It has the same break as `{}`, upstream.{}", case.id(first), caution(neutral));
        let finding = Finding::new(Site::Box(index), condition, sure, says).because(read);
        return Some(if neutral { finding.danger() } else { finding });
    }
    let downstream: Vec<BoxIndex> = case.downstream(index).into_iter().filter(alike).collect();
    let place = match last_whole {
        Some(whole) => format!("between `{}`, which reads whole, and this box", case.id(whole)),
        None => "at this box or between it and the panel".to_owned(),
    };
    let what = if neutral { "The neutral is open" } else { "The hot conductor is open, or the circuit is off," };
    let mut finding =
        Finding::new(Site::Box(index), condition, sure, format!("{what} {place}.{}", caution(neutral))).because(read);
    if !downstream.is_empty() {
        finding = finding.because([format!("{} downstream reads the same", case.ids(&downstream))]);
    }
    let to_open: Vec<BoxIndex> =
        std::iter::once(index).chain(last_whole).chain(case.previous(index)).fold(vec![], |mut all, one| {
            if !all.contains(&one) {
                all.push(one);
            }
            all
        });
    Some(if neutral {
        neutral_look_alikes(finding.danger(), evidence).next(
            "unplug every load on the circuit and read again, then open these boxes: look at the neutral joints",
            to_open,
        )
    } else {
        finding
            .unless(Condition::OpenNeutral, "hot–ground or hot to an earth reference still reads line voltage")
            .next("see that the breaker, fuse, switch or protective device is on, then open these boxes", to_open)
    })
}

fn caution(neutral: bool) -> &'static str {
    if neutral {
        " What looks dead is live: the neutral side carries line voltage through any load that is on."
    } else {
        ""
    }
}

fn neutral_look_alikes(finding: Finding, evidence: &Evidence) -> Finding {
    let hot = evidence.looks(Pattern::NeutralHot) || evidence.tester_said(TesterVerdict::HotGroundReversed);
    if hot {
        finding.unless(
            Condition::HotGroundReversed,
            "with every load unplugged an open neutral drops to a phantom, wires changed over stay at line voltage",
        )
    } else {
        finding.unless(Condition::PoorNeutral, "a poor joint passes a small load: read with a lamp plugged in")
    }
}
