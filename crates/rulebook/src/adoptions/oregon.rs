//! Oregon.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "oregon",
    title: "Oregon",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::SeenOn(Day::on(2025, 1, 1)),
        edition: Edition::Nec2023,
        known: Known::Read("portland.gov, 26.01.030 (Oregon Electrical Specialty Code)"),
        earlier_until: None,
        not_for: &[],
        amendments: Vec::new,
    }],
    remarks: &["it amends the edition, and its amendments could not be read"],
};
