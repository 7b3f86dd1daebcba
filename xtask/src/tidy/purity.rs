//! The working source of a pure crate touches no file, clock, environment, network or thread, and prints nothing.

use super::Violation;
use super::layers::pure_source;
use super::project::Project;
use super::rust_text::{has_word, imports, is_test_file, names, working_lines};

/// Modules of the standard library that reach outside.
const OUTSIDE: [&str; 8] = ["env", "fs", "io", "net", "os", "process", "thread", "time"];
const PRINTING: [&str; 5] = ["dbg!", "eprint!", "eprintln!", "print!", "println!"];
/// Lints that keep the crates pure; only the binaries may silence them.
const GUARDS: [&str; 5] =
    ["disallowed_macros", "disallowed_methods", "disallowed_types", "print_stderr", "print_stdout"];

pub fn find(project: &Project) -> Vec<Violation> {
    let mut found = Vec::new();
    for file in project.rust_files().filter(|file| !is_test_file(file.path)) {
        let Some(pure) = pure_source(file.path) else { continue };
        let lines = working_lines(&file);
        let mut report = |line, what: String| {
            found.push(Violation::at(file.path, line, format!("{what} in the pure crate `{}`", pure.name)));
        };
        for (number, line) in &lines {
            for module in OUTSIDE.iter().filter(|module| has_word(line, &format!("std::{module}"))) {
                report(*number, format!("`std::{module}`"));
            }
            for printing in PRINTING.iter().filter(|printing| has_word(line, printing)) {
                report(*number, format!("`{printing}`"));
            }
            let silences = has_word(line, "allow") || has_word(line, "expect");
            for guard in GUARDS.iter().filter(|guard| silences && has_word(line, &format!("clippy::{guard}"))) {
                report(*number, format!("`{guard}` is silenced"));
            }
        }
        for (number, import) in imports(&lines).iter().filter(|(_, import)| import.contains("std::{")) {
            for module in OUTSIDE.iter().filter(|module| names(import).any(|name| name == **module)) {
                report(*number, format!("`std::{module}`"));
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(path: &str, text: &str) -> Vec<String> {
        find(&Project::of(&[(path, text)])).into_iter().map(|violation| violation.what).collect()
    }

    #[test]
    fn reaching_outside_is_caught() {
        let text = "//! A.\nuse std::time::Instant;\nfn a() { let _ = std::fs::read(\"b\"); }\n";
        let found = found("crates/rulebook/src/a.rs", text);
        assert_eq!(found, ["`std::time` in the pure crate `rulebook`", "`std::fs` in the pure crate `rulebook`"]);
    }

    #[test]
    fn reaching_outside_through_a_grouped_import_is_caught() {
        assert_eq!(found("crates/survey/src/a.rs", "//! A.\nuse std::{\n    fmt,\n    env,\n};\n").len(), 1);
    }

    #[test]
    fn printing_is_caught() {
        assert_eq!(found("crates/diagnosis/src/a.rs", "//! A.\nfn a() { println!(); }\n").len(), 1);
        assert_eq!(found("crates/diagnosis/src/a.rs", "//! A.\nfn a() { eprintln!(); }\n").len(), 1);
    }

    #[test]
    fn silencing_a_guard_is_caught() {
        assert_eq!(found("crates/survey/src/lib.rs", "//! A.\n#![allow(clippy::disallowed_methods)]\n").len(), 1);
    }

    #[test]
    fn tests_comments_and_the_binaries_are_free() {
        let tests = "//! A.\n// std::fs is not used.\n#[cfg(test)]\nmod tests {\n    use std::fs;\n}\n";
        assert_eq!(found("crates/survey/src/a.rs", tests).len(), 0);
        assert_eq!(found("crates/survey/tests/a.rs", "//! A.\nuse std::fs;\n").len(), 0);
        assert_eq!(found("crates/app/src/main.rs", "//! A.\nuse std::fs;\n").len(), 0);
    }
}
