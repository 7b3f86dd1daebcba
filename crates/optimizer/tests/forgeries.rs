//! The checker accepts the search's solution and refuses forged ones for the named reason.

use optimizer::{
    Cost, Fault, Group, Limits, Link, LinkEnd, Marks, Node, NodeOption, Outcome, Problem, RootOption, Solution,
    SupplyNeed, Tree, check, solve,
};

const MARK: Marks = Marks(1);

fn cents(cents: i64) -> Cost {
    Cost { cents, openings: 0, devices: 0 }
}

fn plain(cost: i64) -> NodeOption {
    NodeOption {
        cost: cents(cost),
        needs: Marks::NONE,
        own: Marks::NONE,
        gives: Marks::NONE,
        supply: SupplyNeed::Any,
        most_landings: vec![1, 1],
        count_limit: None,
        burden_limit: None,
    }
}

fn node(parent: Option<usize>, group: usize, options: Vec<NodeOption>) -> Node {
    Node { parent, behind_load: true, group, burden: 2, count: 1, options }
}

fn end(group: usize, node: Option<usize>) -> LinkEnd {
    LinkEnd { group, lands_at: node.map(|node| (0, node)) }
}

fn link(from: LinkEnd, to: LinkEnd, cost: i64, reparents: bool) -> Link {
    Link { from, to, both_ways: false, cost_by_grade: vec![cents(cost), cents(cost + 1)], reparents }
}

/// A chain of four nodes: the first gives the mark that the second needs; the third needs supply, which comes from the
/// source through the second's group; the fourth needs nothing.
fn problem() -> Problem {
    let gives = NodeOption { gives: MARK, count_limit: Some(3), burden_limit: Some(8), ..plain(5) };
    let needs = NodeOption { needs: MARK, ..plain(1) };
    let has = NodeOption { needs: MARK, own: MARK, burden_limit: Some(1), ..plain(0) };
    let supplied = NodeOption { supply: SupplyNeed::Supplied, ..plain(1) };
    let unsupplied = NodeOption { supply: SupplyNeed::Unsupplied, ..plain(0) };
    let nodes = vec![
        node(None, 1, vec![gives, plain(0)]),
        node(Some(0), 2, vec![needs, has]),
        node(Some(1), 3, vec![supplied]),
        node(Some(2), 4, vec![plain(0), unsupplied]),
    ];
    let root = |cost, gives, burden_limit| RootOption { cost: cents(cost), gives, burden_limit };
    let roots = vec![root(0, Marks::NONE, None), root(0, MARK, Some(7))];
    let group = |source, grade, carries| Group { source, grade, carries };
    Problem {
        trees: vec![Tree { root_options: roots, nodes }],
        groups: vec![group(true, 0, 1), group(false, 0, 0), group(false, 0, 1), group(false, 1, 0), group(false, 0, 0)],
        links: vec![
            link(end(0, None), end(2, Some(1)), 10, false),
            link(end(2, None), end(3, Some(2)), 10, false),
            link(end(0, None), end(3, Some(2)), 90, false),
            link(end(0, None), end(4, Some(3)), 90, true),
            link(end(3, Some(3)), end(1, Some(0)), 90, true),
            link(end(0, None), end(4, Some(3)), 90, true),
        ],
    }
}

/// By hand: option 0 at the first (5), option 0 at the second (1), links 0 and 1 at grade 1 (11 + 11), the third (1),
/// and the fourth for nothing: 29. Passing the supply through is cheaper than 90.
fn solution(problem: &Problem) -> Solution {
    match solve(problem, &Limits::default()) {
        Outcome::Optimal(solution) => {
            assert_eq!(solution.cost, cents(29));
            solution
        }
        other => panic!("{other:?}"),
    }
}

/// Changes the solution, and returns why the checker refuses it.
fn refused(change: impl FnOnce(&mut Problem, &mut Solution)) -> Vec<Fault> {
    let mut problem = problem();
    let mut solution = solution(&problem);
    change(&mut problem, &mut solution);
    check(&problem, &solution).expect_err("the forgery is accepted")
}

fn chosen(link: usize, grade: usize) -> optimizer::ChosenLink {
    optimizer::ChosenLink { link, forward: true, grade }
}

#[test]
fn the_search_s_own_solution_is_accepted() {
    let problem = problem();
    let solution = solution(&problem);
    assert_eq!(check(&problem, &solution), Ok(cents(29)));
    assert_eq!(solution.nodes[0][0].behind_load_children, [1]);
    assert_eq!(solution.links, [chosen(0, 1), chosen(1, 1)]);
    assert_eq!(solution.supplied, [true, false, true, true, false]);
}

#[test]
fn another_cost_is_refused() {
    let faults = refused(|_, solution| solution.cost = cents(28));
    assert_eq!(faults, [Fault::WrongCost { said: cents(28), found: cents(29) }]);
}

#[test]
fn a_missing_node_tree_or_group_is_refused() {
    assert_eq!(refused(|_, solution| solution.nodes[0].truncate(3)), [Fault::WrongShape]);
    assert_eq!(refused(|_, solution| solution.roots.clear()), [Fault::WrongShape]);
    assert_eq!(refused(|_, solution| solution.supplied.truncate(4)), [Fault::WrongShape]);
}

#[test]
fn links_that_are_not_there_or_stand_twice_are_refused() {
    assert_eq!(refused(|_, solution| solution.links[1].link = 77), [Fault::WrongLinks]);
    assert_eq!(refused(|_, solution| solution.links.insert(0, chosen(0, 1))), [Fault::WrongLinks]);
}

#[test]
fn a_link_against_its_way_is_refused() {
    assert!(refused(|_, solution| solution.links[1].forward = false).contains(&Fault::AgainstItsWay(1)));
}

#[test]
fn a_link_into_a_source_is_refused() {
    assert!(refused(|_, solution| solution.links[0].forward = false).contains(&Fault::IntoSource(0)));
    assert!(refused(|problem, _| problem.groups[3].source = true).contains(&Fault::IntoSource(1)));
}

#[test]
fn a_group_fed_twice_is_refused() {
    assert!(refused(|_, solution| solution.links.push(chosen(2, 1))).contains(&Fault::FedTwice(3)));
}

#[test]
fn a_link_that_no_supply_reaches_is_refused() {
    let faults = refused(|_, solution| solution.links.retain(|link| link.link != 0));
    assert!(faults.contains(&Fault::WithoutSupply(1)) && faults.contains(&Fault::WrongSupply(3)));
}

#[test]
fn a_supply_that_is_made_up_is_refused() {
    assert_eq!(refused(|_, solution| solution.supplied[4] = true), [Fault::WrongSupply(4)]);
}

#[test]
fn another_grade_is_refused() {
    assert!(refused(|_, solution| solution.links[0].grade = 0).contains(&Fault::WrongGrade(0)));
}

#[test]
fn a_grade_that_a_group_or_link_cannot_carry_is_refused() {
    assert_eq!(refused(|problem, _| problem.groups[2].carries = 0), [Fault::CannotCarry(1)]);
    assert_eq!(refused(|problem, _| problem.groups[0].carries = 0), [Fault::CannotCarry(0)]);
    assert_eq!(refused(|problem, _| problem.links[0].cost_by_grade.truncate(1)), [Fault::CannotCarry(0)]);
}

#[test]
fn nodes_hung_twice_below_themselves_or_into_another_tree_are_refused() {
    let twice = refused(|_, solution| solution.links.extend([chosen(3, 0), chosen(5, 0)]));
    assert!(twice.contains(&Fault::HungTwice((0, 3))));
    assert!(refused(|_, solution| solution.links.push(chosen(4, 0))).contains(&Fault::BelowItself((0, 0))));
    let elsewhere = refused(|problem, _| {
        problem.trees.push(Tree { root_options: Vec::new(), nodes: vec![node(None, 1, Vec::new())] });
        problem.links[0].from.lands_at = Some((1, 0));
        problem.links[0].reparents = true;
    });
    assert_eq!(elsewhere, [Fault::WrongShape]);
    let elsewhere = refused(|problem, solution| {
        problem.trees.push(problem.trees[0].clone());
        solution.roots.push(solution.roots[0]);
        solution.nodes.push(solution.nodes[0].clone());
        problem.links[0].from.lands_at = Some((1, 0));
        problem.links[0].reparents = true;
    });
    assert!(elsewhere.contains(&Fault::HangsIntoOtherTree(0)));
}

#[test]
fn options_that_are_not_there_are_refused() {
    assert_eq!(refused(|_, solution| solution.roots[0] = 2), [Fault::NoSuchRootOption(0)]);
    assert_eq!(refused(|_, solution| solution.nodes[0][3].option = 2), [Fault::NoSuchOption((0, 3))]);
}

/// By hand: four nodes of burden 2 are 8, more than 7.
#[test]
fn a_root_that_gives_marks_and_bears_less_is_refused() {
    assert_eq!(refused(|_, solution| solution.roots[0] = 1), [Fault::RootBurden(0)]);
}

#[test]
fn what_cannot_be_behind_a_load_side_is_refused() {
    let behind = |children: &[usize]| {
        let children = children.to_vec();
        refused(move |_, solution| solution.nodes[0][0].behind_load_children = children)
    };
    assert!(behind(&[2]).contains(&Fault::NotBehindLoad((0, 0))));
    assert!(behind(&[1, 1]).contains(&Fault::NotBehindLoad((0, 0))));
    assert!(behind(&[99]).contains(&Fault::NotBehindLoad((0, 0))));
    assert!(
        refused(|problem, _| problem.trees[0].nodes[1].behind_load = false).contains(&Fault::NotBehindLoad((0, 0)))
    );
}

#[test]
fn a_missing_mark_is_refused() {
    let faults = refused(|_, solution| solution.nodes[0][0].behind_load_children.clear());
    assert_eq!(faults, [Fault::MarkMissing((0, 1))]);
}

#[test]
fn a_supply_that_an_option_needs_or_must_not_have_is_refused() {
    let faults = refused(|problem, _| problem.trees[0].nodes[2].options[0].supply = SupplyNeed::Unsupplied);
    assert_eq!(faults, [Fault::SupplyNeed((0, 2))]);
    let faults = refused(|problem, _| problem.trees[0].nodes[3].options[0].supply = SupplyNeed::Supplied);
    assert_eq!(faults, [Fault::SupplyNeed((0, 3))]);
}

#[test]
fn too_many_landings_are_refused() {
    let faults = refused(|problem, _| problem.trees[0].nodes[2].options[0].most_landings = vec![1, 0]);
    assert_eq!(faults, [Fault::TooManyLandings((0, 2))]);
    let faults = refused(|problem, _| problem.trees[0].nodes[2].options[0].most_landings = vec![1]);
    assert_eq!(faults, [Fault::TooManyLandings((0, 2))]);
}

/// By hand: three nodes of burden 2 behind the first, which has 2 itself: count 3 > 2, burden 8 > 7.
#[test]
fn too_much_behind_a_load_side_is_refused() {
    let faults = refused(|problem, _| problem.trees[0].nodes[0].options[0].count_limit = Some(2));
    assert_eq!(faults, [Fault::CountBehind((0, 0))]);
    let faults = refused(|problem, _| problem.trees[0].nodes[0].options[0].burden_limit = Some(7));
    assert_eq!(faults, [Fault::BurdenBehind((0, 0))]);
}

#[test]
fn a_malformed_problem_is_refused() {
    let faults = refused(|problem, _| problem.trees[0].nodes[1].parent = Some(3));
    assert!(matches!(faults.as_slice(), [Fault::MalformedProblem(_)]));
}
