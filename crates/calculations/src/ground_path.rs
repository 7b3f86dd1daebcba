//! The way a ground-fault current takes from a box back to its panel: over grounding wires and metal, runs and routes.

use crate::state::State;
use dwelling::{BoxIndex, CableKind, Feed, GroundPath, RouteEnd, SourceKind};
use electrical::{ConductorMetal, Gauge, Length};

/// One piece of a ground path.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Segment {
    /// What it is of.
    pub of: SegmentOf,
    /// What carries the current.
    pub by: Carrier,
    /// Its length, where known.
    pub length: Option<Length>,
}

/// What a piece of a ground path is of.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SegmentOf {
    /// The run that feeds a box.
    Run(BoxIndex),
    /// A grounding conductor that was brought, by its position.
    Brought(usize),
}

/// What carries the current of a ground path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carrier {
    /// A wire, its size where known.
    Wire(Option<Gauge>, ConductorMetal),
    /// Metal round the conductors.
    Metal,
}

/// A place that a ground path passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Place {
    Box(BoxIndex),
    End(RouteEnd),
}

/// How the ground of a box returns to its panel, the piece at the box first.
///
/// # Errors
/// What must be found out, where no way is known.
pub fn ground_path(state: &State, at: BoxIndex) -> Result<Vec<Segment>, String> {
    let panel = state.panel_of(at).ok_or("find out which circuit it is on")?;
    let edges = edges(state);
    // The way with the fewest pieces; among these the one that the survey names first.
    let mut reached: Vec<(Place, Vec<usize>)> = vec![(Place::Box(at), Vec::new())];
    let mut next = 0;
    while next < reached.len() {
        let (place, way) = reached[next].clone();
        if returns_to(state, place, RouteEnd::Panel(panel)) {
            return Ok(way.iter().map(|edge| edges[*edge].2.clone()).collect());
        }
        for (position, (one, other, _)) in edges.iter().enumerate() {
            let beyond = match place {
                _ if place == *one => *other,
                _ if place == *other => *one,
                _ => continue,
            };
            // A panel or another ground is an end: nothing leads on from there.
            let passable = matches!(place, Place::Box(_));
            if passable && !reached.iter().any(|(known, _)| *known == beyond) {
                let way = way.iter().copied().chain([position]).collect();
                reached.push((beyond, way));
            }
        }
        next += 1;
    }
    let elsewhere = reached.iter().find_map(|(place, _)| match place {
        Place::End(RouteEnd::Source(source)) => Some(&state.dwelling.source(*source).id),
        _ => None,
    });
    Err(match elsewhere {
        Some(source) => format!("find out the length and the size of what joins {source} to the panel"),
        None => "find out which way its ground returns to the panel".to_owned(),
    })
}

/// Whether a place is where the grounding conductors of a panel meet its neutral.
fn returns_to(state: &State, place: Place, panel: RouteEnd) -> bool {
    match place {
        Place::End(RouteEnd::Source(source)) => {
            let source = state.dwelling.source(source);
            let inside = matches!(source.kind, SourceKind::GroundBar | SourceKind::ServiceNeutral);
            inside && source.panel.map(RouteEnd::Panel) == Some(panel)
        }
        place => place == Place::End(panel),
    }
}

fn edges(state: &State) -> Vec<(Place, Place, Segment)> {
    let dwelling = &state.dwelling;
    let mut edges = Vec::new();
    for at in dwelling.box_indices() {
        let tied = matches!(dwelling.ground_path_to(at), GroundPath::Yes | GroundPath::Disputed);
        let from = match dwelling.device_box(at).fed_by {
            Some(Feed::Box(parent)) => Place::Box(parent),
            Some(Feed::Panel(panel)) if dwelling.panel(panel).ground_bar == Some(true) => {
                Place::End(RouteEnd::Panel(panel))
            }
            _ => continue,
        };
        if tied {
            let length = dwelling.device_box(at).run.length;
            edges.push((Place::Box(at), from, Segment { of: SegmentOf::Run(at), by: carrier(state, at), length }));
        }
    }
    for (position, brought) in state.brought.iter().enumerate() {
        let place = |end| match end {
            RouteEnd::Box(at) => Place::Box(at),
            end => Place::End(end),
        };
        let by = Carrier::Wire(Some(brought.gauge), ConductorMetal::Copper);
        let segment = Segment { of: SegmentOf::Brought(position), by, length: Some(brought.length) };
        edges.push((place(brought.from), place(brought.to), segment));
    }
    edges
}

/// What carries the current in the run that feeds a box. The grounding wire of the cables of the 1950s and 1960s is 16 AWG
/// (common practice, no source).
pub fn carrier(state: &State, at: BoxIndex) -> Carrier {
    let dwelling = &state.dwelling;
    match dwelling.cable_to(at) {
        CableKind::NmReducedGround => Carrier::Wire(Some(Gauge::AWG_16), ConductorMetal::Copper),
        kind if kind.has_ground_wire() => Carrier::Wire(dwelling.gauge_to(at), dwelling.metal_to(at)),
        _ => Carrier::Metal,
    }
}
