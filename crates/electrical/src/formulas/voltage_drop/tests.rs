//! Voltage drops that others published.

use super::*;
use crate::formulas::assert_near;
use crate::formulas::conductor_resistance::{Conductor, resistivity};
use crate::{ConductorMetal, Temperature};

fn per_thousand_feet(ohms: f64) -> ResistancePerLength {
    ResistancePerLength::ohms_per_thousand_feet(ohms)
}

/// The drop out and back in volts.
fn out_and_back(amperes: f64, feet: i64, ohms_per_thousand_feet: f64) -> f64 {
    let resistance = per_thousand_feet(ohms_per_thousand_feet);
    drop(Return::TwoWire, Current::amperes(amperes), Length::feet(feet), resistance).unwrap().as_volts()
}

fn k(ohm_circular_mils_per_foot: f64) -> Resistivity {
    Resistivity::ohm_circular_mils_per_foot(ohm_circular_mils_per_foot)
}

/// Published: gauthmath.com/solution/HXhy6lE9yF-: 6.125 % from a rounded 7.35 V.
#[test]
fn twelve_awg_with_k_12_at_20_a_and_100_ft_loses_6_percent() {
    let found =
        drop_by_area(Return::TwoWire, Current::amperes(20.0), Length::feet(100), k(12.0), CircularMils::new(6530.0));
    let supply = Voltage::volts(120.0);
    assert_near(percent(found.unwrap(), supply).unwrap(), 6.125, 0.002);
    let by_series =
        drop_by_area(Return::TwoWire, Current::amperes(20.0), Length::feet(100), k(12.0), area_of(Gauge::AWG_12));
    assert_near(percent(by_series.unwrap(), supply).unwrap(), 6.125, 0.002);
}

/// Published: smartsolve.ai, question 35, a 10 A heater at 140 ft: 7.07, 4.45, 2.80 and 1.76 V, with resistances at
/// 20 °C. By hand: a conductor at 75 °C loses 254.5 → 309.5 parts, 22 % more: 8.60, 5.41, 3.40 and 2.14 V.
#[test]
fn the_homework_heater_is_worked_cold_and_loses_a_fifth_more_hot() {
    for (gauge, cold, hot) in [
        (Gauge::AWG_14, 7.07, 8.60),
        (Gauge::AWG_12, 4.45, 5.41),
        (Gauge::AWG_10, 2.80, 3.40),
        (Gauge::AWG_8, 1.76, 2.14),
    ] {
        let at = |celsius| {
            let resistance = Conductor::solid_copper(gauge).resistance(Temperature::celsius(celsius)).unwrap();
            out_and_back(10.0, 140, resistance.as_ohms_per_thousand_feet())
        };
        assert_near(at(20.0), cold, 0.006);
        assert_near(at(75.0), hot, 0.006);
        assert!((at(75.0) - cold).abs() > 0.3);
    }
    for (ohms, volts) in [(2.525, 7.07), (1.588, 4.45), (0.9989, 2.8), (0.6282, 1.76)] {
        assert_near(out_and_back(10.0, 140, ohms), volts, 0.006);
    }
}

/// Published: smartsolve.ai, a 24 A load of 240 V at 321 ft with K = 10.9: 6.4 V with 6 AWG, so 4 AWG for 4.8 V.
#[test]
fn six_awg_loses_6_4_v_and_4_awg_is_the_smallest_for_4_8_v() {
    let (current, run) = (Current::amperes(24.0), Length::feet(321));
    let six = drop_by_area(Return::TwoWire, current, run, k(10.9), CircularMils::new(26_240.0)).unwrap();
    assert_near(six.as_volts(), 6.4, 0.06);
    let found = smallest_size(Return::TwoWire, Voltage::volts(4.8), current, run, k(10.9)).unwrap();
    assert_eq!(found.map(Gauge::number), Some(4));
}

/// Published: trade forum, thread 182928, cable distance: 12 A on 14 AWG at 50 ft approaches 3 %.
/// By hand: 2 × 50 × 12 × 3.07 / 1000 / 120 = 3.07 %.
#[test]
fn fourteen_awg_at_12_a_and_50_ft_loses_3_percent() {
    let found = percent(Voltage::volts(out_and_back(12.0, 50, 3.07)), Voltage::volts(120.0)).unwrap();
    assert_near(found, 3.07, 0.1);
}

/// Published: trade forum, thread 113884: 100 ft of 10 AWG at 15 A and 125 V for 3 %.
#[test]
fn ten_awg_holds_3_percent_of_125_v_for_100_ft() {
    let most = Voltage::volts(125.0 * 0.03);
    let found = longest_run(Return::TwoWire, most, Current::amperes(15.0), per_thousand_feet(1.25)).unwrap();
    assert_near(found.as_feet(), 100.0, 0.5);
}

/// Published: EC&M, The basics of calculating voltage drop: rounds up to 7.7 V, and prints 18 V for 500 ft, wrongly.
/// By hand: √3 × 20 × 200 × 1.1 / 1000 = 7.62; × 2.5 = 19.05.
#[test]
fn three_phases_at_200_ft_lose_7_62_v() {
    let at = |feet| {
        let run = Length::feet(feet);
        drop(Return::ThreePhase, Current::amperes(20.0), run, per_thousand_feet(1.1)).unwrap().as_volts()
    };
    assert_near(at(200), 7.62, 0.01);
    assert!((at(200) - 7.7).abs() > 0.07);
    assert_near(at(500), 19.05, 0.01);
    assert!((at(500) - 18.0).abs() > 1.0);
}

/// Published: engineerfix.com/what-size-wire-for-20-amps-at-200-feet: 4 AWG at 120 V; 8 AWG at 240 V.
#[test]
fn twenty_a_at_200_ft_takes_4_awg_at_120_v_and_8_awg_at_240_v() {
    let size = |volts: f64| {
        let most = Voltage::volts(volts * 0.03);
        let found = smallest_size(Return::TwoWire, most, Current::amperes(20.0), Length::feet(200), k(12.9));
        found.unwrap().map(Gauge::number)
    };
    assert_eq!((size(120.0), size(240.0)), (Some(4), Some(8)));
}

/// By hand: 2 × 100 × 16 × 1.93 / 1000 = 6.176; 2 × 12.9 × 24 × 160 / 10380 = 9.545.
#[test]
fn drops_by_resistance_and_by_area() {
    assert_near(out_and_back(16.0, 100, 1.93), 6.18, 0.01);
    let area = CircularMils::new(10_380.0);
    let found = drop_by_area(Return::TwoWire, Current::amperes(24.0), Length::feet(160), k(12.9), area).unwrap();
    assert_near(found.as_volts(), 9.54, 0.01);
}

/// By hand: with 10 A and 4 A the neutral carries 6 A: 0.2 × 10 + 0.2 × 6 = 3.2 V; 0.2 × 4 - 0.2 × 6 = -0.4 V, a rise.
#[test]
fn the_lighter_leg_of_a_multiwire_set_rises() {
    let loads = [Current::amperes(10.0), Current::amperes(4.0)];
    let [heavy, light] =
        multiwire_drop(loads, Length::feet(100), per_thousand_feet(2.0), per_thousand_feet(2.0)).unwrap();
    assert_near(heavy.as_volts(), 3.2, 1e-12);
    assert_near(light.as_volts(), -0.4, 1e-12);
}

/// By hand: at a drop of 1 % the approximation differs from the exact divider by a part of that percent squared.
#[test]
fn the_approximation_with_a_power_factor_agrees_with_the_exact_divider() {
    let load = Complex::new(9.6, 7.2);
    let run = Complex::new(0.1, 0.01);
    let left = left_at_load(Complex::real(120.0), run, load);
    let current = left.magnitude() / load.magnitude();
    let approximate = current * (run.re * 0.8 + run.im * 0.6);
    assert_near(120.0 - left.magnitude(), approximate, 0.01);
}

/// By hand: 12.6 is 10.371 × 309.5 / 254.5; 12.9 is 1.02 times it.
#[test]
fn the_constants_of_older_texts_are_temperatures() {
    let cold = resistivity(ConductorMetal::Copper).as_ohm_circular_mils_per_foot();
    assert_near(cold * 309.5 / 254.5, 12.6, 0.02);
    assert_near(cold * 309.5 / 254.5 * 1.02, 12.9, 0.05);
}

/// Common practice, no source: 3 V per 100 ft at 10 A, and 3 % kept by 10 AWG at 10 A and 160 ft.
/// By hand: 14 AWG at 75 °C loses 3.07 V in one conductor, 6.14 V in both; 10 AWG 2.7 % at 20 °C and 3.2 % at 75 °C.
#[test]
fn rules_of_thumb_count_one_conductor_or_a_cold_one() {
    assert_near(out_and_back(10.0, 100, 3.07), 6.14, 0.005);
    let share = |ohms| percent(Voltage::volts(out_and_back(10.0, 160, ohms)), Voltage::volts(120.0)).unwrap();
    assert!(share(0.9989) < 3.0 && share(1.21) > 3.0);
}

#[test]
fn negative_currents_and_endless_runs_are_refused() {
    assert!(drop(Return::TwoWire, Current::amperes(-1.0), Length::feet(1), per_thousand_feet(1.0)).is_err());
    assert!(drop(Return::TwoWire, Current::amperes(1.0), Length::feet(20_000), per_thousand_feet(1.0)).is_err());
    let nought = Current::amperes(0.0);
    assert!(longest_run(Return::TwoWire, Voltage::volts(3.6), nought, per_thousand_feet(1.0)).is_err());
    assert!(percent(Voltage::volts(1.0), Voltage::volts(0.0)).is_err());
}
