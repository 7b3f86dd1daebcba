//! The plan of the bungalow, opening by opening, each with its reason.

use crate::rows::{assert_rows, circuit_row, dangers, opening, opening_row, refused_row, route_row};
use crate::running::{Said, list, number, text, thirdwire};
use serde_json::Value;

fn planned() -> Said {
    thirdwire(&["plan", "--example", "bungalow", "--json"])
}

fn plan() -> Value {
    planned().json()
}

/// By hand: what is bought, and for each task its minutes × 95 dollars / 60, rounded half up: 5 min are 7.92, 8 are 12.67, 10
/// are 15.83, 12 are 19.00, 20 are 31.67, 45 are 71.25.
/// - `K-1`: label 2 × 0.30 and a plate 1.10 are 1.70; test 7.92; together 9.62, and so at every marked opening.
/// - `K-2`: box 4.20, three-slot 2.80, plate 1.10 are 8.10; new box 71.25, fit 31.67, test 7.92 are 110.84; together 118.94.
/// - `L-3`: 1.70; test 7.92 and taking out the jumper 15.83 are 23.75; together 25.45.
/// - `D-2`: three-slot 2.80, plate 1.10, labels 0.60 are 4.50; 31.67 + 7.92 are 39.59; together 44.09.
/// - `BA-1`: a label 0.30; 5 min, 7.92; together 8.22.
/// - `B1-3`: 1.70; test 7.92 and polarity 12.67 are 20.59; together 22.29.
/// - `DN-1`: 5 min of testing, 7.92.
/// - `LA-1`: GFCI/AFCI 49.00, plate 1.10, box 4.20 are 54.30; 71.25 + 31.67 + 7.92 + 19.00 are 129.84; together 184.14.
/// - `Y-1`: outdoor GFCI 43.00, plate 1.10, a label 0.30 are 44.40; 39.59; together 83.99.
#[test]
fn every_opening_of_the_bungalow_gets_what_the_facts_and_the_prices_ask_for() {
    let plan = plan();
    assert_rows(
        list(&plan, "/openings"),
        opening_row,
        &[
            // Kitchen, multiwire set 1+2. Countertop (210.8(A)(6)), kitchen (210.12(A)): GFCI and AFCI are due, and only
            // a two-pole breaker gives them over the shared neutral. Behind it the three-slot receptacle stays, marked.
            "K-1: mark-protected kept keep | gfci-breaker | panel main: breaker-dual-2p | GFCI Protected + No Equipment Ground | ungrounded | 962",
            // A refrigerator needs a real ground (250.114(3)). 2 × 2.25 conductors, 2.25 clamps, 2 × 2.25 device and
            // 2.25 for the new ground are 13.5 in³ in a box of 12.5: a new box.
            "K-2: connect-fitted three-slot replace | separate-egc | panel main: breaker-dual-2p | no words | grounded by R-fridge | 11894",
            // On circuit 2, the other half of the set: the same breaker protects it.
            "K-3: mark-protected kept keep | gfci-breaker | panel main: breaker-dual-2p | GFCI Protected + No Equipment Ground | ungrounded | 962",
            // A microwave oven is not on the list of 250.114(3), so R-counter is not bought for it.
            "K-4: mark-protected kept keep | gfci-breaker | panel main: breaker-dual-2p | GFCI Protected + No Equipment Ground | ungrounded | 962",
            // A two-slot receptacle without a ground is what the code let stand; nobody asked for more.
            "L-1: leave kept keep | leave | panel main: breaker-dual | no words | ungrounded | 0",
            // Three slots and no ground: lawful behind the GFCI breaker, marked. 3 cables make a GFCI here too big.
            "L-2: mark-protected kept keep | gfci-breaker | panel main: breaker-dual | GFCI Protected + No Equipment Ground | ungrounded | 962",
            // The false ground: the jumper comes out first; what is left is an opening without a ground.
            "L-3: mark-protected kept keep | gfci-breaker | panel main: breaker-dual | GFCI Protected + No Equipment Ground | ungrounded | 2545",
            // Computer and surge protector: a real ground, from the refrigerator's box through the wall, since both
            // circuits start in the same panel (250.130(C)(4)). 8 + 2 + 4 + 2 are 16 in³ in 12.5: a new box.
            "L-4: connect-fitted three-slot replace | separate-egc | panel main: breaker-dual | no words | grounded by R-wall | 11894",
            "L-5: leave kept keep | leave | panel main: breaker-dual | no words | ungrounded | 0",
            "D-1: leave kept keep | leave | panel main: breaker-dual | no words | ungrounded | 0",
            // The owner asks for three slots; behind the breaker that is there anyway a plain receptacle will do.
            // One cable: 4 + 2 + 4 are 10 in³ in 12.5: the box stays.
            "D-2: fit-protected three-slot keep | gfci-breaker | panel main: breaker-dual | GFCI Protected + No Equipment Ground | ungrounded | 4409",
            "D-3: leave kept keep | leave | panel main: breaker-dual | no words | ungrounded | 0",
            "H-1: leave kept keep | leave | none | no words | ungrounded | 0",
            "H-2: leave kept keep | leave | none | no words | ungrounded | 0",
            // A GFCI receptacle without a ground, lawful but for its missing words. Its own test button trips it, and
            // that the tester's does not says nothing without a ground.
            "BA-1: mark-gfci kept keep | gfci-receptacle | itself | No Equipment Ground | ungrounded | 822",
            "BA-2: leave kept keep | leave | none | no words | ungrounded | 0",
            "B1-1: leave kept keep | leave | panel main: breaker-dual | no words | ungrounded | 0",
            "B1-2: leave kept keep | leave | panel main: breaker-dual | no words | ungrounded | 0",
            // Hot and neutral have changed places: put right, then marked behind the breaker.
            "B1-3: mark-protected kept keep | gfci-breaker | panel main: breaker-dual | GFCI Protected + No Equipment Ground | ungrounded | 2229",
            // 64 V that collapse to 1 V under a low-impedance meter are phantoms: there is no ground.
            "B2-1: mark-protected kept keep | gfci-breaker | panel main: breaker-dual | GFCI Protected + No Equipment Ground | ungrounded | 962",
            "B2-2: leave kept keep | leave | panel main: breaker-dual | no words | ungrounded | 0",
            // Here the den's grounded cable begins, and here the one new conductor for all of it lands: two cables 8,
            // clamps 2 and the grounds 2 are 12 in³ of 21.
            "B2-3: leave kept keep | leave | panel main: breaker-dual | no words | grounded by to B2-3 | 0",
            // The tail of 1984 is one bonded group, its conductors seen joined in every box: nothing but a test.
            "DN-1: ground-arrives kept keep | separate-egc | panel main: breaker-dual | no words | grounded by to B2-3 | 792",
            "DN-2: ground-arrives kept keep | separate-egc | panel main: breaker-dual | no words | grounded by to B2-3 | 792",
            "DN-3: ground-arrives kept keep | separate-egc | panel main: breaker-dual | no words | grounded by to B2-3 | 792",
            "DN-4: ground-arrives kept keep | separate-egc | panel main: breaker-dual | no words | grounded by to B2-3 | 792",
            // A clothes washer needs a ground. A GFCI/AFCI receptacle here, its load side feeding LA-2, costs 184.13;
            // a breaker 94.50 and joining the old receptacle 97.93 cost 192.43.
            "LA-1: connect-fitted dual replace | separate-egc | itself | no words | grounded by to LA-1 | 18414",
            "LA-2: mark-protected kept keep | downstream-of-gfci | box LA-1 | GFCI Protected + No Equipment Ground | ungrounded | 962",
            "LA-3: leave kept keep | leave | box LA-1 | no words | ungrounded | 0",
            // Outdoors GFCI is due, AFCI is not. A GFCI here costs 83.98; a breaker and two labels cost 94.50 + 9.62.
            // The GFCI of the bathroom feeds only the luminaire there.
            "Y-1: fit-gfci gfci keep | gfci-receptacle | itself | No Equipment Ground | ungrounded | 8399",
        ],
    );
}

/// By hand: 18 min are 28.50. With a two-pole GFCI/AFCI breaker 149.00 that is 177.50, with a single-pole one 66.00, 94.50.
/// On circuits 3 and 4 a GFCI/AFCI receptacle further up would need a new box and its load side sorted: 184.44.
#[test]
fn the_panel_of_the_bungalow_gets_one_two_pole_and_two_single_pole_breakers() {
    assert_rows(
        list(&plan(), "/circuits"),
        circuit_row,
        &[
            "1+2: breaker-dual-2p | gfci+afci | 17750",
            "3: breaker-dual | gfci+afci | 9450",
            "4: breaker-dual | gfci+afci | 9450",
            "5: as-it-is |  | 0",
            "6: as-it-is |  | 0",
        ],
    );
}

/// By hand: feet × wire, fittings at both ends 3.80, and each task × its minutes at 95 dollars / 60, rounded once: a foot fished or
/// led through the crawl space, 2 min, is 3.17, 6 min are 9.50, 35 are 55.42, 40 are 63.33.
/// - `R-fridge`: 28 × 0.33 + 3.80 = 13.04; 55.42 + 28 × 3.17 = 144.18; together 157.22. 12 AWG for 20 A (Table 250.122).
/// - `R-wall`: 7 × 0.22 + 3.80 + 6.00 = 11.34; 63.33 + 63.33 = 126.66; together 138.00. R-living from the panel would
///   cost 36 × 0.22 + 3.80 = 11.72 and 55.42 + 36 × 3.17 = 169.54; together 181.26.
///
/// By hand, the ways built through the crawl space, stretch by stretch, each in feet begun:
/// - from the panel at (-4, 0) down 5 ft of wall and a foot past the plate: 6 × 0.33 + 1.90 = 3.88; end 9.50, plate 9.50 and
///   bay 15.83 are 34.83; 38.71. The porch is not insulated.
/// - to below LA-1 at (-7, 3), 3 + 3 ft: 1.98 and 19.02; 21.00. As far as there in 12 AWG, for the 20 A of LA-1.
/// - below K-3 at (0, 5), 7 + 2 ft: 9 × 0.22 = 1.98 and 28.53; 30.51. Below D-2 at (0, 16), 11 ft: 2.42 and 34.87;
///   37.29. Below B2-3 at (0, 30), 14 ft: 3.08 and 44.38; 47.46.
/// - up to B2-3, 16 in and a foot: 3 × 0.22, fittings 1.90 and a branch box 3.60 are 6.16; end, branch and plate 28.50,
///   bay 15.83 and insulation 23.75, since nobody knows, are 68.08; 74.24. In all 249.21. R-den would cost 52 × 0.22 + 3.80 + a
///   patch 6.00 = 21.24 and 174.17 + 63.33 = 237.50; together 258.74.
/// - up to LA-1, off that way: 3 × 0.33 + 5.50 = 6.49 and 28.50 + 15.83 = 44.33; 50.82.
#[test]
fn four_grounds_are_brought_into_the_bungalow_and_the_kitchen_pipe_is_refused() {
    let plan = plan();
    assert_rows(
        list(&plan, "/routes"),
        route_row,
        &[
            "R-fridge: main → K-2, 12 AWG | K-2 | 15722",
            "R-wall: K-2 → L-4, 14 AWG | L-4 | 13800",
            "to B2-3: main → B2-3, 14 AWG | B2-3 DN-1 DN-2 DN-3 DN-4 | 24921",
            "to LA-1: main → LA-1, 12 AWG | LA-1 | 5082",
        ],
    );
    // The pipe is reached 22 ft from where the water enters; only the first 5 ft count.
    assert_rows(
        list(&plan, "/routes_refused"),
        refused_row,
        &[
            "R-pipe: a water pipe inside the building counts only within 5 ft of where it enters [250.130(C), 250.68(C)(1)]",
        ],
    );
}

/// By hand: panel 177.50 + 2 × 94.50 = 366.50; routes 157.22 + 138.00 + 249.21 + 50.82 = 595.25; openings
/// 6 × 9.62 + 2 × 118.94 + 25.45 + 44.09 + 8.22 + 22.29 + 4 × 7.92 + 184.14 + 83.99 = 695.46; together 1,657.21.
/// Grounded are K-2, L-4, LA-1 and the four of the den: 7 of 24 receptacles, none of them before.
#[test]
fn the_bungalow_costs_1657_dollars_and_21_cents_and_grounds_7_of_24() {
    let plan = plan();
    assert_eq!(number(&plan, "/totals/price/total_cents"), 165_721);
    assert_eq!(number(&plan, "/totals/grounded_before"), 0);
    assert_eq!(number(&plan, "/totals/grounded_after"), 7);
    assert_eq!(number(&plan, "/totals/receptacles"), 24);
    assert_eq!(number(&plan, "/totals/wall_openings"), 1);
    assert_eq!(plan["totals"]["demo_prices"], true);
}

/// By hand: every ground is known (no wiring method brings one, or none was seen), every wish and every piece of
/// equipment is served, every box that is touched can be counted: nothing is left to ask.
#[test]
fn the_bungalow_is_complete_and_exits_with_0() {
    let said = planned();
    assert_eq!(said.code, 0);
    assert_eq!(said.json()["status"], "complete");
    assert_eq!(said.json()["in_the_way"], serde_json::json!([]));
}

#[test]
fn the_traps_of_the_bungalow_are_told_at_their_openings() {
    let plan = plan();
    assert!(dangers(&plan, "L-3").contains(&"false-ground"));
    assert!(dangers(&plan, "B1-3").contains(&"hot-neutral-reversed"));
    // The den reads an open ground in every box, though a conductor is connected in each.
    for id in ["DN-1", "DN-2", "DN-3", "DN-4"] {
        assert_eq!(opening(&plan, id)["ground"], "none");
    }
}

/// What is priced is also ordered: faults that are put right first, boxes in which a new ground is joined, load sides.
#[test]
fn the_page_of_the_bungalow_orders_repairs_joints_and_load_sides() {
    let plan = plan();
    assert_eq!(opening(&plan, "L-3")["repairs"], serde_json::json!(["remove-false-ground"]));
    assert_eq!(opening(&plan, "B1-3")["repairs"], serde_json::json!(["correct-polarity"]));
    assert_eq!(opening(&plan, "K-2")["routes_joined"], serde_json::json!(["R-fridge", "R-wall"]));
    assert_eq!(opening(&plan, "LA-1")["load_side_feeds"], serde_json::json!(["LA-2"]));
    let page = thirdwire(&["plan", "--example", "bungalow"]).out;
    for order in ["first take out the false ground", "first put hot and neutral right", "load side feeds LA-2"] {
        assert!(page.contains(order), "{order}");
    }
    assert!(page.contains("\n  B2-3    join the new ground in this box"));
    assert!(page.contains("note: through the wall between kitchen and living room"));
}

/// By hand: of the 48 ft 4 in to B2-3 the first 6 + 6 ft are shared with LA-1 and sized for its 20 A; what goes on along one
/// space in one size is one stretch, 9 + 11 + 14 = 34 ft.
#[test]
fn the_way_built_to_the_back_bedroom_is_told_stretch_by_stretch() {
    let plan = plan();
    let route = list(&plan, "/routes").iter().find(|route| route["id"] == "to B2-3").unwrap();
    let legs: Vec<String> = list(route, "/legs")
        .iter()
        .map(|leg| format!("{} {} {}", text(leg, "/size"), text(leg, "/length"), number(leg, "/price/total_cents")))
        .collect();
    assert_eq!(legs, ["12 AWG 6 ft 3871", "12 AWG 6 ft 2100", "14 AWG 34 ft 11526", "14 AWG 2 ft 4 in 7424"]);
    assert_eq!(text(route, "/length"), "48 ft 4 in");
    let page = thirdwire(&["plan", "--example", "bungalow"]).out;
    assert!(page.contains("12 AWG, then 14 AWG ground, main → B2-3, 48 ft 4 in"), "{page}");
    // The outlet in the yard is on no plan of a room, and the luminaire of the porch has no position.
    let not_built = list(&plan, "/ways_not_built");
    assert_eq!(not_built[0]["of"], serde_json::json!(["Y-1"]));
}
