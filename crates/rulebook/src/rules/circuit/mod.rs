//! What the circuit asks for.

pub mod directory;
pub mod multiwire;
pub mod old_methods;
pub mod overcurrent;
pub mod range_and_dryer;
