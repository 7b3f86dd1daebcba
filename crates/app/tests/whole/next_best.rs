//! The next best at an opening, as the program tells it.

use crate::running::{list, text, thirdwire};
use serde_json::{Value, json};

fn next_of(id: &str) -> Value {
    let plan = thirdwire(&["plan", "--example", "bungalow", "--next-best", "--json"]).json();
    let found = list(&plan, "/next_best").iter().find(|next| next["box"] == id);
    found.unwrap_or_else(|| panic!("no next best at {id}")).clone()
}

/// By hand: a GFCI receptacle 24.00, its plate 1.10, a label 0.30, 31.67 to fit and 7.92 to test are 64.99; the plate, the two
/// labels and the test of the plan are 9.62. The breaker stays for the rest of the set: 64.99 − 9.62 = 55.37.
#[test]
fn the_next_best_tells_what_the_whole_would_cost_more() {
    let next = next_of("K-1");
    assert_eq!(text(&next, "/instead"), "a GFCI receptacle");
    assert_eq!(next["costs_more_cents"], 5_537);
    assert_eq!((&next["falls_short"], &next["elsewhere"]), (&json!([]), &json!([])));
    assert_eq!(next["exact"], true);
}

/// By hand: without the breaker of circuit 3, 94.50, L-2 gets a GFCI/AFCI receptacle with its load side in use and a new
/// box, 184.44, in place of 9.62: 184.44 − 9.62 − 94.50 = 80.32.
#[test]
fn what_would_change_elsewhere_is_told_with_it() {
    let next = next_of("L-2");
    assert_eq!(next["costs_more_cents"], 8_032);
    assert_eq!(next["elsewhere"], json!(["circuit 3: as it is at the panel instead of a GFCI/AFCI breaker"]));
}

/// The computer at L-4 needs a ground: what gives none has no price, however little it would cost.
#[test]
fn a_next_best_without_the_ground_that_is_needed_has_no_price() {
    let next = next_of("L-4");
    assert_eq!(next["costs_more_cents"], Value::Null);
    assert!(text(&next, "/falls_short/0").starts_with("box L-4 would have no ground"));
    let page = thirdwire(&["why", "--example", "bungalow", "L-4"]).out;
    let told = page.split("6. What else could be done").nth(1).unwrap_or_default();
    assert!(told.contains("which has no price") && !told.contains('$'), "{told}");
}

#[test]
fn why_tells_the_same_next_best_as_the_plan_and_a_plan_tells_none_unasked() {
    for id in ["K-1", "L-2", "L-4"] {
        assert_eq!(thirdwire(&["why", "--example", "bungalow", id, "--json"]).json()["next_best"], next_of(id));
    }
    assert_eq!(thirdwire(&["why", "--example", "bungalow", "L-5", "--json"]).json()["next_best"], Value::Null);
    assert_eq!(thirdwire(&["plan", "--example", "bungalow", "--json"]).json()["next_best"], Value::Null);
}

/// No weight by which shortfalls are ranked ever looks like money: no sum is above a hundred thousand dollars.
#[test]
fn no_weight_is_printed_as_a_price() {
    for name in ["bungalow", "knob-and-tube", "flat"] {
        let plan = thirdwire(&["plan", "--example", name, "--next-best", "--json"]).json();
        for next in list(&plan, "/next_best") {
            let more = next["costs_more_cents"].as_i64();
            assert!(more.is_none_or(|more| more.abs() < 10_000_000), "{next}");
        }
    }
}
