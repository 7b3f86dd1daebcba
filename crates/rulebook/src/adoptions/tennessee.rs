//! Tennessee.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;
use crate::lists::List;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "tennessee",
    title: "Tennessee",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::On(Day::on(2018, 10, 1)),
        edition: Edition::Nec2017,
        known: Known::Read("nema.org, code alert Tennessee 2018"),
        earlier_until: None,
        not_for: &[],
        amendments,
    }],
    remarks: &[],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "State of Tennessee".to_owned(),
        source: "amendments of 2018-10-01 (nema.org, code alert 2018)".to_owned(),
        since: None,
        until: None,
        changes: vec![
            Change::Narrow {
                list: List::AfciRooms,
                items: ["laundry", "bathroom", "garage", "unfinished-basement"].map(str::to_owned).to_vec(),
            },
            Change::Note {
                rule: "replacement.afci".to_owned(),
                words: "AFCI protection of circuits for refrigeration is optional".to_owned(),
            },
        ],
    }]
}
