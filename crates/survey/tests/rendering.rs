//! How mistakes look: tabs, wide and hidden characters, long lines, several places.

use survey::{Diagnostic, Format, Label, MistakesAnswer, SOUND, Severity, Span, read, render};

fn shown(lines: &str) -> String {
    let text = format!("{SOUND}{lines}\n");
    let found = read(text.as_bytes(), Format::Toml);
    found.diagnostics.iter().map(|diagnostic| render(diagnostic, "larch.toml", &text)).collect()
}

#[test]
fn carets_stand_under_what_they_mean_behind_tabs() {
    assert_eq!(
        shown("\theight\t= 16"),
        "\
error[number-without-unit]: `height` needs a unit
  --> larch.toml:20:11
20 |     height    = 16
   |                 ^^ a number alone
   = help: write `\"16 in\"` or `\"16 mm\"`
"
    );
}

#[test]
fn carets_stand_under_what_they_mean_behind_wide_characters() {
    assert_eq!(
        shown("found = { tester = \"開放\", hn = -1 }"),
        "\
error[unknown-name]: `tester` cannot be `開放`
  --> larch.toml:20:20
20 | found = { tester = \"開放\", hn = -1 }
   |                    ^^^^^^ not one of the tester verdicts
   = help: known are `correct`, `open ground`, `open neutral`, `open hot`, `hot and neutral reversed`, `hot and ground reversed`, `not listed`, `false ground`
error[volts-negative]: `hn` cannot be below zero
  --> larch.toml:20:31
20 | found = { tester = \"開放\", hn = -1 }
   |                                 ^^ below zero
   = help: alternating current has no sign: was the meter set to direct current?
"
    );
}

#[test]
fn long_lines_are_shown_around_the_place_alone() {
    let middle = format!("note = \"{}\", x = 1", "é".repeat(300));
    let text = format!("{SOUND}{middle}");
    let at = text.find("x = 1").unwrap();
    let diagnostic = Diagnostic {
        severity: Severity::Warning,
        code: "unknown-key",
        message: "no such key".to_string(),
        labels: vec![Label { span: Span::new(at, at + 1), text: "here".to_string() }],
        help: None,
    };
    let expected = format!(
        "warning[unknown-key]: no such key\n  --> larch.toml:20:312\n20 | …{}\", x = 1\n   | {}^ here\n",
        "é".repeat(37),
        " ".repeat(41)
    );
    assert_eq!(render(&diagnostic, "larch.toml", &text), expected);
}

#[test]
fn hidden_characters_are_made_visible() {
    let text = format!("{SOUND}note = \"a\u{202e}b\u{1b}[31m\"\n");
    let found = read(text.as_bytes(), Format::Toml);
    let shown: String = found.diagnostics.iter().map(|diagnostic| render(diagnostic, "larch.toml", &text)).collect();
    assert!(shown.contains("a�b␛[31m"), "{shown}");
}

#[test]
fn a_label_over_several_lines_is_drawn_under_the_first() {
    assert_eq!(
        shown("[[room]]\nid = \"hall\"\noutline = [\n  [0, 0],\n  [1, 1],\n]"),
        "\
error[outline-too-few-corners]: an outline needs three corners or more
  --> larch.toml:22:11
22 | outline = [
   |           ^ 2 corners
   = help: leave `outline` out where the room is not drawn
"
    );
}

/// By hand: the sound survey has 19 lines and its last box may have a `note`; `title` is the first five characters of line 21.
#[test]
fn a_mistake_as_json_has_its_places_in_lines_and_characters() {
    let text = format!("{SOUND}note = \"é\"\ntitle = 'é'\n");
    let found = read(text.as_bytes(), Format::Toml);
    let answer = MistakesAnswer::of("house.toml", &text, &found.diagnostics);
    let json = &serde_json::to_value(answer).unwrap()["mistakes"][0];
    assert_eq!(json["severity"], "error");
    assert_eq!(json["code"], "unknown-key");
    assert_eq!(json["labels"][0]["line"], 21);
    assert_eq!(json["labels"][0]["column"], 1);
    assert_eq!(json["labels"][0]["end_column"], 6);
}

#[test]
fn a_diagnostic_of_another_text_is_rendered_without_a_panic() {
    let diagnostic = Diagnostic {
        severity: Severity::Error,
        code: "unknown-key",
        message: String::new(),
        labels: vec![Label { span: Span::new(7, 900), text: String::new() }],
        help: None,
    };
    for text in ["", "é", "\u{feff}", "\r\n\r\n", "ééééééé"] {
        assert!(render(&diagnostic, "", text).starts_with("error[unknown-key]"));
    }
}
