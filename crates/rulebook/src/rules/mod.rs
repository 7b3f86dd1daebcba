//! The one list of rules.

use crate::rule::Rule;

/// Every rule, in the order in which they are asked.
pub const RULES: &[Rule] = &[];

/// The rule of this name.
#[must_use]
pub fn rule(id: &str) -> Option<&'static Rule> {
    RULES.iter().find(|rule| rule.id == id)
}
