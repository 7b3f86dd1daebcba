//! No file, folder or module has a name that says nothing, and no file name is a section number.

use super::Violation;
use super::project::Project;
use super::rust_text::{names, working_lines};

const SAY_NOTHING: [&str; 8] = ["utils", "util", "helpers", "helper", "common", "misc", "miscellaneous", "stuff"];

pub fn find(project: &Project) -> Vec<Violation> {
    let mut found = Vec::new();
    for file in project.files().filter(|file| file.path.ends_with(".rs") || file.path.ends_with(".md")) {
        for part in file.path.split('/') {
            let stem = part.split('.').next().unwrap_or(part);
            if SAY_NOTHING.contains(&stem) {
                found.push(Violation::of_file(file.path, format!("`{stem}` says nothing: name the idea")));
            }
        }
        let stem = file.path.rsplit('/').next().unwrap_or(file.path);
        if is_source(file.path) && has_section_number(stem) {
            found.push(Violation::of_file(
                file.path,
                "a section number in a file name: sections move, name the subject",
            ));
        }
    }
    for file in project.rust_files() {
        for (number, line) in working_lines(&file) {
            if let Some(name) = module_named(line).filter(|name| SAY_NOTHING.contains(name)) {
                found.push(Violation::at(file.path, number, format!("module `{name}` says nothing: name the idea")));
            }
        }
    }
    found
}

fn is_source(path: &str) -> bool {
    path.starts_with("crates/") || path.starts_with("xtask/")
}

/// Whether exactly three digits stand together, as in every article of the code but the first few; years have four.
fn has_section_number(name: &str) -> bool {
    name.split(|letter: char| !letter.is_ascii_digit()).any(|digits| digits.len() == 3)
}

/// The name of the module that a line declares.
fn module_named(line: &str) -> Option<&str> {
    let words: Vec<&str> = names(line).take(4).collect();
    let at = words.iter().position(|word| *word == "mod")?;
    let only_visibility = words[..at].iter().all(|word| matches!(*word, "pub" | "crate" | "super"));
    if only_visibility { words.get(at + 1).copied() } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(path: &str, text: &str) -> usize {
        find(&Project::of(&[(path, text)])).len()
    }

    #[test]
    fn files_and_folders_that_say_nothing_are_caught() {
        assert_eq!(found("crates/a/src/utils.rs", "//! A.\n"), 1);
        assert_eq!(found("crates/a/src/common/mod.rs", "//! A.\n"), 1);
        assert_eq!(found("crates/a/tests/helpers.rs", "//! A.\n"), 1);
        assert_eq!(found("crates/a/src/common_trip.rs", "//! A.\n"), 0);
    }

    #[test]
    fn modules_that_say_nothing_are_caught() {
        assert_eq!(found("crates/a/src/lib.rs", "//! A.\nmod misc;\n"), 1);
        assert_eq!(found("crates/a/src/lib.rs", "//! A.\npub(crate) mod helpers {\n}\n"), 1);
        assert_eq!(found("crates/a/src/lib.rs", "//! A.\nmod groups;\n"), 0);
    }

    #[test]
    fn section_numbers_in_file_names_are_caught() {
        assert_eq!(found("crates/rulebook/src/rules/rule_406_4.rs", "//! A.\n"), 1);
        assert_eq!(found("crates/rulebook/src/tables/table210.md", "A"), 1);
    }

    #[test]
    fn years_and_the_numbers_of_decisions_are_no_sections() {
        assert_eq!(found("crates/rulebook/src/nec2020.rs", "//! A.\n"), 0);
        assert_eq!(found("docs/decisions/0001-crates.md", "A"), 0);
    }
}
