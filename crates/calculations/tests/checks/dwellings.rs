//! Dwellings for the tests of checks: the bungalow that comes with the program, and surveys written in the tests.

use calculations::{Check, CheckRow, State, checks_of};
use dwelling::Dwelling;
use estimate::PriceBook;
use remedies::Planned;
use rulebook::{CodeInForce, Edition};

pub const BUNGALOW: &str = include_str!("../../../../examples/bungalow.toml");
pub const FLAT: &str = include_str!("../../../../examples/flat.toml");
pub const KNOB_AND_TUBE: &str = include_str!("../../../../examples/knob-and-tube.toml");

pub fn dwelling_of(text: &str) -> Dwelling {
    let read = survey::read(text.as_bytes(), survey::Format::Toml);
    read.dwelling.unwrap_or_else(|| panic!("{:?}", read.diagnostics))
}

/// The wiring before and after the plan of a survey.
pub fn states_of(text: &str) -> [State; 2] {
    states_of_dwelling(&dwelling_of(text))
}

pub fn states_of_dwelling(dwelling: &Dwelling) -> [State; 2] {
    let edition = dwelling.job.edition.and_then(Edition::of_year).unwrap();
    states_under(dwelling, CodeInForce::published(edition))
}

/// The wiring before and after the plan of a dwelling under a code.
pub fn states_under(dwelling: &Dwelling, code: CodeInForce) -> [State; 2] {
    let planned = Planned::of(dwelling, code, &PriceBook::demo()).unwrap();
    [State::before(&planned), State::after(&planned)]
}

/// The check of a kind and a thing.
pub fn row(state: &State, check: Check, id: &str) -> CheckRow {
    let rows = checks_of(state);
    let found = rows.into_iter().find(|row| row.check == check && row.subject.id == id);
    found.unwrap_or_else(|| panic!("no {check} of {id}"))
}

/// A house of 2000 with one 20 A circuit in grounded cable, copper: a receptacle `A` at the end of a run.
pub fn one_run(length: &str, gauge: u32, fault_current: &str) -> String {
    format!(
        r#"format = 1
[job]
name = "one run"
built = 2000
edition = 2020
[[panel]]
id = "main"
ground_bar = true
{fault_current}
[[circuit]]
id = "1"
panel = "main"
breaker = "20 A"
cable = "nm-with-ground"
gauge = {gauge}
[[room]]
id = "office"
use = "office"
above = "finished room"
[[box]]
id = "A"
room = "office"
circuit = "1"
fed_by = "panel"
run = {{ length = "{length}" }}
body = {{ volume = "20 in3", clamps = "none" }}
holds = "three-slot"
found = {{ hn = 120, hg = 120, ng = 0, ground = "connected" }}
"#
    )
}
