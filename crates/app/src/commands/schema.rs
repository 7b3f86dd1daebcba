//! Prints JSON Schemas: of the survey, and of every answer.

use crate::answering::write_json;
use crate::command_error::CommandError;
use calculations::ChecksAnswer;
use clap::ValueEnum;
use drawings::DrawingAnswer;
use remedies::{EditionsAnswer, FindingsAnswer, OptionsAnswer, PlanAnswer, SensitivityAnswer, WhyAnswer};
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
    /// The price book
    Prices,
    /// The answer of `prices --json`
    PriceBook,
    /// The practice file
    Practice,
    /// A file of local changes to the code
    LocalCode,
    /// The answer of `plan --json`
    Plan,
    /// The answer of `estimate --json`
    Estimate,
    /// The answer of `options --json`
    Options,
    /// The answer of `findings --json`
    Findings,
    /// The answer of `circuits --json`
    Circuits,
    /// What `--json` says of a file with mistakes
    Mistakes,
    /// The answer of `checks --json`
    Checks,
    /// The answer of `draw --json`
    Draw,
    /// The answer of `papers --json`
    Papers,
    /// The answer of `prove --json`
    Prove,
    /// The answer of `why --json`
    Why,
    /// The answer of `editions --json`
    Editions,
    /// The answer of `verify --json`
    Verify,
    /// The answer of `what-if --json`
    WhatIf,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    match args.of {
        Of::Survey => write_json(&survey::schema())?,
        Of::Prices => write_json(&survey::prices_schema())?,
        Of::PriceBook => write_json(&schemars::schema_for!(crate::commands::prices::PriceBookAnswer))?,
        Of::Practice => write_json(&survey::practice_schema())?,
        Of::LocalCode => write_json(&survey::local_code_schema())?,
        Of::Circuits => write_json(&schemars::schema_for!(crate::commands::circuits::CircuitsAnswer))?,
        Of::Mistakes => write_json(&schemars::schema_for!(survey::MistakesAnswer))?,
        Of::Checks => write_json(&schemars::schema_for!(ChecksAnswer))?,
        Of::Draw => write_json(&schemars::schema_for!(DrawingAnswer))?,
        Of::Papers => write_json(&schemars::schema_for!(papers::SetAnswer))?,
        Of::Prove => write_json(&schemars::schema_for!(closeout::ProofAnswer))?,
        Of::Verify => write_json(&schemars::schema_for!(crate::commands::verify::VerificationAnswer))?,
        Of::WhatIf => write_json(&schemars::schema_for!(SensitivityAnswer))?,
        Of::Why => write_json(&schemars::schema_for!(WhyAnswer))?,
        Of::Editions => write_json(&schemars::schema_for!(EditionsAnswer))?,
        Of::Plan => write_json(&schemars::schema_for!(PlanAnswer))?,
        Of::Estimate => write_json(&schemars::schema_for!(remedies::EstimateAnswer))?,
        Of::Options => write_json(&schemars::schema_for!(OptionsAnswer))?,
        Of::Findings => write_json(&schemars::schema_for!(FindingsAnswer))?,
    }
    Ok(ExitCode::SUCCESS)
}
