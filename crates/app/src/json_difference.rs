//! What differs between two JSON values, place by place.

use serde_json::Value;
use std::collections::BTreeSet;

/// A place at which two values differ.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// The place, such as `/openings/3/price/total_cents`.
    pub at: String,
    /// What it is about: the nearest box, circuit or other id above it.
    pub of: Option<String>,
    /// The left value as JSON; `nothing` where there is none.
    pub left: String,
    /// The right value as JSON.
    pub right: String,
}

/// Every place at which two values differ, those below a difference of kind left out.
#[must_use]
pub fn differences(left: &Value, right: &Value) -> Vec<Difference> {
    let mut found = Vec::new();
    compare(Some(left), Some(right), "", None, &mut found);
    found
}

fn compare(left: Option<&Value>, right: Option<&Value>, at: &str, of: Option<&str>, found: &mut Vec<Difference>) {
    match (left, right) {
        (Some(Value::Object(these)), Some(Value::Object(those))) => {
            let of = [left, right].into_iter().flatten().find_map(id_of).or(of);
            for key in these.keys().chain(those.keys().filter(|key| !these.contains_key(*key))) {
                compare(these.get(key), those.get(key), &format!("{at}/{key}"), of, found);
            }
        }
        (Some(Value::Array(these)), Some(Value::Array(those))) if have_ids(these) && have_ids(those) => {
            let among = |list: &[Value], id: &str| list.iter().position(|one| id_of(one) == Some(id));
            for (index, one) in these.iter().enumerate() {
                let other = id_of(one).and_then(|id| among(those, id)).map(|position| &those[position]);
                compare(Some(one), other, &format!("{at}/{index}"), of, found);
            }
            let new = those.iter().filter(|one| id_of(one).is_none_or(|id| among(these, id).is_none()));
            for one in new {
                compare(None, Some(one), &format!("{at}/{}", these.len()), of, found);
            }
            let in_order = these.len() != those.len() || these.iter().map(id_of).eq(those.iter().map(id_of));
            if found.is_empty() && !in_order {
                let order = |list: &[Value]| Value::from(list.iter().filter_map(id_of).collect::<Vec<_>>()).to_string();
                let of = of.map(str::to_owned);
                found.push(Difference { at: at.to_owned(), of, left: order(these), right: order(those) });
            }
        }
        (Some(Value::Array(these)), Some(Value::Array(those))) if these.len() == those.len() => {
            for index in 0..these.len() {
                compare(these.get(index), those.get(index), &format!("{at}/{index}"), of, found);
            }
        }
        (left, right) if left == right => {}
        (left, right) => {
            let text = |value: Option<&Value>| value.map_or_else(|| "nothing".to_owned(), Value::to_string);
            let of = of.or_else(|| [left, right].into_iter().flatten().find_map(id_of)).map(str::to_owned);
            found.push(Difference { at: at.to_owned(), of, left: text(left), right: text(right) });
        }
    }
}

/// Whether every item of a list has an id of its own, by which the lists are held side by side.
fn have_ids(list: &[Value]) -> bool {
    let ids: BTreeSet<&str> = list.iter().filter_map(id_of).collect();
    !list.is_empty() && ids.len() == list.len()
}

fn id_of(value: &Value) -> Option<&str> {
    ["box", "id"].iter().find_map(|key| value.get(key)?.as_str())
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn equal_values_do_not_differ_in_whatever_order_their_keys_stand() {
        assert_eq!(differences(&json!({ "a": 1, "b": [1, 2] }), &json!({ "b": [1, 2], "a": 1 })), []);
    }

    #[test]
    fn lists_are_held_side_by_side_by_their_ids() {
        let left = json!([{ "id": "b", "x": 1 }, { "id": "c", "x": 2 }]);
        let right = json!([{ "id": "a", "x": 0 }, { "id": "b", "x": 1 }, { "id": "c", "x": 3 }]);
        let found = differences(&left, &right);
        let told: Vec<_> = found.iter().map(|one| (one.at.as_str(), one.of.as_deref())).collect();
        assert_eq!(told, [("/1/x", Some("c")), ("/2", Some("a"))]);
        let turned = json!([{ "id": "c", "x": 2 }, { "id": "b", "x": 1 }]);
        assert_eq!(differences(&left, &turned).len(), 1);
        assert_eq!(differences(&json!(["a", "b"]), &json!(["b"])).len(), 1);
    }

    #[test]
    fn a_difference_is_told_with_its_place_and_the_box_it_is_about() {
        let left = json!({ "openings": [{ "box": "K-1", "price": { "cents": 5 } }] });
        let right = json!({ "openings": [{ "box": "K-1", "price": { "cents": 6 } }, { "box": "K-2" }] });
        let found = differences(&left, &right);
        let told = |one: &Difference| (one.at.clone(), one.of.clone(), one.left.clone(), one.right.clone());
        let told: Vec<_> = found.iter().map(told).collect();
        let text = str::to_owned;
        assert_eq!(
            told,
            [
                (text("/openings/0/price/cents"), Some(text("K-1")), text("5"), text("6")),
                (text("/openings/1"), Some(text("K-2")), text("nothing"), text(r#"{"box":"K-2"}"#)),
            ]
        );
    }
}
