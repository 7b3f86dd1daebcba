//! Holds what was read after the work against the plan, and writes the certificate where everything is proved.

use crate::answering::{SurveySource, dwelling_of, read_file, write_json, write_text};
use crate::command_error::{CONTRADICTS, CommandError, NOT_THE_LAST_WORD};
use crate::commands::papers::Size;
use crate::commands::prices::price_book;
use crate::law::settle;
use crate::offer_pick::{FIRST, OfferPick, offer_pick};
use crate::page;
use crate::planning::{Asked, to_plan_on};
use crate::planning_flags::PlanningFlags;
use closeout::{ProofAnswer, ProofVerdict, prove};
use dwelling::{Day, Dwelling};
use papers::{Closed, certificate, typeset};
use remedies::{PlanAnswer, PlanClaim};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Prove the work: hold what was read and seen afterwards against the plan, and say what is left
///
/// Reads what the survey says under `after` and holds it against what the plan promises: each claim of each opening, circuit
/// and panel is proved, open or contradicted. What was not read is never proved. The certificate is written only where nothing
/// is open or contradicted. Plan as the work was planned: the same prices, flags and offer, or the plan itself by `--plan`.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  thirdwire prove my-house.toml\n  thirdwire prove my-house.toml --offer 2 --json\n  thirdwire prove --example cottage-done\n  thirdwire prove my-house.toml --plan my-plan.json\n  thirdwire prove my-house.toml --certificate my-certificate.pdf --date 2026-11-25"
)]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// The offer that was carried out, by its number or its name, where the survey does not say it (see `thirdwire plan --offers`)
    #[arg(long, value_name = "OFFER", value_parser = offer_pick, conflicts_with = "budget")]
    offer: Option<OfferPick>,
    /// The plan that was carried out, as `thirdwire plan --json` wrote it: nothing is chosen anew
    #[arg(long, value_name = "PLAN", conflicts_with_all = ["offer", "ground", "keep", "no_open", "budget"])]
    plan: Option<PathBuf>,
    /// Write the certificate into this file, where everything is proved
    #[arg(long, value_name = "FILE")]
    certificate: Option<PathBuf>,
    /// The size of the certificate's paper
    #[arg(long, value_enum, default_value = "letter", value_name = "SIZE")]
    paper: Size,
    /// The day that stands on the certificate, such as 2026-11-25; without it a line is left to fill in
    #[arg(long, value_name = "DAY")]
    date: Option<Day>,
    #[command(flatten)]
    planning: PlanningFlags,
    /// Answer as JSON (its schema: `thirdwire schema prove`)
    #[arg(long)]
    json: bool,
    /// Show every claim, those that are proved included
    #[arg(long, conflicts_with = "json")]
    full: bool,
}

/// The offer that a survey says was carried out.
pub fn carried_out(dwelling: &Dwelling) -> Option<usize> {
    dwelling.close_out.offer.and_then(|offer| usize::try_from(offer).ok())
}

/// What is said where a plan is that of the offer that was carried out, and nobody asked for it.
pub fn told_of_carried_out(offer: usize) -> String {
    format!("this is offer {offer}, which the survey says was carried out (`[close_out]`); name another by `--offer`")
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let book = price_book(args.planning.prices.as_deref(), args.json)?;
    let text = args.source.read()?;
    let dwelling = to_plan_on(dwelling_of(&text, args.json)?);
    let law = settle(&args.planning.code, &dwelling.job, &text.folder, args.json)?;
    let held = args.plan.as_deref().map(plan_in_hand).transpose()?;
    let asked = match &held {
        Some(claim) => asked_by(claim, &dwelling)?,
        None => asked_here(args, &dwelling)?,
    };
    let (mut planned, offers) = asked.planned(&dwelling, law.code, &book)?;
    if let Some(claim) = &held {
        planned.take_claimed(claim).map_err(refused)?;
    }
    let plan = asked.answer(&planned, offers, &law.answer, &book)?;
    let proof = prove(&planned, &plan, plan.offers.as_ref().map_or(1, |offers| offers.taken));
    let written = match &args.certificate {
        Some(file) => written(&dwelling, &plan, &proof, (args, file))?,
        None => false,
    };
    if args.json {
        write_json(&proof)?;
    } else {
        let file = args.certificate.as_deref().map(|file| (file, written));
        write_text(&page::prove::render(&proof, &dwelling, args.full, file))?;
    }
    Ok(match proof.status {
        ProofVerdict::Proved => ExitCode::SUCCESS,
        ProofVerdict::Open => ExitCode::from(NOT_THE_LAST_WORD),
        ProofVerdict::Contradicts => ExitCode::from(CONTRADICTS),
    })
}

/// The choices of a plan that somebody holds in hand.
fn plan_in_hand(path: &Path) -> Result<PlanClaim, CommandError> {
    let text = read_file(path)?;
    serde_json::from_slice(&text.bytes).map_err(|error| refused(vec![format!("`{}` is no plan: {error}", text.name)]))
}

/// Tells why a plan that was named is none of this survey.
fn refused(faults: Vec<String>) -> CommandError {
    for fault in faults {
        anstream::eprintln!("error: the plan that was named does not hold: {fault}");
    }
    CommandError::Mistakes
}

/// How a plan in hand was asked for.
fn asked_by(claim: &PlanClaim, dwelling: &Dwelling) -> Result<Asked, CommandError> {
    let wishes = claim.wishes(dwelling).map_err(refused)?;
    let offer = claim.offer().map(OfferPick::Number);
    Ok(Asked { wishes, budget: claim.budget(), offer, ..Asked::default() })
}

/// What is asked by the survey and the command line.
fn asked_here(args: &Args, dwelling: &Dwelling) -> Result<Asked, CommandError> {
    // The first offer is the plan itself: no other need be searched for.
    let offer = args.offer.or(carried_out(dwelling).map(OfferPick::Number)).filter(|offer| *offer != FIRST);
    args.planning.asked(dwelling, offer)
}

/// Writes the certificate, where the proof allows one.
fn written(
    dwelling: &Dwelling,
    plan: &PlanAnswer,
    proof: &ProofAnswer,
    (args, file): (&Args, &Path),
) -> Result<bool, CommandError> {
    let date = args.date.map(|day| day.to_string());
    let Some(paper) = certificate(&Closed { dwelling, plan, proof, date }) else { return Ok(false) };
    let set = typeset(&paper, args.paper.of_paper())
        .map_err(|fault| CommandError::Fault(format!("{}: {}", fault.paper, fault.what)))?;
    std::fs::write(file, set.bytes)
        .map_err(|error| CommandError::Usage(format!("cannot write `{}`: {error}", file.display())))?;
    Ok(true)
}
