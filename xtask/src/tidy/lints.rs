//! Every crate takes the lints of the workspace.

use super::Violation;
use super::project::Project;
use toml::{Table, Value};

pub fn find(project: &Project) -> Vec<Violation> {
    project
        .files()
        .filter(|file| is_member(file.path) && !takes_the_lints(file.text))
        .map(|file| Violation::of_file(file.path, "write `[lints]` and `workspace = true`"))
        .collect()
}

fn is_member(path: &str) -> bool {
    path == "xtask/Cargo.toml" || (path.starts_with("crates/") && path.ends_with("/Cargo.toml"))
}

fn takes_the_lints(manifest: &str) -> bool {
    let manifest = manifest.parse::<Table>().unwrap_or_default();
    manifest.get("lints").and_then(|lints| lints.get("workspace")).and_then(Value::as_bool) == Some(true)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_crate_without_the_lints_of_the_workspace_is_caught() {
        let project = Project::of(&[("crates/a/Cargo.toml", "[package]\nname = \"a\"\n"), ("xtask/Cargo.toml", "")]);
        assert_eq!(find(&project).len(), 2);
    }

    #[test]
    fn a_crate_with_the_lints_of_the_workspace_passes() {
        assert_eq!(find(&Project::of(&[("crates/a/Cargo.toml", "[lints]\nworkspace = true\n")])), []);
    }
}
