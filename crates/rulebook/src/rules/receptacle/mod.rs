//! What a new receptacle must be.

pub mod aluminium;
pub mod metal_faceplate;
pub mod rating;
pub mod switch_plate;
pub mod tamper_resistant;
pub mod tub_zone;
pub mod weather_resistant;
