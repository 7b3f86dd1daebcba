//! Whatever the numbers, a formula answers or refuses, and a finite question never gets an answer that is no number.

use electrical::formulas::ampacity::{adjustment_percent, correction_percent};
use electrical::formulas::body_current::{BodyWeight, class_a_margin, fibrillation_limit};
use electrical::formulas::breaker_limits::clearing;
use electrical::formulas::conductor_resistance::{Conductor, Form};
use electrical::formulas::dwelling_load::{LoadMethod, VoltAmperes, lighting_circuits, neutral_load};
use electrical::formulas::gfci;
use electrical::formulas::ground_fault_loop::{GroundFaultLoop, Part, Source, Span};
use electrical::formulas::insulation::TemperatureRating;
use electrical::formulas::receptacle_count::least_on_wall;
use electrical::formulas::voltage_drop::{Return, drop, longest_run, smallest_size};
use electrical::network::{BranchCircuit, Fault, Load, Meter, Opening, Place, Run, Supply, Wire};
use electrical::{Amperes, ConductorMetal, Current, Gauge, Impedance, Length, Resistance, ResistancePerLength};
use electrical::{Resistivity, Temperature, TimeSpan, Voltage};
use proptest::prelude::*;

/// Numbers as they come in practice, and any others: endless, no numbers, below nought.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![3 => -10.0..500.0, 1 => any::<f64>()]
}

fn gauge() -> impl Strategy<Value = Gauge> {
    prop::sample::select(Gauge::ALL.to_vec())
}

fn wire() -> impl Strategy<Value = Wire> {
    prop::sample::select(Wire::ALL.to_vec())
}

fn feet() -> impl Strategy<Value = Length> {
    prop_oneof![3 => (0_i64..500).prop_map(Length::feet), 1 => any::<i64>().prop_map(Length::micrometres)]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn conductors_and_drops(gauge in gauge(), celsius in number(), amperes in number(), run in feet(), tinned: bool) {
        let conductor = Conductor { gauge, metal: ConductorMetal::Aluminium, form: Form::Stranded, tinned };
        if let Ok(resistance) = conductor.resistance(Temperature::celsius(celsius)) {
            prop_assert!(resistance.as_ohms_per_metre() > 0.0);
            let current = Current::amperes(amperes);
            if let Ok(found) = drop(Return::TwoWire, current, run, resistance) {
                prop_assert!(found.as_volts() >= 0.0);
            }
            if let Ok(found) = longest_run(Return::TwoWire, Voltage::volts(3.6), current, resistance) {
                prop_assert!(found >= Length::ZERO);
            }
            let k = Resistivity::ohm_circular_mils_per_foot(12.9);
            if let Ok(Some(found)) = smallest_size(Return::TwoWire, Voltage::volts(celsius), current, run, k) {
                prop_assert!(Gauge::ALL.contains(&found));
            }
        }
    }

    #[test]
    fn currents_and_times(amperes in number(), seconds in number(), rating: u32) {
        let current = Current::milliamperes(amperes);
        if let Ok(time) = gfci::longest_time(current) {
            prop_assert!(time.as_seconds() > 0.0 && class_a_margin(current).is_ok_and(|margin| margin > 1.0));
        }
        if let Ok(limit) = fibrillation_limit(BodyWeight::Kg50, TimeSpan::seconds(seconds)) {
            prop_assert!(limit.as_milliamperes() > 0.0);
        }
        if let Ok(verdict) = clearing(Amperes::new(rating), Current::amperes(amperes)) {
            prop_assert!(!verdict.to_string().is_empty());
        }
    }

    #[test]
    fn a_hotter_attic_and_a_larger_bundle_never_carry_more(celsius in -50.0..100.0, more in 0.0..50.0, bundled: u32) {
        for rating in [TemperatureRating::C60, TemperatureRating::C75, TemperatureRating::C90] {
            let factor = |celsius| correction_percent(rating, Temperature::celsius(celsius));
            match (factor(celsius), factor(celsius + more)) {
                (Ok(cooler), Ok(hotter)) => prop_assert!(hotter <= cooler && hotter > 0),
                (Err(_), Ok(_)) => prop_assert!(celsius < -40.0),
                _ => {}
            }
        }
        if let (Ok(fewer), Ok(one_more)) = (adjustment_percent(bundled), adjustment_percent(bundled.saturating_add(1))) {
            prop_assert!(one_more <= fewer);
        }
    }

    #[test]
    fn loads_and_counts(load: u64, other: u64, rating: u32, wall in feet()) {
        let (load, other) = (VoltAmperes::new(load), VoltAmperes::new(other));
        if let Ok(found) = LoadMethod::ANNEX_D.after_demand(load) {
            prop_assert!(found <= load);
        }
        if let Ok(circuits) = lighting_circuits(load, Amperes::new(rating)) {
            prop_assert!(circuits * 120 * u64::from(rating) >= load.get());
        }
        if let Ok(found) = neutral_load(load, other, other) {
            prop_assert!(found >= load);
        }
        if let Ok(count) = least_on_wall(wall) {
            prop_assert!(count >= 0);
        }
    }

    #[test]
    fn a_loops_band_has_its_ends_the_right_way_round(
        volts in number(), amperes in number(), cold in -50.0..50.0, warmer in number(), run in feet(), gauge in gauge(),
        splice in number(),
    ) {
        let part = || vec![Part::Conductor(Conductor::solid_copper(gauge), run)];
        let span = Span { least: Resistance::ohms(0.0), most: Resistance::ohms(splice) };
        let band = GroundFaultLoop {
            least_voltage: Voltage::volts(volts),
            most_voltage: Voltage::volts(volts * 1.05),
            source: Source::AvailableCurrent { least: Current::amperes(amperes), most: Current::amperes(amperes * 2.0) },
            outgoing: part(),
            grounding: part(),
            neutral: vec![Part::Stated(span)],
            coldest: Temperature::celsius(cold),
            hottest: Temperature::celsius(cold + warmer),
        }
        .band();
        if let Ok(band) = band {
            prop_assert!(band.least_current <= band.most_current);
            prop_assert!(band.least_impedance <= band.most_impedance);
            prop_assert!(band.least_touch <= band.most_touch);
            prop_assert!(band.most_touch.as_volts() <= volts * 1.05);
        }
    }

    #[test]
    fn a_circuit_with_any_faults_is_solved_or_refused(
        runs in prop::collection::vec((0_usize..8, 0_i64..200, any::<bool>()), 1..8),
        loads in prop::collection::vec((0_usize..10, wire(), wire(), number()), 0..6),
        opens in prop::collection::vec((0_usize..8, 0_u8..3, wire()), 0..5),
        jumpers in prop::collection::vec((0_usize..10, wire(), wire(), number()), 0..4),
    ) {
        let mut circuit = BranchCircuit::new(Supply::usual());
        let copper = ResistancePerLength::ohms_per_thousand_feet(2.5);
        let (mut openings, mut numbers) = (vec![Opening::PANEL], Vec::new());
        for (from, feet, grounded) in runs {
            let run = Run::three_wire(Length::feet(feet), copper, grounded);
            let (number, opening) = circuit.run(openings[from % openings.len()], run);
            openings.push(opening);
            numbers.push(number);
        }
        for (at, a, b, ohms) in loads {
            let at = openings[at % openings.len()];
            circuit.load(Load { at, between: (a, b), impedance: Impedance::ohms(ohms.abs(), 0.0) });
        }
        for (run, place, wire) in opens {
            let run = numbers[run % numbers.len()];
            let at = [Place::NearEnd(run), Place::FarEnd(run), Place::Device(openings[1])][usize::from(place)];
            circuit.fault(Fault::Open { at, wire });
        }
        for (at, a, b, ohms) in jumpers {
            let at = openings[at % openings.len()];
            circuit.fault(Fault::Jumper { at, between: (a, b), resistance: Resistance::ohms(ohms) });
        }
        if let Ok(solved) = circuit.solve() {
            prop_assert!(solved.solution().residual() < 1e-12);
            for opening in openings {
                let readings = solved.readings(opening, Wire::LegA, Meter::HIGH_IMPEDANCE);
                // Nothing but resistance and stray capacitance: no reading lies above the whole supply.
                prop_assert!(readings.hot_to_neutral.as_volts() < 241.0, "{readings:?}");
                prop_assert!(readings.hot_to_ground.as_volts() < 241.0, "{readings:?}");
                prop_assert!(readings.neutral_to_ground.as_volts() < 241.0, "{readings:?}");
            }
        }
    }
}
