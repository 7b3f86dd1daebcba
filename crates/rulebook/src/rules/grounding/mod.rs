//! Bringing a ground, and what needs one.

pub mod equipment;
pub mod new_cable;
pub mod separate_egc;
