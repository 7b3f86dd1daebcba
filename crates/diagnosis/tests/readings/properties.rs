//! What holds for every dwelling, whatever was written down.

use crate::sketch::Sketch;
use diagnosis::{Condition, diagnose, next_visit};
use dwelling::{
    BoxIndex, CableKind, CircuitIndex, Dwelling, Feed, GroundFact, GroundSeen, LoadState, MeterKind, PanelIndex,
    Reading, TesterVerdict,
};
use electrical::{Ohms, Volts};
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

/// Readings as they come, and as no meter ever gave them.
fn any_volts() -> impl Strategy<Value = Volts> {
    prop_oneof![
        6 => select(vec![0, 50, 1_500, 3_000, 7_000, 40_000, 62_000, 96_000, 116_400, 118_500, 120_000, 144_000])
            .prop_map(Volts::millivolts),
        1 => any::<i64>().prop_map(Volts::millivolts),
    ]
}

prop_compose! {
    fn any_reading()(
        pairs in (of(any_volts()), of(any_volts()), of(any_volts()), of(any_volts())),
        earth in (of(any_volts()), of(any_volts()), of(any_volts())),
        ground_impedance in of(any::<i64>().prop_map(Ohms::milliohms)),
        tester in of(select(TesterVerdict::ALL)),
        load in of(select(LoadState::ALL)),
        meter in of(select(MeterKind::ALL)),
        ground in of(select(GroundSeen::ALL)),
        buttons in (of(any::<bool>()), of(any::<bool>())),
    ) -> Reading {
        Reading {
            hot_neutral: pairs.0,
            hot_ground: pairs.1,
            neutral_ground: pairs.2,
            hot_box: pairs.3,
            hot_earth: earth.0,
            neutral_earth: earth.1,
            ground_earth: earth.2,
            ground_impedance,
            tester,
            load,
            meter,
            ground,
            tester_trips_gfci: buttons.0,
            own_test_trips: buttons.1,
        }
    }
}

/// A box: its wiring method, where it is fed from, its circuit, its readings.
type BoxPlan = (Option<CableKind>, Option<usize>, Option<usize>, Vec<Reading>);

fn any_box() -> impl Strategy<Value = BoxPlan> {
    (of(select(CableKind::ALL)), of(0..9_usize), of(0..2_usize), prop::collection::vec(any_reading(), 0..4))
}

prop_compose! {
    fn any_dwelling()(
        cable in select(CableKind::ALL),
        ground_bar in of(any::<bool>()),
        multiwire in any::<bool>(),
        boxes in prop::collection::vec(any_box(), 0..9),
    ) -> Dwelling {
        let mut sketch = Sketch::wired_in(cable).multiwire();
        sketch.dwelling.panels[0].ground_bar = ground_bar;
        if !multiwire {
            sketch.dwelling.circuits[1].shares_neutral_with = None;
        }
        for (place, (cable, from, circuit, found)) in boxes.into_iter().enumerate() {
            sketch = sketch.then(&format!("box {place}"), found);
            let added = sketch.last();
            added.run.cable = cable;
            added.circuit = circuit.map(CircuitIndex);
            added.fed_by = from.map(|from| match from.checked_sub(1) {
                Some(from) if from < place => Feed::Box(BoxIndex(from)),
                _ => Feed::Panel(PanelIndex(0)),
            });
        }
        sketch.dwelling
    }
}

/// The dwelling without what speaks for a ground: sightings of a sound one, and `correct` on a tester.
fn without_support(dwelling: &Dwelling) -> Dwelling {
    let mut without = dwelling.clone();
    for reading in without.boxes.iter_mut().flat_map(|device_box| &mut device_box.found) {
        if matches!(reading.ground, Some(GroundSeen::Connected | GroundSeen::MetalTight)) {
            reading.ground = None;
        }
        if reading.tester == Some(TesterVerdict::Correct) {
            reading.tester = None;
        }
    }
    without
}

proptest! {
    #[test]
    fn every_box_gets_one_ground_and_nothing_panics(dwelling in any_dwelling()) {
        let said = diagnose(&dwelling);
        prop_assert_eq!(said.ground.len(), dwelling.boxes.len());
        prop_assert!(said.ground.iter().all(|state| !state.because.is_empty()));
    }

    #[test]
    fn every_unknown_ground_is_named_in_a_next_check_and_on_the_next_visit(dwelling in any_dwelling()) {
        let said = diagnose(&dwelling);
        let visit = next_visit(&said, &dwelling);
        for (place, state) in said.ground.iter().enumerate() {
            let named = visit.iter().any(|check| check.boxes.contains(&BoxIndex(place)));
            prop_assert!(state.fact != GroundFact::Unknown || named, "box {} is not named", place);
        }
    }

    #[test]
    fn a_box_nobody_read_or_opened_is_never_connected(dwelling in any_dwelling()) {
        let said = diagnose(&dwelling);
        for (device_box, state) in dwelling.boxes.iter().zip(&said.ground) {
            prop_assert!(!device_box.found.is_empty() || state.fact != GroundFact::Connected);
        }
    }

    #[test]
    fn taking_support_away_never_makes_an_unknown_ground_connected(dwelling in any_dwelling()) {
        let with = diagnose(&dwelling);
        let without = diagnose(&without_support(&dwelling));
        for (before, after) in with.ground.iter().zip(&without.ground) {
            prop_assert!(after.fact != GroundFact::Connected || before.fact != GroundFact::Unknown);
        }
    }

    #[test]
    fn whatever_leaves_doubt_says_what_else_it_could_be(dwelling in any_dwelling()) {
        for finding in diagnose(&dwelling).findings {
            let settled = finding.sure == diagnosis::Certainty::Shown || finding.says.contains("same break");
            prop_assert!(settled || !finding.look_alikes.is_empty(), "{:?}", finding.condition);
        }
    }

    #[test]
    fn no_box_without_a_wiring_method_to_the_panel_is_connected_by_readings_alone(dwelling in any_dwelling()) {
        let mut bare = dwelling;
        for device_box in &mut bare.boxes {
            device_box.run.cable = Some(CableKind::NmTwoWire);
        }
        prop_assert!(diagnose(&bare).ground.iter().all(|state| state.fact != GroundFact::Connected));
    }

    #[test]
    fn a_jumper_that_was_seen_last_is_always_a_danger(dwelling in any_dwelling()) {
        let mut jumpered = dwelling;
        if let Some(device_box) = jumpered.boxes.first_mut() {
            device_box.found.push(Reading { ground: Some(GroundSeen::Jumper), ..Reading::default() });
            let said = diagnose(&jumpered);
            prop_assert_eq!(said.ground[0].fact, GroundFact::False);
            let shown = said.findings_at(BoxIndex(0)).any(|f| f.condition == Condition::FalseGround && f.danger);
            prop_assert!(shown);
        }
    }
}
