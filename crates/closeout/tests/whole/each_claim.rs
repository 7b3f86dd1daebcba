//! Each kind of claim by itself: proved by what the cottage's survey says, open without it, contradicted by its contrary.

use crate::proofs::{COTTAGE, claim, not_proved, proof_of, verdict};
use ProofVerdict::{Contradicts, Open, Proved};
use closeout::{ClaimKind, ProofAnswer, ProofVerdict};

/// The survey of the cottage with words behind a place in it changed.
fn changed(behind: &str, from: &str, to: &str) -> String {
    let (before, after) = COTTAGE.split_once(behind).unwrap();
    assert!(after.contains(from), "no `{from}` behind `{behind}`");
    format!("{before}{behind}{}", after.replacen(from, to, 1))
}

fn at_box(id: &str, from: &str, to: &str) -> ProofAnswer {
    proof_of(&changed(&format!("id      = \"{id}\"\nroom"), from, to))
}

/// The claim is proved as written, open where the words are left out, and contradicted by others; all else stays as it was.
fn hangs_on(kind: ClaimKind, id: &str, words: &str, contrary: &str) {
    assert_eq!(verdict(&proof_of(COTTAGE), id, kind), Proved, "{kind}");
    let without = at_box(id, words, "");
    assert_eq!(verdict(&without, id, kind), Open, "{kind} without `{words}`");
    assert!(claim(&without, id, kind).next.is_some());
    let against = at_box(id, words, contrary);
    let found = claim(&against, id, kind);
    assert_eq!(found.verdict, Contradicts, "{kind} with `{contrary}`");
    assert!(found.must_read.is_some() && found.reads.is_some() && found.likely_cause.is_some(), "{found:?}");
    assert_eq!(against.status, Contradicts);
}

#[test]
fn the_cottage_is_proved_whole_and_nothing_is_left() {
    let proof = proof_of(COTTAGE);
    assert_eq!(not_proved(&proof), [""; 0]);
    assert!(proof.is_closed() && proof.holds_back.is_empty());
    assert!(proof.openings.iter().all(|opening| opening.claims.iter().all(|claim| claim.how.is_some())));
}

/// By hand: without any `after` there is nothing to prove by, and every claim is open.
#[test]
fn without_a_reading_nothing_is_proved() {
    let bare: Vec<&str> =
        COTTAGE.lines().filter(|line| !line.starts_with("after") && !line.starts_with("  {") && *line != "]").collect();
    let bare = format!("{}\n", bare.join("\n")).replace("found   = [", "found = []");
    let proof = proof_of(&bare);
    assert_eq!((proof.counts.proved, proof.counts.contradicts, proof.status), (0, 0, Open), "{:?}", not_proved(&proof));
    assert!(proof.counts.open > 40);
}

#[test]
fn the_device_must_be_the_one_that_was_planned() {
    hangs_on(ClaimKind::Device, "BA-1", "fitted = \"gfci\", ", "fitted = \"two-slot\", ");
    let lawful = at_box("BA-1", "fitted = \"gfci\"", "fitted = \"two-slot\"");
    let told = claim(&lawful, "BA-1", ClaimKind::Device);
    assert!(told.likely_cause.as_ref().unwrap().contains("`nongrounding-receptacle`"), "{told:?}");
    assert!(told.next.as_ref().unwrap().contains("plan anew with it"), "{told:?}");
    let unlawful = at_box("K-1", "fitted = \"afci\"", "fitted = \"splice\"");
    assert_eq!(verdict(&unlawful, "K-1", ClaimKind::Device), Contradicts);
}

#[test]
fn the_box_must_be_changed_as_planned_and_large_enough() {
    hangs_on(ClaimKind::BoxWork, "K-1", "box_work = \"replaced\", ", "box_work = \"kept\", ");
    let without = at_box("K-1", ", box_volume = \"20 in3\"", "");
    assert_eq!(verdict(&without, "K-1", ClaimKind::BoxWork), Open);
    // By hand: four 12 AWG conductors, a device and a ground take 9 + 4.5 + 2.25 = 15.75 in³.
    let small = at_box("K-1", "box_volume = \"20 in3\"", "box_volume = \"15.5 in3\"");
    assert_eq!(verdict(&small, "K-1", ClaimKind::BoxWork), Contradicts);
    let unplanned = at_box("H-1", "fitted = \"three-slot\"", "fitted = \"three-slot\", box_work = \"replaced\"");
    assert_eq!(verdict(&unplanned, "H-1", ClaimKind::BoxWork), Contradicts, "nobody planned it");
}

#[test]
fn a_new_receptacle_must_be_tamper_resistant_where_the_code_asks() {
    hangs_on(ClaimKind::TamperResistant, "K-1", "tamper_resistant = true, ", "tamper_resistant = false, ");
}

/// By hand: the same opening outdoors, 406.9, from memory.
#[test]
fn a_new_receptacle_outdoors_must_be_weather_resistant() {
    let outdoors = changed("[close_out]", "use  = \"bathroom\"", "use  = \"outdoors\"");
    let proof = proof_of(&outdoors);
    let marked = outdoors
        .replace("labels = [\"No Equipment Ground\"]", "weather_resistant = true, labels = [\"No Equipment Ground\"]");
    assert_eq!(verdict(&proof, "BA-1", ClaimKind::WeatherResistant), Open);
    assert_eq!(verdict(&proof_of(&marked), "BA-1", ClaimKind::WeatherResistant), Proved);
    let not = marked.replace("weather_resistant = true", "weather_resistant = false");
    assert_eq!(verdict(&proof_of(&not), "BA-1", ClaimKind::WeatherResistant), Contradicts);
}

/// From memory: ANSI C84.1, range A, 114 to 126 V. By hand: 110 V is more than a meter's 1.5 V below.
#[test]
fn hot_to_neutral_must_be_line_voltage_without_load() {
    hangs_on(ClaimKind::HotNeutral, "H-1", "hn = 121.3, ", "hn = 110, ");
    let unsaid = at_box("H-1", "ng = 0, load = \"none\"", "ng = 0");
    assert_eq!(verdict(&unsaid, "H-1", ClaimKind::HotNeutral), Open, "whether load was on is not said");
    assert_eq!(verdict(&at_box("H-1", "hn = 121.3", "hn = 112.8"), "H-1", ClaimKind::HotNeutral), Proved, "the meter");
}

/// By hand: 22 ft of 14 AWG there and back at 2.6 mΩ/ft are 0.11 Ω, 1.4 V at 12.5 A, and 1 V more of the supply at most.
#[test]
fn hot_to_neutral_must_fall_under_load_by_what_the_wires_explain() {
    hangs_on(ClaimKind::HotNeutralLoaded, "H-1", "hn = 119.3, ", "hn = 115.5, ");
    let too_little = at_box("H-1", "hn = 119.3, hg = 120", "hn = 121.3, hg = 121.3");
    assert_eq!(verdict(&too_little, "H-1", ClaimKind::HotNeutralLoaded), Contradicts, "no load on these wires");
    let unstated = at_box("H-1", ", load_current = \"12.5 A\"", "");
    assert_eq!(verdict(&unstated, "H-1", ClaimKind::HotNeutralLoaded), Open, "the current is not known");
    assert_eq!(verdict(&unstated, "H-1", ClaimKind::Ground), Open);
    let elsewhere = at_box("BA-1", "hn = 118.6, load = \"heavy\",", "hn = 117.5, load = \"heavy\", load_at = \"K-1\",");
    assert_eq!(verdict(&elsewhere, "BA-1", ClaimKind::HotNeutralLoaded), Contradicts, "K-1 lies halfway");
}

#[test]
fn polarity_without_a_ground_takes_an_independent_earth() {
    hangs_on(
        ClaimKind::Polarity,
        "L-1",
        "hot_earth = 121.1, neutral_earth = 0.1, ",
        "hot_earth = 0.1, neutral_earth = 121.1, ",
    );
    let tester = at_box("L-1", "tester = \"open ground\"", "tester = \"hot and neutral reversed\"");
    assert_eq!(verdict(&tester, "L-1", ClaimKind::Polarity), Contradicts);
    let half = at_box("L-1", ", neutral_earth = 0.1", "");
    assert_eq!(verdict(&half, "L-1", ClaimKind::Polarity), Open);
}

/// Published: inspectors' forum on proving a local false ground: it stays at nought under load, a true ground rises.
#[test]
fn a_ground_must_read_as_one_of_its_own_under_load() {
    hangs_on(
        ClaimKind::Ground,
        "K-1",
        "  { hn = 119.3, hg = 119.9, ng = 0.5, ground_ohms = 0.2, load = \"heavy\", load_current = \"12.5 A\" },\n",
        "  { hn = 119.3, hg = 119.3, ng = 0, ground_ohms = 0.2, load = \"heavy\", load_current = \"12.5 A\" },\n",
    );
    for (from, to, why) in [
        ("ground = \"connected\"", "ground = \"jumper to neutral\"", "a jumper seen"),
        ("ground = \"connected\"", "ground = \"to a pipe or rod\"", "a rod"),
        ("tester = \"correct\"", "tester = \"false ground\"", "a tester that finds joins"),
        ("tester = \"correct\"", "tester = \"open ground\"", "no ground arrives"),
        ("hg = 120.9, ng = 0", "hg = 60, ng = 58", "phantoms without load"),
        ("hg = 119.9, ng = 0.5", "hg = 123, ng = 3.7", "the neutral drops too much"),
    ] {
        assert_eq!(verdict(&at_box("K-1", from, to), "K-1", ClaimKind::Ground), Contradicts, "{why}");
    }
}

#[test]
fn no_load_volts_and_a_tester_that_says_correct_prove_no_ground() {
    let unloaded = at_box(
        "H-1",
        "  { hn = 119.3, hg = 120, ng = 0.7, ground_ohms = 0.2, load = \"heavy\", load_current = \"12.5 A\" },\n",
        "",
    );
    assert_eq!(verdict(&unloaded, "H-1", ClaimKind::Ground), Open);
    assert_eq!(verdict(&unloaded, "H-1", ClaimKind::Polarity), Open, "nothing to read against");
}

/// By hand: 1 A over 26 ft of 12 AWG is 0.04 V, which a jumper reads as well.
#[test]
fn a_load_too_small_to_separate_a_jumper_leaves_the_ground_open() {
    let small = at_box(
        "K-1",
        "hn = 119.3, hg = 119.9, ng = 0.5, ground_ohms = 0.2, load = \"heavy\", load_current = \"12.5 A\"",
        "hn = 120.8, hg = 120.9, ng = 0.04, ground_ohms = 0.2, load = \"lamp\", load_current = \"1 A\"",
    );
    assert_eq!(verdict(&small, "K-1", ClaimKind::Ground), Open);
}

#[test]
fn the_ground_must_be_seen_connected_where_it_was_worked_on() {
    hangs_on(ClaimKind::GroundConnected, "K-1", "ground = \"connected\", ", "ground = \"not connected\", ");
}

/// Published: one instrument maker's rule of thumb, under 1 Ω for people.
#[test]
fn the_grounding_path_must_bear_a_fault() {
    hangs_on(ClaimKind::GroundPath, "H-1", "ground_ohms = 0.2, ", "ground_ohms = 1.4, ");
}

#[test]
fn a_tester_that_says_correct_where_there_is_no_ground_contradicts() {
    hangs_on(ClaimKind::NoGround, "L-1", "tester = \"open ground\", ", "tester = \"correct\", ");
    let proof = proof_of(COTTAGE);
    let explained: Vec<&str> = (proof.openings.iter())
        .filter(|opening| opening.tester_explained.is_some())
        .map(|opening| opening.box_id.as_str())
        .collect();
    assert_eq!(explained, ["L-1", "L-2", "BA-1"]);
    for (from, to) in [
        ("tester = \"open ground\"", "tester = \"false ground\""),
        ("tester = \"open ground\"", "tester = \"open neutral\""),
        ("tester = \"open ground\"", "hg = 121, ng = 0, tester = \"open ground\""),
        ("tester = \"open ground\"", "ground_ohms = 0.4, tester = \"open ground\""),
        ("tester = \"open ground\"", "ground = \"jumper to neutral\", tester = \"open ground\""),
        ("tester = \"open ground\"", "tester_trips_gfci = true, tester = \"open ground\""),
    ] {
        assert_eq!(verdict(&at_box("L-1", from, to), "L-1", ClaimKind::NoGround), Contradicts, "{to}");
    }
    let phantom = at_box("L-1", "tester = \"open ground\"", "hg = 70, ng = 48, tester = \"open ground\"");
    assert_eq!(verdict(&phantom, "L-1", ClaimKind::NoGround), Proved, "a phantom is no ground");
    let low = at_box("L-1", "tester = \"open ground\"", "hg = 0.4, meter = \"low-impedance\"");
    assert_eq!(verdict(&low, "L-1", ClaimKind::NoGround), Proved, "collapsed");
}

#[test]
fn a_protective_device_must_open_on_its_own_button() {
    hangs_on(ClaimKind::Trips, "BA-1", "test_button = \"trips\", ", "test_button = \"does not trip\", ");
    let unpressed = at_box("BA-1", "test_button = \"trips\"", "test_button = \"not tested\"");
    assert_eq!(verdict(&unpressed, "BA-1", ClaimKind::Trips), Open);
}

#[test]
fn what_a_device_protects_must_go_dead_with_it() {
    hangs_on(ClaimKind::DeadWhenTripped, "L-2", ", dead_when_tripped = true", ", dead_when_tripped = false");
}

#[test]
fn what_no_device_protects_by_the_plan_must_stay_alive() {
    let dead = at_box("H-1", "fitted = \"three-slot\"", "fitted = \"three-slot\", dead_when_tripped = true");
    assert_eq!(verdict(&dead, "H-1", ClaimKind::NotProtected), Contradicts);
}

/// Published: NEC 406.4(D)(2) asks for the two markings; their words are the rulebook's.
#[test]
fn each_marking_must_be_there_in_its_words() {
    hangs_on(ClaimKind::Marking, "BA-1", "labels = [\"No Equipment Ground\"], ", "labels = [], ");
    let one_of_two = at_box("L-1", "[\"GFCI Protected\", \"No Equipment Ground\"]", "[\"GFCI Protected\", \"other\"]");
    let opening = one_of_two.openings.iter().find(|opening| opening.box_id == "L-1").unwrap();
    let of_marking: Vec<_> = (opening.claims.iter())
        .filter(|claim| claim.claim == ClaimKind::Marking)
        .map(|claim| (claim.of.as_deref().unwrap(), claim.verdict))
        .collect();
    assert_eq!(of_marking, [("GFCI Protected", Proved), ("No Equipment Ground", Contradicts)]);
}

#[test]
fn a_label_that_says_what_is_not_so_contradicts() {
    hangs_on(ClaimKind::NoFalseMarking, "H-1", "labels = [], ", "labels = [\"No Equipment Ground\"], ");
    let wrong = at_box("BA-1", "[\"No Equipment Ground\"]", "[\"No Equipment Ground\", \"GFCI Protected\"]");
    assert_eq!(verdict(&wrong, "BA-1", ClaimKind::NoFalseMarking), Contradicts, "its own GFCI takes the one alone");
}

#[test]
fn every_reading_needs_its_day_and_initials() {
    let unsigned = proof_of(&changed("[close_out]", "by    = \"MK\"\n", ""));
    for id in ["L-1", "K-1", "H-1"] {
        assert_eq!(verdict(&unsigned, id, ClaimKind::Recorded), Open, "{id}");
    }
    assert_eq!(unsigned.status, Open);
    let undated = proof_of(&changed("[close_out]", "day   = \"2026-11-20\"\n", ""));
    assert_eq!(undated.status, Open);
}

/// By hand: hot to neutral and hot to ground are right in all three pairs, and the ground is live to earth.
#[test]
fn a_danger_that_no_pair_shows_contradicts() {
    let live = at_box(
        "H-1",
        "ng = 0, load = \"none\"",
        "ng = 0, ground_earth = 120, meter = \"low-impedance\", load = \"none\"",
    );
    assert_eq!(verdict(&live, "H-1", ClaimKind::NoDanger), Contradicts);
}

fn at_panel(from: &str, to: &str) -> ProofAnswer {
    proof_of(&changed("[close_out]", from, to))
}

#[test]
fn the_panel_end_must_hold_what_was_planned_and_trip() {
    let of = |proof: &ProofAnswer, kind: ClaimKind| {
        proof.circuits[0].claims.iter().find(|claim| claim.claim == kind).unwrap().verdict
    };
    let done = proof_of(COTTAGE);
    assert_eq!((of(&done, ClaimKind::Device), of(&done, ClaimKind::Trips)), (Proved, Proved));
    let other = at_panel("fitted = \"dual\"", "fitted = \"gfci\"");
    assert_eq!(of(&other, ClaimKind::Device), Contradicts);
    let dead = at_panel("test_button = \"trips\"", "test_button = \"does not trip\"");
    assert_eq!(of(&dead, ClaimKind::Trips), Contradicts);
    let bare = at_panel("after   = { fitted = \"dual\", test_button = \"trips\" }\n", "");
    assert_eq!((of(&bare, ClaimKind::Device), of(&bare, ClaimKind::Trips)), (Open, Open));
    // Circuit 3 is left as it is: a device that nobody planned is told.
    let unplanned = changed("id      = \"3\"", "gauge   = 14\n", "gauge   = 14\nafter   = { fitted = \"gfci\" }\n");
    assert_eq!(proof_of(&unplanned).status, Contradicts);
}

/// From memory: NEC 408.4(A).
#[test]
fn the_directory_must_be_written() {
    assert_eq!(proof_of(COTTAGE).panels[0].claims[0].verdict, Proved);
    let not = at_panel("after = { directory = true }", "after = { directory = false }");
    assert_eq!(not.panels[0].claims[0].verdict, Contradicts);
    let bare = at_panel("after = { directory = true }\n", "");
    assert_eq!((bare.panels[0].claims[0].verdict, bare.status), (Open, Open));
}

/// By hand: L-1 with nobody's count of its box and an unknown ground is a question of the plan itself.
#[test]
fn a_plan_that_is_not_settled_holds_the_certificate_back() {
    let unsettled = changed(
        "id      = \"BA-1\"\nroom",
        "body    = { metal = true, size = \"3x2x2-1/2\", clamps = \"inside\" }\n",
        "",
    );
    let proof = proof_of(&unsettled);
    assert!(proof.holds_back.iter().any(|held| held.box_id.as_deref() == Some("BA-1")), "{:?}", proof.holds_back);
    assert_eq!((proof.counts.open, proof.status), (0, Open));
    assert!(!proof.is_closed());
}

/// By hand: the flat's B-1 has an old, thin ground (ask), its L-2 a ground that was cut off (look into the box).
#[test]
fn what_the_authority_decides_is_told_and_what_is_to_be_found_out_holds_back() {
    let flat = include_str!("../../../../examples/flat.toml");
    let proof = proof_of(flat);
    assert!(proof.rests_on.iter().any(|rests| rests.starts_with("B-1: ask the authority")), "{:?}", proof.rests_on);
    let held = |proof: &ProofAnswer, id: &str| proof.holds_back.iter().any(|held| held.box_id.as_deref() == Some(id));
    assert!(held(&proof, "L-2") && !held(&proof, "B-1"), "{:?}", proof.holds_back);
    let (before, of_it) = flat.split_once("id      = \"L-2\"\n").unwrap();
    let looked = format!("{before}id      = \"L-2\"\nafter   = {{ ground = \"cut off\" }}\n{of_it}");
    assert!(!held(&proof_of(&looked), "L-2"), "the open box answers it");
    let knob_and_tube = proof_of(include_str!("../../../../examples/knob-and-tube.toml"));
    assert!(!knob_and_tube.is_closed() && !knob_and_tube.holds_back.is_empty());
}

#[test]
fn what_is_left_stands_in_walking_order() {
    let half = include_str!("../../../../examples/cottage-half-done.toml");
    let proof = proof_of(half);
    let mut places: Vec<&str> = proof.left.iter().map(|left| left.at.as_str()).collect();
    places.dedup();
    assert_eq!(places, ["main", "L-2", "K-1", "BA-1"]);
    assert_eq!(verdict(&proof, "K-1", ClaimKind::Ground), Contradicts, "a jumper");
    assert_eq!(verdict(&proof, "L-2", ClaimKind::DeadWhenTripped), Contradicts, "on the wrong side");
    assert_eq!(verdict(&proof, "BA-1", ClaimKind::Device), Open, "not read");
}
