//! The chain from what was read at an opening to what is done there, as an answer.

use super::findings::{FindingAnswer, finding_answer};
use super::law::LawAnswer;
use super::next_best::NextBestAnswer;
use super::opening::{OpeningAnswer, opening_answer};
use super::options::listed;
use super::reading::in_words;
use super::remedy::{RemedyAnswer, standing};
use crate::planned::{PlanFault, Planned};
use dwelling::{BoxIndex, GroundFact};
use rulebook::{Duty, Known, Need, Remedy, Said, explain};
use schemars::JsonSchema;
use serde::Serialize;

/// Why an opening gets what it gets: readings, findings, what each rule says, remedies, choice.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WhyAnswer {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// The code in force.
    pub law: LawAnswer,
    /// What was read and seen, in words, in the order taken.
    pub readings: Vec<String>,
    /// What follows from it.
    pub findings: Vec<FindingAnswer>,
    /// What is known of the ground.
    pub ground: GroundFact,
    /// The evidence for that.
    pub ground_because: Vec<String>,
    /// What each rule says that has something to say, in the order they are asked.
    pub rules: Vec<RuleSaid>,
    /// Every remedy.
    pub remedies: Vec<RemedyAnswer>,
    /// What the plan does.
    pub plan: OpeningAnswer,
    /// The next best there and what it would cost the whole; null for a box without a receptacle and for one for which
    /// nothing lawful was found.
    pub next_best: Option<NextBestAnswer>,
}

/// What one rule says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RuleSaid {
    /// The rule.
    pub rule: &'static str,
    /// What it asks, in our words.
    pub title: &'static str,
    /// What it says.
    pub says: Vec<Saying>,
    /// The values it rests on, in the edition in force.
    pub values: Vec<ValueSaid>,
    /// Why it could not be asked, where it could not.
    pub not_checked: Option<String>,
}

/// One thing that a rule says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Saying {
    /// The duty it is about.
    pub duty: Option<Duty>,
    /// Whether that duty holds.
    pub need: Option<Need>,
    /// The remedy it is about.
    pub remedy: Option<Remedy>,
    /// Whether it makes that remedy lawful.
    pub standing: Option<&'static str>,
    /// It in words, with its sections.
    pub text: String,
    /// The authorities whose changes or answers make it say so.
    pub changed_by: Vec<String>,
}

/// A value of the code.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ValueSaid {
    /// Its name.
    pub value: &'static str,
    /// Its section; null where nobody has entered the edition.
    pub section: Option<&'static str>,
    /// What it is, in words.
    pub in_words: Option<String>,
    /// How it is known.
    pub known: String,
}

/// The chain for one opening of a plan.
///
/// # Errors
/// [`PlanFault`] where the search for the next best meets a fault of this program.
pub fn why_answer(plan: &Planned, index: BoxIndex, law: &LawAnswer) -> Result<WhyAnswer, PlanFault> {
    let (facts, at) = (&plan.facts, plan.facts.at(index));
    let device_box = facts.dwelling.device_box(index);
    let state = &facts.diagnosis.ground[index.0];
    let said = explain(&at.as_found, &facts.code);
    Ok(WhyAnswer {
        box_id: device_box.id.clone(),
        law: law.clone(),
        readings: device_box.found.iter().map(in_words).collect(),
        findings: facts.diagnosis.findings_at(index).map(|finding| finding_answer(facts.dwelling, finding)).collect(),
        ground: state.fact,
        ground_because: state.because.clone(),
        rules: said.iter().filter(|said| !said.things.is_empty()).map(rule_said).collect(),
        remedies: listed(&at.as_found, &at.judged_as_found).into_iter().map(RemedyAnswer::of).collect(),
        plan: opening_answer(plan, index),
        next_best: NextBestAnswer::of(plan, index)?,
    })
}

fn rule_said(said: &Said) -> RuleSaid {
    let says = said.things.iter().map(|thing| Saying {
        duty: thing.duty.map(|(duty, _)| duty),
        need: thing.duty.map(|(_, need)| need),
        remedy: thing.remedy,
        standing: thing.lawful.map(standing),
        text: thing.text.clone(),
        changed_by: thing.changed_by.clone(),
    });
    let values = said.values.iter().map(|value| ValueSaid {
        value: value.value,
        section: value.section,
        in_words: value.in_words.clone(),
        known: how_known(value.known),
    });
    RuleSaid {
        rule: said.rule,
        title: said.title,
        says: says.collect(),
        values: values.collect(),
        not_checked: said.not_checked.clone(),
    }
}

/// How a value is known, in words.
#[must_use]
pub fn how_known(known: Option<Known>) -> String {
    match known {
        Some(Known::Read(source)) => format!("read: {source}"),
        Some(Known::FromMemory) => "from memory: check with the authority".to_owned(),
        Some(Known::Disputed(readings)) => format!("disputed: {readings}"),
        None => "not read for this edition".to_owned(),
    }
}
