//! Pipes and colours.

use crate::running::{command, document, file, thirdwire, thirdwire_reading};
use std::io::{BufRead as _, BufReader};
use std::process::Stdio;

#[test]
fn a_page_that_is_piped_has_no_colours() {
    for args in [
        &["plan", "--example", "bungalow"][..],
        &["plan", "--example", "flat", "--full"],
        &["findings", "--example", "bungalow"],
        &["options", "examples/bungalow.toml", "K-2"],
    ] {
        assert!(!thirdwire(args).out.contains('\u{1b}'), "{args:?}");
    }
    assert!(!thirdwire(&["plan", "--example", "no-such"]).err.contains('\u{1b}'));
}

#[test]
fn colours_come_when_they_are_asked_for_and_change_no_word() {
    let plain = thirdwire(&["plan", "--example", "bungalow"]).out;
    let coloured = thirdwire(&["plan", "--example", "bungalow", "--colour", "always"]).out;
    assert!(coloured.contains('\u{1b}'));
    assert_eq!(without_colours(&coloured), plain);
    assert_eq!(thirdwire(&["--colour", "never", "plan", "--example", "bungalow"]).out, plain);
}

fn without_colours(text: &str) -> String {
    let mut plain = String::new();
    let mut parts = text.split('\u{1b}');
    plain.push_str(parts.next().unwrap_or_default());
    for part in parts {
        plain.push_str(part.split_once('m').map_or("", |(_, rest)| rest));
    }
    plain
}

/// No line is wider than a narrow window of 100 columns.
#[test]
fn pages_fit_100_columns() {
    for args in [
        &["plan", "--example", "bungalow", "--full"][..],
        &["plan", "--example", "knob-and-tube"],
        &["findings", "--example", "flat"],
        &["options", "examples/bungalow.toml", "K-2"],
    ] {
        let page = thirdwire(args).out;
        let widest = page.lines().map(|line| line.chars().count()).max().unwrap_or_default();
        assert!(widest <= 100, "{args:?} is {widest} columns wide");
    }
}

#[test]
fn a_survey_comes_from_standard_input_as_well() {
    let survey = document("examples/bungalow.toml");
    let piped = thirdwire_reading(&["plan", "-", "--json"], &survey);
    assert_eq!(piped.json(), thirdwire(&["plan", "--example", "bungalow", "--json"]).json());
}

#[test]
fn a_survey_in_json_says_the_same_as_one_in_toml() {
    let json = r#"{ "format": 1, "job": { "name": "One box", "edition": 2020 },
        "room": [ { "id": "hall", "use": "hallway" } ],
        "box": [ { "id": "H-1", "room": "hall", "holds": "two-slot", "found": { "ground": "none seen" } } ] }"#;
    let toml = "format = 1\njob = { name = \"One box\", edition = 2020 }\nroom = [{ id = \"hall\", use = \"hallway\" }]\n\
                [[box]]\nid = \"H-1\"\nroom = \"hall\"\nholds = \"two-slot\"\nfound = { ground = \"none seen\" }\n";
    let (of_json, of_toml) = (file("one-box.json", json), file("one-box.toml", toml));
    let answer = thirdwire(&["plan", &of_json, "--json"]);
    assert_eq!(answer, thirdwire(&["plan", &of_toml, "--json"]));
    assert_eq!(answer.json()["openings"][0]["step"], "leave");
}

/// As in `thirdwire plan --example bungalow --full | head -1`: the reader takes a line and goes.
#[test]
fn a_reader_that_goes_after_a_line_is_no_fault() {
    let mut child = command(&["example", "bungalow"]).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let mut reader = BufReader::new(child.stdout.take().unwrap());
    let mut line = String::new();
    reader.read_line(&mut line).unwrap();
    drop(reader);
    let output = child.wait_with_output().unwrap();
    assert!(line.starts_with("# A 1956 bungalow"), "{line}");
    assert_eq!((output.status.code(), String::from_utf8_lossy(&output.stderr).as_ref()), (Some(0), ""));
}

/// The answer is longer than any pipe holds, so that the program surely writes to a reader that has gone.
#[test]
fn a_reader_that_goes_in_the_middle_of_a_long_answer_is_no_fault() {
    let args = ["plan", "--example", "bungalow", "--json"];
    assert!(thirdwire(&args).out.len() > 65_536, "too short to overflow a pipe");
    let mut child = command(&args).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert_eq!((output.status.code(), String::from_utf8_lossy(&output.stderr).as_ref()), (Some(0), ""));
}
