//! Every formula says what it computes, whose it is, what it holds for, and shows itself run.
#![allow(clippy::disallowed_methods, reason = "the source is what this test is about")]

use std::fs;
use std::path::{Path, PathBuf};

/// What the documentation of a formula holds.
const SECTIONS: [&str; 4] = ["# Formula", "# Source", "# Range", "# Example"];

/// Every Rust file below a folder.
fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).expect("a folder of the crate").map(|entry| entry.expect("an entry").path());
    entries
        .flat_map(|path| if path.is_dir() { rust_files(&path) } else { vec![path] })
        .filter(|path| path.extension().is_some_and(|extension| extension == "rs"))
        .collect()
}

/// The public functions of a text, constant ones aside, with the documentation before each.
fn functions(text: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut documentation = String::new();
    for line in text.lines().map(str::trim_start) {
        if line.starts_with("mod tests") {
            break;
        } else if let Some(words) = line.strip_prefix("///") {
            documentation.push_str(words);
            documentation.push('\n');
        } else if let Some(signature) = line.strip_prefix("pub fn ") {
            let name = signature.split(['(', '<']).next().unwrap_or(signature);
            found.push((name.to_owned(), std::mem::take(&mut documentation)));
        } else if !line.starts_with("#[") {
            documentation.clear();
        }
    }
    found
}

#[test]
fn every_formula_gives_formula_source_range_and_a_run_example() {
    let mut lacking = Vec::new();
    let mut count = 0;
    for path in rust_files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src/formulas")) {
        for (name, documentation) in functions(&fs::read_to_string(&path).expect("a readable file")) {
            count += 1;
            for section in SECTIONS.iter().filter(|section| !documentation.contains(**section)) {
                lacking.push(format!("{}: `{name}` lacks `{section}`", path.display()));
            }
        }
    }
    assert!(count > 40, "only {count} formulas were found");
    assert!(lacking.is_empty(), "{}", lacking.join("\n"));
}
