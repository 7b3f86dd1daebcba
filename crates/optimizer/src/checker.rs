//! The checker: every condition of the problem held against a solution, and its cost added up anew. It shares nothing
//! with the search but the problem.

use std::fmt;

use crate::problem::{Cost, Marks, Node, NodeOption, Problem, SupplyNeed};
use crate::solution::Solution;

/// Why a solution is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The problem itself is malformed.
    MalformedProblem(Vec<String>),
    /// The solution does not have as many trees, nodes or groups as the problem.
    WrongShape,
    /// A link is not there, is chosen twice, or the links do not stand by rising index.
    WrongLinks,
    /// The link flows against its way.
    AgainstItsWay(usize),
    /// The link flows into a source.
    IntoSource(usize),
    /// More than one link flows into the group.
    FedTwice(usize),
    /// The link leaves a group that no supply reaches.
    WithoutSupply(usize),
    /// The group is said to be supplied and is not, or the other way round.
    WrongSupply(usize),
    /// The link carries another grade than it must.
    WrongGrade(usize),
    /// The link, or the group it leaves, cannot carry its grade.
    CannotCarry(usize),
    /// The link hangs a node into another tree.
    HangsIntoOtherTree(usize),
    /// Two links hang one node.
    HungTwice(Place),
    /// The node hangs below itself.
    BelowItself(Place),
    /// The root option is not there.
    NoSuchRootOption(usize),
    /// The burden of the tree is more than its root option bears.
    RootBurden(usize),
    /// The node's option is not there.
    NoSuchOption(Place),
    /// What is put behind the node's load side is no child of it, cannot be put there, or stands there twice.
    NotBehindLoad(Place),
    /// A mark that the option needs does not hold.
    MarkMissing(Place),
    /// The option needs a supply that its group does not have, or must not have.
    SupplyNeed(Place),
    /// More links land at the node than may.
    TooManyLandings(Place),
    /// The count behind the node's load side is more than the option allows.
    CountBehind(Place),
    /// The burden behind the node is more than the option allows.
    BurdenBehind(Place),
    /// The cost is another.
    WrongCost {
        /// What the solution says.
        said: Cost,
        /// What it costs.
        found: Cost,
    },
}

/// A tree and a node in it.
pub type Place = (usize, usize);

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::MalformedProblem(faults) => write!(out, "the problem is malformed: {}", faults.join("; ")),
            Self::WrongShape => out.write_str("the solution has not the shape of the problem"),
            Self::WrongLinks => out.write_str("the chosen links are not links of the problem by rising index"),
            Self::AgainstItsWay(link) => write!(out, "link {link} flows against its way"),
            Self::IntoSource(link) => write!(out, "link {link} flows into a source"),
            Self::FedTwice(group) => write!(out, "two links flow into group {group}"),
            Self::WithoutSupply(link) => write!(out, "link {link} leaves a group that no supply reaches"),
            Self::WrongSupply(group) => write!(out, "the supply of group {group} is not as said"),
            Self::WrongGrade(link) => write!(out, "link {link} carries another grade than it must"),
            Self::CannotCarry(link) => write!(out, "the grade of link {link} cannot be carried"),
            Self::HangsIntoOtherTree(link) => write!(out, "link {link} hangs a node into another tree"),
            Self::HungTwice(at) => write!(out, "two links hang node {} of tree {}", at.1, at.0),
            Self::BelowItself(at) => write!(out, "node {} of tree {} hangs below itself", at.1, at.0),
            Self::NoSuchRootOption(tree) => write!(out, "the root option of tree {tree} is not there"),
            Self::RootBurden(tree) => write!(out, "the burden of tree {tree} is more than its root bears"),
            Self::NoSuchOption(at) => write!(out, "the option of node {} of tree {} is not there", at.1, at.0),
            Self::NotBehindLoad(at) => {
                write!(out, "a child cannot be behind the load side of node {} of tree {}", at.1, at.0)
            }
            Self::MarkMissing(at) => write!(out, "a mark is missing at node {} of tree {}", at.1, at.0),
            Self::SupplyNeed(at) => write!(out, "the supply is wrong for node {} of tree {}", at.1, at.0),
            Self::TooManyLandings(at) => write!(out, "too many links land at node {} of tree {}", at.1, at.0),
            Self::CountBehind(at) => write!(out, "the count is too high behind node {} of tree {}", at.1, at.0),
            Self::BurdenBehind(at) => write!(out, "the burden is too high behind node {} of tree {}", at.1, at.0),
            Self::WrongCost { said, found } => write!(out, "the cost is {found:?}, not {said:?}"),
        }
    }
}

impl std::error::Error for Fault {}

/// Checks a solution against the problem and returns what it costs.
///
/// # Errors
/// Everything found wrong; what rests on a fault of the shape or the links is not looked at.
pub fn check(problem: &Problem, solution: &Solution) -> Result<Cost, Vec<Fault>> {
    let malformed = problem.faults();
    if !malformed.is_empty() {
        return Err(vec![Fault::MalformedProblem(malformed)]);
    }
    if !has_shape(problem, solution) {
        return Err(vec![Fault::WrongShape]);
    }
    let rising = solution.links.windows(2).all(|pair| pair[0].link < pair[1].link);
    if !rising || solution.links.iter().any(|chosen| chosen.link >= problem.links.len()) {
        return Err(vec![Fault::WrongLinks]);
    }
    let mut faults = Vec::new();
    let mut cost = check_links(problem, solution, &mut faults);
    for tree in 0..problem.trees.len() {
        if let Some(parents) = parents(problem, solution, tree, &mut faults) {
            cost = cost + check_tree(problem, solution, tree, &parents, &mut faults);
        }
    }
    if faults.is_empty() && cost != solution.cost {
        faults.push(Fault::WrongCost { said: solution.cost, found: cost });
    }
    if faults.is_empty() { Ok(cost) } else { Err(faults) }
}

fn has_shape(problem: &Problem, solution: &Solution) -> bool {
    let same_nodes = || problem.trees.iter().zip(&solution.nodes).all(|(tree, nodes)| tree.nodes.len() == nodes.len());
    solution.roots.len() == problem.trees.len()
        && solution.nodes.len() == problem.trees.len()
        && solution.supplied.len() == problem.groups.len()
        && same_nodes()
}

/// Checks the links and returns their cost.
fn check_links(problem: &Problem, solution: &Solution, faults: &mut Vec<Fault>) -> Cost {
    let mut fed_from: Vec<Option<usize>> = vec![None; problem.groups.len()];
    for chosen in &solution.links {
        let link = &problem.links[chosen.link];
        if !chosen.forward && !link.both_ways {
            faults.push(Fault::AgainstItsWay(chosen.link));
        }
        let (tail, head) = ends(problem, chosen.link, chosen.forward);
        if problem.groups[head].source {
            faults.push(Fault::IntoSource(chosen.link));
        } else if fed_from[head].is_some() {
            faults.push(Fault::FedTwice(head));
        } else {
            fed_from[head] = Some(tail);
        }
    }
    let is_supplied: Vec<bool> =
        (0..problem.groups.len()).map(|group| comes_from_source(problem, &fed_from, group)).collect();
    for (group, supplied) in is_supplied.iter().enumerate() {
        if *supplied != solution.supplied[group] {
            faults.push(Fault::WrongSupply(group));
        }
    }
    let mut cost = Cost::default();
    for chosen in &solution.links {
        let (tail, head) = ends(problem, chosen.link, chosen.forward);
        if !is_supplied[tail] {
            faults.push(Fault::WithoutSupply(chosen.link));
        }
        if grade_beyond(problem, &fed_from, head) != chosen.grade {
            faults.push(Fault::WrongGrade(chosen.link));
        }
        match problem.links[chosen.link].cost_by_grade.get(chosen.grade) {
            Some(of_link) if problem.groups[tail].carries >= chosen.grade => cost = cost + *of_link,
            _ => faults.push(Fault::CannotCarry(chosen.link)),
        }
    }
    cost
}

fn ends(problem: &Problem, link: usize, forward: bool) -> (usize, usize) {
    let (from, to) = (problem.links[link].from.group, problem.links[link].to.group);
    if forward { (from, to) } else { (to, from) }
}

fn comes_from_source(problem: &Problem, fed_from: &[Option<usize>], group: usize) -> bool {
    let mut at = group;
    for _ in 0..=fed_from.len() {
        match fed_from[at] {
            _ if problem.groups[at].source => return true,
            Some(tail) => at = tail,
            None => return false,
        }
    }
    false
}

/// The highest grade of the group and of all whose supply comes through it.
fn grade_beyond(problem: &Problem, fed_from: &[Option<usize>], group: usize) -> usize {
    let comes_through = |other: usize| {
        let mut at = Some(other);
        for _ in 0..=fed_from.len() {
            match at {
                Some(here) if here == group => return true,
                Some(here) => at = fed_from[here],
                None => return false,
            }
        }
        false
    };
    let beyond = (0..fed_from.len()).filter(|other| comes_through(*other));
    beyond.map(|other| problem.groups[other].grade).max().unwrap_or(0)
}

/// A node's parent, and whether the node can be behind that one's load side.
type Hanging = (Option<usize>, bool);

/// Returns how each node of the tree hangs, or `None` where the links leave no tree.
fn parents(problem: &Problem, solution: &Solution, tree: usize, faults: &mut Vec<Fault>) -> Option<Vec<Hanging>> {
    let before = faults.len();
    let nodes = &problem.trees[tree].nodes;
    let mut hanging: Vec<Hanging> = nodes.iter().map(|node| (node.parent, node.behind_load)).collect();
    let mut is_hung = vec![false; nodes.len()];
    for chosen in &solution.links {
        let link = &problem.links[chosen.link];
        let Some((_, node)) = link.to.lands_at.filter(|(of, _)| link.reparents && *of == tree) else { continue };
        if is_hung[node] {
            faults.push(Fault::HungTwice((tree, node)));
        }
        is_hung[node] = true;
        hanging[node] = (link.from.lands_at.map(|(_, parent)| parent), false);
        if link.from.lands_at.is_some_and(|(of, _)| of != tree) {
            faults.push(Fault::HangsIntoOtherTree(chosen.link));
        }
    }
    if faults.len() > before {
        return None;
    }
    for node in 0..nodes.len() {
        let mut above = hanging[node].0;
        for _ in 0..nodes.len() {
            above = above.and_then(|above| hanging[above].0);
        }
        if above.is_some() {
            faults.push(Fault::BelowItself((tree, node)));
        }
    }
    (faults.len() == before).then_some(hanging)
}

/// Checks a tree's choices and returns their cost.
fn check_tree(
    problem: &Problem,
    solution: &Solution,
    tree: usize,
    hanging: &[Hanging],
    faults: &mut Vec<Fault>,
) -> Cost {
    let nodes = &problem.trees[tree].nodes;
    let Some(root) = problem.trees[tree].root_options.get(solution.roots[tree]) else {
        faults.push(Fault::NoSuchRootOption(tree));
        return Cost::default();
    };
    let mut options: Vec<&NodeOption> = Vec::with_capacity(nodes.len());
    for (place, (node, choice)) in nodes.iter().zip(&solution.nodes[tree]).enumerate() {
        match node.options.get(choice.option) {
            Some(option) => options.push(option),
            None => faults.push(Fault::NoSuchOption((tree, place))),
        }
    }
    if options.len() < nodes.len() {
        return Cost::default();
    }
    let burden: i64 = nodes.iter().map(|node| node.burden).sum();
    if root.gives != Marks::NONE && root.burden_limit.is_some_and(|limit| burden > limit) {
        faults.push(Fault::RootBurden(tree));
    }
    for (place, option) in options.iter().enumerate() {
        let at = (tree, place);
        let behind = &solution.nodes[tree][place].behind_load_children;
        let is_child = |child: &usize| hanging.get(*child) == Some(&(Some(place), true));
        if !behind.iter().all(is_child) || !behind.windows(2).all(|pair| pair[0] < pair[1]) {
            faults.push(Fault::NotBehindLoad(at));
            continue;
        }
        let sees = seen_at(solution, tree, hanging, &options, root.gives, place);
        if !(sees | option.own).covers(option.needs) {
            faults.push(Fault::MarkMissing(at));
        }
        let supplied = solution.supplied[nodes[place].group];
        if (option.supply == SupplyNeed::Supplied && !supplied) || (option.supply == SupplyNeed::Unsupplied && supplied)
        {
            faults.push(Fault::SupplyNeed(at));
        }
        if !landings_hold(problem, solution, at, option) {
            faults.push(Fault::TooManyLandings(at));
        }
        check_behind(nodes, hanging, option, behind, at, faults);
    }
    root.cost + options.iter().map(|option| option.cost).sum()
}

/// The marks that a node sees.
fn seen_at(
    solution: &Solution,
    tree: usize,
    hanging: &[Hanging],
    options: &[&NodeOption],
    from_root: Marks,
    node: usize,
) -> Marks {
    let (mut marks, mut below) = (from_root, node);
    while let Some(above) = hanging[below].0 {
        if solution.nodes[tree][above].behind_load_children.contains(&below) {
            marks = marks | options[above].gives;
        }
        below = above;
    }
    marks
}

fn landings_hold(problem: &Problem, solution: &Solution, at: Place, option: &NodeOption) -> bool {
    let (mut landings, mut highest) = (0_u32, 0);
    for chosen in &solution.links {
        let link = &problem.links[chosen.link];
        for end in [link.from, link.to] {
            if end.lands_at == Some(at) {
                landings += 1;
                highest = highest.max(chosen.grade);
            }
        }
    }
    landings == 0 || option.most_landings.get(highest).is_some_and(|most| landings <= *most)
}

fn check_behind(
    nodes: &[Node],
    hanging: &[Hanging],
    option: &NodeOption,
    behind: &[usize],
    at: Place,
    faults: &mut Vec<Fault>,
) {
    let (mut count, mut burden) = (0_u64, i128::from(nodes[at.1].burden));
    // Behind nothing there is nothing: most nodes, so that long chains are checked in good time.
    let looked_at = if behind.is_empty() { &[] } else { nodes };
    for (place, node) in looked_at.iter().enumerate() {
        let mut up = Some(place);
        while let Some(here) = up {
            if behind.contains(&here) {
                count += u64::from(node.count);
                burden += i128::from(node.burden);
                break;
            }
            up = hanging[here].0;
        }
    }
    if option.count_limit.is_some_and(|limit| count > u64::from(limit)) {
        faults.push(Fault::CountBehind(at));
    }
    let binds = option.own | option.gives != Marks::NONE;
    if binds && option.burden_limit.is_some_and(|limit| burden > i128::from(limit)) {
        faults.push(Fault::BurdenBehind(at));
    }
}
