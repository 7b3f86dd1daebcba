//! The project's own chores: `cargo xtask tidy` holds the tree against its conventions.

#![allow(clippy::disallowed_methods, clippy::print_stdout, clippy::print_stderr)]

mod picture;
mod tidy;
mod unread;

use std::path::Path;
use std::process::ExitCode;

const USAGE: &str = "usage: cargo xtask tidy [--near]
       cargo xtask picture [--check]
       cargo xtask unread

  tidy    hold every file against the project's conventions
  --near  also list the files that come near the length limit
  picture draw the README's picture of a plan page from what the program prints
  --check only hold the kept picture against it
  unread  print which values of the code rest on memory, are disputed or are not entered";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match arguments[..] {
        ["tidy"] => tidy::command::run(false),
        ["tidy", "--near"] => tidy::command::run(true),
        ["picture"] => picture(false),
        ["picture", "--check"] => picture(true),
        ["unread"] => {
            print!("{}", unread::page());
            ExitCode::SUCCESS
        }
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

/// Draws or checks the picture and tells how that went.
fn picture(check_only: bool) -> ExitCode {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap_or(Path::new("."));
    match picture::run(root, check_only) {
        Ok(told) => {
            println!("{told}");
            ExitCode::SUCCESS
        }
        Err(why) => {
            eprintln!("picture: {why}");
            ExitCode::FAILURE
        }
    }
}
