//! What could change a plan: what is not known, and prices.

use crate::by_its_rows;
use crate::rows::opening;
use crate::running::{file, list, number, text, thirdwire};
use serde_json::{Value, json};
use std::sync::OnceLock;

fn what_if(name: &str) -> Value {
    thirdwire(&["what-if", "--example", name, "--json"]).json()
}

/// The bungalow's answer, asked for once: it takes some hundred plans.
fn of_the_bungalow() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| by_its_rows::of("what-if", &["--json"]).json())
}

/// By hand: a GFCI receptacle outdoors costs 83.99. Where it cannot be reached quickly it is no place for one: a GFCI breaker
/// 58.00 + 28.50 and two labels with a plate, 9.62, are 96.12, 12.13 more.
#[test]
fn what_is_not_known_and_could_change_the_plan_tells_by_how_much() {
    let answer = of_the_bungalow();
    let unknown = &answer["unknowns"][0];
    assert_eq!((text(unknown, "/at"), text(unknown, "/id")), ("box", "Y-1"));
    assert_eq!(text(unknown, "/what"), "whether it can be reached quickly");
    assert_eq!((&unknown["worst_cents"], &unknown["best_cents"]), (&json!(1_213), &json!(0)));
    assert_eq!(list(answer, "/unknowns").len(), 1);
}

/// By hand: the same value written into the survey makes the plan that was told beforehand, 1,680.78 + 12.13.
#[test]
fn the_survey_with_the_value_written_in_costs_what_was_told() {
    let survey = by_its_rows::survey();
    let answered = survey.replace("id      = \"Y-1\"\n", "id      = \"Y-1\"\nreadily_accessible = false\n");
    assert_ne!(survey, answered);
    let plan = thirdwire(&["plan", &file("reached.toml", &answered), "--json"]).json();
    assert_eq!(number(&plan, "/totals/price/total_cents"), 168_078 + 1_213);
    assert_eq!(text(opening(&plan, "Y-1"), "/step"), "mark-protected");
}

/// By hand: at 43.50, a quarter less, a GFCI breaker with its work, 72.00, and two labels with a plate, 9.62, are 81.62:
/// 2.37 less than the GFCI receptacle outdoors, 83.99.
#[test]
fn a_price_that_changes_what_is_done_tells_how_far_it_may_move() {
    let answer = of_the_bungalow();
    let line = list(answer, "/prices").iter().find(|line| line["line"] == "breaker-gfci").unwrap();
    assert_eq!((&line["holds_from_percent"], &line["holds_to_percent"]), (&json!(0), &json!(50)));
    assert_eq!(line["moves"][1]["costs_more_cents"], -237);
    assert_eq!(answer["moved_by_percent"], json!([-50, -25, 25, 50]));
    let book = thirdwire(&["prices"]).out.replace("breaker-gfci         =   58.00", "breaker-gfci         =   43.50");
    let plan = by_its_rows::of("plan", &["--prices", &file("less.toml", &book), "--json"]).json();
    assert_eq!(number(&plan, "/totals/price/total_cents"), 168_078 - 237);
}

/// By hand: nothing in the bungalow is made of cable of 10 AWG, and no breaker of AFCI alone is made for its panel.
#[test]
fn lines_that_nothing_to_choose_from_costs_by_are_not_named() {
    let answer = of_the_bungalow();
    let named: Vec<&str> = list(answer, "/prices").iter().map(|line| text(line, "/line")).collect();
    let still: Vec<&str> = list(answer, "/prices_without_effect").iter().filter_map(Value::as_str).collect();
    for line in ["cable-10-ft", "breaker-afci", "aluminium-splice"] {
        assert!(!named.contains(&line) && !still.contains(&line), "{line}");
    }
    for line in ["breaker-dual-2p", "patch", "hour"] {
        assert!(still.contains(&line), "{line}");
    }
}

/// What could change most stands first, and each value's price lies between the best and the worst.
#[test]
fn the_most_deciding_unknown_stands_first() {
    for name in ["knob-and-tube", "flat"] {
        let answer = what_if(name);
        let worst: Vec<i64> = list(&answer, "/unknowns").iter().map(|one| number(one, "/worst_cents")).collect();
        assert!(!worst.is_empty() && worst.windows(2).all(|pair| pair[0] >= pair[1]), "{worst:?}");
        for one in list(&answer, "/unknowns") {
            for tried in list(one, "/values") {
                let cents = number(tried, "/costs_more_cents");
                assert!((number(one, "/best_cents")..=number(one, "/worst_cents")).contains(&cents));
            }
        }
    }
}

#[test]
fn the_page_says_what_was_tried_and_in_full_what_changes_nothing() {
    let said = thirdwire(&["what-if", "--example", "knob-and-tube"]);
    let page = said.out;
    assert_eq!(said.code, 3);
    assert!(page.contains("Each line of the price book was moved by -50 %, -25 %, +25 %, +50 %, one line at a time."));
    assert!(page.contains("box BA-1: whether it can be reached quickly\n      at worst $106.18 more"), "{page}");
    assert!(!page.contains("changes nothing: "));
    assert!(thirdwire(&["what-if", "--example", "knob-and-tube", "--full"]).out.contains("changes nothing: box "));
}

/// By hand: half as much again for a trip is 22.50 a day, 45.00 for the two days of 1,365.57 of work; contingency is then 5 % of
/// 1,500.57, 75.03; with the permit of 120.00 together 1,695.60, rounded up to 1,700.00: 50.00 more than 1,650.00.
#[test]
fn what_is_charged_besides_is_moved_too_and_tells_what_the_owner_pays() {
    let answer = what_if("knob-and-tube");
    assert_eq!(number(&answer, "/owner_cents"), 165_000);
    let charge = |name: &str| list(&answer, "/charges").iter().find(|one| one["line"] == name).unwrap().clone();
    let (trip, day) = (charge("trip"), charge("hours-a-day"));
    assert_eq!((text(&trip, "/table"), text(&day, "/table")), ("charges", "crew"));
    assert_eq!(number(&trip, "/moves/3/owner_costs_more_cents"), 5_000);
    assert_eq!(number(&trip, "/moves/3/costs_more_cents"), 0);
    assert!(list(&answer, "/prices").iter().any(|one| one["table"] == "conditions" && one["line"] == "plaster"));
    let page = thirdwire(&["what-if", "--example", "knob-and-tube"]).out;
    assert!(page.contains("it costs $1,365.57, $1,650.00 to the owner"), "{page}");
    assert!(page.contains("time under the condition plaster: what is done"), "{page}");
}
