//! What must hold of the checks whatever the dwelling.

use crate::dwellings::{BUNGALOW, FLAT, KNOB_AND_TUBE, dwelling_of, one_run, row, states_of, states_of_dwelling};
use calculations::{Check, State, Verdict, checks_of, expected_readings};
use dwelling::Dwelling;

fn weakest(state: &State) -> f64 {
    row(state, Check::FaultLoop, "A").found.and_then(|found| found.least).unwrap_or(f64::NAN)
}

const STATED: &str = "fault_current = \"1000 A\"";

#[test]
fn a_longer_run_never_raises_the_fault_current() {
    let currents: Vec<f64> = [1, 10, 33, 90, 200, 400, 999]
        .map(|feet| weakest(&states_of(&one_run(&format!("{feet} ft"), 12, STATED))[0]))
        .to_vec();
    assert!(currents.windows(2).all(|pair| pair[1] < pair[0]), "{currents:?}");
}

#[test]
fn thicker_wire_never_lowers_the_fault_current_and_never_raises_the_drop() {
    let states = [14, 12, 10, 8, 6].map(|gauge| states_of(&one_run("120 ft", gauge, STATED))[0].clone());
    let currents: Vec<f64> = states.iter().map(weakest).collect();
    assert!(currents.windows(2).all(|pair| pair[1] > pair[0]), "{currents:?}");
    let drops: Vec<Option<f64>> =
        states.iter().map(|state| row(state, Check::VoltageDrop, "A").found.and_then(|found| found.most)).collect();
    assert!(drops.iter().all(Option::is_some) && drops.windows(2).all(|pair| pair[1] < pair[0]), "{drops:?}");
}

#[test]
fn a_stronger_source_never_lowers_the_fault_current() {
    let currents: Vec<f64> = [100, 500, 1000, 10_000, 100_000]
        .map(|amperes| weakest(&states_of(&one_run("60 ft", 12, &format!("fault_current = \"{amperes} A\"")))[0]))
        .to_vec();
    assert!(currents.windows(2).all(|pair| pair[1] > pair[0]), "{currents:?}");
}

/// By hand: 999 ft of 14 AWG out and back are 6.14 Ω hot: 18.6 A, below 135 % of 20 A, however strong the source.
#[test]
fn a_loop_too_long_for_any_source_fails_even_where_the_source_is_unknown() {
    let far = row(&states_of(&one_run("999 ft", 14, ""))[0], Check::FaultLoop, "A");
    assert_eq!(far.verdict, Verdict::NotOk);
    let near = row(&states_of(&one_run("50 ft", 14, ""))[0], Check::FaultLoop, "A");
    assert_eq!(near.verdict, Verdict::NotChecked);
    assert!(near.find_out.unwrap().contains("fault current at the panel"));
}

/// A dwelling with one kind of fact taken away everywhere.
fn without(dwelling: &Dwelling, fact: usize) -> Dwelling {
    let mut less = dwelling.clone();
    less.panels.iter_mut().filter(|_| fact == 0).for_each(|panel| panel.fault_current = None);
    less.circuits.iter_mut().filter(|_| fact == 1).for_each(|circuit| circuit.breaker = None);
    less.circuits.iter_mut().filter(|_| fact == 2).for_each(|circuit| circuit.gauge = None);
    for device_box in &mut less.boxes {
        match fact {
            2 => device_box.run.gauge = None,
            3 => device_box.run.length = None,
            4 => device_box.body.volume = None,
            5 => device_box.fed_by = None,
            _ => {}
        }
    }
    less
}

/// What lacks a fact is not checked, and says what to find out; as it was found, so that no other plan comes between.
#[test]
fn a_fact_that_is_missing_never_turns_into_a_pass() {
    for text in [BUNGALOW, FLAT, KNOB_AND_TUBE] {
        let dwelling = dwelling_of(text);
        let whole = checks_of(&states_of_dwelling(&dwelling)[0]);
        for fact in 0..6 {
            for found in checks_of(&states_of_dwelling(&without(&dwelling, fact))[0]) {
                let before = whole.iter().find(|row| row.check == found.check && row.subject == found.subject);
                let passes = before.is_some_and(|row| row.verdict == Verdict::Ok);
                assert!(found.verdict != Verdict::Ok || passes, "fact {fact}: {found:?}");
            }
        }
        let needs = [
            (1, vec![Check::Breaker, Check::VoltageDrop, Check::Ampacity]),
            (2, vec![Check::Fill, Check::Breaker, Check::VoltageDrop]),
            (3, vec![Check::VoltageDrop, Check::FaultLoop]),
            (4, vec![Check::Fill]),
            (5, vec![Check::VoltageDrop, Check::FaultLoop]),
        ];
        for (fact, checks) in needs {
            let rows = checks_of(&states_of_dwelling(&without(&dwelling, fact))[0]);
            let lacking = rows.iter().filter(|row| checks.contains(&row.check));
            // A box that is too full for what is known of it is too full.
            let known = lacking.filter(|row| row.verdict != Verdict::NotOk);
            for found in known {
                assert_eq!(found.verdict, Verdict::NotChecked, "fact {fact}: {found:?}");
                assert!(found.find_out.as_ref().is_some_and(|what| !what.is_empty()));
            }
        }
    }
}

#[test]
fn every_row_says_something_and_names_its_source() {
    for text in [BUNGALOW, FLAT, KNOB_AND_TUBE] {
        for state in states_of(text) {
            for found in checks_of(&state) {
                assert!(!found.says.is_empty() && !found.source.cite.is_empty(), "{found:?}");
                assert_eq!(found.verdict == Verdict::NotChecked, found.find_out.is_some(), "{found:?}");
                assert_eq!(found.verdict == Verdict::NotChecked, found.found.is_none(), "{found:?}");
            }
        }
    }
}

/// The planner sizes its grounds by its own grades; this sizes them by the rulebook's table and the way they are walked.
#[test]
fn no_ground_that_a_plan_brings_is_thinner_than_its_circuits_ask() {
    let mut seen = 0;
    for text in [BUNGALOW, FLAT, KNOB_AND_TUBE] {
        let [_, after] = states_of(text);
        let brought: Vec<_> =
            checks_of(&after).into_iter().filter(|row| row.check == Check::GroundingConductor).collect();
        for found in brought.iter().filter(|row| row.subject.kind == calculations::SubjectKind::Route) {
            assert_eq!(found.verdict, Verdict::Ok, "{found:?}");
            seen += 1;
        }
    }
    assert!(seen >= 4, "{seen} routes");
}

/// A box that the plan puts its hand into fits what the plan leaves in it.
#[test]
fn no_box_that_a_plan_touches_is_left_too_full() {
    for text in [BUNGALOW, FLAT, KNOB_AND_TUBE] {
        let [_, after] = states_of(text);
        for at in after.dwelling.box_indices().filter(|at| after.touched[at.0]) {
            let found = row(&after, Check::Fill, &after.dwelling.device_box(at).id);
            assert_ne!(found.verdict, Verdict::NotOk, "{found:?}");
        }
    }
}

#[test]
fn readings_are_told_or_say_what_to_find_out() {
    for text in [BUNGALOW, FLAT, KNOB_AND_TUBE] {
        let [_, after] = states_of(text);
        for reading in expected_readings(&after) {
            assert!(reading.no_load.is_some(), "{reading:?}");
            assert_eq!(reading.heavy_load.is_none(), reading.find_out.is_some(), "{reading:?}");
            let ground = reading.no_load.as_ref().is_some_and(|quiet| quiet.ng.is_some());
            assert!(!ground || reading.grounded, "{reading:?}");
        }
    }
}
