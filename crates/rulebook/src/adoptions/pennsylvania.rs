//! Pennsylvania.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "pennsylvania",
    title: "Pennsylvania",
    as_of: Day::on(2025, 7, 13),
    records: &[
        Record {
            since: Since::SeenOn(Day::on(2025, 1, 1)),
            edition: Edition::Nec2017,
            known: Known::Read(
                "continuing-education provider's adoption table (undated, apparently 2024 or 2025), jadelearning.com",
            ),
            earlier_until: None,
            not_for: &[],
            amendments: Vec::new,
        },
        Record {
            since: Since::On(Day::on(2025, 7, 13)),
            edition: Edition::Nec2020,
            known: Known::Read("thebuildingcodeforum.com, thread 38104"),
            earlier_until: Some(Day::on(2026, 1, 12)),
            not_for: &[],
            amendments: Vec::new,
        },
    ],
    remarks: &["changes that the state made through its residential code are not in this record"],
};
