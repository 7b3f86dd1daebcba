//! Electrical checks of a dwelling before and after its plan, the readings to expect, and charts of both.

mod answer;
mod chart;
mod checks;
mod conductors;
mod expected_readings;
mod ground_path;
mod laid_circuit;
mod row;
mod state;
mod under_load;

pub use answer::{ChecksAnswer, CountsAnswer, MomentAnswer, checks_answer, state_at};
pub use chart::{fault_current_chart, leakage_chart};
pub use checks::{FaultLoop, LeakageBudget, LoopSource, checks_of, fault_loop, leakage_budget, loop_with};
pub use conductors::{COLDEST, HOTTEST};
pub use expected_readings::{ReadingAnswer, VoltsAnswer, expected_readings};
pub use laid_circuit::{LaidCircuit, laid_circuit, leg_of};
pub use row::{Amount, Check, CheckRow, SourceAnswer, SourceKind, SubjectAnswer, SubjectKind, Verdict};
pub use state::{BroughtGround, Gfci, GfciPlace, Moment, State};
pub use under_load::{UnderLoad, WEAKEST_SUPPLY, under_load};
