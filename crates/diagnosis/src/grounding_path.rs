//! What stands between a box and its panel: ties, breaks, and wiring methods that do not fit what was seen.

use crate::evidence::Case;
use crate::ground_reading::GroundReading;
use dwelling::{BoxIndex, CableKind, Feed, GroundPath, GroundSeen};

/// Whether its grounding path ties it to another box.
pub(crate) fn is_tied(case: &Case, index: BoxIndex) -> bool {
    case.groups.group_of(index).members.len() > 1
}

/// Whether a ground was seen connected though neither the run to the box nor one from it carries a ground.
pub(crate) fn seen_against_wiring(case: &Case, index: BoxIndex) -> bool {
    let cable = case.dwelling.cable_to(index);
    let conductor = case.evidence(index).seen == Some(GroundSeen::Connected);
    let metal = case.evidence(index).seen == Some(GroundSeen::MetalTight)
        && matches!(cable, CableKind::NmTwoWire | CableKind::KnobAndTube | CableKind::NonmetallicConduit);
    (conductor || metal) && cable.ground_path() == GroundPath::No && !is_tied(case, index)
}

/// Whether the box's group has a whole path to a panel that has no ground bar.
pub(crate) fn lacks_only_the_bar(case: &Case, index: BoxIndex) -> bool {
    case.groups.group_of(index).members.iter().any(|member| {
        let path = case.dwelling.ground_path_to(*member);
        matches!(case.dwelling.device_box(*member).fed_by, Some(Feed::Panel(panel))
            if path == GroundPath::Yes && case.dwelling.panel(panel).ground_bar == Some(false))
    })
}

/// The nearest box upstream, tied to this one, whose ground was seen unsound or reads open.
pub(crate) fn broken_upstream(case: &Case, index: BoxIndex) -> Option<BoxIndex> {
    let group = case.groups.index_of(index);
    case.upstream(index).into_iter().take_while(|at| case.groups.index_of(*at) == group).find(|at| {
        let evidence = case.evidence(*at);
        matches!(evidence.seen, Some(GroundSeen::Loose | GroundSeen::Unconnected))
            || matches!(evidence.ground, GroundReading::Open(_))
    })
}
