//! Exact search over integers: trees that carry protection down, coupled by links that carry a supply between groups.
//! It knows nothing electrical.

mod ascent;
mod bound;
mod branching;
pub mod certificate;
mod checker;
mod compiled_tree;
mod effective_tree;
mod frontier;
mod link_search;
mod link_state;
mod load_side;
mod net;
mod part;
mod primal;
mod problem;
mod raised;
mod solution;
mod solve;
mod stages;
pub mod steiner;
mod tree_solver;
mod validate;
mod weight;

pub use checker::{Fault, check};
pub use frontier::{Frontier, FrontierPoint, frontier};
pub use problem::{Cost, Group, Link, LinkEnd, Marks, Node, NodeOption, Problem, RootOption, SupplyNeed, Tree};
pub use solution::{ChosenLink, Forced, Limits, NodeChoice, Outcome, Solution};
pub use solve::{solve, solve_with};
