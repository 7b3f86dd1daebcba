//! One remedy's verdict, as an answer.

use super::duties::sections;
use super::fill::FillAnswer;
use rulebook::{Lawful, Remedy, RemedyVerdict};
use schemars::JsonSchema;
use serde::Serialize;

/// Whether one remedy is lawful, fits and is worth something.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RemedyAnswer {
    /// The remedy.
    pub remedy: Remedy,
    /// Whether it is lawful beyond doubt. Where `standing` is `disputed` or `not-checked` this is false and not a pass.
    pub lawful: bool,
    /// `lawful`, `unlawful`, `disputed` or `not-checked`.
    pub standing: &'static str,
    /// Whether it gives what is plugged in the ground it needs.
    pub serves_equipment: bool,
    /// Whether the box holds it; null where that was not checked.
    pub fits_box: Option<bool>,
    /// The words it must carry, exactly.
    pub markings: Vec<&'static str>,
    /// The sections that say so.
    pub cites: Vec<String>,
    /// The conditions under which it is lawful.
    pub conditions: Vec<String>,
    /// Where it is read in two ways whether what is plugged in may be used on it: both readings.
    pub disputed_use: Vec<String>,
    /// Why it is not lawful, is disputed or was not checked; null where it is lawful.
    pub why_not: Option<String>,
    /// The authorities whose changes or answers have a part in this.
    pub changed_by: Vec<String>,
    /// The count of the box.
    pub fill: FillAnswer,
}

impl RemedyAnswer {
    /// A verdict as an answer.
    #[must_use]
    pub fn of(verdict: &RemedyVerdict) -> Self {
        let fill = FillAnswer::of(&verdict.fit);
        Self {
            remedy: verdict.remedy,
            lawful: verdict.lawful == Lawful::Yes,
            standing: standing(verdict.lawful),
            serves_equipment: verdict.serves_equipment,
            fits_box: fill.fits,
            markings: verdict.markings.iter().map(|marking| marking.name()).collect(),
            cites: sections(&verdict.cites),
            conditions: verdict.conditions.iter().map(|condition| condition.text()).collect(),
            disputed_use: verdict.disputed_use.clone(),
            why_not: (!verdict.why_not.is_empty()).then(|| verdict.why_not.join("; ")),
            changed_by: verdict.changed_by.clone(),
            fill,
        }
    }
}

pub(super) const fn standing(lawful: Lawful) -> &'static str {
    match lawful {
        Lawful::Yes => "lawful",
        Lawful::No => "unlawful",
        Lawful::Disputed => "disputed",
        Lawful::NotChecked => "not-checked",
    }
}
