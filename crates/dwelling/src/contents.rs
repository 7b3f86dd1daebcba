//! What enters a box: the cables that its place in the circuit, or the survey's count, says are there.

use crate::index::BoxIndex;
use crate::run::CableKind;
use crate::tree::CircuitTree;
use crate::whole::Dwelling;
use electrical::{ConductorMetal, Gauge};

/// One cable or set of conductors entering a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CableInBox {
    /// The wiring method.
    pub kind: CableKind,
    /// The size of its conductors, where known.
    pub gauge: Option<Gauge>,
    /// What they are made of.
    pub metal: ConductorMetal,
    /// How many insulated conductors it brings.
    pub insulated: u32,
}

/// The cables in a box.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Cables {
    /// The cables that are known of.
    pub known: Vec<CableInBox>,
    /// Whether these are all: not so where neither the feeding order nor a count is known.
    pub complete: bool,
}

/// The cables that enter a box: the run that feeds it, the runs it feeds, and what the survey's count adds.
#[must_use]
pub fn cables_in_box(dwelling: &Dwelling, tree: Option<&CircuitTree>, index: BoxIndex) -> Cables {
    let device_box = dwelling.device_box(index);
    let children = tree.map_or(&[] as &[BoxIndex], |tree| tree.children(index));
    let mut known: Vec<CableInBox> = device_box
        .fed_by
        .iter()
        .map(|_| index)
        .chain(children.iter().copied())
        .map(|at| cable_to(dwelling, at))
        .collect();
    let counted = device_box.cables_in_box.map(|count| count as usize);
    while counted.is_some_and(|count| known.len() < count) {
        known.push(cable_to(dwelling, index));
    }
    let complete = counted.is_some() || device_box.known_feed().is_some();
    Cables { known, complete }
}

fn cable_to(dwelling: &Dwelling, index: BoxIndex) -> CableInBox {
    CableInBox {
        kind: dwelling.cable_to(index),
        gauge: dwelling.gauge_to(index),
        metal: dwelling.metal_to(index),
        insulated: if dwelling.neutral_is_shared_to(index) { 3 } else { 2 },
    }
}
