//! The conductors along a way: their lengths and their resistance between the coldest and the hottest.

use crate::ground_path::{Carrier, Segment, SegmentOf};
use crate::state::State;
use dwelling::BoxIndex;
use electrical::formulas::conductor_resistance::{Conductor, Form};
use electrical::formulas::ground_fault_loop::Part;
use electrical::{ConductorMetal, Gauge, Length, ResistancePerLength, Temperature};

/// The coldest that conductors are taken to be: a crawl space in winter. Assumed, no source.
pub const COLDEST: Temperature = Temperature::celsius(0.0);
/// The hottest that conductors are taken to be: the temperature of the code's table of resistances, above the 60 °C that
/// old insulation may reach.
pub const HOTTEST: Temperature = Temperature::celsius(75.0);

/// Copper under rubber was tinned until about then. From memory.
const TINNED_UNTIL: u16 = 1965;

/// A conductor of a size and metal, where it is or may be tinned; solid to 10 AWG, stranded above.
const fn conductor(gauge: Gauge, metal: ConductorMetal, tinned: bool) -> Conductor {
    let form = if gauge.number() >= 10 { Form::Solid } else { Form::Stranded };
    Conductor { gauge, metal, form, tinned }
}

/// The resistance per length of a conductor that is there, from bare and cold to tinned, if it may be, and hot.
///
/// # Errors
/// None for the two temperatures taken here; in words, if any.
pub fn resistance(
    state: &State,
    gauge: Gauge,
    metal: ConductorMetal,
    is_new: bool,
) -> Result<(ResistancePerLength, ResistancePerLength), String> {
    let may_be_tinned = !is_new && state.dwelling.job.built.is_none_or(|year| year <= TINNED_UNTIL);
    let told = |error: electrical::OutOfRange| error.to_string();
    let least = conductor(gauge, metal, false).resistance(COLDEST).map_err(told)?;
    Ok((least, conductor(gauge, metal, may_be_tinned).resistance(HOTTEST).map_err(told)?))
}

/// A run that feeds a box on the way from the panel, with what of it is known.
#[derive(Clone, Copy, Debug)]
pub struct HotRun {
    /// The box it feeds.
    pub to: BoxIndex,
    /// Its length.
    pub length: Length,
    /// The resistance per length of each of its conductors, cold and hot.
    pub resistance: (ResistancePerLength, ResistancePerLength),
}

/// The runs from the panel to a box.
///
/// # Errors
/// What must be found out.
pub fn runs_to(state: &State, at: BoxIndex) -> Result<Vec<HotRun>, String> {
    let way = state.way_to(at).ok_or("find out what feeds it, up to the panel")?;
    way.into_iter().map(|to| run_to(state, to)).collect()
}

/// The run that feeds a box.
///
/// # Errors
/// What must be found out.
pub fn run_to(state: &State, to: BoxIndex) -> Result<HotRun, String> {
    let (dwelling, id) = (&state.dwelling, &state.dwelling.device_box(to).id);
    let length = dwelling.device_box(to).run.length.ok_or_else(|| format!("find out the length of the run to {id}"))?;
    let gauge =
        dwelling.gauge_to(to).ok_or_else(|| format!("find out the size of the conductors in the run to {id}"))?;
    let resistance = resistance(state, gauge, dwelling.metal_to(to), false)?;
    Ok(HotRun { to, length, resistance })
}

/// The length of several runs.
#[must_use]
pub fn length_of(runs: &[HotRun]) -> Length {
    runs.iter().fold(Length::ZERO, |sum, run| sum + run.length)
}

/// Runs as parts of a loop.
#[must_use]
pub fn parts_of(runs: &[HotRun]) -> Vec<Part> {
    runs.iter().map(|run| Part::Metal(run.resistance.0, run.resistance.1, run.length)).collect()
}

/// The pieces of a ground path as parts of a loop.
///
/// # Errors
/// What must be found out.
pub fn ground_parts(state: &State, path: &[Segment]) -> Result<Vec<Part>, String> {
    path.iter().map(|segment| ground_part(state, segment)).collect()
}

/// A piece of a ground path as a part of a loop.
///
/// # Errors
/// What must be found out.
pub fn ground_part(state: &State, segment: &Segment) -> Result<Part, String> {
    let (name, is_new) = match &segment.of {
        SegmentOf::Run(at) => (format!("the run to {}", state.dwelling.device_box(*at).id), false),
        SegmentOf::Brought(position) => (format!("route {}", state.brought[*position].route), true),
    };
    let Carrier::Wire(gauge, metal) = segment.by else {
        return Err(format!("find out the impedance of the metal of {name}, by a loaded test"));
    };
    let gauge = gauge.ok_or_else(|| format!("find out the size of the grounding wire of {name}"))?;
    let length = segment.length.ok_or_else(|| format!("find out the length of {name}"))?;
    let (least, most) = resistance(state, gauge, metal, is_new)?;
    Ok(Part::Metal(least, most, length))
}
