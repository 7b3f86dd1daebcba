//! A box count, as an answer.

use rulebook::{FillVerdict, Fit};
use schemars::JsonSchema;
use serde::Serialize;

/// The count of a box, line by line, held against its volume.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct FillAnswer {
    /// Whether it fits; null where that was not checked.
    pub fits: Option<bool>,
    /// The volume of the box, such as `12.5 in³`; null where unknown.
    pub volume: Option<String>,
    /// The volume taken; null where it could not be counted.
    pub taken: Option<String>,
    /// The lines of the count.
    pub lines: Vec<FillLineAnswer>,
    /// What is missing, where it could not be checked.
    pub not_checked: Option<String>,
}

/// One line of a count.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct FillLineAnswer {
    /// What is counted.
    pub what: String,
    /// The volume it takes.
    pub volume: String,
    /// The section that says so.
    pub cite: String,
}

impl FillAnswer {
    /// A fit as an answer.
    #[must_use]
    pub fn of(fit: &Fit) -> Self {
        let (fits, not_checked) = match &fit.verdict {
            FillVerdict::Fits => (Some(true), None),
            FillVerdict::TooFull => (Some(false), None),
            FillVerdict::NotChecked(missing) => (None, Some(missing.because.clone())),
        };
        let lines = fit.fill.iter().flat_map(|fill| &fill.lines).map(|line| FillLineAnswer {
            what: line.what(),
            volume: line.volume.to_string(),
            cite: line.cite.section.to_owned(),
        });
        Self {
            fits,
            volume: fit.volume.map(|volume| volume.to_string()),
            taken: fit.fill.as_ref().map(|fill| fill.taken.to_string()),
            lines: lines.collect(),
            not_checked,
        }
    }
}
