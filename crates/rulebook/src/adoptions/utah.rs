//! Utah.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "utah",
    title: "Utah",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::SeenOn(Day::on(2025, 1, 1)),
        edition: Edition::Nec2020,
        known: Known::Read(
            "continuing-education provider's adoption table (undated, apparently 2024 or 2025), jadelearning.com",
        ),
        earlier_until: None,
        not_for: &[],
        amendments: Vec::new,
    }],
    remarks: &[
        "it amends the edition, and its amendments could not be read",
        "it may have moved on to a later edition",
    ],
};
