//! The close-out of a job as an answer: every claim, what is left in walking order, and what keeps the certificate back.

use crate::at_panel;
use crate::case::Case;
use crate::claim::{ClaimAnswer, ClaimKind, ProofVerdict};
use crate::ground::joined_elsewhere;
use crate::held_back::held_back;
use crate::opening::{OpeningJudged, judged};
use crate::seen::is_loaded;
use dwelling::{AfterReading, BoxIndex, TesterVerdict};
use remedies::{Device, LawAnswer, PlanAnswer, Planned, Step};
use rulebook::Remedy;
use schemars::JsonSchema;
use serde::Serialize;

/// The close-out of a job.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ProofAnswer {
    /// The version of this answer's shape.
    pub format: u32,
    /// What the job is called.
    pub job: String,
    /// The code in force.
    pub law: LawAnswer,
    /// The number of the offer that was carried out.
    pub offer: usize,
    /// The whole: `contradicts` where anything does; `open` where anything is; else `proved`.
    pub status: ProofVerdict,
    /// How many claims came out how.
    pub counts: ProofCounts,
    /// The panels.
    pub panels: Vec<PanelProof>,
    /// The panel ends of the circuits and multiwire sets.
    pub circuits: Vec<CircuitProof>,
    /// The openings of which something is claimed, by room in walking order.
    pub openings: Vec<OpeningProof>,
    /// What is left to do or to read: panels and circuits first, then by room in walking order.
    pub left: Vec<LeftAnswer>,
    /// What of the plan itself is to be settled before the job can be closed out.
    pub holds_back: Vec<HeldBackAnswer>,
    /// What rests on a dispute or on the authority's word.
    pub rests_on: Vec<String>,
    /// What every verdict rests on.
    pub assumptions: Vec<&'static str>,
}

/// How many claims came out how.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ProofCounts {
    /// Shown by what was read and seen.
    pub proved: usize,
    /// Nothing was read that would show it.
    pub open: usize,
    /// What was read or seen speaks against it.
    pub contradicts: usize,
}

/// The claims about a panel.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PanelProof {
    /// The panel.
    pub panel: String,
    /// The claims.
    pub claims: Vec<ClaimAnswer>,
}

/// The claims about the panel end of a circuit or multiwire set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CircuitProof {
    /// The circuit, or both circuits of a multiwire set.
    pub circuits: Vec<String>,
    /// The panel.
    pub panel: String,
    /// What the plan puts at the panel end.
    pub at_panel: &'static str,
    /// The claims.
    pub claims: Vec<ClaimAnswer>,
}

/// The claims about an opening.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OpeningProof {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// The room it is in.
    pub room: String,
    /// Its circuit; null where unknown.
    pub circuit: Option<String>,
    /// The remedy that was carried out; null where none was found.
    pub remedy: Option<Remedy>,
    /// What was done.
    pub step: Step,
    /// Whether it has a real equipment ground by the plan.
    pub grounded: bool,
    /// What protects it by the plan.
    pub protected_by: Option<String>,
    /// The worst of its claims.
    pub verdict: ProofVerdict,
    /// Where a plug-in tester says open ground and nothing is wrong: why; null elsewhere.
    pub tester_explained: Option<String>,
    /// What was read, in the order taken.
    pub read: Vec<ReadAnswer>,
    /// The claims.
    pub claims: Vec<ClaimAnswer>,
}

/// One set of readings, in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ReadAnswer {
    /// Whether load was on.
    pub loaded: bool,
    /// Hot to neutral.
    pub hn: Option<String>,
    /// Hot to ground.
    pub hg: Option<String>,
    /// Neutral to ground.
    pub ng: Option<String>,
    /// What the load drew and where, where one was on.
    pub load: Option<String>,
    /// What a plug-in tester said.
    pub tester: Option<TesterVerdict>,
    /// The day.
    pub day: Option<String>,
    /// The initials.
    pub by: Option<String>,
}

/// Something that is left.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LeftAnswer {
    /// The room; null at a panel.
    pub room: Option<String>,
    /// The box, the circuits or the panel.
    pub at: String,
    /// What is claimed.
    pub claim: ClaimKind,
    /// Open or contradicted.
    pub verdict: ProofVerdict,
    /// What to do.
    pub next: String,
}

/// Something of the plan that must be settled first.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct HeldBackAnswer {
    /// The box; null where it is about more than one.
    #[serde(rename = "box")]
    pub box_id: Option<String>,
    /// What.
    pub what: String,
}

/// What every verdict rests on.
const ASSUMPTIONS: [&str; 6] = [
    "only what was written down is judged: nothing is known of wiring that nobody saw",
    "the last reading of each kind counts, since what was mended is read again",
    "a meter is off by 1 % and three digits, one that draws current by 2 %; readings are written to a tenth of a volt: common \
     practice, no source",
    "the load draws within 10 % of what is stated, and the supply stays as it is between two readings",
    "volts under load are reckoned from the surveyed lengths and sizes, from 0 °C to 75 °C, and from a strong supply to the \
     weakest that is stated, or 800 A where none is; sound joints add nothing that counts",
    "114 to 126 V at the service: ANSI C84.1, range A, from memory",
];

impl ProofAnswer {
    /// Whether nothing is open, nothing contradicted, and the plan itself settled.
    #[must_use]
    pub fn is_closed(&self) -> bool {
        self.status == ProofVerdict::Proved
    }
}

/// Holds what was read and seen after the work against the plan that was carried out.
#[must_use]
pub fn prove(planned: &Planned, plan: &PlanAnswer, offer: usize) -> ProofAnswer {
    let case = Case::of(planned, plan);
    let judged = all_judged(&case);
    let openings: Vec<OpeningProof> = case
        .openings()
        .zip(judged)
        .filter(|(_, claims)| !claims.is_empty())
        .map(|(opening, claims)| OpeningProof {
            box_id: opening.opening.box_id.clone(),
            room: opening.opening.room.clone(),
            circuit: opening.opening.circuit.clone(),
            remedy: opening.opening.remedy,
            step: opening.opening.step,
            grounded: opening.opening.grounded,
            protected_by: opening.opening.protected_by.clone(),
            verdict: worst(&claims),
            tester_explained: tester_explained(&opening),
            read: opening.seen.0.iter().filter(|after| says_anything(after)).map(|after| read(&case, after)).collect(),
            claims,
        })
        .collect();
    let panels = case.dwelling().panels.iter();
    let panels: Vec<PanelProof> =
        panels.map(|panel| PanelProof { panel: panel.id.clone(), claims: at_panel::of_panel(panel) }).collect();
    let circuits = plan.circuits.iter().map(|circuit| CircuitProof {
        circuits: circuit.circuits.clone(),
        panel: circuit.panel.clone(),
        at_panel: circuit.at_panel,
        claims: at_panel::of_circuit(case.dwelling(), circuit),
    });
    let circuits: Vec<CircuitProof> = circuits.filter(|circuit| !circuit.claims.is_empty()).collect();
    let (holds_back, rests_on) = held_back(&case);
    let all = || {
        let of_panels = panels.iter().flat_map(|panel| &panel.claims);
        let of_circuits = circuits.iter().flat_map(|circuit| &circuit.claims);
        of_panels.chain(of_circuits).chain(openings.iter().flat_map(|opening| &opening.claims))
    };
    let count = |verdict| all().filter(|claim| claim.verdict == verdict).count();
    let counts = ProofCounts {
        proved: count(ProofVerdict::Proved),
        open: count(ProofVerdict::Open),
        contradicts: count(ProofVerdict::Contradicts),
    };
    let status = match counts {
        ProofCounts { contradicts: 1.., .. } => ProofVerdict::Contradicts,
        ProofCounts { open: 0, proved: 1.., .. } if holds_back.is_empty() => ProofVerdict::Proved,
        _ => ProofVerdict::Open,
    };
    let left = left(&panels, &circuits, &openings);
    ProofAnswer {
        format: 1,
        job: plan.job.name.clone(),
        law: plan.law.clone(),
        offer,
        status,
        counts,
        panels,
        circuits,
        openings,
        left,
        holds_back,
        rests_on,
        assumptions: ASSUMPTIONS.to_vec(),
    }
}

/// The claims of every opening, in the order of the plan; a join of neutral and ground reaches all that is tied to it.
fn all_judged(case: &Case) -> Vec<Vec<ClaimAnswer>> {
    let judged: Vec<(BoxIndex, OpeningJudged)> =
        case.openings().map(|opening| (opening.at, judged(&opening))).collect();
    let joins: Vec<BoxIndex> = judged.iter().filter(|(_, judged)| judged.joined).map(|(at, _)| *at).collect();
    let with_joins = |(at, judged): (BoxIndex, OpeningJudged)| {
        let tied = joins.iter().find(|join| **join != at && case.ground_group[join.0] == case.ground_group[at.0]);
        let spread = |claim: ClaimAnswer| match tied {
            Some(join) if claim.claim == ClaimKind::Ground && claim.verdict != ProofVerdict::Contradicts => {
                joined_elsewhere(claim, case, at, *join)
            }
            _ => claim,
        };
        judged.claims.into_iter().map(spread).collect()
    };
    judged.into_iter().map(with_joins).collect()
}

fn worst(claims: &[ClaimAnswer]) -> ProofVerdict {
    claims.iter().map(|claim| claim.verdict).max().unwrap_or(ProofVerdict::Open)
}

/// Why a plug-in tester says open ground at an opening and nothing is wrong.
fn tester_explained(case: &crate::case::OpeningCase) -> Option<String> {
    let opening = case.opening;
    let there = case.case.state.dwelling.device_box(case.at).holds.takes_grounding_plug();
    if opening.grounded || opening.device == Device::Blank || !there || opening.markings.is_empty() {
        return None;
    }
    Some(format!(
        "a plug-in tester says “open ground” here, and that is as it must be: there is no equipment ground, which the code \
         allows behind a GFCI with these markings ({}); its button cannot trip the GFCI, whose own test button counts",
        opening.cites.join(", ")
    ))
}

fn says_anything(after: &AfterReading) -> bool {
    let reading = &after.reading;
    reading.hot_neutral.is_some()
        || reading.hot_ground.is_some()
        || reading.neutral_ground.is_some()
        || reading.tester.is_some()
}

fn read(case: &Case, after: &AfterReading) -> ReadAnswer {
    let words = |volts: Option<electrical::Volts>| volts.map(|volts| volts.to_string());
    let loaded = is_loaded(after);
    let load = after.load_current.map(|current| match after.load_at {
        Some(at) => format!("{current} at {}", case.id(at)),
        None => current.to_string(),
    });
    ReadAnswer {
        loaded,
        hn: words(after.reading.hot_neutral),
        hg: words(after.reading.hot_ground),
        ng: words(after.reading.neutral_ground),
        load: load.filter(|_| loaded),
        tester: after.reading.tester,
        day: after.taken.day.map(|day| day.to_string()),
        by: after.taken.by.clone(),
    }
}

fn left(panels: &[PanelProof], circuits: &[CircuitProof], openings: &[OpeningProof]) -> Vec<LeftAnswer> {
    let mut left = Vec::new();
    let mut add = |room: Option<&String>, at: &str, claims: &[ClaimAnswer]| {
        left.extend(claims.iter().filter(|claim| claim.verdict != ProofVerdict::Proved).map(|claim| LeftAnswer {
            room: room.cloned(),
            at: at.to_owned(),
            claim: claim.claim,
            verdict: claim.verdict,
            next: claim.next.clone().unwrap_or_default(),
        }));
    };
    panels.iter().for_each(|panel| add(None, &panel.panel, &panel.claims));
    circuits.iter().for_each(|circuit| add(None, &circuit.circuits.join(" + "), &circuit.claims));
    openings.iter().for_each(|opening| add(Some(&opening.room), &opening.box_id, &opening.claims));
    left
}
