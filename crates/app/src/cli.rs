//! The command line: what can be asked, with help and an example for each.

use crate::commands;
use clap::{Parser, Subcommand, ValueEnum};

/// Correct receptacles that have no equipment ground, in existing dwellings
///
/// Exit codes: 0 answered; 1 the survey has mistakes; 2 the command line is wrong or a file cannot be read;
/// 3 something could not be checked, must be found out first, or cannot be had lawfully with what was offered.
#[derive(Debug, Parser)]
#[command(name = "thirdwire", version, propagate_version = true, arg_required_else_help = true)]
pub struct Cli {
    /// When to use colours
    #[arg(long, global = true, value_enum, default_value = "auto", value_name = "WHEN")]
    pub colour: Colour,
    /// What to do
    #[command(subcommand)]
    pub command: Command,
}

/// What can be asked.
#[derive(Debug, Subcommand)]
pub enum Command {
    Plan(commands::plan::Args),
    Options(Box<commands::options::Args>),
    Findings(commands::findings::Args),
    Circuits(commands::circuits::Args),
    Schema(commands::schema::Args),
    Prices(commands::prices::Args),
    Example(commands::example::Args),
}

/// When to use colours.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Colour {
    /// On a terminal only
    Auto,
    /// Always
    Always,
    /// Never
    Never,
}

impl Colour {
    /// Settles it for everything that is shown.
    pub fn write_global(self) {
        let choice = match self {
            Self::Auto => anstream::ColorChoice::Auto,
            Self::Always => anstream::ColorChoice::Always,
            Self::Never => anstream::ColorChoice::Never,
        };
        choice.write_global();
    }
}
