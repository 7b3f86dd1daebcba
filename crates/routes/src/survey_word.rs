//! The survey's own rows: a way that it states or closes is not built again.

use crate::graph::{PlaceKind, RouteGraph};
use dwelling::{Dwelling, Route, RouteEnd, RouteKind};

impl RouteGraph {
    /// Takes out the ways that the survey states or closes, its word being the last.
    ///
    /// A row between two places governs the ways straight from one to the other. A row from the panel of a box to the box
    /// says how the box is reached from there: its ways up and down are not built.
    pub(crate) fn heed_the_survey(&mut self, dwelling: &Dwelling) {
        let rows: Vec<&Route> = dwelling.routes.iter().filter(|route| route.kind == RouteKind::Egc).collect();
        if rows.is_empty() {
            return;
        }
        let places = &self.places;
        self.edges.retain(|edge| {
            let ends = (places[edge.from].is, places[edge.to].is);
            !rows.iter().any(|row| governs(dwelling, row, ends))
        });
    }
}

fn governs(dwelling: &Dwelling, row: &Route, ends: (PlaceKind, PlaceKind)) -> bool {
    match (ends.0.route_end(), ends.1.route_end()) {
        (Some(one), Some(other)) => (row.from, row.to) == (one, other) || (row.from, row.to) == (other, one),
        (Some(end), None) | (None, Some(end)) => row.to == end && is_from_its_panel(dwelling, row),
        (None, None) => false,
    }
}

fn is_from_its_panel(dwelling: &Dwelling, row: &Route) -> bool {
    match (row.from, row.to) {
        (RouteEnd::Panel(panel), RouteEnd::Box(at)) => {
            dwelling.circuit_of(at).is_some_and(|circuit| circuit.panel == panel)
        }
        _ => false,
    }
}
