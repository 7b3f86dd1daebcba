//! What readings and sightings say about a dwelling's wiring: what is wrong and where, how sure that is, what to open next.
//!
//! A reading never proves a ground by itself. A box is called connected only where its wiring method gives a path to the
//! panel and something seen or measured at the box agrees.

mod bands;
pub mod belief;
mod condition;
mod contradiction;
mod evidence;
mod false_ground;
pub mod feeding;
mod finding;
mod ground_reading;
mod ground_state;
mod grounding_path;
mod live_box;
mod load_test;
mod neighbours;
mod neutral_fuse;
mod next;
mod open_ground;
mod open_neutral;
mod over_voltage;
mod pattern;
mod polarity;
mod protective_device;
mod sighting;

pub use bands::{JOINED_UP_TO, PHANTOM_UP_TO, POOR_ABOVE};
pub use condition::{Certainty, Condition};
pub use finding::{Diagnosis, Finding, GroundState, LookAlike, NextCheck, Site};
pub use next::next_visit;

use dwelling::Dwelling;

/// Diagnoses a dwelling from its readings, sightings and wiring methods. A feed that is assumed is no evidence.
#[must_use]
pub fn diagnose(dwelling: &Dwelling) -> Diagnosis {
    let surveyed = dwelling.as_surveyed();
    let case = evidence::Case::of(&surveyed);
    let ground = ground_state::ground_states(&case);
    let mut findings = false_ground::find(&case);
    findings.extend(open_ground::find(&case));
    findings.extend(open_neutral::find(&case));
    findings.extend(over_voltage::find(&case));
    findings.extend(neutral_fuse::find(&case));
    findings.extend(polarity::find(&case));
    findings.extend(sighting::find(&case));
    findings.extend(live_box::find(&case));
    findings.extend(contradiction::find(&case, &ground));
    findings.extend(protective_device::find(&case, &ground));
    findings.extend(neighbours::find(&case, &findings));
    findings.extend(next::for_the_unnamed(&case, &ground, &findings));
    // Panels, circuits, boxes; at each the dangers first, and otherwise in the order above.
    findings.sort_by_key(|finding| (finding.at, !finding.danger));
    Diagnosis { findings, ground }
}
