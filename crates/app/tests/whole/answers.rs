//! Answers held against the schemas that the program prints: every key that is needed, and no other.

use crate::by_its_rows;
use crate::running::{document, file, thirdwire, thirdwire_reading};
use serde_json::Value;

/// Holds the keys of a value and of all that is in it against a schema: those needed are there, others than known are not.
pub fn assert_keys(schema: &Value, at: &Value, value: &Value, place: &str) {
    let at = resolved(schema, at);
    match value {
        Value::Object(fields) => {
            if at["additionalProperties"].is_object() {
                // A map: its keys are names of the survey.
                for (key, field) in fields {
                    assert_keys(schema, &at["additionalProperties"], field, &format!("{place}/{key}"));
                }
                return;
            }
            let known = at["properties"].as_object();
            let Some(known) = known else { panic!("{place}: the schema knows no keys here: {at}") };
            for needed in at["required"].as_array().into_iter().flatten().filter_map(Value::as_str) {
                assert!(fields.contains_key(needed), "{place}: `{needed}` is missing");
            }
            for (key, field) in fields {
                let Some(property) = known.get(key) else { panic!("{place}: the schema knows no `{key}`") };
                assert_keys(schema, property, field, &format!("{place}/{key}"));
            }
        }
        Value::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                assert_keys(schema, &at["items"], item, &format!("{place}/{index}"));
            }
        }
        Value::String(name) => {
            let names = at["enum"].as_array();
            let single: Vec<&Value> = at["oneOf"].as_array().into_iter().flatten().map(|one| &one["const"]).collect();
            assert!(names.is_none_or(|names| names.iter().any(|known| known == name)), "{place}: `{name}`");
            assert!(single.is_empty() || single.iter().any(|known| *known == name), "{place}: `{name}`");
        }
        _ => {}
    }
}

/// The schema that a reference leads to; of a choice between something and null, the something.
fn resolved<'a>(schema: &'a Value, at: &'a Value) -> &'a Value {
    if let Some(path) = at["$ref"].as_str() {
        let found = schema.pointer(path.trim_start_matches('#'));
        return resolved(schema, found.unwrap_or_else(|| panic!("{path} leads nowhere")));
    }
    let choices = at["anyOf"].as_array();
    choices.and_then(|choices| choices.iter().find(|one| one["type"] != "null")).map_or(at, |one| resolved(schema, one))
}

#[test]
fn plans_have_the_keys_of_their_schema() {
    let schema = thirdwire(&["schema", "plan"]).json();
    for name in ["bungalow", "knob-and-tube", "flat"] {
        let answer = thirdwire(&["plan", "--example", name, "--json"]).json();
        assert_keys(&schema, &schema, &answer, name);
    }
}

#[test]
fn what_could_change_a_plan_has_the_keys_of_its_schema() {
    let schema = thirdwire(&["schema", "what-if"]).json();
    for name in ["knob-and-tube", "flat"] {
        let answer = thirdwire(&["what-if", "--example", name, "--json"]).json();
        assert_keys(&schema, &schema, &answer, name);
    }
}

#[test]
fn steered_plans_have_the_keys_of_their_schema() {
    let schema = thirdwire(&["schema", "plan"]).json();
    let flags = ["--ground", "K-4", "H-1", "--keep", "BA-1", "--no-open", "den", "--next-best", "--offers"];
    let answer = by_its_rows::of("plan", &[&["--json"], &flags[..]].concat()).json();
    assert_keys(&schema, &schema, &answer, "steered");
}

#[test]
fn findings_have_the_keys_of_their_schema() {
    let schema = thirdwire(&["schema", "findings"]).json();
    for name in ["bungalow", "knob-and-tube", "flat"] {
        let answer = thirdwire(&["findings", "--example", name, "--json"]).json();
        assert_keys(&schema, &schema, &answer, name);
    }
}

#[test]
fn trees_and_mistakes_have_the_keys_of_their_schemas() {
    let schema = thirdwire(&["schema", "circuits"]).json();
    for name in ["bungalow", "knob-and-tube", "flat"] {
        let answer = thirdwire(&["circuits", "--example", name, "--json"]).json();
        assert_keys(&schema, &schema, &answer, name);
    }
    let schema = thirdwire(&["schema", "mistakes"]).json();
    let wrong = thirdwire(&["plan", &file("no-format.toml", "[job]\nname = 3\n"), "--json"]);
    assert_eq!(wrong.code, 1);
    assert_keys(&schema, &schema, &wrong.json(), "mistakes");
}

#[test]
fn options_have_the_keys_of_their_schema() {
    let schema = thirdwire(&["schema", "options"]).json();
    for id in ["K-1", "L-3", "DN-2", "BA-1", "Y-1", "LA-1"] {
        let answer = thirdwire(&["options", "examples/bungalow.toml", id, "--json"]).json();
        assert_keys(&schema, &schema, &answer, id);
    }
    let unknown = thirdwire(&["options", "--edition", "2023", "--room", "unknown", "--json"]);
    assert_eq!(unknown.code, 3);
    assert_keys(&schema, &schema, &unknown.json(), "unknown");
}

#[test]
fn changes_between_editions_have_the_keys_of_their_schema() {
    let schema = thirdwire(&["schema", "editions"]).json();
    for name in ["bungalow", "knob-and-tube", "flat"] {
        let answer = thirdwire(&["editions", "--example", name, "--from", "2014", "--to", "2023", "--json"]).json();
        assert_keys(&schema, &schema, &answer, name);
        let boxes = thirdwire(&["plan", "--example", name, "--json"]).json()["openings"].as_array().unwrap().len();
        let changed = answer["openings"].as_array().unwrap().len();
        assert_eq!(answer["unchanged"], boxes - changed, "{name}");
    }
}

#[test]
fn checks_have_the_keys_of_their_schema() {
    let schema = thirdwire(&["schema", "checks"]).json();
    for name in ["bungalow", "knob-and-tube", "flat"] {
        for flag in ["--before", "--after"] {
            let answer = thirdwire(&["checks", "--example", name, flag, "--json"]).json();
            assert_keys(&schema, &schema, &answer, name);
        }
        let both = thirdwire(&["checks", "--example", name, "--json"]).json();
        assert_keys(&schema, &schema, &both, name);
    }
}

#[test]
fn sets_of_papers_have_the_keys_of_their_schema() {
    let schema = thirdwire(&["schema", "papers"]).json();
    let folder = format!("{}/papers-schema", env!("CARGO_TARGET_TMPDIR"));
    let answer = thirdwire(&["papers", "--example", "flat", "-o", &folder, "--json"]).json();
    assert_keys(&schema, &schema, &answer, "flat");
}

/// The check above would be worth nothing if it let a foreign or a missing key pass.
#[test]
fn a_key_that_is_missing_or_foreign_does_not_pass() {
    let schema = thirdwire(&["schema", "findings"]).json();
    let answer = thirdwire(&["findings", "--example", "flat", "--json"]).json();
    let mut foreign = answer.clone();
    foreign["findings"][0]["colour"] = "red".into();
    let mut missing = answer;
    missing["findings"][0].as_object_mut().unwrap().remove("says");
    for forged in [foreign, missing] {
        let outcome = std::panic::catch_unwind(|| assert_keys(&schema, &schema, &forged, ""));
        assert!(outcome.is_err());
    }
}

#[test]
fn circuits_say_what_feeds_what_and_what_one_ground_would_reach() {
    let answer = thirdwire(&["circuits", "--example", "bungalow", "--json"]).json();
    let set = &answer["trees"][0];
    assert_eq!((&set["circuits"], &set["multiwire"]), (&serde_json::json!(["1", "2"]), &true.into()));
    assert_eq!(set["feeds"]["K-1"], serde_json::json!(["K-2", "K-3"]));
    let tail = serde_json::json!(["B2-3", "DN-1", "DN-2", "DN-3", "DN-4"]);
    let groups = answer["bonded_groups"].as_array().unwrap();
    assert!(groups.iter().any(|group| group["boxes"] == tail), "{groups:?}");
}

#[test]
fn findings_alone_are_those_of_the_plan() {
    let alone = thirdwire(&["findings", "--example", "bungalow", "--json"]).json();
    let plan = thirdwire(&["plan", "--example", "bungalow", "--json"]).json();
    let of_boxes =
        plan["openings"].as_array().unwrap().iter().flat_map(|opening| opening["findings"].as_array().unwrap());
    let in_plan = plan["findings"].as_array().unwrap().iter().chain(of_boxes);
    let all = alone["findings"].as_array().unwrap();
    assert_eq!(in_plan.clone().count(), all.len());
    for finding in in_plan {
        assert!(all.contains(finding), "{finding}");
    }
    assert_eq!(alone["find_out"], plan["find_out"]);
}

#[test]
fn the_survey_schema_knows_every_key_of_the_examples() {
    let schema = thirdwire(&["schema"]).json();
    for table in ["panel", "circuit", "room", "box", "source", "route"] {
        assert!(schema["properties"][table].is_object(), "{table}");
    }
    let survey = document("examples/flat.toml");
    assert_eq!(thirdwire_reading(&["circuits", "-"], &survey).err, "");
}
