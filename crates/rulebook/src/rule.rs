//! What a rule is: a name, a title in our words, its page, and a pure function of an opening and the code in force.

use crate::cited::{Citation, NotChecked, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::opening::Opening;
use crate::remedy::{Marking, Remedy};
use std::borrow::Cow;

/// A rule of the code. It reads no other rule.
#[derive(Clone, Copy)]
pub struct Rule {
    /// A stable name, such as `replacement.afci`.
    pub id: &'static str,
    /// What it asks, in our words.
    pub title: &'static str,
    /// Its page for users, in Markdown.
    pub page: &'static str,
    /// What it decides: these are not checked where a value it needs has not been read for the edition in force.
    pub decides: &'static [Decides],
    /// The values of the code that it holds itself; those it shares stand in `tables::VALUES`.
    pub values: &'static [&'static dyn Value],
    /// What it says about an opening.
    pub judge: fn(&Opening, &CodeInForce) -> Result<Vec<Statement>, NotChecked>,
}

/// Something that a rule decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decides {
    /// Whether this duty holds.
    Duty(Duty),
    /// Whether this remedy is lawful.
    Remedy(Remedy),
}

/// One thing that a rule says about an opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Statement {
    /// What it says.
    pub says: Says,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// The amendments and answers of authorities that make it say so, in words.
    pub changed_by: Vec<String>,
}

impl Statement {
    /// The same, said because an authority changed or answered something; nothing where none did.
    #[must_use]
    pub fn changed(mut self, by: Option<&str>) -> Self {
        self.changed_by.extend(by.map(str::to_owned));
        self
    }
}

/// Words of a rule: mostly the same for every opening, so that they are not copied before they are used.
pub type Words = Cow<'static, str>;

/// What a rule can say. Silence is saying nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Says {
    /// The opening is owed this when its receptacle is replaced; for what reason.
    Owes(Duty, Words),
    /// The opening is not owed this, and why that is worth saying.
    Excuses(Duty, Words),
    /// Whether it is owed this is read in two ways: both, in words.
    Disputes(Duty, Words),
    /// Whether it is owed this cannot be told: what is missing.
    CannotTell(Duty, Words),
    /// This remedy is lawful here.
    Allows(Remedy),
    /// This remedy is not lawful here: why, in one sentence.
    Bars(Remedy, Words),
    /// Whether this remedy is lawful here is read in two ways: both, in words.
    DisputesRemedy(Remedy, Words),
    /// This remedy is lawful here as far as this rule goes; whether what is plugged in may be used on it is read in two ways.
    DisputesUse(Remedy, Words),
    /// Whether this remedy is lawful here cannot be told: what is missing.
    CannotTellRemedy(Remedy, Words),
    /// This remedy, where chosen, must carry this marking.
    Marks(Remedy, Marking),
    /// This remedy, where chosen, is lawful only under this condition.
    Conditions(Remedy, Words),
    /// A caution that goes with the opening whatever is chosen.
    Cautions(Words),
}

impl Says {
    /// The statement with its citations.
    #[must_use]
    pub fn by(self, cites: &[Citation]) -> Statement {
        Statement { says: self, cites: cites.to_vec(), changed_by: Vec::new() }
    }
}
