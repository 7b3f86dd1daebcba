//! Cases from practice on grounds that are there, are not, or lead nowhere.

use crate::sketch::{Sketch, read, read_loaded, seen, tester};
use diagnosis::{Certainty, Condition, next_visit};
use dwelling::{CableKind, GroundFact, GroundSeen, TesterVerdict};

/// Published: trade forum, 2011: a grounded cable spliced to an old two-wire one, its ground tied to the old box, has a ground
/// that ends at an ungrounded box.
#[test]
fn a_grounded_tail_behind_an_old_run_is_one_group_without_a_ground() {
    let said = Sketch::wired_in(CableKind::NmTwoWire)
        .then("old box", [])
        .then_by(CableKind::NmWithGround, "new 1", [seen(GroundSeen::Connected), read(120.0, 62.0, 50.0)])
        .then_by(CableKind::NmWithGround, "new 2", [seen(GroundSeen::Connected)])
        .diagnosed();
    for id in ["old box", "new 1", "new 2"] {
        assert_eq!(said.ground(id), (GroundFact::None, Certainty::Likely), "at {id}");
    }
}

/// Published: do-it-yourself forum, 2009: an outlet added by grounded cable from an armored box reads `correct`.
#[test]
fn correct_behind_armor_of_unknown_make_stays_unknown() {
    let said = Sketch::wired_in(CableKind::ArmoredUnknown)
        .then("old box", [])
        .then_by(CableKind::NmWithGround, "dining", [tester(TesterVerdict::Correct), seen(GroundSeen::Connected)])
        .diagnosed();
    assert_eq!(said.ground("dining").0, GroundFact::Unknown);
}

/// Published: trade forum on 1960s cable with its thin ground bolted outside the box; whether it may serve is disputed.
#[test]
fn a_thin_ground_is_disputed_and_one_cut_off_is_looked_for() {
    let disputed = Sketch::wired_in(CableKind::NmReducedGround).then("a", [read(120.0, 120.0, 0.0)]).diagnosed();
    assert_eq!(disputed.ground("a"), (GroundFact::Disputed, Certainty::Likely));
    let cut = Sketch::wired_in(CableKind::NmReducedGround).then("a", [seen(GroundSeen::CutOff)]).diagnosed();
    assert_eq!(cut.ground("a"), (GroundFact::CutOff, Certainty::Shown));
    assert_eq!(cut.sure_of("a", Condition::CutOffGround), Some(Certainty::Shown));
}

/// Published: a home inspector's article, 2014: after about 1962 the ground is in the box and must be restored.
#[test]
fn an_open_ground_on_grounded_cable_is_a_ground_to_restore() {
    let found = [tester(TesterVerdict::OpenGround), seen(GroundSeen::Unconnected)];
    let said = Sketch::wired_in(CableKind::NmWithGround).then("a", found).diagnosed();
    assert_eq!(said.ground("a"), (GroundFact::Loose, Certainty::Shown));
    let unopened = Sketch::wired_in(CableKind::NmWithGround).then("a", [tester(TesterVerdict::OpenGround)]).diagnosed();
    assert_eq!(unopened.ground("a"), (GroundFact::Loose, Certainty::Likely));
    assert!(unopened.finding("a", Condition::OpenGround).is_some_and(|finding| finding.next.is_some()));
}

/// Published: question-and-answer thread, 2013, on a 1958 rental with a grounded addition: the truth is by outlet.
#[test]
fn a_grounded_addition_does_not_ground_the_old_rooms() {
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("old room", []).diagnosed();
    assert_eq!(said.ground("old room"), (GroundFact::None, Certainty::Likely));
    let found = [seen(GroundSeen::Connected), read(120.0, 120.0, 0.01)];
    let added = Sketch::wired_in(CableKind::NmWithGround).then("addition", found).diagnosed();
    assert_eq!(added.ground("addition").0, GroundFact::Connected);
}

/// Published: question-and-answer thread, 2018: a shed's tester no longer showed an open ground once an antenna's earth rod
/// was tied in; the source says to take that away.
#[test]
fn a_rod_that_fools_a_tester_is_no_ground() {
    let found = [tester(TesterVerdict::Correct), seen(GroundSeen::PipeOrRod)];
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("shed", found).diagnosed();
    assert_eq!(said.ground("shed"), (GroundFact::None, Certainty::Likely));
    assert!(said.finding("shed", Condition::GroundByPipeOrRod).is_some_and(|finding| finding.danger));
}

/// Published: inspectors' forum: under load a true ground rises and a local jumper stays at zero; open boxes to confirm.
#[test]
fn a_jumper_seen_makes_every_box_tied_to_it_false() {
    let said = Sketch::wired_in(CableKind::NmTwoWire)
        .then("head", [seen(GroundSeen::Jumper)])
        .then_by(CableKind::NmWithGround, "tail", [read(120.0, 120.0, 0.0)])
        .diagnosed();
    assert_eq!(said.ground("head"), (GroundFact::False, Certainty::Shown));
    assert_eq!(said.ground("tail"), (GroundFact::False, Certainty::Likely));
    let tail = said.finding("tail", Condition::FalseGround).expect("its ground is the jumper's");
    assert_eq!(said.next_boxes(tail), ["head"]);
}

/// Common practice, no source: a ground of its own under load on a two-wire run is a pipe, a rod or a later wire.
#[test]
fn a_true_rise_on_two_wire_cable_is_a_ground_nobody_knows_of() {
    let said = Sketch::wired_in(CableKind::NmTwoWire).then("a", [read_loaded(117.0, 118.5, 1.5)]).diagnosed();
    assert_eq!(said.ground("a").0, GroundFact::Unknown);
    let finding = said.finding("a", Condition::GroundContradicted).expect("no wiring method brings it");
    assert_eq!(finding.look_alikes[0].condition, Condition::GroundByPipeOrRod);
}

/// Common practice, no source: a panel whose ground bar nobody has looked for gives no path by wiring method alone.
#[test]
fn without_a_known_ground_bar_only_sighting_and_loaded_test_together_connect() {
    let loaded = || read_loaded(118.5, 120.0, 1.5);
    let sketch = |found: Vec<dwelling::Reading>| {
        let mut sketch = Sketch::wired_in(CableKind::NmWithGround).then("a", found);
        sketch.dwelling.panels[0].ground_bar = None;
        sketch.diagnosed().ground("a").0
    };
    assert_eq!(sketch(vec![loaded()]), GroundFact::Unknown);
    assert_eq!(sketch(vec![seen(GroundSeen::Connected), read(120.0, 120.0, 0.0)]), GroundFact::Unknown);
    assert_eq!(sketch(vec![seen(GroundSeen::Connected), loaded()]), GroundFact::Connected);
}

/// The first check of a visit is the one that decides most openings.
#[test]
fn the_next_visit_starts_where_most_openings_are_decided() {
    let mut sketch = Sketch::wired_in(CableKind::ArmoredUnknown);
    for id in ["a", "b", "c"] {
        sketch = sketch.then(id, []);
    }
    sketch.dwelling.circuits.push(dwelling::Circuit { id: "9".into(), ..sketch.dwelling.circuits[0].clone() });
    sketch = sketch.then_by(CableKind::NmWithGround, "lone", []);
    sketch.last().fed_by = Some(dwelling::Feed::Panel(dwelling::PanelIndex(0)));
    sketch.last().circuit = Some(dwelling::CircuitIndex(1));
    let said = sketch.diagnosed();
    let visit = next_visit(&said.says, &said.dwelling);
    assert_eq!(visit[0].boxes, [said.at("a"), said.at("b"), said.at("c")]);
    assert!(visit.iter().any(|check| check.boxes == [said.at("lone")]));
}

/// A check of polarity decides no ground, however many openings it names.
#[test]
fn the_next_visit_puts_unknown_grounds_before_polarity() {
    let said = Sketch::wired_in(CableKind::NmTwoWire)
        .then("a", [tester(TesterVerdict::OpenGround)])
        .then("b", [tester(TesterVerdict::OpenGround)])
        .then("odd", [tester(TesterVerdict::Correct)])
        .diagnosed();
    let visit = next_visit(&said.says, &said.dwelling);
    assert_eq!(visit[0].boxes, [said.at("odd"), said.at("b")]);
    assert_eq!(visit.iter().filter(|check| check.boxes == visit[0].boxes).count(), 1, "nobody is sent there twice");
    assert_eq!(said.sure_of("odd", Condition::OddOneOut), Some(Certainty::Likely));
}

/// A box that reads right where no ground can be is no witness that the ground stops behind it.
#[test]
fn a_ground_does_not_stop_where_it_never_was() {
    let said = Sketch::wired_in(CableKind::NmTwoWire)
        .then("suspicious", [tester(TesterVerdict::Correct)])
        .then_by(CableKind::NmWithGround, "tail", [tester(TesterVerdict::OpenGround)])
        .diagnosed();
    assert_eq!(said.sure_of("tail", Condition::UpstreamBreak), None);
}
