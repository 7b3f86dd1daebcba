//! Published readings of a receptacle in each of its states.

use crate::sketch::{Sketch, read, read_loaded, read_low, seen, to_earth};
use diagnosis::{Certainty, Condition};
use dwelling::{CableKind, GroundFact, GroundSeen, MeterKind};

/// Published: appliance technicians' academy, testing a 120 V receptacle: 120 | 120 | 0 V unloaded, each within 10 %.
#[test]
fn correct_wiring_unloaded_raises_no_fault_and_proves_no_ground() {
    for volts in [108.0, 120.0, 132.0] {
        let said = Sketch::wired_in(CableKind::NmWithGround).then("a", [read(volts, volts, 0.0)]).diagnosed();
        assert_eq!(said.conditions("a"), [Condition::GroundUnverified]);
        assert_eq!(said.ground("a"), (GroundFact::Connected, Certainty::Likely));
    }
}

/// Published: an instrument application note on three receptacle voltages: 118.5 | 120.0 | 1.5 V loaded.
#[test]
fn correct_wiring_under_load_adds_up_and_with_a_sighting_shows_the_ground() {
    let found = [read_loaded(118.5, 120.0, 1.5), seen(GroundSeen::Connected)];
    let said = Sketch::wired_in(CableKind::NmWithGround).then("a", found).diagnosed();
    assert_eq!(said.conditions("a"), [Condition::AsItShouldBe]);
    assert_eq!(said.ground("a"), (GroundFact::Connected, Certainty::Shown));
}

/// Published: question-and-answer page on normal neutral–ground voltage: about 2 V loaded, or a little less.
#[test]
fn a_neutral_at_two_volts_under_load_is_no_fault() {
    for rise in [1.5, 2.0, 2.5] {
        let loaded = read_loaded(120.0 - 2.0 * rise, 120.0 - rise, rise);
        let said = Sketch::wired_in(CableKind::NmWithGround).then("a", [loaded]).diagnosed();
        assert_eq!(said.ground("a"), (GroundFact::Connected, Certainty::Likely));
        assert_eq!(said.sure_of("a", Condition::PoorNeutral), None);
    }
}

/// Published: inspectors' forum, proving a local false ground: 3 to 25 mV is right, above 3 V a problem, 30 to 40 V miswiring.
#[test]
fn neutral_to_ground_goes_from_millivolts_to_a_problem_to_miswiring() {
    let at = |volts| Sketch::wired_in(CableKind::NmWithGround).then("a", [read(120.0, 120.0, volts)]).diagnosed();
    assert_eq!(at(0.003).conditions("a"), [Condition::GroundUnverified]);
    assert_eq!(at(0.025).conditions("a"), [Condition::GroundUnverified]);
    assert_eq!(at(3.5).sure_of("a", Condition::PoorNeutral), Some(Certainty::Likely));
    assert_eq!(at(35.0).sure_of("a", Condition::OpenGround), Some(Certainty::Likely));
}

/// Published: a trade magazine, 2013, on failures in outlet testing: a neutral jumper reads 120 | 120 | 0 V unloaded.
#[test]
fn a_false_ground_unloaded_reads_as_correct_wiring_does() {
    let said = Sketch::wired_in(CableKind::Unknown).then("a", [read(120.0, 120.0, 0.0)]).diagnosed();
    let unverified = said.finding("a", Condition::GroundUnverified).expect("a right reading is not a proof");
    assert!(unverified.look_alikes.iter().any(|other| other.condition == Condition::FalseGround));
    assert_eq!(said.ground("a").0, GroundFact::Unknown);
}

/// By hand: 12 A through 0.15 Ω each way: 120 − 2 × 1.8 = 116.4 V, and a jumper hides the neutral's 1.8 V.
#[test]
fn a_false_ground_under_load_is_shown_by_the_neutral_that_does_not_rise() {
    let found = [read(120.0, 120.0, 0.0), read_loaded(116.4, 116.4, 0.0)];
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("a", found).diagnosed();
    assert_eq!(said.sure_of("a", Condition::FalseGround), Some(Certainty::Shown));
    assert_eq!(said.ground("a"), (GroundFact::False, Certainty::Shown));
    assert!(said.finding("a", Condition::FalseGround).is_some_and(|finding| finding.danger));
}

/// Common practice, no source: 0.05 V is a jumper's own drop; readings that do not add up decide nothing.
#[test]
fn a_join_needs_a_neutral_near_nothing_and_readings_that_add_up() {
    let under_load =
        |loaded| Sketch::wired_in(CableKind::NmTwoWire).then("a", [read(120.0, 120.0, 0.0), loaded]).diagnosed();
    let joined = under_load(read_loaded(116.4, 116.4, 0.05));
    assert_eq!(joined.sure_of("a", Condition::FalseGround), Some(Certainty::Shown));
    let wrong = under_load(read_loaded(116.4, 119.0, 0.0));
    assert_eq!(wrong.sure_of("a", Condition::FalseGround), None);
}

/// Published: trade forum on testing for reversed-polarity false grounds: hot 0 V, neutral 120 V, ground 120 V to true earth.
#[test]
fn only_an_independent_earth_finds_a_reversed_false_ground() {
    let pairs = read(120.0, 120.0, 0.0);
    let without = Sketch::wired_in(CableKind::NmTwoWire).then("a", [pairs.clone()]).diagnosed();
    assert_eq!(without.sure_of("a", Condition::ReversedFalseGround), None);
    let with = Sketch::wired_in(CableKind::NmTwoWire).then("a", [pairs, to_earth(0.0, 120.0, 120.0)]).diagnosed();
    assert_eq!(with.sure_of("a", Condition::ReversedFalseGround), Some(Certainty::Shown));
    assert!(with.says.findings[0].danger);
    assert_eq!(with.ground("a"), (GroundFact::False, Certainty::Shown));
}

/// Published: an interview puzzle on a reversed receptacle: long slot to ground 120 V, short slot to ground 0 V;
/// by hand, hot–neutral 120 V follows.
#[test]
fn hot_and_neutral_reversed_reads_120_0_120() {
    let said = Sketch::wired_in(CableKind::NmWithGround).then("a", [read(120.0, 0.0, 120.0)]).diagnosed();
    assert_eq!(said.sure_of("a", Condition::HotNeutralReversed), Some(Certainty::Likely));
}

/// Published: question-and-answer page on ghost voltages: up to 80 to 85 % of the source; by hand, 96 and 102 V of 120 V.
#[test]
fn the_highest_published_phantom_is_taken_for_a_phantom() {
    for phantom in [96.0, 102.0] {
        let said = Sketch::wired_in(CableKind::NmTwoWire).then("a", [read(120.0, phantom, 10.0)]).diagnosed();
        assert_eq!(said.sure_of("a", Condition::PhantomVolts), Some(Certainty::Likely));
        assert_eq!(said.ground("a"), (GroundFact::None, Certainty::Likely));
    }
}

/// From memory: an open ground reads 120 | 0 | 0 V by a low-impedance meter.
#[test]
fn an_open_ground_reads_nothing_by_a_low_impedance_meter() {
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("a", [read_low(120.0, 0.0, 0.0)]).diagnosed();
    assert_eq!(said.sure_of("a", Condition::OpenGround), Some(Certainty::Shown));
    assert_eq!(said.ground("a"), (GroundFact::None, Certainty::Shown));
}

/// Published: a trade bulletin on phantom voltages, which asks for a low-impedance meter; 60 | 48 V is common practice.
#[test]
fn an_unknown_meter_cannot_tell_a_phantom_from_a_poor_ground() {
    let mut reading = read(120.0, 60.0, 48.0);
    reading.meter = None;
    let said = Sketch::wired_in(CableKind::NmWithGround).then("a", [reading.clone()]).diagnosed();
    let phantom = said.finding("a", Condition::PhantomVolts).expect("60 V may be a phantom");
    assert_eq!(phantom.sure, Certainty::Possible);
    assert!(phantom.next.as_ref().is_some_and(|next| next.what.contains("low-impedance")));
    reading.meter = Some(MeterKind::HighImpedance);
    let collapsed =
        Sketch::wired_in(CableKind::NmWithGround).then("a", [reading, read_low(120.0, 0.0, 0.0)]).diagnosed();
    assert_eq!(collapsed.sure_of("a", Condition::PhantomVolts), Some(Certainty::Shown));
    assert_eq!(collapsed.sure_of("a", Condition::OpenGround), Some(Certainty::Shown));
}

/// Common practice, no source: an open neutral with a load on reads 0 | 120 | 120 V, as hot and ground changed over do.
#[test]
fn an_open_neutral_with_a_load_on_looks_like_hot_and_ground_reversed() {
    let said = Sketch::wired_in(CableKind::NmWithGround).then("a", [read(0.0, 120.0, 120.0)]).diagnosed();
    let open = said.finding("a", Condition::OpenNeutral).expect("the likelier of the two");
    assert!(open.danger);
    assert!(open.look_alikes.iter().any(|other| other.condition == Condition::HotGroundReversed));
}
