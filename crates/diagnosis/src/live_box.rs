//! Line voltage from hot to a metal box: a path of some kind, which proves no ground.

use crate::bands::{Level, level};
use crate::condition::{Certainty, Condition};
use crate::evidence::{Case, sinks_phantoms};
use crate::finding::{Finding, Site};
use dwelling::{Reach, Reading};

/// The boxes without a known path that an instrument which draws current finds a path at.
pub(crate) fn find(case: &Case) -> Vec<Finding> {
    let holds = |reading: &Reading| sinks_phantoms(reading) && reading.hot_box.map(level) == Some(Level::Line);
    let unknown = |index| !matches!(case.reach(index), Reach::Panel | Reach::Disputed);
    case.boxes()
        .filter(|(index, evidence)| unknown(*index) && evidence.taken.iter().any(|(reading, _)| holds(reading)))
        .map(|(index, evidence)| {
            Finding::new(
                Site::Box(index),
                Condition::PossibleArmorGround,
                Certainty::Possible,
                "The metal box has a path to earth of some kind: that is no proof of a ground, so find what the path is.",
            )
            .because(evidence.words(|reading, _| holds(reading)))
            .unless(Condition::GroundByPipeOrRod, "look for a pipe, a duct or metal lath that touches the box")
            .unless(Condition::FalseGround, "look for a jumper, or a bare neutral that touches the box")
            .unless(Condition::PoorGround, "old armor passes a lamp's current and glows before a breaker opens")
            .next(
                "open this box: look what metal enters it, for a bonding strip at a cut end, and for what touches the box",
                [index],
            )
        })
        .collect()
}
