//! One's own prices.

use crate::running::{file, list, number, thirdwire, thirdwire_reading};

#[test]
fn the_printed_price_book_can_be_read_back() {
    let book = file("demo-prices.toml", &thirdwire(&["prices"]).out);
    let own = thirdwire(&["prices", "--prices", &book, "--json"]).json();
    let demo = thirdwire(&["prices", "--json"]).json();
    assert_eq!(own["material_cents"], demo["material_cents"]);
    assert_eq!(own["minutes"], demo["minutes"]);
    assert_eq!((&own["demo"], &demo["demo"]), (&false.into(), &true.into()));
}

/// By hand: R-fridge takes 35 min and 28 ft of 2 min: 55.42 + 28 × 3.17 = 144.18 at 95 dollars an hour, 110.83 + 28 × 6.33 =
/// 288.07 at 190; its material is 13.04 at either.
#[test]
fn an_hour_of_ones_own_changes_labour_and_leaves_material() {
    let book = file("dear-hour.toml", "format = 1\nhour = 190.00\n");
    let demo = thirdwire(&["plan", "--example", "bungalow", "--json"]).json();
    let own = thirdwire(&["plan", "--example", "bungalow", "--prices", &book, "--json"]).json();
    assert_eq!(own["totals"]["demo_prices"], false);
    for (plan, labour) in [(&demo, 14_418), (&own, 28_807)] {
        let fridge = list(plan, "/routes").iter().find(|route| route["id"] == "R-fridge").unwrap();
        assert_eq!(number(fridge, "/price/labour_cents"), labour);
        assert_eq!(number(fridge, "/price/material_cents"), 1_304);
    }
    assert!(number(&own, "/totals/price/total_cents") > number(&demo, "/totals/price/total_cents"));
    let page = thirdwire(&["plan", "--example", "bungalow", "--prices", &book]).out;
    assert!(!page.contains("invented demo figures"));
}

/// By hand: a dollar more for the two-pole breaker is a dollar more in all, since nothing else serves the kitchen's set for
/// so little: a single-pole breaker and a device beside the panel do not work on a shared neutral.
#[test]
fn a_dearer_breaker_without_a_stand_in_raises_the_total_by_its_rise() {
    let book = thirdwire(&["prices"]).out.replace("breaker-dual-2p      =  149.00", "breaker-dual-2p      =  150.00");
    let own = thirdwire_reading(&["plan", "--example", "bungalow", "--prices", "-", "--json"], &book).json();
    assert_eq!(number(&own, "/totals/price/total_cents"), 165_721 + 100);
}
