//! The plan of the knob-and-tube house, opening by opening, each with its reason.

use crate::rows::{assert_rows, circuit_row, dangers, opening, opening_row, refused_row, route_row};
use crate::running::{Said, list, number, thirdwire};
use serde_json::Value;

fn planned() -> Said {
    thirdwire(&["plan", "--example", "knob-and-tube", "--json"])
}

fn plan() -> Value {
    planned().json()
}

/// By hand: for each task its minutes × 95 dollars / 60, rounded half up: 5 min are 7.92, 8 are 12.67, 10 are 15.83, 12 are 19.00,
/// 20 are 31.67, 45 are 71.25.
/// - `P-2`: 1.70 and 7.92; together 9.62.
/// - `P-3`: box 4.20, three-slot 2.80, plate 1.10 are 8.10; 71.25 + 31.67 + 7.92 = 110.84; together 118.94.
/// - `K-1`: GFCI/AFCI 49.00, plate 1.10, label 0.30 are 50.40; 31.67 + 7.92 + 19.00 = 58.59; together 108.99.
/// - `K-2` and `C-1`: fittings 1.90; 12.67 + 7.92 = 20.59; together 22.49.
/// - `B1-2`: 50.40 and a box 4.20 are 54.60; 71.25 + 31.67 + 7.92 + 19.00 = 129.84; together 184.44.
/// - `B2-2`: fittings 1.90; 12.67 + 7.92, the jumper 15.83 and polarity 12.67 are 49.09; together 50.99.
/// - `BA-1`: GFCI 24.00, plate, label and box 5.60 are 29.60; 71.25 + 31.67 + 7.92 = 110.84; together 140.44.
#[test]
fn every_opening_of_the_knob_and_tube_house_gets_what_the_facts_and_the_prices_ask_for() {
    let plan = plan();
    assert_rows(
        list(&plan, "/openings"),
        opening_row,
        &[
            "P-1: leave kept keep | leave | panel fuses: dead-front-dual | no words | ungrounded | 0",
            "P-2: mark-protected kept keep | gfci-breaker | panel fuses: dead-front-dual | GFCI Protected + No Equipment Ground | ungrounded | 962",
            // A computer needs a real ground. The armor of the stub is none: it has no bonding strip, and 118 V under a
            // high-impedance meter prove nothing. 4.5 + 2.25 + 4.5 + 2 are 13.25 in³ in 12.5: a new box.
            "P-3: connect-fitted three-slot replace | separate-egc | panel fuses: dead-front-dual | no words | grounded by to P-3 | 11894",
            "DI-1: leave kept keep | leave | panel fuses: dead-front-dual | no words | ungrounded | 0",
            // The box must not be touched: protection from the panel and words on a new plate need no conductor moved.
            "DI-2: mark-protected kept keep | gfci-breaker | panel fuses: dead-front-dual | GFCI Protected + No Equipment Ground | ungrounded | 962",
            // Countertop and kitchen: GFCI and AFCI. 6 × 2.25 + 4.5 are 18 in³ of 21, so that a device here is cheaper
            // than one beside the panel (159.08), and its load side protects the basement too.
            "K-1: fit-gfci dual keep | gfci-receptacle | itself | No Equipment Ground | ungrounded | 10899",
            // A refrigerator: a real ground. 4.5 + 4.5 + 2.25 are 11.25 in³ of 12.5.
            "K-2: connect-kept kept keep | separate-egc | box K-1 | no words | grounded by to K-2 | 2249",
            "B1-1: leave kept keep | leave | none | no words | ungrounded | 0",
            // The owner asks for three slots. 4 × 2.25 + 4.5 are 13.5 in³ in 12.5: a new box whatever is fitted, and then
            // a GFCI/AFCI receptacle (184.44) gives the bedroom behind it AFCI protection as well.
            "B1-2: fit-gfci dual replace | gfci-receptacle | itself | No Equipment Ground | ungrounded | 18444",
            "B2-1: leave kept keep | leave | box B1-2 | no words | ungrounded | 0",
            // An air conditioner: a real ground (250.114(3)). The jumper comes out and hot and neutral are put right.
            // 4.5 + 4.5 + 2 are 11 in³ of 12.5: the box stays. AFCI protection comes from B1-2.
            "B2-2: connect-kept kept keep | separate-egc | box B1-2 | no words | grounded by to B2-2 | 5099",
            "U-1: leave kept keep | leave | none | no words | ungrounded | 0",
            // GFCI is due in a bathroom, AFCI is not. 6 × 2.25 + 4.5 are 18 in³ in 14: a new box.
            "BA-1: fit-gfci gfci replace | gfci-receptacle | itself | No Equipment Ground | ungrounded | 14044",
            "BA-2: leave kept keep | leave | none | no words | ungrounded | 0",
            // A washer in an unfinished basement: a ground from the street pipe 3 ft from its entry, and GFCI from K-1.
            // 4 × 2.25 + 2.25 + 4.5 + 2.25 are 18 in³ of 21.
            "C-1: connect-kept kept keep | separate-egc | box K-1 | no words | grounded by to C-1 | 2249",
            "C-2: leave kept keep | leave | box K-1 | no words | ungrounded | 0",
        ],
    );
}

/// By hand: GFCI/AFCI device 58.00 and its box 14.00 are 72.00; 55 min are 87.08; together 159.08. Circuit A needs it: at
/// DI-2 no device can be fitted, and nothing upstream of both P-2 and DI-2 but P-1, where 6 × 2.25 + 4.5 are 18 in³ in 12.5.
/// A fuse panel takes no protective breaker at all.
#[test]
fn the_fuse_panel_gets_a_device_beside_it_for_one_circuit() {
    assert_rows(
        list(&plan(), "/circuits"),
        circuit_row,
        &["A: dead-front-dual | gfci+afci | 15908", "B: as-it-is |  | 0", "C: as-it-is |  | 0", "D: as-it-is |  | 0"],
    );
}

/// By hand: all from the street pipe at (10, 0), stretch by stretch, each in feet begun; each task at its minutes × 95
/// dollars / 60: a basement foot, a minute, is 1.58, a foot fished 3.17, 6 min are 9.50, 10 are 15.83. And 12 AWG is led as far as the 20 A of K-2 and C-1 are behind it.
/// - `to P-3`: in the open up to the ceiling, 8 - 5 ft: 3 × 0.33 + 1.90 = 2.89; 9.50 + 3 × 1.58 = 14.24; 17.13. To below P-1 at (6, 0),
///   4 ft: 1.32 + 6.32 = 7.64. To below P-3 at (0, 4), 6 + 4 ft: 3.30 + 15.80 = 19.10. Up 16 in and a foot: 3 × 0.22 + 1.90 +
///   3.60 = 6.16; end, branch, plate 28.50 and bay 15.83 are 44.33; 50.49. Together 94.36.
/// - `to B2-2`: to below DI-1 at (4, 14), 4 + 10 ft: 4.62 + 22.12 = 26.74; below P-2 at (8, 14), 7.64; below B2-2 at (12, 20),
///   4 + 6 ft, 19.10. Up 16 in and a foot, and the 8 ft and a foot of the storey below: 12 × 0.22 + 5.50 + a patch 6.00 = 14.14;
///   end, branch, plate 28.50, two bays 31.66, the floor 55.42, a patch 63.33 in plaster 39.58 are 218.49; 232.63. Together 286.11.
/// - `to K-2`: to below (24, 24), 12 + 4 ft: 5.28 + 25.28 = 30.56; up: 3 × 0.33 + 5.50 = 6.49 and 44.33, 50.82. Together 81.38.
///   R-fridge would cost 42 × 0.33 + 3.80 = 17.66 and 55.42 + 42 × 3.17 = 188.56; together 206.22.
/// - `to C-1`: from the pipe to (22, 0), 12 ft: 3.96 + 18.96 = 22.92; down 8 ft - 16 in: 7 × 0.33 + 5.50 = 7.81 and 9.50 + 9.50 +
///   7 × 1.58 = 30.06, 37.87. Together 60.79. R-washer would cost 7.76 and 55.42 + 12 × 3.17 = 93.46; together 101.22.
#[test]
fn grounds_come_from_the_street_pipe_and_not_from_rod_or_stack() {
    let plan = plan();
    assert_rows(
        list(&plan, "/routes"),
        route_row,
        &[
            "to P-3: street-pipe → P-3, 14 AWG | P-3 | 9436",
            "to B2-2: street-pipe → B2-2, 14 AWG | B2-2 | 28611",
            "to K-2: street-pipe → K-2, 12 AWG | K-2 | 8138",
            "to C-1: street-pipe → C-1, 12 AWG | C-1 | 6079",
        ],
    );
    assert_rows(
        list(&plan, "/routes_refused"),
        refused_row,
        &[
            "R-rod: a rod of its own is no ground: the earth does not carry enough to open a breaker [250.4(A)(5)]",
            "R-stack: this metal is not among the places at which a ground may be connected [250.130(C)]",
        ],
    );
}

/// A jumper on a reversed receptacle: neither a plug-in tester nor a GFCI sees it, an independent earth does.
#[test]
fn the_reversed_false_ground_is_told_as_a_danger() {
    assert!(dangers(&plan(), "B2-2").contains(&"reversed-false-ground"));
}

/// The insulation at DI-2 crumbles: whoever walks up to the box is told before anything else.
#[test]
fn a_box_that_must_not_be_disturbed_says_so_on_the_page() {
    assert_eq!(opening(&plan(), "DI-2")["do_not_disturb"], true);
    let page = thirdwire(&["plan", "--example", "knob-and-tube"]).out;
    let told = page.split("\n  DI-2 ").nth(1).and_then(|rest| rest.split("\n  K-1 ").next()).unwrap_or_default();
    assert!(told.contains("DO NOT DISTURB"), "{page}");
    assert!(told.contains("note: rubber crumbles at a touch"), "{page}");
    let first = opening(&plan(), "B2-2")["repairs"].clone();
    assert_eq!(first, serde_json::json!(["remove-false-ground", "correct-polarity"]));
}

/// By hand: panel 159.08; routes 94.36 + 286.11 + 81.38 + 60.79 = 522.64; openings 2 × 9.62 + 118.94 + 108.99 +
/// 2 × 22.49 + 184.44 + 50.99 + 140.44 = 668.02; to look for the jumper that P-3 reads of, 10 minutes at 95 dollars an hour,
/// 15.83; together 1,365.57.
#[test]
fn the_knob_and_tube_house_costs_1365_dollars_and_57_cents() {
    let plan = plan();
    assert_eq!(number(&plan, "/totals/price/total_cents"), 136_557);
    assert_eq!(number(&plan, "/dangers/0/price/total_cents"), 1_583);
    assert_eq!((&plan["dangers"][0]["id"], &plan["dangers"][0]["allowance"]), (&"P-3".into(), &true.into()));
}

/// By hand: the four ways ground one receptacle each: 4 of 13, none before. One opening, at the floor below B2-2.
#[test]
fn four_of_thirteen_receptacles_are_grounded_and_one_wall_opened() {
    let plan = plan();
    assert_eq!(number(&plan, "/totals/grounded_before"), 0);
    assert_eq!(number(&plan, "/totals/grounded_after"), 4);
    assert_eq!(number(&plan, "/totals/receptacles"), 13);
    assert_eq!(number(&plan, "/totals/wall_openings"), 1);
}

/// P-3 reads nearly grounded through armor that is no ground: that must be found out, so the plan is not the last word.
#[test]
fn the_armored_stub_leaves_the_plan_provisional_with_exit_code_3() {
    let said = planned();
    assert_eq!(said.code, 3);
    let plan = said.json();
    assert_eq!(plan["status"], "provisional");
    assert!(list(&plan, "/in_the_way").iter().any(|line| line.as_str().unwrap_or("").starts_with("P-3: find out")));
    assert_eq!(opening(&plan, "P-3")["ground"], "unknown");
}
