//! Every Rust file opens with a `//!` line that says what it is.

use super::Violation;
use super::project::Project;

pub fn find(project: &Project) -> Vec<Violation> {
    project
        .rust_files()
        .filter(|file| !file.text.lines().next().is_some_and(says_something))
        .map(|file| Violation::at(file.path, 1, "the first line is not `//! …` with what the file is"))
        .collect()
}

fn says_something(line: &str) -> bool {
    line.strip_prefix("//! ").is_some_and(|words| !words.trim().is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_opens_with_code_or_an_empty_line_is_caught() {
        for text in ["fn a() {}\n", "//!\nfn a() {}\n", "// A note.\n", "", "\n//! Late.\n"] {
            assert_eq!(find(&Project::of(&[("crates/a/src/b.rs", text)])).len(), 1, "{text:?}");
        }
    }

    #[test]
    fn a_file_that_says_what_it_is_passes() {
        assert_eq!(find(&Project::of(&[("xtask/src/b.rs", "//! Lengths.\nfn a() {}\n")])), []);
    }
}
