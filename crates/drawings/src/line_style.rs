//! How the line of each circuit looks: a colour, dashes that differ without it, and its number beside it.

use crate::svg::Pen;
use dwelling::CircuitIndex;

/// Dark enough for white paper, and apart for most who see colours otherwise.
const COLOURS: [&str; 6] = ["#1c4f9c", "#b0281f", "#6b2f98", "#a25a00", "#0d6570", "#9c1f66"];
/// Dashes that differ from their neighbours at a glance.
const DASHES: [&str; 7] = ["", "6 2.5", "1.4 1.6", "9 2 1.4 2", "3 3.4", "8 1.8 1.4 1.8 1.4 1.8", "13 4"];
const WIDTH: f64 = 1.1;

/// The line of a circuit; colour and dashes come together again only after 42 circuits.
pub(crate) fn circuit_line(circuit: Option<CircuitIndex>) -> Pen {
    match circuit {
        Some(at) => Pen::line(COLOURS[at.0 % COLOURS.len()], WIDTH).dashed(DASHES[at.0 % DASHES.len()]),
        None => Pen::line(crate::svg::QUIET, WIDTH).dashed("1 4"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn forty_circuits_have_forty_lines_and_seven_of_them_differ_without_colour() {
        let line = |at| circuit_line(Some(CircuitIndex(at)));
        let lines: BTreeSet<_> = (0..40).map(|at| (line(at).colour, line(at).dashes)).collect();
        assert_eq!(lines.len(), 40);
        let dashes: BTreeSet<_> = (0..7).map(|at| line(at).dashes).collect();
        assert_eq!(dashes.len(), 7);
    }
}
