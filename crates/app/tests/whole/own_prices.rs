//! One's own prices.

use crate::running::{file, number, thirdwire, thirdwire_reading};

#[test]
fn the_printed_price_book_can_be_read_back() {
    let book = file("demo-prices.toml", &thirdwire(&["prices"]).out);
    let own = thirdwire(&["prices", "--prices", &book, "--json"]).json();
    let demo = thirdwire(&["prices", "--json"]).json();
    assert_eq!(own["material_cents"], demo["material_cents"]);
    assert_eq!(own["minutes"], demo["minutes"]);
    assert_eq!((&own["demo"], &demo["demo"]), (&false.into(), &true.into()));
}

/// By hand: every minute at twice the rate. 82 min at 190 dollars are 259.67 against 129.83, and the parts still add up.
#[test]
fn an_hour_of_ones_own_changes_labour_and_leaves_material() {
    let book = file("dear-hour.toml", "format = 1\nhour = 190.00\n");
    let demo = thirdwire(&["plan", "--example", "bungalow", "--json"]).json();
    let own = thirdwire(&["plan", "--example", "bungalow", "--prices", &book, "--json"]).json();
    assert_eq!(own["totals"]["demo_prices"], false);
    assert!(number(&own, "/totals/price/total_cents") > number(&demo, "/totals/price/total_cents"));
    let page = thirdwire(&["plan", "--example", "bungalow", "--prices", &book]).out;
    assert!(!page.contains("invented demo figures"));
}

/// By hand: at 300.00 a two-pole breaker is dearer than any other way that the kitchen's set has, but there is no other: a
/// single-pole breaker and a device beside the panel do not work on a shared neutral. The total rises by 300.00 − 149.00.
#[test]
fn a_dearer_breaker_without_a_stand_in_raises_the_total_by_its_rise() {
    let book = thirdwire(&["prices"]).out.replace("breaker-dual-2p      =  149.00", "breaker-dual-2p      =  150.00");
    let own = thirdwire_reading(&["plan", "--example", "bungalow", "--prices", "-", "--json"], &book).json();
    assert_eq!(number(&own, "/totals/price/total_cents"), 163_842 + 100);
}
