//! What a meter must read at every opening afterwards: without load, and with a heavy load at the end of its circuit.

use crate::checks::load_on;
use crate::conductors::{HotRun, ground_part, runs_to};
use crate::ground_path::{Carrier, Segment, SegmentOf, carrier, ground_path};
use crate::row::Amount;
use crate::state::State;
use dwelling::{BoxIndex, GroundPath, RouteEnd};
use electrical::formulas::ground_fault_loop::Part;
use electrical::network::{BranchCircuit, Fault, Load, Meter, Opening, Readings, Run, SolvedCircuit, Supply, Wire};
use electrical::{CapacitancePerLength, Impedance, Resistance, ResistancePerLength, Voltage};
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
    /// Without load.
    pub no_load: Option<VoltsAnswer>,
    /// With the heavy load on.
    pub heavy_load: Option<VoltsAnswer>,
    /// How far hot to neutral must fall when the heavy load is switched on.
    pub falls_by: Option<Amount>,
    /// The heavy load and where it is plugged in.
    pub load: Option<String>,
    /// What must be found out before anything can be said.
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

/// One end of what is not known: temperature, tinning and voltage.
#[derive(Clone, Copy, PartialEq, Eq)]
enum End {
    ColdAndHigh,
    HotAndLow,
}

impl End {
    const BOTH: [Self; 2] = [Self::ColdAndHigh, Self::HotAndLow];

    const fn of<T: Copy>(self, (cold, hot): (T, T)) -> T {
        match self {
            Self::ColdAndHigh => cold,
            Self::HotAndLow => hot,
        }
    }
}

/// The voltage between a leg and the neutral. From memory: ANSI C84.1, range A, 5 % to either side of 120 V.
const LEG_VOLTS: (Voltage, Voltage) = (Voltage::volts(126.0), Voltage::volts(114.0));
/// What lies between the conductors of a run: the middle of what is assumed of cable.
const COUPLING: CapacitancePerLength = CapacitancePerLength::picofarads_per_metre(100.0);

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
    answer
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
    let most = (tenths.iter().copied().fold(f64::NEG_INFINITY, f64::max) - 1e-6).ceil() / 10.0;
    Amount::between(least, most, "V", format!("{least:.1} to {most:.1} V"))
}

/// The leg that a box's circuit has in its tree.
fn leg_of(state: &State, at: BoxIndex) -> Wire {
    let circuit = state.dwelling.device_box(at).circuit;
    let second = state.tree_of(at).is_some_and(|tree| state.trees[tree].circuits.get(1).copied() == circuit);
    if second { Wire::LegB } else { Wire::LegA }
}

fn predicted(state: &State, tree: usize) -> Result<Predicted, String> {
    let members = &state.trees[tree].members;
    let (at, load) = heavy_load(state, tree)?;
    let mut solved = Vec::new();
    let mut places = BTreeMap::new();
    for end in End::BOTH {
        let mut circuit = BranchCircuit::new(supply(state, tree, end));
        places = lay(state, members, end, &mut circuit);
        bring_grounds(state, &places, end, &mut circuit);
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
    let rating = state.dwelling.circuit_of(at).and_then(|circuit| circuit.breaker);
    Ok((at, load_on(rating.ok_or("find out the rating of its breaker or fuse")?)))
}

/// What the circuit hangs on: the usual supply, as weak as the survey states it at the weak end.
fn supply(state: &State, tree: usize, end: End) -> Supply {
    let usual = Supply { leg_voltage: end.of(LEG_VOLTS), ..Supply::usual() };
    let stated = state.dwelling.panel(state.trees[tree].panel).fault_current.filter(|_| end == End::HotAndLow);
    stated.map_or(usual, |current| {
        // Two thirds in the leg and a third in the neutral, as in the usual supply.
        let whole = LEG_VOLTS.1.as_volts() / f64::from(current.get());
        Supply { leg: Impedance::ohms(whole * 2.0 / 3.0, 0.0), neutral: Impedance::ohms(whole / 3.0, 0.0), ..usual }
    })
}

/// Lays the runs that are known.
fn lay(state: &State, members: &[BoxIndex], end: End, circuit: &mut BranchCircuit) -> BTreeMap<BoxIndex, Opening> {
    let mut places = BTreeMap::new();
    for at in members {
        let Ok(runs) = runs_to(state, *at) else { continue };
        let Some(run) = runs.last() else { continue };
        let from = match runs.len().checked_sub(2).map(|before| runs[before].to) {
            None => Opening::PANEL,
            Some(parent) => match places.get(&parent) {
                Some(opening) => *opening,
                None => continue,
            },
        };
        let each = end.of(run.resistance);
        let shared = state.dwelling.neutral_is_shared_to(*at);
        let leg = leg_of(state, *at);
        let hot = |wire: Wire| (shared || leg == wire).then_some(each);
        let wires = [hot(Wire::LegA), hot(Wire::LegB), Some(each), ground_of(state, *at, end)];
        let (_, opening) = circuit.run(from, Run { length: run.length, wires, coupling: COUPLING });
        places.insert(*at, opening);
    }
    places
}

/// The grounding wire of the run that feeds a box, where it is one and joined.
fn ground_of(state: &State, at: BoxIndex, end: End) -> Option<ResistancePerLength> {
    let tied = matches!(state.dwelling.ground_path_to(at), GroundPath::Yes | GroundPath::Disputed);
    let Carrier::Wire(..) = carrier(state, at) else { return None };
    let length = state.dwelling.device_box(at).run.length;
    let segment = Segment { of: SegmentOf::Run(at), by: carrier(state, at), length };
    match ground_part(state, &segment).ok().filter(|_| tied)? {
        Part::Metal(least, most, _) => Some(end.of((least, most))),
        _ => None,
    }
}

/// Joins the grounding conductors that were brought.
fn bring_grounds(state: &State, places: &BTreeMap<BoxIndex, Opening>, end: End, circuit: &mut BranchCircuit) {
    for (position, brought) in state.brought.iter().enumerate() {
        let here = |end: RouteEnd| match end {
            RouteEnd::Box(at) => places.get(&at).copied(),
            _ => None,
        };
        let own = Segment {
            of: SegmentOf::Brought(position),
            by: Carrier::Wire(Some(brought.gauge), electrical::ConductorMetal::Copper),
            length: Some(brought.length),
        };
        let (ends, beyond) = match (here(brought.from), here(brought.to)) {
            (Some(one), Some(other)) => ([one, other], Vec::new()),
            (None, Some(inside)) => match beyond(state, brought.from, position) {
                Some(beyond) => ([Opening::PANEL, inside], beyond),
                None => continue,
            },
            _ => continue,
        };
        let path: Vec<Segment> = beyond.into_iter().chain([own]).collect();
        if let Some(resistance) = resistance_of(state, &path, end) {
            let ends = ends.map(|opening| (opening, Wire::Ground));
            circuit.fault(Fault::Bridged { ends, resistance });
        }
    }
}

/// The way from the far end of a brought ground back to the panel, outside this circuit.
fn beyond(state: &State, far: RouteEnd, position: usize) -> Option<Vec<Segment>> {
    match far {
        RouteEnd::Panel(_) => Some(Vec::new()),
        RouteEnd::Box(at) => {
            let path = ground_path(state, at).ok()?;
            path.iter().all(|segment| segment.of != SegmentOf::Brought(position)).then_some(path)
        }
        RouteEnd::Source(_) => None,
    }
}

fn resistance_of(state: &State, path: &[Segment], end: End) -> Option<Resistance> {
    path.iter().try_fold(Resistance::ohms(0.0), |sum, segment| match ground_part(state, segment).ok()? {
        Part::Metal(least, most, length) => Some(sum + end.of((least, most)) * length),
        _ => None,
    })
}
