//! Georgia.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "georgia",
    title: "Georgia",
    as_of: Day::on(2025, 1, 1),
    records: &[
        Record {
            since: Since::SeenOn(Day::on(2021, 12, 31)),
            edition: Edition::Nec2020,
            known: Known::Read("nahb.org, Georgia item of 2021"),
            earlier_until: None,
            not_for: &[],
            amendments,
        },
        Record {
            since: Since::On(Day::on(2025, 1, 1)),
            edition: Edition::Nec2023,
            known: Known::FromMemory,
            earlier_until: None,
            not_for: &[],
            amendments: Vec::new,
        },
    ],
    remarks: &["whether 210.8(F) is removed from the 2023 edition too could not be confirmed"],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "State of Georgia".to_owned(),
        source: "amendment of 2021 (nahb.org)".to_owned(),
        since: None,
        until: None,
        changes: vec![Change::SwitchOff { rule: "gfci.outdoor-outlets".to_owned() }],
    }]
}
