//! Electrical checks of a dwelling before and after its plan, the readings to expect, and charts of both.

mod answer;
mod chart;
mod checks;
mod conductors;
mod expected_readings;
mod ground_path;
mod row;
mod state;

pub use answer::{ChecksAnswer, CountsAnswer, MomentAnswer, checks_answer, state_at};
pub use chart::{fault_current_chart, leakage_chart};
pub use checks::{FaultLoop, LeakageBudget, LoopSource, checks_of, fault_loop, leakage_budget, loop_with};
pub use conductors::{COLDEST, HOTTEST};
pub use expected_readings::{ReadingAnswer, VoltsAnswer, expected_readings};
pub use row::{Amount, Check, CheckRow, SourceAnswer, SourceKind, SubjectAnswer, SubjectKind, Verdict};
pub use state::{BroughtGround, Gfci, GfciPlace, Moment, State};
