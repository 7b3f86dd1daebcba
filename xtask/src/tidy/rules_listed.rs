//! Every rule has its page and stands in the one list, and no page stands alone.

use super::Violation;
use super::project::Project;
use super::rust_text::{has_word, working_lines};

const RULES: &str = "crates/rulebook/src/rules/";
const LIST: &str = "crates/rulebook/src/rules/mod.rs";

/// The topic and the name of the rule in a file, if the file is a rule's or a rule page's.
pub fn rule_of<'a>(path: &'a str, ending: &str) -> Option<(&'a str, &'a str)> {
    let (topic, file) = path.strip_prefix(RULES)?.split_once('/')?;
    let name = file.strip_suffix(ending)?;
    (!name.contains('/') && name != "mod" && name != "tests").then_some((topic, name))
}

pub fn find(project: &Project) -> Vec<Violation> {
    let list = project.file(LIST);
    let list: String = list.iter().flat_map(working_lines).map(|(_, line)| format!("{line}\n")).collect();
    let mut found = Vec::new();
    for file in project.files() {
        if let Some((topic, name)) = rule_of(file.path, ".rs") {
            if !project.has_file(&format!("{RULES}{topic}/{name}.md")) {
                found.push(Violation::of_file(file.path, format!("the rule has no page `{name}.md` beside it")));
            }
            if !has_word(file.text, &format!("include_str!(\"{name}.md\")")) {
                found.push(Violation::of_file(file.path, format!("the rule does not show its page `{name}.md`")));
            }
            if !has_word(&list, &format!("{topic}::{name}::RULE")) {
                found.push(Violation::of_file(file.path, format!("`{topic}::{name}::RULE` is not in `{LIST}`")));
            }
        }
        if let Some((topic, name)) = rule_of(file.path, ".md") {
            if !project.has_file(&format!("{RULES}{topic}/{name}.rs")) {
                found.push(Violation::of_file(file.path, "a page without its rule"));
            }
            if file.text.trim().is_empty() {
                found.push(Violation::of_file(file.path, "an empty page"));
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    const RULE: (&str, &str) =
        ("crates/rulebook/src/rules/boxes/fill.rs", "//! Fill.\nconst PAGE: &str = include_str!(\"fill.md\");\n");
    const PAGE: (&str, &str) = ("crates/rulebook/src/rules/boxes/fill.md", "# Fill\n");
    const LISTED: (&str, &str) = (LIST, "//! List.\npub const RULES: &[Rule] = &[boxes::fill::RULE];\n");

    fn found(files: &[(&str, &str)]) -> Vec<String> {
        find(&Project::of(files)).into_iter().map(|violation| violation.what).collect()
    }

    #[test]
    fn a_rule_with_its_page_in_the_list_passes() {
        assert_eq!(found(&[RULE, PAGE, LISTED]), Vec::<String>::new());
    }

    #[test]
    fn a_rule_without_its_page_is_caught() {
        assert_eq!(found(&[RULE, LISTED]), ["the rule has no page `fill.md` beside it"]);
    }

    #[test]
    fn a_rule_that_does_not_show_its_page_is_caught() {
        assert_eq!(found(&[(RULE.0, "//! Fill.\n"), PAGE, LISTED]), ["the rule does not show its page `fill.md`"]);
    }

    #[test]
    fn a_rule_outside_the_list_is_caught_even_where_a_comment_names_it() {
        let list = (LIST, "//! List.\n// boxes::fill::RULE\npub const RULES: &[Rule] = &[boxes::refill::RULE];\n");
        assert_eq!(found(&[RULE, PAGE, list]).len(), 1);
    }

    #[test]
    fn a_page_without_its_rule_and_an_empty_page_are_caught() {
        assert_eq!(found(&[PAGE, LISTED]), ["a page without its rule"]);
        assert_eq!(found(&[RULE, (PAGE.0, "\n"), LISTED]), ["an empty page"]);
    }
}
