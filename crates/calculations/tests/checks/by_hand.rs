//! Checks and readings worked by hand.

use crate::dwellings::{BUNGALOW, KNOB_AND_TUBE, one_run, row, states_of};
use calculations::{Amount, Check, SourceKind, Verdict, expected_readings};

fn near(found: Option<f64>, expected: f64, tolerance: f64) {
    let found = found.unwrap_or(f64::NAN);
    assert!((found - expected).abs() <= tolerance, "found {found}, expected {expected} within {tolerance}");
}

/// By hand: out 38 + 18 + 11 + 24 = 91 ft of 14 AWG, back 7 ft of 14 AWG and 28 ft of 12 AWG.
/// 14 AWG: 2.52537 Ω/kft at 20 °C, × (234.5 + 75)/(234.5 + 20) = 3.0711 at 75 °C, × 1.04 tinned = 3.1940; at 0 °C × 234.5/254.5 =
/// 2.3269. 12 AWG: 1.5882, 1.9314 and 1.4634.
/// Weakest: 114/1200 = 0.0950 + 0.29065 + 0.02150 + 0.05408 = 0.46123 Ω: 247.2 A. Strongest, behind 126 V / 200 kA:
/// 98 × 2.3269 mΩ + 28 × 1.4634 mΩ = 0.26901 Ω: 468.4 A. 5 × 15 A = 75 A are advised: 172.2 A to spare.
#[test]
fn the_fault_loop_of_l_4_in_the_bungalow_carries_247_to_468_a() {
    let [_, after] = states_of(BUNGALOW);
    let found = row(&after, Check::FaultLoop, "L-4");
    let current = found.found.unwrap();
    near(current.least, 247.2, 0.1);
    near(current.most, 468.4, 0.2);
    near(found.margin, 172.2, 0.1);
    assert_eq!(found.verdict, Verdict::Ok);
    assert_eq!(found.source.kind, SourceKind::Advice);
    assert!(found.says.contains("91 ft out and 35 ft back"), "{}", found.says);
    assert!(found.says.contains("opens within 50 s at the latest (300 % point)"), "{}", found.says);
}

/// By hand: 2 × 12 A × 123 ft × 3.1940 Ω/kft = 9.43 V, 7.86 % of 120 V; 38 ft lose 2.91 V, 2.43 %.
#[test]
fn the_end_of_circuit_3_of_the_bungalow_loses_9_v_at_12_a() {
    let [before, after] = states_of(BUNGALOW);
    for state in [before, after] {
        let last = row(&state, Check::VoltageDrop, "D-2");
        near(last.found.as_ref().and_then(|found| found.most), 7.857, 0.005);
        assert_eq!((last.verdict, last.source.kind), (Verdict::Advice, SourceKind::Advice));
        assert!(last.says.starts_with("9.4 V of 120 V are lost at 12 A over 123 ft"), "{}", last.says);
        let first = row(&state, Check::VoltageDrop, "L-1");
        near(first.found.and_then(|found| found.most), 2.427, 0.005);
        assert_eq!(first.verdict, Verdict::Ok);
    }
}

/// Published: NEC chapter 9, table 8: 1.93 Ω/kft for solid 12 AWG at 75 °C. By hand: 2 × 16 A × 0.1 kft × 1.93 = 6.18 V, 5.15 %.
#[test]
fn a_hundred_feet_of_12_awg_lose_6_v_at_16_a() {
    let [before, _] = states_of(&one_run("100 ft", 12, ""));
    let found = row(&before, Check::VoltageDrop, "A");
    near(found.found.and_then(|found| found.most), 5.15, 0.01);
}

/// By hand: two appliances at L-4, one each at L-2 and L-3: 4 × 0.5 = 2.0 mA. Cables of 142 ft = 43.3 m at 50 to 150 pF/m,
/// 45.24 µA a nanofarad: at most 43.28 × 0.15 × 45.24 = 293.7 µA; without a ground beside the hot conductor at least nothing.
#[test]
fn the_gfci_of_circuit_3_sees_at_most_2_3_ma() {
    let [_, after] = states_of(BUNGALOW);
    let found = row(&after, Check::Leakage, "circuit 3");
    let amount = found.found.unwrap();
    near(amount.least, 0.0, 0.0);
    near(amount.most, 2.294, 0.002);
    near(found.margin, 1.706, 0.002);
    assert_eq!(found.verdict, Verdict::Ok);
}

/// By hand: two cables are 4 × 2 in³, clamps 2, a strap 4 and no ground: 14 in³ in a box of 12.5.
#[test]
fn a_box_that_was_too_full_is_told_before_and_mended_or_told_after() {
    let [before, after] = states_of(BUNGALOW);
    let found = row(&before, Check::Fill, "L-4");
    assert_eq!(found.verdict, Verdict::NotOk);
    near(found.margin, -1.5, 1e-9);
    // The plan fits a new box of 20 in³ without clamps: 8 + 4 + one ground of 2 are 14 in³.
    let mended = row(&after, Check::Fill, "L-4");
    assert_eq!(mended.verdict, Verdict::Ok);
    near(mended.margin, 6.0, 1e-9);
    let left = row(&after, Check::Fill, "L-1");
    assert!(left.verdict == Verdict::NotOk && left.says.contains("the plan adds nothing to it"), "{}", left.says);
}

/// R-fridge carries the faults of K-2 on a 20 A circuit and, through R-wall, of L-4 on a 15 A one: Table 250.122 asks 12 AWG.
#[test]
fn a_grounding_wire_is_held_against_the_largest_breaker_of_all_it_serves() {
    let [_, after] = states_of(BUNGALOW);
    let shared = row(&after, Check::GroundingConductor, "R-fridge");
    assert_eq!(shared.circuits, ["1", "3"]);
    assert_eq!(shared.required.unwrap().words, "12 AWG or thicker");
    assert!(shared.source.cite.ends_with("Table 250.122 and 250.122(C)"), "{}", shared.source.cite);
    assert_eq!(row(&after, Check::GroundingConductor, "R-wall").required.unwrap().words, "14 AWG or thicker");
    let mut thin = after;
    for brought in thin.brought.iter_mut().filter(|brought| brought.route == "R-fridge") {
        brought.gauge = electrical::Gauge::AWG_14;
    }
    assert_eq!(row(&thin, Check::GroundingConductor, "R-fridge").verdict, Verdict::NotOk);
}

/// By hand, 12 A at 120 V are 10 Ω at D-2, 123 ft from the panel. Hot: 246 ft × 3.1940 mΩ = 0.7857 and 0.095 Ω of source:
/// 114/10.8807 = 10.477 A; hot to neutral falls by 114 - 104.77 = 9.23 V. Cold: 246 × 2.3269 mΩ = 0.5724 and 0.03 Ω of the
/// usual supply: 126/10.6024 = 11.884 A, falls by 7.16 V. At L-4 the neutral has lost 91 ft: 10.477 × 0.2907 = 3.05 V hot,
/// 11.884 × 0.2117 = 2.52 V cold, and the ground carries nothing.
#[test]
fn the_readings_of_circuit_3_are_those_of_the_sum_by_hand() {
    let [_, after] = states_of(BUNGALOW);
    let readings = expected_readings(&after);
    let at = |id: &str| readings.iter().find(|reading| reading.box_id == id).unwrap();
    assert_eq!(at("D-2").load.as_deref(), Some("12 A at D-2"));
    let falls = at("D-2").falls_by.clone().unwrap();
    assert_eq!((falls.least, falls.most), (Some(7.1), Some(9.3)));
    let neutral = at("L-4").heavy_load.clone().and_then(|loaded| loaded.ng).unwrap();
    assert_eq!((neutral.least, neutral.most), (Some(2.5), Some(3.1)));
    let quiet = at("L-4").no_load.clone().unwrap();
    assert_eq!(quiet.hn, Amount::between(114.0, 126.0, "V", "114.0 to 126.0 V"));
    assert!(quiet.ng.unwrap().most.unwrap() <= 0.1);
    // No ground, nothing to read against.
    assert!(at("D-2").no_load.as_ref().is_some_and(|quiet| quiet.hg.is_none() && quiet.ng.is_none()));
}

/// By hand: without load nothing falls, however long the runs of a house that nobody measured; 80 % of 15 A are 12 A. P-1 has
/// no ground to read against, K-2 is given one.
#[test]
fn where_no_length_is_known_the_readings_without_load_are_still_told() {
    let [_, after] = states_of(KNOB_AND_TUBE);
    let readings = expected_readings(&after);
    let at = |id: &str| readings.iter().find(|reading| reading.box_id == id).unwrap();
    let supply = Amount::between(114.0, 126.0, "V", "114.0 to 126.0 V");
    let (bare, grounded) = (at("P-1"), at("K-2"));
    assert_eq!(bare.load.as_deref(), Some("12 A at P-1"));
    assert_eq!(bare.find_out.as_deref(), Some("find out the length of the run to P-1"));
    assert_eq!(bare.no_load.clone().unwrap().hn, supply);
    assert!(bare.no_load.as_ref().is_some_and(|quiet| quiet.hg.is_none() && quiet.ng.is_none()));
    assert_eq!(grounded.no_load.clone().unwrap().hg, Some(supply));
    assert_eq!(grounded.no_load.clone().unwrap().ng.unwrap().words, "0.0 to 0.1 V");
    assert!(grounded.heavy_load.is_none() && grounded.falls_by.is_none());
}

/// On a multiwire set the load of one leg raises the other.
#[test]
fn the_light_leg_of_a_multiwire_set_rises_a_little() {
    let [_, after] = states_of(BUNGALOW);
    let readings = expected_readings(&after);
    let refrigerator = readings.iter().find(|reading| reading.box_id == "K-2").unwrap();
    assert_eq!(refrigerator.load.as_deref(), Some("16 A at K-4"));
    assert!(refrigerator.falls_by.as_ref().is_some_and(|falls| falls.most.unwrap() < 0.0));
}

/// By hand: out 100 ft of 12 AWG, 0.1931 Ω at 75 °C and 0.1463 Ω at 0 °C; a loaded test read 2 Ω: at most 2 × 1.1 × 1.216 = 2.675 Ω,
/// at least 1.8 Ω. Weakest: 114/1500 = 0.076 Ω, 2.944 Ω in all: 38.7 A. Strongest: 1.947 Ω: 64.7 A. The cable's length alone
/// would say 114/0.4623 = 246.6 A, and the joint that is bad would not show.
#[test]
fn a_ground_that_was_measured_is_reckoned_as_measured() {
    let sound = one_run("100 ft", 12, "fault_current = \"1500 A\"");
    let poor = sound.replace("ground = \"connected\"", "ground = \"connected\", ground_ohms = 2");
    let reckoned = row(&states_of(&sound)[0], Check::FaultLoop, "A");
    near(reckoned.found.map(|found| found.least).unwrap(), 246.6, 0.2);
    let [before, _] = states_of(&poor);
    let found = row(&before, Check::FaultLoop, "A");
    let current = found.found.unwrap();
    near(current.least, 38.7, 0.1);
    near(current.most, 64.7, 0.1);
    assert_eq!(found.verdict, Verdict::Advice);
    assert!(found.says.contains("100 ft out and back over a ground that was measured at 2 Ω"), "{}", found.says);
}
