//! What the circuit asks for.

pub mod multiwire;
pub mod overcurrent;
