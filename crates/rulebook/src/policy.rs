//! The authority's answers to questions on which the trade is divided.

use dwelling::names;
use std::collections::BTreeMap;

names! {
    /// A question on which the trade is divided and an authority may have answered.
    Question {
        /// Whether old armor without a bonding strip may serve as the ground of a replaced receptacle.
        ArmorWithoutStrip = "armor-without-strip",
        /// Whether a grounding conductor thinner than the table asks may serve a replaced receptacle.
        ReducedGround = "reduced-ground",
        /// Whether bringing a separate grounding conductor counts as changing the circuit's wiring.
        SeparateEgcChangesWiring = "separate-egc-changes-wiring",
        /// Whether a three-slot receptacle without a ground may be turned back into a two-slot one.
        ThreeSlotBackToTwoSlot = "three-slot-back-to-two-slot",
        /// Whether the ground at a box of the same circuit may be extended to an opening without one.
        GroundOfTheSameCircuit = "ground-of-the-same-circuit",
    }
}

/// An authority's answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Whether it says yes.
    pub yes: bool,
    /// Who answered, and where it is written, in words.
    pub by: String,
}

/// The answers that are known. Whatever is not answered stays disputed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Policy {
    answers: BTreeMap<Question, Answer>,
}

impl Policy {
    /// No answer to any question.
    #[must_use]
    pub const fn unknown() -> Self {
        Self { answers: BTreeMap::new() }
    }

    /// The same with one more answer, which takes the place of an earlier one.
    #[must_use]
    pub fn with(mut self, question: Question, yes: bool, by: impl Into<String>) -> Self {
        self.answers.insert(question, Answer { yes, by: by.into() });
        self
    }

    /// The answer to a question, where it is known.
    #[must_use]
    pub fn answer(&self, question: Question) -> Option<&Answer> {
        self.answers.get(&question)
    }

    /// Every answer that is known.
    pub fn answers(&self) -> impl Iterator<Item = (Question, &Answer)> {
        self.answers.iter().map(|(question, answer)| (*question, answer))
    }
}
