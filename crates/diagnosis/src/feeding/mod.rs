//! What feeds what, where nobody knows: every order that still fits what was seen, and the test that tells most.
//!
//! An order that is likely is no order that is known: nothing here may stand in for looking.

mod clash;
mod greedy;
mod inside;
mod likely;
mod next_test;
mod on_circuit;
mod order;
mod outside;
mod pieces;
mod practice;
mod question;
mod reckoned;
mod shape;
mod weighing;

pub use clash::Clash;
pub use next_test::{NextTest, TestOutcome, best_parting, in_doubt};
pub use order::{FeedingOrder, LikelyOrder, Orders, PossibleRun, feeding_orders, on_likeliest_orders};
pub use practice::PRACTICE;
pub use question::{Fact, Node, Onward, Question};
pub use reckoned::MOST_COUNTED;
pub use weighing::{Likely, MOST_UNKNOWN, NotWeighed, Parting, Seen, Weighing, weigh};
