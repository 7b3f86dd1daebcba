//! Quantities of the trade with their units, exact where the code compares them; formulas over them; a network solver.

mod amperes;
mod complex;
pub mod formulas;
mod gauge;
mod length;
mod milliamperes;
pub mod network;
mod out_of_range;
mod quantity;
mod volts;
mod volume;

pub use amperes::Amperes;
pub use complex::Complex;
pub use gauge::{ConductorMetal, Gauge};
pub use length::Length;
pub use milliamperes::Milliamperes;
pub use out_of_range::OutOfRange;
pub use quantity::{
    Capacitance, CapacitancePerLength, CircularMils, Current, Diameter, Frequency, Impedance, Resistance,
    ResistancePerLength, Resistivity, Temperature, TimeSpan, Voltage,
};
pub use volts::{Ohms, Volts};
pub use volume::Volume;
