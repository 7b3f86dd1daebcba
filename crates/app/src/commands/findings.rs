//! Says what the readings mean, and nothing more.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::page;
use remedies::findings_answer;
use std::process::ExitCode;

/// Say what the readings mean: what is wrong, how sure that is, and what to check next
#[derive(Debug, clap::Args)]
#[command(after_help = "Example:\n  thirdwire findings --example bungalow")]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// Answer as JSON (its schema: `thirdwire schema findings`)
    #[arg(long)]
    json: bool,
    /// Show everything place by place, with evidence and look-alikes
    #[arg(long, conflicts_with = "json")]
    full: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let text = args.source.read()?;
    let dwelling = dwelling_of(&text, args.json)?;
    let answer = findings_answer(&dwelling, &diagnosis::diagnose(&dwelling));
    if args.json {
        write_json(&answer)?
    } else {
        write_text(&page::findings::render(&answer, &dwelling, args.full))?
    }
    Ok(exit_code(answer.find_out.is_empty() && answer.feeding.is_empty()))
}
