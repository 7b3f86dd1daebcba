//! California.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "california",
    title: "California",
    as_of: Day::on(2026, 2, 5),
    records: &[
        Record {
            since: Since::SeenOn(Day::on(2025, 12, 31)),
            edition: Edition::Nec2020,
            known: Known::Read("legalclarity.org, California electrical code"),
            earlier_until: None,
            not_for: &[],
            amendments: Vec::new,
        },
        Record {
            since: Since::On(Day::on(2026, 1, 1)),
            edition: Edition::Nec2023,
            known: Known::Read("legalclarity.org and the code-book publisher's list of states, 2026-02-05"),
            earlier_until: None,
            not_for: &[],
            amendments: Vec::new,
        },
    ],
    remarks: &["California Electrical Code: the state's own changes are not in this record"],
};
