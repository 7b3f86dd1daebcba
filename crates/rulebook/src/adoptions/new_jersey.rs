//! New Jersey.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "new-jersey",
    title: "New Jersey",
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
    remarks: &[
        "earlier editions kept the garage and basement exceptions of 2005 to GFCI protection; whether 2020 does could not be confirmed",
    ],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "State of New Jersey".to_owned(),
        source: "406.4(D)(4) deleted under 2011, 2014 and 2017 (nema.org, code alert 2012; trade forum, thread 2532400), and still \
                 so by a remark of 2025 (trade forum, thread 2584935)"
            .to_owned(),
        since: None,
        until: None,
        changes: vec![
            Change::SwitchOff { rule: "replacement.afci".to_owned() },
            Change::Note {
                rule: "wiring.changed".to_owned(),
                words: "changed wiring follows the rehabilitation subcode: AFCI protection for newly installed circuits only".to_owned(),
            },
        ],
    }]
}
