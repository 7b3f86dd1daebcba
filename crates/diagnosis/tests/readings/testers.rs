//! Cases from practice on plug-in testers, test buttons and meters.

use crate::sketch::{Sketch, read, seen, tester, to_earth};
use diagnosis::{Certainty, Condition};
use dwelling::{CableKind, GroundFact, GroundSeen, Holding, LoadState, MeterKind, Overcurrent, Reading, TesterVerdict};
use electrical::Volts;

/// Published: a home inspector's article, 2008: ten GFCIs in a two-wire 1956 house were condemned by a plug-in tester, and
/// all ten passed on their own button.
#[test]
fn ten_gfcis_that_a_tester_cannot_trip_are_not_condemned() {
    let tested = Reading { tester_trips_gfci: Some(false), own_test_trips: Some(true), ..Reading::default() };
    let mut sketch = Sketch::wired_in(CableKind::NmTwoWire);
    for number in 1..=10 {
        sketch = sketch.then(&format!("gfci {number}"), [tested.clone()]);
        sketch.last().holds = Holding::Gfci;
    }
    let said = sketch.diagnosed();
    for number in 1..=10 {
        assert_eq!(said.conditions(&format!("gfci {number}")), [Condition::GfciTestNotPossible]);
    }
    assert!(said.says.findings.iter().all(|finding| finding.next.is_none() && !finding.danger));
}

/// Published: a question-and-answer article, 2006: the device's own test with a lamp plugged in is the result that counts.
#[test]
fn a_device_that_fails_its_own_test_is_a_danger() {
    let failed = Reading { own_test_trips: Some(false), ..Reading::default() };
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("bath", [failed]).diagnosed();
    let finding = said.finding("bath", Condition::GfciDoesNotTrip).expect("its own test failed");
    assert!(finding.danger && finding.sure == Certainty::Shown);
    assert!(finding.next.as_ref().is_some_and(|next| next.what.contains("lamp")));
}

/// Published: inspectors' forum: a plug-in tester tripped the only GFCI of an ungrounded 1920s house.
#[test]
fn a_tester_that_trips_a_gfci_in_a_house_without_grounds_is_a_warning() {
    let trips = Reading { tester_trips_gfci: Some(true), ..Reading::default() };
    let said = Sketch::wired_in(CableKind::KnobAndTube).then("bath", [trips]).diagnosed();
    let finding = said.finding("bath", Condition::FalseGround).expect("something leads to the neutral or to a pipe");
    assert_eq!(said.ground("bath").0, GroundFact::Unknown);
    assert!(finding.danger);
    assert!(finding.look_alikes.iter().any(|other| other.condition == Condition::GroundByPipeOrRod));
}

/// Published: an inspector's article: three testers showed only an open ground at an ungrounded, reversed outlet.
#[test]
fn open_ground_on_a_tester_says_nothing_of_polarity() {
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("a", [tester(TesterVerdict::OpenGround)]).diagnosed();
    let unseen = said.anywhere(Condition::TesterCannotTell).expect("polarity was not seen");
    assert_eq!(said.next_boxes(unseen), ["a"]);
    let found = [tester(TesterVerdict::OpenGround), to_earth(0.0, 120.0, 0.0)];
    let checked = Sketch::wired_in(CableKind::NmTwoWire).then("a", found).diagnosed();
    assert_eq!(checked.sure_of("a", Condition::HotNeutralReversed), Some(Certainty::Shown));
    assert_eq!(checked.anywhere(Condition::TesterCannotTell), None);
}

/// Published: an instrument maker's frequently asked questions, 2013: an indication that the legend does not list.
#[test]
fn an_unlisted_indication_points_to_a_loose_neutral_here_or_before() {
    let said =
        Sketch::wired_in(CableKind::NmTwoWire).then("a", []).then("b", [tester(TesterVerdict::NotListed)]).diagnosed();
    let finding = said.finding("b", Condition::PoorNeutral).expect("loads feed back through a loose neutral");
    assert_eq!(said.next_boxes(finding), ["b", "a"]);
    assert!(finding.next.as_ref().is_some_and(|next| next.what.starts_with("unplug")));
}

/// Published: a trade magazine, 2013, and a trade forum, 2012: a bedroom outlet read `correct` for some thirty years with
/// its ground terminal live.
#[test]
fn correct_on_a_tester_where_no_ground_can_be_is_suspicious() {
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("bed", [tester(TesterVerdict::Correct)]).diagnosed();
    assert_eq!(said.ground("bed").0, GroundFact::Unknown);
    let finding = said.finding("bed", Condition::GroundContradicted).expect("two-wire cable brings no ground");
    assert!(finding.danger);
    for other in [Condition::FalseGround, Condition::ReversedFalseGround] {
        assert!(finding.look_alikes.iter().any(|alike| alike.condition == other));
    }
}

/// Published: an engineer's weblog: a computer case at half the line voltage to a radiator, from its filter.
#[test]
fn half_the_line_voltage_on_a_case_is_a_phantom_and_not_a_live_enclosure() {
    let leak =
        Reading { ground_earth: Some(Volts::new(60)), meter: Some(MeterKind::HighImpedance), ..Reading::default() };
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("desk", [leak]).diagnosed();
    assert_eq!(said.sure_of("desk", Condition::LiveEnclosure), None);
    assert_eq!(said.sure_of("desk", Condition::PhantomVolts), Some(Certainty::Likely));
}

/// Published: trade forum on a person locked on between two appliances: 120 V from case to case that holds is a fault.
#[test]
fn line_voltage_on_a_case_that_holds_under_load_is_a_live_enclosure() {
    let holds = Reading {
        ground_earth: Some(Volts::new(120)),
        meter: Some(MeterKind::LowImpedance),
        load: Some(LoadState::None),
        ..Reading::default()
    };
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("fridge", [holds]).diagnosed();
    let finding = said.finding("fridge", Condition::LiveEnclosure).expect("the case is live");
    assert!(finding.danger && finding.sure == Certainty::Shown);
}

/// Published: a newspaper column, 2009, on neutral fusing before 1928; the tester's indication is common practice.
#[test]
fn a_whole_circuit_with_an_open_neutral_in_a_fuse_box_may_be_a_neutral_fuse() {
    let mut sketch = Sketch::wired_in(CableKind::KnobAndTube)
        .then("a", [tester(TesterVerdict::OpenNeutral)])
        .then("b", [tester(TesterVerdict::HotGroundReversed)]);
    assert_eq!(sketch.diagnosed().anywhere(Condition::NeutralFuse), None);
    sketch.dwelling.panels[0].overcurrent = Some(Overcurrent::Fuses);
    let said = sketch.diagnosed();
    let finding = said.anywhere(Condition::NeutralFuse).expect("every box of the circuit lacks its neutral");
    assert!(finding.danger && finding.sure == Certainty::Likely);
    let one_whole = sketch.then("c", [tester(TesterVerdict::OpenGround)]).diagnosed();
    assert_eq!(one_whole.anywhere(Condition::NeutralFuse), None);
}

/// Published: an inspectors' forum on home-bound computer users: an analyzer said all is well by screw contact alone.
#[test]
fn a_tester_on_armor_of_unknown_make_proves_nothing() {
    let found = [tester(TesterVerdict::Correct), seen(GroundSeen::NotOpened)];
    let said = Sketch::wired_in(CableKind::ArmoredUnknown).then("a", found).diagnosed();
    assert_eq!(said.ground("a").0, GroundFact::Unknown);
    let finding = said.anywhere(Condition::PossibleArmorGround).expect("its armor may be a ground");
    assert!(finding.next.as_ref().is_some_and(|next| next.what.contains("strip")));
}

/// Published: a do-it-yourself article tells readers to bond to armor because a lamp lights; the practice is wrong.
#[test]
fn a_lamp_that_lights_from_hot_to_box_does_not_make_armor_a_ground() {
    let lamp = Reading { hot_box: Some(Volts::new(118)), meter: Some(MeterKind::TestLamp), ..Reading::default() };
    let unknown = Sketch::wired_in(CableKind::ArmoredUnknown).then("a", [lamp.clone()]).diagnosed();
    assert_eq!(unknown.ground("a").0, GroundFact::Unknown);
    let path = unknown.finding("a", Condition::PossibleArmorGround).expect("the box has a path of some kind");
    assert_eq!(path.sure, Certainty::Possible);
    let stripless = Sketch::wired_in(CableKind::ArmoredNoStrip).then("a", [lamp]).diagnosed();
    assert_eq!(stripless.ground("a").0, GroundFact::None);
}

/// Published: a question-and-answer thread: one probe in the air shows about 2 V on neutral and almost 20 V on hot.
#[test]
fn a_single_reading_to_nothing_raises_no_alarm() {
    let air = Reading { hot_earth: Some(Volts::new(20)), neutral_earth: Some(Volts::new(2)), ..read(123.0, 0.0, 0.0) };
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("a", [air]).diagnosed();
    assert!(said.says.findings.iter().all(|finding| !finding.danger));
}

/// Common practice, no source: without a ground to compare with, a load on the floating terminal reads as a reversal does.
#[test]
fn a_reversal_on_a_tester_is_less_sure_where_no_ground_can_be() {
    let reversed = || [tester(TesterVerdict::HotNeutralReversed)];
    let on = |cable| Sketch::wired_in(cable).then("a", reversed()).diagnosed();
    let sure = |cable| on(cable).sure_of("a", Condition::HotNeutralReversed);
    assert_eq!(sure(CableKind::NmWithGround), Some(Certainty::Likely));
    assert_eq!(sure(CableKind::NmTwoWire), Some(Certainty::Possible));
}
