//! The checks of a dwelling as an answer: before, after, the readings to expect, and what all of it rests on.

use crate::checks::checks_of;
use crate::expected_readings::{ReadingAnswer, expected_readings};
use crate::row::{CheckRow, Verdict};
use crate::state::{Moment, State};
use remedies::{LawAnswer, Planned};
use schemars::JsonSchema;
use serde::Serialize;

/// The checks of a dwelling.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ChecksAnswer {
    /// The version of this answer's shape.
    pub format: u32,
    /// What the job is called.
    pub job: String,
    /// The code in force.
    pub law: LawAnswer,
    /// The wiring at each moment that was asked for.
    pub moments: Vec<MomentAnswer>,
    /// What a meter must read at every receptacle once the plan is carried out.
    pub expected_readings: Vec<ReadingAnswer>,
    /// What every number rests on.
    pub assumptions: Vec<&'static str>,
}

/// The checks of the wiring at a moment.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct MomentAnswer {
    /// When.
    pub moment: Moment,
    /// How many checks came out how.
    pub counts: CountsAnswer,
    /// The boxes that have no ground: no fault current returns from them, and no breaker opens.
    pub without_ground: Vec<String>,
    /// The checks: box by box, then grounding wires, then GFCIs.
    pub checks: Vec<CheckRow>,
}

/// How many checks came out how.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CountsAnswer {
    /// As required, or as advised where nothing is required.
    pub ok: usize,
    /// No rule broken, advice not followed.
    pub advice: usize,
    /// Not as required.
    pub not_ok: usize,
    /// A fact or a value is missing.
    pub not_checked: usize,
}

/// What every number rests on.
const ASSUMPTIONS: [&str; 6] = [
    "conductors from 0 °C to 75 °C; copper of before 1965 may be tinned, 4 % more resistance",
    "114 to 126 V at the service, 120 V for shares of it",
    "splices and terminals are sound: what they add is not in these numbers, and a loaded test of the finished ground is",
    "the strongest source is taken as endless; the weakest is the fault current that the survey states for the panel",
    "the load for voltage drop and readings is 80 % of the breaker's rating, plugged in at the opening or the far end",
    "0.5 mA of leakage for everything plugged in, 50 to 150 pF/m of cable: the first by standards, the second assumed",
];

/// The checks of a planned dwelling, at the moments asked for.
#[must_use]
pub fn checks_answer(planned: &Planned, law: &LawAnswer, moments: &[Moment]) -> ChecksAnswer {
    let states: Vec<State> = moments.iter().map(|moment| state_at(planned, *moment)).collect();
    let after = states.iter().find(|state| state.moment == Moment::After);
    ChecksAnswer {
        format: 1,
        job: planned.facts.dwelling.job.name.clone(),
        law: law.clone(),
        moments: states.iter().map(moment_answer).collect(),
        expected_readings: after.map(expected_readings).unwrap_or_default(),
        assumptions: ASSUMPTIONS.to_vec(),
    }
}

/// The wiring at a moment.
#[must_use]
pub fn state_at(planned: &Planned, moment: Moment) -> State {
    match moment {
        Moment::Before => State::before(planned),
        Moment::After => State::after(planned),
    }
}

fn moment_answer(state: &State) -> MomentAnswer {
    let checks = checks_of(state);
    let count = |verdict: Verdict| checks.iter().filter(|row| row.verdict == verdict).count();
    let counts = CountsAnswer {
        ok: count(Verdict::Ok),
        advice: count(Verdict::Advice),
        not_ok: count(Verdict::NotOk),
        not_checked: count(Verdict::NotChecked),
    };
    let bare = state.dwelling.box_indices().filter(|at| state.grounded[at.0] == Some(false));
    let without_ground = bare.map(|at| state.dwelling.device_box(at).id.clone()).collect();
    MomentAnswer { moment: state.moment, counts, without_ground, checks }
}

impl ChecksAnswer {
    /// Whether the last moment asked for leaves nothing to mend and nothing to find out.
    #[must_use]
    pub fn is_last_word(&self) -> bool {
        self.moments.last().is_some_and(|last| last.counts.not_ok == 0 && last.counts.not_checked == 0)
    }
}
