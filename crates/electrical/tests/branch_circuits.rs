//! What a meter reads at the openings of circuits with and without faults.

use electrical::formulas::conductor_resistance::Conductor;
use electrical::formulas::ground_fault_loop::{GroundFaultLoop, Part, Source};
use electrical::formulas::voltage_drop;
use electrical::network::{BranchCircuit, Fault, Load, Meter, Opening, Place, Readings, Run, RunNumber, Supply, Wire};
use electrical::{Capacitance, CapacitancePerLength, Frequency, Impedance, Length, Resistance, ResistancePerLength};
use electrical::{Current, Gauge, Temperature, Voltage};

/// 1 Ω per 1000 ft, so that 100 ft are 0.1 Ω.
const COPPER: ResistancePerLength = ResistancePerLength::ohms_per_thousand_feet(1.0);
const DIGITAL: Meter = Meter::HIGH_IMPEDANCE;

/// A panel so stiff that only the branch circuit counts.
fn stiff(volts: f64) -> Supply {
    let supply = Supply::usual();
    let least = Impedance::ohms(1e-6, 0.0);
    Supply { leg_voltage: Voltage::volts(volts), leg: least, neutral: least, bond: Resistance::ohms(1e-6), ..supply }
}

/// A panel, 50 ft of cable to a first opening and 50 ft to a second.
struct Two {
    circuit: BranchCircuit,
    runs: [RunNumber; 2],
    first: Opening,
    second: Opening,
}

fn two(volts: f64, grounded: bool) -> Two {
    let mut circuit = BranchCircuit::new(stiff(volts));
    let cable = Run::two_wire(Length::feet(50), COPPER, grounded);
    let (home, first) = circuit.run(Opening::PANEL, cable);
    let (on, second) = circuit.run(first, cable);
    Two { circuit, runs: [home, on], first, second }
}

impl Two {
    fn with_load(mut self, at: Opening, ohms: f64) -> Self {
        let between = (Wire::LegA, Wire::Neutral);
        self.circuit.load(Load { at, between, impedance: Impedance::ohms(ohms, 0.0) });
        self
    }

    fn with_fault(mut self, fault: Fault) -> Self {
        self.circuit.fault(fault);
        self
    }

    fn readings(&self, opening: Opening, meter: Meter) -> Readings {
        self.circuit.solve().expect("a circuit on a supply").readings(opening, Wire::LegA, meter)
    }
}

#[track_caller]
fn assert_reads(found: Readings, [hn, hg, ng]: [f64; 3], tolerance: f64) {
    let volts = [found.hot_to_neutral, found.hot_to_ground, found.neutral_to_ground].map(Voltage::as_volts);
    for (found, expected) in volts.into_iter().zip([hn, hg, ng]) {
        assert!((found - expected).abs() <= tolerance, "found {volts:?}, expected {:?}", [hn, hg, ng]);
    }
}

fn jumper(at: Opening, between: (Wire, Wire)) -> Fault {
    Fault::Jumper { at, between, resistance: Resistance::ohms(0.0) }
}

/// Published: academy.fredsappliance.com, testing a 120 V receptacle: 120, 120 and 0 V without load.
#[test]
fn a_right_receptacle_without_load_reads_120_120_and_0() {
    let two = two(120.0, true);
    assert_reads(two.readings(two.second, DIGITAL), [120.0, 120.0, 0.0], 0.01);
}

/// Published: an application note on three receptacle voltages, sirhenryjones-museums.org: 118.5, 120.0 and 1.5 V.
/// By hand: 121.5 V and 7.9 Ω behind twice 0.1 Ω: 15 A, 1.5 V in each conductor.
#[test]
fn a_right_receptacle_under_load_loses_as_much_in_the_neutral_as_in_the_hot() {
    let two = two(121.5, true);
    let second = two.second;
    assert_reads(two.with_load(second, 7.9).readings(second, DIGITAL), [118.5, 120.0, 1.5], 0.05);
}

/// Published: zaro.info, normal neutral to ground voltage: about 2 V under load.
/// By hand: 12 A through 75 ft of 14 AWG at 2.5 Ω per 1000 ft: 2.25 V, less what the load falls by.
#[test]
fn a_usual_load_leaves_about_2_v_from_neutral_to_ground() {
    let mut circuit = BranchCircuit::new(Supply::usual());
    let each = ResistancePerLength::ohms_per_thousand_feet(2.525);
    let (_, opening) = circuit.run(Opening::PANEL, Run::two_wire(Length::feet(75), each, true));
    let impedance = Impedance::ohms(10.0, 0.0);
    circuit.load(Load { at: opening, between: (Wire::LegA, Wire::Neutral), impedance });
    let found = circuit.solve().unwrap().readings(opening, Wire::LegA, DIGITAL);
    let volts = found.neutral_to_ground.as_volts();
    assert!((volts - 2.0).abs() <= 0.5, "{volts}");
}

/// Published: EC&M 2013, Failures in outlet testing exposed: a false ground reads as a right one without load.
/// By hand: under load hot to neutral and hot to ground are the same and neutral to ground is nought.
#[test]
fn a_false_ground_reads_right_until_a_load_is_on() {
    let two = two(121.5, false);
    let second = two.second;
    let faulty = two.with_fault(jumper(second, (Wire::Neutral, Wire::Ground)));
    assert_reads(faulty.readings(second, DIGITAL), [121.5, 121.5, 0.0], 0.01);
    assert_reads(faulty.with_load(second, 7.9).readings(second, DIGITAL), [118.5, 118.5, 0.0], 0.05);
}

/// Published: trade forum, thread 96491: hot, neutral and ground against
/// earth 0, 120 and 120 V, while the three readings are right.
#[test]
fn a_reversed_false_ground_shows_only_against_true_earth() {
    let two = two(120.0, false);
    let second = two.second;
    let exchanged = Fault::Exchanged { at: Place::Device(second), wires: (Wire::LegA, Wire::Neutral) };
    let faulty = two.with_fault(exchanged).with_fault(jumper(second, (Wire::Neutral, Wire::Ground)));
    let solved = faulty.circuit.solve().unwrap();
    assert_reads(solved.readings(second, Wire::LegA, DIGITAL), [120.0, 120.0, 0.0], 0.01);
    let to_earth = [Wire::LegA, Wire::Neutral, Wire::Ground]
        .map(|wire| solved.reading_to_earth(second, wire, DIGITAL).as_volts().round());
    assert_eq!(to_earth, [0.0, 120.0, 120.0]);
}

/// Published: eeeinterviewtips.blogspot.com, a toaster and a reversed receptacle: 120, 0 and 120 V.
#[test]
fn reversed_polarity_concerns_the_device_or_all_beyond_it() {
    let at_device = two(120.0, true);
    let (first, second) = (at_device.first, at_device.second);
    let wires = (Wire::LegA, Wire::Neutral);
    let at_device = at_device.with_fault(Fault::Exchanged { at: Place::Device(first), wires });
    assert_reads(at_device.readings(first, DIGITAL), [120.0, 0.0, 120.0], 0.01);
    assert_reads(at_device.readings(second, DIGITAL), [120.0, 120.0, 0.0], 0.01);
    let on_run = two(120.0, true);
    let at = Place::FarEnd(on_run.runs[0]);
    let on_run = on_run.with_fault(Fault::Exchanged { at, wires });
    for opening in [first, second] {
        assert_reads(on_run.readings(opening, DIGITAL), [120.0, 0.0, 120.0], 0.01);
    }
}

/// From memory: an open ground reads nothing on a meter of low impedance.
/// By hand: on one of high impedance the ground floats half-way, pulled down by 10 MΩ beside some 10 nF.
#[test]
fn an_open_ground_floats_on_a_digital_meter_and_falls_on_a_loading_one() {
    let two = two(120.0, true);
    let (second, at) = (two.second, Place::NearEnd(two.runs[0]));
    let open = two.with_fault(Fault::Open { at, wire: Wire::Ground });
    assert_reads(open.readings(second, Meter::LOW_IMPEDANCE), [120.0, 0.0, 0.0], 1.0);
    let floating = open.readings(second, DIGITAL);
    assert!((50.0..60.0).contains(&floating.hot_to_ground.as_volts()), "{floating:?}");
    assert!((50.0..60.0).contains(&floating.neutral_to_ground.as_volts()), "{floating:?}");
}

/// From memory: an open neutral with a load on reads 0, 120 and 120 V.
#[test]
fn an_open_neutral_with_a_load_on_brings_the_hot_to_the_neutral() {
    let two = two(120.0, true);
    let (second, at) = (two.second, Place::FarEnd(two.runs[0]));
    let open = two.with_fault(Fault::Open { at, wire: Wire::Neutral }).with_load(second, 100.0);
    assert_reads(open.readings(second, DIGITAL), [0.0, 120.0, 120.0], 0.05);
}

/// By hand: a bad splice of 1 Ω carries 120 V / (10 + 1 + 0.2) Ω = 10.71 A and loses 10.71 V, all from neutral to ground.
#[test]
fn a_bad_neutral_splice_shows_under_load() {
    let two = two(120.0, true);
    let (second, at) = (two.second, Place::NearEnd(two.runs[1]));
    let fault = Fault::Resistance { at, wire: Wire::Neutral, resistance: Resistance::ohms(1.0) };
    let found = two.with_fault(fault).with_load(second, 10.0);
    let amperes = 120.0 / 11.2;
    let expected = [amperes * 10.0, 120.0 - amperes * 0.1, amperes * 1.1];
    assert_reads(found.readings(second, DIGITAL), expected, 0.001);
}

/// By hand: 120 V over 0.05 Ω out and 0.05 Ω back give 1200 A, and 60 V stand on the metal of the first opening.
#[test]
fn a_hot_that_meets_the_ground_drives_the_fault_current_of_the_loop() {
    let two = two(120.0, true);
    let (first, home) = (two.first, two.runs[0]);
    let solved = two.with_fault(jumper(first, (Wire::LegA, Wire::Ground))).circuit.solve().unwrap();
    assert!((solved.current(home, Wire::LegA).as_amperes() - 1200.0).abs() < 0.5);
    assert!((solved.current(home, Wire::Ground).as_amperes() - 1200.0).abs() < 0.5);
    assert!((solved.reading_to_earth(first, Wire::Ground, DIGITAL).as_volts() - 60.0).abs() < 0.1);
}

/// By hand: the drop of both legs by the formula for multiwire sets, with the currents that the network finds.
#[test]
fn a_multiwire_set_drops_as_its_formula_says() {
    let mut circuit = BranchCircuit::new(stiff(120.0));
    let (run, opening) = circuit.run(Opening::PANEL, Run::three_wire(Length::feet(100), COPPER, true));
    for (leg, ohms) in [(Wire::LegA, 10.0), (Wire::LegB, 30.0)] {
        circuit.load(Load { at: opening, between: (leg, Wire::Neutral), impedance: Impedance::ohms(ohms, 0.0) });
    }
    let solved = circuit.solve().unwrap();
    let currents = [Wire::LegA, Wire::LegB].map(|leg| solved.current(run, leg));
    let drops = voltage_drop::multiwire_drop(currents, Length::feet(100), COPPER, COPPER).unwrap();
    for (leg, drop) in [Wire::LegA, Wire::LegB].into_iter().zip(drops) {
        let found = solved.reading(opening, leg, Wire::Neutral, DIGITAL).as_volts();
        assert!((found - (120.0 - drop.as_volts())).abs() < 0.002, "{leg:?}: {found}");
    }
}

/// By hand: with a coupling that outweighs all strays an open ground between hot and neutral floats at half; the meter's
/// 10 MΩ and 100 pF lie beside 2 × 30.48 m × 100 pF/m.
#[test]
fn the_phantom_of_an_open_ground_is_the_divider_of_its_coupling() {
    let mut circuit = BranchCircuit::new(stiff(120.0));
    let coupling = CapacitancePerLength::picofarads_per_metre(100_000.0);
    let (run, opening) =
        circuit.run(Opening::PANEL, Run { coupling, ..Run::two_wire(Length::feet(100), COPPER, true) });
    circuit.fault(Fault::Open { at: Place::NearEnd(run), wire: Wire::Ground });
    let found = circuit.solve().unwrap().readings(opening, Wire::LegA, DIGITAL);
    let farads = (coupling * Length::feet(100)).as_farads();
    let behind = Impedance::of_capacitance(Capacitance::farads(2.0 * farads), Frequency::hertz(60.0)).as_complex();
    let meter = DIGITAL.impedance(Frequency::hertz(60.0)).as_complex();
    let expected = 60.0 * (meter / (meter + behind)).magnitude();
    assert!((found.hot_to_ground.as_volts() - expected).abs() < 0.01, "{found:?}, {expected}");
}

/// By hand: an earthed device, 120 V over 25 Ω of its rod and 25 || 5 of the others would be 4.1 A: no breaker opens.
#[test]
fn a_rod_at_the_device_is_no_path_for_a_fault() {
    let two = two(120.0, false);
    let (first, home) = (two.first, two.runs[0]);
    let rod = Fault::Earthed { at: first, wire: Wire::Ground, resistance: Resistance::ohms(25.0) };
    let solved = two.with_fault(rod).with_fault(jumper(first, (Wire::LegA, Wire::Ground))).circuit.solve().unwrap();
    let amperes = solved.current(home, Wire::LegA).as_amperes();
    assert!((amperes - 120.0 / (25.0 + 25.0 * 5.0 / 30.0)).abs() < 0.05, "{amperes}");
}

/// By hand: 120 V over 0.24 Ω and twice 50 ft of 2.525 mΩ: 243.7 A, by the formula for the loop and by the network.
#[test]
fn the_formula_for_the_loop_and_the_network_agree() {
    let wire = Conductor::solid_copper(Gauge::AWG_14);
    let cold = Temperature::celsius(20.0);
    let each = wire.resistance(cold).unwrap();
    let mut circuit = BranchCircuit::new(Supply { leg: Impedance::ohms(0.24, 0.0), ..stiff(120.0) });
    let (run, opening) = circuit.run(Opening::PANEL, Run::two_wire(Length::feet(50), each, true));
    circuit.fault(jumper(opening, (Wire::LegA, Wire::Ground)));
    let found = circuit.solve().unwrap().current(run, Wire::LegA).as_amperes();
    let available = Current::amperes(500.0);
    let band = GroundFaultLoop {
        least_voltage: Voltage::volts(120.0),
        most_voltage: Voltage::volts(120.0),
        source: Source::AvailableCurrent { least: available, most: available },
        outgoing: vec![Part::Conductor(wire, Length::feet(50))],
        grounding: vec![Part::Conductor(wire, Length::feet(50))],
        neutral: vec![],
        coldest: cold,
        hottest: cold,
    };
    let expected = band.band().unwrap().least_current.as_amperes();
    assert!((found - expected).abs() < 0.01, "{found}, {expected}");
}

/// By hand: two equal neutrals joined at their far ends share 12 A half and half.
#[test]
fn neutrals_of_two_circuits_that_touch_share_the_current() {
    let mut circuit = BranchCircuit::new(stiff(120.0));
    let cable = Run::two_wire(Length::feet(50), COPPER, true);
    let (own, loaded) = circuit.run(Opening::PANEL, cable);
    let (other, idle) = circuit.run(Opening::PANEL, cable);
    let impedance = Impedance::ohms(9.925, 0.0);
    circuit.load(Load { at: loaded, between: (Wire::LegA, Wire::Neutral), impedance });
    let ends = [(loaded, Wire::Neutral), (idle, Wire::Neutral)];
    circuit.fault(Fault::Bridged { ends, resistance: Resistance::ohms(0.0) });
    let solved = circuit.solve().unwrap();
    for run in [own, other] {
        assert!((solved.current(run, Wire::Neutral).as_amperes() - 6.0).abs() < 0.001);
    }
}

#[test]
fn places_of_another_circuit_are_left_out() {
    let mut other = two(120.0, true).circuit;
    let (foreign_run, foreign) = other.run(Opening::PANEL, Run::two_wire(Length::feet(1), COPPER, true));
    let two = two(120.0, true);
    let second = two.second;
    let found = two
        .with_fault(Fault::Open { at: Place::NearEnd(foreign_run), wire: Wire::Neutral })
        .with_fault(jumper(foreign, (Wire::LegA, Wire::Ground)))
        .with_load(foreign, 10.0);
    assert_reads(found.readings(second, DIGITAL), [120.0, 120.0, 0.0], 0.01);
    assert_reads(found.readings(foreign, DIGITAL), [0.0, 0.0, 0.0], 0.0);
}
