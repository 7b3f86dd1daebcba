//! Random circuits, solved by both ways, and held against Kirchhoff's law.

use electrical::network::{Network, Node};
use electrical::{Complex, Impedance};
use proptest::prelude::*;

/// A branch from a node to one of the earlier ones, by parts of whole ranges.
type Drawn = (f64, f64, f64, f64);

/// Impedances of real circuits lie over twelve decades. The whole matrix cannot hold so many: it is given their square roots.
const REAL: f64 = 1.0;
const ROOTS: f64 = 0.5;

/// An impedance of a resistance and a capacitive or inductive part: a splice, a load, a meter or a stray capacitance.
fn impedance((kind, size, angle, _): Drawn, spread: f64) -> Impedance {
    let ohms = match kind {
        kind if kind < 0.4 => 10_f64.powf(-3.0 + 3.0 * size),
        kind if kind < 0.8 => 10_f64.powf(3.0 * size),
        _ => 10_f64.powf(5.0 + 4.0 * size),
    };
    let turn = if kind < 0.8 { 45.0 * angle } else { -90.0 + 20.0 * angle };
    let phasor = Complex::polar(ohms.powf(spread), turn);
    Impedance::ohms(phasor.re, phasor.im)
}

/// A connected network: every node hangs on an earlier one, further branches close meshes, some hold sources.
fn network(tree: &[Drawn], meshes: &[Drawn], spread: f64) -> (Network, Vec<Node>) {
    let mut network = Network::new();
    let mut nodes = vec![Node::EARTH];
    let pick = |nodes: &[Node], part: f64| nodes[((part * nodes.len() as f64) as usize).min(nodes.len() - 1)];
    for drawn in tree {
        let from = pick(&nodes, drawn.3);
        let to = network.node();
        let rise = if drawn.0 < 0.2 { Complex::polar(120.0, 360.0 * drawn.2) } else { Complex::ZERO };
        network.source(from, to, rise, impedance(*drawn, spread));
        nodes.push(to);
    }
    for drawn in meshes {
        let (from, to) = (pick(&nodes, drawn.3), pick(&nodes, drawn.2));
        if from != to {
            network.impedance(from, to, impedance(*drawn, spread));
        }
    }
    let (first, last) = (nodes[1], nodes[nodes.len() - 1]);
    network.current_source(first, last, Complex::real(5.0));
    (network, nodes)
}

fn drawn() -> impl Strategy<Value = Drawn> {
    (0.0..1.0, 0.0..1.0, 0.0..1.0, 0.0..1.0)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn both_ways_agree_and_currents_are_kept(
        tree in prop::collection::vec(drawn(), 2..60),
        meshes in prop::collection::vec(drawn(), 0..60),
    ) {
        let (network, nodes) = network(&tree, &meshes, ROOTS);
        let (by_mesh, by_lu) = (network.solve().unwrap(), network.solve_by_lu().unwrap());
        let largest = nodes.iter().map(|node| by_mesh.voltage(*node).magnitude()).fold(1.0, f64::max);
        for node in &nodes {
            let miss = (by_mesh.voltage(*node) - by_lu.voltage(*node)).magnitude();
            prop_assert!(miss <= 1e-9 * largest, "{miss} of {largest}");
        }
        prop_assert!(by_mesh.residual() < 1e-13);
    }

    #[test]
    fn currents_are_kept_over_twelve_decades(
        tree in prop::collection::vec(drawn(), 2..100),
        meshes in prop::collection::vec(drawn(), 0..100),
    ) {
        let (network, _) = network(&tree, &meshes, REAL);
        let residual = network.solve().unwrap().residual();
        prop_assert!(residual < 1e-13, "{residual}");
    }

    #[test]
    fn a_meter_laid_into_the_network_shows_what_was_said(
        tree in prop::collection::vec(drawn(), 3..30),
        meshes in prop::collection::vec(drawn(), 0..30),
        meter in 2.0..8.0,
    ) {
        let (network, nodes) = network(&tree, &meshes, REAL);
        let (a, b) = (nodes[1], nodes[nodes.len() - 1]);
        let meter = Impedance::ohms(10_f64.powf(meter), 0.0);
        let said = network.solve().unwrap().reading(a, b, meter);
        let mut metered = network.clone();
        metered.impedance(a, b, meter);
        let shown = metered.solve().unwrap();
        let largest = nodes.iter().map(|node| shown.voltage(*node).magnitude()).fold(1.0, f64::max);
        prop_assert!((shown.between(a, b) - said).magnitude() <= 1e-9 * largest);
    }
}
