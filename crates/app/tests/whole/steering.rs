//! What the owner lays down: grounds, boxes to keep, rooms not to open.

use crate::by_its_rows;
use crate::rows::{opening, opening_row};
use crate::running::{Said, list, number, text, thirdwire};
use serde_json::{Value, json};

fn steered(flags: &str) -> Said {
    let flags: Vec<&str> = ["--json"].into_iter().chain(flags.split_whitespace()).collect();
    by_its_rows::of("plan", &flags)
}

fn routes(plan: &Value) -> Vec<&str> {
    list(plan, "/routes").iter().map(|route| text(route, "/id")).collect()
}

/// By hand: R-counter is 14 × 0.33 + 2 × 1.90 + 2 × 6.00 = 20.42 and 118.75 + 2 × 63.33 = 245.41; together 265.83. The
/// microwave's box K-4 has a device, two cables, clamps and a ground for 12.5 in³ and is changed as L-4 is, 118.94, in place
/// of two labels and a plate, 9.62. 265.83 + 118.94 − 9.62 = 375.15 above 1,680.78.
#[test]
fn a_ground_that_is_asked_for_is_brought_and_its_price_above_the_plan_without_it_is_told() {
    let said = steered("--ground K-4");
    let plan = said.json();
    assert_eq!(said.code, 0);
    assert_eq!(opening(&plan, "K-4")["grounded"], true);
    assert!(routes(&plan).contains(&"R-counter"));
    assert_eq!(number(&plan, "/steering/costs_more_cents"), 37_515);
    assert_eq!(number(&plan, "/steering/unsteered/total_cents"), 168_078);
    assert_eq!(number(&plan, "/totals/price/total_cents"), 168_078 + 37_515);
    assert_eq!(number(&plan, "/steering/more_wall_openings"), 2);
    assert_eq!(plan["steering"]["wishes"], json!([{ "asked": "ground", "of": "K-4", "had": true, "why_not": [] }]));
}

/// By hand: D-2 gets a three-slot receptacle where it has two slots, as the survey asks. Kept, it is left; 44.09 is saved,
/// the receptacle with its plate, labels and work, and what the survey asks for is not given.
#[test]
fn a_box_that_is_kept_gives_up_what_the_survey_asks_for_and_says_so() {
    let said = steered("--keep D-2");
    let plan = said.json();
    assert_eq!(opening_row(opening(&plan, "D-2")).split(" | ").next(), Some("D-2: leave kept keep"));
    assert_eq!(number(&plan, "/steering/costs_more_cents"), -4_409);
    assert_eq!((said.code, text(&plan, "/status")), (3, "blocked"));
    assert_eq!(list(&plan, "/in_the_way").len(), 1);
}

/// The computer at L-4 needs a ground, for which its box has to be opened: it is not given up for a wish.
#[test]
fn a_wish_that_would_leave_equipment_without_its_ground_is_refused_and_the_rest_is_planned() {
    let said = steered("--keep L-4 --ground K-4");
    let plan = said.json();
    assert_eq!((said.code, text(&plan, "/status")), (3, "blocked"));
    let wishes = list(&plan, "/steering/wishes");
    assert_eq!((&wishes[0]["had"], &wishes[1]["had"]), (&json!(true), &json!(false)));
    let why_not = text(&wishes[1], "/why_not/0");
    assert!(why_not.starts_with("box L-4 would have no ground, and what is plugged in (computer, "), "{why_not}");
    assert!(text(&plan, "/in_the_way/0").starts_with("`--keep L-4` cannot be had: box L-4"));
    // What can be had is planned all the same.
    assert_eq!(opening(&plan, "K-4")["grounded"], true);
    assert_eq!(opening(&plan, "L-4")["grounded"], true);
}

/// By hand: the small box of L-4 is cut out, 4.20 and 45 minutes (71.25); where the room is not to be opened, a surface extension
/// sits on it, 18.50 and 40 minutes (63.33, in a sum of minutes that is rounded once).
#[test]
fn where_a_room_is_not_to_be_opened_a_surface_extension_takes_the_place_of_a_new_box() {
    let said = steered("--no-open living");
    let plan = said.json();
    assert_eq!(said.code, 0);
    assert_eq!(opening(&plan, "L-4")["box_work"], "extend");
    assert_eq!(opening(&plan, "L-4")["grounded"], true);
    let price = |plan: &Value| number(opening(plan, "L-4"), "/price/total_cents");
    let more = price(&plan) - price(&steered("").json());
    assert!((more - (1_850 + 6_333 - 420 - 7_125)).abs() <= 1, "{more}");
    // The way to it that opened the room's wall gives way to one that does not.
    assert!(routes(&plan).contains(&"R-living"));
}

/// By hand: a ground for K-4 opens two walls of the kitchen, or lands in a box that has to be cut out: one of the two wishes
/// can be had, and the one laid down first is.
#[test]
fn of_two_wishes_that_rule_each_other_out_the_second_is_refused_and_names_the_first() {
    let said = steered("--ground K-4 --keep K-4");
    let plan = said.json();
    assert_eq!(said.code, 3);
    assert_eq!(opening(&plan, "K-4")["grounded"], true);
    assert_eq!(
        list(&plan, "/in_the_way"),
        [json!("`--keep K-4` cannot be had: it cannot be had together with `--ground K-4`")]
    );
}

/// By hand: with the panel's place known the way to B2-3 passes below K-4, and a ground for K-4 branches off there. Its drop
/// is 2 ft 4 in, 3 × 0.33 + 1.90 + 3.60 = 6.49, and 28 min, 44.33: 50.82. The 9 ft to K-3 are 12 AWG, 0.99 more, and the 11 ft
/// beyond are two pieces: 4 ft of 12 AWG, 1.32 and 8 min, 12.67, and 7 ft of 14 AWG, 1.54 and 14 min, 22.17, 37.70 in place of
/// 37.25. The box is 118.94 in place of 9.62. 50.82 + 0.99 + 0.45 + 109.31 = 161.57.
#[test]
fn a_ground_that_is_asked_for_may_branch_off_a_way_that_is_built_anyway() {
    let plan = thirdwire(&["plan", "--example", "bungalow", "--json", "--ground", "K-4"]).json();
    assert_eq!(text(opening(&plan, "K-4"), "/ground_by"), "to K-4");
    assert_eq!(number(&plan, "/steering/costs_more_cents"), 16_157);
    assert_eq!(number(&plan, "/steering/more_wall_openings"), 0);
}

#[test]
fn a_ground_to_which_no_route_leads_says_so() {
    let said = steered("--ground H-1");
    let plan = said.json();
    assert_eq!(said.code, 3);
    assert!(
        text(&plan, "/in_the_way/0").contains("`--ground H-1` cannot be had: no route that can be bought leads there")
    );
    assert_eq!(number(&plan, "/steering/costs_more_cents"), 0);
}

/// By hand: of the den's two routes the plan without wishes takes the one that opens no wall, and no box of the den is cut out.
#[test]
fn a_wish_that_the_plan_meets_anyway_costs_nothing() {
    for flags in ["--no-open den", "--keep BA-1", "--ground L-4 DN-1"] {
        let said = steered(flags);
        let plan = said.json();
        assert_eq!((said.code, number(&plan, "/steering/costs_more_cents")), (0, 0), "{flags}");
        assert_eq!(number(&plan, "/totals/price/total_cents"), 168_078, "{flags}");
    }
}

/// A box of splices has no receptacle to ground, and its metal can be grounded all the same.
#[test]
fn a_box_without_a_receptacle_can_be_asked_to_be_grounded() {
    let plan = steered("--ground B2-3").json();
    assert_eq!(opening(&plan, "B2-3")["grounded"], true);
    assert_eq!(plan["steering"]["wishes"][0]["had"], true);
}

#[test]
fn every_id_that_the_survey_does_not_have_is_told_at_once_with_the_nearest() {
    let said = steered("--ground H-3 D-3 --keep K1 --no-open livng");
    assert_eq!((said.code, said.out.as_str()), (2, ""));
    let told: Vec<&str> = said.err.lines().collect();
    assert_eq!(
        told,
        [
            "error: `--ground H-3`: the survey has no box `H-3`; did you mean `K-3`?",
            "error: `--keep K1`: the survey has no box `K1`; did you mean `K-1`?",
            "error: `--no-open livng`: the survey has no room `livng`; did you mean `living`?",
        ]
    );
}

/// By hand: 265.83 + 118.94 − 9.62 = 375.15, as above.
#[test]
fn the_page_tells_what_was_asked_and_what_it_costs() {
    let page = by_its_rows::of("plan", &["--ground", "K-4"]).out;
    let line = page.lines().find(|line| line.starts_with("As you asked: ")).unwrap_or_default();
    assert!(line.contains("K-4 grounded. That costs $375.15 more than the plan without it"), "{line}");
    assert!(page.contains("No cheaper lawful whole that gives what you asked exists among what was offered."));
}
