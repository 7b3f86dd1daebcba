//! The project's own chores: `cargo xtask tidy` holds the tree against its conventions.

#![allow(clippy::disallowed_methods, clippy::print_stdout, clippy::print_stderr)]

mod tidy;

use std::process::ExitCode;

const USAGE: &str = "usage: cargo xtask tidy [--near]

  tidy    hold every file against the project's conventions
  --near  also list the files that come near the length limit";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match arguments[..] {
        ["tidy"] => tidy::command::run(false),
        ["tidy", "--near"] => tidy::command::run(true),
        ["help" | "--help" | "-h"] => {
            println!("{USAGE}");
            ExitCode::SUCCESS
        }
        _ => {
            eprintln!("{USAGE}");
            ExitCode::from(2)
        }
    }
}
