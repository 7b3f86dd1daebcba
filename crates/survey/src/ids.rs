//! The ids of a survey, and finding what they name.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{id_clash, id_odd_character, id_reserved, id_twice, text_too_long};
use crate::notes::Notes;
use crate::row::{Row, UNKNOWN, text_of};
use std::collections::BTreeMap;

/// The word that names the panel of a box's own circuit.
pub(crate) const OWN_PANEL: &str = "panel";
const LONGEST_ID: usize = 64;

/// The ids of one kind of thing with their positions and places.
pub(crate) struct Ids {
    /// What they name, in one word.
    pub(crate) what: &'static str,
    names: BTreeMap<String, (usize, Span)>,
}

impl Ids {
    /// The ids of these rows; a repeated, reserved or oddly written one is a mistake.
    pub(crate) fn of(notes: &mut Notes, what: &'static str, rows: &[Row<'_>]) -> Self {
        let mut names: BTreeMap<String, (usize, Span)> = BTreeMap::new();
        for (index, row) in rows.iter().enumerate() {
            let Some((field, value)) = row.get("id") else { continue };
            let Some(id) = text_of(notes, field, value) else { continue };
            if let Some(mistake) = oddness(id, value.span) {
                notes.push(mistake);
            }
            match names.get(id) {
                Some((_, first)) => notes.push(id_twice::mistake(what, id, value.span, *first)),
                None => {
                    names.insert(id.to_string(), (index, value.span));
                }
            }
        }
        Self { what, names }
    }

    pub(crate) fn index(&self, id: &str) -> Option<usize> {
        self.names.get(id).map(|(index, _)| *index)
    }

    pub(crate) fn names(&self) -> impl Iterator<Item = &str> {
        self.names.keys().map(String::as_str)
    }

    /// The position of the only thing of its kind, where there is but one.
    pub(crate) fn only_one(&self) -> Option<usize> {
        let mut positions = self.names.values().map(|(index, _)| *index);
        positions.next().filter(|_| positions.next().is_none())
    }

    /// Reports every id that also names something of another kind.
    pub(crate) fn report_clashes(&self, notes: &mut Notes, other: &Self) {
        for (id, (_, span)) in &self.names {
            if let Some((_, theirs)) = other.names.get(id) {
                notes.push(id_clash::mistake(id, (self.what, *span), (other.what, *theirs)));
            }
        }
    }

    /// The position of what a key refers to; `mistake` tells of a name that is none.
    pub(crate) fn find(
        &self,
        notes: &mut Notes,
        row: &Row<'_>,
        key: &str,
        mistake: fn(&str, Option<&str>, &[&str], Span) -> Diagnostic,
    ) -> Option<usize> {
        let (field, value) = row.get(key)?;
        let id = text_of(notes, field, value)?;
        let found = self.index(id);
        if found.is_none() {
            let nearest = notes.nearest(id, self.names()).map(str::to_string);
            let few: Vec<&str> = self.names().take(20).collect();
            notes.push(mistake(id, nearest.as_deref(), &few, value.span));
        }
        found
    }
}

/// What is wrong with how an id is written.
fn oddness(id: &str, span: Span) -> Option<Diagnostic> {
    let length = id.chars().count();
    if length > LONGEST_ID {
        return Some(text_too_long::mistake("id", length, LONGEST_ID, span));
    }
    if id == OWN_PANEL || id == UNKNOWN {
        return Some(id_reserved::mistake(id, span));
    }
    let plain = |character: char| character.is_alphanumeric() || "-_./#+".contains(character);
    id.chars().find(|character| !plain(*character)).map(|odd| id_odd_character::mistake(id, odd, span))
}
