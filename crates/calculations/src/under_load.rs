//! What a stated load makes of the readings at an opening: between the coldest conductors and the hottest, the strongest
//! supply and the weakest.

use crate::conductors::runs_to;
use crate::laid_circuit::{End, laid_circuit, leg_of, supply};
use crate::state::State;
use dwelling::BoxIndex;
use electrical::network::{Load, Opening, Supply, Wire};
use electrical::{Impedance, Milliamperes};

/// What a load does at an opening, in volts: least and most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnderLoad {
    /// How far hot to neutral falls; below zero where it rises, on the other leg of a multiwire set.
    pub falls_by: (f64, f64),
    /// How far the neutral rises above the panel's ground: what neutral to ground reads where a sound ground is.
    pub neutral_rises: (f64, f64),
}

/// How far the current of a load may be from what is stated: nameplates and clamps are no finer. Common practice, no source.
const LOAD_TOLERANCE: f64 = 0.10;
/// Hot and neutral of a supply of which nobody stated the fault current, at its weakest: 800 A from 120 V. Common practice,
/// no source.
pub const WEAKEST_SUPPLY: (Impedance, Impedance) = (Impedance::ohms(0.1, 0.0), Impedance::ohms(0.05, 0.0));

/// What a load plugged in at one box does at another of the same circuit or multiwire set, once the plan is carried out.
///
/// # Errors
/// What must be found out first.
pub fn under_load(
    state: &State,
    read_at: BoxIndex,
    load_at: BoxIndex,
    load: Milliamperes,
) -> Result<UnderLoad, String> {
    let tree = state.tree_of(read_at).ok_or("find out which circuit it is on")?;
    if state.tree_of(load_at) != Some(tree) {
        return Err("find out what the load was plugged into: it was not on this circuit".to_owned());
    }
    if load.get() <= 0 {
        return Err("find out what the load draws".to_owned());
    }
    runs_to(state, read_at)?;
    runs_to(state, load_at)?;
    let ends = End::BOTH.map(|end| at_end(state, tree, (read_at, load_at), (load, end)));
    let [one, other] = ends;
    let (one, other) = (one?, other?);
    if ![one.0, one.1, other.0, other.1].iter().all(|volts| volts.is_finite()) {
        return Err("find out what the load draws: it cannot be reckoned with".to_owned());
    }
    let span = |one: f64, other: f64| (one.min(other), one.max(other));
    Ok(UnderLoad { falls_by: span(one.0, other.0), neutral_rises: span(one.1, other.1) })
}

/// The fall of hot to neutral, and the rise of the neutral, at one end of what is not known.
fn at_end(
    state: &State,
    tree: usize,
    (read_at, load_at): (BoxIndex, BoxIndex),
    (load, end): (Milliamperes, End),
) -> Result<(f64, f64), String> {
    let stated = state.dwelling.panel(state.trees[tree].panel).fault_current.is_some();
    let weakest = |supply: Supply| Supply { leg: WEAKEST_SUPPLY.0, neutral: WEAKEST_SUPPLY.1, ..supply };
    let supply = match end {
        End::HotAndLow if !stated => weakest(supply(state, tree, end)),
        _ => supply(state, tree, end),
    };
    let volts = supply.leg_voltage.as_volts();
    let laid = laid_circuit(state, tree, end.warmth(), supply);
    let (Some(read), Some(plugged)) = (laid.places.get(&read_at), laid.places.get(&load_at)) else {
        return Err("find out the runs of its circuit, up to the panel".to_owned());
    };
    let milliamperes = f64::from(i32::try_from(load.get()).unwrap_or(i32::MAX));
    let amperes = milliamperes / 1000.0 * end.of((1.0 - LOAD_TOLERANCE, 1.0 + LOAD_TOLERANCE));
    let mut circuit = laid.circuit;
    let told = |error: electrical::network::NetworkError| error.to_string();
    let quiet = circuit.solve().map_err(told)?;
    let between = (leg_of(state, load_at), Wire::Neutral);
    circuit.load(Load { at: *plugged, between, impedance: Impedance::ohms(volts / amperes, 0.0) });
    let loaded = circuit.solve().map_err(told)?;
    let leg = leg_of(state, read_at);
    let falls =
        quiet.between(*read, leg, Wire::Neutral).magnitude() - loaded.between(*read, leg, Wire::Neutral).magnitude();
    let (neutral, bar) = (loaded.terminal(*read, Wire::Neutral), loaded.terminal(Opening::PANEL, Wire::Ground));
    Ok((falls, loaded.solution().between(neutral, bar).magnitude()))
}
