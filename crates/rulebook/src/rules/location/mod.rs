//! What a place asks for.

pub mod afci_rooms;
pub mod appliances;
pub mod gfci_locations;
pub mod outdoor_outlets;
