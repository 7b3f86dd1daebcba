//! Says what the readings mean, and nothing more.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::practice::practice_of;
use crate::named::box_named;
use crate::page;
use diagnosis::belief::believe;
use remedies::findings_answer;
use std::path::PathBuf;
use std::process::ExitCode;

/// Say what the readings mean: what is wrong, how sure that is, and what to check next
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  thirdwire findings --example bungalow\n  thirdwire findings my-house.toml --next\n  thirdwire findings my-house.toml --explain K-3\n  thirdwire findings my-house.toml --next --practice my-practice.toml"
)]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// Answer as JSON (its schema: `thirdwire schema findings`)
    #[arg(long)]
    json: bool,
    /// Show everything place by place, with evidence and look-alikes
    #[arg(long, conflicts_with = "json")]
    full: bool,
    /// Show which test is worth most by the minute, and a whole search for each circuit in doubt
    #[arg(long, conflicts_with_all = ["json", "full"])]
    next: bool,
    /// Explain one box: what is believed of it and of its run, and the likeliest explanations of its circuit
    #[arg(long, value_name = "BOX", conflicts_with_all = ["json", "full", "next"])]
    explain: Option<String>,
    /// Your own figures of what is common in old wiring, and of what acting wrongly and testing cost (see `thirdwire practice`)
    #[arg(long, value_name = "FILE")]
    practice: Option<PathBuf>,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let text = args.source.read()?;
    let dwelling = dwelling_of(&text, args.json)?;
    let practice = practice_of(args.practice.as_deref(), args.json)?;
    let beliefs = believe(&dwelling, &practice.priors);
    let answer = findings_answer(&dwelling, &diagnosis::diagnose(&dwelling), &beliefs, &practice);
    if let Some(id) = &args.explain {
        let at = box_named(&dwelling, id)?;
        write_text(&page::beliefs::explained(&answer, &dwelling, &beliefs, at))?;
    } else if args.json {
        write_json(&answer)?;
    } else if args.next {
        write_text(&page::beliefs::next(&answer, &dwelling))?;
    } else {
        write_text(&page::findings::render(&answer, &dwelling, args.full))?;
    }
    Ok(exit_code(answer.find_out.is_empty() && answer.feeding.is_empty()))
}
