//! Indiana.

use crate::adoptions::record::{Adoption, Record, Since};
use crate::amendment::{Amendment, Change};
use crate::cited::Known;
use crate::day::Day;
use crate::edition::Edition;
use dwelling::DwellingUse;

/// Its adoptions.
pub(super) const ADOPTION: Adoption = Adoption {
    place: "indiana",
    title: "Indiana",
    as_of: Day::on(2025, 1, 1),
    records: &[
        Record {
            since: Since::SeenOn(Day::on(2009, 12, 31)),
            edition: Edition::Nec2008,
            known: Known::Read("nema.org, code alert Indiana 2009"),
            earlier_until: None,
            not_for: &[],
            amendments,
        },
        Record {
            since: Since::SeenOn(Day::on(2025, 1, 1)),
            edition: Edition::Nec2017,
            known: Known::Read(
                "continuing-education provider's adoption table (undated, apparently 2024 or 2025), jadelearning.com",
            ),
            earlier_until: None,
            not_for: &[
                (
                    DwellingUse::OneFamily,
                    "houses for one and two families follow a residential code with an electrical part of its own, which is not covered",
                ),
                (
                    DwellingUse::TwoFamily,
                    "houses for one and two families follow a residential code with an electrical part of its own, which is not covered",
                ),
            ],
            amendments: Vec::new,
        },
    ],
    remarks: &["whether AFCI protection and tamper-resistant receptacles are still struck out could not be confirmed"],
};

fn amendments() -> Vec<Amendment> {
    vec![Amendment {
        authority: "State of Indiana".to_owned(),
        source: "675 IAC 17-1.8 (nema.org, code alert 2009; trade forum, thread 76124)".to_owned(),
        since: None,
        until: None,
        changes: ["replacement.afci", "afci.new-circuit", "receptacle.tamper-resistant"]
            .map(|rule| Change::SwitchOff { rule: rule.to_owned() })
            .to_vec(),
    }]
}
