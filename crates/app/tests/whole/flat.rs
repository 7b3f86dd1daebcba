//! The plan of the flat, opening by opening, each with its reason.

use crate::rows::{assert_rows, circuit_row, opening, opening_row, refused_row, route_row};
use crate::running::{Said, list, number, thirdwire};
use serde_json::Value;

fn planned() -> Said {
    thirdwire(&["plan", "--example", "flat", "--json"])
}

fn plan() -> Value {
    planned().json()
}

/// By hand: minutes × 95 dollars / 60, rounded half up.
/// - `BA-1`: 1.70 and 5 min, 7.92; together 9.62.
/// - `L-2`: AFCI 42.00, plate 1.10 and a box 4.20 are 47.30; 45 + 20 + 5 = 70 min, 110.83; together 158.14.
/// - `K-1`: fittings 1.90; 8 + 5 = 13 min, 20.58; together 22.48.
/// - `B-1` and `K-2`: fittings 1.90; 15 min, 23.75; together 25.65.
/// - `BY-1`: outdoor three-slot 21.00, plate 1.10, labels 0.60, two aluminium splices 9.20 are 31.90;
///   20 + 5 + 2 × 6 = 37 min, 58.58; together 90.48.
#[test]
fn every_opening_of_the_flat_gets_what_the_facts_and_the_prices_ask_for() {
    assert_rows(
        list(&plan(), "/openings"),
        opening_row,
        &[
            // Two slots, ground cut off: lawful as it is, and a receptacle that is not replaced need not use the stub.
            "L-1: leave kept keep | leave | none | no words | ungrounded | 0",
            // The owner asks for a ground at the television: through the wall from the kitchen's. 8 + 2 + 4 and 2 for it are
            // 16 in³ in 12.5: a new box. AFCI is due in a living room: the receptacle is one, 158.14, since a plain one,
            // 118.94, behind an AFCI breaker, 80.50, is 199.44.
            "L-2: connect-fitted afci replace | separate-egc | none | no words | grounded by to L-2 | 15814",
            "L-3: leave kept keep | leave | none | no words | ungrounded | 0",
            // The thin ground is there, folded back: where one is there it must be used (406.4(D)(1)).
            "B-1: restore-kept kept keep | restore-existing-ground | none | no words | grounded | 2565",
            // The same for the computer's opening: restoring serves it, which no GFCI would.
            "B-2: restore-kept kept keep | restore-existing-ground | none | no words | grounded | 2565",
            "B-3: leave kept keep | leave | none | no words | grounded | 0",
            // A GFCI on a shown ground stays; the conductor to L-2 is joined behind it: 9 for the cables of 12 AWG, 4.5 for the
            // device, 2.25 for the grounds with that to L-2 among the first four, of 22.5 in³.
            "K-1: leave kept keep | leave | itself | no words | grounded | 2249",
            // The refrigerator's loose ground is restored. All receptacles of a kitchen need GFCI (210.8(A)(6), 2023) and
            // AFCI. A receptacle that is both would cost 113.44, and would sit behind the refrigerator, where it cannot be
            // reached: protection comes from the panel.
            "K-2: restore-kept kept keep | restore-existing-ground | panel 3B: breaker-dual | no words | grounded | 2565",
            // GFCI is due in a bathroom, AFCI is not.
            "BA-1: mark-protected kept keep | gfci-breaker | panel 3B: breaker-gfci | GFCI Protected + No Equipment Ground | ungrounded | 962",
            "BA-2: leave kept keep | leave | panel 3B: breaker-gfci | no words | ungrounded | 0",
            // The corridor's ground is sound; nothing is asked of it.
            "CO-1: leave kept keep | leave | none | no words | grounded | 0",
            // On aluminium a new receptacle takes copper pigtails by listed splices. Pigtails are not counted:
            // 2 × 2.25 + 2 × 2.25 are 9 in³ of 13.5.
            "BY-1: fit-protected three-slot keep | gfci-breaker | panel 3B: breaker-gfci | GFCI Protected + No Equipment Ground | ungrounded | 9049",
        ],
    );
}

/// By hand: 18 min are 28.50; breakers 66.00, 52.00 and 58.00. Circuit 1: the AFCI receptacle at L-2 is all that is due.
/// Circuit 2 needs AFCI only, since its ground is restored. Circuit 4: a GFCI at BY-1 alone would cost 43.00 + 1.10 + 0.30 +
/// 9.20 and 31.67 + 7.92 + 2 × 9.50, 58.59; together 112.19, and BA-1 would be without. Circuit 3: an AFCI breaker 80.50 and the load side of
/// the GFCI at K-1, 12 min, 19.00, are 99.50 against 94.50. A GFCI/AFCI receptacle at K-1, 49.00 + 1.10, with its joint 23.75, fit
/// 31.67, test 7.92 and load side 19.00, 82.34, is 132.44 against 94.50 + 22.49 = 116.99.
#[test]
fn three_circuits_of_the_flat_get_three_kinds_of_breaker() {
    assert_rows(
        list(&plan(), "/circuits"),
        circuit_row,
        &[
            "1: as-it-is |  | 0",
            "2: breaker-afci | afci | 8050",
            "3: breaker-dual | gfci+afci | 9450",
            "4: breaker-gfci | gfci | 8650",
            "H7: as-it-is |  | 0",
        ],
    );
}

/// Published: 250.130(C)(4) as code texts of 2014 and later have it: only of a circuit that starts in the same enclosure.
///
/// By hand: K-1 is a foot along the wall from L-2 on its other side: a foot through and a foot aside, 2 × 0.22 + 3.80 = 4.24;
/// two ends 9.50 each and the wall 19.00 are 38.00; together 42.24.
#[test]
fn the_corridors_ground_is_refused_since_it_comes_from_another_panel_and_the_kitchens_is_taken() {
    let plan = plan();
    assert_rows(list(&plan, "/routes"), route_row, &["to L-2: K-1 → L-2, 14 AWG | L-2 | 4224"]);
    assert_eq!(list(&plan, "/routes/0/legs")[0]["kind"], "back-to-back");
    assert_rows(
        list(&plan, "/routes_refused"),
        refused_row,
        &["R-corridor: the two circuits do not start in the same panel [250.130(C)(4)]"],
    );
}

/// By hand: breakers 80.50 + 94.50 + 86.50 = 261.50; the way 42.24; openings 158.14 + 22.49 + 9.62 + 3 × 25.65 + 90.49 =
/// 357.69; together 661.43. Before, K-1 and CO-1 are grounded; the grounds of B-1, B-2 and K-2 are there and not sound.
/// Restored, and with L-2, they make 6 of 10.
#[test]
fn the_flat_costs_661_dollars_and_43_cents() {
    let plan = plan();
    assert_eq!(number(&plan, "/totals/price/total_cents"), 66_143);
    assert_eq!(number(&plan, "/totals/grounded_before"), 2);
    assert_eq!(number(&plan, "/totals/grounded_after"), 6);
    assert_eq!(number(&plan, "/totals/receptacles"), 10);
    assert_eq!(number(&plan, "/totals/wall_openings"), 0);
}

/// The stubs in the living room and the bathroom may reach, and whether a thinner ground may serve is the authority's to say.
#[test]
fn the_flat_is_provisional_until_the_stubs_are_seen_and_the_authority_is_asked() {
    let said = planned();
    assert_eq!(said.code, 3);
    let plan = said.json();
    assert_eq!(plan["status"], "provisional");
    for id in ["L-1", "L-2", "L-3", "BA-1"] {
        assert_eq!(opening(&plan, id)["ground"], "cut-off");
        // 406.4(D)(1) speaks when a receptacle is replaced: nothing is asked of one that is left alone.
        let asked = usize::from(opening(&plan, id)["step"] != "leave");
        assert_eq!(list(opening(&plan, id), "/open_questions").len(), asked, "{id}");
    }
    for id in ["B-1", "B-2"] {
        assert_eq!(opening(&plan, id)["ground"], "loose");
        assert_eq!(list(opening(&plan, id), "/open_questions").len(), 1, "{id}");
    }
}
