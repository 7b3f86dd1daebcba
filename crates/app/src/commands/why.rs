//! Gives the chain of reasons for one opening.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::prices::price_book;
use crate::law::{CodeFlags, settle};
use crate::named::box_named;
use crate::page;
use crate::planning::to_plan_on;
use remedies::{PlanFault, Planned, why_answer};
use std::path::PathBuf;
use std::process::ExitCode;

/// Give the reasons for one opening: from reading to finding to duty to remedy, as an inspector can read it
#[derive(Debug, clap::Args)]
#[command(after_help = "Examples:\n  thirdwire why --example bungalow L-3\n  thirdwire why my-house.toml B2-1 --json")]
pub struct Args {
    /// The survey and the box; with --example the box alone
    #[arg(required = true, num_args = 1..=2, value_names = ["SURVEY", "BOX"])]
    of: Vec<String>,
    /// One of the dwellings that come with the program (see `thirdwire example`)
    #[arg(long, value_name = "NAME")]
    example: Option<String>,
    #[command(flatten)]
    code: CodeFlags,
    /// Your own price book (see `thirdwire prices`)
    #[arg(long, value_name = "FILE")]
    prices: Option<PathBuf>,
    /// Answer as JSON (its schema: `thirdwire schema why`)
    #[arg(long)]
    json: bool,
    /// Show all that every rule says, and the values it rests on with how each is known
    #[arg(long, conflicts_with = "json")]
    full: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let (source, box_id) = match (&args.of[..], &args.example) {
        ([box_id], Some(name)) => (SurveySource { survey: None, example: Some(name.clone()) }, box_id),
        ([survey, box_id], None) => (SurveySource { survey: Some(survey.into()), example: None }, box_id),
        _ => return Err(CommandError::Usage("name a survey and a box, or a box of an `--example`".to_owned())),
    };
    let text = source.read()?;
    let dwelling = to_plan_on(dwelling_of(&text, args.json)?);
    let book = price_book(args.prices.as_deref(), args.json)?;
    let law = settle(&args.code, &dwelling.job, &text.folder, args.json)?;
    let index = box_named(&dwelling, box_id)?;
    let fault = |PlanFault(faults): PlanFault| CommandError::Fault(faults.join("; "));
    let planned = Planned::of(&dwelling, law.code, &book).map_err(fault)?;
    let answer = why_answer(&planned, index, &law.answer).map_err(fault)?;
    if args.json {
        write_json(&answer)?
    } else {
        write_text(&page::why::render(&answer, args.full))?
    }
    let settled = answer.plan.open_questions.is_empty() && answer.plan.shortfalls.is_empty();
    Ok(exit_code(settled && answer.law.doubts.is_empty()))
}
