//! Idaho.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "idaho",
    title: "Idaho",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::On(Day::on(2024, 4, 19)),
        edition: Edition::Nec2023,
        known: Known::Read("contractor's page, Idaho adopts the 2023 NEC and temporary rules"),
        earlier_until: None,
        not_for: &[],
        amendments: Vec::new,
    }],
    remarks: &["it adopts the edition with exceptions, which could not be read"],
};
