//! The dwellings that come with the program.

use crate::answering::write_text;
use crate::command_error::CommandError;
use crate::examples::{EXAMPLES, named};
use std::process::ExitCode;

/// Print one of the dwellings that come with the program, to start one's own survey from
#[derive(Debug, clap::Args)]
#[command(after_help = "Example:\n  thirdwire example\n  thirdwire example bungalow > my-house.toml")]
pub struct Args {
    /// Which; the list, where none is named
    name: Option<String>,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    match &args.name {
        Some(name) => write_text(named(name)?.text)?,
        None => {
            let lines = EXAMPLES.iter().map(|example| format!("{:<18} {}\n", example.name, example.shows));
            write_text(&lines.collect::<String>())?;
        }
    }
    Ok(ExitCode::SUCCESS)
}
