//! Nothing in the source is marked as left to do, and no test is switched off.

use super::Violation;
use super::project::Project;
use super::rust_text::has_word;

/// Marks of unfinished work, put together so that this file does not hold them.
const MARKS: [&str; 5] = [
    concat!("TO", "DO"),
    concat!("FIX", "ME"),
    concat!("to", "do!"),
    concat!("unimple", "mented!"),
    concat!("#[ig", "nore"),
];
const SOURCES: [&str; 4] = [".rs", ".toml", ".sh", ".yml"];

pub fn find(project: &Project) -> Vec<Violation> {
    let mut found = Vec::new();
    for file in project.files().filter(|file| SOURCES.iter().any(|ending| file.path.ends_with(ending))) {
        for (number, line) in file.numbered_lines() {
            for mark in MARKS.iter().filter(|mark| has_word(line, mark)) {
                found.push(Violation::at(file.path, number, format!("`{mark}`: finish it, or decide and write why")));
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_mark_is_caught() {
        for mark in MARKS {
            let text = format!("//! A.\n    // {mark} later\n");
            let found = find(&Project::of(&[("crates/a/src/b.rs", &text)]));
            assert_eq!(found.iter().map(|violation| violation.line).collect::<Vec<_>>(), [Some(2)], "{mark}");
        }
    }

    #[test]
    fn a_test_switched_off_with_a_reason_is_caught() {
        let text = format!("//! A.\n{} = \"slow\"]\n", MARKS[4]);
        assert_eq!(find(&Project::of(&[("crates/a/tests/b.rs", &text)])).len(), 1);
    }

    #[test]
    fn longer_words_pass() {
        assert_eq!(find(&Project::of(&[("crates/a/src/b.rs", "//! Mastodons.\nlet ignored = 1;\n")])), []);
    }
}
