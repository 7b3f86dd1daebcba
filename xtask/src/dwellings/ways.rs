//! Ways along which conductors could be brought in a generated dwelling, as its surveyor wrote them down.

use super::chance::Chance;
use super::house::{Quarter, Spot};
use super::wiring::{Circuit, Feeding};
use serde_json::{Value, json};

/// What the ways of a dwelling run between.
pub struct Ends<'a> {
    /// The boxes, their feeding and their circuits.
    pub spots: &'a [Spot],
    pub feeding: &'a [Feeding],
    pub circuits: &'a [Circuit],
    /// By box: whether it can hold a receptacle.
    pub receptacles: &'a [bool],
    /// The panels.
    pub panels: &'a [Spot],
    /// The ground sources, with their places.
    pub sources: &'a [Spot],
}

/// Surveyors differ in how many ways they write down for a hundred boxes that lack a ground.
const WAYS_PER_HUNDRED: [usize; 4] = [20, 60, 110, 180];

/// The names under which the ends stand in the survey.
pub fn box_id(at: usize) -> String {
    format!("B{}", at + 1)
}

pub fn panel_id(at: usize) -> String {
    format!("panel-{}", at + 1)
}

pub fn source_id(at: usize) -> String {
    format!("source-{}", at + 1)
}

/// The rows of `[[route]]`.
pub fn ways(chance: &mut Chance, ends: &Ends<'_>) -> Vec<Value> {
    let mut rows = Vec::new();
    let wanted: Vec<usize> =
        (0..ends.spots.len()).filter(|at| ends.receptacles[*at] && !ends.feeding[*at].grounded).collect();
    let per_hundred = chance.pick(&WAYS_PER_HUNDRED);
    for at in wanted {
        let ways = per_hundred / 100 + usize::from(chance.percent(per_hundred % 100));
        for _ in 0..ways {
            rows.extend(way(chance, ends, at));
        }
    }
    rows
}

fn way(chance: &mut Chance, ends: &Ends<'_>, to: usize) -> Option<Value> {
    let home = ends.circuits[ends.feeding[to].circuit].panel;
    if chance.percent(22) {
        let (from, spot) = match ends.feeding[to].parent {
            Some(parent) if chance.percent(70) => (box_id(parent), ends.spots[parent]),
            _ => match near(chance, ends, to, true) {
                Some(other) if chance.percent(40) => (box_id(other), ends.spots[other]),
                _ => (panel_id(home), ends.panels[home]),
            },
        };
        return Some(row(chance, from, spot.distance(ends.spots[to]), to, "new-cable"));
    }
    let (from, spot) = match chance.below(10) {
        0..=3 => (panel_id(home), ends.panels[home]),
        4 if !ends.sources.is_empty() => {
            let source = chance.below(ends.sources.len());
            (source_id(source), ends.sources[source])
        }
        5 => {
            let other = near(chance, ends, to, true)?;
            (box_id(other), ends.spots[other])
        }
        _ => {
            let other = near(chance, ends, to, false)?;
            (box_id(other), ends.spots[other])
        }
    };
    Some(row(chance, from, spot.distance(ends.spots[to]), to, "egc"))
}

/// One of the three nearest boxes, of the same circuit or of any.
fn near(chance: &mut Chance, ends: &Ends<'_>, to: usize, same_circuit: bool) -> Option<usize> {
    let same = |at: usize| ends.feeding[at].circuit == ends.feeding[to].circuit;
    let mut others: Vec<usize> = (0..ends.spots.len()).filter(|at| *at != to && (!same_circuit || same(*at))).collect();
    others.sort_by_key(|at| (ends.spots[*at].distance(ends.spots[to]), *at));
    others.truncate(3);
    (!others.is_empty()).then(|| others[chance.below(others.len())])
}

fn row(chance: &mut Chance, from: String, distance: Quarter, to: usize, kind: &str) -> Value {
    let feet = (distance / 4 + 6).max(4);
    let mut row = json!({
        "from": from,
        "to": box_id(to),
        "kind": kind,
        "length": format!("{feet} ft"),
        "openings": chance.weighted(&[(4, 0), (3, 1), (2, 2), (1, 3)]),
    });
    if let (Some(row), true) = (row.as_object_mut(), chance.percent(3)) {
        row.insert("closed".into(), json!(true));
    }
    if let (Some(row), Some(minutes)) =
        (row.as_object_mut(), chance.weighted(&[(4, None), (1, Some(30)), (1, Some(90))]))
    {
        row.insert("minutes".into(), json!(minutes));
    }
    row
}
