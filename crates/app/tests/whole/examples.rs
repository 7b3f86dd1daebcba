//! The surveys that come with the program: the files of `examples/`, without a mistake or a warning.

use crate::running::{document, list, number, thirdwire};

const NAMES: [&str; 5] = ["bungalow", "knob-and-tube", "flat", "cottage-done", "cottage-half-done"];

#[test]
fn every_example_is_the_file_of_its_name_and_says_that_it_is_invented() {
    for name in NAMES {
        let said = thirdwire(&["example", name]);
        assert_eq!(said.out, document(&format!("examples/{name}.toml")), "{name}");
        let head = said.out.lines().next().unwrap_or_default();
        assert!(head.contains("invented"), "{name}: {head}");
    }
}

#[test]
fn the_examples_are_listed_by_name() {
    let said = thirdwire(&["example"]);
    let listed: Vec<&str> = said.out.lines().filter_map(|line| line.split(' ').next()).collect();
    assert_eq!(listed, NAMES);
}

#[test]
fn the_examples_are_read_without_a_warning_from_file_and_by_name_alike() {
    for name in NAMES {
        let by_name = thirdwire(&["plan", "--example", name]);
        assert_eq!(by_name.err, "", "{name}");
        assert_eq!(thirdwire(&["plan", &format!("examples/{name}.toml")]), by_name);
    }
}

/// By hand: the same bytes from two runs of every command, since nothing in them comes from a clock or from chance.
#[test]
fn two_runs_give_the_same_bytes() {
    for name in NAMES {
        for command in [
            ["plan", "--example", name, "--json"],
            ["plan", "--example", name, "--full"],
            ["findings", "--example", name, "--json"],
            ["circuits", "--example", name, "--json"],
        ] {
            assert_eq!(thirdwire(&command), thirdwire(&command), "{command:?}");
        }
    }
}

/// By hand: the parts of the price are the openings, the panel, the routes and what is dangerous, and nothing else.
#[test]
fn the_total_is_the_sum_of_openings_panel_routes_and_dangers() {
    for name in NAMES {
        let plan = thirdwire(&["plan", "--example", name, "--json"]).json();
        let sum: i64 = ["/openings", "/circuits", "/routes", "/dangers"]
            .iter()
            .flat_map(|part| list(&plan, part))
            .map(|part| number(part, "/price/total_cents"))
            .sum();
        assert_eq!(number(&plan, "/totals/price/total_cents"), sum, "{name}");
    }
}
