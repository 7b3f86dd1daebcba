//! What the tests of agreement share.

#![allow(dead_code, reason = "no test uses all of it")]

pub mod brute_force;
pub mod house_problem;
pub mod random_problem;
