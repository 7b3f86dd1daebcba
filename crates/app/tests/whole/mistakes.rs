//! Mistakes in a survey: all at once, each at its place.

use crate::running::{file, list, text, thirdwire, thirdwire_reading};

const WRONG: &str = r#"format = 1
[job]
name = "x"
edition = 2020
[[room]]
id = "bed"
use = "bedrom"
[[box]]
id = "B-1"
room = "bedd"
circuit = "3"
holds = "three-slot"
body = { volume = 18 }
colour = "red"
"#;

/// By hand: the line and the column of the text that is wrong, both counted from 1.
const PLACES: [(&str, &str); 5] = [
    ("unknown-name", "7:7"),
    ("no-such-room", "10:8"),
    ("no-such-circuit", "11:11"),
    ("number-without-unit", "13:19"),
    ("unknown-key", "14:1"),
];

#[test]
fn every_mistake_is_told_at_once_with_file_line_and_column_on_standard_error() {
    let survey = file("five-mistakes.toml", WRONG);
    let said = thirdwire(&["plan", &survey]);
    assert_eq!((said.code, said.out.as_str()), (1, ""));
    for (code, place) in PLACES {
        assert!(said.err.contains(&format!("error[{code}]")), "{code}: {}", said.err);
        assert!(said.err.contains(&format!("--> {survey}:{place}\n")), "{place}: {}", said.err);
    }
    assert!(said.err.contains("7 | use = \"bedrom\"\n  |       ^^^^^^^^"), "{}", said.err);
    assert!(said.err.contains("did you mean `bedroom`?"));
    assert!(said.err.contains(&format!("5 mistakes in {survey}\n")));
}

#[test]
fn the_same_mistakes_are_told_as_json() {
    let said = thirdwire_reading(&["plan", "-", "--json"], WRONG);
    assert_eq!(said.code, 1);
    let answer = said.json();
    assert_eq!(text(&answer, "/file"), "<standard input>");
    let told: Vec<(String, String)> = list(&answer, "/mistakes")
        .iter()
        .map(|mistake| {
            let place = format!("{}:{}", mistake["labels"][0]["line"], mistake["labels"][0]["column"]);
            (text(mistake, "/code").to_owned(), place)
        })
        .collect();
    assert_eq!(told, PLACES.map(|(code, place)| (code.to_owned(), place.to_owned())));
}

#[test]
fn a_mistake_in_a_price_book_is_told_the_same_way() {
    let said = thirdwire_reading(&["prices", "--prices", "-"], "format = 1\n[material]\ngfic = 20.00\n");
    assert_eq!((said.code, said.out.as_str()), (1, ""));
    assert!(said.err.contains("--> <standard input>:3:1\n"), "{}", said.err);
    assert!(said.err.contains("`gfci`"), "{}", said.err);
}
