//! Pure crates depend only on what their layer allows, and every crate says which kind it is.

use super::Violation;
use super::layers::{CRATES_THAT_TOUCH_THE_WORLD, PURE_CRATES, PureCrate};
use super::project::{File, Project};
use toml::{Table, Value};

pub fn find(project: &Project) -> Vec<Violation> {
    let workspace = project.file("Cargo.toml").and_then(|file| file.text.parse::<Table>().ok()).unwrap_or_default();
    let mut found = Vec::new();
    for file in project.files() {
        let Some(folder) = crate_folder(file.path) else { continue };
        if CRATES_THAT_TOUCH_THE_WORLD.contains(&folder) {
            continue;
        }
        match PURE_CRATES.iter().find(|pure| pure.name == folder) {
            Some(pure) => check_manifest(&file, pure, &workspace, &mut found),
            None => found.push(Violation::of_file(
                file.path,
                "this crate is in no layer: say in `xtask/src/tidy/layers.rs` whether it is pure and what it may use",
            )),
        }
    }
    found
}

/// The folder of a crate below `crates/`, for the path of its manifest.
fn crate_folder(path: &str) -> Option<&str> {
    let folder = path.strip_prefix("crates/")?.strip_suffix("/Cargo.toml")?;
    (!folder.contains('/')).then_some(folder)
}

fn check_manifest(file: &File<'_>, pure: &PureCrate, workspace: &Table, found: &mut Vec<Violation>) {
    let manifest = match file.text.parse::<Table>() {
        Ok(manifest) => manifest,
        Err(error) => return found.push(Violation::of_file(file.path, format!("cannot be read: {}", error.message()))),
    };
    for (key, dependency) in dependencies(&manifest) {
        let name = package_name(key, dependency, workspace);
        if !pure.ours.contains(&name) && !pure.others.contains(&name) {
            let what = format!("`{}` may not depend on `{name}`: see `xtask/src/tidy/layers.rs`", pure.name);
            found.push(Violation::of_file(file.path, what));
        }
    }
}

/// Every dependency of the working code and of a build script, those for one target alone too. Tests are free.
fn dependencies(manifest: &Table) -> Vec<(&str, &Value)> {
    let targets = manifest.get("target").and_then(Value::as_table).into_iter().flat_map(Table::values);
    let tables = std::iter::once(manifest).chain(targets.filter_map(Value::as_table));
    tables
        .flat_map(|table| ["dependencies", "build-dependencies"].map(|kind| table.get(kind).and_then(Value::as_table)))
        .flatten()
        .flat_map(|dependencies| dependencies.iter().map(|(key, dependency)| (key.as_str(), dependency)))
        .collect()
}

/// The crate behind a dependency, which may be used under another name.
fn package_name<'a>(key: &'a str, dependency: &'a Value, workspace: &'a Table) -> &'a str {
    let inherited = dependency.get("workspace").and_then(Value::as_bool) == Some(true);
    let shared = || workspace.get("workspace")?.get("dependencies")?.get(key)?.get("package");
    let package = if inherited { shared() } else { dependency.get("package") };
    package.and_then(Value::as_str).unwrap_or(key)
}

#[cfg(test)]
mod tests {
    use super::*;

    const WORKSPACE: (&str, &str) =
        ("Cargo.toml", "[workspace.dependencies]\nquiet = { package = \"rand\", version = \"1\" }\n");

    fn found(path: &str, manifest: &str) -> Vec<String> {
        find(&Project::of(&[WORKSPACE, (path, manifest)])).into_iter().map(|violation| violation.what).collect()
    }

    #[test]
    fn a_pure_crate_that_uses_a_crate_of_others_off_the_list_is_caught() {
        let found = found("crates/dwelling/Cargo.toml", "[dependencies]\nrand = \"1\"\nserde = \"1\"\n");
        assert_eq!(found.len(), 1);
        assert!(found[0].contains("`dwelling` may not depend on `rand`"), "{found:?}");
    }

    #[test]
    fn a_lower_crate_that_uses_a_higher_one_is_caught() {
        assert_eq!(found("crates/dwelling/Cargo.toml", "[dependencies]\nrulebook.workspace = true\n").len(), 1);
        assert_eq!(found("crates/rulebook/Cargo.toml", "[dependencies]\ndwelling.workspace = true\n").len(), 0);
        assert_eq!(found("crates/optimizer/Cargo.toml", "[dependencies]\nelectrical.workspace = true\n").len(), 1);
    }

    #[test]
    fn another_name_does_not_hide_a_crate() {
        let manifest = "[dependencies]\nserde = { package = \"rand\", version = \"1\" }\n";
        assert_eq!(found("crates/survey/Cargo.toml", manifest).len(), 1);
        assert_eq!(found("crates/survey/Cargo.toml", "[dependencies]\nquiet.workspace = true\n").len(), 1);
    }

    #[test]
    fn a_dependency_for_one_target_or_for_the_build_counts() {
        let manifest = "[target.'cfg(unix)'.dependencies]\nlibc = \"1\"\n[build-dependencies]\ncc = \"1\"\n";
        assert_eq!(found("crates/estimate/Cargo.toml", manifest).len(), 2);
    }

    #[test]
    fn tests_may_use_what_they_like() {
        assert_eq!(found("crates/optimizer/Cargo.toml", "[dev-dependencies]\nproptest = \"1\"\n").len(), 0);
    }

    #[test]
    fn a_crate_in_no_layer_is_caught() {
        assert_eq!(found("crates/weather/Cargo.toml", "[dependencies]\n").len(), 1);
        assert_eq!(found("crates/app/Cargo.toml", "[dependencies]\nrand = \"1\"\n").len(), 0);
    }
}
