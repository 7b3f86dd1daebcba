//! A way that grounds of two sizes share is told stretch by stretch.

use crate::running::{list, thirdwire};

const SURVEY: &str = "crates/app/tests/whole/two_circuits_one_way.toml";

/// Published: NEC Table 250.122 and 250.122(C): one conductor for several circuits is sized for the largest breaker among
/// them: 12 AWG for 20 A as far as both share it, 14 AWG for 15 A beyond.
#[test]
fn what_two_circuits_share_is_as_large_as_the_larger_asks_on_the_page_and_in_json() {
    let page = thirdwire(&["plan", SURVEY]);
    assert!(page.out.contains("12 AWG, then 14 AWG ground, main → A"), "{}", page.out);
    assert!(page.out.contains("- 12 AWG: along the attic, 41 ft"), "{}", page.out);
    let answer = thirdwire(&["plan", SURVEY, "--json"]).json();
    let sizes: Vec<&str> = list(&answer, "/routes/0/legs").iter().filter_map(|leg| leg["size"].as_str()).collect();
    assert_eq!(sizes, ["12 AWG", "12 AWG", "14 AWG"]);
    assert_eq!(answer["routes"][1]["branches_from"], "to A");
}
