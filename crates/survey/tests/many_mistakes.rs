//! Every mistake of a file in one go, in TOML and in JSON, and what is still read of a broken file.

use survey::{Format, MistakesAnswer, SOUND, read, render, text_of};

fn codes(text: &str, format: Format) -> Vec<&'static str> {
    read(text.as_bytes(), format).diagnostics.iter().map(|diagnostic| diagnostic.code).collect()
}

#[test]
fn all_mistakes_of_a_file_are_told_at_once_in_the_order_of_the_file() {
    let text = r#"format = 1
[job]
name = "Larch Street"
built = 19566
[[circuit]]
id = "3"
panel = "mian"
breaker = 15
[[room]]
id = "kitchen"
use = "kitchn"
[[box]]
id = "K-1"
room = "kitchen"
circuit = "3"
fed_by = "K-1"
body = { volume = "-3 in3", clamps = "insid" }
found = { hn = 1200, ground = "none" }
colour = "white"
"#;
    assert_eq!(
        codes(text, Format::Toml),
        [
            "built-not-plausible",
            "no-such-panel",
            "number-without-unit",
            "unknown-name",
            "box-feeds-itself",
            "volume-not-positive",
            "unknown-name",
            "volts-beyond-meter",
            "unknown-name",
            "unknown-key",
        ]
    );
}

#[test]
fn json_mistakes_are_pointed_at_like_those_of_toml() {
    let text = "{\n  \"format\": 1,\n  \"job\": {\"name\": \"x\", \"name\": \"y\"},\n  \"room\": [{\"id\": \"a\"}],\n  \"box\": [{\"id\": 5, \"room\": \"a\", \"height\": null}]\n}\n";
    let found = read(text.as_bytes(), Format::Json);
    let shown: String = found.diagnostics.iter().map(|diagnostic| render(diagnostic, "larch.json", text)).collect();
    assert_eq!(
        shown,
        r#"error[key-twice]: the key `name` is given twice
 --> larch.json:3:24
3 |   "job": {"name": "x", "name": "y"},
  |                        ^^^^^^ again here
  |           ------ first here
  = help: keep one of the two
error[wrong-type]: `id` must be a name of your own in quotes, such as `"B2-1"`
 --> larch.json:5:18
5 |   "box": [{"id": 5, "room": "a", "height": null}]
  |                  ^ this is a number
  = help: write `"5"`
error[wrong-type]: `height` must be a height with its unit, such as `"16 in"` or `"400 mm"`
 --> larch.json:5:44
5 |   "box": [{"id": 5, "room": "a", "height": null}]
  |                                            ^^^^ this is nothing
  = help: leave the key out, or write `"unknown"`
"#
    );
}

#[test]
fn a_broken_line_hides_no_mistake_elsewhere() {
    let text = format!("{SOUND}height = 4 ft\nwant = three\n\n[[room]]\nid = \"hall\"\nuse = \"hallwy\"\n");
    assert_eq!(codes(&text, Format::Toml), ["toml-syntax", "toml-syntax", "unknown-name"]);
}

#[test]
fn what_a_broken_line_takes_away_is_not_missed_a_second_time() {
    let text = SOUND.replace("[[room]]\nid = \"kitchen\"", "[[room]]\nid = kitchen");
    assert_eq!(codes(&text, Format::Toml), ["toml-syntax"]);
}

#[test]
fn a_table_written_twice_names_both_places() {
    let text = format!("{SOUND}\n[job]\nbuilt = 1956\n");
    let found = read(text.as_bytes(), Format::Toml);
    let shown: String = found.diagnostics.iter().map(|diagnostic| render(diagnostic, "larch.toml", &text)).collect();
    assert_eq!(
        shown,
        "\
error[key-twice]: the key `job` is given twice
  --> larch.toml:21:2
 3 | [job]
   |  --- first here
   ...
21 | [job]
   |  ^^^ again here
   = help: keep one of the two
"
    );
    assert!(found.dwelling.is_none());
}

/// By hand: after the 19 lines of the sound survey an empty one and three of the circuit, then `gauge` twice, in lines 24 and 25.
#[test]
fn a_key_of_an_inner_table_is_not_taken_for_the_first_of_two() {
    let text = format!(
        "{SOUND}\n[[circuit]]\nid = \"5\"\npanel = \"main\"\ngauge = 14\ngauge = 12\n\n[[box]]\nid = \"K-2\"\nroom = \"kitchen\"\nrun = {{ gauge = 12 }}\n"
    );
    let found = read(text.as_bytes(), Format::Toml);
    let answer = MistakesAnswer::of("house.toml", &text, &found.diagnostics);
    let lines: Vec<usize> = answer.mistakes[0].labels.iter().map(|label| label.line).collect();
    assert_eq!(lines, [25, 24]);
}

#[test]
fn a_table_in_place_of_a_list_of_tables_is_told_what_to_write() {
    let text = "format = 1\n[job]\nname = \"x\"\n[room]\nid = \"a\"\n[[box]]\nid = \"b\"\nroom = \"a\"\n";
    let found = read(text.as_bytes(), Format::Toml);
    assert_eq!(found.diagnostics[0].message, "`room` must be a list of tables, each under `[[room]]`");
}

#[test]
fn both_circuits_of_a_multiwire_set_may_feed_each_others_boxes() {
    let lines = "\n[[circuit]]\nid = \"5\"\npanel = \"main\"\nshares_neutral_with = \"3\"\n\n[[box]]\nid = \"K-2\"\nroom = \"kitchen\"\ncircuit = \"5\"\nfed_by = \"K-1\"\n";
    assert_eq!(codes(&format!("{SOUND}{lines}"), Format::Toml), [""; 0]);
}

#[test]
fn three_circuits_cannot_share_one_neutral() {
    let lines = "\n[[circuit]]\nid = \"5\"\npanel = \"main\"\nshares_neutral_with = \"3\"\n\n[[circuit]]\nid = \"7\"\npanel = \"main\"\nshares_neutral_with = \"3\"\n";
    assert_eq!(codes(&format!("{SOUND}{lines}"), Format::Toml), ["neutral-shared-one-sidedly"]);
}

#[test]
fn a_ring_behind_a_tail_is_told_once() {
    let boxes: String = [("A", "B"), ("B", "C"), ("C", "B"), ("D", "A")]
        .iter()
        .map(|(id, feed)| format!("\n[[box]]\nid = \"{id}\"\nroom = \"kitchen\"\nfed_by = \"{feed}\"\n"))
        .collect();
    let text = format!("{SOUND}{boxes}");
    let found = read(text.as_bytes(), Format::Toml);
    let messages: Vec<&str> = found.diagnostics.iter().map(|diagnostic| diagnostic.message.as_str()).collect();
    assert_eq!(messages, ["boxes feed one another in a ring: `B` is fed by `C` is fed by `B`"]);
}

#[test]
fn phantom_volts_of_a_high_impedance_meter_are_no_contradiction() {
    let reading = |meter: &str| format!("{SOUND}found = {{ hn = 121, hg = 38, ng = 12, meter = \"{meter}\" }}\n");
    assert_eq!(codes(&reading("high-impedance"), Format::Toml), [""; 0]);
    assert_eq!(codes(&reading("low-impedance"), Format::Toml), ["readings-contradict"]);
}

#[test]
fn warnings_leave_the_dwelling_to_be_used() {
    let text = format!("{SOUND}found = {{}}\n");
    let found = read(text.as_bytes(), Format::Toml);
    assert_eq!(found.diagnostics.len(), 1);
    assert!(found.dwelling.is_some());
}

#[test]
fn files_of_nothing_but_brackets_are_refused_without_a_crash() {
    for format in [Format::Toml, Format::Json] {
        let text = "[".repeat(2_000_000);
        assert!(!read(text.as_bytes(), format).diagnostics.is_empty());
    }
    let deep = format!("{SOUND}note = {}{}\n", "[".repeat(5_000), "]".repeat(5_000));
    assert_eq!(codes(&deep, Format::Toml).iter().filter(|code| **code == "nested-too-deep").count(), 1);
}

/// By hand: the second line, after `name = "` (8 characters) and one that takes two bytes.
#[test]
fn the_place_of_a_byte_that_is_no_utf_8_is_told() {
    let bytes = b"format = 1\nname = \"\xc3\xa9\xff\"\n";
    let found = read(bytes, Format::Toml);
    let answer = MistakesAnswer::of("house.toml", &text_of(bytes), &found.diagnostics);
    let place = &answer.mistakes[0].labels[0];
    assert_eq!((place.line, place.column), (2, 10));
}

#[test]
fn the_only_panel_feeds_a_box_whose_circuit_nobody_knows() {
    let text = format!("{SOUND}\n[[box]]\nid = \"K-2\"\nroom = \"kitchen\"\nfed_by = \"panel\"\n");
    let found = read(text.as_bytes(), Format::Toml);
    let fed_by = found.dwelling.map(|dwelling| dwelling.boxes[1].fed_by);
    assert_eq!(fed_by, Some(Some(dwelling::Feed::Panel(dwelling::PanelIndex(0)))));
}

#[test]
fn a_file_of_nothing_but_mistakes_is_told_in_a_thousand() {
    let text: String = (0..50_000).map(|number| format!("key-{number} = 1\n")).collect();
    let codes = codes(&text, Format::Toml);
    assert_eq!((codes.len(), codes.last()), (1_001, Some(&"too-many-mistakes")));
}

#[test]
fn an_aluminium_run_is_held_against_its_circuits_size() {
    let circuit = "\n[[circuit]]\nid = \"5\"\npanel = \"main\"\ngauge = 14\n";
    let text = format!(
        "{SOUND}{circuit}\n[[box]]\nid = \"K-2\"\nroom = \"kitchen\"\ncircuit = \"5\"\nrun = {{ metal = \"aluminum\" }}\n"
    );
    assert_eq!(codes(&text, Format::Toml), ["aluminium-too-thin"]);
}
