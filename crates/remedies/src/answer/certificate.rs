//! The certificate that nothing costs less, as it stands in a plan's JSON: made, read back and checked.

use crate::planned::{Planned, Proof};
use crate::search_limits::of_a_certificate;
use optimizer::certificate::{Certificate, Cut, Decision, PartProof, Proved, Step, Toward, certify, check};
use optimizer::{Cost, Forced};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A proof that nothing lawful that gives as much costs less than a bound. Groups, trees, nodes and links are those of the
/// problem that the program makes of the survey, by their place in it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CertificateAnswer {
    /// The proofs of those parts of the dwelling that no way joins.
    pub parts: Vec<PartAnswer>,
}

/// The proof of one part.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PartAnswer {
    /// The bound; null says that nothing lawful is there at all.
    pub bound: Option<CostAnswer>,
    /// After a split first all steps of the side on which it holds, then all of the other.
    pub steps: Vec<StepAnswer>,
}

/// A cost as the search counts it: cents, with what is fallen short of weighed in, openings in walls, devices.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostAnswer(i64, i64, i64);

/// One step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum StepAnswer {
    /// Either the group is supplied or it is not.
    SplitAtGroup(usize),
    /// Either the link is chosen and flows forward, or not.
    SplitAtLink(usize),
    /// Either the link is chosen and flows backward, or not.
    SplitAtLinkBackward(usize),
    /// Links that are too dear at the prices of these cuts are given up.
    GiveUp(Vec<CutAnswer>),
    /// These cuts show the bound.
    Leaf(Vec<CutAnswer>),
}

/// A cut: what is charged for a supply, and between which groups.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CutAnswer {
    /// What each link that leads in is charged.
    pub value: CostAnswer,
    /// The tree and node that is charged for taking its supply; null where a group is charged.
    pub node: Option<(usize, usize)>,
    /// The group that is charged, where no node is.
    pub group: Option<usize>,
    /// The groups that are led into.
    pub groups: Vec<usize>,
    /// Trees and nodes whose options are credited in place of links that land there.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lands: Vec<(usize, usize)>,
    /// Trees and nodes whose options are credited in place of links into their group.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub suits: Vec<(usize, usize)>,
}

impl CertificateAnswer {
    /// Makes the certificate of a plan; nothing where it would show less than the plan says of itself.
    #[must_use]
    pub fn of(plan: &Planned) -> Option<Self> {
        let limits = of_a_certificate(plan.proof == Proof::Cheapest);
        let certificate = certify(&plan.assembled.problem, &limits, &laid_down(plan), Some(&plan.solution))?;
        let answer = Self { parts: certificate.parts.iter().map(part_answer).collect() };
        answer.shown(plan).ok().map(|_| answer)
    }

    /// Checks it for a plan by the separate checker, and returns what nothing costs less than, in cents without what is
    /// fallen short of.
    ///
    /// # Errors
    /// Why it does not hold, or that it shows less than the plan says of itself.
    pub fn shown(&self, plan: &Planned) -> Result<i64, String> {
        let certificate = Certificate { parts: self.parts.iter().map(part_of).collect() };
        let bound = match check(&plan.assembled.problem, &laid_down(plan), &certificate) {
            Ok(Proved::AtLeast(bound)) => bound,
            Ok(Proved::NoSolution) => return Err("its certificate shows that there is no plan at all".to_owned()),
            Err(fault) => return Err(format!("its certificate does not hold: {fault}")),
        };
        let weights = plan.solution.cost.cents - plan.total().total().0;
        if plan.proof == Proof::Cheapest && bound < plan.solution.cost {
            let shown = bound.cents - weights;
            return Err(format!("its certificate shows no more than that nothing costs less than {shown} cents"));
        }
        Ok((bound.cents - weights).max(0))
    }
}

/// What was laid down for the plan, and what the offer that it is holds.
fn laid_down(plan: &Planned) -> Vec<Forced> {
    plan.forced.iter().chain(plan.held.iter().map(|(_, forced)| forced)).cloned().collect()
}

fn cost_answer(cost: Cost) -> CostAnswer {
    CostAnswer(cost.cents, cost.openings, cost.devices)
}

fn cost_of(CostAnswer(cents, openings, devices): CostAnswer) -> Cost {
    Cost { cents, openings, devices }
}

fn part_answer(part: &PartProof) -> PartAnswer {
    let step = |step: &Step| match step {
        Step::Split(Decision::Supplied(group)) => StepAnswer::SplitAtGroup(*group),
        Step::Split(Decision::Chosen { link, forward: true }) => StepAnswer::SplitAtLink(*link),
        Step::Split(Decision::Chosen { link, forward: false }) => StepAnswer::SplitAtLinkBackward(*link),
        Step::GiveUp(cuts) => StepAnswer::GiveUp(cuts.iter().map(cut_answer).collect()),
        Step::Leaf(cuts) => StepAnswer::Leaf(cuts.iter().map(cut_answer).collect()),
    };
    PartAnswer { bound: part.bound.map(cost_answer), steps: part.steps.iter().map(step).collect() }
}

fn part_of(part: &PartAnswer) -> PartProof {
    let step = |step: &StepAnswer| match step {
        StepAnswer::SplitAtGroup(group) => Step::Split(Decision::Supplied(*group)),
        StepAnswer::SplitAtLink(link) => Step::Split(Decision::Chosen { link: *link, forward: true }),
        StepAnswer::SplitAtLinkBackward(link) => Step::Split(Decision::Chosen { link: *link, forward: false }),
        StepAnswer::GiveUp(cuts) => Step::GiveUp(cuts.iter().map(cut_of).collect()),
        StepAnswer::Leaf(cuts) => Step::Leaf(cuts.iter().map(cut_of).collect()),
    };
    PartProof { bound: part.bound.map(cost_of), steps: part.steps.iter().map(step).collect() }
}

fn cut_answer(cut: &Cut) -> CutAnswer {
    let (node, group) = match cut.toward {
        Toward::Node { tree, node } => (Some((tree, node)), None),
        Toward::Group(group) => (None, Some(group)),
    };
    let value = cost_answer(cut.value);
    CutAnswer { value, node, group, groups: cut.groups.clone(), lands: cut.lands.clone(), suits: cut.suits.clone() }
}

fn cut_of(cut: &CutAnswer) -> Cut {
    let toward = match (cut.node, cut.group) {
        (Some((tree, node)), _) => Toward::Node { tree, node },
        (None, group) => Toward::Group(group.unwrap_or(usize::MAX)),
    };
    let value = cost_of(cut.value);
    Cut { value, toward, groups: cut.groups.clone(), lands: cut.lands.clone(), suits: cut.suits.clone() }
}
