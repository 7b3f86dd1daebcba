//! What is dangerous and is put right with every plan, as an answer, and what of it has no price.

use super::findings::ids;
use super::lines::LineAnswer;
use super::opening::MoneyAnswer;
use crate::candidate::Step;
use crate::dangers::{DangerRepair, DangerWork, largest_lawful, takes_out_a_false_ground};
use crate::device::Device;
use crate::in_words;
use crate::planned::Planned;
use crate::repairs::repairs_at;
use diagnosis::{Certainty, Condition, Finding, Site};
use dwelling::{BoxIndex, CircuitIndex, Overcurrent};
use schemars::JsonSchema;
use serde::Serialize;

/// A danger that is put right whatever else is chosen, with a price of its own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct DangerAnswer {
    /// What is done, by its name.
    pub work: DangerWork,
    /// `box`, `circuit` or `panel`.
    pub at: &'static str,
    /// The id of the box, circuit or panel.
    pub id: String,
    /// The boxes that it is about.
    pub boxes: Vec<String>,
    /// The circuits that it is about.
    pub circuits: Vec<String>,
    /// What is done, in words.
    pub says: String,
    /// Why: what is dangerous.
    pub because: String,
    /// Whether its price is an allowance: how far the work goes can be known only when boxes are open.
    pub allowance: bool,
    /// What an allowance rests on; null where the price is none.
    pub rests_on: Option<String>,
    /// What it costs.
    pub price: MoneyAnswer,
    /// The lines of that price.
    pub lines: Vec<LineAnswer>,
}

/// A danger that was found and for which the price holds nothing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct NotPricedAnswer {
    /// `box`, `circuit` or `panel`.
    pub at: &'static str,
    /// The id of the box, circuit or panel.
    pub id: String,
    /// What is dangerous.
    pub says: String,
    /// Why the price holds nothing for it.
    pub why: String,
}

impl DangerAnswer {
    /// What a plan puts right besides what is done at its openings.
    #[must_use]
    pub fn all(plan: &Planned) -> Vec<Self> {
        plan.danger_repairs().into_iter().map(|repair| Self::of(plan, repair)).collect()
    }

    fn of(plan: &Planned, repair: &DangerRepair) -> Self {
        let dwelling = plan.facts.dwelling;
        let (at, id) = place_of(plan, repair.at);
        let (boxes, circuits) = (ids(dwelling, &repair.boxes), circuit_ids(plan, &repair.circuits));
        let because = match repair.findings.first() {
            Some(finding) => plan.facts.diagnosis.findings[*finding].says.clone(),
            None => repair.circuits.first().map_or_else(String::new, |circuit| too_large(plan, *circuit)),
        };
        let ratings = repair.circuits.first().map(|circuit| {
            let found = dwelling.circuit(*circuit).breaker;
            (found.map_or_else(String::new, |found| found.to_string()), fit_instead(plan, *circuit))
        });
        Self {
            work: repair.work,
            at,
            says: in_words::danger_repair(repair.work, &id, &boxes, &circuits, ratings.unwrap_or_default()),
            id,
            boxes,
            circuits,
            because,
            allowance: repair.rests_on.is_some(),
            rests_on: repair.rests_on.map(str::to_owned),
            price: MoneyAnswer::of(repair.price),
            lines: LineAnswer::all(&plan.book, repair.lines.iter().copied()),
        }
    }
}

impl NotPricedAnswer {
    /// The dangers for which the price of a plan holds nothing.
    #[must_use]
    pub fn all(plan: &Planned) -> Vec<Self> {
        let standings = standings(plan).into_iter().filter(|(_, standing)| *standing == Standing::NotPriced);
        standings
            .map(|(finding, _)| {
                let (at, id) = place_of(plan, finding.at);
                let why = match finding.sure {
                    Certainty::Possible => "whether it is so is to be found out first",
                    _ => "what it takes is not known before it has been looked into",
                };
                Self { at, id, says: finding.says.clone(), why: why.to_owned() }
            })
            .collect()
    }
}

/// The dangers that a plan does not remove for sure, in sentences: those without a price, and those for which it holds an
/// allowance.
pub(super) fn dangers_left(plan: &Planned) -> Vec<String> {
    let mut list = Vec::new();
    for (finding, standing) in standings(plan) {
        let (_, id) = place_of(plan, finding.at);
        match standing {
            Standing::Removed => {}
            Standing::Allowed => list.push(format!("{id}: DANGER, {ALLOWED}: {}", finding.says)),
            Standing::NotPriced => list.push(format!("{id}: DANGER, and no work is planned for it: {}", finding.says)),
        }
    }
    let at_panels = plan.danger_repairs().into_iter().filter(|repair| repair.findings.is_empty());
    for repair in at_panels.filter(|repair| repair.rests_on.is_some()) {
        for circuit in &repair.circuits {
            let id = &plan.facts.dwelling.circuit(*circuit).id;
            list.push(format!("circuit {id}: DANGER, {ALLOWED}: {}", too_large(plan, *circuit)));
        }
    }
    list
}

/// What is said of a danger for which the price of a plan holds an allowance.
pub const ALLOWED: &str = "for which the price holds an allowance";

/// How a plan stands to a danger that was found.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Standing {
    /// What it does at the opening removes it.
    Removed,
    /// Its price holds an allowance for it.
    Allowed,
    /// Its price holds nothing for it.
    NotPriced,
}

fn standings<'a>(plan: &'a Planned) -> Vec<(&'a Finding, Standing)> {
    let repairs = plan.danger_repairs();
    let findings = plan.facts.diagnosis.findings.iter().enumerate().filter(|(_, finding)| finding.danger);
    let standing_of = |(index, finding): (usize, &'a Finding)| {
        let removed = matches!(finding.at, Site::Box(at) if is_removed(plan, at, finding));
        let standing = if removed {
            Standing::Removed
        } else if repairs.iter().any(|repair| repair.findings.contains(&index)) {
            Standing::Allowed
        } else {
            Standing::NotPriced
        };
        (finding, standing)
    };
    findings.map(standing_of).collect()
}

/// Whether what the plan does at a box removes a danger found there.
fn is_removed(plan: &Planned, at: BoxIndex, finding: &Finding) -> bool {
    let repaired = || !repairs_at(&plan.facts, at).is_empty();
    match finding.condition {
        Condition::FalseGround
        | Condition::ReversedFalseGround
        | Condition::GroundByPipeOrRod
        | Condition::HotNeutralReversed
        | Condition::OddOneOut => repaired(),
        Condition::GroundContradicted => takes_out_a_false_ground(&plan.facts, at),
        Condition::GfciDoesNotTrip => plan.chosen(at).device != Device::Kept,
        Condition::PoorGround | Condition::LooseGround => {
            matches!(plan.chosen(at).step, Step::RestoreKept | Step::RestoreFitted)
        }
        _ => false,
    }
}

/// Why a breaker or fuse has to go.
fn too_large(plan: &Planned, circuit: CircuitIndex) -> String {
    let dwelling = plan.facts.dwelling;
    let found = dwelling.circuit(circuit).breaker.map_or_else(String::new, |found| format!("{found} "));
    let device = match dwelling.panel(dwelling.circuit(circuit).panel).overcurrent {
        Some(Overcurrent::Breakers) => "breaker",
        Some(Overcurrent::Fuses) => "fuse",
        None => "breaker or fuse",
    };
    format!(
        "its {found}{device} is too large for its conductors: fit one of {} first, 240.4(D)",
        fit_instead(plan, circuit)
    )
}

fn fit_instead(plan: &Planned, circuit: CircuitIndex) -> String {
    largest_lawful(&plan.facts, circuit).map_or_else(String::new, |lawful| lawful.to_string())
}

fn circuit_ids(plan: &Planned, circuits: &[CircuitIndex]) -> Vec<String> {
    circuits.iter().map(|circuit| plan.facts.dwelling.circuit(*circuit).id.clone()).collect()
}

fn place_of(plan: &Planned, at: Site) -> (&'static str, String) {
    let dwelling = plan.facts.dwelling;
    match at {
        Site::Box(at) => ("box", dwelling.device_box(at).id.clone()),
        Site::Circuit(at) => ("circuit", dwelling.circuit(at).id.clone()),
        Site::Panel(at) => ("panel", dwelling.panel(at).id.clone()),
    }
}
