//! Whether the box of an opening holds what it would hold after each remedy.

use crate::code::CodeInForce;
use crate::fill::{DeviceSpace, Fit, fill_with};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::tables::egc_size::egc_size;
use dwelling::Holding;
use electrical::{ConductorMetal, Gauge};

/// Whether the box of an opening holds what it would hold after a remedy.
#[must_use]
pub fn fit_after(remedy: Remedy, opening: &Opening, code: &CodeInForce) -> Fit {
    let load = load_after(remedy, opening, code);
    fill_with(&opening.fill, load.device, load.egcs_landing, load.egc_gauge, code)
}

/// The fits after every remedy, in the order of [`Remedy::ALL`]: what loads a box alike is counted once.
pub(crate) fn fits_after_all(opening: &Opening, code: &CodeInForce) -> Vec<Fit> {
    let loads: Vec<Load> = Remedy::ALL.iter().map(|remedy| load_after(*remedy, opening, code)).collect();
    let mut fits: Vec<Fit> = Vec::with_capacity(loads.len());
    for (at, load) in loads.iter().enumerate() {
        let alike = loads[..at].iter().position(|earlier| earlier == load);
        fits.push(match alike {
            Some(earlier) => fits[earlier].clone(),
            None => fill_with(&opening.fill, load.device, load.egcs_landing, load.egc_gauge, code),
        });
    }
    fits
}

/// What a remedy adds to what enters a box.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Load {
    device: DeviceSpace,
    egcs_landing: u32,
    egc_gauge: Option<Gauge>,
}

fn load_after(remedy: Remedy, opening: &Opening, code: &CodeInForce) -> Load {
    let device = match remedy {
        Remedy::BlankCover if opening.is_receptacle_outlet() => DeviceSpace::None,
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
    Load { device, egcs_landing, egc_gauge }
}

fn old_cable_has_a_ground_wire(opening: &Opening) -> bool {
    opening.fill.cables.known.first().is_some_and(|cable| cable.kind.has_ground_wire())
}

/// What is here takes the room of a strap unless it plainly does not; what is unseen is taken to.
fn as_found(opening: &Opening) -> DeviceSpace {
    if opening.holds.has_strap() || opening.holds == Holding::Unknown { DeviceSpace::Strap } else { DeviceSpace::None }
}
