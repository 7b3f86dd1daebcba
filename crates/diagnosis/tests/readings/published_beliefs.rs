//! What published readings make likely, and what they leave undecided.

use crate::sketch::{Sketch, read, read_loaded, read_low, tester, to_earth};
use diagnosis::belief::{BoxBelief, Ground, Priors, WireState, Wiring, believe};
use dwelling::{BoxIndex, CableKind, Reading, TesterVerdict};

/// What is believed of the only box of a circuit of this wiring method.
fn believed(cable: CableKind, found: impl IntoIterator<Item = Reading>) -> BoxBelief {
    of_last(&Sketch::wired_in(cable).then("a", found))
}

fn of_last(sketch: &Sketch) -> BoxBelief {
    let last = BoxIndex(sketch.dwelling.boxes.len() - 1);
    believe(&sketch.dwelling, &Priors::default()).of(last).expect("some state reads like this").clone()
}

fn odds(belief: &BoxBelief, ground: Ground) -> f64 {
    belief.ground[ground as usize]
}

/// Published: an appliance technicians' academy gives 120 | 120 | 0 V for correct wiring, a trade magazine on failures in
/// outlet testing the same for a jumper.
#[test]
fn three_right_pairs_without_load_leave_a_ground_and_a_jumper_undecided() {
    let belief = believed(CableKind::Unknown, [read(120.0, 120.0, 0.0), tester(TesterVerdict::Correct)]);
    assert_eq!(belief.verdict(), None);
    assert!(odds(&belief, Ground::Grounded) > 0.05 && odds(&belief, Ground::False) > 0.05, "{:?}", belief.ground);
    assert!(odds(&belief, Ground::Missing) + odds(&belief, Ground::Interrupted) < 0.02, "{:?}", belief.ground);
}

/// Published: an instrument application note on three receptacle voltages, 118.5 | 120.0 | 1.5 V under load.
#[test]
fn a_neutral_drop_that_adds_up_speaks_for_a_ground_of_its_own() {
    let belief = believed(CableKind::NmWithGround, [read(121.5, 121.5, 0.0), read_loaded(118.5, 120.0, 1.5)]);
    assert_eq!(belief.verdict(), Some(Ground::Grounded), "{:?}", belief.ground);
    let before = believed(CableKind::Unknown, [read(121.5, 121.5, 0.0)]);
    let after = believed(CableKind::Unknown, [read(121.5, 121.5, 0.0), read_loaded(118.5, 120.0, 1.5)]);
    assert!(odds(&after, Ground::False) < odds(&before, Ground::False) / 4.0);
}

/// Published: inspectors' forum on proving a local false ground: under load a jumper stays at nothing. By hand: 12 A through
/// 0.15 Ω each way takes 3.6 V from 120 V.
#[test]
fn no_rise_under_a_load_that_sags_says_joined() {
    let pairs = || [read(120.0, 120.0, 0.0), read_loaded(116.4, 116.4, 0.0)];
    let belief = believed(CableKind::NmTwoWire, pairs());
    assert_eq!(belief.likeliest().0, Ground::False, "{:?}", belief.ground);
    assert!(odds(&belief, Ground::False) + odds(&belief, Ground::Live) > 0.99, "{:?}", belief.ground);
    // Which of the two jumpers it is, only an independent earth tells.
    let belief = believed(CableKind::NmTwoWire, pairs().into_iter().chain([to_earth(120.0, 0.0, 0.0)]));
    assert_eq!(belief.verdict(), Some(Ground::False), "{:?}", belief.ground);
    let with_cable = believed(CableKind::NmWithGround, [read(120.0, 120.0, 0.0), read_loaded(116.4, 116.4, 0.0)]);
    assert!(odds(&with_cable, Ground::False) > 10.0 * Priors::default().wiring_where_grounded[4]);
    assert_ne!(with_cable.verdict(), Some(Ground::Grounded));
}

/// Published: inspectors' forum on proving a local false ground: 3 to 25 mV on a true ground without load.
#[test]
fn some_millivolts_without_load_decide_nothing() {
    let nothing = believed(CableKind::Unknown, [read(120.0, 120.0, 0.0)]);
    let millivolts = believed(CableKind::Unknown, [read(120.0, 120.0, 0.012)]);
    assert_eq!(nothing.ground, millivolts.ground);
}

/// Published: a trade-association bulletin on phantom voltages and accounts of inspectors: 30 to 90 V to a floating ground,
/// the two readings not adding up to the line.
#[test]
fn phantom_volts_say_that_the_ground_floats() {
    let belief = believed(CableKind::NmWithGround, [read(120.0, 60.0, 48.0)]);
    let floats = odds(&belief, Ground::Interrupted) + odds(&belief, Ground::Missing);
    assert!(floats > 0.95, "{:?}", belief.ground);
    assert!(odds(&belief, Ground::Grounded) < 0.01);
}

/// From memory: an ideal low-impedance meter reads 120 | 0 | 0 V where no ground arrives.
#[test]
fn nothing_from_hot_to_ground_under_a_meter_that_draws_says_that_the_ground_floats() {
    let belief = believed(CableKind::NmWithGround, [read_low(120.0, 0.0, 0.0)]);
    assert!(odds(&belief, Ground::Interrupted) + odds(&belief, Ground::Missing) > 0.95, "{:?}", belief.ground);
}

/// Published: a trade forum on the reversed-polarity jumper: to true earth 0 | 120 | 120 V.
#[test]
fn neutral_and_ground_live_to_earth_say_a_reversed_jumper() {
    let belief = believed(CableKind::NmTwoWire, [read(120.0, 120.0, 0.0), to_earth(0.0, 120.0, 120.0)]);
    assert_eq!(belief.verdict(), Some(Ground::Live), "{:?}", belief.ground);
    assert!(belief.wiring[Wiring::ReversedJumper as usize] > 0.9);
}

/// Published: a trade magazine on failures in outlet testing: all three pairs and the tester read right on a reversed jumper.
#[test]
fn a_reversed_jumper_stays_possible_whatever_the_pairs_and_the_tester_say() {
    let found = [read(120.0, 120.0, 0.0), read_loaded(116.4, 116.4, 0.0), tester(TesterVerdict::Correct)];
    let belief = believed(CableKind::NmTwoWire, found);
    assert!(odds(&belief, Ground::Live) > Priors::default().wiring_where_not[5], "{:?}", belief.ground);
}

/// Published: an interview puzzle on a toaster and a reversed receptacle: 120 V from the long slot to ground, none from the
/// short one.
#[test]
fn hot_to_ground_at_nothing_and_neutral_to_ground_at_line_say_reversed() {
    let belief = believed(CableKind::NmWithGround, [read(120.0, 0.0, 120.0)]);
    assert!(belief.reversed() > 0.95, "{:?}", belief.wiring);
}

/// Published: an inspector's article on outlet testers: three of them said open ground where polarity was reversed too.
#[test]
fn open_ground_on_a_tester_leaves_polarity_as_unknown_as_before() {
    let before = believed(CableKind::NmTwoWire, []);
    let after = believed(CableKind::NmTwoWire, [tester(TesterVerdict::OpenGround)]);
    assert!((after.reversed() - before.reversed()).abs() < 0.02, "{} and {}", before.reversed(), after.reversed());
    assert!(odds(&after, Ground::Missing) > 0.9, "{:?}", after.ground);
}

/// Published: accounts of inspectors: hot and ground reversed on a tester is usually an open neutral with a load on.
#[test]
fn hot_and_ground_reversed_on_a_tester_is_rather_an_open_neutral() {
    let belief = believed(CableKind::NmWithGround, [tester(TesterVerdict::HotGroundReversed)]);
    let open = belief.neutral_path[WireState::Open as usize];
    assert!(open > belief.wiring[Wiring::HotGroundReversed as usize], "{open} and {:?}", belief.wiring);
}

/// Published: inspectors' forum on false-ground indications at several outlets, with one that read open ground: no jumper was
/// where they showed, it was in another box of the same group.
#[test]
fn a_join_that_testers_show_may_sit_in_another_box() {
    let joined = || [tester(TesterVerdict::FalseGround), read(120.0, 120.0, 0.0)];
    let sketch = Sketch::wired_in(CableKind::NmWithGround).then("a", [tester(TesterVerdict::OpenGround)]);
    let belief = of_last(&sketch.then("b", joined()).then("c", joined()));
    assert!(odds(&belief, Ground::False) > 0.9, "{:?}", belief.ground);
    assert!(belief.wiring[Wiring::Right as usize] > 0.2, "{:?}", belief.wiring);
}
