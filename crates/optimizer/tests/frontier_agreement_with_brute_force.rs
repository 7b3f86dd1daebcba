//! The frontier is what trying everything leaves when all that is beaten is struck out.

mod support;

use optimizer::{Forced, Frontier, Limits, Problem, check, frontier};
use support::brute_force::wholes;
use support::house_problem::house_problem;
use support::random_problem::{Chance, SMALL, random_forced, random_problem};

const PROBLEMS: u64 = 1500;

/// Cents, openings, worth.
type Triple = (i64, i64, u64);

fn is_as_good(one: &Triple, other: &Triple) -> bool {
    one.0 <= other.0 && one.1 <= other.1 && one.2 >= other.2
}

fn random_worth(chance: &mut Chance, groups: usize) -> Vec<u64> {
    let most = [2, 5, 20][chance.below(3)];
    (0..groups).map(|_| chance.below(most) as u64).collect()
}

/// The triples of a frontier's points, each checked.
fn triples(problem: &Problem, worth: &[u64], found: &Frontier, seed: u64) -> Vec<Triple> {
    let triple = |point: &optimizer::FrontierPoint| {
        let solution = &point.solution;
        assert_eq!(check(problem, solution), Ok(solution.cost), "seed {seed}");
        let supplied = solution.supplied.iter().zip(worth).filter(|(supplied, _)| **supplied);
        assert_eq!(point.worth, supplied.map(|(_, worth)| worth).sum::<u64>(), "seed {seed}");
        (solution.cost.cents, solution.cost.openings, point.worth)
    };
    found.points.iter().map(triple).collect()
}

/// By trying everything.
fn expected(problem: &Problem, worth: &[u64], most_cents: i64, forced: &[Forced]) -> Vec<Triple> {
    let all = wholes(problem, forced).into_iter().filter(|(cents, ..)| *cents <= most_cents);
    let mut all: Vec<Triple> = all
        .map(|(cents, openings, supplied)| {
            let of_supplied = supplied.iter().zip(worth).filter(|(supplied, _)| **supplied).map(|(_, worth)| worth);
            (cents, openings, of_supplied.sum())
        })
        .collect();
    all.sort_unstable();
    all.dedup();
    let beaten = |this: &Triple| all.iter().any(|other| other != this && is_as_good(other, this));
    all.iter().filter(|this| !beaten(this)).copied().collect()
}

/// By trying everything: cents, openings and worth of every point agree.
#[test]
fn the_frontier_is_what_trying_everything_leaves() {
    let (mut points, mut longest) = (0, 0);
    for seed in 1..=PROBLEMS {
        let mut chance = Chance::new(seed + 40_000_000);
        eprintln!("seed {seed}");
        let problem = random_problem(&mut chance, SMALL);
        let worth = random_worth(&mut chance, problem.groups.len());
        let found = frontier(&problem, &worth, i64::MAX, &[], &Limits::default());
        assert!(found.complete, "seed {seed}");
        let told = triples(&problem, &worth, &found, seed);
        assert_eq!(told, expected(&problem, &worth, i64::MAX, &[]), "seed {seed}: {worth:?} {problem:#?}");
        points += told.len();
        longest = longest.max(told.len());
    }
    assert!(points > PROBLEMS as usize && longest > 8, "{points} points, {longest} on one frontier");
}

/// By trying everything.
#[test]
fn what_is_laid_down_and_a_sum_of_money_are_kept_to() {
    let (mut points, mut empty) = (0, 0);
    for seed in 1..=PROBLEMS {
        let mut chance = Chance::new(seed + 50_000_000);
        eprintln!("seed {seed}");
        let problem = random_problem(&mut chance, SMALL);
        let worth = random_worth(&mut chance, problem.groups.len());
        let forced = if chance.percent(60) { random_forced(&mut chance, &problem) } else { Vec::new() };
        let most_cents = chance.below(80) as i64 - 10;
        let found = frontier(&problem, &worth, most_cents, &forced, &Limits::default());
        assert!(found.complete, "seed {seed}");
        let told = triples(&problem, &worth, &found, seed);
        let expected = expected(&problem, &worth, most_cents, &forced);
        assert_eq!(told, expected, "seed {seed}: {most_cents} {forced:?} {worth:?} {problem:#?}");
        points += told.len();
        empty += u64::from(told.is_empty());
    }
    assert!(points > PROBLEMS as usize / 3 && empty > 20, "{points} points, {empty} frontiers without any");
}

#[test]
fn a_search_that_is_stopped_tells_only_points_that_hold_and_never_claims_to_be_whole() {
    let mut stopped = 0;
    for seed in 1..=PROBLEMS {
        let mut chance = Chance::new(seed + 40_000_000);
        eprintln!("seed {seed}");
        let problem = random_problem(&mut chance, SMALL);
        let worth = random_worth(&mut chance, problem.groups.len());
        let nodes = Some(1 + chance.below(20) as u64);
        let found = frontier(&problem, &worth, i64::MAX, &[], &Limits { nodes, work: None });
        let told = triples(&problem, &worth, &found, seed);
        let whole = frontier(&problem, &worth, i64::MAX, &[], &Limits::default());
        if found.complete {
            assert_eq!(found, whole, "seed {seed}");
        } else {
            let all = triples(&problem, &worth, &whole, seed);
            assert!(told.iter().all(|this| all.iter().any(|best| is_as_good(best, this))), "seed {seed}");
            stopped += 1;
        }
    }
    assert!(stopped > 100, "{stopped} were stopped");
}

#[test]
fn points_of_a_house_do_not_beat_one_another_and_come_again_the_same() {
    let limits = Limits::nodes(1_000);
    let mut points = 0;
    for seed in 1..=8 {
        let problem = house_problem(&mut Chance::new(seed), 6);
        let worth: Vec<u64> = (0..problem.groups.len()).map(|group| [1, 2, 4][group % 3]).collect();
        let found = frontier(&problem, &worth, i64::MAX, &[], &limits);
        assert_eq!(found, frontier(&problem, &worth, i64::MAX, &[], &limits), "seed {seed}");
        let told = triples(&problem, &worth, &found, seed);
        for (place, this) in told.iter().enumerate() {
            let beaten = told.iter().enumerate().any(|(at, other)| at != place && is_as_good(other, this));
            assert!(!beaten, "seed {seed}: {this:?}");
        }
        points += told.len();
    }
    assert!(points > 16, "{points} points");
}

#[test]
fn a_malformed_question_has_no_frontier() {
    let problem = random_problem(&mut Chance::new(1), SMALL);
    let forced = [Forced::Link { link: 1_000, chosen: true }];
    assert_eq!(frontier(&problem, &[], 0, &forced, &Limits::default()), Frontier::default());
}
