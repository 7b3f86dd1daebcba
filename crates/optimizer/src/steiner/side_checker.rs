//! The checker of conditions beside an instance. It walks the tree by itself and shares nothing with the search but the
//! instance and the conditions.

use super::checker::{Refusal, check_tree};
use super::instance::{Cost, Instance, Tree};
use super::side::Side;

/// Why a tree is refused that conditions beside its instance were asked of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SideRefusal {
    /// The tree is none of the instance, or costs something else.
    Tree(Refusal),
    /// The condition at this position cannot be asked of the instance.
    Malformed(usize),
    /// The condition at this position is broken: how far it comes.
    Broken(usize, Cost),
}

/// Checks that the tree is one of the instance, costs what it says, and meets every condition.
///
/// # Errors
/// Why it is refused.
pub fn check_sides(instance: &Instance, sides: &[Side], tree: &Tree) -> Result<Cost, SideRefusal> {
    let cost = check_tree(instance, tree).map_err(SideRefusal::Tree)?;
    for (position, side) in sides.iter().enumerate() {
        side.validate(instance, position).map_err(|_| SideRefusal::Malformed(position))?;
    }
    let mut walk = vec![None; instance.nodes];
    let mut inside = vec![false; instance.nodes];
    // Every node of the tree after the one it is reached from.
    let mut order: Vec<usize> = tree.root.into_iter().collect();
    order.iter().for_each(|&root| inside[root] = true);
    let mut next = 0;
    while next < order.len() {
        let node = order[next];
        next += 1;
        for &line in &tree.lines {
            let ends = (instance.lines[line].from, instance.lines[line].to);
            let far = if ends.0 == node { ends.1 } else { ends.0 };
            if (ends.0 == node || ends.1 == node) && !inside[far] {
                inside[far] = true;
                walk[far] = Some((node, line, ends.0 == node));
                order.push(far);
            }
        }
    }
    for (position, side) in sides.iter().enumerate() {
        let (reached, most) = match side {
            Side::Budget { taken, most } => {
                let steps = walk.iter().flatten();
                (steps.map(|&(_, line, there)| if there { taken[line].0 } else { taken[line].1 }).sum(), *most)
            }
            Side::OutOf { node, most } => {
                (counted(walk.iter().flatten().filter(|&&(tail, ..)| tail == *node).count()), counted(*most))
            }
            Side::Among { nodes, most } => {
                (counted(nodes.iter().filter(|&&node| inside[node]).count()), counted(*most))
            }
            Side::Beyond { line, weights, most } => {
                let mut beyond = vec![false; instance.nodes];
                for &node in &order {
                    let after = |&(tail, along, _): &(usize, usize, bool)| along == *line || beyond[tail];
                    beyond[node] = walk[node].as_ref().is_some_and(after);
                }
                (weights.iter().filter(|&&(node, _)| beyond[node]).map(|&(_, weight)| weight).sum(), *most)
            }
        };
        if reached > most {
            return Err(SideRefusal::Broken(position, reached));
        }
    }
    Ok(cost)
}

fn counted(count: usize) -> Cost {
    Cost::try_from(count).unwrap_or(Cost::MAX)
}
