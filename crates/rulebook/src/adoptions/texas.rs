//! Texas.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change, Dated};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "texas",
    title: "Texas",
    as_of: Day::on(2025, 1, 1),
    records: &[
        Record {
            since: Since::SeenOn(Day::on(2021, 12, 31)),
            edition: Edition::Nec2020,
            known: Known::Read("houstonpermittingcenter.org, 2021"),
            earlier_until: None,
            not_for: &[],
            amendments,
        },
        Record {
            since: Since::On(Day::on(2023, 9, 1)),
            edition: Edition::Nec2023,
            known: Known::Read(
                "continuing-education provider's adoption table (undated, apparently 2024 or 2025), jadelearning.com",
            ),
            earlier_until: None,
            not_for: &[],
            amendments: Vec::new,
        },
    ],
    remarks: &["the day of the 2023 adoption is from memory; cities amend the edition"],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "State of Texas".to_owned(),
        source: "enforcement of 210.8(F) put off (houstonpermittingcenter.org, 2021)".to_owned(),
        since: None,
        until: None,
        changes: vec![Change::Date { of: Dated::OutdoorOutlets, day: Day::on(2023, 1, 1) }],
    }]
}
