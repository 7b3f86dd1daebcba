//! `options`: what other programs read of it.

use crate::running::{list, text, thirdwire, words_of};
use serde_json::{Value, json};

/// The command that the project's description of `options` gives as its example, word for word but for what is served.
const EXAMPLE: &str = "thirdwire options --edition 2020 --room bedroom --breaker \"15 A\" --cable nm-two-wire \
    --ground none --box \"12.5 in3\" --cables-in-box 2 --gauge 14 --clamps inside --serves";

const REMEDIES: [&str; 8] = [
    "leave",
    "nongrounding-receptacle",
    "gfci-receptacle",
    "downstream-of-gfci",
    "gfci-breaker",
    "separate-egc",
    "new-cable",
    "restore-existing-ground",
];

fn example(serves: &str) -> Value {
    let words = words_of(&format!("{EXAMPLE} {serves} --json"));
    let args: Vec<&str> = words.iter().skip(1).map(String::as_str).collect();
    let said = thirdwire(&args);
    assert_eq!((said.code, said.err.as_str()), (0, ""));
    said.json()
}

fn remedy<'a>(answer: &'a Value, name: &str) -> &'a Value {
    let found = list(answer, "/remedies").iter().find(|remedy| remedy["remedy"] == name);
    found.unwrap_or_else(|| panic!("no remedy {name}"))
}

#[test]
fn the_names_that_other_programs_read_are_there() {
    let answer = example("computer");
    assert_eq!(answer["edition"], 2020);
    for duty in ["gfci", "afci", "tamper_resistant", "weather_resistant", "equipment_ground"] {
        let duty = &answer["requires"][duty];
        assert!(duty["required"].is_boolean() && duty["cites"].is_array() && duty["because"].is_array(), "{duty}");
    }
    for remedy in list(&answer, "/remedies") {
        assert!(remedy["lawful"].is_boolean() && remedy["serves_equipment"].is_boolean(), "{remedy}");
        assert!(remedy["fits_box"].is_boolean() || remedy["fits_box"].is_null(), "{remedy}");
        for key in ["markings", "cites", "conditions"] {
            assert!(remedy[key].is_array(), "{key} of {remedy}");
        }
        assert_eq!(remedy["why_not"].is_null(), remedy["lawful"] == true, "{remedy}");
    }
}

/// Published: NEC 2020 as code texts print it: a bedroom is an AFCI room (210.12(A)), its replaced receptacles are
/// AFCI-protected (406.4(D)(4)) and tamper-resistant; information equipment must be grounded (250.114(3)); no bedroom is on
/// the list of 210.8(A).
#[test]
fn a_bedroom_computer_is_owed_afci_tamper_resistance_and_a_ground_and_no_gfci() {
    let answer = example("computer");
    let requires = &answer["requires"];
    assert_eq!(requires["gfci"]["required"], false);
    assert_eq!(requires["gfci"]["cites"], json!([]));
    assert_eq!(requires["afci"]["required"], true);
    assert_eq!(requires["afci"]["cites"], json!(["406.4(D)(4)", "210.12(A)"]));
    assert_eq!(requires["tamper_resistant"]["required"], true);
    assert_eq!(requires["weather_resistant"]["required"], false);
    assert_eq!(requires["equipment_ground"]["required"], true);
    assert_eq!(requires["equipment_ground"]["cites"], json!(["250.114(3)"]));
    assert_eq!(requires["equipment_ground"]["because"], json!(["computer"]));
}

/// By hand: two cables are 4 × 2 in³, clamps 2, a device 2 × 2: 14 in³ in a box of 12.5, and 16 with a new ground.
#[test]
fn no_new_device_fits_a_box_of_12_5_cubic_inches_with_two_cables_and_clamps() {
    let answer = example("computer");
    for name in ["gfci-receptacle", "downstream-of-gfci", "nongrounding-receptacle"] {
        assert_eq!(remedy(&answer, name)["fits_box"], false, "{name}");
        assert_eq!(text(remedy(&answer, name), "/fill/taken"), "14 in³", "{name}");
    }
    assert_eq!(text(remedy(&answer, "separate-egc"), "/fill/taken"), "16 in³");
}

#[test]
fn every_remedy_is_always_listed_from_least_to_most() {
    let grounds = ["none", "connected", "poor", "loose", "cut-off", "false", "disputed", "unknown"];
    for ground in grounds {
        for edition in ["2014", "2017", "2020", "2023"] {
            let said = thirdwire(&["options", "--edition", edition, "--room", "kitchen", "--ground", ground, "--json"]);
            let answer = said.json();
            let names: Vec<&str> = list(&answer, "/remedies").iter().map(|remedy| text(remedy, "/remedy")).collect();
            assert_eq!(names, REMEDIES, "{ground}, {edition}");
        }
    }
}

/// Published: the words of 406.4(D)(2), as code texts print them.
#[test]
fn the_words_to_be_marked_are_exact() {
    let answer = example("two-pin");
    assert_eq!(remedy(&answer, "gfci-receptacle")["markings"], json!(["No Equipment Ground"]));
    for name in ["downstream-of-gfci", "gfci-breaker"] {
        assert_eq!(remedy(&answer, name)["markings"], json!(["GFCI Protected", "No Equipment Ground"]), "{name}");
    }
    assert_eq!(remedy(&answer, "separate-egc")["markings"], json!([]));
}

/// By hand: a two-pin lamp needs no ground, so that everything serves it; a computer is served by a ground alone.
#[test]
fn only_a_real_ground_serves_a_computer() {
    for (serves, grounds_only) in [("computer", true), ("two-pin", false)] {
        let answer = example(serves);
        for name in ["nongrounding-receptacle", "gfci-receptacle", "downstream-of-gfci", "gfci-breaker"] {
            assert_eq!(remedy(&answer, name)["serves_equipment"], !grounds_only, "{name} for {serves}");
        }
        for name in ["separate-egc", "new-cable"] {
            assert_eq!(remedy(&answer, name)["serves_equipment"], true, "{name} for {serves}");
        }
    }
}

#[test]
fn an_opening_of_a_survey_answers_as_its_flags_do() {
    let of_survey = thirdwire(&["options", "examples/bungalow.toml", "D-2", "--json"]).json();
    assert_eq!(text(&of_survey, "/box"), "D-2");
    let flags = [
        "options",
        "--edition",
        "2020",
        "--room",
        "dining-room",
        "--breaker",
        "15 A",
        "--cable",
        "nm-two-wire",
        "--ground",
        "none",
        "--box",
        "3x2x2-1/2",
        "--cables-in-box",
        "1",
        "--gauge",
        "14",
        "--clamps",
        "inside",
        "--holds",
        "two-slot",
        "--made-for-panel",
        "gfci,dual,gfci-2p,dual-2p",
        "--room-beside-panel",
        "yes",
        "--upstream",
        "yes",
        "--json",
    ];
    let of_flags = thirdwire(&flags).json();
    assert_eq!(of_survey["requires"], of_flags["requires"]);
    assert_eq!(of_survey["remedies"], of_flags["remedies"]);
}
