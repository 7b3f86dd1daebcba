//! One's own figures in place of common practice.

use crate::running::{Said, file, list, text, thirdwire, thirdwire_reading};
use serde_json::Value;

/// One box at which nobody has read anything, on two-wire cable.
const UNREAD: &str = r#"format = 1
[job]
name = "Nothing read yet"
[[panel]]
id = "main"
[[circuit]]
id = "1"
panel = "main"
cable = "nm-two-wire"
[[room]]
id = "den"
[[box]]
id = "D-1"
room = "den"
circuit = "1"
fed_by = "panel"
holds = "three-slot"
"#;

/// How likely a state is at the only box, by the file of this name.
fn odds(own: Option<&str>, of: &str, is: &str) -> f64 {
    let mut args = vec!["findings", "-", "--json"];
    args.extend(own.iter().flat_map(|own| ["--practice", own]));
    let answer = thirdwire_reading(&args, UNREAD).json();
    assert_eq!(answer["shipped_practice"], own.is_none());
    let states = list(&answer, &format!("/beliefs/0/{of}"));
    let found = states.iter().find(|one| one["is"] == is).unwrap_or_else(|| panic!("no {is} in {states:?}"));
    found["odds"].as_f64().unwrap_or_default()
}

#[test]
fn the_printed_practice_file_can_be_read_back() {
    let shipped = thirdwire(&["practice"]).out;
    let own = file("shipped-practice.toml", &shipped);
    assert_eq!(thirdwire(&["practice", "--practice", &own]).out, shipped);
    assert_eq!(thirdwire(&["practice", "--practice", &own, "--json"]), thirdwire(&["practice", "--json"]));
    let by_own = thirdwire(&["findings", "--example", "bungalow", "--practice", &own, "--json"]);
    assert_eq!(by_own, thirdwire(&["findings", "--example", "bungalow", "--json"]));
}

/// By hand: where nothing was read, the belief is the figure: 0.6 % of runs have a bad joint in the hot conductor as shipped,
/// 5 % by one's own count.
#[test]
fn a_figure_of_ones_own_is_what_is_believed_before_anything_is_read() {
    let own = file("bad-joints.toml", "format = 1\n[run-hot]\nsound = 0.946\nhigh-resistance = 0.05\n");
    assert!((odds(None, "run_hot", "high-resistance") - 0.006).abs() < 1e-4);
    assert!((odds(Some(&own), "run_hot", "high-resistance") - 0.05).abs() < 1e-4);
}

/// By hand: the cable brings no ground but where it is recorded wrongly, so a jumper is about as common as the figure says:
/// 4.5 % as shipped, 20 % by one's own count.
#[test]
fn more_jumpers_in_ones_own_count_make_a_false_ground_likelier() {
    let own = file("jumpers.toml", "format = 1\n[device.where-none-arrives]\nright = 0.743\nneutral-jumper = 0.2\n");
    let (shipped, own) = (odds(None, "ground", "false"), odds(Some(&own), "ground", "false"));
    assert!((0.043..0.047).contains(&shipped), "{shipped}");
    assert!((0.195..0.205).contains(&own), "{own}");
}

/// By hand: a loaded reading that takes an hour in place of 4 minutes is worth less by the minute than any other.
#[test]
fn minutes_of_ones_own_change_what_to_test_next() {
    let own = file("slow-loads.toml", "format = 1\n[minutes]\nread-under-load = 60\n");
    let rate_of_first = |said: Said| {
        let answer = said.json();
        let under_load = |test: &&Value| test["test"] == "read-under-load";
        let minutes: Vec<Option<f64>> =
            list(&answer, "/tests").iter().filter(under_load).map(|test| test["minutes"].as_f64()).collect();
        (minutes, text(&answer, "/tests/0/test").to_owned())
    };
    let (shipped, _) = rate_of_first(thirdwire(&["findings", "--example", "bungalow", "--json"]));
    assert!(!shipped.is_empty() && shipped.iter().all(|minutes| *minutes == Some(4.0)), "{shipped:?}");
    let (slow, first) = rate_of_first(thirdwire(&["findings", "--example", "bungalow", "--practice", &own, "--json"]));
    assert!(slow.iter().all(|minutes| *minutes == Some(60.0)), "{slow:?}");
    assert_ne!(first, "read-under-load");
}

/// By hand: figures that make a sound ground all but certain; what was read under load counts all the same.
#[test]
fn no_figure_makes_an_opening_grounded_without_a_loaded_test() {
    let trusting = "format = 1
[how-often]
wiring-method-recorded-wrongly = 0.000001
unseen-panel-has-ground = 0.999999
panel-without-bar-has-ground = 0.999999
unknown-metal-is-sound = 0.999999
[run-ground.cable-with-ground]
sound = 0.999996
high-resistance = 0.000001
loose-here = 0.000001
cut-off-here = 0.000001
loose-before = 0.000001
[device.where-ground-arrives]
right = 0.999996
hot-neutral-reversed = 0.000001
hot-ground-reversed = 0.000001
ground-not-landed = 0.000001
neutral-jumper = 0.000001
";
    let own = file("trusting.toml", trusting);
    let survey = UNREAD.replace("nm-two-wire", "nm-with-ground");
    for (found, verdict) in [
        ("", Value::Null),
        ("found = { hn = 120, hg = 120, ng = 0 }\n", Value::Null),
        (
            "found = [{ hn = 121.5, hg = 121.5, ng = 0 }, { hn = 118.5, hg = 120, ng = 1.5, load = \"heavy\" }]\n",
            "grounded".into(),
        ),
    ] {
        let answer =
            thirdwire_reading(&["findings", "-", "--practice", &own, "--json"], &(survey.clone() + found)).json();
        assert_eq!(answer["beliefs"][0]["verdict"], verdict, "{found}: {}", answer["beliefs"][0]);
    }
}

#[test]
fn the_page_says_whose_figures_they_are() {
    let own = file("one-figure.toml", "format = 1\n[minutes]\nread-pairs = 3\n");
    let words = |args: &[&str]| thirdwire(args).out.split_whitespace().collect::<Vec<_>>().join(" ");
    let shipped = words(&["findings", "--example", "bungalow", "--next"]);
    assert!(shipped.contains("(shipped figures, no source)"), "{shipped}");
    for ask in [&["--next"][..], &["--explain", "L-3"]] {
        let page = words(&[&["findings", "--example", "bungalow", "--practice", &own], ask].concat());
        assert!(page.contains("figures of your own") && !page.contains("shipped figures"), "{page}");
    }
}

/// By hand: the line and the column of what is wrong, both counted from 1.
#[test]
fn a_mistake_in_a_practice_file_is_told_where_it_stands() {
    let wrong = "format = 1\n[run-hot]\nsound = 99\n[minuts]\nread-pairs = 3\n";
    for args in [&["practice", "--practice", "-"][..], &["findings", "--example", "bungalow", "--practice", "-"]] {
        let said = thirdwire_reading(args, wrong);
        assert_eq!((said.code, said.out.as_str()), (1, ""), "{args:?}");
        for place in ["--> <standard input>:3:9\n", "--> <standard input>:4:2\n"] {
            assert!(said.err.contains(place), "{}", said.err);
        }
        assert!(
            said.err.contains("99 % is written `0.99`") && said.err.contains("did you mean `minutes`?"),
            "{}",
            said.err
        );
    }
    let told = thirdwire_reading(&["practice", "--practice", "-", "--json"], wrong).json();
    assert_eq!(list(&told, "/mistakes").len(), 2);
}

/// By hand: circuits are drawn with the shares of the file; floors show none, so asking for both is a slip.
#[test]
fn drawings_of_circuits_rest_on_ones_own_figures_too() {
    let own = file("drawn.toml", "format = 1\n[device.where-none-arrives]\nright = 0.743\nneutral-jumper = 0.2\n");
    let circuit = ["draw", "--example", "bungalow", "--circuit", "3"];
    let shipped = thirdwire(&circuit);
    let drawn = thirdwire(&[&circuit[..], &["--practice", &own]].concat());
    assert_eq!((shipped.code, drawn.code), (0, 0), "{}", drawn.err);
    assert_ne!(shipped.out, drawn.out);
    let floors = thirdwire(&["draw", "--example", "bungalow", "--practice", &own]);
    assert_eq!((floors.code, floors.out.as_str()), (2, ""));
    assert!(floors.err.contains("add `--circuits`"), "{}", floors.err);
}
