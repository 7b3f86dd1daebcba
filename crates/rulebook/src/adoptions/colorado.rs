//! Colorado.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "colorado",
    title: "Colorado",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::SeenOn(Day::on(2025, 1, 1)),
        edition: Edition::Nec2023,
        known: Known::Read(
            "continuing-education provider's adoption table (undated, apparently 2024 or 2025), jadelearning.com",
        ),
        earlier_until: None,
        not_for: &[],
        amendments: Vec::new,
    }],
    remarks: &["changes that the state made are not in this record"],
};
