//! A circuit of a dwelling laid for the network solver: its runs, its legs, the grounds that were brought, its supply.

use crate::conductors::{ground_part, runs_to};
use crate::ground_path::{Carrier, Segment, SegmentOf, carrier, ground_path};
use crate::state::State;
use dwelling::{BoxIndex, GroundPath, RouteEnd};
use electrical::formulas::ground_fault_loop::Part;
use electrical::network::{BranchCircuit, Fault, Opening, Run, RunNumber, Supply, Wire};
use electrical::{CapacitancePerLength, Impedance, Resistance, ResistancePerLength, Voltage};
use std::collections::BTreeMap;

/// One end of what is not known: temperature, tinning and voltage.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum End {
    ColdAndHigh,
    HotAndLow,
}

impl End {
    pub(crate) const BOTH: [Self; 2] = [Self::ColdAndHigh, Self::HotAndLow];

    pub(crate) const fn of<T: Copy>(self, (cold, hot): (T, T)) -> T {
        match self {
            Self::ColdAndHigh => cold,
            Self::HotAndLow => hot,
        }
    }

    /// How warm the conductors are: 0 the coldest, 1 the hottest.
    pub(crate) const fn warmth(self) -> f64 {
        self.of((0.0, 1.0))
    }
}

/// The voltage between a leg and the neutral. From memory: ANSI C84.1, range A, 5 % to either side of 120 V.
pub(crate) const LEG_VOLTS: (Voltage, Voltage) = (Voltage::volts(126.0), Voltage::volts(114.0));
/// What lies between the conductors of a run: the middle of what is assumed of cable.
const COUPLING: CapacitancePerLength = CapacitancePerLength::picofarads_per_metre(100.0);

/// The leg that a box's circuit has in its tree.
#[must_use]
pub fn leg_of(state: &State, at: BoxIndex) -> Wire {
    let circuit = state.dwelling.device_box(at).circuit;
    let second = state.tree_of(at).is_some_and(|tree| state.trees[tree].circuits.get(1).copied() == circuit);
    if second { Wire::LegB } else { Wire::LegA }
}

/// What the circuit hangs on: the usual supply, as weak as the survey states it at the weak end.
pub(crate) fn supply(state: &State, tree: usize, end: End) -> Supply {
    let usual = Supply { leg_voltage: end.of(LEG_VOLTS), ..Supply::usual() };
    let stated = state.dwelling.panel(state.trees[tree].panel).fault_current.filter(|_| end == End::HotAndLow);
    stated.map_or(usual, |current| {
        // Two thirds in the leg and a third in the neutral, as in the usual supply.
        let whole = LEG_VOLTS.1.as_volts() / f64::from(current.get());
        Supply { leg: Impedance::ohms(whole * 2.0 / 3.0, 0.0), neutral: Impedance::ohms(whole / 3.0, 0.0), ..usual }
    })
}

/// A circuit of a dwelling, laid for the network solver.
#[derive(Clone, Debug)]
pub struct LaidCircuit {
    /// The circuit.
    pub circuit: BranchCircuit,
    /// The opening of each box whose way to the panel is known.
    pub places: BTreeMap<BoxIndex, Opening>,
    /// The run that feeds each of them.
    pub runs: BTreeMap<BoxIndex, RunNumber>,
}

/// Lays the runs of a tree that are known and the grounds that were brought, its conductors as warm as is said: 0 is the
/// coldest and bare, 1 the hottest and tinned where they may be.
#[must_use]
pub fn laid_circuit(state: &State, tree: usize, warmth: f64, supply: Supply) -> LaidCircuit {
    let circuit = BranchCircuit::new(supply);
    let mut laid = LaidCircuit { circuit, places: BTreeMap::new(), runs: BTreeMap::new() };
    lay(state, &state.trees[tree].members, warmth, &mut laid);
    bring_grounds(state, &laid.places, warmth, &mut laid.circuit);
    laid
}

/// What lies so far from the coldest to the hottest.
fn at_warmth((least, most): (ResistancePerLength, ResistancePerLength), warmth: f64) -> ResistancePerLength {
    least + (most - least) * warmth
}

fn lay(state: &State, members: &[BoxIndex], warmth: f64, laid: &mut LaidCircuit) {
    for at in members {
        let Ok(runs) = runs_to(state, *at) else { continue };
        let Some(run) = runs.last() else { continue };
        let from = match runs.len().checked_sub(2).map(|before| runs[before].to) {
            None => Opening::PANEL,
            Some(parent) => match laid.places.get(&parent) {
                Some(opening) => *opening,
                None => continue,
            },
        };
        let each = at_warmth(run.resistance, warmth);
        let shared = state.dwelling.neutral_is_shared_to(*at);
        let leg = leg_of(state, *at);
        let hot = |wire: Wire| (shared || leg == wire).then_some(each);
        let wires = [hot(Wire::LegA), hot(Wire::LegB), Some(each), ground_of(state, *at, warmth)];
        let (number, opening) = laid.circuit.run(from, Run { length: run.length, wires, coupling: COUPLING });
        laid.places.insert(*at, opening);
        laid.runs.insert(*at, number);
    }
}

/// The grounding wire of the run that feeds a box, where it is one and joined.
fn ground_of(state: &State, at: BoxIndex, warmth: f64) -> Option<ResistancePerLength> {
    let tied = matches!(state.dwelling.ground_path_to(at), GroundPath::Yes | GroundPath::Disputed);
    let Carrier::Wire(..) = carrier(state, at) else { return None };
    let length = state.dwelling.device_box(at).run.length;
    let segment = Segment { of: SegmentOf::Run(at), by: carrier(state, at), length };
    match ground_part(state, &segment).ok().filter(|_| tied)? {
        Part::Metal(least, most, _) => Some(at_warmth((least, most), warmth)),
        _ => None,
    }
}

/// Joins the grounding conductors that were brought.
fn bring_grounds(state: &State, places: &BTreeMap<BoxIndex, Opening>, warmth: f64, circuit: &mut BranchCircuit) {
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
        if let Some(resistance) = resistance_of(state, &path, warmth) {
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

fn resistance_of(state: &State, path: &[Segment], warmth: f64) -> Option<Resistance> {
    path.iter().try_fold(Resistance::ohms(0.0), |sum, segment| match ground_part(state, segment).ok()? {
        Part::Metal(least, most, length) => Some(sum + at_warmth((least, most), warmth) * length),
        _ => None,
    })
}
