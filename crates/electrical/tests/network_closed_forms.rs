//! The network solver against circuits whose answer is a formula.

use electrical::network::{Network, NetworkError, Node};
use electrical::{Capacitance, Complex, Frequency, Impedance};

const STIFF: Impedance = Impedance::ohms(1e-9, 0.0);

fn ohms(resistance: f64) -> Impedance {
    Impedance::ohms(resistance, 0.0)
}

fn nanofarads(nanofarads: f64) -> Impedance {
    Impedance::of_capacitance(Capacitance::nanofarads(nanofarads), Frequency::hertz(60.0))
}

/// A network with a stiff source of so many volts, and its node.
fn supplied(volts: f64) -> (Network, Node) {
    let mut network = Network::new();
    let hot = network.node();
    network.source(Node::EARTH, hot, Complex::real(volts), STIFF);
    (network, hot)
}

#[track_caller]
fn assert_near(found: Complex, expected: Complex) {
    let miss = (found - expected).magnitude();
    assert!(miss <= 1e-9 * expected.magnitude().max(1.0), "found {found:?}, expected {expected:?}");
}

/// By hand: V R2 / (R1 + R2), with R1 and R2 from milliohms to megohms.
#[test]
fn a_divider_divides_over_nine_decades() {
    for (upper, lower) in [(0.02, 12.0), (12.0, 0.02), (1e6, 1e7), (1e-3, 1e6), (1e7, 1e-3)] {
        let (mut network, hot) = supplied(120.0);
        let middle = network.node();
        network.impedance(hot, middle, ohms(upper));
        network.impedance(middle, Node::EARTH, ohms(lower));
        let found = network.solve().unwrap().voltage(middle);
        let expected = 120.0 * lower / (upper + lower + 1e-9);
        assert!((found - Complex::real(expected)).magnitude() <= 1e-12 * expected, "{upper} and {lower}: {found:?}");
    }
}

/// By hand: two capacitors divide by their sizes: V C1 / (C1 + C2). 4 nF to the hot and 1 nF to earth give 80 %.
/// Published: experts123.com, what are ghost voltages: 80 to 85 % of the line at most.
#[test]
fn an_open_conductor_beside_a_hot_one_takes_its_share() {
    for (to_hot, to_earth, share) in [(4.0, 1.0, 0.8), (5.0, 1.0, 5.0 / 6.0), (1.0, 1.0, 0.5)] {
        let (mut network, hot) = supplied(120.0);
        let open = network.node();
        network.impedance(hot, open, nanofarads(to_hot));
        network.impedance(open, Node::EARTH, nanofarads(to_earth));
        assert_near(network.solve().unwrap().voltage(open), Complex::real(120.0 * share));
    }
}

/// By hand: the meter's 10 MΩ lies beside the lower capacitor: V jωC1 / (jω(C1 + C2) + 1/R).
#[test]
fn a_meter_pulls_a_phantom_down_by_its_own_impedance() {
    let (mut network, hot) = supplied(120.0);
    let open = network.node();
    network.impedance(hot, open, nanofarads(1.0));
    network.impedance(open, Node::EARTH, nanofarads(1.0));
    let solution = network.solve().unwrap();
    let omega = std::f64::consts::TAU * 60.0 * 1e-9;
    for resistance in [10e6, 1e6, 3e3] {
        let expected = Complex::real(120.0) * Complex::new(0.0, omega) / Complex::new(1.0 / resistance, 2.0 * omega);
        assert_near(solution.reading(open, Node::EARTH, ohms(resistance)), expected);
        let mut metered = network.clone();
        metered.impedance(open, Node::EARTH, ohms(resistance));
        assert_near(metered.solve().unwrap().voltage(open), expected);
    }
}

/// By hand: with the neutral gone the two loads of a multiwire set are in series on 240 V: 240 R / (Ra + Rb).
#[test]
fn the_light_leg_of_a_multiwire_set_without_its_neutral_is_overvolted() {
    for (a, b) in [(10.0, 10.0), (10.0, 100.0), (7.2, 1440.0)] {
        let mut network = Network::new();
        let [leg_a, leg_b, neutral] = [(); 3].map(|()| network.node());
        network.source(Node::EARTH, leg_a, Complex::real(120.0), STIFF);
        network.source(Node::EARTH, leg_b, Complex::real(-120.0), STIFF);
        network.impedance(leg_a, neutral, ohms(a));
        network.impedance(leg_b, neutral, ohms(b));
        let solution = network.solve().unwrap();
        assert_near(solution.between(leg_a, neutral), Complex::real(240.0 * a / (a + b)));
        assert_near(solution.between(neutral, leg_b), Complex::real(240.0 * b / (a + b)));
    }
}

/// By hand: a neutral of 0.1 Ω and a grounding conductor of 0.3 Ω joined at both ends share 10 A three to one: the joint
/// resistance is 0.075 Ω, and 0.75 V stand at the far end.
#[test]
fn a_false_ground_shares_the_neutral_current_with_the_grounding_conductor() {
    let mut network = Network::new();
    let [far_neutral, far_ground] = [(); 2].map(|()| network.node());
    let neutral = network.impedance(far_neutral, Node::EARTH, ohms(0.1));
    let ground = network.impedance(far_ground, Node::EARTH, ohms(0.3));
    network.current_source(Node::EARTH, far_neutral, Complex::real(10.0));
    network.join(far_neutral, far_ground);
    let solution = network.solve().unwrap();
    assert_near(solution.voltage(far_neutral), Complex::real(0.75));
    assert_near(solution.voltage(far_ground), Complex::real(0.75));
    assert_near(solution.current(neutral), Complex::real(7.5));
    assert_near(solution.current(ground), Complex::real(2.5));
}

/// By hand: the impedance behind a divider is both halves beside each other, 20 Ω and 30 Ω: 12 Ω.
#[test]
fn the_impedance_behind_a_divider_is_both_halves_beside_each_other() {
    let (mut network, hot) = supplied(120.0);
    let middle = network.node();
    network.impedance(hot, middle, ohms(20.0));
    network.impedance(middle, Node::EARTH, ohms(30.0));
    let by_mesh = network.solve().unwrap().impedance_between(middle, Node::EARTH);
    let by_lu = network.solve_by_lu().unwrap().impedance_between(middle, Node::EARTH);
    assert!((by_mesh - Complex::real(12.0)).magnitude() < 1e-8);
    assert!((by_lu - Complex::real(12.0)).magnitude() < 1e-6);
}

/// By hand: a coil and a capacitor of 100 Ω each in parallel let nothing through; in series with a resistance of 50 Ω to a
/// second resistance of 50 Ω half of the voltage is left between.
#[test]
fn coils_and_capacitors_that_cancel_are_solved_by_the_whole_matrix() {
    let (mut network, hot) = supplied(100.0);
    let [upper, alone, lower] = [(); 3].map(|()| network.node());
    network.impedance(hot, upper, ohms(50.0));
    network.impedance(upper, lower, Impedance::ohms(0.0, 100.0));
    network.impedance(lower, Node::EARTH, Impedance::ohms(0.0, -100.0));
    network.impedance(lower, Node::EARTH, ohms(50.0));
    network.impedance(upper, alone, ohms(1.0));
    let solution = network.solve().unwrap();
    assert!(solution.residual() < 1e-9);
    // Node `lower`: 1/50 + j/100; the coil before it: j100 + 50/(1 + j0.5) = 40 + j80.
    let below = Complex::new(0.02, 0.01).reciprocal();
    let expected = Complex::real(100.0) * below / (Complex::real(50.0) + Complex::new(0.0, 100.0) + below);
    assert_near(solution.voltage(lower), expected);
    assert_near(solution.voltage(alone), solution.voltage(upper));
}

/// By hand: only a coil of 100 Ω and a capacitor of 100 Ω meet at the node, and a source through 10 Ω behind the coil: the
/// node's own admittances cancel, its voltage is that of the capacitor: 100 V × (-j100) / 10 = -j1000 V.
#[test]
fn a_series_resonance_is_solved() {
    let (mut network, hot) = supplied(100.0);
    let [start, node] = [(); 2].map(|()| network.node());
    network.impedance(hot, start, ohms(10.0));
    network.impedance(start, node, Impedance::ohms(0.0, 100.0));
    network.impedance(node, Node::EARTH, Impedance::ohms(0.0, -100.0));
    let found = network.solve().unwrap().voltage(node);
    assert!((found - Complex::new(0.0, -1000.0)).magnitude() < 1e-6, "{found:?}");
}

#[test]
fn a_node_that_nothing_joins_to_earth_has_no_voltage() {
    let (mut network, _) = supplied(120.0);
    let [a, b] = [(); 2].map(|()| network.node());
    network.impedance(a, b, ohms(1.0));
    assert!(matches!(network.solve(), Err(NetworkError::Floating(_))));
    assert!(network.solve_by_lu().is_err());
}

#[test]
fn a_branch_without_impedance_and_a_foreign_node_are_refused() {
    let (mut network, hot) = supplied(120.0);
    let mut larger = network.clone();
    let foreign = larger.node();
    network.impedance(hot, Node::EARTH, ohms(1.0));
    let mut with_foreign = network.clone();
    with_foreign.impedance(hot, foreign, ohms(1.0));
    assert_eq!(with_foreign.solve().unwrap_err(), NetworkError::UnknownNode(foreign));
    let short = network.impedance(hot, Node::EARTH, ohms(0.0));
    assert_eq!(network.solve().unwrap_err(), NetworkError::NoImpedance(short));
}

#[test]
fn questions_of_another_network_have_no_number_for_an_answer() {
    let (network, hot) = supplied(120.0);
    let mut larger = network.clone();
    let foreign = larger.node();
    let branch = larger.impedance(foreign, Node::EARTH, ohms(1.0));
    let solution = network.solve().unwrap();
    assert!(solution.voltage(foreign).re.is_nan());
    assert!(solution.current(branch).re.is_nan());
    assert!(solution.impedance_between(hot, foreign).re.is_nan());
}
