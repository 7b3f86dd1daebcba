//! From a branch circuit to its network, and from the solved network back to openings and readings.

use super::branch_circuit::{BranchCircuit, Opening, Run, RunNumber, Wire};
use super::faults::{Fault, Place};
use super::{BranchNumber, Meter, Network, NetworkError, Node, Readings, Solution};
use crate::{Capacitance, Complex, Current, Frequency, Impedance, Resistance, Voltage};

/// Between any two terminals of a box. Assumed: a device and a hand of wire; no source.
const BETWEEN_TERMINALS: Capacitance = Capacitance::picofarads(10.0);
/// From any terminal to earth. Assumed: a box in a wall; no source.
const TO_EARTH: Capacitance = Capacitance::picofarads(5.0);
/// What is left of a conductor between two ends that lie in one place.
const LEAST_RESISTANCE: Resistance = Resistance::ohms(1e-6);

/// A branch circuit as a network, with the nodes of its terminals.
#[derive(Clone, Debug)]
pub struct WiredCircuit {
    /// The network.
    pub network: Network,
    terminals: Vec<[Node; 4]>,
    conductors: Vec<[Option<BranchNumber>; 4]>,
    frequency: Frequency,
}

impl WiredCircuit {
    /// The node of a terminal of a device; earth for an opening of another circuit.
    #[must_use]
    pub fn terminal(&self, opening: Opening, wire: Wire) -> Node {
        self.terminals.get(opening.0).map_or(Node::EARTH, |terminals| terminals[wire.place()])
    }

    /// Solves the network.
    ///
    /// # Range
    /// As [`Network::solve`].
    ///
    /// # Errors
    /// [`NetworkError`] as it.
    pub fn solve(self) -> Result<SolvedCircuit, NetworkError> {
        let solution = self.network.solve()?;
        Ok(SolvedCircuit { circuit: self, solution })
    }
}

/// A branch circuit whose voltages are known.
#[derive(Clone, Debug)]
pub struct SolvedCircuit {
    circuit: WiredCircuit,
    solution: Solution,
}

impl SolvedCircuit {
    /// The solved network, for questions of nodes.
    #[must_use]
    pub const fn solution(&self) -> &Solution {
        &self.solution
    }

    /// The voltage phasor between two terminals of a device in volts, drawn on by nothing.
    #[must_use]
    pub fn between(&self, opening: Opening, from: Wire, to: Wire) -> Complex {
        self.solution.between(self.circuit.terminal(opening, from), self.circuit.terminal(opening, to))
    }

    /// What a meter shows between two terminals of a device.
    #[must_use]
    pub fn reading(&self, opening: Opening, from: Wire, to: Wire, meter: Meter) -> Voltage {
        self.shown(self.circuit.terminal(opening, from), self.circuit.terminal(opening, to), meter)
    }

    /// The node of a terminal of a device.
    #[must_use]
    pub fn terminal(&self, opening: Opening, wire: Wire) -> Node {
        self.circuit.terminal(opening, wire)
    }

    /// What a meter shows between two nodes, of one opening or of two.
    #[must_use]
    pub fn reading_of_nodes(&self, from: Node, to: Node, meter: Meter) -> Voltage {
        self.shown(from, to, meter)
    }

    /// What a meter shows from a terminal of a device to true earth.
    #[must_use]
    pub fn reading_to_earth(&self, opening: Opening, wire: Wire, meter: Meter) -> Voltage {
        self.shown(self.circuit.terminal(opening, wire), Node::EARTH, meter)
    }

    /// The three readings at an opening, from the terminal of one of its legs.
    #[must_use]
    pub fn readings(&self, opening: Opening, leg: Wire, meter: Meter) -> Readings {
        Readings {
            hot_to_neutral: self.reading(opening, leg, Wire::Neutral, meter),
            hot_to_ground: self.reading(opening, leg, Wire::Ground, meter),
            neutral_to_ground: self.reading(opening, Wire::Neutral, Wire::Ground, meter),
        }
    }

    /// The current in a conductor of a run, away from the panel; none where there is no such conductor.
    #[must_use]
    pub fn current(&self, run: RunNumber, wire: Wire) -> Current {
        let conductor = self.circuit.conductors.get(run.0).and_then(|conductors| conductors[wire.place()]);
        Current::amperes(conductor.map_or(0.0, |branch| self.solution.current(branch).magnitude()))
    }

    fn shown(&self, from: Node, to: Node, meter: Meter) -> Voltage {
        let meter = meter.impedance(self.circuit.frequency);
        Voltage::volts(self.solution.reading(from, to, meter).magnitude())
    }
}

/// What a fault leaves of a connection.
#[derive(Clone, Copy)]
enum Connection {
    Sound,
    Bad(Resistance),
    None,
}

pub(super) fn wire_up(circuit: &BranchCircuit) -> WiredCircuit {
    let supply = circuit.supply;
    let mut network = Network::new();
    let splices: Vec<[Node; 4]> = (0..circuit.openings()).map(|_| [(); 4].map(|()| network.node())).collect();
    let panel = splices[0];
    let at = |wire: Wire| panel[wire.place()];
    let source_neutral = network.node();
    let volts = supply.leg_voltage.as_volts();
    network.source(source_neutral, at(Wire::LegA), Complex::real(volts), supply.leg);
    network.source(source_neutral, at(Wire::LegB), Complex::real(-volts), supply.leg);
    network.impedance(source_neutral, at(Wire::Neutral), supply.neutral);
    network.impedance(at(Wire::Neutral), at(Wire::Ground), supply.bond.into());
    network.impedance(at(Wire::Ground), Node::EARTH, supply.electrode.into());
    network.impedance(source_neutral, Node::EARTH, supply.source_electrode.into());

    let mut wiring = Wiring { circuit, network };
    let conductors = circuit
        .runs
        .iter()
        .enumerate()
        .map(|(number, (from, run))| wiring.lay(RunNumber(number), run, splices[*from], splices[number + 1]))
        .collect();
    let terminals: Vec<[Node; 4]> =
        splices.iter().enumerate().map(|(opening, splices)| wiring.device(Opening(opening), *splices)).collect();
    wiring.plug_in(&terminals);
    WiredCircuit { network: wiring.network, terminals, conductors, frequency: supply.frequency }
}

struct Wiring<'a> {
    circuit: &'a BranchCircuit,
    network: Network,
}

impl Wiring<'_> {
    /// Lays a run between two openings' splices.
    fn lay(&mut self, number: RunNumber, run: &Run, from: [Node; 4], to: [Node; 4]) -> [Option<BranchNumber>; 4] {
        let mut ends = Vec::new();
        let mut conductors = [None; 4];
        for wire in Wire::ALL {
            let Some(per_length) = run.wires[wire.place()] else { continue };
            let near = self.connect(Place::NearEnd(number), wire, from);
            let far = self.connect(Place::FarEnd(number), wire, to);
            let resistance = per_length * run.length;
            let resistance = if resistance > LEAST_RESISTANCE { resistance } else { LEAST_RESISTANCE };
            conductors[wire.place()] = Some(self.network.impedance(near, far, resistance.into()));
            ends.push([near, far]);
        }
        let half = run.coupling * run.length * 0.5;
        for (at, first) in ends.iter().enumerate() {
            for second in &ends[at + 1..] {
                for end in 0..2 {
                    self.capacitor(first[end], second[end], half);
                }
            }
        }
        conductors
    }

    /// The terminals of an opening's device.
    fn device(&mut self, opening: Opening, splices: [Node; 4]) -> [Node; 4] {
        let terminals = Wire::ALL.map(|wire| self.connect(Place::Device(opening), wire, splices));
        for (at, first) in terminals.iter().enumerate() {
            self.capacitor(*first, Node::EARTH, TO_EARTH);
            self.capacitor(splices[at], Node::EARTH, TO_EARTH);
            for second in &terminals[at + 1..] {
                self.capacitor(*first, *second, BETWEEN_TERMINALS);
            }
        }
        terminals
    }

    /// The node of a conductor's end at a place: that of the splice it belongs to, or one of its own behind a fault.
    fn connect(&mut self, place: Place, wire: Wire, splices: [Node; 4]) -> Node {
        let splice = splices[self.exchanged(place, wire).place()];
        let (connection, own) = match self.connection(place, wire) {
            Connection::Sound => return splice,
            connection => (connection, self.network.node()),
        };
        self.capacitor(own, Node::EARTH, TO_EARTH);
        if let Connection::Bad(resistance) = connection {
            self.network.impedance(own, splice, resistance.into());
        }
        own
    }

    fn connection(&self, place: Place, wire: Wire) -> Connection {
        let found = self.circuit.faults.iter().rev().find_map(|fault| match *fault {
            Fault::Open { at, wire: which } if at == place && which == wire => Some(Connection::None),
            Fault::Resistance { at, wire: which, resistance } if at == place && which == wire => {
                Some(if resistance > Resistance::ohms(0.0) { Connection::Bad(resistance) } else { Connection::Sound })
            }
            _ => None,
        });
        found.unwrap_or(Connection::Sound)
    }

    /// The conductor on whose place this one stands.
    fn exchanged(&self, place: Place, wire: Wire) -> Wire {
        let found = self.circuit.faults.iter().rev().find_map(|fault| match *fault {
            Fault::Exchanged { at, wires: (a, b) } if at == place && a == wire => Some(b),
            Fault::Exchanged { at, wires: (a, b) } if at == place && b == wire => Some(a),
            _ => None,
        });
        found.unwrap_or(wire)
    }

    /// Lays loads, jumpers and stray earths between the terminals.
    fn plug_in(&mut self, terminals: &[[Node; 4]]) {
        let terminal = |opening: Opening, wire: Wire| terminals.get(opening.0).map(|nodes| nodes[wire.place()]);
        for load in &self.circuit.loads {
            let ends = (terminal(load.at, load.between.0), terminal(load.at, load.between.1));
            if let (Some(from), Some(to)) = ends {
                self.network.impedance(from, to, load.impedance);
            }
        }
        for fault in &self.circuit.faults {
            match *fault {
                Fault::Jumper { at, between: (a, b), resistance } => {
                    self.bridge(terminal(at, a), terminal(at, b), resistance);
                }
                Fault::Bridged { ends: [a, b], resistance } => {
                    self.bridge(terminal(a.0, a.1), terminal(b.0, b.1), resistance);
                }
                Fault::Earthed { at, wire, resistance } => {
                    if let Some(node) = terminal(at, wire) {
                        self.network.impedance(node, Node::EARTH, resistance.into());
                    }
                }
                Fault::Open { .. } | Fault::Resistance { .. } | Fault::Exchanged { .. } => {}
            }
        }
    }

    /// Joins two terminals, if both are of this circuit.
    fn bridge(&mut self, a: Option<Node>, b: Option<Node>, resistance: Resistance) {
        let (Some(a), Some(b)) = (a, b) else { return };
        if resistance > Resistance::ohms(0.0) {
            self.network.impedance(a, b, resistance.into());
        } else {
            self.network.join(a, b);
        }
    }

    fn capacitor(&mut self, a: Node, b: Node, capacitance: Capacitance) {
        if a != b {
            self.network.impedance(a, b, Impedance::of_capacitance(capacitance, self.circuit.supply.frequency));
        }
    }
}
