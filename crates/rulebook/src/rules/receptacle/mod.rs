//! What a new receptacle must be.

pub mod aluminium;
pub mod metal_faceplate;
pub mod rating;
pub mod tamper_resistant;
pub mod weather_resistant;
