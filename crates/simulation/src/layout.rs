//! A simulated house in copper: lengths, sizes, joints and loads, for the network solver.
//!
//! The figures are common practice, no source: cables of 5 to 60 ft, bad joints of 0.3 to 20 Ω in hot and neutral and of 1 to
//! 50 Ω in a grounding path, 50 to 150 pF/m between conductors of one cable and a tenth of that between open conductors.

use crate::chance::Chance;
use crate::truth::BoxTruth;
use diagnosis::belief::{GroundRun, WireState, Wiring};
use dwelling::{BoxIndex, CableKind, Dwelling, Feed};
use electrical::network::{BranchCircuit, Fault, Load, Opening, Place, Run, RunNumber, Supply, Wire};
use electrical::{CapacitancePerLength, Impedance, Length, Resistance, ResistancePerLength, Voltage};

/// A circuit as it is wired, with what always draws current in it.
#[derive(Clone, Debug)]
pub(crate) struct Layout {
    /// The wiring without anything that is switched on for a reading.
    pub(crate) circuit: BranchCircuit,
    /// The opening of each box, in box order.
    pub(crate) openings: Vec<Opening>,
}

/// Lays out a dwelling's runs, all from one panel.
pub(crate) fn layout(dwelling: &Dwelling, has_ground: bool, truth: &[BoxTruth], chance: &mut Chance) -> Layout {
    let mut circuit = BranchCircuit::new(supply(chance));
    let mut openings: Vec<Opening> = Vec::new();
    for (number, truth) in truth.iter().enumerate() {
        let (from, is_home_run) = match dwelling.boxes[number].fed_by {
            Some(Feed::Box(parent)) => (openings[parent.0], false),
            _ => (Opening::PANEL, true),
        };
        let cable = dwelling.cable_to(BoxIndex(number));
        let (run, opening) = circuit.run(from, cable_run(cable, truth.ground, chance));
        add_run_faults(&mut circuit, run, truth, is_home_run && !has_ground, chance);
        add_device_faults(&mut circuit, opening, truth.at.wiring);
        openings.push(opening);
    }
    for opening in &openings {
        // What is always plugged in and draws next to nothing: chargers, clocks, sets that wait.
        if chance.happens(0.15) {
            plug_in(&mut circuit, *opening, chance.by_magnitude(2e3, 1e5));
        }
    }
    Layout { circuit, openings }
}

/// Plugs something in between an opening's hot and neutral slots.
pub(crate) fn plug_in(circuit: &mut BranchCircuit, at: Opening, ohms: f64) {
    circuit.load(Load { at, between: (Wire::LegA, Wire::Neutral), impedance: Impedance::ohms(ohms, 0.0) });
}

fn supply(chance: &mut Chance) -> Supply {
    Supply {
        leg_voltage: Voltage::volts(chance.between(116.0, 125.0)),
        leg: Impedance::ohms(chance.between(0.02, 0.08), 0.0),
        neutral: Impedance::ohms(chance.between(0.01, 0.05), 0.0),
        bond: Resistance::ohms(chance.between(1e-4, 2e-3)),
        electrode: Resistance::ohms(chance.by_magnitude(5.0, 100.0)),
        source_electrode: Resistance::ohms(chance.by_magnitude(1.0, 25.0)),
        ..Supply::usual()
    }
}

fn cable_run(cable: CableKind, ground: GroundRun, chance: &mut Chance) -> Run {
    let ohms = ResistancePerLength::ohms_per_thousand_feet;
    let conductor = if chance.happens(0.6) { 2.6 } else { 1.65 };
    let path = match cable {
        CableKind::NmReducedGround => 4.2,
        CableKind::ArmoredNoStrip | CableKind::ArmoredUnknown | CableKind::FlexibleMetalConduit => {
            chance.between(2.0, 12.0)
        }
        CableKind::MetalConduit | CableKind::SurfaceMetalRaceway => 0.5,
        _ => conductor,
    };
    let picofarads = match cable {
        CableKind::KnobAndTube => chance.between(5.0, 15.0),
        _ => chance.between(50.0, 150.0),
    };
    let feet = chance.between(5.0, 60.0);
    let grounded = ground != GroundRun::Absent;
    Run {
        length: Length::nearest_to_metres(feet * 0.3048),
        wires: [Some(ohms(conductor)), None, Some(ohms(conductor)), grounded.then_some(ohms(path))],
        coupling: CapacitancePerLength::picofarads_per_metre(picofarads),
    }
}

fn add_run_faults(
    circuit: &mut BranchCircuit,
    run: RunNumber,
    truth: &BoxTruth,
    loose_at_panel: bool,
    chance: &mut Chance,
) {
    for (wire, state) in [(Wire::LegA, truth.hot), (Wire::Neutral, truth.neutral)] {
        let at = either_end(run, chance);
        match state {
            WireState::Sound => {}
            WireState::Weak => {
                let resistance = Resistance::ohms(chance.by_magnitude(0.3, 20.0));
                circuit.fault(Fault::Resistance { at, wire, resistance });
            }
            WireState::Open => circuit.fault(Fault::Open { at, wire }),
        }
    }
    let wire = Wire::Ground;
    match truth.ground {
        GroundRun::Weak => {
            let resistance = Resistance::ohms(chance.by_magnitude(1.0, 50.0));
            circuit.fault(Fault::Resistance { at: either_end(run, chance), wire, resistance });
        }
        GroundRun::LooseHere | GroundRun::CutOffHere => circuit.fault(Fault::Open { at: Place::FarEnd(run), wire }),
        GroundRun::LooseBefore => circuit.fault(Fault::Open { at: Place::NearEnd(run), wire }),
        GroundRun::Sound | GroundRun::Absent => {}
    }
    if loose_at_panel {
        circuit.fault(Fault::Open { at: Place::NearEnd(run), wire });
    }
}

fn either_end(run: RunNumber, chance: &mut Chance) -> Place {
    if chance.happens(0.5) { Place::NearEnd(run) } else { Place::FarEnd(run) }
}

fn add_device_faults(circuit: &mut BranchCircuit, at: Opening, wiring: Wiring) {
    let resistance = Resistance::ohms(0.0);
    let jumper = Fault::Jumper { at, between: (Wire::Neutral, Wire::Ground), resistance };
    let device = Place::Device(at);
    match wiring {
        Wiring::Right => {}
        Wiring::HotNeutralReversed => {
            circuit.fault(Fault::Exchanged { at: device, wires: (Wire::LegA, Wire::Neutral) });
        }
        Wiring::HotGroundReversed => {
            circuit.fault(Fault::Exchanged { at: device, wires: (Wire::LegA, Wire::Ground) });
        }
        Wiring::GroundNotLanded => circuit.fault(Fault::Open { at: device, wire: Wire::Ground }),
        Wiring::NeutralJumper => circuit.fault(jumper),
        Wiring::ReversedJumper => {
            circuit.fault(Fault::Exchanged { at: device, wires: (Wire::LegA, Wire::Neutral) });
            circuit.fault(jumper);
        }
    }
}
