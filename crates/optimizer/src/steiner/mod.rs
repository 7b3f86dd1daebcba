//! Exact rooted Steiner arborescence with node prizes. Steiner trees and prize-collecting Steiner trees in graphs are
//! special cases.

mod cases;
mod certificate;
mod certify;
mod checker;
mod degree_tests;
mod dropped;
mod dual_ascent;
mod frontier;
mod graph;
mod instance;
mod label_setting;
mod label_table;
mod local_search;
mod node_work;
mod primal;
mod reader;
mod reduced_cost;
#[cfg(test)]
mod reductions_alone;
mod search;
mod side;
mod side_checker;
mod sided_search;
mod sided_tree;
mod solve;
mod special_distance;
mod split;
mod terminal_tests;
mod tree;

pub use certificate::{Case, Certificate, Cut, Dropped, Step};
pub use certify::certify;
pub use checker::{Refusal, check_bound, check_tree};
pub use instance::{Cost, Instance, Line, MOST, Malformed, Tree};
pub use reader::{Reading, Unreadable, read};
pub use search::{Methods, SteinerLimits};
pub use side::{MalformedSide, Side};
pub use side_checker::{SideRefusal, check_sides};
pub use sided_search::solve_with_sides;
pub use solve::{Answer, solve_steiner};
