//! What went dead when power was taken away at one place, and which circuits that tells.

use crate::diagnostic::Span;
use crate::ids::Ids;
use crate::mistakes::{
    circuit_contradicted, dead_and_alive, dead_when_names_itself, dead_when_not_one_cut, dead_when_sees_nothing,
    name_twice, no_such_box, no_such_circuit,
};
use crate::notes::Notes;
use crate::row::{Row, UNKNOWN, items_of, text_of};
use crate::shape::{FieldKind, Shape, field};
use crate::tables::survey::AllIds;
use crate::value::ValueKind;
use dwelling::{BoxIndex, CircuitIndex, DeadWhen, Dwelling, PowerCut};
use std::collections::BTreeMap;

pub(crate) static SHAPE: Shape = Shape {
    title: "[[dead_when]]",
    name: "dead_when",
    meaning: "Which boxes were dead and which alive while power was taken away at one place, in one of the first three ways. It tells what feeds what, and the circuit of a box whose circuit is not given.",
    fields: &[
        field!(may "breaker_off", FieldKind::Reference("a circuit"), "the circuit whose breaker was off, or fuse out, and no other", "\"3\""),
        field!(may "opened", FieldKind::Reference("a box"), "the box whose device was out and whose conductors were apart, the breaker on", "\"K-1\""),
        field!(may "load_side_lifted", FieldKind::Reference("a box"), "the box whose device had its load side lifted, the breaker on", "\"K-1\""),
        field!(may "dead", FieldKind::References("boxes"), "the boxes that were dead then", "[\"K-2\"]"),
        field!(may "alive", FieldKind::References("boxes"), "the boxes that were alive then; those in neither list were not looked at", "[\"L-1\"]"),
        field!(may "note", FieldKind::Text, "a remark", "\"with a lamp in every opening\""),
    ],
};

/// The ways of taking power away, of which an observation names one.
const CUTS: [&str; 3] = ["breaker_off", "opened", "load_side_lifted"];

/// A box in a list, with its place in the file.
type Named = (BoxIndex, Span);

/// Reads the observations into the dwelling, and from them the circuits of boxes that are given none.
pub(crate) fn read_all(
    notes: &mut Notes,
    rows: &[Row<'_>],
    ids: &AllIds,
    dwelling: &mut Dwelling,
    box_rows: &[Row<'_>],
) {
    let mut told = Told::of(dwelling, box_rows);
    let mut alive_at: Vec<(CircuitIndex, Vec<Named>)> = Vec::new();
    for row in rows {
        let cut = cut(notes, row, ids);
        let dead = boxes(notes, row, "dead", &ids.boxes);
        let alive = boxes(notes, row, "alive", &ids.boxes);
        let note = row.text(notes, "note");
        if told_nothing(row) {
            notes.push(dead_when_sees_nothing::mistake(row.span));
        }
        for (at, place) in &alive {
            if let Some((_, first)) = dead.iter().find(|(dead, _)| dead == at) {
                notes.push(dead_and_alive::mistake(id_of(dwelling, *at), *place, *first));
            }
        }
        let Some((cut, key)) = cut else { continue };
        if let Some(parted) = cut.parted_at() {
            for (_, place) in dead.iter().chain(&alive).filter(|(at, _)| *at == parted) {
                notes.push(dead_when_names_itself::mistake(&row.text_kept(key), *place, row.place_of(key)));
            }
        }
        if let PowerCut::Breaker(circuit) = cut {
            for (at, place) in &dead {
                told.dead(notes, dwelling, *at, circuit, *place);
            }
            alive_at.push((circuit, alive.clone()));
        }
        let indices = |named: Vec<Named>| named.into_iter().map(|(at, _)| at).collect();
        dwelling.dead_when.push(DeadWhen { cut, dead: indices(dead), alive: indices(alive), note });
    }
    for (circuit, named) in alive_at {
        for (at, place) in named {
            told.alive(notes, dwelling, at, circuit, place);
        }
    }
    for (at, (circuit, _)) in told.circuit {
        if let Some(device_box) = dwelling.boxes.get_mut(at.0) {
            device_box.circuit = device_box.circuit.or(Some(circuit));
        }
    }
}

/// Whether neither list holds anything: a list of names that are none was reported, and is no empty one.
fn told_nothing(row: &Row<'_>) -> bool {
    ["dead", "alive"].iter().all(|key| {
        row.table.entry(key).is_none_or(|entry| match &entry.value.kind {
            ValueKind::List(items) => items.is_empty(),
            ValueKind::Text(text) => text == UNKNOWN,
            _ => false,
        })
    })
}

/// How power was taken away, and the key that says so.
fn cut(notes: &mut Notes, row: &Row<'_>, ids: &AllIds) -> Option<(PowerCut, &'static str)> {
    let given: Vec<&'static str> = CUTS.into_iter().filter(|key| row.get(key).is_some()).collect();
    if given.len() != 1 {
        let places = given.iter().map(|key| (*key, row.place_of(key))).collect::<Vec<_>>();
        notes.push(dead_when_not_one_cut::mistake(row.span, &places));
    }
    let mut found = Vec::new();
    for key in given {
        let cut = if key == "breaker_off" {
            let circuit = ids.circuits.find(notes, row, key, no_such_circuit::mistake);
            circuit.map(|circuit| PowerCut::Breaker(CircuitIndex(circuit)))
        } else {
            let at = ids.boxes.find(notes, row, key, no_such_box::mistake).map(BoxIndex);
            at.map(|at| if key == "opened" { PowerCut::Opened(at) } else { PowerCut::LoadSideLifted(at) })
        };
        found.extend(cut.map(|cut| (cut, key)));
    }
    found.into_iter().next()
}

/// The boxes that a list names, each once.
fn boxes(notes: &mut Notes, row: &Row<'_>, key: &str, ids: &Ids) -> Vec<Named> {
    let Some((field, value)) = row.get(key) else { return Vec::new() };
    let mut found: Vec<Named> = Vec::new();
    for item in items_of(notes, field, value).unwrap_or(&[]) {
        let Some(id) = text_of(notes, field, item) else { continue };
        match ids.index(id).map(BoxIndex) {
            Some(at) if found.iter().any(|(known, _)| *known == at) => {
                notes.push(name_twice::mistake(key, id, item.span));
            }
            Some(at) => found.push((at, item.span)),
            None => {
                let nearest = notes.nearest(id, ids.names()).map(str::to_string);
                let few: Vec<&str> = ids.names().take(20).collect();
                notes.push(no_such_box::mistake(id, nearest.as_deref(), &few, item.span));
            }
        }
    }
    found
}

/// The circuit of each box as it is given, or else as a breaker that was off told it, with the place that says so.
struct Told {
    circuit: BTreeMap<BoxIndex, (CircuitIndex, Span)>,
}

impl Told {
    fn of(dwelling: &Dwelling, box_rows: &[Row<'_>]) -> Self {
        let given = dwelling.boxes.iter().zip(box_rows).enumerate();
        let circuit = given
            .filter_map(|(at, (device_box, row))| Some((BoxIndex(at), (device_box.circuit?, row.place_of("circuit")))))
            .collect();
        Self { circuit }
    }

    /// A box was dead with the breaker of a circuit off: it is on that circuit, or on the one that shares its neutral,
    /// whose breaker may go off with it.
    fn dead(&mut self, notes: &mut Notes, dwelling: &Dwelling, at: BoxIndex, off: CircuitIndex, place: Span) {
        let partner = dwelling.circuits.get(off.0).and_then(|_| dwelling.partner_of(off));
        match self.circuit.get(&at).copied() {
            Some((known, _)) if known == off || Some(known) == partner => {}
            Some(known) => contradict(notes, dwelling, (at, off, "dead", place), known),
            None if partner.is_none() => {
                self.circuit.insert(at, (off, place));
            }
            None => {}
        }
    }

    /// A box was alive with the breaker of a circuit off: it is not on that circuit.
    fn alive(&self, notes: &mut Notes, dwelling: &Dwelling, at: BoxIndex, off: CircuitIndex, place: Span) {
        if let Some(known) = self.circuit.get(&at).copied().filter(|(known, _)| *known == off) {
            contradict(notes, dwelling, (at, off, "alive", place), known);
        }
    }
}

fn contradict(
    notes: &mut Notes,
    dwelling: &Dwelling,
    (at, off, seen, place): (BoxIndex, CircuitIndex, &str, Span),
    (known, told): (CircuitIndex, Span),
) {
    // What is on no circuit of the survey was reported as such.
    let (Some(off), Some(known)) = (dwelling.circuits.get(off.0), dwelling.circuits.get(known.0)) else { return };
    let id = id_of(dwelling, at);
    notes.push(circuit_contradicted::mistake(id, seen, (&off.id, place), (&known.id, told)));
}

fn id_of(dwelling: &Dwelling, at: BoxIndex) -> &str {
    dwelling.boxes.get(at.0).map_or("", |device_box| &device_box.id)
}
