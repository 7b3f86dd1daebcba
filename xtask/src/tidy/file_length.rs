//! No Rust file is longer than the limit.

use super::Violation;
use super::project::Project;

/// The most lines a Rust file may have.
pub const LONGEST: usize = 500;
/// From here on a file is a near miss.
const NEAR: usize = 400;

pub fn find(project: &Project) -> Vec<Violation> {
    lengths(project)
        .filter(|(_, lines)| *lines > LONGEST)
        .map(|(path, lines)| Violation::of_file(path, format!("{lines} lines, {LONGEST} allowed: split it by idea")))
        .collect()
}

/// The files that are allowed but long, longest first, with their lengths.
pub fn near_misses(project: &Project) -> Vec<(&str, usize)> {
    let mut near: Vec<_> = lengths(project).filter(|(_, lines)| (NEAR + 1..=LONGEST).contains(lines)).collect();
    near.sort_by_key(|(_, lines)| std::cmp::Reverse(*lines));
    near
}

fn lengths(project: &Project) -> impl Iterator<Item = (&str, usize)> {
    project.rust_files().map(|file| (file.path, file.text.lines().count()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_501st_line_is_caught_and_the_500th_is_not() {
        let (long, longest) = ("//\n".repeat(501), "//\n".repeat(500));
        let project = Project::of(&[("crates/a/src/long.rs", &long), ("crates/a/src/longest.rs", &longest)]);
        let found: Vec<String> = find(&project).into_iter().map(|violation| violation.path).collect();
        assert_eq!(found, ["crates/a/src/long.rs"]);
    }

    #[test]
    fn near_misses_are_listed_longest_first() {
        let files = [400, 401, 450].map(|lines| (format!("crates/a/src/of_{lines}.rs"), "//\n".repeat(lines)));
        let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (path.as_str(), text.as_str())).collect();
        let project = Project::of(&files);
        assert_eq!(near_misses(&project), [("crates/a/src/of_450.rs", 450), ("crates/a/src/of_401.rs", 401)]);
    }
}
