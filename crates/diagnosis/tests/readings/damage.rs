//! Cases from practice on broken conductors: between which boxes the break lies, and whom it can hurt.

use crate::sketch::{Sketch, read, read_low, seen, tester};
use diagnosis::{Certainty, Condition, Site};
use dwelling::{CableKind, CircuitIndex, Feed, GroundFact, GroundSeen, PanelIndex, ProtectiveBreaker, TesterVerdict};

/// Common practice, no source: downstream of an open neutral everything is dead too.
#[test]
fn an_open_neutral_lies_between_the_last_whole_box_and_the_first_dead_one() {
    let said = Sketch::wired_in(CableKind::NmWithGround)
        .then("first", [read(120.0, 120.0, 0.0)])
        .then("unread", [])
        .then("third", [read(30.0, 120.0, 60.0)])
        .then("last", [read(25.0, 120.0, 55.0)])
        .diagnosed();
    let place = said.finding("third", Condition::OpenNeutral).expect("it is the first that is dead");
    assert_eq!(said.next_boxes(place), ["third", "first", "unread"]);
    assert!(place.because.iter().any(|evidence| evidence.contains("`last`")));
    let behind = said.finding("last", Condition::OpenNeutral).expect("it is dead too");
    assert!(behind.says.contains("`third`") && behind.next.is_none() && behind.danger);
}

/// Common practice, no source: the break shows first at the box nearest the panel.
#[test]
fn three_dead_boxes_in_a_row_share_one_break() {
    let dead = || [read_low(0.0, 0.0, 0.0)];
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("a", dead()).then("b", dead()).then("c", dead()).diagnosed();
    assert!(said.finding("c", Condition::OpenHot).is_some_and(|finding| finding.says.contains("`a`")));
    assert_eq!(said.says.findings.iter().filter(|finding| finding.next.is_some()).count(), 1);
}

/// Common practice, no source: a whole box between two dead ones makes two breaks.
#[test]
fn a_break_behind_a_whole_box_is_a_break_of_its_own() {
    let said = Sketch::wired_in(CableKind::NmTwoWire)
        .then("dead device", [read_low(0.0, 0.0, 0.0)])
        .then("whole", [read_low(120.0, 0.0, 0.0)])
        .then("dead end", [read_low(0.0, 0.0, 0.0)])
        .diagnosed();
    let second = said.finding("dead end", Condition::OpenHot).expect("it is dead");
    assert!(second.says.contains("between `whole`"));
}

/// Common practice, no source: everything behind an open hot conductor reads nothing.
#[test]
fn an_open_hot_conductor_is_placed_the_same_way() {
    let said = Sketch::wired_in(CableKind::NmTwoWire)
        .then("first", [read_low(120.0, 0.0, 0.0)])
        .then("second", [read_low(0.0, 0.0, 0.0)])
        .diagnosed();
    let place = said.finding("second", Condition::OpenHot).expect("it is dead");
    assert_eq!(place.sure, Certainty::Shown);
    assert_eq!(said.next_boxes(place), ["second", "first"]);
}

/// By hand: loads of 2 : 3 in series on 240 V take 96 V and 144 V; the owner's weblog of 2015 saw a lamp brighten.
#[test]
fn legs_that_deviate_opposite_ways_are_an_open_shared_neutral_and_a_danger() {
    let mut sketch = Sketch::wired_in(CableKind::NmTwoWire).multiwire().then("split", []);
    sketch = sketch.then("low leg", [read(96.0, 40.0, 30.0)]).then("high leg", [read(144.0, 70.0, 60.0)]);
    sketch.dwelling.boxes[2].circuit = Some(CircuitIndex(1));
    let said = sketch.diagnosed();
    let finding = said.anywhere(Condition::OpenNeutral).expect("the legs add up to 240 V");
    assert_eq!(finding.at, Site::Circuit(CircuitIndex(0)));
    assert!(finding.danger && finding.because[0].contains("240 V"));
    assert!(said.finding("high leg", Condition::OverVoltage).is_some_and(|over| over.danger));
}

/// By hand: 118 V and 122 V are each 2 V off their mean, an uneven load on a sound neutral.
#[test]
fn legs_a_little_apart_are_no_open_neutral() {
    let mut sketch = Sketch::wired_in(CableKind::NmWithGround).multiwire();
    sketch = sketch.then("one", [read(118.0, 119.0, 1.0)]).then("other", [read(122.0, 123.0, 1.0)]);
    sketch.dwelling.boxes[1].circuit = Some(CircuitIndex(1));
    assert_eq!(sketch.diagnosed().anywhere(Condition::OpenNeutral), None);
}

/// Published: a hobby forum, 2002: old two-wire circuits often leave the panel as half of a three-wire pair.
#[test]
fn a_single_pole_gfci_breaker_on_a_shared_neutral_is_found() {
    let mut sketch = Sketch::wired_in(CableKind::NmTwoWire).multiwire().then("a", []);
    sketch.dwelling.circuits[1].fitted = Some(ProtectiveBreaker::Gfci);
    let said = sketch.diagnosed();
    let finding = said.anywhere(Condition::SharedNeutralSinglePole).expect("one pole cannot watch a shared neutral");
    assert_eq!(finding.at, Site::Circuit(CircuitIndex(1)));
    sketch.dwelling.circuits[1].fitted = Some(ProtectiveBreaker::GfciTwoPole);
    assert_eq!(sketch.diagnosed().anywhere(Condition::SharedNeutralSinglePole), None);
}

/// Published: an inspectors' journal's forum on a 1978 condominium: several outlets showed a false ground and one an open
/// ground; the fault was in that one.
#[test]
fn one_open_ground_among_false_grounds_is_the_box_to_open() {
    let false_ground = || [tester(TesterVerdict::FalseGround)];
    let said = Sketch::wired_in(CableKind::NmWithGround)
        .then("bed 1", false_ground())
        .then("bed 2", [tester(TesterVerdict::OpenGround)])
        .then("bed 3", false_ground())
        .then("bed 4", false_ground())
        .diagnosed();
    let odd = said.finding("bed 2", Condition::OddOneOut).expect("it differs from its neighbours");
    assert_eq!(said.next_boxes(odd), ["bed 2", "bed 1"]);
    assert!(odd.danger);
    assert_eq!(said.ground("bed 4"), (GroundFact::False, Certainty::Likely));
    assert_eq!(said.sure_of("bed 3", Condition::OddOneOut), None);
}

/// Published: a home-repair forum, 2007: a bathroom kept reading an open ground, since a hidden splice broke the armor.
#[test]
fn a_ground_that_stops_between_two_boxes_names_both_and_what_lies_between() {
    let said = Sketch::wired_in(CableKind::ArmoredWithStrip)
        .then("hall", [read(120.0, 120.0, 0.0)])
        .then("splice", [])
        .then("bath", [read_low(120.0, 0.0, 0.0)])
        .diagnosed();
    let stop = said.finding("bath", Condition::UpstreamBreak).expect("the hall is grounded and the bath is not");
    assert_eq!(said.next_boxes(stop), ["hall", "splice", "bath"]);
    assert_eq!(said.ground("bath").0, GroundFact::Loose);
}

/// Published: a contractor's article, 2012: armor pulled into boxes without a connector in a flipped 1920s condominium.
#[test]
fn armor_without_a_connector_grounds_nothing_as_it_is() {
    let said = Sketch::wired_in(CableKind::ArmoredWithStrip)
        .then("kitchen", [tester(TesterVerdict::Correct), seen(GroundSeen::MetalLoose)])
        .diagnosed();
    assert_eq!(said.ground("kitchen").0, GroundFact::Loose);
    assert!(said.finding("kitchen", Condition::LooseGround).is_some_and(|finding| finding.next.is_some()));
}

/// Common practice, no source: a splice is opened from both ends.
#[test]
fn an_open_ground_behind_a_sound_one_names_both_boxes() {
    let said = Sketch::wired_in(CableKind::NmWithGround)
        .then("sound", [read(120.0, 120.0, 0.0)])
        .then("open", [tester(TesterVerdict::OpenGround)])
        .diagnosed();
    let finding = said.finding("open", Condition::OpenGround).expect("the tester says so");
    assert_eq!(said.next_boxes(finding), ["open", "sound"]);
}

/// Published: instrument maker's manual, under 1 Ω for people; the figure between is common practice, no source.
#[test]
fn a_ground_above_one_ohm_is_poor() {
    let measured = |milliohms| dwelling::Reading {
        ground_impedance: Some(electrical::Ohms::milliohms(milliohms)),
        ..read(120.0, 120.0, 0.0)
    };
    let at = |milliohms| Sketch::wired_in(CableKind::MetalConduit).then("a", [measured(milliohms)]).diagnosed();
    assert_eq!(at(1_001).ground("a"), (GroundFact::Poor, Certainty::Shown));
    assert_eq!(at(1_000).sure_of("a", Condition::PoorGround), None);
}

/// Common practice, no source: three pairs at line voltage fit no state of a 120 V circuit.
#[test]
fn readings_that_fit_nothing_ask_to_be_taken_again() {
    let said = Sketch::wired_in(CableKind::NmWithGround).then("a", [read(120.0, 120.0, 120.0)]).diagnosed();
    let finding = said.finding("a", Condition::ReadingsDisagree).expect("nothing reads like this");
    assert!(finding.next.is_some());
    assert_eq!(said.ground("a").0, GroundFact::Unknown);
}

/// A box fed from nowhere known is no reason to guess.
#[test]
fn a_box_of_unknown_feed_is_asked_about() {
    let mut sketch = Sketch::wired_in(CableKind::NmWithGround).then("a", []);
    sketch.last().fed_by = None;
    let said = sketch.diagnosed();
    assert_eq!(said.ground("a").0, GroundFact::Unknown);
    let ask = said.finding("a", Condition::GroundUnverified).expect("somebody must look");
    assert!(ask.next.as_ref().is_some_and(|next| next.what.contains("what feeds this box")));
    sketch.last().fed_by = Some(Feed::Panel(PanelIndex(0)));
    assert_ne!(sketch.diagnosed().finding("a", Condition::GroundUnverified), None);
}
