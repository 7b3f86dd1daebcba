//! What can be offered side by side, and what a sum of money buys.

use crate::by_its_rows;
use crate::rows::opening;
use crate::running::{Said, list, number, text};
use serde_json::{Value, json};

fn planned(flags: &[&str]) -> Said {
    by_its_rows::of("plan", &[&["--json"], flags].concat())
}

fn offers() -> Value {
    planned(&["--offers"]).json()["offers"].clone()
}

/// By hand: R-living opens no wall and costs 181.14 where R-wall costs 138.01: 43.13 above 1,680.42. A ground for the
/// microwave costs 375.15 above it, as asking for it does, and that is all the routes of the survey reach.
#[test]
fn the_bungalow_has_three_offers_that_an_owner_can_tell_apart() {
    let offers = offers();
    let row = |offer: &Value| {
        format!(
            "{} | {} | {} grounded | {} walls | {} marked | {} days",
            text(offer, "/name"),
            number(offer, "/price/total_cents"),
            number(offer, "/grounded"),
            number(offer, "/wall_openings"),
            number(offer, "/markings"),
            number(offer, "/days"),
        )
    };
    // 770 and 797 min are two days begun of 480, 990 min three.
    assert_eq!(
        list(&offers, "/offers").iter().map(row).collect::<Vec<_>>(),
        [
            "Lawful, least money | 168042 | 7 grounded | 1 walls | 11 marked | 2 days",
            "No wall opened | 172355 | 7 grounded | 0 walls | 11 marked | 2 days",
            "All that can be grounded | 205557 | 8 grounded | 3 walls | 10 marked | 3 days",
        ]
    );
    assert_eq!(offers["complete"], true);
}

/// By hand: 205,557 − 172,355 = 33,202 for one opening more.
#[test]
fn each_step_up_tells_what_it_buys_and_what_an_opening_costs() {
    let offers = offers();
    assert_eq!(offers["offers"][0]["step_up"], Value::Null);
    let up = |costs: i64, grounds: Value, walls: i64, each: Value| {
        json!({ "costs_more_cents": costs, "grounds": grounds, "gives_up": [], "more_wall_openings": walls,
                "cents_per_opening": each })
    };
    assert_eq!(offers["offers"][1]["step_up"], up(4_313, json!([]), -1, Value::Null));
    assert_eq!(offers["offers"][2]["step_up"], up(33_202, json!(["K-4"]), 3, json!(33_202)));
}

/// By hand: of the routes to L-4 one opens a wall and one does not, and the route to K-4 can go with either: four plans, of
/// which none beats another: 1,680.42, 1,723.55, 2,055.57 with three walls, 2,098.70 with two.
#[test]
fn the_frontier_has_every_plan_that_no_other_beats() {
    let offers = offers();
    let points: Vec<(i64, i64)> = list(&offers, "/frontier")
        .iter()
        .map(|point| (number(point, "/total_cents"), number(point, "/wall_openings")))
        .collect();
    assert_eq!(points, [(168_042, 1), (172_355, 0), (205_557, 3), (209_870, 2)]);
}

/// By hand: the second offer opens no wall, 1,680.42 + 43.13 = 1,723.55.
#[test]
fn an_offer_that_is_picked_is_the_plan() {
    let first = planned(&[]).json();
    let second = planned(&["--offer", "2"]).json();
    assert_eq!(first["openings"], planned(&["--offers"]).json()["openings"]);
    assert_eq!(number(&second, "/totals/price/total_cents"), 172_355);
    assert_eq!(text(opening(&second, "L-4"), "/ground_by"), "R-living");
    assert_eq!(number(&second, "/offers/taken"), 2);
    let none = planned(&["--offer", "4"]);
    assert_eq!((none.code, none.err.as_str()), (2, "error: there is no offer 4; there are 3 offers\n"));
}

/// By hand: 2,055.57 fits into 2,100 and 2,098.70 too, with as much grounded for more money; 1,900 buys no ground more; for
/// 1,500 even the cheapest lawful whole lacks 180.42.
#[test]
fn a_budget_buys_the_most_grounds_and_says_what_is_missing() {
    for (budget, cents, left, had) in
        [("2100", 205_557, 4_443, true), ("$1,900.00", 168_042, 21_958, true), ("1500", 168_042, -18_042, false)]
    {
        let said = planned(&["--budget", budget]);
        let plan = said.json();
        assert_eq!(number(&plan, "/totals/price/total_cents"), cents, "{budget}");
        assert_eq!(number(&plan, "/steering/budget/left_cents"), left, "{budget}");
        assert_eq!(plan["steering"]["budget"]["had"], had, "{budget}");
        assert_eq!(said.code, if had { 0 } else { 3 }, "{budget}");
    }
    let page = by_its_rows::of("plan", &["--budget", "1500"]).out;
    assert!(
        page.contains("`--budget $1,500.00` cannot be had: the cheapest lawful whole costs $180.42 more"),
        "{page}"
    );
}

/// By hand: with a ground for K-4 laid down the frontier has two plans left, that with R-wall and that with R-living.
#[test]
fn offers_keep_to_what_was_laid_down() {
    let plan = planned(&["--ground", "K-4", "--offers"]).json();
    for offer in list(&plan, "/offers/frontier") {
        assert!(list(offer, "/grounded").contains(&json!("K-4")));
    }
    assert_eq!(list(&plan, "/offers/offers").len(), 2);
}

/// By hand: 1,680.42 + 43.13 = 1,723.55; 1,680.42 + 375.15 = 2,055.57; 2,055.57 − 1,723.55 = 332.02.
#[test]
fn the_page_puts_the_offers_side_by_side_and_no_weight_looks_like_money() {
    let page = by_its_rows::of("plan", &["--offers"]).out;
    let price = page.lines().find(|line| line.starts_with("  price")).unwrap_or_default();
    let prices: Vec<&str> = price.split_whitespace().skip(1).collect();
    assert_eq!(prices, ["$1,680.42", "$1,723.55", "$2,055.57"]);
    assert!(page.contains("2 → 3  $332.02 more; grounds K-4; $332.02 an opening; 3 wall openings more"));
    assert!(page.contains("Offer 1 in full; `--offer N` takes another."));
}
