//! What readings and sightings mean, as an answer.

use super::beliefs::{
    AdviceAnswer, BeliefAnswer, ClashAnswer, SearchAnswer, advice_answers, belief_answers, clash_answers,
    search_answers,
};
use super::feeding::{FeedingAnswer, feeding_answers};
use diagnosis::belief::{Beliefs, Practice};
use diagnosis::feeding::feeding_orders;
use diagnosis::{Certainty, Condition, Diagnosis, Finding, LookAlike, NextCheck, Site, next_visit};
use dwelling::{BoxIndex, Dwelling};
use schemars::JsonSchema;
use serde::Serialize;

/// Everything found in a dwelling and what to find out next.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FindingsAnswer {
    /// What was found.
    pub findings: Vec<FindingAnswer>,
    /// What to find out next, the most deciding first.
    pub find_out: Vec<NextAnswer>,
    /// The circuits of which something of the feeding order is not known, or contradicts itself.
    pub feeding: Vec<FeedingAnswer>,
    /// What is believed of every box and of the run that feeds it, all evidence of its circuit taken together.
    pub beliefs: Vec<BeliefAnswer>,
    /// What does not fit together.
    pub clashes: Vec<ClashAnswer>,
    /// The tests that are worth most by the minute, best first.
    pub tests: Vec<AdviceAnswer>,
    /// The searches on the circuits on which testing pays.
    pub searches: Vec<SearchAnswer>,
    /// Whether beliefs, tests and searches rest on the shipped figures of common practice, which have no source.
    pub shipped_practice: bool,
}

/// One finding.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FindingAnswer {
    /// `box`, `circuit` or `panel`.
    pub at: &'static str,
    /// The id of the box, circuit or panel.
    pub id: String,
    /// What is the matter.
    pub condition: Condition,
    /// How sure that is.
    pub sure: Certainty,
    /// Whether someone can be hurt as it stands.
    pub danger: bool,
    /// It in a sentence.
    pub says: String,
    /// The evidence.
    pub because: Vec<String>,
    /// What would look the same, and what tells them apart.
    pub look_alikes: Vec<LookAlike>,
    /// The most useful thing to do next.
    pub next: Option<NextAnswer>,
}

/// Something to find out.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct NextAnswer {
    /// What to do.
    pub what: String,
    /// The boxes at which.
    pub boxes: Vec<String>,
}

/// Everything found in a dwelling, and what is believed of it by these figures.
#[must_use]
pub fn findings_answer(
    dwelling: &Dwelling,
    diagnosis: &Diagnosis,
    beliefs: &Beliefs,
    practice: &Practice,
) -> FindingsAnswer {
    let stakes = &practice.stakes;
    FindingsAnswer {
        findings: diagnosis.findings.iter().map(|finding| finding_answer(dwelling, finding)).collect(),
        find_out: find_out(dwelling, diagnosis),
        feeding: feeding_answers(dwelling, &feeding_orders(dwelling)),
        beliefs: belief_answers(dwelling, beliefs),
        clashes: clash_answers(dwelling, beliefs),
        tests: advice_answers(dwelling, &beliefs.advice(dwelling, stakes)),
        searches: search_answers(dwelling, beliefs, stakes),
        shipped_practice: practice.is_shipped(),
    }
}

/// What to find out next, dangers first.
pub(super) fn find_out(dwelling: &Dwelling, diagnosis: &Diagnosis) -> Vec<NextAnswer> {
    dangers_first(diagnosis, next_visit(diagnosis, dwelling))
        .into_iter()
        .map(|check| NextAnswer { what: check.what, boxes: ids(dwelling, &check.boxes) })
        .collect()
}

/// The same checks, those that a danger asks for before all others.
fn dangers_first(diagnosis: &Diagnosis, mut checks: Vec<NextCheck>) -> Vec<NextCheck> {
    let dangers: Vec<&NextCheck> = diagnosis
        .findings
        .iter()
        .filter(|finding| finding.danger)
        .filter_map(|finding| finding.next.as_ref())
        .collect();
    checks.sort_by_key(|check| !dangers.contains(&check));
    checks
}

/// One finding as an answer.
#[must_use]
pub fn finding_answer(dwelling: &Dwelling, finding: &Finding) -> FindingAnswer {
    let (at, id) = match finding.at {
        Site::Box(at) => ("box", dwelling.device_box(at).id.clone()),
        Site::Circuit(at) => ("circuit", dwelling.circuit(at).id.clone()),
        Site::Panel(at) => ("panel", dwelling.panel(at).id.clone()),
    };
    let next = finding.next.as_ref();
    FindingAnswer {
        at,
        id,
        condition: finding.condition,
        sure: finding.sure,
        danger: finding.danger,
        says: finding.says.clone(),
        because: finding.because.clone(),
        look_alikes: finding.look_alikes.clone(),
        next: next.map(|check| NextAnswer { what: check.what.clone(), boxes: ids(dwelling, &check.boxes) }),
    }
}

/// The ids of boxes.
pub(super) fn ids(dwelling: &Dwelling, boxes: &[BoxIndex]) -> Vec<String> {
    boxes.iter().map(|at| dwelling.device_box(*at).id.clone()).collect()
}
