//! A branch circuit as a tree of cable runs with openings, loads and faults.

use super::NetworkError;
use super::faults::Fault;
use super::supply::Supply;
use super::wiring::{SolvedCircuit, WiredCircuit, wire_up};
use crate::{CapacitancePerLength, Impedance, Length, ResistancePerLength};

/// A conductor by its part in the circuit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Wire {
    /// The hot conductor on the first leg.
    LegA,
    /// The hot conductor on the second leg.
    LegB,
    /// The neutral.
    Neutral,
    /// The equipment grounding conductor, or the metal path that stands for it.
    Ground,
}

impl Wire {
    /// All four.
    pub const ALL: [Self; 4] = [Self::LegA, Self::LegB, Self::Neutral, Self::Ground];

    /// The place of the conductor in arrays by conductor.
    pub(super) const fn place(self) -> usize {
        self as usize
    }
}

/// An opening of the circuit: a box with a device. The panel is the first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Opening(pub(super) usize);

impl Opening {
    /// The panel.
    pub const PANEL: Self = Self(0);

    /// The opening's place in the order of making, the panel being 0.
    #[must_use]
    pub const fn number(self) -> usize {
        self.0
    }
}

/// The number of a run, in the order of making from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RunNumber(pub(super) usize);

/// A run of cable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// Its length.
    pub length: Length,
    /// The resistance of each conductor at its temperature, in the order of [`Wire::ALL`]; `None` where it is not there.
    pub wires: [Option<ResistancePerLength>; 4],
    /// The capacitance between any two conductors, laid half at either end.
    pub coupling: CapacitancePerLength,
}

impl Run {
    /// A cable with one hot conductor on the first leg, a neutral and, if it is there, a grounding conductor, all of one
    /// resistance, with 100 pF/m between any two: the middle of the assumed range of cable.
    #[must_use]
    pub const fn two_wire(length: Length, each: ResistancePerLength, grounded: bool) -> Self {
        let ground = if grounded { Some(each) } else { None };
        let coupling = CapacitancePerLength::picofarads_per_metre(100.0);
        Self { length, wires: [Some(each), None, Some(each), ground], coupling }
    }

    /// The same with a hot conductor on either leg.
    #[must_use]
    pub const fn three_wire(length: Length, each: ResistancePerLength, grounded: bool) -> Self {
        let mut run = Self::two_wire(length, each, grounded);
        run.wires[Wire::LegB.place()] = Some(each);
        run
    }
}

/// Something plugged in, between two terminals of a device.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Where.
    pub at: Opening,
    /// Between which terminals.
    pub between: (Wire, Wire),
    /// Its impedance, not nought.
    pub impedance: Impedance,
}

/// A branch circuit, or several of one panel.
///
/// # Example
/// The neutral of a multiwire set comes off: 240 V divide over the loads.
/// ```
/// use electrical::network::{BranchCircuit, Fault, Load, Meter, Opening, Place, Run, Supply, Wire};
/// use electrical::{Impedance, Length, ResistancePerLength};
/// let mut circuit = BranchCircuit::new(Supply::usual());
/// let copper = ResistancePerLength::ohms_per_thousand_feet(1.6);
/// let (run, kitchen) = circuit.run(Opening::PANEL, Run::three_wire(Length::feet(50), copper, true));
/// for (leg, ohms) in [(Wire::LegA, 10.0), (Wire::LegB, 100.0)] {
///     circuit.load(Load { at: kitchen, between: (leg, Wire::Neutral), impedance: Impedance::ohms(ohms, 0.0) });
/// }
/// circuit.fault(Fault::Open { at: Place::FarEnd(run), wire: Wire::Neutral });
/// let solved = circuit.solve()?;
/// let light_leg = solved.reading(kitchen, Wire::LegB, Wire::Neutral, Meter::HIGH_IMPEDANCE);
/// assert_eq!(light_leg.as_volts().round(), 218.0);
/// # Ok::<(), electrical::network::NetworkError>(())
/// ```
#[derive(Clone, Debug)]
pub struct BranchCircuit {
    pub(super) supply: Supply,
    /// Each run with the opening it comes from; it leads to the opening with the next number.
    pub(super) runs: Vec<(usize, Run)>,
    pub(super) loads: Vec<Load>,
    pub(super) faults: Vec<Fault>,
}

impl BranchCircuit {
    /// A panel without any run.
    #[must_use]
    pub const fn new(supply: Supply) -> Self {
        Self { supply, runs: Vec::new(), loads: Vec::new(), faults: Vec::new() }
    }

    /// Leads a run from an opening to a new one. From an opening of another circuit it is led from the last one here.
    pub fn run(&mut self, from: Opening, run: Run) -> (RunNumber, Opening) {
        self.runs.push((from.0.min(self.runs.len()), run));
        (RunNumber(self.runs.len() - 1), Opening(self.runs.len()))
    }

    /// Plugs a load in. One at an opening of another circuit is left out.
    pub fn load(&mut self, load: Load) {
        self.loads.push(load);
    }

    /// Puts a fault in. One at a place of another circuit is left out.
    pub fn fault(&mut self, fault: Fault) {
        self.faults.push(fault);
    }

    /// How many openings there are, the panel included.
    #[must_use]
    pub fn openings(&self) -> usize {
        self.runs.len() + 1
    }

    /// The network of the circuit.
    ///
    /// # Formula
    /// Each conductor of a run is its resistance; the coupling capacitance between any two lies half at either end. Every
    /// terminal has a small capacitance to the others of its box and to earth, so that an open one has a voltage.
    ///
    /// # Source
    /// The nominal-pi form of a line. Boxes are assumed to have 10 pF between terminals and 5 pF to earth: no source.
    ///
    /// # Range
    /// Runs to some hundred metres at 60 Hz, where inductance of cable is below 3 % of resistance and is left out.
    #[must_use]
    pub fn wired(&self) -> WiredCircuit {
        wire_up(self)
    }

    /// The voltages of the circuit.
    ///
    /// # Formula
    /// [`super::Network::solve`] of [`BranchCircuit::wired`].
    ///
    /// # Source
    /// As they.
    ///
    /// # Range
    /// As they.
    ///
    /// # Errors
    /// [`NetworkError`] as [`super::Network::solve`].
    pub fn solve(&self) -> Result<SolvedCircuit, NetworkError> {
        self.wired().solve()
    }
}
