//! The words pages use for names of the answers.

use estimate::Cents;
pub use remedies::in_words::{as_found, at_panel, order, repairs};

/// Cents as money.
#[must_use]
pub fn money(cents: i64) -> String {
    Cents(cents).to_string()
}
