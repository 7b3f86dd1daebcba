//! Plans as rows of text, so that a test can say in a line what happens at an opening.

use crate::running::{list, number, text};
use serde_json::Value;

/// What happens at an opening:
/// `box: step device box-work | remedy | protector | markings | ground | cents`.
pub fn opening_row(opening: &Value) -> String {
    let or_none = |key: &str| opening[key].as_str().unwrap_or("none").to_owned();
    let markings: Vec<&str> = list(opening, "/markings").iter().filter_map(Value::as_str).collect();
    let ground = match (opening["grounded"].as_bool(), opening["ground_by"].as_str()) {
        (Some(true), Some(route)) => format!("grounded by {route}"),
        (Some(true), None) => "grounded".to_owned(),
        _ => "ungrounded".to_owned(),
    };
    format!(
        "{}: {} {} {} | {} | {} | {} | {ground} | {}",
        text(opening, "/box"),
        text(opening, "/step"),
        text(opening, "/device"),
        text(opening, "/box_work"),
        or_none("remedy"),
        or_none("protected_by"),
        if markings.is_empty() { "no words".to_owned() } else { markings.join(" + ") },
        number(opening, "/price/total_cents"),
    )
}

/// What happens at the panel end of a circuit: `circuits: what | protects | cents`.
pub fn circuit_row(circuit: &Value) -> String {
    let joined = |key: &str| list(circuit, key).iter().filter_map(Value::as_str).collect::<Vec<_>>().join("+");
    let (circuits, protects) = (joined("/circuits"), joined("/protects"));
    format!("{circuits}: {} | {protects} | {}", text(circuit, "/at_panel"), number(circuit, "/price/total_cents"))
}

/// A route that is bought: `id: from → to, size | grounds | cents`.
pub fn route_row(route: &Value) -> String {
    let grounds: Vec<&str> = list(route, "/grounds").iter().filter_map(Value::as_str).collect();
    format!(
        "{}: {} → {}, {} | {} | {}",
        text(route, "/id"),
        text(route, "/from"),
        text(route, "/to"),
        text(route, "/size"),
        grounds.join(" "),
        number(route, "/price/total_cents"),
    )
}

/// A route that cannot be bought: `id: why [sections]`.
pub fn refused_row(route: &Value) -> String {
    let cites: Vec<&str> = list(route, "/cites").iter().filter_map(Value::as_str).collect();
    format!("{}: {} [{}]", text(route, "/id"), text(route, "/why"), cites.join(", "))
}

/// Holds the rows of a list against what is expected, one by one, none left over.
pub fn assert_rows(real: &[Value], row: fn(&Value) -> String, expected: &[&str]) {
    for (real, expected) in real.iter().zip(expected) {
        assert_eq!(row(real), *expected);
    }
    assert_eq!(real.len(), expected.len(), "rows: {:#?}", real.iter().map(row).collect::<Vec<_>>());
}

/// The opening of a plan.
pub fn opening<'a>(plan: &'a Value, id: &str) -> &'a Value {
    let found = list(plan, "/openings").iter().find(|opening| opening["box"] == id);
    found.unwrap_or_else(|| panic!("no opening {id}"))
}

/// The conditions found at an opening that someone can be hurt by.
pub fn dangers<'a>(plan: &'a Value, id: &str) -> Vec<&'a str> {
    let findings = list(opening(plan, id), "/findings").iter();
    findings.filter(|finding| finding["danger"] == true).map(|finding| text(finding, "/condition")).collect()
}
