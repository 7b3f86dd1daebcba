//! Michigan.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;
use dwelling::DwellingUse;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "michigan",
    title: "Michigan",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::On(Day::on(2024, 3, 12)),
        edition: Edition::Nec2023,
        known: Known::Read("contractor's page of 2024 on the Michigan electrical code"),
        earlier_until: None,
        not_for: &[
            (
                DwellingUse::OneFamily,
                "houses for one and two families follow the Michigan Residential Code, whose electrical part is not covered",
            ),
            (
                DwellingUse::TwoFamily,
                "houses for one and two families follow the Michigan Residential Code, whose electrical part is not covered",
            ),
        ],
        amendments: Vec::new,
    }],
    remarks: &[],
};
