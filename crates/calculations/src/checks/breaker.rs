//! The breaker or fuse against the conductors of a run: the rule for small conductors.

use super::the_run;
use crate::row::{Amount, Asked, Check, CheckRow, SourceAnswer, SourceKind, Verdict};
use crate::state::State;
use dwelling::BoxIndex;
use rulebook::tables::small_conductors::largest_breaker;

/// The check of the run that feeds a box.
pub(super) fn row(state: &State, at: BoxIndex) -> CheckRow {
    let dwelling = &state.dwelling;
    let mut asked = Asked {
        check: Check::Breaker,
        subject: the_run(state, at),
        circuits: state.circuits_of_box(at),
        source: SourceAnswer::other(SourceKind::Rule, "240.4(D)", false),
    };
    let Some(circuit) = dwelling.circuit_of(at) else { return asked.not_checked("find out which circuit it is on") };
    let Some(gauge) = dwelling.gauge_to(at) else {
        return asked.not_checked("find out the size of the conductors");
    };
    let metal = dwelling.metal_to(at);
    let largest = match largest_breaker(gauge, metal, &state.code) {
        Ok(Some(largest)) => largest,
        Ok(None) => {
            return asked.not_checked(format!(
                "find out what {gauge} may carry: the rule for small conductors does not name it"
            ));
        }
        Err(missing) => return asked.not_checked(missing.because),
    };
    asked.source = SourceAnswer::rule(largest.cite);
    let Some(breaker) = circuit.breaker else {
        return asked.not_checked(format!("find out the rating of the breaker or fuse of circuit {}", circuit.id));
    };
    let (found, most) = (f64::from(breaker.get()), f64::from(largest.value.get()));
    let (verdict, says) = if breaker <= largest.value {
        (Verdict::Ok, format!("{breaker} over {gauge}"))
    } else {
        (Verdict::NotOk, format!("{breaker} is too large over {gauge}: at most {} is allowed", largest.value))
    };
    let amounts = (
        Amount::of(found, "A", breaker.to_string()),
        Amount::at_most(most, "A", format!("at most {} over {gauge}", largest.value)),
    );
    asked.checked(verdict, amounts, Some(most - found), says)
}
