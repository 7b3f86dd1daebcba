//! The page of a rule, with its values edition by edition, and the list of all values.

use crate::cited::{Known, Value};
use crate::edition::Edition;
use crate::ground_connection::CONNECTION_VALUES;
use crate::metal_path::METHOD_VALUES;
use crate::rules::{RULES, rule};
use crate::tables;

/// The page of a rule.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RulePage {
    /// The rule's name.
    pub id: &'static str,
    /// What it asks, in our words.
    pub title: &'static str,
    /// Its page for users, in Markdown.
    pub page: &'static str,
    /// The values it reads, each edition by edition.
    pub by_edition: Vec<ValueRow>,
}

/// A value in one edition.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ValueRow {
    /// The value's name.
    pub value: &'static str,
    /// The edition.
    pub edition: Edition,
    /// The section; nothing where nobody has entered this edition.
    pub section: Option<&'static str>,
    /// How it is known; nothing where nobody has entered this edition.
    pub known: Option<Known>,
    /// What it is, in words; nothing where nobody has entered this edition.
    pub in_words: Option<String>,
}

/// The page of the rule of this name.
#[must_use]
pub fn rule_page(id: &str) -> Option<RulePage> {
    let rule = rule(id)?;
    let by_edition = rule.values.iter().flat_map(|value| rows(*value)).collect();
    Some(RulePage { id: rule.id, title: rule.title, page: rule.page, by_edition })
}

/// One row for each edition covered, whether or not it was entered.
pub(crate) fn rows(value: &dyn Value) -> Vec<ValueRow> {
    let citations = value.citations();
    let row = |edition: Edition| {
        let cite = citations.iter().find(|cite| cite.edition == edition);
        ValueRow {
            value: value.id(),
            edition,
            section: cite.map(|cite| cite.section),
            known: cite.map(|cite| cite.known),
            in_words: value.in_words(edition),
        }
    };
    Edition::ALL.into_iter().map(row).collect()
}

/// Every value of the rulebook, each once: those of the tables, of the places to connect, of the wiring methods, and of the rules.
#[must_use]
pub fn all_values() -> Vec<&'static dyn Value> {
    let shared = tables::VALUES.iter().chain(CONNECTION_VALUES).chain(METHOD_VALUES);
    let of_rules = RULES.iter().flat_map(|rule| rule.values.iter());
    let mut values: Vec<&'static dyn Value> = Vec::new();
    for value in shared.chain(of_rules) {
        if values.iter().all(|listed| listed.id() != value.id()) {
            values.push(*value);
        }
    }
    values
}
