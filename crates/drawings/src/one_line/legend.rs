//! What the signs of a one-line mean.

use super::fed::Fed;
use crate::lists::{Picture, Row};
use crate::shown::Ground;
use crate::symbol::Kind;
use dwelling::{BoxIndex, CircuitTree};
use std::collections::BTreeSet;

/// What the signs mean, of those that are used.
pub(super) fn legend(shown: &[(&Fed, &[BoxIndex])]) -> Vec<Row> {
    let boxes = || shown.iter().flat_map(|(fed, boxes)| boxes.iter().map(|at| &fed.boxes[at.0]));
    let used: BTreeSet<Ground> = boxes().map(|opening| opening.ground).collect();
    let mut rows: Vec<Row> = Vec::new();
    for ground in Ground::ALL.into_iter().filter(|ground| used.contains(ground)) {
        rows.push(Row::Explained(Picture::Symbol(Kind::Receptacle, ground), ground.meaning().to_owned()));
    }
    let kinds: BTreeSet<&str> = boxes().map(|opening| Kind::of(opening.holds).meaning()).collect();
    if kinds.len() > 1 {
        rows.push(Row::Words("S switch, J splices, ✕ luminaire, strokes: receptacle.".replace('✕', "x")));
    }
    if boxes().any(|opening| opening.line.gfci) {
        rows.push(Row::Words("A thick line: a GFCI before it protects what it feeds.".to_owned()));
    }
    rows.push(Row::Words("GFCI or AFCI in a frame: the device of that opening; without: from before it.".to_owned()));
    if shown.iter().any(|(fed, _)| fed.trees.iter().any(CircuitTree::is_multiwire)) {
        rows.push(Row::Words("A double bar: handles tied. (1): its circuit.".to_owned()));
    }
    rows
}
