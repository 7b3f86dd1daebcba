//! A check: what was found, what is required, what is left between them, and where the requirement stands.

use dwelling::names;
use rulebook::{Citation, Known};
use schemars::JsonSchema;
use serde::Serialize;

names! {
    /// What is checked.
    Check {
        /// Whether what is in a box fits it.
        Fill = "fill",
        /// Whether the breaker or fuse is small enough for the conductors behind it.
        Breaker = "breaker",
        /// What the conductors may carry where they lie.
        Ampacity = "ampacity",
        /// Whether a grounding wire is large enough for every breaker whose faults it carries.
        GroundingConductor = "grounding-conductor",
        /// The current of a fault from hot to ground, and what the standards let be said of its clearing.
        FaultLoop = "fault-loop",
        /// The voltage that is lost on the way under a stated load.
        VoltageDrop = "voltage-drop",
        /// The standing leakage behind one GFCI.
        Leakage = "leakage",
    }
}

names! {
    /// How a check came out.
    Verdict {
        /// It is as required, or as advised where nothing is required.
        Ok = "ok",
        /// No rule is broken, and advice is not followed.
        Advice = "advice",
        /// It is not as required.
        NotOk = "not-ok",
        /// A fact or a value is missing: no pass.
        NotChecked = "not-checked",
    }
}

names! {
    /// What kind of thing a check is of.
    SubjectKind {
        /// A box.
        Box = "box",
        /// A circuit.
        Circuit = "circuit",
        /// The run that feeds a box.
        Run = "run",
        /// A route along which a grounding conductor is brought.
        Route = "route",
        /// A GFCI: in a box, or at the panel end of a circuit.
        Gfci = "gfci",
    }
}

names! {
    /// What kind of requirement a check is held against.
    SourceKind {
        /// A section of the code.
        Rule = "rule",
        /// A standard that products or tests are made to.
        Standard = "standard",
        /// Advice: nobody is bound by it.
        Advice = "advice",
    }
}

/// Where a requirement stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SourceAnswer {
    /// The section, standard or text.
    pub cite: String,
    /// Whether it is a rule, a standard or advice.
    pub kind: SourceKind,
    /// Whether it rests on memory: check it with the authority.
    pub from_memory: bool,
}

impl SourceAnswer {
    /// A section of the code in force.
    #[must_use]
    pub fn rule(cite: Citation) -> Self {
        Self { cite: cite.to_string(), kind: SourceKind::Rule, from_memory: !matches!(cite.known, Known::Read(_)) }
    }

    /// A source that is no value of the rulebook.
    #[must_use]
    pub fn other(kind: SourceKind, cite: impl Into<String>, from_memory: bool) -> Self {
        Self { cite: cite.into(), kind, from_memory }
    }
}

/// What a check is of.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
pub struct SubjectAnswer {
    /// The kind of thing.
    pub kind: SubjectKind,
    /// Its name in the survey; of a run, the box it feeds.
    pub id: String,
}

/// A quantity of a check: a value, or the ends between which it lies.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Amount {
    /// Its lowest value; null where it has none or that is not known.
    pub least: Option<f64>,
    /// Its highest value; null where it has none or that is not known.
    pub most: Option<f64>,
    /// The unit of both.
    pub unit: &'static str,
    /// The same in words.
    pub words: String,
}

impl Amount {
    /// One value in words.
    #[must_use]
    pub fn of(value: f64, unit: &'static str, words: impl Into<String>) -> Self {
        let value = rounded(value);
        Self { least: Some(value), most: Some(value), unit, words: words.into() }
    }

    /// A span in words.
    #[must_use]
    pub fn between(least: f64, most: f64, unit: &'static str, words: impl Into<String>) -> Self {
        Self { least: Some(rounded(least)), most: Some(rounded(most)), unit, words: words.into() }
    }

    /// At most so much.
    #[must_use]
    pub fn at_most(most: f64, unit: &'static str, words: impl Into<String>) -> Self {
        Self { least: None, most: Some(rounded(most)), unit, words: words.into() }
    }

    /// At least so much.
    #[must_use]
    pub fn at_least(least: f64, unit: &'static str, words: impl Into<String>) -> Self {
        Self { least: Some(rounded(least)), most: None, unit, words: words.into() }
    }
}

/// A number to the nearest thousandth: enough for every unit used, and the same on every machine.
#[must_use]
pub(crate) fn rounded(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}

/// One check.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct CheckRow {
    /// What is checked.
    pub check: Check,
    /// Of what.
    pub subject: SubjectAnswer,
    /// Its circuit, or both circuits of a multiwire set.
    pub circuits: Vec<String>,
    /// How it came out.
    pub verdict: Verdict,
    /// What was found; null where that is not known.
    pub found: Option<Amount>,
    /// What is required or advised; null where that is not known.
    pub required: Option<Amount>,
    /// What is left between them, in the unit of `found`: below zero where it is not enough. Null where it has no number.
    pub margin: Option<f64>,
    /// What the check says, in a sentence.
    pub says: String,
    /// What must be found out first; null where nothing is missing.
    pub find_out: Option<String>,
    /// Where the requirement stands.
    pub source: SourceAnswer,
}

/// The part of a check that does not hang on how it comes out.
#[derive(Clone, Debug)]
pub(crate) struct Asked {
    pub(crate) check: Check,
    pub(crate) subject: SubjectAnswer,
    pub(crate) circuits: Vec<String>,
    pub(crate) source: SourceAnswer,
}

impl Asked {
    /// A check that could be made.
    pub(crate) fn checked(
        self,
        verdict: Verdict,
        (found, required): (Amount, Amount),
        margin: Option<f64>,
        says: impl Into<String>,
    ) -> CheckRow {
        CheckRow {
            check: self.check,
            subject: self.subject,
            circuits: self.circuits,
            verdict,
            found: Some(found),
            required: Some(required),
            margin: margin.map(rounded),
            says: says.into(),
            find_out: None,
            source: self.source,
        }
    }

    /// A check that could not be made, and what to find out.
    pub(crate) fn not_checked(self, find_out: impl Into<String>) -> CheckRow {
        let find_out = find_out.into();
        CheckRow {
            check: self.check,
            subject: self.subject,
            circuits: self.circuits,
            verdict: Verdict::NotChecked,
            found: None,
            required: None,
            margin: None,
            says: format!("not checked: {find_out}"),
            find_out: Some(find_out),
            source: self.source,
        }
    }
}
