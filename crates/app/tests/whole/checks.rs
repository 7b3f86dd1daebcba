//! The numbers of the dwellings that come with the program.

use crate::running::{list, text, thirdwire};
use serde_json::Value;

fn row<'a>(answer: &'a Value, moment: usize, check: &str, id: &str) -> &'a Value {
    let rows = list(answer, &format!("/moments/{moment}/checks"));
    let found = rows.iter().find(|row| row["check"] == check && row["subject"]["id"] == id);
    found.unwrap_or_else(|| panic!("no {check} of {id}"))
}

/// By hand: see the sums beside the tests of `calculations`.
#[test]
fn the_checks_of_the_bungalow_are_those_of_the_sums_by_hand() {
    let said = thirdwire(&["checks", "--example", "bungalow", "--json"]);
    assert_eq!(said.code, 3);
    let answer = said.json();
    let fault = row(&answer, 1, "fault-loop", "L-4");
    assert_eq!((text(fault, "/verdict"), text(fault, "/found/words")), ("ok", "247 to 468 A"));
    assert_eq!(text(row(&answer, 0, "voltage-drop", "D-2"), "/verdict"), "advice");
    // Nothing is grounded as it was found, so that there is no loop to check.
    let before = list(&answer, "/moments/0/checks");
    assert!(before.iter().all(|row| row["check"] != "fault-loop"));
}

#[test]
fn one_moment_can_be_asked_for_and_readings_belong_to_the_plan() {
    let before = thirdwire(&["checks", "--example", "bungalow", "--before", "--json"]).json();
    assert_eq!(list(&before, "/moments").len(), 1);
    assert_eq!(text(&before, "/moments/0/moment"), "before");
    assert!(list(&before, "/expected_readings").is_empty());
    let after = thirdwire(&["checks", "--example", "bungalow", "--after", "--json"]).json();
    assert_eq!(text(&after, "/moments/0/moment"), "after");
    assert!(list(&after, "/expected_readings").iter().any(|reading| reading["box"] == "L-4"));
    assert_eq!(thirdwire(&["checks", "--example", "bungalow", "--before", "--after"]).code, 2);
}

/// A panel whose fault current nobody has stated gives no verdict on clearing.
#[test]
fn lengths_and_sources_that_nobody_stated_are_asked_for() {
    let answer = thirdwire(&["checks", "--example", "flat", "--after", "--json"]).json();
    let loops = list(&answer, "/moments/0/checks").iter().filter(|row| row["check"] == "fault-loop");
    let asked: Vec<&str> = loops.map(|row| text(row, "/find_out")).collect();
    assert!(!asked.is_empty() && asked.iter().all(|what| what.contains("find out")), "{asked:?}");
}

#[test]
fn charts_are_drawn_into_the_folder_that_is_named() {
    let folder = std::path::PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("charts");
    let _gone = std::fs::remove_dir_all(&folder);
    let said = thirdwire(&["checks", "--example", "bungalow", "--after", "--svg", &folder.display().to_string()]);
    assert!(said.out.contains("drawn: after-circuit-1.svg"), "{}", said.out);
    let mut names: Vec<String> =
        std::fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    let circuits = ["after-circuit-1.svg", "after-circuit-3.svg", "after-circuit-4.svg", "after-circuit-6.svg"];
    assert_eq!(names, [&circuits[..], &["after-leakage.svg"]].concat());
    let drawing = std::fs::read_to_string(folder.join("after-leakage.svg")).unwrap();
    assert!(drawing.contains("<title id=\"title\">Leakage behind each GFCI</title>"));
    // A file where the folder should be.
    let said = thirdwire(&["checks", "--example", "bungalow", "--svg", "README.md"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("cannot write `README.md`"), "{}", said.err);
}

/// By hand: nine things plugged in on one circuit may leak 4.5 mA, too much for one GFCI: two must share it.
#[test]
fn the_leakage_that_rules_a_breaker_out_is_told_with_its_number() {
    let boxes: String = (1..=3)
        .map(|number| {
            let fed_by = if number == 1 { "panel".to_owned() } else { format!("A-{}", number - 1) };
            format!(
                "[[box]]\nid = \"A-{number}\"\nroom = \"den\"\ncircuit = \"1\"\nfed_by = \"{fed_by}\"\nholds = \"three-slot\"\n\
                 body = {{ volume = \"30 in3\", clamps = \"none\" }}\nfound = {{ hn = 120, ground = \"none seen\" }}\n\
                 serves = [\"television\", \"two-pin\", \"alarm-system\"]\n"
            )
        })
        .collect();
    let survey = format!(
        "format = 1\n[job]\nname = \"nine\"\nedition = 2020\n[[panel]]\nid = \"main\"\nmade_for_it = [\"gfci\", \"dual\"]\n\
         [[circuit]]\nid = \"1\"\npanel = \"main\"\nbreaker = \"15 A\"\ncable = \"nm-two-wire\"\ngauge = 14\n\
         [[room]]\nid = \"den\"\nuse = \"den\"\n{boxes}"
    );
    let path = crate::running::file("nine.toml", &survey);
    let plan = thirdwire(&["plan", &path, "--json"]).json();
    assert_eq!(text(&plan, "/circuits/0/at_panel"), "as-it-is");
    let told = text(&plan, "/circuits/0/not_offered/0");
    assert!(told.contains("up to 4.5 mA of leakage"), "{told}");
    let why: Vec<&str> = list(&plan, "/openings").iter().map(|opening| text(opening, "/why")).collect();
    assert!(why.iter().any(|why| why.contains("may leak 4.5 mA, too much for one GFCI")), "{why:?}");
    let checks = thirdwire(&["checks", &path, "--after", "--json"]).json();
    let rows = list(&checks, "/moments/0/checks");
    let most = rows.iter().filter(|row| row["check"] == "leakage").map(|row| {
        let so_far = row["says"].as_str().unwrap_or_default();
        assert!(!so_far.contains("it may trip"), "{so_far}");
        so_far
    });
    assert!(most.count() >= 2);
}
