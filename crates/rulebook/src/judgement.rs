//! All rules asked about one opening, and what they say taken together.

use crate::cited::Citation;
use crate::code::CodeInForce;
use crate::duty::{Duty, Need};
use crate::fill::Fit;
use crate::opening::Opening;
use crate::remedy::{Marking, Remedy};

/// What the code says about one opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Judgement {
    /// Every duty in the order of [`Duty::ALL`], each exactly once.
    pub duties: Vec<DutyVerdict>,
    /// Every remedy in the order of [`Remedy::ALL`], each exactly once.
    pub remedies: Vec<RemedyVerdict>,
    /// Cautions that hold whatever is chosen.
    pub cautions: Vec<String>,
}

/// Whether a duty holds, by which rules and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DutyVerdict {
    /// The duty.
    pub duty: Duty,
    /// Whether it holds.
    pub need: Need,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// The reasons, one sentence each.
    pub because: Vec<String>,
    /// The names of the rules that spoke.
    pub rules: Vec<&'static str>,
}

/// Whether a remedy is lawful, fits, and is worth something.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RemedyVerdict {
    /// The remedy.
    pub remedy: Remedy,
    /// Whether the code allows it: `Required` never occurs here; `NotRequired` never either.
    pub lawful: Lawful,
    /// Why not, or the two readings, in one sentence each.
    pub why_not: Vec<String>,
    /// The words it must carry.
    pub markings: Vec<Marking>,
    /// The conditions under which it is lawful.
    pub conditions: Vec<String>,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// Whether it gives what is plugged in the ground it needs.
    pub serves_equipment: bool,
    /// Whether the box holds it, with the count.
    pub fit: Fit,
    /// The names of the rules that spoke.
    pub rules: Vec<&'static str>,
}

/// Whether the code allows a remedy.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lawful {
    /// It does.
    Yes,
    /// It does not.
    No,
    /// It is read in two ways; the authority decides.
    Disputed,
    /// A fact or a value is missing.
    NotChecked,
}

/// Asks every rule about an opening and puts together what they say.
#[must_use]
pub fn judge(_opening: &Opening, _code: &CodeInForce) -> Judgement {
    Judgement { duties: Vec::new(), remedies: Vec::new(), cautions: Vec::new() }
}
