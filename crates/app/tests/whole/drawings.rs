//! Drawings from the command line: files, floors, and what has no place.

use crate::running::{file, list, text, thirdwire};
use std::path::PathBuf;

#[test]
fn a_dwelling_of_one_floor_is_drawn_on_standard_output() {
    let said = thirdwire(&["draw", "--example", "bungalow"]);
    // The luminaire of the laundry porch has no position.
    assert_eq!((said.code, said.err.as_str()), (3, ""));
    assert!(said.out.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""), "{}", said.out);
    assert!(said.out.contains("Quince Row bungalow: Floor 1, as the plan leaves it, by the 2020 edition"));
}

/// By hand: the bungalow's survey has 30 boxes; one of them has no `at`.
#[test]
fn the_answer_as_json_names_what_could_not_be_placed() {
    let answer = thirdwire(&["draw", "--example", "bungalow", "--before", "--json"]).json();
    assert_eq!(text(&answer, "/moment"), "before");
    assert!(text(&answer, "/sheets/0/svg").contains("as it was found"));
    let missing = list(&answer, "/not_placed").iter().filter(|thing| thing["kind"] == "box");
    assert_eq!(missing.map(|thing| text(thing, "/id")).collect::<Vec<_>>(), ["LA-3"]);
    assert_eq!(list(&answer, "/sheets/0/boxes").len() + 1, 30);
}

#[test]
fn several_floors_are_drawn_into_a_file_each() {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("drawn");
    std::fs::create_dir_all(&folder).unwrap();
    let path = folder.join("house.svg").display().to_string();
    let said = thirdwire(&["draw", "--example", "knob-and-tube", "-o", &path]);
    for floor in 0..3 {
        let drawing = std::fs::read_to_string(folder.join(format!("house-floor-{floor}.svg"))).unwrap();
        assert!(drawing.contains(&format!("Floor {floor}")));
    }
    assert!(said.out.contains("house-floor-2.svg") && !said.out.contains("listed beside the plan"), "{}", said.out);
    let one = thirdwire(&["draw", "--example", "knob-and-tube", "--floor", "2"]);
    assert!(one.out.starts_with("<svg") && one.out.contains("Floor 2"));
}

#[test]
fn what_cannot_be_drawn_is_told_with_what_can() {
    let said = thirdwire(&["draw", "--example", "knob-and-tube"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("there are 3 sheets") && said.err.contains("`--floor`"), "{}", said.err);
    let said = thirdwire(&["draw", "--example", "knob-and-tube", "--floor", "7"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("nothing on floor 7; there are floors 0, 1, 2"), "{}", said.err);
    let said = thirdwire(&["draw", "--example", "bungalow", "-o", "no-such-folder/plan.svg"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("cannot write"), "{}", said.err);
    let broken = file("broken-to-draw.toml", "format = 1\n[job]\nname = \"x\"\n");
    let said = thirdwire(&["draw", &broken]);
    assert_eq!(said.code, 1);
    assert!(said.err.contains("no-rooms"), "{}", said.err);
}

#[test]
fn what_was_found_can_be_drawn_where_the_edition_is_not_known() {
    let text = thirdwire(&["example", "bungalow"]).out.replace("edition = 2020\n", "");
    let path = file("no-edition-to-draw.toml", &text);
    assert!(thirdwire(&["draw", &path, "--before"]).out.starts_with("<svg"));
    let said = thirdwire(&["draw", &path]);
    assert_eq!((said.code, said.out.as_str()), (3, ""));
}

/// By hand: the bungalow's survey has 30 boxes on six circuits.
#[test]
fn circuits_are_drawn_with_what_is_believed_of_every_box() {
    let answer = thirdwire(&["draw", "--example", "bungalow", "--circuits", "--json"]).json();
    let sheets = list(&answer, "/sheets");
    let of = |key: &str| -> Vec<&str> {
        sheets.iter().flat_map(|sheet| list(sheet, key)).filter_map(serde_json::Value::as_str).collect()
    };
    assert_eq!(of("/circuits"), ["1", "2", "3", "4", "5", "6"]);
    let mut boxes = of("/boxes");
    boxes.sort_unstable();
    boxes.dedup();
    assert_eq!((boxes.len(), of("/boxes").len()), (30, 30));
}

/// What `findings --json` says of a box stands in its drawing: the likeliest state with its share, and what may be said.
#[test]
fn drawings_of_circuits_say_what_the_findings_say() {
    for example in ["bungalow", "flat", "knob-and-tube"] {
        let drawn = thirdwire(&["draw", "--example", example, "--circuits", "--json"]).json();
        let svg: String = list(&drawn, "/sheets").iter().map(|sheet| text(sheet, "/svg")).collect();
        let findings = thirdwire(&["findings", "--example", example, "--json"]).json();
        for belief in list(&findings, "/beliefs") {
            let id = text(belief, "/id");
            let group = svg.split(&format!("<g class=\"box\" data-id=\"{id}\">")).nth(1).unwrap();
            let says = group.split("</title>").next().unwrap();
            let (state, odds) = (text(belief, "/ground/0/is"), belief["ground"][0]["odds"].as_f64().unwrap());
            let share = if odds >= 0.995 { "&gt;99".to_owned() } else { format!("{:.0}", odds * 100.0) };
            assert!(says.contains(&format!("{state} {share} %")), "{id}: {state} {odds}: {says}");
            let may_be_said = belief["verdict"].as_str().is_some();
            assert_eq!(says.contains("; may be said; run"), may_be_said, "{id}: {says}");
        }
    }
}

#[test]
fn one_circuit_is_drawn_on_standard_output_and_many_into_files() {
    let said = thirdwire(&["draw", "--example", "bungalow", "--circuit", "3"]);
    assert_eq!((said.code, said.err.as_str()), (0, ""));
    assert!(
        said.out.starts_with("<svg") && said.out.contains("Quince Row bungalow: Circuit 3</title>"),
        "{}",
        said.out
    );
    let said = thirdwire(&["draw", "--example", "bungalow", "--circuits"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("`--circuit`"), "{}", said.err);
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("circuits-drawn");
    std::fs::create_dir_all(&folder).unwrap();
    let path = folder.join("house.svg").display().to_string();
    let said = thirdwire(&["draw", "--example", "bungalow", "--circuits", "-o", &path]);
    assert!(said.out.contains("house-sheet-2.svg"), "{}", said.out);
    assert!(std::fs::read_to_string(folder.join("house-sheet-2.svg")).unwrap().contains("LA-3"));
}

#[test]
fn a_circuit_that_is_not_there_and_flags_that_do_not_go_with_circuits_are_refused() {
    let said = thirdwire(&["draw", "--example", "bungalow", "--circuit", "9"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("there is no circuit `9`; there are 1, 2, 3, 4, 5, 6"), "{}", said.err);
    for flags in [["--circuits", "--after"], ["--circuits", "--before"], ["--circuits", "--edition=2023"]] {
        assert_eq!(thirdwire(&[&["draw", "--example", "bungalow"], &flags[..]].concat()).code, 2, "{flags:?}");
    }
}

#[test]
fn a_box_whose_feeding_nobody_knows_is_drawn_and_told() {
    let survey = thirdwire(&["example", "bungalow"]).out.replacen("fed_by  = \"L-2\"\n", "", 1);
    let path = file("feeding-not-known-to-draw.toml", &survey);
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("circuits-drawn");
    std::fs::create_dir_all(&folder).unwrap();
    let to = folder.join("unknown.svg").display().to_string();
    let said = thirdwire(&["draw", &path, "--circuits", "-o", &to]);
    assert_eq!(said.code, 3, "{}", said.err);
    assert!(said.out.contains("nobody knows what feeds them: L-3"), "{}", said.out);
}
