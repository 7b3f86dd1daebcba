//! What a simulated house looks like from outside: circuits, boxes, what feeds what, and what the survey takes the runs for.

use crate::chance::Chance;
use dwelling::{
    Body, BoxIndex, CableKind, Circuit, CircuitIndex, DeviceBox, Dwelling, Feed, Holding, Job, Panel, PanelIndex, Room,
    RoomIndex, RoomUse, Run, Want,
};
use electrical::{Amperes, ConductorMetal};

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
    let mut dwelling = Dwelling {
        job: job(built),
        panels: vec![panel(ground_bar)],
        circuits: Vec::new(),
        rooms: vec![room()],
        boxes: Vec::new(),
        sources: Vec::new(),
        routes: Vec::new(),
        dead_when: Vec::new(),
    };
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
    dwelling.circuits.push(circuit(&(number.0 + 1).to_string(), usual));
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
        let mut added = device_box(&format!("{}-{}", number.0 + 1, at + 1), number, fed_by);
        added.holds = chance.one_of(&[
            (0.66, Holding::ThreeSlot),
            (0.14, Holding::TwoSlot),
            (0.06, Holding::Gfci),
            (0.06, Holding::Switch),
            (0.05, Holding::Luminaire),
            (0.03, Holding::Splice),
        ]);
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

fn job(built: Option<u16>) -> Job {
    Job {
        name: "simulated".into(),
        built,
        dwelling_use: None,
        edition: None,
        place: None,
        permit_day: None,
        outlets_behind_one_device: None,
        leakage_percent: None,
        amendments: None,
    }
}

fn panel(ground_bar: Option<bool>) -> Panel {
    Panel {
        id: "panel".into(),
        overcurrent: None,
        made_for_it: None,
        service: None,
        ground_bar,
        room_beside: None,
        fault_current: None,
        room: None,
        at: None,
    }
}

fn room() -> Room {
    Room {
        id: "room".into(),
        title: None,
        room_use: RoomUse::Bedroom,
        floor: None,
        outline: Vec::new(),
        wall_breaks: None,
        above: None,
        below: None,
        ceiling: None,
        walls: None,
        insulated: None,
        fire_blocks: None,
    }
}

fn circuit(id: &str, cable: CableKind) -> Circuit {
    Circuit {
        id: id.into(),
        panel: PanelIndex(0),
        breaker: Some(Amperes::new(15)),
        fitted: None,
        cable,
        gauge: None,
        metal: ConductorMetal::Copper,
        shares_neutral_with: None,
    }
}

fn device_box(id: &str, circuit: CircuitIndex, fed_by: Feed) -> DeviceBox {
    DeviceBox {
        id: id.into(),
        room: RoomIndex(0),
        circuit: Some(circuit),
        fed_by: Some(fed_by),
        feed_assumed: false,
        run: Run::default(),
        at: None,
        height: None,
        body: Body::default(),
        holds: Holding::ThreeSlot,
        cables_in_box: None,
        found: Vec::new(),
        serves: Vec::new(),
        want: Want::Leave,
        countertop: None,
        sink: None,
        tub: None,
        wetness: None,
        dedicated_space: None,
        readily_accessible: None,
        do_not_disturb: false,
        note: None,
    }
}
