//! What the code asks of an opening: every rule, by edition, each value with its section and how it is known.

mod cited;
mod code;
mod duty;
mod edition;
mod fill;
mod judgement;
mod opening;
mod remedy;
mod rule;
mod rules;
pub mod tables;

pub use cited::{ByEdition, Citation, Cited, Known, NotChecked, Reading};
pub use code::CodeInForce;
pub use duty::{Duty, Need};
pub use edition::Edition;
pub use fill::{BoxFill, FillContents, FillLine, FillVerdict, Fit};
pub use judgement::{DutyVerdict, Judgement, Lawful, RemedyVerdict, judge};
pub use opening::Opening;
pub use remedy::{Marking, Remedy};
pub use rule::{Rule, Says, Statement};
pub use rules::{RULES, rule};
