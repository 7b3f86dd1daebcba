//! Practice files: every key is read, every mistake is pointed at, what is written reads back.

use diagnosis::belief::Practice;
use proptest::prelude::*;
use survey::{MistakesAnswer, practice_as_json, practice_file, practice_schema, read_practice, render, text_of};

const RICH: &str = include_str!("surveys/practice.toml");

/// Every figure with its table, its key and its value.
fn figures(mut practice: Practice) -> Vec<(&'static str, &'static str, f64)> {
    practice.figures().into_iter().map(|figure| (figure.table, figure.key, *figure.value)).collect()
}

fn practice_of(text: &str) -> Practice {
    let (practice, diagnostics) = read_practice(text.as_bytes());
    assert_eq!(diagnostics, []);
    practice.unwrap_or_else(|| panic!("nothing was read of {text}"))
}

/// The code, the line and the column of each mistake.
fn mistakes(text: &str) -> Vec<(&'static str, usize, usize)> {
    let (practice, diagnostics) = read_practice(text.as_bytes());
    assert_eq!(practice, None);
    let answer = MistakesAnswer::of("practice.toml", text, &diagnostics);
    let place = |mistake: &survey::MistakeAnswer| (mistake.code, mistake.labels[0].line, mistake.labels[0].column);
    answer.mistakes.iter().map(place).collect()
}

/// By hand: the rich file changes every figure, so a key that is not read would keep the shipped one.
#[test]
fn every_key_is_read_and_replaces_its_figure() {
    let shipped = figures(Practice::default());
    let own = figures(practice_of(RICH));
    assert_eq!(own.len(), shipped.len());
    for ((table, key, own), (_, _, shipped)) in own.iter().zip(&shipped) {
        assert_ne!(own, shipped, "{table} {key}");
    }
}

/// By hand: the figures as the rich file has them.
#[test]
fn the_figures_come_where_they_belong() {
    let Practice { priors, stakes } = practice_of(RICH);
    assert_eq!(priors.hot, [0.97, 0.02, 0.01]);
    assert_eq!(priors.neutral, [0.96, 0.03, 0.01]);
    assert_eq!(priors.ground_of_grounded, [0.90, 0.03, 0.03, 0.02, 0.02, 0.0]);
    assert_eq!(priors.ground_of_reduced, [0.70, 0.10, 0.07, 0.07, 0.06, 0.0]);
    assert_eq!(priors.ground_of_metal, [0.85, 0.09, 0.03, 0.0, 0.03, 0.0]);
    assert_eq!(priors.ground_of_plain_armor, [0.10, 0.50, 0.10, 0.0, 0.05, 0.25]);
    assert_eq!((priors.unknown_metal_is_sound, priors.cable_misrecorded), (0.25, 0.03));
    assert_eq!((priors.unseen_panel_has_ground, priors.panel_without_bar_has_ground), (0.8, 0.2));
    assert_eq!(priors.unseen_brings_ground, [0.02, 0.10, 0.50, 0.9, 0.3]);
    assert_eq!(priors.wiring_where_grounded, [0.9, 0.05, 0.01, 0.03, 0.01, 0.0]);
    assert_eq!(priors.wiring_where_not, [0.8, 0.08, 0.01, 0.01, 0.09, 0.01]);
    assert_eq!(stakes.ground[3], [2_000.0, 60.0, 1.0, 35.0]);
    assert_eq!((stakes.polarity, stakes.wire), ([500.0, 12.5], [500.0, 40.0]));
    assert_eq!((stakes.broken, stakes.minutes), ([90.0, 25.0, 25.0], [1.5, 6.0, 8.0, 5.0, 20.0]));
}

/// By hand: sound and open are written, 0.98 and 0.014, and what is left of the whole, 0.006, is the third.
#[test]
fn what_is_left_out_stays_as_shipped() {
    assert_eq!(practice_of("format = 1\n"), Practice::default());
    let own = practice_of("format = 1\n[minutes]\nopen-the-box = 30\nread-pairs = \"unknown\"\n");
    let mut expected = Practice::default();
    expected.stakes.minutes[4] = 30.0;
    assert_eq!(own, expected);
    let sparse = practice_of("format = 1\n[run-hot]\nsound = 0.98\nopen = 0.014\n");
    assert_eq!(sparse.priors.hot, [0.98, 0.006, 0.014]);
}

#[test]
fn what_is_written_reads_back_as_itself() {
    for practice in [Practice::default(), practice_of(RICH)] {
        assert_eq!(practice_of(&practice_file(&practice)), practice);
    }
}

/// By hand: 81 figures; in the shipped file none is called one's own, in the rich one all are.
#[test]
fn every_figure_says_where_it_comes_from() {
    let shipped = practice_file(&Practice::default());
    assert_eq!(shipped.matches("(common practice, no source)").count(), 81);
    assert_eq!(shipped.matches("your own").count(), 0);
    let own = practice_file(&practice_of(RICH));
    assert_eq!(own.matches("(your own; shipped is ").count(), 81);
}

#[test]
fn as_json_it_has_the_shape_of_the_file() {
    let (shipped, own) = (practice_as_json(&Practice::default()), practice_as_json(&practice_of(RICH)));
    assert_eq!((&shipped["shipped"], &own["shipped"]), (&true.into(), &false.into()));
    for (json, figures) in [(&shipped, figures(Practice::default())), (&own, figures(practice_of(RICH)))] {
        for (table, key, value) in figures {
            let at = format!("/{}/{key}", table.replace('.', "/"));
            assert_eq!(json.pointer(&at).and_then(serde_json::Value::as_f64), Some(value), "{at}");
        }
    }
}

/// By hand: every figure of every table, found in the schema as a number within the range of the reader.
#[test]
fn the_schema_has_every_figure() {
    let schema = practice_schema();
    for (table, key, value) in figures(Practice::default()) {
        let mut at = &schema;
        for part in table.split('.') {
            let property = &at["properties"][part]["anyOf"][0]["$ref"];
            let name = property.as_str().and_then(|name| name.strip_prefix("#/$defs/"));
            at = &schema["$defs"][name.unwrap_or_else(|| panic!("{table}: {property}"))];
        }
        let number = &at["properties"][key]["anyOf"][0];
        assert_eq!(number["type"], "number", "{table} {key}");
        let range = number["minimum"].as_f64().zip(number["maximum"].as_f64());
        assert!(range.is_some_and(|(least, most)| least <= value && value <= most), "{table} {key}: {range:?}");
        assert_eq!(at["additionalProperties"], false);
    }
}

/// By hand: the line and the column of what is wrong, both counted from 1.
#[test]
fn every_mistake_of_a_file_is_told_at_once_where_it_stands() {
    let text = r#"format = 1
[run-hott]
sound = 0.9
[run-neutral]
sound = 0.9
[run-ground.cable-with-ground]
soun = 0.9
[run-ground.continuous-metal]
sound = 90
[how-often]
unknown-metal-is-sound = 0
unseen-panel-has-ground = "often"
[device.where-ground-arrives]
reversed-jumper = 0.01
[cost-of-being-wrong.live]
rely = -1
[cost-of-being-wrong.dead]
rely = 1
[minutes]
open-the-box = nan
read-pairs = 2
read-pairs = 3
"#;
    assert_eq!(
        mistakes(text),
        [
            ("unknown-key", 2, 2),
            ("shares-not-one", 4, 1),
            ("unknown-key", 7, 1),
            ("share-not-possible", 9, 9),
            ("share-not-possible", 11, 26),
            ("wrong-type", 12, 27),
            ("unknown-key", 14, 1),
            ("minutes-not-possible", 16, 8),
            ("unknown-key", 17, 22),
            ("not-a-quantity", 20, 16),
            ("key-twice", 22, 1),
        ]
    );
    let (_, diagnostics) = read_practice(text.as_bytes());
    let helps: Vec<&str> = diagnostics.iter().filter_map(|diagnostic| diagnostic.help.as_deref()).collect();
    for help in ["did you mean `run-hot`?", "did you mean `sound`?", "90 % is written `0.9`"] {
        assert!(helps.contains(&help), "{help}: {helps:?}");
    }
    assert!(mistakes("[minutes]\n").contains(&("format-missing", 1, 1)));
    assert!(mistakes("format = 2\n").contains(&("format-unknown", 1, 10)));
}

/// By hand: 0.982 + 0.012 + 0.005 is 0.999; by a billionth more or less it does not add up either.
#[test]
fn shares_add_up_exactly() {
    let (_, told) = read_practice(b"format = 1\n[run-neutral]\nopen = 0.005\n");
    assert_eq!(told[0].message, "the shares of `[run-neutral]` add up to 0.999, not to 1");
    let help = "left out, and counted as shipped: `sound = 0.982`, `high-resistance = 0.012`";
    assert_eq!(told[0].help.as_deref(), Some(help));
    let neutral = |sound: &str| format!("format = 1\n[run-neutral]\nsound = {sound}\n");
    assert_eq!(mistakes(&neutral("0.982000001")).len(), 1);
    assert_eq!(mistakes(&neutral("0.981999999")).len(), 1);
    assert_eq!(practice_of(&neutral("0.982")), Practice::default());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    /// What is read of a file that was meddled with is a set of figures that inference can take, or nothing.
    #[test]
    fn meddled_files_never_panic(at in 0usize..4_000, length in 0usize..30, text in "[0-9.e-]{0,8}|\\PC{0,8}|[\\[\\]{}\"'=,\\\\]{1,4}") {
        let mut bytes = RICH.as_bytes().to_vec();
        let start = at % bytes.len();
        let end = (start + length).min(bytes.len());
        bytes.splice(start..end, text.bytes());
        let (practice, diagnostics) = read_practice(&bytes);
        let whole = text_of(&bytes);
        for diagnostic in &diagnostics {
            prop_assert!(render(diagnostic, "practice.toml", &whole).contains(diagnostic.code));
        }
        prop_assert_eq!(practice.is_none(), diagnostics.iter().any(|one| one.severity == survey::Severity::Error));
        for (table, key, value) in practice.map(figures).into_iter().flatten() {
            let is_minutes = table.starts_with("cost-of-being-wrong") || table == "minutes";
            prop_assert!(value.is_finite() && value >= 0.0 && (is_minutes || (0.0..1.0).contains(&value)), "{} {}", table, key);
        }
    }
}
