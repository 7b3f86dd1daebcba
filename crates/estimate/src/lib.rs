//! What work and material cost: the price book, and sums of money.

mod cents;
mod material;
mod price_book;
mod task;

pub use cents::Cents;
pub use material::Material;
pub use price_book::{Price, PriceBook};
pub use task::Task;
