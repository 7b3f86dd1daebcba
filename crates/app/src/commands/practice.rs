//! The figures of common practice: prints them, and reads one's own.

use crate::answering::{read_file, tell, write_json, write_text};
use crate::command_error::CommandError;
use diagnosis::belief::Practice;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Print what beliefs and tests rest on: how common faults are, and what acting wrongly and testing cost
///
/// Nobody has published such figures: what is shipped is common practice, no source. Keep a file of what you have found
/// yourself; what it leaves out stays as shipped. docs/practice-file.md lists every key.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  thirdwire practice > my-practice.toml\n  thirdwire practice --practice my-practice.toml --json\n  thirdwire findings my-house.toml --practice my-practice.toml --next"
)]
pub struct Args {
    /// Your own practice file
    #[arg(long, value_name = "FILE")]
    practice: Option<PathBuf>,
    /// Answer as JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let practice = practice_of(args.practice.as_deref(), args.json)?;
    if args.json {
        write_json(&survey::practice_as_json(&practice))?;
    } else {
        write_text(&survey::practice_file(&practice))?;
    }
    Ok(ExitCode::SUCCESS)
}

/// The figures of a file, or the shipped ones.
///
/// # Errors
/// [`CommandError::Mistakes`] where the file has any.
pub fn practice_of(path: Option<&Path>, json: bool) -> Result<Practice, CommandError> {
    let Some(path) = path else { return Ok(Practice::default()) };
    let text = read_file(path)?;
    let (practice, diagnostics) = survey::read_practice(&text.bytes);
    tell(&text.name, &survey::text_of(&text.bytes), &diagnostics, json && practice.is_none())?;
    practice.ok_or(CommandError::Mistakes)
}
