//! Grounding wires against the largest breaker of all whose faults they carry.

use super::the_run;
use crate::ground_path::{Carrier, Segment, SegmentOf, ground_path};
use crate::row::{Amount, Asked, Check, CheckRow, SourceAnswer, SourceKind, SubjectAnswer, SubjectKind, Verdict};
use crate::state::State;
use dwelling::{BoxIndex, CableKind, CircuitIndex};
use electrical::{ConductorMetal, Gauge};
use rulebook::tables::egc_size::egc_size;
use std::collections::BTreeMap;

/// What a grounding wire carries.
#[derive(Default)]
struct Carried {
    circuits: Vec<CircuitIndex>,
    by: Option<Carrier>,
}

/// The check of every grounding wire that a fault would return by.
pub(super) fn rows(state: &State) -> Vec<CheckRow> {
    let mut carried: BTreeMap<SegmentOf, Carried> = BTreeMap::new();
    for at in state.dwelling.box_indices().filter(|at| state.grounded[at.0] != Some(false)) {
        let (Ok(path), Some(circuit)) = (ground_path(state, at), state.dwelling.device_box(at).circuit) else {
            continue;
        };
        for Segment { of, by, .. } in path {
            let carried = carried.entry(of).or_default();
            carried.by = Some(by);
            if !carried.circuits.contains(&circuit) {
                carried.circuits.push(circuit);
            }
        }
    }
    carried.iter().filter_map(|(of, carried)| row(state, of, carried)).collect()
}

fn row(state: &State, of: &SegmentOf, carried: &Carried) -> Option<CheckRow> {
    // Metal that the code accepts as a ground has no size of its own.
    let Some(Carrier::Wire(gauge, metal)) = carried.by else { return None };
    let subject = match of {
        SegmentOf::Run(at) => the_run(state, *at),
        SegmentOf::Brought(at) => SubjectAnswer { kind: SubjectKind::Route, id: state.brought[*at].route.clone() },
    };
    let asked = Asked {
        check: Check::GroundingConductor,
        subject,
        circuits: state.circuit_names(&carried.circuits),
        source: SourceAnswer::other(SourceKind::Rule, "Table 250.122", false),
    };
    let Some(gauge) = gauge else { return Some(asked.not_checked("find out the size of the grounding wire")) };
    Some(held_against(state, asked, (gauge, metal), (of, carried)))
}

fn held_against(
    state: &State,
    mut asked: Asked,
    (gauge, metal): (Gauge, ConductorMetal),
    (of, carried): (&SegmentOf, &Carried),
) -> CheckRow {
    let mut required: Option<Gauge> = None;
    for circuit in &carried.circuits {
        let circuit_of = state.dwelling.circuit(*circuit);
        let Some(breaker) = circuit_of.breaker else {
            return asked
                .not_checked(format!("find out the rating of the breaker or fuse of circuit {}", circuit_of.id));
        };
        match egc_size(breaker, metal, None, &state.code) {
            Ok(size) => {
                asked.source = SourceAnswer::rule(size.cite);
                required = required.max(Some(size.value));
            }
            Err(missing) => return asked.not_checked(missing.because),
        }
    }
    let Some(required) = required else { return asked.not_checked("find out which circuits it serves") };
    // A grounding wire need not be larger than the conductors it lies with, 250.122(A).
    let beside = match of {
        SegmentOf::Run(at) => beside(state, *at),
        SegmentOf::Brought(_) => None,
    };
    let required = beside.map_or(required, |beside| required.min(beside));
    if carried.circuits.len() > 1 {
        asked.source.cite.push_str(" and 250.122(C)");
    }
    let serves = asked.circuits.join(", ");
    if gauge < required
        && matches!(of, SegmentOf::Run(at) if state.dwelling.cable_to(*at) == CableKind::NmReducedGround)
    {
        return asked.not_checked(format!(
            "ask the authority whether the thinner ground of the old cable may serve: {gauge}, and the table asks {required}"
        ));
    }
    let (verdict, says) = if gauge >= required {
        (Verdict::Ok, format!("{gauge} for circuit {serves}, which asks {required}"))
    } else {
        (Verdict::NotOk, format!("{gauge} is too thin for circuit {serves}, which asks {required}"))
    };
    let amounts = (
        Amount::of(f64::from(gauge.number()), "AWG", gauge.to_string()),
        Amount::at_most(f64::from(required.number()), "AWG", format!("{required} or thicker")),
    );
    asked.checked(verdict, amounts, Some(f64::from(required.number()) - f64::from(gauge.number())), says)
}

/// The size of the circuit conductors that a grounding wire lies with.
fn beside(state: &State, at: BoxIndex) -> Option<Gauge> {
    state.dwelling.gauge_to(at)
}
