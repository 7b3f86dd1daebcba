//! North Carolina.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;
use dwelling::DwellingUse;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "north-carolina",
    title: "North Carolina",
    as_of: Day::on(2025, 1, 1),
    records: &[Record {
        since: Since::SeenOn(Day::on(2025, 1, 1)),
        edition: Edition::Nec2023,
        known: Known::Read(
            "continuing-education provider's adoption table (undated, apparently 2024 or 2025), jadelearning.com",
        ),
        earlier_until: None,
        not_for: &[
            (
                DwellingUse::OneFamily,
                "houses for one and two families may still follow the 2017 edition as amended, which could not be confirmed",
            ),
            (
                DwellingUse::TwoFamily,
                "houses for one and two families may still follow the 2017 edition as amended, which could not be confirmed",
            ),
        ],
        amendments: Vec::new,
    }],
    remarks: &[
        "its amendments of the 2023 edition could not be read; under the 2017 edition kitchens and laundries were left out of the AFCI rooms",
    ],
};
