//! What the tests of agreement share.

pub mod brute_force;
pub mod random_problem;
