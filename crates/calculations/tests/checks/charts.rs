//! The charts: whole drawings that say what they show.

use crate::dwellings::{BUNGALOW, FLAT, KNOB_AND_TUBE, one_run, states_of};
use calculations::{fault_current_chart, leakage_chart};
use dwelling::CircuitIndex;

/// Every drawing of both states of a survey.
fn drawings(text: &str) -> Vec<String> {
    let drawn = states_of(text).into_iter().flat_map(|state| {
        let circuits = (0..state.dwelling.circuits.len()).map(CircuitIndex);
        let mut drawn: Vec<String> = circuits.filter_map(|circuit| fault_current_chart(&state, circuit)).collect();
        drawn.extend(leakage_chart(&state));
        drawn
    });
    drawn.collect()
}

#[test]
fn every_drawing_has_a_title_a_description_and_numbers_only() {
    let all: Vec<String> = [BUNGALOW, FLAT, KNOB_AND_TUBE].into_iter().flat_map(drawings).collect();
    assert!(all.len() >= 5);
    for svg in all {
        assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>\n"));
        assert!(svg.contains("<title id=\"title\">") && svg.contains("<desc id=\"what\">"));
        assert!(!svg.contains("NaN") && !svg.contains("inf\""), "{svg}");
    }
}

/// By hand: 0.114 + 2 × 90 ft × 1.9314 mΩ = 0.4617 Ω at 114 V: 246.9 A; 135 % of 20 A are 27 A, 5 times 100 A.
#[test]
fn a_drawing_tells_its_numbers_to_those_who_do_not_see_it() {
    let [before, _] = states_of(&one_run("90 ft", 12, "fault_current = \"1000 A\""));
    let svg = fault_current_chart(&before, CircuitIndex(0)).unwrap();
    assert!(svg.contains("the weakest with 247 A"), "{svg}");
    assert!(svg.contains("must open from 27 A") && svg.contains("100 A, 5 times, are advised"), "{svg}");
    assert!(svg.contains(">A</text>"));
}

#[test]
fn a_circuit_without_a_ground_has_no_drawing_of_fault_currents() {
    let [before, _] = states_of(BUNGALOW);
    assert_eq!(fault_current_chart(&before, CircuitIndex(2)), None);
}
