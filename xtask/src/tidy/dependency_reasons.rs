//! Every crate of others that the workspace uses has its reason in the decision on dependencies.

use super::Violation;
use super::project::Project;
use toml::{Table, Value};

const REASONS: &str = "docs/decisions/0002-dependencies.md";

pub fn find(project: &Project) -> Vec<Violation> {
    let reasons = project.file(REASONS).map_or("", |file| file.text);
    let mut found = Vec::new();
    for file in project.files().filter(|file| file.path == "Cargo.toml" || file.path.ends_with("/Cargo.toml")) {
        let manifest = file.text.parse::<Table>().unwrap_or_default();
        for name in named_here(&manifest).filter(|name| !reasons.contains(&format!("`{name}`"))) {
            found.push(Violation::of_file(file.path, format!("why `{name}`? Give its reason in `{REASONS}`")));
        }
    }
    found
}

/// The crates of others whose versions a manifest chooses itself.
fn named_here(manifest: &Table) -> impl Iterator<Item = &str> {
    let shared = manifest.get("workspace").and_then(Value::as_table);
    [Some(manifest), shared]
        .into_iter()
        .flatten()
        .flat_map(|table| ["dependencies", "dev-dependencies", "build-dependencies"].map(|kind| table.get(kind)))
        .filter_map(|dependencies| dependencies.and_then(Value::as_table))
        .flatten()
        .filter(|(_, dependency)| dependency.get("path").is_none() && dependency.get("workspace").is_none())
        .map(|(name, dependency)| dependency.get("package").and_then(Value::as_str).unwrap_or(name))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(path: &str, manifest: &str) -> Vec<String> {
        let reasons = (REASONS, "| `serde` | values as JSON |\n");
        find(&Project::of(&[reasons, (path, manifest)])).into_iter().map(|violation| violation.what).collect()
    }

    #[test]
    fn a_dependency_without_a_reason_is_caught_in_the_workspace_and_in_a_crate() {
        assert_eq!(found("Cargo.toml", "[workspace.dependencies]\nrand = \"1\"\nserde = \"1\"\n").len(), 1);
        assert_eq!(found("crates/app/Cargo.toml", "[dev-dependencies]\nrand = \"1\"\n").len(), 1);
        assert_eq!(found("crates/app/Cargo.toml", "[dependencies]\nserde = { package = \"rand\" }\n").len(), 1);
    }

    #[test]
    fn crates_of_the_project_and_what_the_workspace_chose_need_none() {
        let manifest = "[dependencies]\ndwelling = { path = \"../dwelling\" }\nclap.workspace = true\nserde = \"1\"\n";
        assert_eq!(found("crates/app/Cargo.toml", manifest).len(), 0);
    }
}
