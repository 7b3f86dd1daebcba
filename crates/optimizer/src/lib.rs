//! Exact search over integers: trees that carry protection down, coupled by links that carry a supply between groups.
//! It knows nothing electrical.

mod problem;

pub use problem::{Cost, Group, Link, LinkEnd, Marks, Node, NodeOption, Problem, RootOption, SupplyNeed, Tree};
