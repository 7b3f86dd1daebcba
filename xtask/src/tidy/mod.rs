//! The conventions that a machine can check, one file each.

pub mod command;

mod dependencies;
mod dependency_reasons;
mod doc_paths;
mod file_length;
mod file_names;
mod layers;
mod lints;
mod machine_paths;
mod opening_line;
mod project;
mod purity;
mod rule_imports;
mod rules_listed;
mod rust_text;
mod sources_named;
mod unfinished;

use project::Project;
use std::fmt;

/// A convention.
struct Check {
    /// A stable name.
    name: &'static str,
    /// Finds what breaks it.
    find: fn(&Project) -> Vec<Violation>,
}

/// Every convention, in the order in which they are checked.
const CHECKS: &[Check] = &[
    Check { name: "opening-line", find: opening_line::find },
    Check { name: "file-length", find: file_length::find },
    Check { name: "file-names", find: file_names::find },
    Check { name: "dependencies", find: dependencies::find },
    Check { name: "dependency-reasons", find: dependency_reasons::find },
    Check { name: "purity", find: purity::find },
    Check { name: "lints", find: lints::find },
    Check { name: "rules-listed", find: rules_listed::find },
    Check { name: "rule-imports", find: rule_imports::find },
    Check { name: "doc-paths", find: doc_paths::find },
    Check { name: "unfinished", find: unfinished::find },
    Check { name: "sources-named", find: sources_named::find },
    Check { name: "machine-paths", find: machine_paths::find },
];

/// A place where a convention is broken.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Violation {
    path: String,
    /// Counted from 1, where one line is at fault.
    line: Option<usize>,
    what: String,
}

impl Violation {
    fn of_file(path: &str, what: impl Into<String>) -> Self {
        Self { path: path.into(), line: None, what: what.into() }
    }

    fn at(path: &str, line: usize, what: impl Into<String>) -> Self {
        Self { path: path.into(), line: Some(line), what: what.into() }
    }
}

impl fmt::Display for Violation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            Some(line) => write!(f, "{}:{line}: {}", self.path, self.what),
            None => write!(f, "{}: {}", self.path, self.what),
        }
    }
}

/// Everything that breaks a convention, each with the name of the convention.
fn violations(project: &Project) -> Vec<(&'static str, Violation)> {
    CHECKS.iter().flat_map(|check| (check.find)(project).into_iter().map(|violation| (check.name, violation))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_project_keeps_its_conventions() {
        let project = Project::read(&project::root()).unwrap();
        let found: Vec<String> =
            violations(&project).iter().map(|(check, violation)| format!("{violation} [{check}]")).collect();
        assert!(found.is_empty(), "\n{}", found.join("\n"));
    }

    #[test]
    fn the_project_is_read_whole() {
        let project = Project::read(&project::root()).unwrap();
        for path in ["Cargo.toml", "crates/dwelling/src/lib.rs", "xtask/src/main.rs", ".ci/run", "docs/style.md"] {
            assert!(project.file(path).is_some(), "{path} was not read");
        }
        assert!(project.files().all(|file| !file.path.starts_with("target/")));
    }
}
