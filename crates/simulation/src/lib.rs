//! Simulated houses: what is hidden in them is drawn from the priors of inference, what is read in them follows from the
//! network solver. So what inference says can be held against what is true.
//!
//! The same seed gives the same house on every machine.

mod calibration;
mod chance;
mod counting;
mod house;
mod instrument;
mod layout;
mod least;
mod searching;
mod sketch;
mod truth;
mod visit;

pub use calibration::{BINS, Bin, Calibration};
pub use chance::Chance;
pub use counting::{Counts, Way, count};
pub use house::{House, house};
pub use instrument::told_by_lamps;
pub use least::least_opened;
pub use searching::{Fault, Searched, searched};
pub use sketch::Size;
pub use truth::BoxTruth;
