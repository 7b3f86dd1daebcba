//! The question of one circuit or multiwire set: its boxes, what is known of their order, what was seen.

use super::practice::{home_run_weight, home_runs, onward_runs, run_weight};
use super::question::{Fact, Node, Question};
use dwelling::{BoxIndex, CircuitIndex, CircuitTree, Dwelling, Feed, PanelIndex};
use std::collections::BTreeSet;

/// The question of one circuit or multiwire set.
#[derive(Clone, Debug)]
pub(super) struct OnCircuit {
    pub(super) circuits: Vec<CircuitIndex>,
    pub(super) panel: PanelIndex,
    /// By position in the question: the box.
    pub(super) boxes: Vec<BoxIndex>,
    pub(super) question: Question,
    /// Observations that call a box of another circuit dead.
    pub(super) across: BTreeSet<usize>,
}

impl OnCircuit {
    pub(super) fn of(dwelling: &Dwelling, tree: &CircuitTree) -> Self {
        let boxes = boxes_on(dwelling, &tree.circuits);
        let root = boxes.len();
        let position = |of: BoxIndex| boxes.iter().position(|at| *at == of);
        let known = |at: &BoxIndex| {
            dwelling.device_box(*at).known_feed().and_then(|feed| match feed {
                Feed::Panel(_) => Some(root),
                Feed::Box(parent) => position(parent),
            })
        };
        let weights = |feed: Option<BoxIndex>| -> Vec<f64> {
            let weight = |fed: &BoxIndex| match feed {
                Some(feed) if feed == *fed => 0.0,
                Some(feed) => run_weight(dwelling, feed, *fed),
                None => home_run_weight(dwelling, tree.panel, *fed),
            };
            boxes.iter().map(weight).collect()
        };
        let (mut facts, mut across) = (Vec::new(), BTreeSet::new());
        for (said_by, seen) in dwelling.dead_when.iter().enumerate() {
            let Some(above) = seen.cut.parted_at().and_then(position) else { continue };
            for (list, holds) in [(&seen.dead, true), (&seen.alive, false)] {
                for of in list {
                    match position(*of) {
                        Some(below) if below != above => facts.push(Fact { above, below, holds, said_by }),
                        None if holds => drop(across.insert(said_by)),
                        _ => {}
                    }
                }
            }
        }
        let mut weight: Vec<Vec<f64>> = boxes.iter().map(|at| weights(Some(*at))).chain([weights(None)]).collect();
        // Each box has one feed, so that a factor of its own changes no share: the likeliest feed is given the weight 1,
        // and weights of many boxes far apart stay far from zero.
        for fed in 0..boxes.len() {
            let likeliest = weight.iter().map(|of| of[fed]).fold(0.0, f64::max);
            weight.iter_mut().filter(|_| likeliest > 0.0).for_each(|of| of[fed] /= likeliest);
        }
        let onward = boxes.iter().map(|at| onward_runs(dwelling.device_box(*at))).chain([home_runs()]).collect();
        let question = Question { known: boxes.iter().map(known).collect(), weight, onward, facts };
        Self { circuits: tree.circuits.clone(), panel: tree.panel, boxes, question, across }
    }

    /// The boxes whose feed nobody knows.
    pub(super) fn unknown(&self) -> Vec<BoxIndex> {
        self.question.unknown().into_iter().map(|at| self.boxes[at]).collect()
    }

    /// What a node is in the dwelling.
    pub(super) fn feed(&self, node: Node) -> Feed {
        self.boxes.get(node).map_or(Feed::Panel(self.panel), |at| Feed::Box(*at))
    }

    /// The feeds that an order gives to boxes whose feed nobody knows.
    pub(super) fn feeds(&self, order: &[Node]) -> Vec<(BoxIndex, Feed)> {
        self.question.unknown().into_iter().map(|at| (self.boxes[at], self.feed(order[at]))).collect()
    }

    /// The boxes at these positions.
    pub(super) fn named(&self, positions: &[usize]) -> Vec<BoxIndex> {
        positions.iter().map(|at| self.boxes[*at]).collect()
    }
}

/// The boxes of these circuits, and those of unknown circuit that known runs or what went dead tie to them.
fn boxes_on(dwelling: &Dwelling, circuits: &[CircuitIndex]) -> Vec<BoxIndex> {
    let is_open = |at: BoxIndex| dwelling.device_box(at).circuit.is_none();
    let mut on: BTreeSet<BoxIndex> = dwelling
        .box_indices()
        .filter(|at| dwelling.device_box(*at).circuit.is_some_and(|circuit| circuits.contains(&circuit)))
        .collect();
    let mut ties: Vec<(BoxIndex, BoxIndex)> = Vec::new();
    for at in dwelling.box_indices() {
        if let Some(Feed::Box(parent)) = dwelling.device_box(at).known_feed() {
            ties.push((at, parent));
        }
    }
    for seen in &dwelling.dead_when {
        if let Some(parted) = seen.cut.parted_at() {
            ties.extend(seen.dead.iter().map(|dead| (*dead, parted)));
        }
    }
    loop {
        let before = on.len();
        for (one, other) in &ties {
            if on.contains(one) && is_open(*other) {
                on.insert(*other);
            }
            if on.contains(other) && is_open(*one) {
                on.insert(*one);
            }
        }
        if on.len() == before {
            return on.into_iter().collect();
        }
    }
}
