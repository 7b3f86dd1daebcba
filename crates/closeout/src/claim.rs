//! A claim: something that the plan promises of an opening, a circuit or a panel, and whether what was read proves it.

use calculations::SourceAnswer;
use schemars::JsonSchema;
use serde::Serialize;

dwelling::names! {
    /// What is claimed.
    ClaimKind {
        /// The device that the plan puts there is there.
        Device = "device",
        /// The box was changed as the plan says, and holds what is in it.
        BoxWork = "box-work",
        /// The new receptacle is a tamper-resistant one.
        TamperResistant = "tamper-resistant",
        /// The new receptacle is a weather-resistant one.
        WeatherResistant = "weather-resistant",
        /// Hot to neutral reads line voltage without load.
        HotNeutral = "hot-neutral",
        /// Hot to neutral falls under a stated load by what sound conductors and joints explain, and no more.
        HotNeutralLoaded = "hot-neutral-loaded",
        /// Hot and neutral are not changed over.
        Polarity = "polarity",
        /// The ground is one of its own and no jumper to the neutral.
        Ground = "ground",
        /// The grounding conductor is connected in this box.
        GroundConnected = "ground-connected",
        /// The grounding path bears the current of a fault.
        GroundPath = "ground-path",
        /// No ground is faked where the plan leaves none.
        NoGround = "no-ground",
        /// The protective device opens when its own test button is pressed.
        Trips = "trips",
        /// The opening goes dead when the device that protects it is tripped.
        DeadWhenTripped = "dead-when-tripped",
        /// The opening stays alive where no device protects it by the plan.
        NotProtected = "not-protected",
        /// A label that the plan asks for is there.
        Marking = "marking",
        /// No label says what is not so.
        NoFalseMarking = "no-false-marking",
        /// The circuit directory is written as the circuits are.
        Directory = "directory",
        /// Whoever read it wrote down the day and the initials.
        Recorded = "recorded",
        /// Nothing that was read points at a danger.
        NoDanger = "no-danger",
    }
}

dwelling::names! {
    /// What becomes of a claim.
    ProofVerdict {
        /// What was read and seen shows it.
        Proved = "proved",
        /// Nothing was read that would show it.
        Open = "open",
        /// What was read or seen speaks against it.
        Contradicts = "contradicts",
    }
}

/// A claim and what became of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ClaimAnswer {
    /// What is claimed.
    pub claim: ClaimKind,
    /// Of a marking: its words; null for all else.
    pub of: Option<String>,
    /// The claim in words.
    pub says: String,
    /// What became of it.
    pub verdict: ProofVerdict,
    /// By what it is proved; null where it is not.
    pub how: Option<String>,
    /// What must be read or seen; null where it is proved.
    pub must_read: Option<String>,
    /// What was read or seen instead; null where nothing was.
    pub reads: Option<String>,
    /// Where it is contradicted: the likely cause.
    pub likely_cause: Option<String>,
    /// Where it is not proved: what to do next.
    pub next: Option<String>,
    /// Where the claim or the test comes from.
    pub source: SourceAnswer,
}

/// A claim that has no verdict yet.
#[derive(Clone, Debug)]
pub(crate) struct Claimed {
    pub(crate) claim: ClaimKind,
    pub(crate) of: Option<String>,
    pub(crate) says: String,
    pub(crate) must_read: String,
    pub(crate) source: SourceAnswer,
}

/// What was read against a claim.
#[derive(Clone, Debug)]
pub(crate) struct Against {
    pub(crate) reads: String,
    pub(crate) likely_cause: String,
    pub(crate) next: String,
}

impl Claimed {
    pub(crate) fn proved(self, how: impl Into<String>) -> ClaimAnswer {
        let how = Some(how.into());
        ClaimAnswer { how, must_read: None, ..self.with(ProofVerdict::Proved) }
    }

    /// Not proved, since something was not read.
    pub(crate) fn open(self, next: impl Into<String>) -> ClaimAnswer {
        let next = Some(next.into());
        ClaimAnswer { next, ..self.with(ProofVerdict::Open) }
    }

    pub(crate) fn contradicted(self, against: Against) -> ClaimAnswer {
        ClaimAnswer {
            reads: Some(against.reads),
            likely_cause: Some(against.likely_cause),
            next: Some(against.next),
            ..self.with(ProofVerdict::Contradicts)
        }
    }

    fn with(self, verdict: ProofVerdict) -> ClaimAnswer {
        ClaimAnswer {
            claim: self.claim,
            of: self.of,
            says: self.says,
            verdict,
            how: None,
            must_read: Some(self.must_read),
            reads: None,
            likely_cause: None,
            next: None,
            source: self.source,
        }
    }
}

/// What speaks against a claim, in words.
pub(crate) fn against(reads: impl Into<String>, likely_cause: impl Into<String>, next: impl Into<String>) -> Against {
    Against { reads: reads.into(), likely_cause: likely_cause.into(), next: next.into() }
}
