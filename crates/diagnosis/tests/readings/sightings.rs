//! What was seen in a box, weighed against wiring method and readings.

use crate::sketch::{Sketch, read, seen, tester};
use diagnosis::{Certainty, Condition, next_visit};
use dwelling::{CableKind, GroundFact, GroundSeen, TesterVerdict};

/// Common practice, no source: a ground loose in one box is loose for every box behind it.
#[test]
fn a_ground_loose_upstream_connects_nothing_downstream() {
    let behind = |found: Vec<dwelling::Reading>| {
        let sketch = Sketch::wired_in(CableKind::NmWithGround).then("first", [seen(GroundSeen::Unconnected)]);
        sketch.then("behind", found).diagnosed()
    };
    assert_eq!(behind(vec![]).ground("behind"), (GroundFact::Loose, Certainty::Likely));
    assert_eq!(behind(vec![seen(GroundSeen::Connected)]).ground("behind"), (GroundFact::Loose, Certainty::Likely));
    let contradictory = behind(vec![read(120.0, 120.0, 0.0)]);
    assert_eq!(contradictory.ground("behind"), (GroundFact::Unknown, Certainty::Possible));
    assert!(contradictory.says.findings_at(contradictory.at("behind")).any(|finding| finding.next.is_some()));
}

/// Common practice, no source: a conductor cut off or folded behind the clamp is easily overlooked.
#[test]
fn no_ground_seen_on_grounded_cable_is_looked_at_again() {
    let said = Sketch::wired_in(CableKind::NmWithGround).then("a", [seen(GroundSeen::NoneSeen)]).diagnosed();
    assert_eq!(said.ground("a"), (GroundFact::None, Certainty::Likely));
    let finding = said.finding("a", Condition::GroundContradicted).expect("the cable should bring one");
    assert_eq!(finding.look_alikes[0].condition, Condition::CutOffGround);
    assert!(finding.next.is_some());
}

/// Common practice, no source.
#[test]
fn no_ground_seen_and_none_brought_is_shown() {
    let said = Sketch::wired_in(CableKind::KnobAndTube).then("a", [seen(GroundSeen::NoneSeen)]).diagnosed();
    assert_eq!(said.ground("a"), (GroundFact::None, Certainty::Shown));
    assert_eq!(said.conditions("a"), []);
}

/// Published: inspectors' forum: an upstream jumper is not in the box that reads right.
#[test]
fn a_box_without_a_ground_that_reads_right_is_unknown_and_dangerous() {
    let found = [seen(GroundSeen::NoneSeen), tester(TesterVerdict::Correct)];
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("a", found).diagnosed();
    assert_eq!(said.ground("a"), (GroundFact::Unknown, Certainty::Possible));
    assert!(said.finding("a", Condition::GroundContradicted).is_some_and(|finding| finding.danger));
}

/// Published: trade forum, 2011: the ground of an extension that ends at an ungrounded box comes from nowhere.
#[test]
fn a_loose_conductor_in_a_tail_without_a_ground_restores_nothing() {
    let said = Sketch::wired_in(CableKind::NmTwoWire)
        .then("old box", [])
        .then_by(CableKind::NmWithGround, "tail", [seen(GroundSeen::Loose)])
        .diagnosed();
    assert_eq!(said.ground("tail"), (GroundFact::None, Certainty::Likely));
}

/// Common practice, no source: a ground wire on knob-and-tube was fished in later, or leads to a pipe.
#[test]
fn a_ground_connected_where_the_wiring_brings_none_is_followed() {
    let said = Sketch::wired_in(CableKind::KnobAndTube).then("a", [seen(GroundSeen::Connected)]).diagnosed();
    assert_eq!(said.ground("a").0, GroundFact::Unknown);
    let finding = said.finding("a", Condition::GroundContradicted).expect("it leads somewhere");
    assert!(finding.next.as_ref().is_some_and(|next| next.what.starts_with("follow")));
}

/// A later look counts: what was loose and has been seen connected since is connected.
#[test]
fn the_last_sighting_counts() {
    let found = [seen(GroundSeen::Loose), seen(GroundSeen::Connected), seen(GroundSeen::NotOpened)];
    let said = Sketch::wired_in(CableKind::NmWithGround).then("a", found).diagnosed();
    assert_eq!(said.ground("a"), (GroundFact::Connected, Certainty::Likely));
}

/// Common practice, no source: in service equipment a ground may lawfully end at the neutral bar.
#[test]
fn a_panel_without_a_ground_bar_is_looked_into() {
    let mut sketch = Sketch::wired_in(CableKind::NmWithGround).then("a", [read(120.0, 120.0, 0.0)]);
    sketch.dwelling.panels[0].ground_bar = Some(false);
    let said = sketch.diagnosed();
    assert_eq!(said.ground("a").0, GroundFact::Unknown);
    assert!(said.finding("a", Condition::GroundContradicted).is_some_and(|finding| !finding.danger));
}

/// Common practice, no source: one round at the panel, lamps plugged in, finds the circuit of every box of which nobody knows it.
#[test]
fn boxes_of_which_nobody_knows_the_circuit_are_found_in_one_round_at_the_panel() {
    let mut sketch = Sketch::wired_in(CableKind::NmTwoWire).then("known", []);
    for id in ["one", "other"] {
        sketch = sketch.then(id, []);
        (sketch.last().circuit, sketch.last().fed_by) = (None, None);
    }
    let said = sketch.diagnosed();
    let rounds: Vec<_> =
        next_visit(&said.says, &said.dwelling).into_iter().filter(|check| check.what.contains("breaker_off")).collect();
    assert_eq!(rounds.len(), 1);
    assert_eq!(rounds[0].boxes, [said.at("one"), said.at("other")]);
}
