//! Bringing a ground, and what needs one.

pub mod changed_wiring;
pub mod equipment;
pub mod joints;
pub mod methods;
pub mod new_cable;
pub mod new_circuit;
pub mod separate_egc;
