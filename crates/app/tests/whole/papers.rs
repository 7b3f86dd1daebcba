//! Papers from the command line: the files, what is told of them, and what is refused.

use crate::running::{list, text, thirdwire};
use std::path::PathBuf;

fn folder(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name)
}

/// By hand: the plan of the bungalow marks 11 openings; 2 of them, BA-1 and Y-1, are protected by their own device.
#[test]
fn the_set_of_the_bungalow_is_written_and_told() {
    let folder = folder("papers-bungalow");
    let answer = thirdwire(&["papers", "--example", "bungalow", "-o", &folder.display().to_string(), "--json"]).json();
    for file in list(&answer, "/files") {
        let bytes = std::fs::read(folder.join(text(file, "/file"))).unwrap();
        assert!(bytes.starts_with(b"%PDF"), "{file}");
    }
    let counts: Vec<String> = list(&answer, "/markings")
        .iter()
        .map(|count| format!("{} {}", text(count, "/words"), count["openings"]))
        .collect();
    assert_eq!(counts, ["GFCI Protected 9", "No Equipment Ground 11"]);
    assert_eq!((answer["date"].is_null(), answer["settled"].as_bool()), (true, Some(true)));
}

#[test]
fn the_same_survey_gives_the_same_bytes() {
    let folders = [folder("papers-once"), folder("papers-again")];
    for folder in &folders {
        let said = thirdwire(&["papers", "--example", "flat", "-o", &folder.display().to_string(), "--paper", "a4"]);
        // The flat has something to settle first.
        assert_eq!(said.code, 3, "{said:?}");
        assert!(said.out.contains("not settled"), "{}", said.out);
    }
    for entry in std::fs::read_dir(&folders[0]).unwrap() {
        let name = entry.unwrap().file_name();
        assert_eq!(std::fs::read(folders[0].join(&name)).unwrap(), std::fs::read(folders[1].join(&name)).unwrap());
    }
}

#[test]
fn what_cannot_be_written_is_refused_with_the_reason() {
    let said = thirdwire(&["papers", "--example", "flat"]);
    assert_eq!(said.code, 2);
    let out = folder("papers-refused").display().to_string();
    let asked = |more: &[&str]| thirdwire(&[&["papers", "--example", "flat", "-o", &out], more].concat());
    for (flags, reason) in [
        (["--label-grid", "9x9"], "reach over its edge"),
        (["--label-size", "2x1"], "is not two lengths"),
        (["--date", "2026-02-30"], "a day is written like"),
        (["--offer", "99"], "there is no offer 99"),
    ] {
        let said = asked(&flags);
        assert_eq!(said.code, 2, "{flags:?}");
        assert!(said.err.contains(reason), "{flags:?}: {}", said.err);
    }
    let said = thirdwire(&["papers", "--example", "flat", "-o", "Cargo.toml"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("cannot write"), "{}", said.err);
}
