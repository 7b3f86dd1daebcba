//! The frontier of independent parts: the sums of their points that no other sum beats.

use crate::frontier::value::{Value, unbeaten};

/// Sums of points, one point of each part.
#[derive(Debug)]
pub(super) struct Sums {
    /// After each part: the sums that were kept, with the sum before and the point of the part that each is made of.
    layers: Vec<Vec<(Value, usize, usize)>>,
    values: Vec<Value>,
}

impl Sums {
    /// The sums over all parts, by rising cents.
    pub fn values(&self) -> &[Value] {
        &self.values
    }

    /// The point of each part that a sum is made of.
    pub fn parts_of(&self, at: usize) -> Vec<usize> {
        let mut at = at;
        let mut parts = Vec::with_capacity(self.layers.len());
        for layer in self.layers.iter().rev() {
            let (_, before, of_part) = layer[at];
            parts.push(of_part);
            at = before;
        }
        parts.reverse();
        parts
    }
}

/// Returns the sums that cost no more than so many cents.
pub(super) fn summed<P>(start: Value, parts: &[Vec<(Value, P)>], most_cents: i64) -> Sums {
    let least: Vec<i64> =
        parts.iter().map(|points| points.iter().map(|(value, _)| value.cents).min().unwrap_or(0)).collect();
    let mut still: i64 = least.iter().sum();
    let mut values = vec![start];
    let mut layers = Vec::with_capacity(parts.len());
    for (points, least) in parts.iter().zip(&least) {
        still -= least;
        let mut sums = Vec::with_capacity(values.len() * points.len());
        for (before, value) in values.iter().enumerate() {
            for (of_part, (point, _)) in points.iter().enumerate() {
                let sum = value.with(point);
                if sum.cents + still <= most_cents {
                    sums.push((sum, before, of_part));
                }
            }
        }
        let all: Vec<Value> = sums.iter().map(|(value, ..)| *value).collect();
        let layer: Vec<(Value, usize, usize)> = unbeaten(&all).into_iter().map(|at| sums[at]).collect();
        values = layer.iter().map(|(value, ..)| *value).collect();
        layers.push(layer);
    }
    Sums { layers, values }
}
