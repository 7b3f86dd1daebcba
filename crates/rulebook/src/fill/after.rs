//! Whether the box of an opening holds what it would hold after each remedy.

use crate::code::CodeInForce;
use crate::fill::{DeviceSpace, Fit, fill_with};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::tables::egc_size::egc_size;
use dwelling::Holding;
use electrical::ConductorMetal;

/// Whether the box of an opening holds what it would hold after a remedy.
#[must_use]
pub fn fit_after(remedy: Remedy, opening: &Opening, code: &CodeInForce) -> Fit {
    let device = match remedy {
        Remedy::Leave if !opening.existing_outlet => DeviceSpace::None,
        Remedy::Leave => as_found(opening),
        _ if opening.is_receptacle_outlet() => DeviceSpace::Strap,
        _ => as_found(opening),
    };
    let (egcs_landing, egc_gauge) = match remedy {
        Remedy::SeparateEgc => {
            let size = opening.breaker.and_then(|breaker| egc_size(breaker, ConductorMetal::Copper, None, code).ok());
            (1, size.map(|size| size.value))
        }
        // The new cable takes the place of the old one: as many conductors, and one ground more unless the old had one.
        Remedy::NewCable if old_cable_has_a_ground_wire(opening) => (0, None),
        Remedy::NewCable => (1, opening.gauge),
        _ => (0, None),
    };
    fill_with(&opening.fill, device, egcs_landing, egc_gauge, code)
}

fn old_cable_has_a_ground_wire(opening: &Opening) -> bool {
    opening.fill.cables.known.first().is_some_and(|cable| cable.kind.has_ground_wire())
}

/// What is here takes the room of a strap unless it plainly does not; what is unseen is taken to.
fn as_found(opening: &Opening) -> DeviceSpace {
    if opening.holds.has_strap() || opening.holds == Holding::Unknown { DeviceSpace::Strap } else { DeviceSpace::None }
}
