//! What the tests of agreement share.

pub mod brute_force;
pub mod house_problem;
pub mod random_problem;
