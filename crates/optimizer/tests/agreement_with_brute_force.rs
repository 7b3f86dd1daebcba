//! The search agrees with trying everything, on small random problems of varied shape.

mod support;

use optimizer::{Cost, Forced, Limits, Outcome, Problem, check, solve, solve_with};
use support::brute_force::{Rank, least};
use support::house_problem::house_problem;
use support::random_problem::{Chance, SMALL, random_forced, random_problem};

const PROBLEMS: u64 = 3000;

fn rank(outcome: &Outcome, problem: &Problem, seed: u64) -> Option<Rank> {
    match outcome {
        Outcome::Optimal(solution) => {
            assert_eq!(check(problem, solution), Ok(solution.cost), "seed {seed}");
            let sum = solution.links.iter().map(|link| link.link).sum();
            Some((solution.cost, solution.links.len(), sum))
        }
        Outcome::Infeasible => None,
        other => panic!("seed {seed}: {other:?}"),
    }
}

/// By trying everything: cents, openings, devices, number of links and sum of their indices all agree.
#[test]
fn the_search_finds_what_trying_everything_finds() {
    let (mut solved, mut with_links) = (0, 0);
    for seed in 1..=PROBLEMS {
        let problem = random_problem(&mut Chance::new(seed), SMALL);
        let expected = least(&problem, &[]);
        let found = rank(&solve(&problem, &Limits::default()), &problem, seed);
        assert_eq!(found, expected, "seed {seed}: {problem:#?}");
        solved += u64::from(expected.is_some());
        with_links += u64::from(expected.is_some_and(|(_, links, _)| links > 0));
    }
    assert!(solved > PROBLEMS / 3 && solved < PROBLEMS, "{solved} of {PROBLEMS} can be solved");
    assert!(with_links > PROBLEMS / 12, "{with_links} of {PROBLEMS} choose links");
}

/// By trying everything.
#[test]
fn what_is_laid_down_beforehand_costs_what_trying_everything_says() {
    let mut solved = 0;
    for seed in 1..=PROBLEMS {
        let mut chance = Chance::new(seed + 1_000_000);
        let problem = random_problem(&mut chance, SMALL);
        let forced = random_forced(&mut chance, &problem);
        let expected = least(&problem, &forced);
        let found = rank(&solve_with(&problem, &Limits::default(), &forced), &problem, seed);
        assert_eq!(found, expected, "seed {seed}: {forced:?} {problem:#?}");
        solved += u64::from(expected.is_some());
    }
    assert!(solved > PROBLEMS / 10, "{solved} of {PROBLEMS} can be solved");
}

/// By trying everything.
#[test]
fn a_search_that_is_stopped_never_claims_more_than_it_knows() {
    let mut stopped = 0;
    for seed in 1..=PROBLEMS {
        let problem = random_problem(&mut Chance::new(seed), SMALL);
        let expected: Option<Cost> = least(&problem, &[]).map(|(cost, ..)| cost);
        let limits = match seed % 6 {
            0 => Limits::nodes(1),
            1 => Limits::nodes(3),
            2 => Limits::nodes(9),
            3 => Limits { nodes: None, work: Some(1) },
            4 => Limits { nodes: None, work: Some(150) },
            _ => Limits { nodes: Some(9), work: Some(150) },
        };
        match solve(&problem, &limits) {
            Outcome::Optimal(solution) => assert_eq!(Some(solution.cost), expected, "seed {seed}"),
            Outcome::Infeasible => assert_eq!(None, expected, "seed {seed}"),
            Outcome::Best { solution, bound } => {
                let expected = expected.unwrap();
                assert!(bound <= expected && expected <= solution.cost, "seed {seed}");
                assert_eq!(check(&problem, &solution), Ok(solution.cost), "seed {seed}");
                stopped += 1;
            }
            Outcome::Stopped { bound } => {
                assert!(expected.is_none_or(|expected| bound <= expected), "seed {seed}");
                stopped += 1;
            }
            Outcome::Malformed(faults) => panic!("seed {seed}: {faults:?}"),
        }
    }
    assert!(stopped > 20, "{stopped} were stopped");
}

/// By definition: the least of all is the lesser of the least with a link and the least without it.
#[test]
fn a_house_costs_the_lesser_of_what_it_costs_with_a_link_and_without_it() {
    let mut chosen = 0;
    for seed in 1..=12 {
        let problem = house_problem(&mut Chance::new(seed), 8);
        let cost = |forced: &[Forced]| {
            let found = solve_with(&problem, &Limits::default(), forced);
            assert!(matches!(found, Outcome::Optimal(_) | Outcome::Infeasible), "seed {seed}: {found:?}");
            found.solution().map(|solution| solution.cost)
        };
        let best = solve(&problem, &Limits::default());
        chosen += best.solution().map_or(0, |solution| solution.links.len());
        for link in (0..problem.links.len()).step_by(4) {
            let halves = [true, false].map(|chosen| cost(&[Forced::Link { link, chosen }]));
            let least = halves.into_iter().flatten().min();
            assert_eq!(least, best.solution().map(|solution| solution.cost), "seed {seed}, link {link}");
        }
    }
    assert!(chosen > 12, "{chosen} links are chosen");
}

/// Without end of work the search is whole; no work is as much as no nodes, whichever of the two is told.
#[test]
fn a_search_stops_where_its_work_is_done() {
    let mut stopped = 0;
    for seed in 1..=PROBLEMS {
        let problem = random_problem(&mut Chance::new(seed), SMALL);
        let of_work = |work: u64| solve(&problem, &Limits { nodes: None, work: Some(work) });
        let whole = solve(&problem, &Limits::default());
        assert_eq!(of_work(u64::MAX), whole, "seed {seed}");
        assert_eq!(solve(&problem, &Limits { nodes: Some(0), work: Some(u64::MAX) }), of_work(0), "seed {seed}");
        stopped += u64::from(of_work(0) != whole);
    }
    assert!(stopped > PROBLEMS / 20, "{stopped} of {PROBLEMS} searches were stopped");
}
