//! The close-out as a whole: each claim on its own, and readings made by the network solver with faults put in.

#![allow(clippy::unwrap_used, reason = "what a test takes for granted fails it")]

mod by_network;
mod each_claim;
mod houses;
mod instruments;
mod proofs;
