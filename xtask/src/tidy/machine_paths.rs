//! No text names a folder of the machine it was written on.

use super::Violation;
use super::project::Project;

/// Places that exist on somebody's machine, put together so that this file does not hold them.
const PLACES: [&str; 5] =
    [concat!("/ho", "me/"), concat!("/ro", "ot/"), concat!("/t", "mp/"), concat!("/Us", "ers/"), concat!("C:", "\\")];
const TEXTS: [&str; 5] = [".md", ".rs", ".toml", ".json", ".snap"];

pub fn find(project: &Project) -> Vec<Violation> {
    let mut found = Vec::new();
    for file in project.files().filter(|file| TEXTS.iter().any(|ending| file.path.ends_with(ending))) {
        for (number, line) in file.numbered_lines() {
            for place in PLACES.iter().filter(|place| begins_a_path(line, place)) {
                found.push(Violation::at(file.path, number, format!("`{place}` is a place on one machine")));
            }
        }
    }
    found
}

/// Whether the place stands in the line as the beginning of a path, not in the middle of one.
fn begins_a_path(line: &str, place: &str) -> bool {
    line.match_indices(place)
        .any(|(at, _)| !line[..at].ends_with(|letter: char| letter.is_alphanumeric() || letter == '.'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_is_caught() {
        for place in PLACES {
            let text = format!("Read `{place}someone/notes`.\n");
            assert_eq!(find(&Project::of(&[("docs/a.md", &text)])).len(), 1, "{place}");
        }
    }

    #[test]
    fn a_path_inside_the_project_and_an_address_pass() {
        let text = "See `docs/style.md` and `crates/home/src` and https://example.org/home/.\n";
        assert_eq!(find(&Project::of(&[("README.md", text)])), []);
    }
}
