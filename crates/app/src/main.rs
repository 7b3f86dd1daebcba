//! The one binary: reads its arguments, runs a command, and tells scripts by its exit code how that went.
#![allow(
    clippy::disallowed_methods,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "the binary is where files and screens are"
)]

mod answering;
mod cli;
mod command_error;
mod commands;
mod examples;
mod json_difference;
mod law;
mod named;
mod offer_pick;
mod page;
mod planning;
mod planning_flags;
mod steering_flags;
mod workbook;

use cli::{Cli, Command};
use command_error::CommandError;
use std::process::ExitCode;

fn main() -> ExitCode {
    let cli = Cli::read();
    cli.colour.write_global();
    let outcome = match &cli.command {
        Command::Plan(args) => commands::plan::run(args),
        Command::Estimate(args) => commands::estimate::run(args),
        Command::Options(args) => commands::options::run(args),
        Command::Findings(args) => commands::findings::run(args),
        Command::Checks(args) => commands::checks::run(args),
        Command::Draw(args) => commands::draw::run(args),
        Command::Papers(args) => commands::papers::run(args),
        Command::Prove(args) => commands::prove::run(args),
        Command::Circuits(args) => commands::circuits::run(args),
        Command::Editions(args) => commands::editions::run(args),
        Command::Verify(args) => commands::verify::run(args),
        Command::WhatIf(args) => commands::what_if::run(args),
        Command::Why(args) => commands::why::run(args),
        Command::Rule(args) => commands::rule::run(args),
        Command::Places(args) => commands::places::run(args),
        Command::Schema(args) => commands::schema::run(args),
        Command::Practice(args) => commands::practice::run(args),
        Command::Prices(args) => commands::prices::run(args),
        Command::Example(args) => commands::example::run(args),
    };
    outcome.unwrap_or_else(|error| {
        // A reader that has gone, such as `head`, is no fault.
        if !matches!(error, CommandError::Closed) {
            anstream::eprintln!("{error}");
        }
        error.exit_code()
    })
}
