//! The whole search: each independent part for itself, put together again.

use crate::bound::tree_choices;
use crate::compiled_tree::CompiledTree;
use crate::link_state::{LinkState, Status};
use crate::part::{ForcedLinks, Part, parts};
use crate::problem::{Cost, Problem};
use crate::solution::{ChosenLink, Forced, Limits, NodeChoice, Outcome, Solution};
use crate::stages::search_in_stages;
use crate::tree_solver::Chosen;
use crate::weight::{IMPOSSIBLE, Weight, cost_of, plus};

/// Solves the problem exactly.
///
/// # What is guaranteed of ties
/// The same problem and limits give the same outcome. An optimal solution has, among all:
/// 1. the least [`Cost`]: cents, then openings, then devices;
///
/// and where the limits leave room to decide between equal costs:
/// 2. of these the fewest chosen links and then, in a problem of up to 512 links, the smallest sum of their indices;
/// 3. for its links, in each tree the lowest root option, then, from the root down, at each node the lowest option for
///    what the node sees. A child is put behind a load side only where that costs less.
///
/// Which of several link sets with the same cost, number and sum of indices is taken is fixed, and not promised.
#[must_use]
pub fn solve(problem: &Problem, limits: &Limits) -> Outcome {
    solve_with(problem, limits, &[])
}

/// Solves the problem with some choices laid down beforehand. What is laid down several times for one thing must hold
/// together. The cost above that of [`solve`] is what the choices laid down cost.
#[must_use]
pub fn solve_with(problem: &Problem, limits: &Limits, forced: &[Forced]) -> Outcome {
    match question(problem, forced) {
        Question::Parts(parts) => solve_parts(problem, limits, &parts),
        Question::Infeasible => Outcome::Infeasible,
        Question::Malformed(faults) => Outcome::Malformed(faults),
    }
}

/// A question made ready for the search.
pub(crate) enum Question<'p> {
    /// The parts to be searched, each for itself.
    Parts(Vec<Part<'p>>),
    /// What is laid down contradicts itself.
    Infeasible,
    /// It makes no sense, for each of these reasons.
    Malformed(Vec<String>),
}

/// Makes a question ready.
pub(crate) fn question<'p>(problem: &'p Problem, forced: &[Forced]) -> Question<'p> {
    let mut faults = problem.faults();
    faults.extend(forced_faults(problem, forced));
    if !faults.is_empty() {
        return Question::Malformed(faults);
    }
    parts_of(problem, forced).map_or(Question::Infeasible, Question::Parts)
}

/// The parts of a well-formed problem with some choices laid down; `None` where these contradict themselves.
pub(crate) fn parts_of<'p>(problem: &'p Problem, forced: &[Forced]) -> Option<Vec<Part<'p>>> {
    let forced_links = forced_links(problem, forced)?;
    let trees = problem.trees.iter().enumerate();
    let compiled: Option<Vec<_>> = trees.map(|(tree, given)| compiled_tree(tree, given, forced)).collect();
    parts(problem, compiled?, &forced_links)
}

fn compiled_tree<'p>(tree: usize, given: &'p crate::problem::Tree, forced: &[Forced]) -> Option<CompiledTree<'p>> {
    let root_allowed = |index: usize| {
        forced.iter().all(|one| match one {
            Forced::Root { tree: of, allowed } if *of == tree => allowed.contains(&index),
            _ => true,
        })
    };
    let option_allowed = |place: usize, index: usize| {
        forced.iter().all(|one| match one {
            Forced::Option { tree: of, node, allowed } if (*of, *node) == (tree, place) => allowed.contains(&index),
            _ => true,
        })
    };
    CompiledTree::new(given, root_allowed, option_allowed)
}

fn solve_parts(problem: &Problem, limits: &Limits, parts: &[Part<'_>]) -> Outcome {
    let mut solution = empty_solution(problem);
    let mut left = *limits;
    let (mut bound, mut is_whole, mut is_proved): (Weight, bool, bool) = (0, true, true);
    for part in parts {
        let found = search_in_stages(problem, part, left.nodes_of(part));
        left = left.after(found.nodes, part);
        bound = plus(bound, found.bound);
        if bound >= IMPOSSIBLE {
            return Outcome::Infeasible;
        }
        match &found.best {
            Some((weight, state)) => {
                is_proved &= *weight == found.bound;
                is_whole &= put_into(part, state, &mut solution).is_some();
            }
            None => is_whole = false,
        }
    }
    let bound = cost_of(bound);
    if !is_whole {
        return Outcome::Stopped { bound };
    }
    solution.links.sort_by_key(|link| link.link);
    solution.cost = cost_of_choices(problem, &solution);
    if is_proved { Outcome::Optimal(solution) } else { Outcome::Best { solution, bound } }
}

/// A solution without any choice.
pub(crate) fn empty_solution(problem: &Problem) -> Solution {
    Solution {
        cost: Cost::default(),
        roots: vec![0; problem.trees.len()],
        nodes: vec![Vec::new(); problem.trees.len()],
        links: Vec::new(),
        supplied: problem.groups.iter().map(|group| group.source).collect(),
    }
}

/// Puts a complete state of a part into a solution, with the lightest choices of its trees.
pub(crate) fn put_into(part: &Part<'_>, state: &LinkState, solution: &mut Solution) -> Option<()> {
    put_links_into(part, state, solution);
    for (place, tree) in part.trees.iter().enumerate() {
        let (root, chosen) = tree_choices(part, place, state)?;
        put_tree_into(tree.tree, root, chosen, solution);
    }
    Some(())
}

/// Puts the links of a complete state of a part into a solution.
pub(crate) fn put_links_into(part: &Part<'_>, state: &LinkState, solution: &mut Solution) {
    for (group, status) in state.status.iter().enumerate() {
        if let Status::Fed(arc) = status {
            solution.supplied[part.groups[group].group] = true;
            let arc = &part.arcs[*arc];
            solution.links.push(ChosenLink { link: arc.link, forward: arc.forward, grade: state.grade[group] });
        }
    }
}

/// Puts what is chosen in a tree of the problem into a solution.
pub(crate) fn put_tree_into(tree: usize, root: usize, chosen: Vec<Chosen>, solution: &mut Solution) {
    solution.roots[tree] = root;
    let choices = chosen.into_iter().map(|one| NodeChoice { option: one.option, behind_load_children: one.behind });
    solution.nodes[tree] = choices.collect();
}

/// What the choices of a solution cost.
pub(crate) fn cost_of_choices(problem: &Problem, solution: &Solution) -> Cost {
    let links = solution.links.iter().map(|link| problem.links[link.link].cost_by_grade[link.grade]);
    let trees = problem.trees.iter().zip(solution.roots.iter().zip(&solution.nodes)).map(|(tree, (root, nodes))| {
        let nodes = tree.nodes.iter().zip(nodes).map(|(node, choice)| node.options[choice.option].cost);
        tree.root_options[*root].cost + nodes.sum()
    });
    links.chain(trees).sum()
}

/// What is laid down for each link, or `None` where that contradicts itself.
fn forced_links(problem: &Problem, forced: &[Forced]) -> Option<ForcedLinks> {
    let mut links = vec![None; problem.links.len()];
    for one in forced {
        if let Forced::Link { link, chosen } = one {
            if links[*link].is_some_and(|before| before != *chosen) {
                return None;
            }
            links[*link] = Some(*chosen);
        }
    }
    Some(links)
}

fn forced_faults(problem: &Problem, forced: &[Forced]) -> Vec<String> {
    let mut faults = Vec::new();
    let mut check = |options: Option<usize>, what: String, allowed: &[usize]| match options {
        None => faults.push(format!("{what} is laid down, and is not there")),
        Some(options) => {
            for option in allowed.iter().filter(|option| **option >= options) {
                faults.push(format!("option {option} of {what} is laid down, and is not there"));
            }
        }
    };
    for one in forced {
        match one {
            Forced::Option { tree, node, allowed } => {
                let found = problem.trees.get(*tree).and_then(|tree| tree.nodes.get(*node));
                check(found.map(|node| node.options.len()), format!("node {node} of tree {tree}"), allowed);
            }
            Forced::Root { tree, allowed } => {
                let found = problem.trees.get(*tree);
                check(found.map(|tree| tree.root_options.len()), format!("the root of tree {tree}"), allowed);
            }
            Forced::Link { link, .. } => {
                check(problem.links.get(*link).map(|_| 0), format!("link {link}"), &[]);
            }
        }
    }
    faults
}
