//! Massachusetts.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "massachusetts",
    title: "Massachusetts",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::On(Day::on(2023, 2, 17)),
        edition: Edition::Nec2023,
        known: Known::Read("mass.gov, electrical code; coderedconsultants.com"),
        earlier_until: None,
        not_for: &[],
        amendments,
    }],
    remarks: &[
        "its other amendments are not in this record; its Rule 3 lays no duty to bring the rest of a dwelling up to date",
    ],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "Commonwealth of Massachusetts".to_owned(),
        source: "Rule 11 of 2023-01-26 (trade newsletter 2620)".to_owned(),
        since: None,
        until: None,
        changes: vec![Change::Note {
            rule: "replacement.gfci-locations".to_owned(),
            words: "equipment that a GFCI cannot serve may be excused after a documented inspection".to_owned(),
        }],
    }]
}
