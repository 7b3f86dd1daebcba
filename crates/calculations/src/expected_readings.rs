//! What a meter must read at every opening afterwards: without load, and with a heavy load at the end of its circuit.

use crate::checks::load_on;
use crate::conductors::{HotRun, ground_part, runs_to};
use crate::ground_path::ground_path;
use crate::laid_circuit::{End, LEG_VOLTS, laid_circuit, leg_of, supply};
use crate::row::Amount;
use crate::state::State;
use dwelling::BoxIndex;
use electrical::network::{Load, Meter, Opening, Readings, SolvedCircuit, Wire};
use electrical::{Amperes, Impedance, Voltage};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

/// What a meter must read at an opening.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ReadingAnswer {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// Its circuit.
    pub circuits: Vec<String>,
    /// Whether it has a ground to read against.
    pub grounded: bool,
    /// Without load: the same however long the runs are, since nothing falls where nothing flows.
    pub no_load: Option<VoltsAnswer>,
    /// With the heavy load on.
    pub heavy_load: Option<VoltsAnswer>,
    /// How far hot to neutral must fall when the heavy load is switched on.
    pub falls_by: Option<Amount>,
    /// The heavy load and where it is plugged in.
    pub load: Option<String>,
    /// What must be found out before anything can be said of the readings under load.
    pub find_out: Option<String>,
}

/// The three readings at an opening; those against a ground are null where there is none: any phantom may show.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct VoltsAnswer {
    /// Hot to neutral.
    pub hn: Amount,
    /// Hot to ground.
    pub hg: Option<Amount>,
    /// Neutral to ground.
    pub ng: Option<Amount>,
}

/// The readings to expect at every receptacle, in survey order.
#[must_use]
pub fn expected_readings(state: &State) -> Vec<ReadingAnswer> {
    let circuits: Vec<Result<Predicted, String>> = (0..state.trees.len()).map(|tree| predicted(state, tree)).collect();
    let receptacles = state.dwelling.box_indices().filter(|at| state.dwelling.device_box(*at).holds.is_receptacle());
    receptacles.map(|at| answer(state, &circuits, at)).collect()
}

/// A circuit solved at both ends, without load and with it.
struct Predicted {
    places: BTreeMap<BoxIndex, Opening>,
    /// By end: without load, with load.
    solved: Vec<[SolvedCircuit; 2]>,
    load: String,
}

fn answer(state: &State, circuits: &[Result<Predicted, String>], at: BoxIndex) -> ReadingAnswer {
    let grounded = state.grounded[at.0] == Some(true);
    let mut answer = ReadingAnswer {
        box_id: state.dwelling.device_box(at).id.clone(),
        circuits: state.circuits_of_box(at),
        grounded,
        no_load: None,
        heavy_load: None,
        falls_by: None,
        load: None,
        find_out: None,
    };
    let known = runs_to(state, at).and_then(|_| if grounded { wired_ground(state, at) } else { Ok(()) });
    let circuit = state.tree_of(at).map(|tree| &circuits[tree]);
    match (known, circuit) {
        (Err(missing), _) => answer.find_out = Some(missing),
        (Ok(()), Some(Err(missing))) => answer.find_out = Some(missing.clone()),
        (Ok(()), None) => answer.find_out = Some("find out which circuit it is on".to_owned()),
        (Ok(()), Some(Ok(circuit))) => fill_in(&mut answer, circuit, (at, leg_of(state, at))),
    }
    if answer.no_load.is_none() {
        answer.no_load = Some(without_load(grounded));
        answer.load = load_at(state, at).map(|load| format!("{:.0} A at {}", load.as_amperes(), answer.box_id));
    }
    answer
}

/// What is read without load where the runs are not known: all of the supply, and a neutral at the ground's level. Cables of
/// a kilometre, in which 5 mA flow into what lies between their conductors, would lift the neutral by 0.04 V.
fn without_load(grounded: bool) -> VoltsAnswer {
    let supply = || span(End::BOTH.map(|end| end.of(LEG_VOLTS)).into_iter());
    let level = || Amount::between(0.0, 0.1, "V", "0.0 to 0.1 V");
    VoltsAnswer { hn: supply(), hg: grounded.then(supply), ng: grounded.then(level) }
}

/// Whether the ground of a box returns by wires alone, whose sizes and lengths are known.
fn wired_ground(state: &State, at: BoxIndex) -> Result<(), String> {
    ground_path(state, at)?.iter().try_for_each(|segment| ground_part(state, segment).map(|_| ()))
}

fn fill_in(answer: &mut ReadingAnswer, circuit: &Predicted, (at, leg): (BoxIndex, Wire)) {
    let Some(opening) = circuit.places.get(&at) else {
        answer.find_out = Some("find out what feeds it, up to the panel".to_owned());
        return;
    };
    let read = |loaded: usize| -> Vec<Readings> {
        circuit.solved.iter().map(|both| both[loaded].readings(*opening, leg, Meter::HIGH_IMPEDANCE)).collect()
    };
    let (quiet, loaded) = (read(0), read(1));
    let volts = |readings: &[Readings]| VoltsAnswer {
        hn: span(readings.iter().map(|readings| readings.hot_to_neutral)),
        hg: answer.grounded.then(|| span(readings.iter().map(|readings| readings.hot_to_ground))),
        ng: answer.grounded.then(|| span(readings.iter().map(|readings| readings.neutral_to_ground))),
    };
    let falls = quiet.iter().zip(&loaded).map(|(quiet, loaded)| quiet.hot_to_neutral - loaded.hot_to_neutral);
    (answer.no_load, answer.heavy_load) = (Some(volts(&quiet)), Some(volts(&loaded)));
    answer.falls_by = Some(span(falls));
    answer.load = Some(circuit.load.clone());
}

/// The span of several voltages, to the tenth of a volt and outward.
fn span(volts: impl Iterator<Item = Voltage>) -> Amount {
    let tenths: Vec<f64> = volts.map(|volts| volts.as_volts() * 10.0).collect();
    // The drop that the meter itself causes, some millivolts, is not worth a tenth.
    let least = (tenths.iter().copied().fold(f64::INFINITY, f64::min) + 0.2).floor() / 10.0;
    // Nought has no sign on paper.
    let most = (tenths.iter().copied().fold(f64::NEG_INFINITY, f64::max) - 1e-6).ceil() / 10.0 + 0.0;
    Amount::between(least, most, "V", format!("{least:.1} to {most:.1} V"))
}

fn predicted(state: &State, tree: usize) -> Result<Predicted, String> {
    let (at, load) = heavy_load(state, tree)?;
    let mut solved = Vec::new();
    let mut places = BTreeMap::new();
    for end in End::BOTH {
        let laid = laid_circuit(state, tree, end.warmth(), supply(state, tree, end));
        let mut circuit = laid.circuit;
        places = laid.places;
        let told = |error: electrical::network::NetworkError| error.to_string();
        let quiet = circuit.solve().map_err(told)?;
        let Some(opening) = places.get(&at) else { return Err("find out the runs of its circuit".to_owned()) };
        let impedance = Impedance::ohms(120.0 / load.as_amperes(), 0.0);
        circuit.load(Load { at: *opening, between: (leg_of(state, at), Wire::Neutral), impedance });
        solved.push([quiet, circuit.solve().map_err(told)?]);
    }
    let load = format!("{:.0} A at {}", load.as_amperes(), state.dwelling.device_box(at).id);
    Ok(Predicted { places, solved, load })
}

/// The receptacle at the end of the longest way of a circuit, and the load that is plugged in there.
fn heavy_load(state: &State, tree: usize) -> Result<(BoxIndex, electrical::Current), String> {
    let receptacles =
        state.trees[tree].members.iter().filter(|at| state.dwelling.device_box(**at).holds.is_receptacle());
    let ohms = |runs: &[HotRun]| runs.iter().map(|run| (run.resistance.1 * run.length).as_ohms()).sum::<f64>();
    let reached = receptacles.filter_map(|at| runs_to(state, *at).ok().map(|runs| (*at, ohms(&runs))));
    let last = reached.max_by(|one, other| one.1.total_cmp(&other.1).then(other.0.cmp(&one.0)));
    let (at, _) = last.ok_or("find out the runs of its circuit, up to the panel")?;
    Ok((at, load_at(state, at).ok_or("find out the rating of its breaker or fuse")?))
}

/// What is plugged in at a receptacle for a reading under load: no more than a receptacle of 20 A bears, however large a fuse
/// was screwed in before it (210.21(B)).
fn load_at(state: &State, at: BoxIndex) -> Option<electrical::Current> {
    let rating = state.dwelling.circuit_of(at).and_then(|circuit| circuit.breaker)?;
    Some(load_on(rating.min(LARGEST_RECEPTACLE)))
}

/// The largest receptacle on a general-purpose circuit.
const LARGEST_RECEPTACLE: Amperes = Amperes::new(20);
