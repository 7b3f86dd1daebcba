//! Exact rooted Steiner arborescence with node prizes. Steiner trees and prize-collecting Steiner trees in graphs are
//! special cases.

mod cases;
mod degree_tests;
mod dual_ascent;
mod graph;
mod instance;
mod label_setting;
mod label_table;
mod local_search;
mod node_work;
mod primal;
mod reader;
mod reduced_cost;
mod search;
mod solve;
mod special_distance;
mod split;
mod terminal_tests;
mod tree;

pub use instance::{Cost, Instance, Line, MOST, Malformed, Tree};
pub use reader::{Reading, Unreadable, read};
pub use search::SteinerLimits;
pub use solve::{Answer, solve_steiner};
