//! Florida.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "florida",
    title: "Florida",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::On(Day::on(2023, 12, 31)),
        edition: Edition::Nec2020,
        known: Known::Read(
            "continuing-education provider's adoption table (undated, apparently 2024 or 2025), jadelearning.com",
        ),
        earlier_until: None,
        not_for: &[],
        amendments,
    }],
    remarks: &[],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "State of Florida".to_owned(),
        source: "Florida Building Code, 8th edition (a code newsletter)".to_owned(),
        since: None,
        until: None,
        changes: vec![Change::Note {
            rule: "gfci.outdoor-outlets".to_owned(),
            words: "listed heating and cooling equipment and lighting are excepted".to_owned(),
        }],
    }]
}
