//! Measures how long a network of 200 nodes takes: a dwelling's circuit tree, and a random mesh.
#![allow(clippy::print_stdout, clippy::disallowed_methods, reason = "a measurement prints, and needs a clock")]

use electrical::network::{
    BranchCircuit, Fault, Load, Meter, Network, NetworkError, Node, Opening, Place, Run, Supply, Wire,
};
use electrical::{Complex, Impedance, Length, ResistancePerLength};
use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

const ROUNDS: usize = 200;

fn main() -> Result<(), Box<dyn Error>> {
    let (circuit, last) = tree();
    let wired = circuit.wired();
    println!(
        "a circuit of {} openings: {} nodes, {} branches",
        circuit.openings(),
        wired.network.nodes(),
        wired.network.branches()
    );
    time("  solve", || black_box(wired.network.solve()).map(|_| ()))?;
    time("  build and solve", || black_box(circuit.solve()).map(|_| ()))?;
    let solved = circuit.solve()?;
    time("  three readings of one opening", || {
        black_box(solved.readings(last, Wire::LegA, Meter::HIGH_IMPEDANCE));
        Ok(())
    })?;
    let mesh = mesh();
    println!("a random mesh: {} nodes, {} branches", mesh.nodes(), mesh.branches());
    time("  solve", || black_box(mesh.solve()).map(|_| ()))?;
    time("  solve by LU of the whole matrix", || black_box(mesh.solve_by_lu()).map(|_| ()))?;
    Ok(())
}

/// Prints the median and the longest of many rounds.
fn time(what: &str, mut work: impl FnMut() -> Result<(), NetworkError>) -> Result<(), NetworkError> {
    let mut rounds = Vec::with_capacity(ROUNDS);
    for _ in 0..ROUNDS {
        let start = Instant::now();
        work()?;
        rounds.push(start.elapsed().as_secs_f64() * 1e3);
    }
    rounds.sort_by(f64::total_cmp);
    println!("{what}: median {:.3} ms, longest {:.3} ms", rounds[ROUNDS / 2], rounds[ROUNDS - 1]);
    Ok(())
}

/// A branching multiwire circuit of 200 nodes with an open neutral, and its last opening.
fn tree() -> (BranchCircuit, Opening) {
    let mut circuit = BranchCircuit::new(Supply::usual());
    let copper = ResistancePerLength::ohms_per_thousand_feet(2.525);
    let mut openings = vec![Opening::PANEL];
    let mut runs = Vec::new();
    for number in 1..50 {
        let from = openings[if number % 5 == 0 { number / 2 } else { number - 1 }];
        let (run, opening) = circuit.run(from, Run::three_wire(Length::feet(12), copper, number % 3 != 0));
        let leg = if number % 2 == 0 { Wire::LegA } else { Wire::LegB };
        let impedance = Impedance::ohms(50.0 + number as f64, 5.0);
        circuit.load(Load { at: opening, between: (leg, Wire::Neutral), impedance });
        openings.push(opening);
        runs.push(run);
    }
    circuit.fault(Fault::Open { at: Place::FarEnd(runs[3]), wire: Wire::Neutral });
    (circuit, openings[openings.len() - 1])
}

/// A ladder of 200 nodes with further branches between nodes drawn by a fixed rule.
fn mesh() -> Network {
    let mut network = Network::new();
    let mut nodes = vec![Node::EARTH];
    let mut state: u64 = 1;
    let mut draw = |below: usize| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) as usize % below
    };
    for number in 1..200 {
        let node = network.node();
        let before = nodes[number - 1];
        network.impedance(before, node, Impedance::ohms(0.1, 0.01));
        network.impedance(nodes[draw(number)], node, Impedance::ohms(10.0 + number as f64, -3.0));
        nodes.push(node);
    }
    network.source(Node::EARTH, nodes[100], Complex::real(120.0), Impedance::ohms(0.02, 0.0));
    network
}
