//! Places at which a grounding conductor may and may not be connected.

use dwelling::SourceKind;
use electrical::{Amperes, Gauge, Length};
use rulebook::{CodeInForce, ConnectionPlace, Edition, GroundConnection, Lawful, SourceFacts, ground_connection};

/// A verified 14 AWG ground in a box of another circuit from the same panel, for a 15 A circuit.
fn next_door() -> SourceFacts {
    SourceFacts {
        place: ConnectionPlace::BoxOfAnotherCircuit,
        same_panel: Some(true),
        verified: Some(true),
        from_entry: None,
        gauge: Some(Gauge::AWG_14),
        through_metal: false,
        breaker: Some(Amperes::new(15)),
    }
}

fn source(kind: SourceKind) -> SourceFacts {
    SourceFacts { place: ConnectionPlace::Source(kind), gauge: None, ..next_door() }
}

fn asked(facts: SourceFacts) -> GroundConnection {
    ground_connection(facts, &CodeInForce::published(Edition::Nec2020))
}

/// Published: trade forum thread 116386: from 2014, another circuit from the same panel.
#[test]
fn a_grounded_box_of_another_circuit_from_the_same_panel_is_a_place_from_2014() {
    for edition in Edition::ALL.into_iter().filter(|edition| (2014..=2023).contains(&edition.year())) {
        let answer = ground_connection(next_door(), &CodeInForce::published(edition));
        assert_eq!((answer.lawful, answer.size), (Lawful::Yes, Some(Gauge::AWG_14)), "{edition}");
        assert!(answer.cites.iter().any(|cite| cite.section == "250.130(C)(4)"));
    }
}

/// Published: trade forum thread 116386, on the same-enclosure condition and on 14 AWG for a 20 A circuit.
#[test]
fn another_panel_and_a_ground_too_thin_are_no_places() {
    assert_eq!(asked(SourceFacts { same_panel: Some(false), ..next_door() }).lawful, Lawful::No);
    let thin = asked(SourceFacts { breaker: Some(Amperes::new(20)), ..next_door() });
    assert_eq!(thin.lawful, Lawful::No);
    assert!(thin.why.contains("14 AWG") && thin.why.contains("12 AWG"), "{}", thin.why);
    assert_eq!(asked(SourceFacts { verified: Some(false), ..next_door() }).lawful, Lawful::No);
}

#[test]
fn what_nobody_has_looked_at_is_not_checked() {
    for unknown in [
        SourceFacts { same_panel: None, ..next_door() },
        SourceFacts { verified: None, ..next_door() },
        SourceFacts { gauge: None, ..next_door() },
        SourceFacts { breaker: None, ..next_door() },
        SourceFacts { breaker: None, ..source(SourceKind::GroundBar) },
        SourceFacts { verified: None, ..source(SourceKind::ElectrodeSystem) },
        SourceFacts { from_entry: None, ..source(SourceKind::WaterPipe) },
    ] {
        assert_eq!(asked(unknown).lawful, Lawful::NotChecked, "{unknown:?}");
    }
}

/// Published: ecmweb.com, equipment grounding, part 3, and diychatroom.com thread 153678, for the list.
#[test]
fn bar_electrode_conductor_and_service_neutral_are_places() {
    for kind in
        [SourceKind::GroundBar, SourceKind::ElectrodeConductor, SourceKind::ElectrodeSystem, SourceKind::ServiceNeutral]
    {
        assert_eq!(asked(source(kind)).lawful, Lawful::Yes, "{kind}");
    }
    let other_panel = SourceFacts { same_panel: Some(false), ..source(SourceKind::GroundBar) };
    assert_eq!(asked(other_panel).lawful, Lawful::No);
}

/// Published: electricallicenserenewal.com, NEC content 263 and 1456: five feet from where the pipe enters.
#[test]
fn a_water_pipe_is_a_place_within_five_feet_of_its_entrance() {
    let pipe = |feet, inches| SourceFacts {
        from_entry: Some(Length::feet_and_inches(feet, inches)),
        ..source(SourceKind::WaterPipe)
    };
    assert_eq!(asked(pipe(5, 0)).lawful, Lawful::Yes);
    assert_eq!(asked(pipe(5, 1)).lawful, Lawful::No);
    assert_eq!(asked(SourceFacts { verified: None, ..pipe(3, 0) }).lawful, Lawful::NotChecked);
}

/// Published: diy.stackexchange.com/questions/141114: a rod of its own is no substitute for an equipment ground.
#[test]
fn a_lone_rod_and_other_metal_are_never_places() {
    for kind in [SourceKind::LoneRod, SourceKind::OtherMetal] {
        for breaker in [None, Some(Amperes::new(15))] {
            let answer = asked(SourceFacts { breaker, ..source(kind) });
            assert_eq!((answer.lawful, answer.size), (Lawful::No, None), "{kind}");
        }
    }
}

/// Published: life-improver.com/diy/grounding-a-3-prong-dryer-plug: one conductor for several circuits, sized for the largest.
#[test]
fn the_conductor_is_sized_for_the_largest_breaker_it_serves() {
    let dryer = SourceFacts { breaker: Some(Amperes::new(30)), ..source(SourceKind::ElectrodeConductor) };
    assert_eq!(asked(dryer).size, Some(Gauge::AWG_10));
}

#[test]
fn a_box_of_the_same_circuit_is_read_two_ways() {
    let same = SourceFacts { place: ConnectionPlace::BoxOfTheSameCircuit, ..next_door() };
    assert_eq!(asked(same).lawful, Lawful::Disputed);
}

/// Published: diychatroom.com thread 153678, the five places of 2011.
#[test]
fn before_2014_another_circuit_is_no_place_and_the_others_are() {
    for edition in [Edition::Nec2008, Edition::Nec2011] {
        let code = CodeInForce::published(edition);
        assert_eq!(ground_connection(next_door(), &code).lawful, Lawful::No);
        assert_eq!(ground_connection(source(SourceKind::GroundBar), &code).lawful, Lawful::Yes);
    }
}

/// No source: the list of 2026 could not be confirmed.
#[test]
fn under_2026_no_place_is_checked() {
    let code = CodeInForce::published(Edition::Nec2026);
    for facts in
        [next_door(), source(SourceKind::GroundBar), source(SourceKind::WaterPipe), source(SourceKind::LoneRod)]
    {
        assert_eq!(ground_connection(facts, &code).lawful, Lawful::NotChecked);
    }
}
