//! The command line: what can be asked, with help and an example for each.

use crate::commands;
use clap::{CommandFactory as _, FromArgMatches as _, Parser, Subcommand, ValueEnum};

/// What the exit codes tell scripts, at the end of every help text.
const EXIT_CODES: &str = "Exit codes:
  0  answered
  1  the survey, the price book or another file has mistakes, or a plan does not hold
  2  the command line is wrong, or a file cannot be read
  3  something could not be checked, must be found out first, or cannot be had lawfully
     with what was offered; after the work: something is still to be read
  4  what was read after the work contradicts the plan";

/// Correct receptacles that have no equipment ground, in existing dwellings
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

impl Cli {
    /// Reads the command line; ends the program where it asks for help or is wrong.
    pub fn read() -> Self {
        let with_exit_codes = |command: clap::Command| {
            let after = command.get_after_help().map_or(String::new(), |text| format!("{text}\n\n"));
            command.after_help(after + EXIT_CODES)
        };
        let matches = with_exit_codes(Self::command()).mut_subcommands(with_exit_codes).get_matches();
        Self::from_arg_matches(&matches).unwrap_or_else(|error| error.exit())
    }
}

/// What can be asked.
#[derive(Debug, Subcommand)]
pub enum Command {
    Plan(commands::plan::Args),
    Estimate(Box<commands::estimate::Args>),
    Options(Box<commands::options::Args>),
    Findings(commands::findings::Args),
    Checks(commands::checks::Args),
    Draw(commands::draw::Args),
    Papers(Box<commands::papers::Args>),
    Prove(Box<commands::prove::Args>),
    Circuits(commands::circuits::Args),
    Verify(commands::verify::Args),
    WhatIf(commands::what_if::Args),
    Why(commands::why::Args),
    Rule(commands::rule::Args),
    Editions(commands::editions::Args),
    Places(commands::places::Args),
    Schema(commands::schema::Args),
    Prices(commands::prices::Args),
    Practice(commands::practice::Args),
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
