//! South Carolina.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;
use crate::lists::List;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "south-carolina",
    title: "South Carolina",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::SeenOn(Day::on(2025, 1, 1)),
        edition: Edition::Nec2020,
        known: Known::Read("S.C. Code Regs. 8-1103"),
        earlier_until: None,
        not_for: &[],
        amendments,
    }],
    remarks: &[
        "changes of 210.12, 406.4(D)(4), 406.9(C) and 406.12 were proposed; whether they were adopted could not be confirmed",
    ],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "State of South Carolina".to_owned(),
        source: "S.C. Code Regs. 8-1103".to_owned(),
        since: None,
        until: None,
        changes: vec![
            Change::Volts { list: List::GfciPlaces, up_to: 125 },
            Change::Note {
                rule: "replacement.gfci-locations".to_owned(),
                words: "basements that one walks out of are not in the list".to_owned(),
            },
        ],
    }]
}
