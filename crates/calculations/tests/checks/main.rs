//! The checks held against sums by hand, against what must hold whatever the dwelling, and against each other.

#![allow(clippy::unwrap_used, reason = "what a test takes for granted fails it")]

mod by_hand;
mod charts;
mod dwellings;
#[path = "../../../remedies/tests/plans/generated.rs"]
mod generated;
mod generated_plans;
mod properties;
#[path = "../../../remedies/tests/plans/random.rs"]
mod random;
