//! What readings and sightings say about a dwelling's wiring: what is wrong and where, how sure that is, what to open next.
//!
//! A reading never proves a ground by itself. A box is called connected only where its wiring method gives a path to the
//! panel and something seen or measured at the box agrees.

mod condition;
mod finding;

pub use condition::{Certainty, Condition};
pub use finding::{Diagnosis, Finding, GroundState, LookAlike, NextCheck, Site};

use dwelling::{BondedGroups, Dwelling, GroundFact, Reach};

/// Diagnoses a dwelling from its readings, sightings and wiring methods.
#[must_use]
pub fn diagnose(dwelling: &Dwelling) -> Diagnosis {
    let groups = BondedGroups::of(dwelling);
    let ground = dwelling
        .box_indices()
        .map(|index| {
            let fact = match groups.group_of(index).reach {
                Reach::Isolated => GroundFact::None,
                Reach::Disputed => GroundFact::Disputed,
                Reach::Panel | Reach::Unknown => GroundFact::Unknown,
            };
            GroundState { fact, sure: Certainty::Possible, because: vec![] }
        })
        .collect();
    Diagnosis { findings: vec![], ground }
}

/// What to do on the next visit, what decides most openings first.
#[must_use]
pub fn next_visit(diagnosis: &Diagnosis, _dwelling: &Dwelling) -> Vec<NextCheck> {
    diagnosis.findings.iter().filter_map(|finding| finding.next.clone()).collect()
}
