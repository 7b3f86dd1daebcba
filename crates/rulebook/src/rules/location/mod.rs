//! Protection that a place asks for.

pub mod afci_rooms;
pub mod gfci_locations;
