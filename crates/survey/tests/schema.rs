//! The JSON Schema and the reader agree: what one takes the other takes, and what one refuses the other refuses.

use serde_json::{Value, json};
use survey::{Format, read, schema};

const JSON: &str = include_str!("surveys/rich.json");

/// Whether a value is as a schema says, by the words that this schema uses; patterns are left out.
fn accepts(schema: &Value, root: &Value, value: &Value) -> bool {
    let Value::Object(words) = schema else { panic!("a schema is a table: {schema}") };
    words.iter().all(|(word, meant)| match word.as_str() {
        "$ref" => accepts(&root["$defs"][meant.as_str().unwrap_or("").trim_start_matches("#/$defs/")], root, value),
        "anyOf" => meant.as_array().is_some_and(|any| any.iter().any(|one| accepts(one, root, value))),
        "const" => value == meant,
        "enum" => meant.as_array().is_some_and(|names| names.contains(value)),
        "type" => match meant.as_str() {
            Some("object") => value.is_object(),
            Some("array") => value.is_array(),
            Some("string") => value.is_string(),
            Some("boolean") => value.is_boolean(),
            Some("integer") => value.is_i64(),
            Some("number") => value.is_number(),
            other => panic!("type {other:?}"),
        },
        "required" => {
            meant.as_array().is_some_and(|keys| keys.iter().all(|key| value.get(key.as_str().unwrap_or("")).is_some()))
        }
        "additionalProperties" => {
            value.as_object().is_none_or(|members| members.keys().all(|key| words["properties"].get(key).is_some()))
        }
        "properties" => value.as_object().is_none_or(|members| {
            members.iter().all(|(key, member)| meant.get(key).is_none_or(|property| accepts(property, root, member)))
        }),
        "items" => value.as_array().is_none_or(|items| items.iter().all(|item| accepts(meant, root, item))),
        "minItems" => value.as_array().is_none_or(|items| items.len() as u64 >= meant.as_u64().unwrap_or(0)),
        "maxItems" => value.as_array().is_none_or(|items| items.len() as u64 <= meant.as_u64().unwrap_or(0)),
        "uniqueItems" => {
            value.as_array().is_none_or(|items| items.iter().enumerate().all(|(at, item)| !items[..at].contains(item)))
        }
        "minLength" => value.as_str().is_none_or(|text| text.len() as u64 >= meant.as_u64().unwrap_or(0)),
        "minimum" => value.as_f64().is_none_or(|number| number >= meant.as_f64().unwrap_or(0.0)),
        "maximum" => value.as_f64().is_none_or(|number| number <= meant.as_f64().unwrap_or(0.0)),
        "pattern" | "description" | "title" | "$schema" | "$defs" => true,
        other => panic!("the schema uses the word {other}"),
    })
}

fn rich() -> Value {
    match serde_json::from_str(JSON) {
        Ok(value) => value,
        Err(error) => panic!("{error}"),
    }
}

/// Holds the reader and the schema against each other over one changed survey.
fn both_say(value: &Value, sound: bool, what: &str) {
    let schema = schema();
    assert_eq!(accepts(&schema, &schema, value), sound, "the schema: {what}");
    let found = read(value.to_string().as_bytes(), Format::Json);
    assert_eq!(found.dwelling.is_some(), sound, "the reader: {what}: {:?}", found.diagnostics.first());
}

#[test]
fn the_rich_survey_is_as_the_schema_says() {
    both_say(&rich(), true, "unchanged");
}

#[test]
fn what_the_reader_refuses_by_its_shape_the_schema_refuses() {
    let changes: [(&str, &str, Value); 12] = [
        ("/box/0", "heigth", json!("16 in")),
        ("/box/0", "room", json!(5)),
        ("/box/0", "holds", json!("tree-slot")),
        ("/box/0", "height", json!(16)),
        ("/box/0", "serves", json!("computer")),
        ("/box/0", "at", json!([1, 2, 3])),
        ("/box/0/body", "gangs", json!(11)),
        ("/box/0/run", "length", json!(14)),
        ("/box/1/found/0", "hn", json!(-1)),
        ("/room/0", "outline", json!([[0, 0], [1, 1]])),
        ("/job", "built", json!(1956.5)),
        ("", "format", json!(2)),
    ];
    for (place, key, value) in changes {
        let mut survey = rich();
        if let Some(table) = survey.pointer_mut(place) {
            table[key] = value.clone();
        }
        both_say(&survey, false, &format!("{place} {key} {value}"));
    }
}

#[test]
fn what_must_be_there_must_be_there_for_both() {
    for (place, key) in [
        ("", "format"),
        ("", "job"),
        ("", "room"),
        ("", "box"),
        ("/job", "name"),
        ("/circuit/0", "panel"),
        ("/box/0", "id"),
        ("/route/0", "length"),
    ] {
        let mut survey = rich();
        let table = survey.pointer_mut(place).and_then(Value::as_object_mut);
        assert!(table.is_some_and(|table| table.remove(key).is_some()), "{place} {key}");
        both_say(&survey, false, &format!("{place} without {key}"));
    }
}

#[test]
fn every_key_that_may_be_left_out_may_be_unknown_for_both() {
    let rich = rich();
    for key in rich["box"][1].as_object().map(|table| table.keys().cloned().collect::<Vec<_>>()).unwrap_or_default() {
        if key != "id" && key != "room" {
            let mut survey = rich.clone();
            survey["box"][1][&key] = json!("unknown");
            both_say(&survey, true, &key);
        }
    }
}
