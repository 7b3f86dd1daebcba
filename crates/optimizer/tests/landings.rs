//! Links that land at nodes of other groups and other trees than those they supply.

use optimizer::{
    Cost, Group, Limits, Link, LinkEnd, Marks, Node, NodeOption, Outcome, Problem, RootOption, SupplyNeed, Tree, solve,
};

fn cents(cents: i64) -> Cost {
    Cost { cents, openings: 0, devices: 0 }
}

fn option(cost: i64, supply: SupplyNeed, most_landings: &[u32]) -> NodeOption {
    let (needs, own, gives) = (Marks::NONE, Marks::NONE, Marks::NONE);
    let most_landings = most_landings.to_vec();
    NodeOption { cost: cents(cost), needs, own, gives, supply, most_landings, count_limit: None, burden_limit: None }
}

fn tree(nodes: &[(usize, &[NodeOption])]) -> Tree {
    let node = |(group, options): &(usize, &[NodeOption])| {
        let (group, options) = (*group, options.to_vec());
        Node { parent: None, behind_load: false, group, burden: 0, count: 1, options }
    };
    let root = RootOption { cost: cents(0), gives: Marks::NONE, burden_limit: None };
    Tree { root_options: vec![root], nodes: nodes.iter().map(node).collect() }
}

fn link(from: (usize, Option<(usize, usize)>), to: (usize, Option<(usize, usize)>), by_grade: &[i64]) -> Link {
    let end = |(group, lands_at)| LinkEnd { group, lands_at };
    let cost_by_grade = by_grade.iter().copied().map(cents).collect();
    Link { from: end(from), to: end(to), both_ways: false, cost_by_grade, reparents: false }
}

fn groups(grades: &[usize]) -> Vec<Group> {
    let group = |(place, grade): (usize, &usize)| Group { source: place == 0, grade: *grade, carries: 1 };
    grades.iter().enumerate().map(group).collect()
}

fn cost(problem: &Problem) -> i64 {
    match solve(problem, &Limits::default()) {
        Outcome::Optimal(solution) => solution.cost.cents,
        other => panic!("{other:?}"),
    }
}

/// By hand: the first link, −18, is paid for being chosen and needs the option of −24 at the other tree's node: −42 in all,
/// against −35 without it.
#[test]
fn a_link_that_lands_in_another_tree_may_be_worth_a_dearer_choice_there() {
    let any = SupplyNeed::Any;
    let problem = Problem {
        trees: vec![
            tree(&[(1, &[option(0, any, &[])])]),
            tree(&[(0, &[option(-35, any, &[]), option(-24, any, &[1])])]),
        ],
        groups: groups(&[0, 0]),
        links: vec![link((0, None), (1, Some((1, 0))), &[-18])],
    };
    assert_eq!(cost(&problem), -42);
}

/// By hand: both links, 3 and 4, spare the 20 of the last node, at 1 for the room where the second one begins: 8. That
/// one carries the lower grade, whatever its group's supply carries.
#[test]
fn a_link_that_leaves_a_group_may_carry_less_than_the_one_that_supplies_it() {
    let (any, supplied, unsupplied) = (SupplyNeed::Any, SupplyNeed::Supplied, SupplyNeed::Unsupplied);
    let problem = Problem {
        trees: vec![tree(&[
            (1, &[option(0, any, &[9, 9])]),
            (1, &[option(0, any, &[]), option(1, any, &[1]), option(9, any, &[1, 1])]),
            (2, &[option(20, unsupplied, &[]), option(0, supplied, &[1])]),
        ])],
        groups: groups(&[0, 1, 0]),
        links: vec![link((0, None), (1, Some((0, 0))), &[2, 3]), link((1, Some((0, 1))), (2, Some((0, 2))), &[4, 6])],
    };
    assert_eq!(cost(&problem), 8);
}
