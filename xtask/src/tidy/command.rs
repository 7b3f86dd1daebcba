//! The command: reads the project, prints what breaks a convention, and fails if anything does.

use super::project::{self, Project};
use super::{CHECKS, file_length, violations};
use std::process::ExitCode;

/// Runs every check; with `near`, also lists the files that come near the length limit.
pub fn run(near: bool) -> ExitCode {
    let root = project::root();
    let project = match Project::read(&root) {
        Ok(project) => project,
        Err(error) => {
            eprintln!("tidy: cannot read the project at `{}`: {error}", root.display());
            return ExitCode::from(2);
        }
    };
    if near {
        for (path, lines) in file_length::near_misses(&project) {
            println!("{path}: {lines} lines of {} allowed", file_length::LONGEST);
        }
    }
    let found = violations(&project);
    for (check, violation) in &found {
        println!("{violation} [{check}]");
    }
    println!("tidy: {} checks over {} files, {} violations", CHECKS.len(), project.files().count(), found.len());
    if found.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
