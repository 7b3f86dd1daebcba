//! Alabama.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "alabama",
    title: "Alabama",
    as_of: Day::on(2026, 2, 5),
    records: &[Record {
        since: Since::SeenOn(Day::on(2026, 2, 5)),
        edition: Edition::Nec2020,
        known: Known::Read("code-book publisher's list of states, updated 2026-02-05"),
        earlier_until: None,
        not_for: &[],
        amendments: Vec::new,
    }],
    remarks: &[],
};
