//! Problems and answers of the optimizer as JSON.

use optimizer::{
    Cost, Group, Link, LinkEnd, Node, NodeChoice, NodeOption, Outcome, Problem, RootOption, Solution, SupplyNeed, Tree,
};
use serde_json::{Value, json};

/// The outcome: whether it is proved, its cost or bound, and the solution.
pub fn answer_as_json(outcome: &Outcome) -> Value {
    match outcome {
        Outcome::Optimal(solution) => {
            json!({ "proved": true, "cost": cost(solution.cost), "solution": solution_as_json(solution) })
        }
        Outcome::Best { solution, bound } => json!({
            "proved": false,
            "cost": cost(solution.cost),
            "bound": cost(*bound),
            "solution": solution_as_json(solution),
        }),
        Outcome::Stopped { bound } => json!({ "proved": false, "bound": cost(*bound) }),
        Outcome::Infeasible => json!({ "proved": true, "infeasible": true }),
        Outcome::Malformed(faults) => json!({ "proved": false, "faults": faults }),
    }
}

fn solution_as_json(solution: &Solution) -> Value {
    let node = |choice: &NodeChoice| json!([choice.option, choice.behind_load_children]);
    json!({
        "roots": solution.roots,
        "nodes": solution.nodes.iter().map(|tree| tree.iter().map(node).collect()).collect::<Vec<Value>>(),
        "links": solution.links.iter().map(|link| json!([link.link, link.forward, link.grade])).collect::<Vec<_>>(),
        "supplied": solution.supplied,
    })
}

/// The problem, its fields under their own names.
pub fn problem_as_json(problem: &Problem) -> Value {
    json!({
        "trees": problem.trees.iter().map(tree).collect::<Vec<_>>(),
        "groups": problem.groups.iter().map(group).collect::<Vec<_>>(),
        "links": problem.links.iter().map(link).collect::<Vec<_>>(),
    })
}

fn cost(cost: Cost) -> Value {
    json!([cost.cents, cost.openings, cost.devices])
}

fn tree(tree: &Tree) -> Value {
    json!({
        "root_options": tree.root_options.iter().map(root_option).collect::<Vec<_>>(),
        "nodes": tree.nodes.iter().map(node).collect::<Vec<_>>(),
    })
}

fn root_option(option: &RootOption) -> Value {
    json!({ "cost": cost(option.cost), "gives": option.gives.0, "burden_limit": option.burden_limit })
}

fn node(node: &Node) -> Value {
    json!({
        "parent": node.parent,
        "behind_load": node.behind_load,
        "group": node.group,
        "burden": node.burden,
        "count": node.count,
        "options": node.options.iter().map(node_option).collect::<Vec<_>>(),
    })
}

fn node_option(option: &NodeOption) -> Value {
    let supply = match option.supply {
        SupplyNeed::Supplied => "supplied",
        SupplyNeed::Unsupplied => "unsupplied",
        SupplyNeed::Any => "any",
    };
    json!({
        "cost": cost(option.cost),
        "needs": option.needs.0,
        "own": option.own.0,
        "gives": option.gives.0,
        "supply": supply,
        "most_landings": option.most_landings,
        "count_limit": option.count_limit,
        "burden_limit": option.burden_limit,
    })
}

fn group(group: &Group) -> Value {
    json!({ "source": group.source, "grade": group.grade, "carries": group.carries })
}

fn link(link: &Link) -> Value {
    json!({
        "from": end(link.from),
        "to": end(link.to),
        "both_ways": link.both_ways,
        "cost_by_grade": link.cost_by_grade.iter().map(|by| cost(*by)).collect::<Vec<_>>(),
        "reparents": link.reparents,
    })
}

fn end(end: LinkEnd) -> Value {
    json!({ "group": end.group, "lands_at": end.lands_at })
}
