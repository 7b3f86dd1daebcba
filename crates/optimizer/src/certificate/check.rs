//! The checker of certificates: walks the splits, works out every leaf from the problem, and says what is proved.

use std::fmt;

use super::area::{Area, Price, Question, cost_of, price_of};
use super::known::Known;
use super::prices::{Wrong, reckon};
use super::{Certificate, Decision, PartProof, Step};
use crate::problem::{Cost, Problem};
use crate::solution::Forced;

/// What a certificate proves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Proved {
    /// No solution costs less.
    AtLeast(Cost),
    /// There is no solution.
    NoSolution,
}

/// Why a certificate is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The problem itself is malformed.
    MalformedProblem(Vec<String>),
    /// What is laid down speaks of something that is not there.
    MalformedQuestion,
    /// It has proofs for another number of parts than the problem has.
    WrongParts {
        /// The parts of the problem.
        there: usize,
        /// The proofs.
        proofs: usize,
    },
    /// The steps of a part do not cover all choices, or go on after they do.
    WrongSteps {
        /// The part.
        part: usize,
    },
    /// A step speaks of what is not in its part, or a cut does not hold what it stands for.
    Meaningless {
        /// The part.
        part: usize,
        /// The step.
        step: usize,
    },
    /// The cuts of a step charge a link more than it costs.
    Overcharged {
        /// The part.
        part: usize,
        /// The step.
        step: usize,
        /// The link.
        link: usize,
    },
    /// What a leaf shows stays below the bound that the part claims.
    TooLow {
        /// The part.
        part: usize,
        /// The step.
        step: usize,
        /// What the leaf shows.
        shown: Cost,
    },
    /// The bounds of the parts together are too large to be costs of this problem.
    TooLarge,
}

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::MalformedProblem(faults) => write!(out, "the problem is malformed: {}", faults.join("; ")),
            Self::MalformedQuestion => out.write_str("what is laid down speaks of something that is not there"),
            Self::WrongParts { there, proofs } => write!(out, "there are {there} parts, and proofs of {proofs}"),
            Self::WrongSteps { part } => write!(out, "the steps of part {part} do not cover all choices exactly"),
            Self::Meaningless { part, step } => write!(out, "step {step} of part {part} does not mean anything"),
            Self::Overcharged { part, step, link } => {
                write!(out, "step {step} of part {part} charges link {link} more than it costs")
            }
            Self::TooLow { part, step, shown } => {
                write!(out, "step {step} of part {part} shows no more than {shown:?}, less than is claimed")
            }
            Self::TooLarge => out.write_str("the bounds are too large to be costs of this problem"),
        }
    }
}

impl std::error::Error for Fault {}

/// The most cents, openings or devices of a number in a certificate: beyond all of a well-formed problem, and small enough
/// that no sum of them leaves the integers of the checker.
const MOST: u64 = 1 << 62;

/// Checks a certificate against the problem, with what is laid down for it, and returns what it proves.
///
/// # Errors
/// The first thing found wrong.
pub fn check(problem: &Problem, forced: &[Forced], certificate: &Certificate) -> Result<Proved, Fault> {
    let malformed = problem.faults();
    if !malformed.is_empty() {
        return Err(Fault::MalformedProblem(malformed));
    }
    let question = Question::new(problem, forced).ok_or(Fault::MalformedQuestion)?;
    let Some(areas) = question.areas() else { return Ok(Proved::NoSolution) };
    if areas.len() != certificate.parts.len() {
        return Err(Fault::WrongParts { there: areas.len(), proofs: certificate.parts.len() });
    }
    let mut sum: Option<Price> = Some(0);
    for (part, (area, proof)) in areas.iter().zip(&certificate.parts).enumerate() {
        check_part(&question, area, part, proof)?;
        sum = sum.zip(proof.bound).map(|(sum, bound)| sum + price_of(bound));
    }
    match sum.map(cost_of) {
        None => Ok(Proved::NoSolution),
        Some(cost) if sum == Some(price_of(cost)) => Ok(Proved::AtLeast(cost)),
        Some(_) => Err(Fault::TooLarge),
    }
}

fn check_part(question: &Question<'_>, area: &Area, part: usize, proof: &PartProof) -> Result<(), Fault> {
    let is_sane = |cost: &Cost| [cost.cents, cost.openings, cost.devices].iter().all(|one| one.unsigned_abs() <= MOST);
    if !proof.bound.iter().all(is_sane) {
        return Err(Fault::TooLarge);
    }
    let target = proof.bound.map(price_of);
    // What is left to be covered; nothing where no choice is left on a side.
    let mut open: Vec<Option<Known>> = vec![Known::at_first(question, area)];
    for (step, what) in proof.steps.iter().enumerate() {
        let known = open.pop().ok_or(Fault::WrongSteps { part })?;
        let shown = |known: &Known, cuts: &[super::Cut]| {
            if !cuts.iter().all(|cut| is_sane(&cut.value)) {
                return Err(Fault::Meaningless { part, step });
            }
            reckon(question, area, known, cuts).map_err(|wrong| match wrong {
                Wrong::Cut => Fault::Meaningless { part, step },
                Wrong::Overcharged(link) => Fault::Overcharged { part, step, link },
            })
        };
        match what {
            Step::Leaf(cuts) => {
                let Some(known) = known else { continue };
                match (shown(&known, cuts)?.least, target) {
                    (Some(least), Some(target)) if least >= target => {}
                    (Some(least), _) => return Err(Fault::TooLow { part, step, shown: cost_of(least) }),
                    (None, _) => {}
                }
            }
            Step::GiveUp(cuts) => {
                open.push(match known {
                    Some(known) => {
                        let reckoning = shown(&known, cuts)?;
                        let given_up = reckoning.too_dear(question, area, &known, target);
                        known.without(question, area, &given_up)
                    }
                    None => None,
                });
            }
            Step::Split(decision) => {
                let [with, without] =
                    sides(question, area, known.as_ref(), *decision).ok_or(Fault::Meaningless { part, step })?;
                open.extend([without, with]);
            }
        }
    }
    if open.is_empty() { Ok(()) } else { Err(Fault::WrongSteps { part }) }
}

/// What is known where a decision holds, and where it does not; `None` where the decision is not one of the area.
pub(super) fn sides(
    question: &Question<'_>,
    area: &Area,
    known: Option<&Known>,
    decision: Decision,
) -> Option<[Option<Known>; 2]> {
    let known = || known.cloned();
    match decision {
        Decision::Supplied(group) => {
            area.groups.binary_search(&group).ok()?;
            Some([true, false].map(|supplied| known()?.with_supply(question, area, group, supplied)))
        }
        Decision::Chosen { link, forward } => {
            let flow = area.flows.iter().position(|flow| flow.link == link && flow.forward == forward)?;
            Some([true, false].map(|chosen| known()?.with_flow(question, area, flow, chosen)))
        }
    }
}
