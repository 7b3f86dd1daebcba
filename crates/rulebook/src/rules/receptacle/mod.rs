//! What a new receptacle must be.

pub mod aluminium;
pub mod rating;
pub mod tamper_resistant;
pub mod weather_resistant;
