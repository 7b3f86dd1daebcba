//! What can be asked: malformed questions, choices laid down beforehand, ties, and independent parts.

use optimizer::{
    Cost, Forced, Group, Limits, Link, LinkEnd, Marks, Node, NodeOption, Outcome, Problem, RootOption, SupplyNeed,
    Tree, solve, solve_with,
};

fn cents(cents: i64) -> Cost {
    Cost { cents, openings: 0, devices: 0 }
}

fn option(cost: i64, supply: SupplyNeed) -> NodeOption {
    let (needs, own, gives) = (Marks::NONE, Marks::NONE, Marks::NONE);
    let cost = cents(cost);
    NodeOption { cost, needs, own, gives, supply, most_landings: vec![9], count_limit: None, burden_limit: None }
}

/// One node in group 1 that costs 9 unsupplied and 1 supplied, and links from the source at these costs.
fn one_node(links: &[i64]) -> Problem {
    let options = vec![option(9, SupplyNeed::Unsupplied), option(1, SupplyNeed::Supplied)];
    let node = Node { parent: None, behind_load: false, group: 1, burden: 0, count: 1, options };
    let root = RootOption { cost: cents(0), gives: Marks::NONE, burden_limit: None };
    let end = |group| LinkEnd { group, lands_at: None };
    let link = |cost: &i64| Link {
        from: end(0),
        to: end(1),
        both_ways: false,
        cost_by_grade: vec![cents(*cost)],
        reparents: false,
    };
    Problem {
        trees: vec![Tree { root_options: vec![root], nodes: vec![node] }],
        groups: vec![Group { source: true, grade: 0, carries: 0 }, Group { source: false, grade: 0, carries: 0 }],
        links: links.iter().map(link).collect(),
    }
}

fn cost(outcome: &Outcome) -> i64 {
    match outcome {
        Outcome::Optimal(solution) => solution.cost.cents,
        other => panic!("{other:?}"),
    }
}

fn links(outcome: &Outcome) -> Vec<usize> {
    outcome.solution().expect("a solution").links.iter().map(|link| link.link).collect()
}

/// By hand: supplied 1 + 7 = 8 against 9; without that option 9; with the dearer link 1 + 8.
#[test]
fn the_next_best_is_what_is_left_when_the_best_is_not_allowed() {
    let problem = one_node(&[7, 8]);
    let with = |forced: Forced| solve_with(&problem, &Limits::default(), &[forced]);
    assert_eq!(cost(&solve(&problem, &Limits::default())), 8);
    assert_eq!(cost(&with(Forced::Option { tree: 0, node: 0, allowed: vec![0] })), 9);
    assert_eq!(cost(&with(Forced::Link { link: 1, chosen: true })), 9);
    assert_eq!(cost(&with(Forced::Link { link: 0, chosen: false })), 9);
    assert_eq!(with(Forced::Root { tree: 0, allowed: Vec::new() }), Outcome::Infeasible);
}

#[test]
fn what_contradicts_itself_has_no_solution() {
    let problem = one_node(&[7, 8]);
    let both = [Forced::Link { link: 0, chosen: true }, Forced::Link { link: 1, chosen: true }];
    assert_eq!(solve_with(&problem, &Limits::default(), &both), Outcome::Infeasible);
    let either = [Forced::Link { link: 0, chosen: true }, Forced::Link { link: 0, chosen: false }];
    assert_eq!(solve_with(&problem, &Limits::default(), &either), Outcome::Infeasible);
}

#[test]
fn of_equal_costs_the_fewest_links_are_taken_and_of_those_the_lowest() {
    assert_eq!(links(&solve(&one_node(&[8, 8]), &Limits::default())), [] as [usize; 0]);
    assert_eq!(links(&solve(&one_node(&[8, 7, 7]), &Limits::default())), [1]);
}

#[test]
fn an_opening_decides_between_equal_cents() {
    let mut problem = one_node(&[7, 7]);
    problem.links[0].cost_by_grade[0].openings = 1;
    assert_eq!(links(&solve(&problem, &Limits::default())), [1]);
}

/// By hand: twenty such dwellings side by side cost twenty times 8, each searched for itself within its own nodes.
#[test]
fn independent_parts_are_searched_for_themselves() {
    let one = one_node(&[7, 8]);
    let mut problem = Problem { trees: Vec::new(), groups: vec![one.groups[0]], links: Vec::new() };
    for _ in 0..20 {
        let group = problem.groups.len();
        let mut tree = one.trees[0].clone();
        tree.nodes[0].group = group;
        problem.trees.push(tree);
        problem.groups.push(one.groups[1]);
        for link in &one.links {
            let mut link = link.clone();
            link.to.group = group;
            problem.links.push(link);
        }
    }
    let outcome = solve(&problem, &Limits::nodes(1));
    assert_eq!(cost(&outcome), 160);
}

#[test]
fn a_malformed_question_says_everything_that_is_wrong() {
    let mut problem = one_node(&[7]);
    problem.trees[0].nodes[0].group = 5;
    problem.trees[0].nodes[0].burden = -1;
    problem.links[0].reparents = true;
    problem.trees[0].root_options[0].gives = Marks(16);
    problem.links[0].cost_by_grade.push(cents(i64::MAX));
    let forced = [Forced::Link { link: 7, chosen: true }];
    match solve_with(&problem, &Limits::default(), &forced) {
        Outcome::Malformed(faults) => assert_eq!(faults.len(), 6, "{faults:?}"),
        other => panic!("{other:?}"),
    }
}

#[test]
fn nothing_at_all_costs_nothing() {
    assert_eq!(cost(&solve(&Problem::default(), &Limits::default())), 0);
}
