//! What readings and sightings must be taken to mean, and what they must not.

mod damage;
mod ground_that_is_or_is_not;
mod own_practice;
mod properties;
mod published;
mod published_beliefs;
mod sightings;
mod sketch;
mod testers;
