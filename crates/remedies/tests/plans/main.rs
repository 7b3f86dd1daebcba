//! Plans of generated dwellings, held against judges that do not share the planner's ways.

#![allow(clippy::unwrap_used, reason = "what a test takes for granted fails it")]

mod afterwards;
mod brute_force;
mod comparisons;
mod drawn;
mod enumeration;
mod generated;
mod lawful;
mod lines;
mod long_circuits;
mod next_best;
mod offers;
mod random;
mod schema;
mod sensitivity;
mod steering;
mod taken_out;
