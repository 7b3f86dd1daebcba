//! Fuses in the neutral, as the oldest panels have them.

use crate::condition::{Certainty, Condition};
use crate::evidence::Case;
use crate::finding::{Finding, Site};
use crate::open_neutral::{neutral_reads_open, supply_reads_whole};
use dwelling::{BoxIndex, Overcurrent};

/// The circuits of fused panels on which the whole neutral reads open.
pub(crate) fn find(case: &Case) -> Vec<Finding> {
    let mut found = Vec::new();
    for tree in &case.trees {
        if case.dwelling.panel(tree.panel).overcurrent != Some(Overcurrent::Fuses) {
            continue;
        }
        let boxes = || tree.members.iter().chain(&tree.unplaced).copied();
        let open: Vec<BoxIndex> = boxes().filter(|index| neutral_reads_open(case.evidence(*index))).collect();
        if open.is_empty() || boxes().any(|index| supply_reads_whole(case.evidence(index))) {
            continue;
        }
        let sure = if open.len() > 1 { Certainty::Likely } else { Certainty::Possible };
        let circuits: Vec<&str> = tree.circuits.iter().map(|at| case.dwelling.circuit(*at).id.as_str()).collect();
        found.push(
            Finding::new(
                Site::Panel(tree.panel),
                Condition::NeutralFuse,
                sure,
                "A fuse in the neutral may have blown: the whole circuit looks dead and is at line voltage.",
            )
            .danger()
            .because([format!(
                "fuses in the panel, and every box read on circuit {} has an open neutral: {}",
                circuits.join(" and "),
                case.ids(&open)
            )])
            .unless(
                Condition::OpenNeutral,
                "both ends of every fuse of this circuit read sound, with the main switch off",
            )
            .next("look whether the panel fuses the neutral; never bridge it or put a larger fuse in", open),
        );
    }
    found
}
