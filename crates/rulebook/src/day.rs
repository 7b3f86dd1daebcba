//! A day of the calendar, as the dwelling's job has it too.

pub use dwelling::{Day, NotADay};
