//! The commands, one file each.

pub mod checks;
pub mod circuits;
pub mod draw;
pub mod editions;
pub mod estimate;
pub mod example;
pub mod findings;
pub mod options;
pub mod papers;
pub mod places;
pub mod plan;
pub mod practice;
pub mod prices;
pub mod prove;
pub mod rule;
pub mod schema;
pub mod stream;
pub mod verify;
pub mod what_if;
pub mod why;
