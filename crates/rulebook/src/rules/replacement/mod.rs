//! What may be done at an existing outlet, with and without a ground.

pub mod blank_cover;
pub mod downstream;
pub mod existing_ground;
pub mod gfci_receptacle;
pub mod leave;
pub mod nongrounding;
pub mod protected_at_panel;
