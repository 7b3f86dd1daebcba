//! What work and material cost: the price book, the lines of a takeoff, what the owner pays, what is bought.

mod cents;
mod charge;
mod charges;
mod condition;
mod counter;
mod demo;
mod figures;
mod line;
mod material;
mod packs;
mod percent;
mod price;
mod price_book;
mod task;
mod written;

pub use cents::Cents;
pub use charge::Charge;
pub use charges::{Charges, OwnerPrice};
pub use condition::WorkCondition;
pub use counter::Counter;
pub use figures::Figures;
pub use line::{Line, added_up};
pub use material::Material;
pub use packs::{Bought, packs_for};
pub use percent::Percent;
pub use price::{Price, WorkTime};
pub use price_book::PriceBook;
pub use task::Task;
