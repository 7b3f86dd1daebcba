//! The close-out as a whole: each claim on its own, and readings made by the network solver with faults put in.

#![allow(clippy::unwrap_used, reason = "what a test takes for granted fails it")]

mod by_network;
mod each_claim;
#[path = "../../../remedies/tests/plans/generated.rs"]
mod generated;
mod houses;
mod instruments;
mod odd_dwellings;
mod proofs;
#[path = "../../../remedies/tests/plans/random.rs"]
mod random;
