//! Proofs of surveys and dwellings, and looking things up in them.

use closeout::{ClaimAnswer, ClaimKind, ProofAnswer, ProofVerdict, prove};
use dwelling::Dwelling;
use estimate::PriceBook;
use remedies::{LawAnswer, PlanAnswer, Planned, plan_answer};
use rulebook::{CodeInForce, Edition};

pub const COTTAGE: &str = include_str!("../../../../examples/cottage-done.toml");

pub fn dwelling_of(text: &str) -> Dwelling {
    let read = survey::read(text.as_bytes(), survey::Format::Toml);
    read.dwelling.unwrap_or_else(|| panic!("{:?}", read.diagnostics))
}

/// Does something with the plan of a dwelling.
pub fn with_plan<T>(dwelling: &Dwelling, act: impl FnOnce(&Planned, &PlanAnswer) -> T) -> T {
    let edition = dwelling.job.edition.and_then(Edition::of_year).unwrap();
    let planned = Planned::of(dwelling, CodeInForce::published(edition), &PriceBook::demo()).unwrap();
    let law = LawAnswer { edition: edition.year(), ..LawAnswer::default() };
    let plan = plan_answer(&planned, &law, true);
    act(&planned, &plan)
}

pub fn proof_of_dwelling(dwelling: &Dwelling) -> ProofAnswer {
    with_plan(dwelling, |planned, plan| prove(planned, plan, 1))
}

pub fn proof_of(text: &str) -> ProofAnswer {
    proof_of_dwelling(&dwelling_of(text))
}

/// The claim of a kind at an opening.
pub fn claim<'a>(proof: &'a ProofAnswer, at: &str, kind: ClaimKind) -> &'a ClaimAnswer {
    let opening = proof.openings.iter().find(|opening| opening.box_id == at).unwrap();
    let found = opening.claims.iter().find(|claim| claim.claim == kind);
    found.unwrap_or_else(|| panic!("nothing is claimed of {kind} at {at}"))
}

pub fn verdict(proof: &ProofAnswer, at: &str, kind: ClaimKind) -> ProofVerdict {
    claim(proof, at, kind).verdict
}

/// Everything that is not proved, in words.
pub fn not_proved(proof: &ProofAnswer) -> Vec<String> {
    proof.left.iter().map(|left| format!("{} {} {}: {}", left.at, left.claim, left.verdict, left.next)).collect()
}
