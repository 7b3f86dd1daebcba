//! New Hampshire.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "new-hampshire",
    title: "New Hampshire",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::SeenOn(Day::on(2025, 1, 1)),
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
        authority: "State of New Hampshire".to_owned(),
        source: "RSA 155-A:3-c".to_owned(),
        since: None,
        until: None,
        changes: vec![Change::Note {
            rule: "replacement.afci".to_owned(),
            words: "an AFCI that trips again and again without a fault in the circuit may give way to a device without AFCI \
                    protection, marked `No AFCI Protection` or with a notice, and reported"
                .to_owned(),
        }],
    }]
}
