//! Drawn plans held against what a drawing must be: well formed, whole, legible, the same every time.
#![allow(clippy::disallowed_methods, reason = "these tests read the dwellings that come with the program")]

mod circuits;
mod generated;
mod legible;
mod one_line;
mod places;
mod reading;
mod way_maps;
mod wiring;
mod without_colour;
