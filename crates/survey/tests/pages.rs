//! The pages for users and the schema are what the tables of the reader give.

use serde_json::Value;

#[test]
fn the_page_about_survey_files_is_the_one_the_tables_give() {
    assert_eq!(include_str!("../../../docs/survey-file.md"), survey::survey_page());
    assert_eq!(include_str!("../../../docs/local-code.md"), survey::local_code_page());
    assert_eq!(include_str!("../../../docs/practice-file.md"), survey::practice_page());
    assert_eq!(include_str!("../../../docs/price-book.md"), survey::prices_page());
}

#[test]
fn the_page_about_mistakes_is_the_one_the_kinds_give() {
    assert_eq!(include_str!("../../../docs/mistakes.md"), survey::mistakes_page());
}

#[test]
fn every_kind_of_mistake_has_its_own_code_in_kebab_case() {
    let mut codes: Vec<&str> = survey::KINDS.iter().map(|kind| kind.code).collect();
    assert!(codes.len() >= 45, "{}", codes.len());
    assert!(
        codes
            .iter()
            .all(|code| code.chars().all(|character| character.is_ascii_lowercase() || "-68".contains(character)))
    );
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), survey::KINDS.len());
}

#[test]
fn every_reference_in_the_schema_leads_to_a_description() {
    let schema = survey::schema();
    let mut open = vec![&schema];
    let mut references = 0;
    while let Some(value) = open.pop() {
        match value {
            Value::Object(members) => {
                if let Some(Value::String(reference)) = members.get("$ref") {
                    let name = reference.strip_prefix("#/$defs/").unwrap();
                    assert!(schema["$defs"][name].is_object(), "{reference}");
                    references += 1;
                }
                open.extend(members.values());
            }
            Value::Array(items) => open.extend(items),
            _ => {}
        }
    }
    assert!(references >= 12, "{references}");
}

#[test]
fn the_schema_lists_the_names_and_demands_what_the_reader_demands() {
    let schema = survey::schema();
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    assert_eq!(schema["required"], serde_json::json!(["format", "job", "room", "box"]));
    assert_eq!(schema["$defs"]["circuit"]["required"], serde_json::json!(["id", "panel"]));
    let uses: Vec<Value> = dwelling::RoomUse::NAMES.iter().map(|name| Value::from(*name)).collect();
    assert_eq!(schema["$defs"]["room"]["properties"]["use"]["enum"], Value::Array(uses));
}
