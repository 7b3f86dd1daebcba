//! A circuit on which nobody knows what feeds what: what still fits, the test that tells most, and a plan that says what it
//! assumes.

use crate::running::{document, file, list, number, text, thirdwire};

const SURVEY: &str = "crates/app/tests/whole/unknown_order.toml";

/// The survey with something more written at its end.
fn with(name: &str, more: &str) -> String {
    file(name, &format!("{}\n{more}", document(SURVEY)))
}

/// By hand: four boxes and the panel have 5^3 = 125 trees. Those in which `L-2` lies behind `L-1` and `H-1` does
/// not, by what lies behind `L-1`: `L-2` alone, 1 tree, and 3 · 3 trees of `L-1` as an end, with `H-1`, `L-3` and the
/// panel; or `L-2` and `L-3`, 3 trees, and 2 · 1 trees of `L-1`, `H-1` and the panel: 1 · 9 + 3 · 2 = 15.
#[test]
fn findings_tell_how_many_orders_fit_and_the_share_of_each_run() {
    let answer = thirdwire(&["findings", SURVEY, "--json"]).json();
    assert_eq!(text(&answer, "/feeding/0/state"), "weighed");
    assert_eq!(number(&answer, "/feeding/0/orders_left"), 15);
    let runs = list(&answer, "/feeding/0/runs");
    for box_id in ["H-1", "L-1", "L-2", "L-3"] {
        let to_it = runs.iter().filter(|run| run["box"] == box_id);
        let shares: f64 = to_it.filter_map(|run| run["share"].as_f64()).sum();
        assert!((shares - 1.0).abs() < 1e-5, "{box_id}: {shares}");
    }
    assert!(runs.iter().all(|run| run["box"] != "L-2" || run["fed_by"] != "panel"), "it went dead with L-1 opened");
    assert!(!list(&answer, "/feeding/0/next/cautions").is_empty());
}

#[test]
fn the_plan_says_which_order_it_assumes_and_is_provisional_where_it_rests_on_it() {
    let answer = thirdwire(&["plan", SURVEY, "--json"]).json();
    assert_eq!(text(&answer, "/status"), "provisional");
    assert_eq!(answer["feeding"][0]["plan_rests_on_it"], true);
    assert!(text(&answer, "/feeding/0/says").ends_with("14 other orders fit"));
    let protected = list(&answer, "/openings").iter().filter(|opening| opening["step"] == "mark-protected");
    let questions: Vec<String> = protected.map(|opening| opening["open_questions"].to_string()).collect();
    assert!(!questions.is_empty(), "the cheapest plan protects openings from upstream");
    assert!(questions.iter().all(|asked| asked.contains("find out the feeding order")), "{questions:?}");
}

#[test]
fn the_plan_tells_what_other_orders_would_change() {
    let answer = thirdwire(&["plan", SURVEY, "--json"]).json();
    let others = list(&answer, "/feeding/0/otherwise");
    assert_eq!(others.len(), 2);
    let changing = others.iter().find(|other| !list(other, "/changes").is_empty());
    let Some(other) = changing else { panic!("one of the next orders changes the plan: {others:?}") };
    assert!(number(other, "/costs_more_cents") > 0, "a second home run takes a second device");
    let page = thirdwire(&["plan", SURVEY]).out;
    assert!(page.contains("Feeding order assumed") && page.contains("find out before you rely on the plan"), "{page}");
}

/// A ground that would arrive over an assumed run stays unknown: no order that is merely likely makes a ground.
#[test]
fn an_assumed_order_makes_no_ground() {
    let grounded = document(SURVEY).replace("cable = \"nm-two-wire\"", "cable = \"nm-with-ground\"");
    let grounded: String =
        grounded.lines().filter(|line| !line.starts_with("found")).map(|line| format!("{line}\n")).collect();
    let survey = file("order-with-ground.toml", &grounded);
    let answer = thirdwire(&["plan", &survey, "--json"]).json();
    assert!(
        list(&answer, "/openings").iter().all(|opening| opening["ground"] == "unknown" && opening["grounded"] == false)
    );
    assert_eq!(text(&answer, "/status"), "provisional");
}

#[test]
fn once_the_order_is_written_down_nothing_is_assumed() {
    let mut survey = document(SURVEY);
    for (at, feed) in [("H-1", "panel"), ("L-1", "H-1"), ("L-2", "L-1"), ("L-3", "L-2")] {
        survey = survey.replace(&format!("id = \"{at}\"\n"), &format!("id = \"{at}\"\nfed_by = \"{feed}\"\n"));
    }
    let survey = file("order-known.toml", &survey);
    let answer = thirdwire(&["plan", &survey, "--json"]).json();
    assert!(list(&answer, "/feeding").is_empty());
    let asked = answer["in_the_way"].to_string();
    assert!(!asked.contains("feeding order") && !asked.contains("load side feeds"), "{asked}");
    let assumed = thirdwire(&["plan", SURVEY, "--json"]).json();
    assert_eq!(answer["totals"]["price"], assumed["totals"]["price"], "it is the plan of the order that was assumed");
}

#[test]
fn what_contradicts_itself_is_shown_and_nothing_is_assumed_over_it() {
    let survey = with("order-clash.toml", "[[dead_when]]\nopened = \"L-2\"\ndead = [\"L-1\"]\n");
    let said = thirdwire(&["findings", &survey]);
    assert!(said.out.contains("cannot all be true"), "{}", said.out);
    assert!(said.out.contains("with `L-2` opened and its conductors apart: dead: `L-1`"), "{}", said.out);
    let answer = thirdwire(&["plan", &survey, "--json"]).json();
    assert!(list(&answer, "/feeding/0/assumed").is_empty());
    assert_ne!(text(&answer, "/status"), "complete");
    assert!(answer["in_the_way"].to_string().contains("contradicts itself"));
}

#[test]
fn a_plan_on_an_assumed_order_is_verified_against_its_survey() {
    let plan = file("order-plan.json", &thirdwire(&["plan", SURVEY, "--json"]).out);
    let said = thirdwire(&["verify", &plan, SURVEY, "--json"]);
    assert_eq!(said.json()["holds"], true, "{}", said.out);
}
