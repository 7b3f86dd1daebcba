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

/// By hand: R-living opens no wall and costs 181.26 where R-wall costs 138.00: 43.26 above 1,680.78. A ground for the
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
    // 770 and 797 min are two days begun of 420, 990 min three.
    assert_eq!(
        list(&offers, "/offers").iter().map(row).collect::<Vec<_>>(),
        [
            "Lawful, least money | 168078 | 7 grounded | 1 walls | 11 marked | 2 days",
            "No wall opened | 172404 | 7 grounded | 0 walls | 11 marked | 2 days",
            "All that can be grounded | 205593 | 8 grounded | 3 walls | 10 marked | 3 days",
        ]
    );
    assert_eq!(offers["complete"], true);
}

/// By hand: material and labour rise by 205,593 − 172,404 = 33,189 for one opening more. The owner pays 45 a day for trips, 5 % of
/// all that, and 120 for the permit, rounded up to 10: 1,680.78 + 90 + 88.54 + 120 → 1,980; 1,724.04 + 90 + 90.70 + 120 → 2,030;
/// 2,055.93 + 135 + 109.55 + 120 → 2,430.
#[test]
fn each_step_up_tells_what_it_buys_and_what_an_opening_costs() {
    let offers = offers();
    assert_eq!(offers["offers"][0]["step_up"], Value::Null);
    let up = |costs: i64, owner: i64, grounds: Value, walls: i64, each: Value| {
        json!({ "costs_more_cents": costs, "owner_costs_more_cents": owner, "grounds": grounds, "gives_up": [], "more_wall_openings": walls,
                "cents_per_opening": each })
    };
    assert_eq!(offers["offers"][1]["step_up"], up(4_326, 5_000, json!([]), -1, Value::Null));
    assert_eq!(offers["offers"][2]["step_up"], up(33_189, 40_000, json!(["K-4"]), 3, json!(40_000)));
}

/// By hand: of the routes to L-4 one opens a wall and one does not, and the route to K-4 can go with either: four plans, of
/// which none beats another: 1,680.78, 1,724.04, 2,055.93 with three walls, 2,099.19 with two.
#[test]
fn the_frontier_has_every_plan_that_no_other_beats() {
    let offers = offers();
    let points: Vec<(i64, i64)> = list(&offers, "/frontier")
        .iter()
        .map(|point| (number(point, "/total_cents"), number(point, "/wall_openings")))
        .collect();
    assert_eq!(points, [(168_078, 1), (172_404, 0), (205_593, 3), (209_919, 2)]);
}

/// By hand: the second offer opens no wall, 1,680.78 + 43.26 = 1,724.04.
#[test]
fn an_offer_that_is_picked_is_the_plan() {
    let first = planned(&[]).json();
    let second = planned(&["--offer", "2"]).json();
    assert_eq!(first["openings"], planned(&["--offers"]).json()["openings"]);
    assert_eq!(number(&second, "/totals/price/total_cents"), 172_404);
    assert_eq!(text(opening(&second, "L-4"), "/ground_by"), "R-living");
    assert_eq!(number(&second, "/offers/taken"), 2);
    let none = planned(&["--offer", "4"]);
    assert_eq!((none.code, none.err.as_str()), (2, "error: there is no offer 4; there are 3 offers\n"));
}

/// By hand: of the three, the second opens no wall and the third grounds the most; L-4 with its computer is grounded by all three,
/// so that the cheapest with grounds for electronics is the first.
#[test]
fn an_offer_is_picked_by_its_name_as_by_its_number() {
    for (name, taken) in [
        ("least-money", 1),
        ("electronics", 1),
        ("fewest-walls", 2),
        ("No wall opened", 2),
        ("least-disturbance", 2),
        ("most-grounds", 3),
    ] {
        let plan = planned(&["--offer", name]).json();
        assert_eq!(number(&plan, "/offers/taken"), taken, "{name}");
    }
    assert_eq!(planned(&["--offer", "fewest-walls"]).json(), planned(&["--offer", "2"]).json());
    let slip = planned(&["--offer", "fewest-wals"]);
    assert!(slip.code == 2 && slip.err.contains("did you mean `fewest-walls`?"), "{}", slip.err);
}

/// By hand: the owner's prices are 1,980, 2,030, 2,430, and for the fourth plan 2,099.19 + 135 + 111.71 + 120 → 2,470. Both of the
/// last fit into 2,500, the one with as much grounded for more money; 2,200 buys no ground more; for 1,500 even the cheapest
/// lawful whole lacks 480.
#[test]
fn a_budget_buys_the_most_grounds_and_says_what_is_missing() {
    for (budget, cents, left, had) in
        [("2500", 205_593, 7_000, true), ("$2,200.00", 168_078, 22_000, true), ("1500", 168_078, -48_000, false)]
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
        page.contains("`--budget $1,500.00` cannot be had: the cheapest lawful whole costs $480.00 more"),
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

/// By hand: the owner's prices as above; 2,430 − 2,030 = 400.
#[test]
fn the_page_puts_the_offers_side_by_side_and_no_weight_looks_like_money() {
    let page = by_its_rows::of("plan", &["--offers"]).out;
    let price = page.lines().find(|line| line.starts_with("  price")).unwrap_or_default();
    let prices: Vec<&str> = price.split_whitespace().skip(1).collect();
    assert_eq!(prices, ["$1,980.00", "$2,030.00", "$2,430.00"]);
    assert!(page.contains("2 → 3  $400.00 more; grounds K-4; $400.00 an opening; 3 wall openings more"));
    let another = "Offer 1 in full; `--offer` takes another, by name or number: least-money (1), fewest-walls (2),";
    assert!(page.split_whitespace().collect::<Vec<_>>().join(" ").contains(another), "{page}");
}
