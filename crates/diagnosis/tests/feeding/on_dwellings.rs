//! What feeds what in small dwellings: from observations, counts and places to orders, clashes and the next test.

use crate::sketch::Sketch;
use diagnosis::feeding::{Clash, FeedingOrder, Orders, feeding_orders};
use dwelling::{BoxIndex, CableKind, CircuitIndex, DeadWhen, Dwelling, Feed, PanelIndex, Point, PowerCut};
use electrical::Length;

/// So many boxes in one room on one circuit, `A`, `B` and on, none with a known feed.
fn unordered(boxes: u8) -> Dwelling {
    let names = (0..boxes).map(|at| char::from(b'A' + at).to_string());
    let mut dwelling = names.fold(Sketch::wired_in(CableKind::NmTwoWire), |sketch, id| sketch.then(&id, [])).dwelling;
    dwelling.boxes.iter_mut().for_each(|device_box| device_box.fed_by = None);
    dwelling
}

fn opened(dwelling: &mut Dwelling, at: usize, dead: &[usize], alive: &[usize]) {
    let boxes = |of: &[usize]| of.iter().copied().map(BoxIndex).collect();
    let cut = PowerCut::Opened(BoxIndex(at));
    dwelling.dead_when.push(DeadWhen { cut, dead: boxes(dead), alive: boxes(alive), note: None });
}

fn only_order(dwelling: &Dwelling) -> FeedingOrder {
    let mut orders = feeding_orders(dwelling);
    assert_eq!(orders.len(), 1);
    orders.remove(0)
}

fn count(order: &FeedingOrder) -> u64 {
    match &order.orders {
        Orders::Weighed { count, .. } => *count,
        other => panic!("not weighed: {other:?}"),
    }
}

const PANEL: Feed = Feed::Panel(PanelIndex(0));

#[test]
fn a_circuit_whose_order_is_known_has_no_question() {
    let sketch = Sketch::wired_in(CableKind::NmTwoWire).then("A", []).then("B", []);
    assert_eq!(feeding_orders(&sketch.dwelling), []);
}

#[test]
fn what_goes_dead_with_a_box_opened_lies_behind_it() {
    let mut dwelling = unordered(2);
    opened(&mut dwelling, 0, &[1], &[]);
    let order = only_order(&dwelling);
    assert_eq!(count(&order), 1);
    assert_eq!(order.to_plan_on(), [&[(BoxIndex(0), PANEL), (BoxIndex(1), Feed::Box(BoxIndex(0)))]]);
    assert_eq!(order.next, None, "nothing is left to be told apart");
}

/// By hand: with `B` alive two orders are left. `B` feeds `A`: e^(−8/8). Both are fed by the panel: e^(−16/24), and 0.1 for
/// the second home run. The share of the first is 1 ÷ (1 + 0.1 · e^(1 − 2/3)) = 0.8775.
#[test]
fn a_second_home_run_is_less_likely_than_a_chain() {
    let mut dwelling = unordered(2);
    opened(&mut dwelling, 0, &[], &[1]);
    let order = only_order(&dwelling);
    let Orders::Weighed { count: 2, likeliest, runs } = &order.orders else { panic!("{order:?}") };
    assert_eq!(likeliest[0].feeds, [(BoxIndex(0), Feed::Box(BoxIndex(1))), (BoxIndex(1), PANEL)]);
    let by_hand = 1.0 / (1.0 + 0.1 * (1.0_f64 / 3.0).exp());
    assert!((likeliest[0].share - by_hand).abs() < 1e-12, "{}", likeliest[0].share);
    assert_eq!(runs.len(), 3, "A from B or the panel, B from the panel");
    let test = order.next.as_ref().map(|test| (test.open, test.look_at.clone()));
    assert_eq!(test, Some((BoxIndex(1), vec![BoxIndex(0)])), "opening B tells the two apart");
}

#[test]
fn a_box_with_one_cable_feeds_nothing() {
    let mut dwelling = unordered(3);
    dwelling.boxes[0].cables_in_box = Some(1);
    let order = only_order(&dwelling);
    let Orders::Weighed { runs, .. } = &order.orders else { panic!("{order:?}") };
    assert!(runs.iter().all(|run| run.from != Feed::Box(BoxIndex(0))));
    // By hand: A is the end of a run in 3 places of each of the 3 trees of B, C and the panel.
    assert_eq!(count(&order), 9);
}

#[test]
fn the_nearest_box_is_the_likeliest_feed() {
    let mut dwelling = unordered(3);
    dwelling.panels[0].at = Some(Point { x: Length::ZERO, y: Length::ZERO });
    for (at, feet) in [(0, 40), (1, 5), (2, 20)] {
        dwelling.boxes[at].at = Some(Point { x: Length::feet(feet), y: Length::ZERO });
    }
    let order = only_order(&dwelling);
    let best = order.to_plan_on()[0].to_vec();
    let chain = [(BoxIndex(0), Feed::Box(BoxIndex(2))), (BoxIndex(1), PANEL), (BoxIndex(2), Feed::Box(BoxIndex(1)))];
    assert_eq!(best, chain, "from the panel along the wall, 5, 20, 40 ft");
}

#[test]
fn observations_that_cannot_both_be_true_are_named() {
    let mut dwelling = unordered(3);
    opened(&mut dwelling, 2, &[], &[0]);
    opened(&mut dwelling, 0, &[1], &[]);
    opened(&mut dwelling, 1, &[0], &[]);
    let order = only_order(&dwelling);
    assert_eq!(order.orders, Orders::Clash(Clash { observations: vec![1, 2], counted: vec![] }));
    assert!(order.to_plan_on().is_empty() && order.next.is_none(), "no order is assumed over a contradiction");
}

#[test]
fn a_count_of_cables_that_cannot_be_true_is_named_beside_what_was_seen() {
    let mut dwelling = unordered(3);
    dwelling.boxes[0].cables_in_box = Some(1);
    opened(&mut dwelling, 0, &[1], &[]);
    let clash = Clash { observations: vec![0], counted: vec![BoxIndex(0)] };
    assert_eq!(only_order(&dwelling).orders, Orders::Clash(clash));
}

#[test]
fn an_order_that_is_written_down_can_clash_with_what_was_seen() {
    let mut dwelling = Sketch::wired_in(CableKind::NmTwoWire).then("A", []).then("B", []).dwelling;
    opened(&mut dwelling, 0, &[], &[1]);
    assert_eq!(only_order(&dwelling).orders, Orders::Clash(Clash { observations: vec![0], counted: vec![] }));
}

#[test]
fn a_box_of_another_circuit_that_goes_dead_is_a_clash() {
    let mut dwelling = unordered(2);
    let mut second = dwelling.circuits[0].clone();
    second.id = "2".into();
    dwelling.circuits.push(second);
    dwelling.boxes[1].circuit = Some(CircuitIndex(1));
    opened(&mut dwelling, 0, &[1], &[]);
    let orders = feeding_orders(&dwelling);
    assert_eq!(orders[0].orders, Orders::Clash(Clash { observations: vec![0], counted: vec![] }));
}

#[test]
fn a_box_of_unknown_circuit_that_goes_dead_belongs_to_the_circuit() {
    let mut dwelling = unordered(3);
    dwelling.boxes[2].circuit = None;
    opened(&mut dwelling, 0, &[2], &[1]);
    let order = only_order(&dwelling);
    assert_eq!(order.boxes.len(), 3);
    let assumed = order.assumed(&dwelling, order.to_plan_on()[0]);
    assert_eq!(assumed.boxes[2].circuit, Some(CircuitIndex(0)));
    assert_eq!(assumed.boxes[2].fed_by, Some(Feed::Box(BoxIndex(0))));
}

#[test]
fn a_box_that_must_not_be_disturbed_is_not_opened_for_a_test() {
    let mut dwelling = unordered(4);
    let first = only_order(&dwelling).next.map(|test| test.open);
    let Some(first) = first else { panic!("a test tells something") };
    dwelling.boxes[first.0].do_not_disturb = true;
    let second = only_order(&dwelling).next.map(|test| test.open);
    assert!(second.is_some_and(|second| second != first));
}

/// By hand: of the opened box and the 7 behind it there are 8^6 trees, of the 8 others and the panel 9^7, and each of these
/// 9 may feed the opened box.
#[test]
fn too_many_boxes_are_not_all_looked_at_until_an_observation_cuts_them_in_two() {
    let mut dwelling = unordered(16);
    let order = only_order(&dwelling);
    let Orders::NotAll { largest: 16, one: Some(one) } = &order.orders else { panic!("{order:?}") };
    assert_eq!(one.len(), 16);
    let Some(test) = &order.next else { panic!("a test cuts the question in two") };
    assert_eq!((test.right, test.left_after), (None, None), "no chance is told that was not reckoned");
    let (half, others): (Vec<usize>, Vec<usize>) = (1..16).partition(|at| *at < 8);
    opened(&mut dwelling, 0, &half, &others);
    assert_eq!(count(&only_order(&dwelling)), 8_u64.pow(6) * 9_u64.pow(7) * 9);
}

#[test]
fn each_outcome_of_the_next_test_says_how_likely_it_is_and_what_it_would_mean() {
    let dwelling = unordered(4);
    let order = only_order(&dwelling);
    let Some(test) = &order.next else { panic!("a test tells something") };
    let told: f64 = test.outcomes.iter().map(|outcome| outcome.share).sum();
    assert!(told <= 1.0 + 1e-12 && (test.further_outcomes > 0 || told > 1.0 - 1e-12));
    assert!(test.right.is_some_and(|(before, after)| before < after && after <= 1.0 + 1e-12));
    let weight = |feeds: &[(BoxIndex, Feed)], among: &FeedingOrder| match &among.orders {
        Orders::Weighed { likeliest, .. } => {
            likeliest.iter().find(|likely| likely.feeds == feeds).map(|likely| likely.share)
        }
        _ => None,
    };
    for outcome in &test.outcomes {
        let mut seen = dwelling.clone();
        let dead: Vec<usize> = outcome.dead.iter().map(|at| at.0).collect();
        let alive: Vec<usize> = (0..4).filter(|at| *at != test.open.0 && !dead.contains(at)).collect();
        opened(&mut seen, test.open.0, &dead, &alive);
        let then = only_order(&seen);
        assert_eq!(count(&then), outcome.orders);
        let best = weight(then.to_plan_on()[0], &then);
        assert!(weight(&outcome.order, &then).is_none_or(|share| best.is_some_and(|best| share > best - 1e-9)));
    }
}
