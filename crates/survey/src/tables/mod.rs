//! The tables of a survey, each with its shape and how a row of it becomes part of a dwelling.

pub(crate) mod body;
pub(crate) mod circuit;
pub(crate) mod device_box;
pub(crate) mod found;
pub(crate) mod job;
pub(crate) mod names;
pub(crate) mod near_water;
pub(crate) mod panel;
pub(crate) mod room;
pub(crate) mod route;
pub(crate) mod run;
pub(crate) mod source;
pub(crate) mod survey;

/// The position of what could not be found: an error was reported, so that no dwelling comes of it.
pub(crate) const NOT_FOUND: usize = usize::MAX;
