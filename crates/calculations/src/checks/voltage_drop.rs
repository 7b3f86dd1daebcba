//! The voltage that the conductors up to a box lose under a stated load there. Nothing is required: it is advice.

use super::the_box;
use crate::conductors::{HotRun, length_of, runs_to};
use crate::row::{Amount, Asked, Check, CheckRow, SourceAnswer, SourceKind, Verdict};
use crate::state::State;
use dwelling::{BoxIndex, Holding};
use electrical::formulas::voltage_drop::{Return, drop, percent};
use electrical::{Amperes, Current, Voltage};

/// The share of the breaker's rating that is taken as the load at the opening: what a steady load may be.
const LOAD_SHARE: f64 = 0.8;
/// The voltage that the drop is a share of.
const SUPPLY: Voltage = Voltage::volts(120.0);
/// What a branch circuit should lose at most, in percent.
const ADVISED_PERCENT: f64 = 3.0;

/// The load that the drop is stated for.
#[must_use]
pub fn load_on(rating: Amperes) -> Current {
    Current::from(rating) * LOAD_SHARE
}

/// The check of a box where something can be plugged in.
pub(super) fn row(state: &State, at: BoxIndex) -> Option<CheckRow> {
    let holds = state.dwelling.device_box(at).holds;
    if !holds.is_receptacle() && holds != Holding::Unknown {
        return None;
    }
    let asked = Asked {
        check: Check::VoltageDrop,
        subject: the_box(state, at),
        circuits: state.circuits_of_box(at),
        source: SourceAnswer::other(
            SourceKind::Advice,
            "3 % of a branch circuit, an informational note at 210.19(A)",
            true,
        ),
    };
    let rating = state.dwelling.circuit_of(at).and_then(|circuit| circuit.breaker);
    Some(match (runs_to(state, at), rating) {
        (Err(missing), _) => asked.not_checked(missing),
        (_, None) => asked.not_checked("find out the rating of its breaker or fuse"),
        (Ok(runs), Some(rating)) => match lost(&runs, load_on(rating)) {
            Ok(lost) => judged(asked, &runs, load_on(rating), lost),
            Err(error) => asked.not_checked(error),
        },
    })
}

/// The voltage lost out and back, the conductors hot.
fn lost(runs: &[HotRun], load: Current) -> Result<Voltage, String> {
    let each = runs.iter().map(|run| drop(Return::TwoWire, load, run.length, run.resistance.1));
    each.sum::<Result<Sum, _>>().map(|sum| sum.0).map_err(|error| error.to_string())
}

/// A sum of voltages.
struct Sum(Voltage);

impl std::iter::Sum<Voltage> for Sum {
    fn sum<I: Iterator<Item = Voltage>>(each: I) -> Self {
        Self(each.fold(Voltage::volts(0.0), |sum, one| sum + one))
    }
}

fn judged(asked: Asked, runs: &[HotRun], load: Current, lost: Voltage) -> CheckRow {
    let share = match percent(lost, SUPPLY) {
        Ok(share) => share,
        Err(error) => return asked.not_checked(error.to_string()),
    };
    let verdict = if share <= ADVISED_PERCENT { Verdict::Ok } else { Verdict::Advice };
    let (volts, amperes, length) = (lost.as_volts(), load.as_amperes(), length_of(runs));
    let says = format!("{volts:.1} V of 120 V are lost at {amperes:.0} A over {length}");
    let amounts = (
        Amount::of(share, "%", format!("{share:.1} % at {amperes:.0} A")),
        Amount::at_most(ADVISED_PERCENT, "%", "at most 3 % advised"),
    );
    asked.checked(verdict, amounts, Some(ADVISED_PERCENT - share), says)
}
