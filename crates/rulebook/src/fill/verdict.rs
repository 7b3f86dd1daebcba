//! Holding a count against a box when not everything in it is known.

use crate::cited::NotChecked;
use crate::code::CodeInForce;
use crate::fill::count::{BoxContents, Conductors, StrapInBox, count};
use crate::fill::{FillContents, FillVerdict, Fit};
use dwelling::{CableInBox, CableKind, Clamps};
use electrical::{Gauge, Volume};
use std::sync::Arc;

/// The room that the device of an opening takes. A GFCI, AFCI or dual-function receptacle is one strap like any other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DeviceSpace {
    /// There is none.
    None,
    /// One strap.
    Strap,
    /// One strap that needs this many gangs.
    Wide(u32),
}

/// Whether a box holds what is in it together with a device and equipment grounding conductors brought to it.
///
/// `egc_gauge` is the size of the conductors brought; where it is unknown and some are brought, the answer is not checked.
/// An unknown place of the clamps or kind of cable is tried both ways: only where that decides is it not checked.
#[must_use]
pub fn fill_with(
    contents: &FillContents,
    device: DeviceSpace,
    egcs_landing: u32,
    egc_gauge: Option<Gauge>,
    code: &CodeInForce,
) -> Fit {
    let least = Assumed { clamps: false, ground_wires: false };
    let most = Assumed { clamps: true, ground_wires: true };
    let counted = |assumed| {
        contents_as(contents, device, egcs_landing, egc_gauge, assumed).and_then(|contents| count(&contents, code))
    };
    let counted = counted(most).and_then(|most| {
        let silent =
            contents.clamps.is_none() || contents.cables.known.iter().any(|cable| cable.kind == CableKind::Unknown);
        let least = if silent { Some(counted(least)?) } else { None };
        Ok((least, most))
    });
    let (least, most) = match counted {
        Ok(both) => both,
        Err(missing) => return Fit { verdict: FillVerdict::NotChecked(missing), volume: contents.volume, fill: None },
    };
    let least_taken = least.as_ref().map_or(most.taken, |least| least.taken);
    let verdict = held_against(contents, least_taken, most.taken);
    let fill = least.filter(|_| verdict == FillVerdict::TooFull).unwrap_or(most);
    Fit { verdict: completed(contents, verdict), volume: contents.volume, fill: Some(Arc::new(fill)) }
}

/// What is assumed where the survey is silent.
#[derive(Clone, Copy)]
struct Assumed {
    clamps: bool,
    ground_wires: bool,
}

/// More straps than any box has: what lies beyond is too full in any case.
const MOST_STRAPS: u32 = 1000;

fn held_against(contents: &FillContents, least: Volume, most: Volume) -> FillVerdict {
    let missing = |because: &str| FillVerdict::NotChecked(NotChecked { because: because.to_owned() });
    let Some(volume) = contents.volume else {
        return missing("find out the volume of the box: read its mark, or measure its trade size");
    };
    match (least > volume, most > volume) {
        (true, _) => FillVerdict::TooFull,
        (_, false) => FillVerdict::Fits,
        _ if contents.clamps.is_none() => missing("find out whether the cable clamps are inside the box"),
        _ => missing("find out what kind of cable enters the box, and whether it has a grounding conductor"),
    }
}

/// A box cannot be said to hold its cables before they are counted; that it does not hold those known stands.
fn completed(contents: &FillContents, verdict: FillVerdict) -> FillVerdict {
    if contents.cables.complete || verdict != FillVerdict::Fits {
        return verdict;
    }
    FillVerdict::NotChecked(NotChecked { because: "count the cables that enter the box".to_owned() })
}

fn contents_as(
    contents: &FillContents,
    device: DeviceSpace,
    egcs_landing: u32,
    egc_gauge: Option<Gauge>,
    assumed: Assumed,
) -> Result<BoxContents, NotChecked> {
    let missing = |because: &str| NotChecked { because: because.to_owned() };
    let mut counted = BoxContents::default();
    for cable in &contents.cables.known {
        let gauge = cable.gauge.ok_or_else(|| missing("find out the size of the conductors in the box"))?;
        add(&mut counted.insulated, cable.insulated, gauge);
        if let Some(gauge) = ground_wire(cable, gauge, assumed) {
            add(&mut counted.grounding, 1, gauge);
        }
    }
    let on_the_strap = counted.insulated.iter().map(|conductors| conductors.gauge).max();
    let straps = contents.other_straps.saturating_add(u32::from(device != DeviceSpace::None));
    let on_the_strap = match (on_the_strap, straps) {
        (Some(gauge), _) => gauge,
        (None, 0) => Gauge::AWG_14,
        (None, _) => return Err(missing("find out which cables enter the box, and their size")),
    };
    if egcs_landing > 0 {
        let gauge =
            egc_gauge.ok_or_else(|| missing("find out the breaker's rating, which sizes the ground conductor"))?;
        add(&mut counted.grounding, egcs_landing, gauge);
    }
    let gangs = match device {
        DeviceSpace::None => 0,
        DeviceSpace::Strap => 1,
        DeviceSpace::Wide(gangs) => gangs.max(1),
    };
    let widths =
        std::iter::once(gangs).chain((0..contents.other_straps.min(MOST_STRAPS)).map(|_| 1)).filter(|gangs| *gangs > 0);
    counted.straps = widths.map(|gangs| StrapInBox { largest: on_the_strap, gangs }).collect();
    counted.clamps_inside = contents.clamps.map_or(assumed.clamps, |clamps| clamps == Clamps::Inside);
    counted.support_fittings = contents.support_fittings;
    Ok(counted)
}

/// The size of the grounding wire of a cable: that of its conductors, or 16 AWG in the cables of the 1950s and 1960s
/// with a reduced-size ground (common practice, no source: 16 AWG with 14 and 12 AWG conductors).
fn ground_wire(cable: &CableInBox, gauge: Gauge, assumed: Assumed) -> Option<Gauge> {
    match cable.kind {
        CableKind::NmReducedGround => Some(Gauge::AWG_16),
        CableKind::Unknown => assumed.ground_wires.then_some(gauge),
        kind => kind.has_ground_wire().then_some(gauge),
    }
}

/// Adds conductors to those of their size.
fn add(to: &mut Vec<Conductors>, count: u32, gauge: Gauge) {
    match to.iter_mut().find(|conductors| conductors.gauge == gauge) {
        Some(conductors) => conductors.count = conductors.count.saturating_add(count),
        None => to.push(Conductors { count, gauge }),
    }
}
