//! Reading Rust source as text: enough for checks that ask whether a word stands in it.

use super::project::File;

/// Whether a word stands in a text, not as part of a longer name.
pub fn has_word(text: &str, word: &str) -> bool {
    text.match_indices(word).any(|(at, _)| {
        let before = text[..at].chars().next_back();
        let after = text[at + word.len()..].chars().next();
        let joins_before = word.starts_with(is_name_letter) && before.is_some_and(is_name_letter);
        let joins_after = word.ends_with(is_name_letter) && after.is_some_and(is_name_letter);
        !joins_before && !joins_after
    })
}

/// Whether a letter can stand in a name.
pub fn is_name_letter(letter: char) -> bool {
    letter.is_alphanumeric() || letter == '_'
}

/// The names in a text, in order.
pub fn names(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter| !is_name_letter(letter)).filter(|name| !name.is_empty())
}

/// Whether a Rust file holds nothing but tests.
pub fn is_test_file(path: &str) -> bool {
    path.split('/').any(|part| matches!(part, "tests" | "tests.rs" | "benches"))
}

/// The lines of a Rust file with their numbers, without comment lines and without modules for tests.
///
/// A module for tests is taken to end at the next closing brace in the first column, as `cargo fmt` writes it.
pub fn working_lines<'a>(file: &File<'a>) -> Vec<(usize, &'a str)> {
    let mut kept = Vec::new();
    let mut in_tests = false;
    let mut after_mark = false;
    for (index, line) in file.text.lines().enumerate() {
        let code = line.trim_start();
        if in_tests {
            in_tests = line != "}";
        } else if line == "#[cfg(test)]" {
            after_mark = true;
        } else if after_mark && (code.is_empty() || code.starts_with("#[") || code.starts_with("//")) {
            // Attributes and comments between the mark and the module.
        } else if after_mark && names(code).any(|name| name == "mod") {
            after_mark = false;
            in_tests = code.ends_with('{');
        } else {
            after_mark = false;
            if !code.starts_with("//") {
                kept.push((index + 1, line));
            }
        }
    }
    kept
}

/// The statements of a Rust file that begin with `use`, each with the number of its first line, on one line each.
pub fn imports(lines: &[(usize, &str)]) -> Vec<(usize, String)> {
    let mut found: Vec<(usize, String)> = Vec::new();
    let mut open = false;
    for (number, line) in lines {
        let code = line.trim();
        if let (true, Some((_, statement))) = (open, found.last_mut()) {
            statement.push_str(code);
        } else if names(code).take_while(|name| matches!(*name, "pub" | "crate" | "super" | "use")).any(|n| n == "use")
        {
            found.push((*number, code.into()));
        } else {
            continue;
        }
        open = !code.ends_with(';');
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(text: &str) -> File<'_> {
        File { path: "a.rs", text }
    }

    #[test]
    fn a_word_inside_a_longer_name_is_not_that_word() {
        assert!(has_word("let x = std::fs::read(p);", "std::fs"));
        assert!(!has_word("eprintln!()", "println!"));
        assert!(!has_word("std::fsx", "std::fs"));
    }

    #[test]
    fn modules_for_tests_and_comments_are_left_out_and_what_follows_is_not() {
        let text = "fn a() {}\n// note\n#[cfg(test)]\nmod tests {\n    fn b() {}\n}\nfn c() {}\n";
        assert_eq!(working_lines(&file(text)), [(1, "fn a() {}"), (7, "fn c() {}")]);
    }

    #[test]
    fn a_test_module_in_a_file_of_its_own_hides_nothing_after_it() {
        let text = "#[cfg(test)]\nmod tests;\nfn a() {}\n";
        assert_eq!(working_lines(&file(text)), [(3, "fn a() {}")]);
    }

    #[test]
    fn a_test_item_that_is_no_module_hides_nothing() {
        let text = "#[cfg(test)]\nfn a() {}\nfn b() {}\n";
        assert_eq!(working_lines(&file(text)), [(2, "fn a() {}"), (3, "fn b() {}")]);
    }

    #[test]
    fn an_import_over_several_lines_is_one_statement() {
        let text = "use std::{\n    fmt,\n    fs,\n};\npub(crate) use a::b;\nfn f() {}\n";
        let lines = working_lines(&file(text));
        assert_eq!(imports(&lines), [(1, "use std::{fmt,fs,};".into()), (5, "pub(crate) use a::b;".into())]);
    }
}
