//! What certificates prove is what trying everything finds, and one that was tampered with proves no more.

mod support;

use optimizer::certificate::{
    Certificate, Cut, Decision, Fault, PartProof, Proved, Step, Toward, certify, check, solve_with_certificate,
};
use optimizer::{
    Cost, Forced, Group, Limits, Link, LinkEnd, Marks, Node, NodeOption, Outcome, Problem, RootOption, SupplyNeed, Tree,
};
use support::brute_force::least;
use support::house_problem::house_problem;
use support::random_problem::{Chance, SMALL, Size, random_forced, random_problem};

const PROBLEMS: u64 = 3000;
/// Larger than what certificates are small for, and small enough to try everything.
const LINKED: Size = Size { trees: 2, nodes: 3, options: 3, groups: 5, links: 8 };

fn certified(problem: &Problem, limits: &Limits, forced: &[Forced]) -> (Outcome, Certificate) {
    let (outcome, certificate) = solve_with_certificate(problem, limits, forced);
    (outcome, certificate.expect("a certificate of a well-formed problem"))
}

fn expected(problem: &Problem, forced: &[Forced]) -> Proved {
    least(problem, forced).map_or(Proved::NoSolution, |(cost, ..)| Proved::AtLeast(cost))
}

fn steps(certificate: &Certificate) -> impl Iterator<Item = &Step> {
    certificate.parts.iter().flat_map(|part| &part.steps)
}

/// By trying everything: the bound that the checker finds proved is what the cheapest choice costs.
#[test]
fn the_certified_bound_is_what_trying_everything_finds() {
    let (mut solved, mut split, mut given_up, mut charged) = (0, 0, 0, 0);
    for seed in 1..=PROBLEMS / 2 {
        for size in [SMALL, LINKED] {
            let problem = random_problem(&mut Chance::new(seed), size);
            let expected = expected(&problem, &[]);
            let (_, certificate) = certified(&problem, &Limits::default(), &[]);
            assert_eq!(check(&problem, &[], &certificate), Ok(expected), "seed {seed}: {problem:#?} {certificate:#?}");
            solved += u64::from(expected != Proved::NoSolution);
            split += u64::from(steps(&certificate).any(|step| matches!(step, Step::Split(_))));
            given_up += u64::from(steps(&certificate).any(|step| matches!(step, Step::GiveUp(_))));
            charged += u64::from(steps(&certificate).any(|step| matches!(step, Step::Leaf(cuts) if !cuts.is_empty())));
        }
    }
    assert!(solved > PROBLEMS / 2 && solved < PROBLEMS, "{solved} can be solved");
    assert!(split > 50 && given_up > 20 && charged > 200, "{split} split, {given_up} give up, {charged} charge");
}

/// By trying everything.
#[test]
fn the_bound_holds_for_what_is_laid_down_beforehand() {
    for seed in 1..=PROBLEMS {
        let mut chance = Chance::new(seed + 1_000_000);
        let problem = random_problem(&mut chance, SMALL);
        let forced = random_forced(&mut chance, &problem);
        let (_, certificate) = certified(&problem, &Limits::default(), &forced);
        let expected = expected(&problem, &forced);
        assert_eq!(check(&problem, &forced, &certificate), Ok(expected), "seed {seed}: {forced:?} {problem:#?}");
    }
}

/// By trying everything: what is proved within no split at all is no more than the cheapest choice costs.
#[test]
fn a_certificate_that_may_not_split_proves_what_it_can() {
    let mut lower = 0;
    for seed in 1..=PROBLEMS {
        let problem = random_problem(&mut Chance::new(seed), LINKED);
        let outcome = optimizer::solve(&problem, &Limits::default());
        let certificate = certify(&problem, &Limits::nodes(0), &[], outcome.solution()).expect("well formed");
        assert!(!steps(&certificate).any(|step| matches!(step, Step::Split(_))), "seed {seed}");
        match (check(&problem, &[], &certificate), expected(&problem, &[])) {
            (Ok(Proved::AtLeast(bound)), Proved::AtLeast(cost)) => {
                assert!(bound <= cost, "seed {seed}");
                lower += u64::from(bound < cost);
            }
            // Where there is no solution, a bound holds too: it may take a split to show more.
            (Ok(_), expected) => assert_eq!(expected, Proved::NoSolution, "seed {seed}"),
            (Err(fault), _) => panic!("seed {seed}: {fault}"),
        }
    }
    assert!(lower > 20, "{lower} prove less");
}

#[test]
fn houses_are_certified_by_few_steps() {
    for seed in 1..=12 {
        let problem = house_problem(&mut Chance::new(seed), 12);
        let (outcome, certificate) = certified(&problem, &Limits::default(), &[]);
        let Outcome::Optimal(solution) = outcome else { panic!("seed {seed}: {outcome:?}") };
        assert_eq!(check(&problem, &[], &certificate), Ok(Proved::AtLeast(solution.cost)), "seed {seed}");
        assert!(steps(&certificate).count() < 200, "seed {seed}");
    }
}

/// Changes one thing of a certificate; returns whether it did.
fn tamper(chance: &mut Chance, certificate: &mut Certificate) -> bool {
    let parts = certificate.parts.len();
    if parts == 0 {
        return false;
    }
    let part = chance.below(parts);
    if chance.percent(8) {
        match chance.below(3) {
            0 => _ = certificate.parts.remove(part),
            1 => certificate.parts.push(certificate.parts[part].clone()),
            _ => certificate.parts.swap(part, parts - 1 - part),
        }
        return true;
    }
    let proof = &mut certificate.parts[part];
    if chance.percent(15) {
        match (&mut proof.bound, chance.below(4)) {
            (bound, 0) => *bound = None,
            (Some(bound), 1) => bound.cents = bound.cents.wrapping_add(1),
            (Some(bound), 2) => bound.openings += 1,
            (Some(bound), _) => bound.devices += 1,
            (None, _) => proof.bound = Some(Cost { cents: i64::MAX, openings: 0, devices: 0 }),
        }
        return true;
    }
    let count = proof.steps.len();
    if count == 0 {
        return false;
    }
    let step = chance.below(count);
    if chance.percent(25) {
        match chance.below(4) {
            0 => _ = proof.steps.remove(step),
            1 => proof.steps.insert(step, Step::Leaf(Vec::new())),
            2 => proof.steps.swap(step, count - 1 - step),
            _ => proof.steps[step] = Step::Leaf(Vec::new()),
        }
        return true;
    }
    match &mut proof.steps[step] {
        Step::Split(decision) => {
            *decision = match *decision {
                Decision::Supplied(group) => Decision::Supplied(group.wrapping_add(chance.below(3)).wrapping_sub(1)),
                Decision::Chosen { link, forward } if chance.percent(50) => {
                    Decision::Chosen { link, forward: !forward }
                }
                Decision::Chosen { link, forward } => Decision::Chosen { link: link + 1, forward },
            };
            true
        }
        Step::Leaf(cuts) | Step::GiveUp(cuts) => tamper_with_cuts(chance, cuts),
    }
}

fn tamper_with_cuts(chance: &mut Chance, cuts: &mut Vec<Cut>) -> bool {
    if cuts.is_empty() {
        let groups = vec![chance.below(6)];
        let value = Cost { cents: chance.below(90) as i64 - 40, openings: 0, devices: 0 };
        let toward = Toward::Group(groups[0]);
        cuts.push(Cut { value, toward, groups, lands: Vec::new(), suits: Vec::new() });
        return true;
    }
    let at = chance.below(cuts.len());
    let cut = &mut cuts[at];
    match chance.below(10) {
        0 => cut.value.cents = cut.value.cents.wrapping_add(1 + chance.below(50) as i64),
        1 => cut.value.cents = !cut.value.cents,
        2 => cut.value.cents = i64::MAX - chance.below(9) as i64,
        3 => cut.groups.retain(|_| chance.percent(60)),
        4 => cut.groups.push(chance.below(8)),
        5 => cut.toward = Toward::Group(chance.below(8)),
        6 => cut.toward = Toward::Node { tree: chance.below(3), node: chance.below(5) },
        7 => cut.lands.push((chance.below(4), chance.below(4))),
        8 if chance.percent(50) => cut.suits.push((chance.below(4), chance.below(4))),
        8 => (cut.lands, cut.suits) = (Vec::new(), Vec::new()),
        _ => cuts.extend(cuts[at..=at].to_vec()),
    }
    true
}

/// By trying everything: whatever is changed, what the checker then accepts is still true, and most is refused.
#[test]
fn a_certificate_that_was_tampered_with_proves_nothing_that_is_false() {
    let (mut refused, mut accepted, mut kinds) = (0, 0, [0; 6]);
    for seed in 1..=PROBLEMS {
        let mut chance = Chance::new(seed);
        let problem = random_problem(&mut chance, LINKED);
        let (_, mut certificate) = certified(&problem, &Limits::default(), &[]);
        let untouched = certificate.clone();
        let count = 1 + chance.below(3);
        let changed = (0..count).filter(|_| tamper(&mut chance, &mut certificate)).count();
        if changed == 0 || certificate == untouched {
            continue;
        }
        match check(&problem, &[], &certificate) {
            Err(fault) => {
                refused += 1;
                let kind = match fault {
                    Fault::WrongParts { .. } => 0,
                    Fault::WrongSteps { .. } => 1,
                    Fault::Meaningless { .. } => 2,
                    Fault::Overcharged { .. } => 3,
                    Fault::TooLow { .. } => 4,
                    _ => 5,
                };
                kinds[kind] += 1;
            }
            Ok(proved) => {
                accepted += 1;
                let is_true = match (proved, expected(&problem, &[])) {
                    (Proved::AtLeast(bound), Proved::AtLeast(cost)) => bound <= cost,
                    (Proved::NoSolution, found) => found == Proved::NoSolution,
                    (Proved::AtLeast(_), Proved::NoSolution) => true,
                };
                assert!(is_true, "seed {seed}: {proved:?}: {problem:#?} {certificate:#?}");
            }
        }
    }
    assert!(refused > 1000 && accepted > 100, "{refused} refused, {accepted} accepted");
    assert!(kinds.iter().all(|count| *count > 2), "{kinds:?}");
}

/// One node that costs 9 without supply and 1 with it, and a link of 7 from the source to its group.
fn one_node() -> Problem {
    let cost = |cents| Cost { cents, openings: 0, devices: 0 };
    let option = |cents, supply| NodeOption {
        cost: cost(cents),
        needs: Marks::NONE,
        own: Marks::NONE,
        gives: Marks::NONE,
        supply,
        most_landings: vec![1],
        count_limit: None,
        burden_limit: None,
    };
    let options = vec![option(9, SupplyNeed::Unsupplied), option(1, SupplyNeed::Supplied)];
    let node = Node { parent: None, behind_load: false, group: 1, burden: 0, count: 1, options };
    let root = RootOption { cost: cost(0), gives: Marks::NONE, burden_limit: None };
    let end = |group| LinkEnd { group, lands_at: None };
    let cost_by_grade = vec![cost(7)];
    Problem {
        trees: vec![Tree { root_options: vec![root], nodes: vec![node] }],
        groups: [true, false].map(|source| Group { source, grade: 0, carries: 0 }).to_vec(),
        links: vec![Link { from: end(0), to: end(1), both_ways: false, cost_by_grade, reparents: false }],
    }
}

/// By hand: charged the 7 that its link costs, the supply comes to 1 + 7 = 8, less than 9. Charged 6 it shows 7 and no
/// more; charged 8 the link pays more than it costs.
#[test]
fn a_cut_may_charge_a_link_what_it_costs_and_no_more() {
    let cost = |cents| Cost { cents, openings: 0, devices: 0 };
    let checked = |charged, claimed| {
        let toward = Toward::Node { tree: 0, node: 0 };
        let cut = Cut { value: cost(charged), toward, groups: vec![1], lands: Vec::new(), suits: Vec::new() };
        let proof = PartProof { bound: Some(cost(claimed)), steps: vec![Step::Leaf(vec![cut])] };
        check(&one_node(), &[], &Certificate { parts: vec![proof] })
    };
    assert_eq!(checked(7, 8), Ok(Proved::AtLeast(cost(8))));
    assert_eq!(checked(6, 7), Ok(Proved::AtLeast(cost(7))));
    assert_eq!(checked(6, 8), Err(Fault::TooLow { part: 0, step: 0, shown: cost(7) }));
    assert_eq!(checked(8, 8), Err(Fault::Overcharged { part: 0, step: 0, link: 0 }));
    let (_, made) = certified(&one_node(), &Limits::default(), &[]);
    assert_eq!(check(&one_node(), &[], &made), Ok(Proved::AtLeast(cost(8))));
}
