//! What a simulated house looks like from outside: circuits, boxes, what feeds what, and what the survey takes the runs for.

use crate::chance::Chance;
use dwelling::{
    BoxIndex, CableKind, Circuit, CircuitIndex, DeviceBox, Dwelling, Feed, Holding, Job, Panel, PanelIndex, Room,
    RoomIndex, RoomUse,
};
use electrical::Amperes;

/// How large the houses of a simulation are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// The most circuits of a house.
    pub circuits: usize,
    /// The fewest and the most boxes of a circuit.
    pub boxes: (usize, usize),
}

impl Default for Size {
    fn default() -> Self {
        Self { circuits: 2, boxes: (2, 10) }
    }
}

/// A dwelling of which nothing was read yet.
pub(crate) fn sketch(size: Size, chance: &mut Chance) -> Dwelling {
    let built = [Some(1938), Some(1955), Some(1965), Some(1985), None][chance.below(5)];
    let ground_bar = chance.one_of(&[(0.6, Some(true)), (0.3, None), (0.1, Some(false))]);
    let mut dwelling = Dwelling::of(Job { built, ..Job::named("simulated".into()) });
    dwelling.panels.push(Panel { ground_bar, ..Panel::named("panel") });
    dwelling.rooms.push(Room::named("room", RoomUse::Bedroom));
    for _ in 0..=chance.below(size.circuits) {
        add_circuit(&mut dwelling, size, chance);
    }
    dwelling
}

fn add_circuit(dwelling: &mut Dwelling, size: Size, chance: &mut Chance) {
    let number = CircuitIndex(dwelling.circuits.len());
    let usual = chance.one_of(&[
        (0.30, CableKind::NmTwoWire),
        (0.30, CableKind::NmWithGround),
        (0.08, CableKind::NmReducedGround),
        (0.06, CableKind::ArmoredWithStrip),
        (0.06, CableKind::ArmoredNoStrip),
        (0.06, CableKind::ArmoredUnknown),
        (0.04, CableKind::KnobAndTube),
        (0.03, CableKind::MetalConduit),
        (0.07, CableKind::Unknown),
    ]);
    let named = Circuit::named((number.0 + 1).to_string(), PanelIndex(0), usual);
    dwelling.circuits.push(Circuit { breaker: Some(Amperes::new(15)), ..named });
    let first = dwelling.boxes.len();
    let count = size.boxes.0 + chance.below(size.boxes.1 + 1 - size.boxes.0.min(size.boxes.1));
    let mixed = chance.happens(0.4);
    for at in 0..count {
        // Mostly a chain, with branches; seldom a second home run.
        let fed_by = match at {
            0 => Feed::Panel(PanelIndex(0)),
            _ if chance.happens(0.04) => Feed::Panel(PanelIndex(0)),
            _ if chance.happens(0.7) => Feed::Box(BoxIndex(first + at - 1)),
            _ => Feed::Box(BoxIndex(first + chance.below(at))),
        };
        let holds = chance.one_of(&[
            (0.66, Holding::ThreeSlot),
            (0.14, Holding::TwoSlot),
            (0.06, Holding::Gfci),
            (0.06, Holding::Switch),
            (0.05, Holding::Luminaire),
            (0.03, Holding::Splice),
        ]);
        let named = DeviceBox::named(format!("{}-{}", number.0 + 1, at + 1), RoomIndex(0), holds);
        let mut added = DeviceBox { circuit: Some(number), fed_by: Some(fed_by), ..named };
        if mixed && chance.happens(0.35) {
            added.run.cable = Some(chance.one_of(&[
                (0.4, CableKind::NmWithGround),
                (0.3, CableKind::NmTwoWire),
                (0.1, CableKind::NmReducedGround),
                (0.1, CableKind::Unknown),
                (0.1, CableKind::MetalCladWithGround),
            ]));
        }
        dwelling.boxes.push(added);
    }
}
