//! The documents name only files that exist.

use super::Violation;
use super::project::{File, Project};

/// What a path in running examples begins with where it means a file of the project.
const OURS: [&str; 6] = ["crates/", "docs/", "examples/", "scripts/", "xtask/", ".ci/"];

pub fn find(project: &Project) -> Vec<Violation> {
    let documents = project
        .files()
        .filter(|file| file.path.ends_with(".md") && (file.path.starts_with("docs/") || !file.path.contains('/')));
    let mut found = Vec::new();
    for document in documents {
        for (line, path) in named_paths(&document) {
            if !exists(project, document.path, &path) {
                found.push(Violation::at(document.path, line, format!("there is no `{path}`")));
            }
        }
    }
    found
}

/// The paths that a document names, with their lines: in backticks, as the aim of a link, and in fenced examples.
fn named_paths(document: &File<'_>) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    let mut fenced = false;
    for (number, line) in document.numbered_lines() {
        if line.trim_start().starts_with("```") {
            fenced = !fenced;
            continue;
        }
        let words: Vec<&str> = if fenced {
            line.split_whitespace().filter(|word| OURS.iter().any(|ours| word.starts_with(ours))).collect()
        } else {
            let spoken = line.split('`').skip(1).step_by(2).flat_map(str::split_whitespace);
            let linked = line.split("](").skip(1).filter_map(|rest| rest.split([')', '#']).next());
            spoken.filter(|word| word.contains('/')).chain(linked).collect()
        };
        let words = words.into_iter().map(|word| word.trim_matches(|end| ",;:()\"'".contains(end)));
        found.extend(words.filter(|word| is_path_of_a_file(word)).map(|word| (number, word.to_owned())));
    }
    found
}

/// Whether a word looks like the path of a file of the project: it ends in an extension and is no address.
fn is_path_of_a_file(word: &str) -> bool {
    let elsewhere = word.contains("://") || word.starts_with('/') || word.starts_with("target/") || word.contains('…');
    let file = word.rsplit('/').next().unwrap_or(word);
    let extension = file.rsplit_once('.').map_or("", |(_, extension)| extension);
    !elsewhere && (1..=5).contains(&extension.len()) && extension.chars().all(|letter| letter.is_ascii_lowercase())
}

/// Whether a path exists, from the root of the project or from the document. Of a path with a part left open, such as
/// `<rule>`, the folders before that part must exist.
fn exists(project: &Project, document: &str, path: &str) -> bool {
    let folder = document.rsplit_once('/').map_or("", |(folder, _)| folder);
    [resolve("", path), resolve(folder, path)].into_iter().flatten().any(|path| match path.find(['<', '*', '{']) {
        Some(open) => project.has_folder(path[..open].rsplit_once('/').map_or("", |(folder, _)| folder)),
        None => project.has_file(&path),
    })
}

/// A path from a folder, with `.` and `..` worked out; nothing where it leaves the project.
fn resolve(folder: &str, path: &str) -> Option<String> {
    let mut parts: Vec<&str> = folder.split('/').filter(|part| !part.is_empty()).collect();
    for part in path.split('/') {
        match part {
            "" | "." => {}
            ".." => drop(parts.pop()?),
            part => parts.push(part),
        }
    }
    Some(parts.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(document: &str, text: &str) -> Vec<String> {
        let project = Project::of(&[
            (document, text),
            ("examples/bungalow.toml", ""),
            ("docs/style.md", ""),
            ("crates/rulebook/src/rules/mod.rs", ""),
        ]);
        find(&project).into_iter().map(|violation| violation.what).collect()
    }

    #[test]
    fn a_file_that_does_not_exist_is_caught() {
        assert_eq!(found("README.md", "See `docs/stile.md`.\n"), ["there is no `docs/stile.md`"]);
        assert_eq!(found("README.md", "See [style](docs/stile.md#names).\n"), ["there is no `docs/stile.md`"]);
        assert_eq!(found("README.md", "Run `plan examples/mansion.toml`.\n"), ["there is no `examples/mansion.toml`"]);
    }

    #[test]
    fn a_file_that_does_not_exist_in_an_example_is_caught() {
        let text = "```sh\ncargo run -- plan examples/mansion.toml\n```\n";
        assert_eq!(found("README.md", text), ["there is no `examples/mansion.toml`"]);
        assert_eq!(found("README.md", &text.replace("mansion", "bungalow")).len(), 0);
    }

    #[test]
    fn a_file_may_be_named_from_the_document_or_from_the_root() {
        assert_eq!(
            found("docs/a.md", "See [style](style.md) and `docs/style.md` and `../examples/bungalow.toml`.\n").len(),
            0
        );
        assert_eq!(found("docs/a.md", "See `../../style.md`.\n").len(), 1);
    }

    #[test]
    fn a_path_with_an_open_part_needs_its_folders() {
        assert_eq!(found("docs/a.md", "Write `crates/rulebook/src/rules/<topic>/<rule>.rs`.\n").len(), 0);
        assert_eq!(found("docs/a.md", "Write `crates/rulebook/src/rulings/<rule>.rs`.\n").len(), 1);
    }

    #[test]
    fn addresses_fractions_and_words_are_no_paths() {
        let text = "`https://example.org/a.html`, `1/0 AWG`, `target/doc/a.html`, `and/or`, [here](https://example.org/a.md)\n";
        assert_eq!(found("README.md", text), Vec::<String>::new());
    }
}
