//! The one list of rules.

mod circuit;
mod grounding;
mod location;
mod receptacle;
mod replacement;

use crate::rule::Rule;

/// Every rule, in the order in which they are asked.
pub const RULES: &[Rule] = &[
    replacement::existing_ground::RULE,
    replacement::leave::RULE,
    replacement::nongrounding::RULE,
    replacement::gfci_receptacle::RULE,
    replacement::downstream::RULE,
    replacement::protected_at_panel::RULE,
    replacement::blank_cover::RULE,
    grounding::separate_egc::RULE,
    grounding::new_cable::RULE,
    grounding::changed_wiring::RULE,
    grounding::new_circuit::RULE,
    grounding::joints::RULE,
    grounding::methods::RULE,
    grounding::equipment::RULE,
    location::gfci_locations::RULE,
    location::appliances::RULE,
    location::outdoor_outlets::RULE,
    location::afci_rooms::RULE,
    receptacle::tamper_resistant::RULE,
    receptacle::weather_resistant::RULE,
    receptacle::tub_zone::RULE,
    receptacle::rating::RULE,
    receptacle::aluminium::RULE,
    receptacle::metal_faceplate::RULE,
    receptacle::switch_plate::RULE,
    circuit::multiwire::RULE,
    circuit::overcurrent::RULE,
    circuit::old_methods::RULE,
    circuit::range_and_dryer::RULE,
    circuit::directory::RULE,
];

/// The rule of this name.
#[must_use]
pub fn rule(id: &str) -> Option<&'static Rule> {
    RULES.iter().find(|rule| rule.id == id)
}
