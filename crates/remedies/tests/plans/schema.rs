//! Every answer is what its published schema says it is.

use crate::generated::{Size, generated};
use estimate::PriceBook;
use remedies::{LawAnswer, PlanAnswer, Planned, plan_answer};
use serde_json::Value;

/// Where a value is not what a schema says. It knows the words of schemas that our answers use and refuses others.
fn faults(at: &str, value: &Value, schema: &Value, root: &Value) -> Vec<String> {
    let wrong = |what: String| vec![format!("{at}: {what}")];
    if let Some(whether) = schema.as_bool() {
        return if whether { Vec::new() } else { wrong("nothing may stand here".into()) };
    }
    let mut found = Vec::new();
    for (word, rule) in schema.as_object().unwrap() {
        match word.as_str() {
            "$ref" => {
                let path = rule.as_str().unwrap().strip_prefix('#').unwrap();
                found.extend(faults(at, value, root.pointer(path).unwrap(), root));
            }
            "type" => {
                let allowed: Vec<&str> = match rule {
                    Value::Array(names) => names.iter().map(|name| name.as_str().unwrap()).collect(),
                    name => vec![name.as_str().unwrap()],
                };
                let kinds: &[&str] = match value {
                    Value::Null => &["null"],
                    Value::Bool(_) => &["boolean"],
                    Value::Number(number) if number.is_f64() => &["number"],
                    Value::Number(_) => &["integer", "number"],
                    Value::String(_) => &["string"],
                    Value::Array(_) => &["array"],
                    Value::Object(_) => &["object"],
                };
                if !kinds.iter().any(|kind| allowed.contains(kind)) {
                    found.extend(wrong(format!("{value} is none of {allowed:?}")));
                }
            }
            "enum" if !rule.as_array().unwrap().contains(value) => {
                found.extend(wrong(format!("{value} is not in {rule}")))
            }
            "const" if rule != value => found.extend(wrong(format!("{value} is not {rule}"))),
            "anyOf" | "oneOf" => {
                let fits = |choice: &&Value| faults(at, value, choice, root).is_empty();
                if !rule.as_array().unwrap().iter().any(|choice| fits(&choice)) {
                    found.extend(wrong(format!("{value} is none of the choices")));
                }
            }
            "allOf" => rule.as_array().unwrap().iter().for_each(|part| found.extend(faults(at, value, part, root))),
            "required" => {
                let missing = rule.as_array().unwrap().iter().filter(|key| value.get(key.as_str().unwrap()).is_none());
                missing.for_each(|key| found.extend(wrong(format!("{key} is missing"))));
            }
            "properties" => {
                for (key, inner) in rule.as_object().unwrap() {
                    if let Some(value) = value.get(key) {
                        found.extend(faults(&format!("{at}.{key}"), value, inner, root));
                    }
                }
                let unnamed = value.as_object().into_iter().flatten().map(|(key, _)| key);
                unnamed.filter(|key| rule.get(key).is_none()).for_each(|key| {
                    found.extend(wrong(format!("`{key}` is not in the schema")));
                });
            }
            "items" => {
                for (index, value) in value.as_array().into_iter().flatten().enumerate() {
                    found.extend(faults(&format!("{at}[{index}]"), value, rule, root));
                }
            }
            "minimum" if value.is_number() && value.as_f64() < rule.as_f64() => {
                found.extend(wrong(format!("{value} is below {rule}")))
            }
            "maximum" if value.is_number() && value.as_f64() > rule.as_f64() => {
                found.extend(wrong(format!("{value} is above {rule}")))
            }
            "enum" | "const" | "minimum" | "maximum" | "description" | "title" | "$schema" | "$defs" | "format" => {}
            word => found.extend(wrong(format!("the schema says `{word}`, which this test does not know"))),
        }
    }
    found
}

#[test]
fn plans_are_what_their_schema_says() {
    let schema = serde_json::to_value(schemars::schema_for!(PlanAnswer)).unwrap();
    for seed in 0..300 {
        let (dwelling, code) = generated(3_000_000 + seed, Size { boxes: (3, 20), circuits: (1, 5), routes: (0, 8) });
        let plan = Planned::of(&dwelling, code, &PriceBook::demo()).unwrap();
        let answer = serde_json::to_value(plan_answer(&plan, &LawAnswer::of(&plan.facts.code), true)).unwrap();
        let faults = faults("plan", &answer, &schema, &schema);
        assert!(faults.is_empty(), "seed {seed}\n{}", faults.join("\n"));
    }
}

#[test]
fn a_value_that_its_schema_forbids_is_seen() {
    let schema = serde_json::to_value(schemars::schema_for!(PlanAnswer)).unwrap();
    let (dwelling, code) = generated(3_000_000, Size { boxes: (3, 3), circuits: (1, 1), routes: (0, 0) });
    let plan = Planned::of(&dwelling, code, &PriceBook::demo()).unwrap();
    let answer = serde_json::to_value(plan_answer(&plan, &LawAnswer::of(&plan.facts.code), true)).unwrap();
    for (key, value) in [("status", "splendid".into()), ("openings", 3.into()), ("unheard-of", true.into())] {
        let mut spoilt = answer.clone();
        spoilt[key] = value;
        assert!(!faults("plan", &spoilt, &schema, &schema).is_empty(), "{key}");
    }
}
