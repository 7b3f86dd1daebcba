//! Alternating-current networks of nodes and branches, solved exactly: for what formulas cannot do.
//!
//! A [`Network`] takes nodes and branches from anywhere. A [`BranchCircuit`] builds one from a tree of cable runs with
//! loads and faults, and says what a meter reads at every opening.

mod branch_circuit;
mod dense;
mod elimination;
mod faults;
mod meter;
mod solution;
mod supply;
mod wiring;

pub use branch_circuit::{BranchCircuit, Load, Opening, Run, RunNumber, Wire};
pub use faults::{Fault, Place};
pub use meter::{Meter, Readings};
pub use solution::Solution;
pub use supply::Supply;
pub use wiring::{SolvedCircuit, WiredCircuit};

use crate::{Complex, Impedance};
use std::fmt;

/// A point of a network.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Node(usize);

impl Node {
    /// The node that every voltage is counted from: the earth far from any electrode.
    pub const EARTH: Self = Self(0);

    /// The node's place in the order of making, earth being 0.
    #[must_use]
    pub const fn number(self) -> usize {
        self.0
    }
}

/// A branch of a network, to ask for its current afterwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BranchNumber(usize);

/// An impedance between two nodes, with a voltage source in series where there is one.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Branch {
    from: usize,
    to: usize,
    /// In siemens.
    admittance: Complex,
    /// The rise from `from` to `to`, in volts.
    rise: Complex,
}

/// A branch that lets more through is a connection, not an impedance, in siemens.
const GREATEST_ADMITTANCE: f64 = 1e12;

/// Why a network has no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NetworkError {
    /// Nothing joins this node to earth, not even a capacitance, so its voltage could be any.
    Floating(Node),
    /// A branch has less than a millionth of a millionth of an ohm, or what is no number: join its nodes instead.
    NoImpedance(BranchNumber),
    /// A node belongs to another network.
    UnknownNode(Node),
    /// Coils and capacitors cancel each other, or impedances lie too far apart, so that the voltages are not determined.
    Undetermined,
}

impl fmt::Display for NetworkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Floating(node) => write!(f, "nothing joins node {} to earth", node.0),
            Self::NoImpedance(branch) => write!(f, "branch {} has no impedance: join its nodes instead", branch.0),
            Self::UnknownNode(node) => write!(f, "node {} belongs to another network", node.0),
            Self::Undetermined => f.write_str(
                "coils and capacitors cancel, or impedances lie too far apart: the voltages are not determined",
            ),
        }
    }
}

impl std::error::Error for NetworkError {}

/// Nodes, and what lies between them, at one frequency. Made for a few hundred nodes; any number is solved.
///
/// # Example
/// A voltage divider of 20 Ω and 100 Ω on 120 V:
/// ```
/// use electrical::network::{Network, Node};
/// use electrical::{Complex, Impedance};
/// let mut network = Network::new();
/// let (top, middle) = (network.node(), network.node());
/// network.source(Node::EARTH, top, Complex::real(120.0), Impedance::ohms(1e-3, 0.0));
/// network.impedance(top, middle, Impedance::ohms(20.0, 0.0));
/// network.impedance(middle, Node::EARTH, Impedance::ohms(100.0, 0.0));
/// let solution = network.solve()?;
/// assert_eq!(format!("{:.1}", solution.voltage(middle).magnitude()), "100.0");
/// # Ok::<(), electrical::network::NetworkError>(())
/// ```
#[derive(Clone, Debug, Default)]
pub struct Network {
    /// The node that each node is one with, itself if with none. Earth is not in it.
    one_with: Vec<usize>,
    branches: Vec<Branch>,
    /// Currents driven out of one node and into another, in amperes.
    driven: Vec<(usize, usize, Complex)>,
}

impl Network {
    /// A network of nothing but earth.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// A further node.
    pub fn node(&mut self) -> Node {
        self.one_with.push(self.one_with.len() + 1);
        Node(self.one_with.len())
    }

    /// How many nodes there are, earth included.
    #[must_use]
    pub fn nodes(&self) -> usize {
        self.one_with.len() + 1
    }

    /// How many branches there are.
    #[must_use]
    pub fn branches(&self) -> usize {
        self.branches.len()
    }

    /// Lays an impedance in ohms between two nodes. One that is endless lets nothing through.
    pub fn impedance(&mut self, from: Node, to: Node, impedance: Impedance) -> BranchNumber {
        self.source(from, to, Complex::ZERO, impedance)
    }

    /// Lays a voltage source between two nodes: so many volts of rise from the first to the second, and the source's own
    /// impedance in ohms, which may not be nought.
    pub fn source(&mut self, from: Node, to: Node, rise: Complex, impedance: Impedance) -> BranchNumber {
        let admittance = impedance.as_complex().reciprocal();
        self.branches.push(Branch { from: from.0, to: to.0, admittance, rise });
        BranchNumber(self.branches.len() - 1)
    }

    /// Drives a current in amperes out of one node and into another, whatever voltage that takes.
    pub fn current_source(&mut self, from: Node, to: Node, current: Complex) {
        self.driven.push((from.0, to.0, current));
    }

    /// Makes two nodes one: a connection without any impedance. Its current cannot be asked for. A node of another network
    /// is left alone.
    pub fn join(&mut self, a: Node, b: Node) {
        let (a, b) = (self.one(a.0), self.one(b.0));
        let (lower, upper) = (a.min(b), a.max(b));
        if lower != upper
            && let Some(one_with) = upper.checked_sub(1).and_then(|at| self.one_with.get_mut(at))
        {
            *one_with = lower;
        }
    }

    /// The voltages of all nodes.
    ///
    /// # Formula
    /// Kirchhoff's current law at every node. Nodes are eliminated one by one, the one with the fewest neighbours first,
    /// each star of branches becoming a mesh that carries the sources along. In a network without coils nothing is ever
    /// subtracted from an admittance, so that a capacitance of picofarads beside a splice of milliohms keeps all its
    /// digits. Where coils and capacitors nearly cancel, the whole matrix is solved by LU with partial pivoting instead.
    ///
    /// # Source
    /// The star-mesh transform; the order is that of minimum degree.
    ///
    /// # Range
    /// Any network every node of which is joined to earth by some impedance.
    ///
    /// # Errors
    /// [`NetworkError`] for the others.
    pub fn solve(&self) -> Result<Solution, NetworkError> {
        self.check()?;
        match elimination::solve(self) {
            Ok((voltages, factors)) if are_finite(&voltages) => {
                Ok(Solution::new(self, voltages, solution::Factors::Elimination(factors)))
            }
            Ok(_) | Err(NetworkError::Undetermined) => self.solve_by_lu(),
            Err(error) => Err(error),
        }
    }

    /// The same voltages by a second way: the whole nodal matrix, by LU with partial pivoting. Slower, and less exact where
    /// very small and very large admittances meet; to check [`Network::solve`] by.
    ///
    /// # Formula
    /// `Y V = I`, with every source as the current it drives through its own impedance.
    ///
    /// # Source
    /// Nodal analysis.
    ///
    /// # Range
    /// As [`Network::solve`].
    ///
    /// # Errors
    /// [`NetworkError`] as it.
    pub fn solve_by_lu(&self) -> Result<Solution, NetworkError> {
        self.check()?;
        let (voltages, factors) = dense::solve(self)?;
        if !are_finite(&voltages) {
            return Err(NetworkError::Undetermined);
        }
        Ok(Solution::new(self, voltages, solution::Factors::Dense(factors)))
    }

    /// Whether every branch has an impedance and lies between nodes of this network.
    fn check(&self) -> Result<(), NetworkError> {
        for (number, branch) in self.branches.iter().enumerate() {
            let last = branch.from.max(branch.to);
            if last >= self.nodes() {
                return Err(NetworkError::UnknownNode(Node(last)));
            }
            let admittance = branch.admittance.magnitude();
            if !(admittance <= GREATEST_ADMITTANCE && branch.rise.is_finite()) {
                return Err(NetworkError::NoImpedance(BranchNumber(number)));
            }
        }
        let driven_nodes = self.driven.iter().map(|(from, to, _)| *from.max(to));
        match driven_nodes.max().filter(|last| *last >= self.nodes()) {
            Some(last) => Err(NetworkError::UnknownNode(Node(last))),
            None => Ok(()),
        }
    }

    /// The lowest node that this one is one with.
    fn one(&self, node: usize) -> usize {
        let mut node = node;
        while let Some(one_with) = node.checked_sub(1).and_then(|at| self.one_with.get(at))
            && *one_with != node
        {
            node = *one_with;
        }
        node
    }
}

fn are_finite(voltages: &[Complex]) -> bool {
    voltages.iter().all(|voltage| voltage.is_finite())
}
