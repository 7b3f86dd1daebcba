//! What an answer rests on: what was read, what is remembered, what is read in two ways.

use rulebook::{Citation, Known};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeSet;

/// What an answer's citations rest on.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct BasisAnswer {
    /// Sections that rest on memory: check them with the authority.
    pub from_memory: Vec<String>,
    /// Sections that are read in two ways, with both readings.
    pub disputed: Vec<String>,
}

impl BasisAnswer {
    /// The basis of these citations.
    #[must_use]
    pub fn of<'a>(cites: impl IntoIterator<Item = &'a Citation>) -> Self {
        let (mut from_memory, mut disputed) = (BTreeSet::new(), BTreeSet::new());
        for cite in cites {
            match cite.known {
                Known::Read(_) => {}
                Known::FromMemory => {
                    from_memory.insert(cite.to_string());
                }
                Known::Disputed(readings) => {
                    disputed.insert(format!("{cite}: {readings}"));
                }
            }
        }
        Self { from_memory: from_memory.into_iter().collect(), disputed: disputed.into_iter().collect() }
    }
}
