//! What a script learns from the exit code.

use crate::running::{file, thirdwire, thirdwire_reading};

const NO_EDITION: &str = r#"format = 1
[job]
name = "No edition"
[[room]]
id = "hall"
[[box]]
id = "H-1"
room = "hall"
holds = "two-slot"
"#;

#[test]
fn an_answer_that_is_the_last_word_exits_with_0() {
    for args in [
        &["plan", "--example", "bungalow"][..],
        &["circuits", "--example", "flat"],
        &["schema"],
        &["schema", "plan"],
        &["prices"],
        &["prices", "--json"],
        &["practice"],
        &["practice", "--json"],
        &["schema", "practice"],
        &["example"],
        &["example", "flat"],
        &["options", "examples/bungalow.toml", "K-2"],
    ] {
        let said = thirdwire(args);
        assert_eq!((said.code, said.err.as_str()), (0, ""), "{args:?}");
        assert!(!said.out.is_empty(), "{args:?}");
    }
}

#[test]
fn a_survey_with_mistakes_exits_with_1_whatever_is_asked_of_it() {
    let survey = file("mistakes.toml", "format = 1\n[job]\nnam = \"x\"\n");
    for args in [
        &["plan", &survey][..],
        &["findings", &survey],
        &["editions", &survey, "--from", "2014", "--to", "2023"],
        &["circuits", &survey],
        &["options", &survey, "K-2"],
        &["prices", "--prices", &survey],
        &["practice", "--practice", &survey],
        &["findings", "--example", "bungalow", "--practice", &survey],
        &["plan", "--example", "bungalow", "--prices", &survey],
    ] {
        let said = thirdwire(args);
        assert_eq!((said.code, said.out.as_str()), (1, ""), "{args:?}");
    }
}

#[test]
fn a_wrong_command_line_or_an_unreadable_file_exits_with_2() {
    for args in [
        &["plann"][..],
        &[],
        &["plan"],
        &["plan", "no-such-file.toml"],
        &["plan", "crates"],
        &["plan", "--example", "bungalow", "examples/flat.toml"],
        &["plan", "--example", "bungalow", "--prices", "no-such-file.toml"],
        &["plan", "--example", "bungalow", "--edition", "latest"],
        &["findings", "no-such-file.toml"],
        &["findings", "--example", "bungalow", "--practice", "no-such-file.toml"],
        &["editions", "--example", "bungalow", "--from", "2014"],
        &["circuits", "--example", "castle"],
        &["options", "--edition", "2020", "--room", "bedrom"],
        &["options", "--edition", "2020", "--room", "bedroom", "--breaker", "15"],
        &["options", "examples/bungalow.toml", "K-9"],
        &["schema", "bill"],
        &["example", "castle"],
    ] {
        let said = thirdwire(args);
        assert_eq!((said.code, said.out.as_str()), (2, ""), "{args:?}");
        assert!(!said.err.is_empty(), "{args:?}");
    }
}

#[test]
fn the_nearest_name_is_offered() {
    for (args, near) in [
        (&["plan", "--example", "bungalo"][..], "did you mean `bungalow`?"),
        (&["options", "examples/bungalow.toml", "K-9"], "did you mean `K-1`?"),
        (&["options", "--edition", "2020", "--room", "bedrom"], "did you mean `bedroom`?"),
        (&["example", "knob-and-tub"], "did you mean `knob-and-tube`?"),
        (&["options", "--edition", "2020", "--room", "bedroom", "--serves", "computr"], "did you mean `computer`?"),
    ] {
        let said = thirdwire(args);
        assert!(said.err.contains(near), "{args:?}: {}", said.err);
    }
}

#[test]
fn what_is_not_the_last_word_exits_with_3() {
    for args in [
        &["plan", "--example", "flat"][..],
        &["plan", "--example", "knob-and-tube", "--json"],
        &["findings", "--example", "bungalow"],
        &["options", "--edition", "2020", "--room", "bedroom"],
        &["editions", "--example", "bungalow", "--from", "1999", "--to", "2023"],
    ] {
        assert_eq!(thirdwire(args).code, 3, "{args:?}");
    }
}

#[test]
fn an_edition_that_is_not_covered_exits_with_3_and_says_which_are() {
    let said = thirdwire(&["plan", "--example", "bungalow", "--edition", "1999"]);
    assert_eq!((said.code, said.out.as_str()), (3, ""));
    let covered = "not checked: the 1999 edition is not covered; covered are ";
    assert!(said.err.starts_with(covered) && said.err.contains("2014, 2017, 2020, 2023"), "{}", said.err);
    let said = thirdwire(&["options", "--edition", "1999", "--room", "bedroom", "--json"]);
    assert_eq!(said.code, 3);
    assert_eq!(said.json()["edition"], 1999);
    assert!(said.json()["not_checked"].as_str().is_some_and(|why| why.contains("1999")));
}

#[test]
fn a_survey_without_an_edition_is_not_checked_and_never_a_pass() {
    let said = thirdwire_reading(&["plan", "-"], NO_EDITION);
    assert_eq!((said.code, said.out.as_str()), (3, ""));
    assert!(said.err.contains("the edition of the code in force is not stated"), "{}", said.err);
    let said = thirdwire_reading(&["plan", "-", "--json"], NO_EDITION);
    assert_eq!(said.json()["edition"], serde_json::Value::Null);
    let said = thirdwire_reading(&["plan", "-", "--edition", "2023", "--json"], NO_EDITION);
    assert_eq!(said.json()["job"]["edition"], 2023);
}

/// A computer with no route to any ground: the code can be met, what is plugged in cannot be served.
#[test]
fn equipment_that_no_route_can_ground_blocks_the_plan() {
    let survey = r#"format = 1
[job]
name = "No way to a ground"
edition = 2020
[[panel]]
id = "main"
overcurrent = "breakers"
made_for_it = ["dual"]
[[circuit]]
id = "1"
panel = "main"
breaker = "15 A"
cable = "nm-two-wire"
gauge = 14
[[room]]
id = "den"
use = "den"
[[box]]
id = "D-1"
room = "den"
circuit = "1"
fed_by = "panel"
body = { metal = true, size = "3x2x2-1/2", clamps = "inside" }
holds = "three-slot"
found = { hn = 120, ground = "none seen" }
serves = ["computer"]
"#;
    let said = thirdwire_reading(&["plan", "-", "--json"], survey);
    assert_eq!(said.code, 3);
    assert_eq!(said.json()["status"], "blocked");
    assert!(said.json()["in_the_way"][0].as_str().is_some_and(|line| line.starts_with("D-1:")), "{}", said.out);
}
