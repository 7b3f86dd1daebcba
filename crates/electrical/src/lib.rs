//! Quantities of the trade with their units, exact where the code compares them.

mod amperes;
mod gauge;
mod length;
mod volts;
mod volume;

pub use amperes::Amperes;
pub use gauge::{ConductorMetal, Gauge};
pub use length::Length;
pub use volts::{Ohms, Volts};
pub use volume::Volume;
