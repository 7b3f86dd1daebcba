//! A tree as it leads away from its start, and what in it breaks a condition beside the instance.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::instance::{Cost, Instance, Line, MOST, Tree};
use super::side::Side;

/// Something that a part of the search has decided.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Decision {
    /// The tree goes along this line, backwards or not, or does not.
    Arc { line: usize, back: bool, taken: bool },
    /// The node is in the tree, or is not.
    Node { node: usize, inside: bool },
}

impl Decision {
    pub(crate) fn turned(self) -> Self {
        match self {
            Self::Arc { line, back, taken } => Self::Arc { line, back, taken: !taken },
            Self::Node { node, inside } => Self::Node { node, inside: !inside },
        }
    }
}

/// What in a tree no lawful tree has all of.
pub(crate) enum Conflict {
    /// Nothing: every condition is met.
    None,
    /// What is decided already: no tree under these decisions is lawful.
    Decided,
    /// These, none of them decided yet.
    Of(Vec<Decision>),
}

/// An arc into a node: its tail, its line, and whether that is gone along backwards.
type Into = (usize, usize, bool);

/// A tree with the arc into each node but its start.
pub(crate) struct Walked {
    pub(crate) tree: Tree,
    start: usize,
    into: BTreeMap<usize, Into>,
}

impl Walked {
    /// The tree over these lines, given by rising index; `None` where they are none.
    pub(crate) fn over(instance: &Instance, start: usize, lines: Vec<usize>) -> Option<Self> {
        let mut around: BTreeMap<usize, Vec<(usize, usize, bool)>> = BTreeMap::new();
        for &index in &lines {
            let line = &instance.lines[index];
            around.entry(line.from).or_default().push((line.to, index, false));
            around.entry(line.to).or_default().push((line.from, index, true));
        }
        let mut into = BTreeMap::new();
        let mut open = vec![start];
        let mut cost = 0;
        while let Some(node) = open.pop() {
            for &(far, index, back) in around.get(&node).map_or(&[][..], Vec::as_slice) {
                if far != start && !into.contains_key(&far) {
                    let line = &instance.lines[index];
                    cost += if back { line.back? } else { line.there };
                    into.insert(far, (node, index, back));
                    open.push(far);
                }
            }
        }
        if into.len() != lines.len() {
            return None;
        }
        let held = |node: usize| node == start || into.contains_key(&node);
        let missed = instance.prizes.iter().filter(|&&(node, _)| !held(node)).map(|&(_, prize)| prize);
        let tree = Tree { cost: cost + missed.sum::<Cost>(), root: Some(start), lines };
        Some(Self { tree, start, into })
    }

    fn holds(&self, node: usize) -> bool {
        node == self.start || self.into.contains_key(&node)
    }

    /// How far the tree is above the limit of a condition, in its units; below where negative.
    pub(crate) fn above(&self, side: &Side) -> Cost {
        let arcs = self.into.values();
        let reached = match side {
            Side::Budget { taken, .. } => arcs.map(|into| of_arc(taken, into)).sum(),
            Side::OutOf { node, .. } => counted(arcs.filter(|(tail, ..)| tail == node).count()),
            Side::Among { nodes, .. } => counted(nodes.iter().filter(|&&node| self.holds(node)).count()),
            Side::Beyond { line, weights, .. } => {
                let Some((top, _)) = self.top_of(*line) else { return -most_of(side) };
                let beyond = weights.iter().filter(|&&(node, _)| self.way_up(node, top).is_some());
                beyond.map(|&(_, weight)| weight).sum()
            }
        };
        reached - most_of(side)
    }

    /// The node that a line of the tree leads into, and how.
    fn top_of(&self, line: usize) -> Option<(usize, Into)> {
        self.into.iter().find(|(_, (_, along, _))| *along == line).map(|(&head, &into)| (head, into))
    }

    /// The arcs from a node of the tree up to `top`, where it lies at or below it.
    fn way_up(&self, node: usize, top: usize) -> Option<Vec<Decision>> {
        let mut way = Vec::new();
        let mut at = node;
        while at != top {
            let into = self.into.get(&at)?;
            way.push(taken(into));
            at = into.0;
        }
        self.holds(node).then_some(way)
    }

    /// What breaks a condition by itself, without what is decided already; the shortest such list of all broken ones.
    pub(crate) fn conflict(&self, instance: &Instance, sides: &[Side], decided: &[Decision]) -> Conflict {
        let broken = sides.iter().filter(|side| self.above(side) > 0);
        let lists = broken.map(|side| {
            let mut list = self.cause(instance, side, decided);
            list.retain(|decision| !decided.contains(decision));
            list
        });
        match lists.min_by_key(Vec::len) {
            None => Conflict::None,
            Some(list) if list.is_empty() => Conflict::Decided,
            Some(list) => Conflict::Of(list),
        }
    }

    /// Some of the tree's arcs or nodes that break a condition, those before others that are decided, then those that weigh most.
    fn cause(&self, instance: &Instance, side: &Side, decided: &[Decision]) -> Vec<Decision> {
        let arcs = self.into.values();
        let mut weighed: Vec<(Cost, Vec<Decision>)> = match side {
            Side::Budget { taken: amounts, .. } => {
                arcs.map(|into| (of_arc(amounts, into), vec![taken(into)])).collect()
            }
            Side::OutOf { node, .. } => {
                arcs.filter(|(tail, ..)| tail == node).map(|into| (1, vec![taken(into)])).collect()
            }
            Side::Among { nodes, .. } => {
                // What every tree holds needs no deciding.
                let given = |node| node == self.start || instance.terminals.contains(&node);
                let decision =
                    |node| if given(node) { Vec::new() } else { vec![Decision::Node { node, inside: true }] };
                nodes.iter().filter(|&&node| self.holds(node)).map(|&node| (1, decision(node))).collect()
            }
            Side::Beyond { line, weights, .. } => {
                let Some((top, into)) = self.top_of(*line) else { return Vec::new() };
                let way = |node| self.way_up(node, top).map(|way| way.into_iter().chain([taken(&into)]).collect());
                weights.iter().filter_map(|&(node, weight)| Some((weight, way(node)?))).collect()
            }
        };
        let undecided = |list: &[Decision]| list.iter().filter(|decision| !decided.contains(decision)).count();
        weighed.sort_by_key(|(weight, list)| (undecided(list), Reverse(*weight)));
        let (mut sum, mut cause) = (0, Vec::new());
        for (weight, list) in weighed.into_iter().filter(|(weight, _)| *weight > 0) {
            if sum > most_of(side) {
                break;
            }
            sum += weight;
            for decision in list {
                if !cause.contains(&decision) {
                    cause.push(decision);
                }
            }
        }
        cause
    }
}

const fn taken(&(_, line, back): &Into) -> Decision {
    Decision::Arc { line, back, taken: true }
}

fn of_arc(amounts: &[(Cost, Cost)], &(_, line, back): &Into) -> Cost {
    if back { amounts[line].1 } else { amounts[line].0 }
}

/// Where a line leads from and to, gone along backwards or not.
pub(crate) fn ends(line: &Line, back: bool) -> (usize, usize) {
    if back { (line.to, line.from) } else { (line.from, line.to) }
}

/// The limit of a condition.
pub(crate) fn most_of(side: &Side) -> Cost {
    match side {
        Side::Budget { most, .. } | Side::Beyond { most, .. } => *most,
        Side::OutOf { most, .. } | Side::Among { most, .. } => counted(*most),
    }
}

fn counted(count: usize) -> Cost {
    Cost::try_from(count).map_or(MOST, |count| count.min(MOST))
}
