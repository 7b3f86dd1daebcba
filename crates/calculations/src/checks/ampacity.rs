//! What the conductors of a run may carry, and up to which air round them that still holds.

use super::the_run;
use crate::row::{Amount, Asked, Check, CheckRow, SourceAnswer, SourceKind, Verdict};
use crate::state::State;
use dwelling::{BoxIndex, CableKind, Feed, RoomIndex, Space};
use electrical::Temperature;
use electrical::formulas::ampacity::{Ampacity, Installed, Printing};
use electrical::formulas::insulation::{Insulation, TemperatureRating};
use rulebook::Edition;

/// The air that the table of ampacities is made for.
const ORDINARY_AIR: u32 = 30;
/// The insulation of conductors by their cable, where it tells: that of old cable is taken, 60 °C.
const fn insulation(kind: CableKind) -> Option<Insulation> {
    match kind {
        CableKind::KnobAndTube
        | CableKind::ArmoredNoStrip
        | CableKind::ArmoredUnknown
        | CableKind::ArmoredWithStrip => Some(Insulation::R),
        CableKind::NmTwoWire | CableKind::NmWithGround | CableKind::NmReducedGround => Some(Insulation::Nm),
        _ => None,
    }
}

/// The check of the run that feeds a box.
pub(super) fn row(state: &State, at: BoxIndex) -> CheckRow {
    let dwelling = &state.dwelling;
    let edition = state.code.edition;
    let table = if matches!(edition, Edition::Nec2011 | Edition::Nec2014 | Edition::Nec2017) {
        "Table 310.15(B)(16)"
    } else {
        "Table 310.16"
    };
    let asked = Asked {
        check: Check::Ampacity,
        subject: the_run(state, at),
        circuits: state.circuits_of_box(at),
        source: SourceAnswer::other(SourceKind::Rule, format!("{edition}, {table}"), true),
    };
    if edition == Edition::Nec2026 {
        return asked
            .not_checked(format!("the table of ampacities has not been read for {edition}: ask the authority"));
    }
    let Some(circuit) = dwelling.circuit_of(at) else { return asked.not_checked("find out which circuit it is on") };
    let Some(breaker) = circuit.breaker else {
        return asked.not_checked(format!("find out the rating of the breaker or fuse of circuit {}", circuit.id));
    };
    let Some(gauge) = dwelling.gauge_to(at) else { return asked.not_checked("find out the size of the conductors") };
    let Some(insulation) = insulation(dwelling.cable_to(at)) else {
        return asked.not_checked("find out the insulation of the conductors: their cable does not tell it");
    };
    let printing = if edition <= Edition::Nec2008 { Printing::Older } else { Printing::Since };
    let metal = dwelling.metal_to(at);
    let carries = |celsius: u32| -> Option<Ampacity> {
        let air = Temperature::celsius(f64::from(celsius));
        let installed = Installed { metal, gauge, insulation, air, bundled: 2 };
        installed.usable(printing, TemperatureRating::C60).ok()
    };
    let Some(ordinary) = carries(ORDINARY_AIR) else {
        return asked.not_checked(format!("find out what {gauge} may carry: it is not in the table that was entered"));
    };
    let (found, required) = (ordinary.as_amperes(), f64::from(breaker.get()));
    let amounts = (
        Amount::of(found, "A", format!("{found} A in air of {ORDINARY_AIR} °C")),
        Amount::at_least(required, "A", format!("at least {breaker}")),
    );
    if !ordinary.carries(breaker) {
        let says = format!("{gauge} may carry {found} A even in cool air, and stands behind {breaker}");
        return asked.checked(Verdict::NotOk, amounts, Some(found - required), says);
    }
    // The table goes by steps of 5 °C.
    let warm = (ORDINARY_AIR..=85)
        .step_by(5)
        .take_while(|celsius| carries(*celsius).is_some_and(|ampacity| ampacity.carries(breaker)));
    let warmest = warm.last().unwrap_or(ORDINARY_AIR);
    // Where a run lies and what lies beside it is not surveyed, so that nothing passes here: the least is told that would do.
    let find_out = match (dwelling.cable_to(at), may_lie_in_the_heat(state, at)) {
        (CableKind::KnobAndTube, _) => {
            "thermal insulation lies against the conductors anywhere, or an attic over them is hot"
        }
        (_, true) => "the run lies in a hot attic, in thermal insulation or in a bundle",
        (_, false) => "the run lies in a bundle with other cables",
    };
    asked.not_checked(format!(
        "find out whether {find_out}: {gauge} carries {breaker} in air to {warmest} °C and no more than three conductors \
         together"
    ))
}

/// Whether an attic or a roof lies above either end of a run, or nobody knows what does.
fn may_lie_in_the_heat(state: &State, at: BoxIndex) -> bool {
    let hot = |room: RoomIndex| match state.dwelling.room(room).above {
        Some(Space::Attic | Space::Roof | Space::Closed) | None => true,
        Some(_) => false,
    };
    let device_box = state.dwelling.device_box(at);
    hot(device_box.room)
        || match device_box.fed_by {
            Some(Feed::Box(parent)) => hot(state.dwelling.device_box(parent).room),
            Some(Feed::Panel(_)) => false,
            None => true,
        }
}
