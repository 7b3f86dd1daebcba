//! Pages for people in the terminal: made to be read by room, wrapped to the screen, plain when piped.

pub mod beliefs;
pub mod checks;
mod dangers;
pub mod editions;
pub mod estimate;
pub mod feeding;
pub mod findings;
mod ink;
mod lines;
mod next_best;
mod offers;
pub mod options;
pub mod plan;
pub mod prove;
pub mod verify;
pub mod what_if;
pub mod why;
mod words;
