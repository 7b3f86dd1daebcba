//! Forged Steiner trees and certificates are refused, each for its own reason.

use optimizer::steiner::{
    Certificate, Cost, Cut, Instance, Line, Methods, Refusal, SteinerLimits, Step, Tree, certify, check_bound,
    check_tree, solve_steiner,
};

fn edge(from: usize, to: usize, cost: Cost) -> Line {
    Line { from, to, there: cost, back: Some(cost) }
}

/// Three terminals around node 3; joining them through it costs 2 + 2 + 2, past it 3 + 3. Node 4 has a prize of 4.
fn star() -> Instance {
    Instance {
        nodes: 5,
        lines: vec![edge(0, 3, 2), edge(1, 3, 2), edge(2, 3, 2), edge(0, 1, 5), edge(1, 2, 5), edge(2, 4, 3)],
        root: Some(0),
        terminals: vec![1, 2],
        prizes: vec![(4, 4)],
    }
}

fn best(instance: &Instance) -> Tree {
    let mut limits = SteinerLimits { nodes: None, stop: &mut || false, methods: Methods::default() };
    solve_steiner(instance, &mut limits).expect("a sound instance").tree.expect("a tree")
}

fn proof() -> (Instance, Certificate) {
    let certificate = certify(&star(), &best(&star()), 10).expect("a certificate");
    (star(), certificate)
}

fn cuts(certificate: &mut Certificate) -> &mut Vec<Cut> {
    match &mut certificate.cases[0].steps[0] {
        Step::Leaf(cuts) => cuts,
        Step::Split(_) => panic!("a leaf"),
    }
}

/// By hand: 2 + 2 + 2 joins the terminals, 3 more reach a prize of 4; any other pair of lines costs more.
#[test]
fn the_star_costs_nine() {
    assert_eq!(best(&star()), Tree { cost: 9, root: Some(0), lines: vec![0, 1, 2, 5] });
    let (instance, certificate) = proof();
    assert_eq!(check_bound(&instance, 9, &certificate), Ok(()));
}

#[test]
fn forged_trees_are_refused() {
    let good = best(&star());
    let refused = |tree: Tree| check_tree(&star(), &tree).unwrap_err();
    assert_eq!(refused(Tree { cost: 8, ..good.clone() }), Refusal::WrongCost(9));
    assert_eq!(refused(Tree { root: Some(1), ..good.clone() }), Refusal::WrongStart);
    assert_eq!(refused(Tree { root: None, ..good.clone() }), Refusal::WrongStart);
    assert_eq!(refused(Tree { root: Some(9), ..good.clone() }), Refusal::WrongStart);
    assert_eq!(refused(Tree { lines: vec![0, 1, 1, 2], ..good.clone() }), Refusal::WrongLines);
    assert_eq!(refused(Tree { lines: vec![0, 1, 2, 17], ..good.clone() }), Refusal::WrongLines);
    assert_eq!(refused(Tree { lines: vec![0, 1, 2, 3], ..good.clone() }), Refusal::NoTree);
    assert_eq!(refused(Tree { lines: vec![0, 5], ..good.clone() }), Refusal::NoTree);
    assert_eq!(refused(Tree { lines: vec![0, 1], ..good }), Refusal::TerminalMissing(2));
}

#[test]
fn a_tree_may_not_go_against_a_one_way_line() {
    let line = Line { from: 0, to: 1, there: 1, back: None };
    let instance = Instance { nodes: 2, lines: vec![line], root: Some(1), terminals: vec![0], prizes: vec![] };
    let tree = Tree { cost: 1, root: Some(1), lines: vec![0] };
    assert_eq!(check_tree(&instance, &tree), Err(Refusal::NoTree));
}

#[test]
fn a_bound_above_the_certificate_is_refused() {
    let (instance, certificate) = proof();
    assert_eq!(check_bound(&instance, 10, &certificate), Err(Refusal::TooLow(0, 9)));
}

#[test]
fn a_line_charged_too_much_is_refused() {
    let (instance, mut certificate) = proof();
    let cut = cuts(&mut certificate).iter_mut().find(|cut| cut.toward != 4).unwrap();
    cut.value += 100;
    assert!(matches!(check_bound(&instance, 9, &certificate), Err(Refusal::LineOvercharged(_))));
}

#[test]
fn a_prize_charged_too_much_is_refused() {
    let (instance, mut certificate) = proof();
    *cuts(&mut certificate) = vec![Cut { toward: 4, nodes: vec![1, 2, 3, 4], value: 5 }];
    assert_eq!(check_bound(&instance, 5, &certificate), Err(Refusal::PrizeOvercharged(4)));
}

#[test]
fn malformed_cuts_are_refused() {
    let forged = |cut: Cut| {
        let (instance, mut certificate) = proof();
        cuts(&mut certificate).push(cut);
        check_bound(&instance, 1, &certificate)
    };
    let wrong = Err(Refusal::WrongCut(0));
    assert_eq!(forged(Cut { toward: 1, nodes: vec![0, 1], value: 0 }), wrong, "the start is inside");
    assert_eq!(forged(Cut { toward: 1, nodes: vec![2], value: 0 }), wrong, "it does not hold what it stands for");
    assert_eq!(forged(Cut { toward: 1, nodes: vec![2, 1], value: 0 }), wrong, "not by rising index");
    assert_eq!(forged(Cut { toward: 1, nodes: vec![1, 99], value: 0 }), wrong, "no such node");
    assert_eq!(forged(Cut { toward: 1, nodes: vec![1], value: -1 }), wrong, "below zero");
    assert_eq!(forged(Cut { toward: 99, nodes: vec![1], value: 0 }), wrong, "toward no such node");
}

#[test]
fn splits_that_do_not_make_a_tree_are_refused() {
    let forged = |steps: Vec<Step>| {
        let (instance, mut certificate) = proof();
        certificate.cases[0].steps = steps;
        check_bound(&instance, 0, &certificate)
    };
    let leaf = || Step::Leaf(Vec::new());
    assert_eq!(forged(vec![Step::Split(3), leaf(), leaf()]), Ok(()));
    let wrong = Err(Refusal::WrongSteps(0));
    assert_eq!(forged(vec![]), wrong);
    assert_eq!(forged(vec![Step::Split(3), leaf()]), wrong, "a side is missing");
    assert_eq!(forged(vec![leaf(), leaf()]), wrong, "a leaf too many");
    assert_eq!(forged(vec![Step::Split(3), Step::Split(3), leaf(), leaf(), leaf()]), wrong, "split twice");
    assert_eq!(forged(vec![Step::Split(1), leaf(), leaf()]), wrong, "a terminal is never out");
    assert_eq!(forged(vec![Step::Split(77), leaf(), leaf()]), wrong);
}

#[test]
fn cases_that_do_not_hold_all_trees_are_refused() {
    let (instance, certificate) = proof();
    assert_eq!(check_bound(&instance, 0, &Certificate::default()), Err(Refusal::WrongCases));
    let mut other = certificate.clone();
    other.cases[0].start = 1;
    assert_eq!(check_bound(&instance, 0, &other), Err(Refusal::WrongCases));
    let mut twice = certificate;
    twice.cases.push(twice.cases[0].clone());
    assert_eq!(check_bound(&instance, 0, &twice), Err(Refusal::WrongCases));
}

/// By hand: leaving both prizes costs 3 + 2; so does no tree less than 3, and the cases left out cost at least 5.
#[test]
fn what_all_cases_leave_out_counts() {
    let instance =
        Instance { nodes: 2, lines: vec![edge(0, 1, 9)], root: None, terminals: vec![], prizes: vec![(0, 3), (1, 2)] };
    let tree = best(&instance);
    assert_eq!(tree.cost, 2);
    let mut certificate = certify(&instance, &tree, 10).unwrap();
    assert_eq!(check_bound(&instance, 2, &certificate), Ok(()));
    certificate.cases.clear();
    assert_eq!(check_bound(&instance, 2, &certificate), Err(Refusal::TooLow(0, 0)));
}

/// A triangle of terminals whose long side is dropped: two steps of 2 do what its 3 do.
fn triangle() -> (Instance, Certificate) {
    let instance = Instance {
        nodes: 3,
        lines: vec![edge(0, 1, 2), edge(1, 2, 2), edge(0, 2, 3)],
        terminals: vec![0, 1, 2],
        ..Instance::default()
    };
    let certificate = certify(&instance, &best(&instance), 10).expect("a certificate");
    (instance, certificate)
}

/// By hand: the steps of the walk 0–1–2 are 2 and 2, since node 1 is a terminal; the line costs 3.
#[test]
fn a_line_is_dropped_for_a_walk_whose_steps_between_terminals_are_no_longer() {
    let (instance, certificate) = triangle();
    let dropped: Vec<_> = certificate.dropped.iter().map(|one| (one.line, one.walk.clone())).collect();
    assert_eq!(dropped, [(2, vec![0, 1])]);
    assert_eq!(check_bound(&instance, 4, &certificate), Ok(()));
}

#[test]
fn a_line_dropped_without_reason_is_refused() {
    let (instance, good) = triangle();
    let with = |instance: &Instance, line: usize, walk: &[usize]| {
        let mut forged = good.clone();
        (forged.dropped[0].line, forged.dropped[0].walk) = (line, walk.to_vec());
        check_bound(instance, 4, &forged)
    };
    // Another walk, none at all, one over itself, one that ends elsewhere, lines that are not there.
    for walk in [&[1, 0][..], &[], &[2], &[0], &[0, 9]] {
        assert_eq!(with(&instance, 2, walk), Err(Refusal::WrongDrop(0)), "{walk:?}");
    }
    assert_eq!(with(&instance, 9, &[0, 1]), Err(Refusal::WrongDrop(0)));
    // Without the terminal between them the two steps are one of 4, longer than 3.
    let through = Instance { terminals: vec![0, 2], ..instance.clone() };
    assert_eq!(with(&through, 2, &[0, 1]), Err(Refusal::WrongDrop(0)));
    // A walk over a line that is dropped before it.
    let mut twice = good.clone();
    twice.dropped.push(twice.dropped[0].clone());
    assert_eq!(check_bound(&instance, 4, &twice), Err(Refusal::WrongDrop(1)));
    // Prizes and one-way lines know no such exchange.
    let prized = Instance { prizes: vec![(1, 1)], ..instance.clone() };
    assert_eq!(with(&prized, 2, &[0, 1]), Err(Refusal::WrongDrop(0)));
    let mut one_way = Instance { root: Some(0), ..instance };
    one_way.lines[0].back = None;
    assert_eq!(with(&one_way, 2, &[0, 1]), Err(Refusal::WrongDrop(0)));
}
