//! Prints JSON Schemas: of the survey, and of every answer.

use crate::answering::write_json;
use crate::command_error::CommandError;
use clap::ValueEnum;
use remedies::{FindingsAnswer, OptionsAnswer, PlanAnswer};
use std::process::ExitCode;

/// Print the JSON Schema of the survey or of an answer
#[derive(Debug, clap::Args)]
#[command(after_help = "Example:\n  thirdwire schema > survey.schema.json\n  thirdwire schema plan")]
pub struct Args {
    /// Of what
    #[arg(value_enum, default_value = "survey")]
    of: Of,
}

/// What a schema can be asked of.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Of {
    /// The survey file
    Survey,
    /// The answer of `plan --json`
    Plan,
    /// The answer of `options --json`
    Options,
    /// The answer of `findings --json`
    Findings,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    match args.of {
        Of::Survey => write_json(&survey::schema())?,
        Of::Plan => write_json(&schemars::schema_for!(PlanAnswer))?,
        Of::Options => write_json(&schemars::schema_for!(OptionsAnswer))?,
        Of::Findings => write_json(&schemars::schema_for!(FindingsAnswer))?,
    }
    Ok(ExitCode::SUCCESS)
}
