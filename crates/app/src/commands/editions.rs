//! Says what changes for a dwelling between two editions of the code.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::prices::price_book;
use crate::law::published;
use crate::page;
use crate::planning::to_plan_on;
use remedies::{PlanFault, Planned, editions_answer};
use std::path::PathBuf;
use std::process::ExitCode;

/// Say what changes for a dwelling between two editions, opening by opening
///
/// Both editions are taken as published, without local changes.
#[derive(Debug, clap::Args)]
#[command(after_help = "Example:\n  thirdwire editions --from 2014 --to 2023 --example bungalow")]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// The edition to change from
    #[arg(long, value_name = "YEAR")]
    from: u16,
    /// The edition to change to
    #[arg(long, value_name = "YEAR")]
    to: u16,
    /// Your own price book (see `thirdwire prices`)
    #[arg(long, value_name = "FILE")]
    prices: Option<PathBuf>,
    /// Answer as JSON (its schema: `thirdwire schema editions`)
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let dwelling = to_plan_on(dwelling_of(&args.source.read()?, args.json)?);
    let book = price_book(args.prices.as_deref(), args.json)?;
    let plan_under = |year: u16| {
        let code = published(Some(year))?;
        let fault = |PlanFault(faults): PlanFault| CommandError::Fault(faults.join("; "));
        Planned::of(&dwelling, code, &book).map_err(fault)
    };
    let answer = editions_answer(&plan_under(args.from)?, &plan_under(args.to)?);
    if args.json {
        write_json(&answer)?
    } else {
        write_text(&page::editions::render(&answer, &dwelling))?
    }
    Ok(exit_code(!answer.not_checked))
}
