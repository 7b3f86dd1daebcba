//! Solving a network by the whole nodal matrix: LU with partial pivoting.

use super::{Network, NetworkError, Node};
use crate::Complex;

/// A pivot below this part of the largest entry of its column at the start is nothing.
const NOTHING: f64 = 1e-15;

/// A nodal matrix in its two triangles, and the order its rows were taken in.
#[derive(Clone, Debug)]
pub(super) struct Lu {
    /// The nodes the unknowns belong to.
    nodes: Vec<usize>,
    rows: Vec<Vec<Complex>>,
    order: Vec<usize>,
}

/// The voltages of all nodes, those made one with another aside, and the triangles that gave them.
pub(super) fn solve(network: &Network) -> Result<(Vec<Complex>, Lu), NetworkError> {
    let count = network.nodes();
    let nodes: Vec<usize> = (1..count).filter(|node| network.one(*node) == *node).collect();
    let mut unknown = vec![None; count];
    for (at, node) in nodes.iter().enumerate() {
        unknown[*node] = Some(at);
    }
    let mut rows = vec![vec![Complex::ZERO; nodes.len()]; nodes.len()];
    let mut driven = vec![Complex::ZERO; count];
    for branch in &network.branches {
        let (from, to) = (network.one(branch.from), network.one(branch.to));
        if from == to {
            continue;
        }
        for (here, there, sign) in [(from, to, -1.0), (to, from, 1.0)] {
            driven[here] += branch.admittance * branch.rise * sign;
            if let Some(row) = unknown[here] {
                rows[row][row] += branch.admittance;
                if let Some(column) = unknown[there] {
                    rows[row][column] -= branch.admittance;
                }
            }
        }
    }
    for (from, to, current) in &network.driven {
        driven[network.one(*from)] -= *current;
        driven[network.one(*to)] += *current;
    }
    let lu = factor(nodes, rows)?;
    let voltages = lu.voltages(driven);
    Ok((voltages, lu))
}

fn factor(nodes: Vec<usize>, mut rows: Vec<Vec<Complex>>) -> Result<Lu, NetworkError> {
    let count = rows.len();
    let mut order: Vec<usize> = (0..count).collect();
    let largest: Vec<f64> =
        (0..count).map(|column| rows.iter().map(|row| row[column].magnitude()).fold(0.0, f64::max)).collect();
    for column in 0..count {
        let (pivot, size) = (column..count)
            .map(|row| (row, rows[row][column].magnitude()))
            .fold((column, 0.0), |best, next| if next.1 > best.1 { next } else { best });
        if size <= largest[column] * NOTHING || !size.is_finite() {
            let alone = largest[column] == 0.0;
            return Err(if alone { NetworkError::Floating(Node(nodes[column])) } else { NetworkError::Undetermined });
        }
        rows.swap(column, pivot);
        order.swap(column, pivot);
        let (above, below) = rows.split_at_mut(column + 1);
        let pivot_row = &above[column];
        for row in below {
            let times = row[column] / pivot_row[column];
            row[column] = times;
            if times != Complex::ZERO {
                for (value, pivot_value) in row[column + 1..].iter_mut().zip(&pivot_row[column + 1..]) {
                    *value -= times * *pivot_value;
                }
            }
        }
    }
    Ok(Lu { nodes, rows, order })
}

impl Lu {
    /// The voltages that currents driven into the nodes cause, by node.
    pub(super) fn voltages(&self, driven: Vec<Complex>) -> Vec<Complex> {
        let mut values: Vec<Complex> = self.order.iter().map(|row| driven[self.nodes[*row]]).collect();
        for row in 0..values.len() {
            let sum: Complex = (0..row).map(|column| self.rows[row][column] * values[column]).sum();
            values[row] -= sum;
        }
        for row in (0..values.len()).rev() {
            let sum: Complex = (row + 1..values.len()).map(|column| self.rows[row][column] * values[column]).sum();
            values[row] = (values[row] - sum) / self.rows[row][row];
        }
        let mut voltages = vec![Complex::ZERO; driven.len()];
        for (node, value) in self.nodes.iter().zip(values) {
            voltages[*node] = value;
        }
        voltages
    }
}
