//! A comment that promises the source of a number gives it.

use super::Violation;
use super::project::Project;

/// What a number in a test can rest on, and what must follow it.
const PROMISES: [(&str, &str); 2] =
    [("Published:", "name who published the value"), ("By hand:", "show the arithmetic")];

pub fn find(project: &Project) -> Vec<Violation> {
    let mut found = Vec::new();
    for file in project.rust_files() {
        for (number, line) in file.numbered_lines() {
            let Some(comment) = line.trim_start().strip_prefix("//") else { continue };
            let comment = comment.trim_start_matches(['/', '!']).trim();
            for (promise, wanted) in PROMISES {
                if comment.strip_prefix(promise).is_some_and(|rest| !rest.contains(char::is_alphanumeric)) {
                    found.push(Violation::at(file.path, number, format!("`{promise}` and no more: {wanted}")));
                }
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> usize {
        find(&Project::of(&[("crates/a/tests/b.rs", text)])).len()
    }

    #[test]
    fn a_promise_without_a_source_is_caught() {
        assert_eq!(found("//! A.\n/// Published:\n#[test]\nfn a() {}\n"), 1);
        assert_eq!(found("//! A.\n    /// Published: …\n"), 1);
        assert_eq!(found("//! A.\n// By hand: \n"), 1);
    }

    #[test]
    fn a_promise_that_is_kept_passes() {
        assert_eq!(found("//! A.\n/// Published: NEC 2020, Annex D, Example D1(a).\n"), 0);
        assert_eq!(found("//! A.\n/// By hand: 2 + 2 = 4\n"), 0);
    }
}
