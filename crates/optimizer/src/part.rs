//! The parts of a problem that do not touch each other: trees, the groups that links may supply, and those links.

use crate::compiled_tree::{CompiledOption, CompiledTree};
use crate::effective_tree::Move;
use crate::problem::{Link, Problem, SupplyNeed};
use crate::weight::{IMPOSSIBLE, Weight, weight_of_link};

/// A link flowing one way.
#[derive(Clone, Debug)]
pub(crate) struct Arc {
    pub link: usize,
    pub forward: bool,
    /// The group it leaves, by its place in the part; `None` is a source.
    pub tail: Option<usize>,
    /// The group it supplies, by its place in the part.
    pub head: usize,
    /// Its weight by grade, as far as the tail carries.
    pub by_grade: Vec<Weight>,
    /// The same link flowing the other way.
    pub twin: Option<usize>,
    /// Where it lands: a tree of the part and a node in it.
    pub landings: Vec<(usize, usize)>,
    /// The one at its head.
    pub ends_at: Option<(usize, usize)>,
    /// What it moves, and in which tree of the part.
    pub moves: Option<(usize, Move)>,
    /// About what it takes to make room for it where it ends.
    pub room: Weight,
}

/// A group that links may supply.
#[derive(Clone, Debug, Default)]
pub(crate) struct OpenGroup {
    /// The group in the problem.
    pub group: usize,
    pub grade: usize,
    /// Its nodes in the part's trees.
    pub nodes: Vec<(usize, usize)>,
    /// The arcs that flow into it.
    pub arcs: Vec<usize>,
    /// The node at which every one of these lands, if there is one.
    pub lands_at: Option<(usize, usize)>,
}

/// How a node is supplied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum NodeSupply {
    Never,
    Always,
    /// As an open group of the part is.
    As {
        group: usize,
    },
}

/// A part's tree.
#[derive(Clone, Debug)]
pub(crate) struct PartTree<'p> {
    /// The tree in the problem.
    pub tree: usize,
    pub compiled: CompiledTree<'p>,
    pub supply: Vec<NodeSupply>,
    /// The open groups that have a node in it.
    pub groups: Vec<usize>,
    /// The arcs that land in it or move one of its nodes.
    pub arcs: Vec<usize>,
}

/// A part of the problem that touches no other.
#[derive(Clone, Debug)]
pub(crate) struct Part<'p> {
    pub trees: Vec<PartTree<'p>>,
    pub groups: Vec<OpenGroup>,
    pub arcs: Vec<Arc>,
    /// The arcs of each link that must be chosen.
    pub forced: Vec<Vec<usize>>,
}

/// What is laid down for each link beforehand.
pub(crate) type ForcedLinks = Vec<Option<bool>>;

/// Returns the parts, or `None` where a link that must be chosen cannot be.
pub(crate) fn parts<'p>(
    problem: &'p Problem,
    compiled: Vec<CompiledTree<'p>>,
    forced: &ForcedLinks,
) -> Option<Vec<Part<'p>>> {
    let ways: Vec<[bool; 2]> =
        problem.links.iter().zip(forced).map(|(link, forced)| ways(problem, link, *forced)).collect();
    let hopeless = |(ways, forced): (&[bool; 2], &Option<bool>)| *forced == Some(true) && !ways[0] && !ways[1];
    if ways.iter().zip(forced).any(hopeless) {
        return None;
    }
    let joined = joined(problem, &ways);
    let mut part_of_root = vec![None; joined.len()];
    let mut parts: Vec<Part<'p>> = Vec::new();
    let mut part_of = |place: usize, parts: &mut Vec<Part<'p>>| {
        *part_of_root[joined[place]].get_or_insert_with(|| {
            parts.push(Part { trees: Vec::new(), groups: Vec::new(), arcs: Vec::new(), forced: Vec::new() });
            parts.len() - 1
        })
    };
    let first_group = problem.trees.len();
    let mut group_place = vec![None; problem.groups.len()];
    for (group, is_open) in open_groups(problem, &ways).into_iter().enumerate() {
        if is_open {
            let part = part_of(first_group + group, &mut parts);
            group_place[group] = Some(parts[part].groups.len());
            let grade = problem.groups[group].grade;
            parts[part].groups.push(OpenGroup { group, grade, ..OpenGroup::default() });
        }
    }
    let mut tree_place = Vec::with_capacity(compiled.len());
    for (tree, compiled) in compiled.into_iter().enumerate() {
        let part = part_of(tree, &mut parts);
        tree_place.push(parts[part].trees.len());
        add_tree(problem, &mut parts[part], tree, compiled, &group_place);
    }
    for (index, ways) in ways.iter().enumerate() {
        let link = &problem.links[index];
        let head = if ways[0] { link.to.group } else { link.from.group };
        if ways[0] || ways[1] {
            let part = part_of(first_group + head, &mut parts);
            add_arcs(problem, &mut parts[part], index, *ways, &group_place, &tree_place);
            if forced[index] == Some(true) {
                let arcs = &parts[part].arcs;
                let of_link = (0..arcs.len()).filter(|arc| arcs[*arc].link == index).collect();
                parts[part].forced.push(of_link);
            }
        }
    }
    for part in &mut parts {
        for arc in &mut part.arcs {
            if let Some((tree, node)) = arc.ends_at {
                arc.room = part.trees[tree].compiled.room_at(node);
            }
        }
        for group in &mut part.groups {
            let arcs = &part.arcs;
            let lands = |node: &&(usize, usize)| group.arcs.iter().all(|arc| arcs[*arc].landings.contains(node));
            group.lands_at = group.nodes.iter().find(lands).copied();
        }
    }
    Some(parts)
}

/// Whether the link can flow forward, and whether backward.
fn ways(problem: &Problem, link: &Link, forced: Option<bool>) -> [bool; 2] {
    let leaves_tree = || {
        let trees = (link.from.lands_at.map(|(tree, _)| tree), link.to.lands_at.map(|(tree, _)| tree));
        matches!(trees, (Some(from), Some(to)) if from != to)
    };
    if forced == Some(false) || link.from.group == link.to.group || (link.reparents && leaves_tree()) {
        return [false, false];
    }
    let into = |group: usize| !problem.groups[group].source;
    [into(link.to.group), link.both_ways && into(link.from.group)]
}

/// Whether a link may flow into each group.
fn open_groups(problem: &Problem, ways: &[[bool; 2]]) -> Vec<bool> {
    let mut open = vec![false; problem.groups.len()];
    for (link, ways) in problem.links.iter().zip(ways) {
        open[link.to.group] |= ways[0];
        open[link.from.group] |= ways[1];
    }
    open
}

/// Returns, for every tree and then every group, one that stands for all it is joined to.
fn joined(problem: &Problem, ways: &[[bool; 2]]) -> Vec<usize> {
    let first_group = problem.trees.len();
    let open = open_groups(problem, ways);
    let mut stands_for: Vec<usize> = (0..first_group + problem.groups.len()).collect();
    for (tree, nodes) in problem.trees.iter().enumerate() {
        for node in &nodes.nodes {
            if open[node.group] {
                join(&mut stands_for, tree, first_group + node.group);
            }
        }
    }
    for (link, ways) in problem.links.iter().zip(ways).filter(|(_, ways)| ways[0] || ways[1]) {
        let head = first_group + if ways[0] { link.to.group } else { link.from.group };
        for end in [link.from, link.to] {
            if !problem.groups[end.group].source {
                join(&mut stands_for, first_group + end.group, head);
            }
            if let Some((tree, _)) = end.lands_at {
                join(&mut stands_for, tree, head);
            }
        }
    }
    (0..stands_for.len()).map(|place| end_of(&mut stands_for, place)).collect()
}

fn join(stands_for: &mut [usize], one: usize, other: usize) {
    let (one, other) = (end_of(stands_for, one), end_of(stands_for, other));
    stands_for[one.max(other)] = one.min(other);
}

fn end_of(stands_for: &mut [usize], mut place: usize) -> usize {
    while stands_for[place] != place {
        stands_for[place] = stands_for[stands_for[place]];
        place = stands_for[place];
    }
    place
}

fn add_tree<'p>(
    problem: &Problem,
    part: &mut Part<'p>,
    tree: usize,
    compiled: CompiledTree<'p>,
    group_place: &[Option<usize>],
) {
    let place = part.trees.len();
    let mut groups = Vec::new();
    let mut supply = Vec::with_capacity(compiled.given.nodes.len());
    for (index, node) in compiled.given.nodes.iter().enumerate() {
        supply.push(match group_place[node.group] {
            Some(group) => {
                part.groups[group].nodes.push((place, index));
                groups.push(group);
                NodeSupply::As { group }
            }
            None if problem.groups[node.group].source => NodeSupply::Always,
            None => NodeSupply::Never,
        });
    }
    groups.sort_unstable();
    groups.dedup();
    part.trees.push(PartTree { tree, compiled, supply, groups, arcs: Vec::new() });
}

fn add_arcs(
    problem: &Problem,
    part: &mut Part<'_>,
    index: usize,
    ways: [bool; 2],
    group_place: &[Option<usize>],
    tree_place: &[usize],
) {
    let link = &problem.links[index];
    let first = part.arcs.len();
    let both = ways[0] && ways[1];
    for (forward, tail, head_end) in [(true, link.from, link.to), (false, link.to, link.from)] {
        let (true, Some(head)) = (ways[usize::from(!forward)], group_place[head_end.group]) else { continue };
        let arc = part.arcs.len();
        let at = |(tree, node): (usize, usize)| (tree_place[tree], node);
        let landings: Vec<(usize, usize)> =
            [link.from, link.to].iter().filter_map(|end| end.lands_at.map(at)).collect();
        let moves = link.to.lands_at.filter(|_| link.reparents).map(|to| {
            let (tree, node) = at(to);
            (tree, Move { node, parent: link.from.lands_at.map(|(_, node)| node) })
        });
        // A tail that is neither a source nor open is never supplied: the arc has no grade that it can carry.
        let dry = !problem.groups[tail.group].source && group_place[tail.group].is_none();
        let carried = if dry { 0 } else { problem.groups[tail.group].carries.saturating_add(1) };
        let links = problem.links.len();
        let by_grade =
            link.cost_by_grade.iter().take(carried).map(|cost| weight_of_link(*cost, index, links)).collect();
        let mut trees: Vec<usize> = landings.iter().map(|(tree, _)| *tree).collect();
        trees.extend(moves.map(|(tree, _)| tree));
        trees.sort_unstable();
        trees.dedup();
        for tree in trees {
            part.trees[tree].arcs.push(arc);
        }
        part.groups[head].arcs.push(arc);
        let twin = both.then_some(if forward { first + 1 } else { first });
        part.arcs.push(Arc {
            link: index,
            forward,
            tail: group_place[tail.group],
            head,
            by_grade,
            twin,
            landings,
            ends_at: head_end.lands_at.map(at),
            moves,
            room: 0,
        });
    }
}

impl Part<'_> {
    /// Whether an option may be chosen at a node whose group is supplied by a link.
    pub fn goes_with_supply(&self, option: &CompiledOption<'_>, tree: usize, node: usize) -> bool {
        let NodeSupply::As { group } = self.trees[tree].supply[node] else { return true };
        let group = &self.groups[group];
        option.supply != SupplyNeed::Unsupplied
            && (group.lands_at != Some((tree, node)) || option.has_room(group.grade))
    }

    /// The least grade that a link can have that lands at a node.
    pub fn least_grade_landing(&self, tree: usize, node: usize) -> usize {
        let landing = self.trees[tree].arcs.iter().map(|arc| &self.arcs[*arc]);
        let grades = landing.filter(|arc| arc.landings.contains(&(tree, node))).map(|arc| self.groups[arc.head].grade);
        grades.min().unwrap_or(0)
    }
}

impl Arc {
    /// Returns the least weight at which it carries the grade or a higher one.
    pub fn least_weight(&self, grade: usize) -> Weight {
        self.by_grade.iter().skip(grade).copied().min().unwrap_or(IMPOSSIBLE)
    }
}
