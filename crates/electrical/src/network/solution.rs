//! The voltages and currents of a solved network, and what a meter makes of them.

use super::dense::Lu;
use super::elimination::Elimination;
use super::{BranchNumber, Network, Node};
use crate::{Complex, Impedance};

/// What further currents are solved with.
#[derive(Clone, Debug)]
pub(super) enum Factors {
    Elimination(Elimination),
    Dense(Lu),
}

/// A solved network.
#[derive(Clone, Debug)]
pub struct Solution {
    network: Network,
    voltages: Vec<Complex>,
    factors: Factors,
}

impl Solution {
    pub(super) fn new(network: &Network, mut voltages: Vec<Complex>, factors: Factors) -> Self {
        for node in 0..voltages.len() {
            voltages[node] = voltages[network.one(node)];
        }
        Self { network: network.clone(), voltages, factors }
    }

    /// The voltage of a node against earth, in volts; no number for a node of another network.
    #[must_use]
    pub fn voltage(&self, node: Node) -> Complex {
        self.voltages.get(node.0).copied().unwrap_or(NO_NUMBER)
    }

    /// The voltage of the first node against the second, in volts, as a meter that draws nothing would have it.
    #[must_use]
    pub fn between(&self, a: Node, b: Node) -> Complex {
        self.voltage(a) - self.voltage(b)
    }

    /// The current through a branch from its first node to its second, in amperes; no number for a branch of another
    /// network.
    #[must_use]
    pub fn current(&self, branch: BranchNumber) -> Complex {
        let Some(branch) = self.network.branches.get(branch.0) else { return NO_NUMBER };
        (self.voltages[branch.from] - self.voltages[branch.to] + branch.rise) * branch.admittance
    }

    /// What the network is between two nodes: the impedance in ohms that stands behind the voltage there.
    #[must_use]
    pub fn impedance_between(&self, a: Node, b: Node) -> Complex {
        if a.0 >= self.voltages.len() || b.0 >= self.voltages.len() {
            return NO_NUMBER;
        }
        let (a, b) = (self.network.one(a.0), self.network.one(b.0));
        let mut driven = vec![Complex::ZERO; self.voltages.len()];
        driven[a] += Complex::ONE;
        driven[b] -= Complex::ONE;
        let voltages = match &self.factors {
            Factors::Elimination(elimination) => elimination.voltages(driven),
            Factors::Dense(lu) => lu.voltages(driven),
        };
        voltages[a] - voltages[b]
    }

    /// What a meter of some impedance shows from the first node to the second, in volts.
    ///
    /// # Formula
    /// `V Zm / (Zm + Z)`, Z being the impedance between the nodes: the same as laying the meter into the network.
    ///
    /// # Source
    /// The theorem of the equivalent source.
    ///
    /// # Range
    /// Any impedance but nought; an endless one draws nothing.
    #[must_use]
    pub fn reading(&self, a: Node, b: Node, meter: Impedance) -> Complex {
        let draws = meter.as_complex().reciprocal();
        self.between(a, b) / (Complex::ONE + self.impedance_between(a, b) * draws)
    }

    /// How far Kirchhoff's current law is missed at the worst node, as a part of the current that the largest voltage of the
    /// network would drive through all that meets there. Some 1e-16 is what the digits of a number allow.
    #[must_use]
    pub fn residual(&self) -> f64 {
        let volts = self.voltages.iter().map(|voltage| voltage.magnitude());
        let largest =
            self.network.branches.iter().map(|branch| branch.rise.magnitude()).chain(volts).fold(0.0, f64::max);
        let mut sums = vec![(Complex::ZERO, 0.0); self.voltages.len()];
        for (number, branch) in self.network.branches.iter().enumerate() {
            let current = self.current(BranchNumber(number));
            let each = largest * branch.admittance.magnitude();
            for (node, current) in [(branch.from, -current), (branch.to, current)] {
                let sum = &mut sums[self.network.one(node)];
                *sum = (sum.0 + current, sum.1 + each);
            }
        }
        for (from, to, current) in &self.network.driven {
            for (node, current) in [(from, -*current), (to, *current)] {
                let sum = &mut sums[self.network.one(*node)];
                *sum = (sum.0 + current, sum.1 + current.magnitude());
            }
        }
        let missed = sums.iter().skip(1).filter(|sum| sum.1 > 0.0).map(|(sum, sizes)| sum.magnitude() / sizes);
        missed.fold(0.0, f64::max)
    }
}

const NO_NUMBER: Complex = Complex::new(f64::NAN, f64::NAN);
