//! The code in force that an answer rests on, as an answer.

use rulebook::CodeInForce;
use schemars::JsonSchema;
use serde::Serialize;

/// The code in force: an edition, where and when, and what authorities changed in it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LawAnswer {
    /// The edition.
    pub edition: u16,
    /// The place whose adoption it is, where a built-in record was used.
    pub place: Option<String>,
    /// The day of the permit, where known.
    pub permit_date: Option<String>,
    /// The authorities whose changes are part of it, with where they are written.
    pub changed_by: Vec<String>,
    /// What must be said with every answer under it.
    pub warnings: Vec<String>,
    /// What must be settled before an answer under it can be relied on.
    pub doubts: Vec<String>,
}

impl LawAnswer {
    /// A code in force with nothing else to be said.
    #[must_use]
    pub fn of(code: &CodeInForce) -> Self {
        let amended = code.amendments.iter().map(|amendment| amendment.by());
        let answered = code.policy.answers().map(|(question, answer)| format!("{} on {question}", answer.by));
        Self {
            edition: code.edition.year(),
            place: None,
            permit_date: code.permit_day.map(|day| day.to_string()),
            changed_by: amended.chain(answered).collect(),
            warnings: Vec::new(),
            doubts: Vec::new(),
        }
    }
}
