//! From chosen lines to the tree of the instance, led away from its root.

use super::instance::{Cost, Instance, Tree};

/// The tree over some of the lines, each in its direction, without leaves that cost more than they are worth. `None` where the lines do not
/// join every terminal to the root.
pub(crate) fn tree_over(instance: &Instance, root: usize, lines: &[(usize, bool)]) -> Option<Tree> {
    let mut around: Vec<Vec<(usize, usize, Cost)>> = vec![Vec::new(); instance.nodes];
    // Where a line costs the same both ways, either way will do.
    for &(index, backwards) in lines {
        let line = instance.lines[index];
        let even = line.back == Some(line.there);
        if !backwards || even {
            around[line.from].push((line.to, index, line.there));
        }
        if let Some(back) = line.back
            && (backwards || even)
        {
            around[line.to].push((line.from, index, back));
        }
    }
    let prizes = instance.prize_by_node();
    let mut wanted = vec![false; instance.nodes];
    instance.terminals.iter().chain([&root]).for_each(|&node| wanted[node] = true);
    let mut into: Vec<Option<(usize, usize, Cost)>> = vec![None; instance.nodes];
    let mut joined = vec![false; instance.nodes];
    joined[root] = true;
    let mut order = vec![root];
    let mut seen = 0;
    while seen < order.len() {
        let node = order[seen];
        seen += 1;
        for &(to, line, cost) in &around[node] {
            if !std::mem::replace(&mut joined[to], true) {
                into[to] = Some((node, line, cost));
                order.push(to);
            }
        }
    }
    if wanted.iter().zip(&joined).any(|(&wanted, &joined)| wanted && !joined) {
        return None;
    }
    let mut worth = prizes.clone();
    let mut kept = vec![true; instance.nodes];
    for &node in order.iter().rev() {
        let Some((parent, _, cost)) = into[node] else { continue };
        if wanted[node] {
            wanted[parent] = true;
        } else if worth[node] > cost {
            worth[parent] += worth[node] - cost;
        } else {
            kept[node] = false;
        }
    }
    let mut tree = Tree { cost: prizes.iter().sum::<Cost>() - prizes[root], root: Some(root), lines: Vec::new() };
    for &node in order.iter().skip(1) {
        let Some((parent, line, cost)) = into[node] else { continue };
        kept[node] &= kept[parent];
        if kept[node] {
            tree.cost += cost - prizes[node];
            tree.lines.push(line);
        }
    }
    tree.lines.sort_unstable();
    Some(tree)
}
