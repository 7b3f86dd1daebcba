//! No rule uses another rule's file.

use super::Violation;
use super::project::Project;
use super::rules_listed::rule_of;
use super::rust_text::{has_word, imports, names, working_lines};
use std::collections::BTreeSet;

pub fn find(project: &Project) -> Vec<Violation> {
    let rules: BTreeSet<(&str, &str)> = project.rust_files().filter_map(|file| rule_of(file.path, ".rs")).collect();
    let mut found = Vec::new();
    for file in project.rust_files() {
        let Some((topic, own)) = rule_of(file.path, ".rs") else { continue };
        let lines = working_lines(&file);
        for (number, line) in &lines {
            if has_word(line, "crate::rules") || has_word(line, "super::super") {
                found.push(Violation::at(file.path, *number, "a rule reaches into the other rules"));
            }
            let siblings = rules.iter().filter(|(other, name)| *other == topic && *name != own);
            for (_, name) in siblings.filter(|(_, name)| has_word(line, &format!("super::{name}"))) {
                found.push(Violation::at(file.path, *number, format!("a rule uses the file of the rule `{name}`")));
            }
        }
        for (number, import) in imports(&lines).iter().filter(|(_, import)| import.contains("super::{")) {
            let siblings = rules.iter().filter(|(other, name)| *other == topic && *name != own);
            for (_, name) in siblings.filter(|(_, sibling)| names(import).any(|name| name == *sibling)) {
                found.push(Violation::at(file.path, *number, format!("a rule uses the file of the rule `{name}`")));
            }
        }
        for (number, import) in imports(&lines).iter().filter(|(_, import)| import.contains("crate::{")) {
            if names(import).any(|name| name == "rules") {
                found.push(Violation::at(file.path, *number, "a rule reaches into the other rules"));
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> usize {
        let beside = ("crates/rulebook/src/rules/boxes/volume.rs", "//! Volume.\n");
        find(&Project::of(&[("crates/rulebook/src/rules/boxes/fill.rs", text), beside])).len()
    }

    #[test]
    fn a_rule_that_uses_the_rule_beside_it_is_caught() {
        assert_eq!(found("//! Fill.\nuse super::volume::of;\n"), 1);
        assert_eq!(found("//! Fill.\nuse super::{volume, Topic};\n"), 1);
        assert_eq!(found("//! Fill.\nfn a() { super::volume::of(); }\n"), 1);
    }

    #[test]
    fn a_rule_that_uses_a_rule_of_another_topic_is_caught() {
        assert_eq!(found("//! Fill.\nuse crate::rules::replacement::afci;\n"), 1);
        assert_eq!(found("//! Fill.\nuse super::super::replacement::afci;\n"), 1);
        assert_eq!(found("//! Fill.\nuse crate::{\n    rules::replacement,\n};\n"), 1);
    }

    #[test]
    fn tables_and_types_that_all_rules_share_are_free() {
        assert_eq!(found("//! Fill.\nuse crate::tables::allowances;\nuse crate::{Rule, Says};\n"), 0);
    }
}
