//! Washington.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "washington",
    title: "Washington",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::SeenOn(Day::on(2025, 1, 1)),
        edition: Edition::Nec2023,
        known: Known::Read(
            "continuing-education provider's adoption table (undated, apparently 2024 or 2025), jadelearning.com",
        ),
        earlier_until: None,
        not_for: &[],
        amendments,
    }],
    remarks: &["its other amendments are not in this record"],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "State of Washington".to_owned(),
        source: "WAC 296-46B-210".to_owned(),
        since: None,
        until: None,
        changes: vec![Change::Note {
            rule: "replacement.gfci-locations".to_owned(),
            words: "a red receptacle for a fire alarm in a garage or basement is exempt; equipment in a shower or within 5 ft of \
                    a tub gets GFCI protection"
                .to_owned(),
        }],
    }]
}
