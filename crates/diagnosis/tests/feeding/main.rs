//! Feeding orders that nobody knows: held against the enumeration of every labelled tree, and told of small dwellings.

mod every_tree;
mod on_dwellings;
#[path = "../readings/sketch.rs"]
#[allow(dead_code, reason = "dwellings are sketched as for readings, and no more")]
mod sketch;
