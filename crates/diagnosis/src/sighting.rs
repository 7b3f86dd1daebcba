//! What was seen of a ground inside a box.

use crate::condition::{Certainty, Condition};
use crate::evidence::Case;
use crate::finding::{Finding, Site};
use dwelling::{BoxIndex, CableKind, GroundPath, GroundSeen, Reach};

/// What the sightings of a dwelling show.
pub(crate) fn find(case: &Case) -> Vec<Finding> {
    case.boxes().filter_map(|(index, evidence)| seen(case, index, evidence.seen?)).chain(armor(case)).collect()
}

fn seen(case: &Case, index: BoxIndex, seen: GroundSeen) -> Option<Finding> {
    let shown = |condition, says: &str| Finding::new(Site::Box(index), condition, Certainty::Shown, says);
    let evidence = [format!("seen in the box: {seen}")];
    let finding = match seen {
        GroundSeen::Loose | GroundSeen::Unconnected => {
            let finding = shown(
                Condition::LooseGround,
                "A grounding conductor is in the box and not sound: where it reaches the panel it must be used, so restore it.",
            );
            match case.reach(index) {
                Reach::Panel => finding,
                _ => finding.next(
                    "follow the conductor: with the power off, test continuity from it to the panel's ground bar",
                    case.here_and_before(index),
                ),
            }
        }
        GroundSeen::CutOff => shown(
            Condition::CutOffGround,
            "A grounding conductor was cut off at the cable sheath: enough may be left to reach it.",
        )
        .next("strip back or pull in some cable and see whether enough of the conductor can be reached", [index]),
        GroundSeen::PipeOrRod => shown(
            Condition::GroundByPipeOrRod,
            "The ground terminal leads to a pipe or a rod: earth does not open a breaker, and pipes get replaced by plastic.",
        )
        .danger()
        .next("follow that conductor to its end, and look for a grounding conductor in the cable", [index]),
        GroundSeen::MetalLoose => shown(
            Condition::LooseGround,
            "Armor or conduit enters the box without a sound connector: it grounds nothing as it is.",
        )
        .next("look at the connector and locknut at both ends of this run", case.here_and_before(index)),
        GroundSeen::NoneSeen
        | GroundSeen::Connected
        | GroundSeen::Jumper
        | GroundSeen::MetalTight
        | GroundSeen::NotOpened => return None,
    };
    Some(finding.because(evidence))
}

/// Metal around the conductors that nobody has looked into: once for each circuit, with its boxes.
fn armor(case: &Case) -> Vec<Finding> {
    let maybe = |index: &BoxIndex| {
        let cable = case.dwelling.cable_to(*index);
        let metal = matches!(
            cable,
            CableKind::ArmoredUnknown | CableKind::FlexibleMetalConduit | CableKind::SurfaceMetalRaceway
        );
        let tight =
            cable.ground_path() == GroundPath::Unknown && case.evidence(*index).seen == Some(GroundSeen::MetalTight);
        metal || tight
    };
    let mut found = Vec::new();
    for tree in &case.trees {
        let boxes: Vec<BoxIndex> = tree.members.iter().chain(&tree.unplaced).copied().filter(maybe).collect();
        let (Some(first), Some(circuit)) = (boxes.first(), tree.circuits.first()) else { continue };
        let at = case.dwelling.device_box(*first).circuit.unwrap_or(*circuit);
        found.push(
            Finding::new(
                Site::Circuit(at),
                Condition::PossibleArmorGround,
                Certainty::Possible,
                "The metal around the conductors may be a ground: line voltage from hot to box does not prove it, and a \
                 lamp lights through armor that glows before it opens a breaker.",
            )
            .because([format!("metal of unknown make feeds {}", case.ids(&boxes))])
            .unless(Condition::OpenGround, "armor without a bonding strip, or an armored stub off older wiring, is no ground")
            .unless(Condition::PoorGround, "a loaded test of the ground: its impedance under 1 Ω and steady")
            .next(
                "open the first of these boxes: look for a bonding strip at a cut end, and for connectors and locknuts at \
                 both ends of the run, without a splice between",
                boxes.clone(),
            ),
        );
    }
    found
}
