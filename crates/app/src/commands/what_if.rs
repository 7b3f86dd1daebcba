//! Tells what could change a plan.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::prices::price_book;
use crate::law::{CodeFlags, settle};
use crate::page;
use remedies::{PlanFault, Planned, sensitivity_answer};
use std::path::PathBuf;
use std::process::ExitCode;

/// Tell what could change the plan: what is not known, and prices, each tried in turn
///
/// Plans the dwelling anew with each value that something unknown may turn out to have, and with each line of the price
/// book moved up and down, and tells by how much the cost could change and what would then be done differently.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Example:\n  thirdwire what-if --example knob-and-tube\n  thirdwire what-if my-house.toml --prices my-prices.toml"
)]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// Your own price book (see `thirdwire prices`)
    #[arg(long, value_name = "FILE")]
    prices: Option<PathBuf>,
    #[command(flatten)]
    code: CodeFlags,
    /// Answer as JSON (its schema: `thirdwire schema what-if`)
    #[arg(long)]
    json: bool,
    /// Show every change, and what changes nothing
    #[arg(long, conflicts_with = "json")]
    full: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let text = args.source.read()?;
    let dwelling = dwelling_of(&text, args.json)?;
    let book = price_book(args.prices.as_deref(), args.json)?;
    let law = settle(&args.code, &dwelling.job, &text.folder, args.json)?;
    let fault = |PlanFault(faults): PlanFault| CommandError::Fault(faults.join("; "));
    let planned = Planned::of(&dwelling, law.code, &book).map_err(fault)?;
    let found = planned.sensitivity(&book).map_err(fault)?;
    let answer = sensitivity_answer(&planned, &law.answer, &found);
    if args.json {
        write_json(&answer)?;
    } else {
        write_text(&page::what_if::render(&answer, &dwelling, args.full))?;
    }
    Ok(exit_code(answer.unknowns.is_empty() && answer.not_tried.is_empty() && answer.law.doubts.is_empty()))
}
