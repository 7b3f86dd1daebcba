//! No input panics, every place lies inside the text between characters, and a dwelling comes of no error alone.

use dwelling::{BondedGroups, circuit_trees};
use proptest::prelude::*;
use survey::{Format, MistakesAnswer, Severity, read, render, text_of};

const TOML: &str = include_str!("surveys/rich.toml");
const JSON: &str = include_str!("surveys/rich.json");

/// Reads a file and holds what came of it against what is promised.
fn hold_to_promises(bytes: &[u8], format: Format) {
    let found = read(bytes, format);
    let text = text_of(bytes);
    let errors = found.diagnostics.iter().filter(|diagnostic| diagnostic.severity == Severity::Error).count();
    assert_eq!(found.dwelling.is_some(), errors == 0);
    for diagnostic in &found.diagnostics {
        assert!(!diagnostic.labels.is_empty(), "{}", diagnostic.code);
        for label in &diagnostic.labels {
            assert!(label.span.start <= label.span.end, "{}", diagnostic.code);
            assert!(text.get(label.span.start..label.span.end).is_some(), "{}", diagnostic.code);
        }
        let shown = render(diagnostic, "larch.toml", &text);
        assert!(shown.contains(diagnostic.code));
    }
    let answer = MistakesAnswer::of("larch.toml", &text, &found.diagnostics);
    assert!(answer.mistakes.iter().all(|mistake| mistake.labels[0].line >= 1));
    if let Some(dwelling) = &found.dwelling {
        let groups = BondedGroups::of(dwelling);
        let trees = circuit_trees(dwelling);
        for index in dwelling.box_indices() {
            let tree = trees.iter().find(|tree| tree.members.contains(&index));
            let _ = dwelling::cables_in_box(dwelling, tree, index);
            assert!(groups.group_of(index).members.contains(&index));
            assert!(dwelling.rooms.get(dwelling.device_box(index).room.0).is_some());
        }
    }
}

/// One change to a file.
#[derive(Clone, Debug)]
enum Change {
    Flip(usize, u8),
    Delete(usize, usize),
    Duplicate(usize, usize),
    SwapLines(usize, usize),
    Number(usize, String),
    Insert(usize, String),
}

fn changes() -> impl Strategy<Value = Vec<Change>> {
    let place = 0usize..6_000;
    let change = prop_oneof![
        (place.clone(), any::<u8>()).prop_map(|(at, bits)| Change::Flip(at, bits)),
        (place.clone(), 1usize..60).prop_map(|(at, length)| Change::Delete(at, length)),
        (place.clone(), 1usize..200).prop_map(|(at, length)| Change::Duplicate(at, length)),
        (0usize..300, 0usize..300).prop_map(|(one, other)| Change::SwapLines(one, other)),
        (
            0usize..150,
            prop_oneof!["-?[0-9]{1,40}", "-?[0-9]{1,5}\\.[0-9]{0,30}", "[0-9]e[0-9]{1,4}", "nan|inf|0x[0-9a-f]{1,40}"]
        )
            .prop_map(|(at, number)| Change::Number(at, number)),
        (place, "\\PC{0,8}|[\\[\\]{}\"'=,\\\\]{1,4}|unknown|panel|\u{feff}")
            .prop_map(|(at, text)| Change::Insert(at, text)),
    ];
    prop::collection::vec(change, 1..6)
}

fn changed(text: &str, changes: &[Change]) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    for change in changes {
        let length = bytes.len().max(1);
        match change {
            Change::Flip(at, bits) => {
                if let Some(byte) = bytes.get_mut(at % length) {
                    *byte ^= bits;
                }
            }
            Change::Delete(at, count) => {
                let start = (at % length).min(bytes.len());
                bytes.drain(start..(start + count).min(bytes.len()));
            }
            Change::Duplicate(at, count) => {
                let start = (at % length).min(bytes.len());
                let piece = bytes[start..(start + count).min(bytes.len())].to_vec();
                bytes.splice(start..start, piece);
            }
            Change::SwapLines(one, other) => {
                let mut lines: Vec<&[u8]> = bytes.split(|byte| *byte == b'\n').collect();
                let count = lines.len();
                lines.swap(one % count, other % count);
                bytes = lines.join(&b'\n');
            }
            Change::Number(nth, number) => {
                let starts: Vec<usize> = (0..bytes.len())
                    .filter(|at| {
                        bytes[*at].is_ascii_digit()
                            && !at.checked_sub(1).is_some_and(|before| bytes[before].is_ascii_digit())
                    })
                    .collect();
                if let Some(start) = starts.get(nth % starts.len().max(1)) {
                    let end = (*start..bytes.len()).find(|at| !bytes[*at].is_ascii_digit()).unwrap_or(bytes.len());
                    bytes.splice(*start..end, number.bytes());
                }
            }
            Change::Insert(at, text) => {
                let start = (at % length).min(bytes.len());
                bytes.splice(start..start, text.bytes());
            }
        }
    }
    bytes
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn arbitrary_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        hold_to_promises(&bytes, Format::Toml);
        hold_to_promises(&bytes, Format::Json);
    }

    #[test]
    fn arbitrary_text_never_panics(text in "[\\PC\n\t\r\"\\[\\]{}=,.]{0,200}") {
        hold_to_promises(text.as_bytes(), Format::Toml);
        hold_to_promises(text.as_bytes(), Format::Json);
    }

    #[test]
    fn arbitrary_quantities_never_panic(text in "[0-9a-zA-Z'²³½ΩΩ./+^#_ -]{0,24}|\\PC{0,12}") {
        let quoted = serde_json::Value::from(text).to_string();
        let json = format!(
            r#"{{"format": 1, "job": {{"name": {quoted}}}, "room": [{{"id": "a"}}], "box": [{{"id": {quoted}, "room": "a", "height": {quoted},
            "run": {{"length": {quoted}, "gauge": {quoted}}}, "body": {{"volume": {quoted}, "size": {quoted}}}, "sink": {quoted}, "at": [{quoted}, {quoted}],
            "found": {{"hn": {quoted}, "ground_ohms": {quoted}}}}}]}}"#
        );
        hold_to_promises(json.as_bytes(), Format::Json);
    }

    #[test]
    fn changed_surveys_in_toml_never_panic(changes in changes()) {
        hold_to_promises(&changed(TOML, &changes), Format::Toml);
    }

    #[test]
    fn changed_surveys_in_json_never_panic(changes in changes()) {
        hold_to_promises(&changed(JSON, &changes), Format::Json);
    }
}
