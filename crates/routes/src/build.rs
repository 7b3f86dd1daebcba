//! Building the graph: what stands on the plan, ways in walls, ways up and down, ways along spaces, and the survey's word.

use crate::climb::{Bay, Climb, Zone, climbs};
use crate::floor_plan::FloorPlan;
use crate::geometry::{Spot, across, apart, point};
use crate::graph::{EdgeKind, Layer, LinePoint, PlaceKind, RouteEdge, RouteGraph, RoutePlace, Work};
use crate::in_walls::in_walls;
use crate::spaces::{Junction, ONE_JUNCTION, Parts, along};
use crate::standing::{Stand, stands};
use dwelling::{Dwelling, WallFinish};
use electrical::Length;
use std::collections::BTreeMap;

impl RouteGraph {
    /// Builds the route graph of a dwelling from its plan. What is not known gives no way and is told.
    ///
    /// A dwelling of which no room is drawn has none, and nothing is told.
    #[must_use]
    pub fn of(dwelling: &Dwelling) -> Self {
        let mut graph = Self::default();
        if dwelling.rooms.iter().all(|room| room.outline.is_empty()) {
            return graph;
        }
        let plan = FloorPlan::of(dwelling, &mut graph.unbuilt);
        let stands = stands(dwelling, &plan, &mut graph.unbuilt);
        for stand in &stands {
            let floor = plan.rooms[stand.room].floor;
            graph.places.push(RoutePlace { is: stand.is, floor, at: point(stand.at) });
        }
        graph.edges = in_walls(&plan, &stands);
        let climbs: Vec<Vec<Climb>> = stands.iter().map(|stand| climbs(&plan, stand)).collect();
        graph.add_spaces(&plan, &stands, &climbs);
        graph.heed_the_survey(dwelling);
        graph.unbuilt.sort();
        graph
    }

    fn add_spaces(&mut self, plan: &FloorPlan, stands: &[Stand], climbs: &[Vec<Climb>]) {
        let mut spaces: BTreeMap<Zone, Vec<Junction>> = BTreeMap::new();
        let mut came_out: Vec<Vec<CameOut>> = Vec::new();
        for (place, ways) in climbs.iter().enumerate() {
            let mut outs = Vec::new();
            for climb in ways {
                let (junction, climb) = self.junction(plan, &mut spaces, climb);
                self.edges.push(drop_edge(plan, &stands[place], place, junction, &climb));
                outs.push((junction, climb));
            }
            came_out.push(outs);
        }
        for (zone, junctions) in &mut spaces {
            let places = &mut self.places;
            let add = |at: Spot| {
                let is = PlaceKind::Junction(zone.layer);
                places.push(RoutePlace { is, floor: zone.floor, at: point(at) });
                places.len() - 1
            };
            let edges = along(plan, *zone, junctions, add);
            self.edges.extend(edges);
        }
        self.add_risers(plan, stands, &came_out);
    }

    /// The junction at which a climb comes out, shared with those that come out beside it, and the climb as far as there.
    fn junction(
        &mut self,
        plan: &FloorPlan,
        spaces: &mut BTreeMap<Zone, Vec<Junction>>,
        climb: &Climb,
    ) -> (usize, Climb) {
        let (zone, mut climb) = (climb.zone, climb.clone());
        let junctions = spaces.entry(zone).or_default();
        let near = junctions.iter().filter(|junction| {
            across(junction.at, climb.out) <= 2 * ONE_JUNCTION && apart(junction.at, climb.out) <= ONE_JUNCTION
        });
        let ways = near.map(|junction| (*junction, plan.open_way(zone.layer, zone.floor, climb.out, junction.at)));
        if let Some((junction, corner)) = ways.filter_map(|(junction, way)| Some((junction, way?))).next() {
            climb.length += across(junction.at, climb.out);
            let line = |at| LinePoint { floor: zone.floor, at: point(at), layer: zone.layer };
            climb.line.extend(corner.into_iter().chain([junction.at]).map(line));
            climb.line.dedup_by_key(|corner| (corner.floor, corner.at));
            return (junction.place, climb);
        }
        let place = self.places.len();
        let is = PlaceKind::Junction(zone.layer);
        self.places.push(RoutePlace { is, floor: zone.floor, at: point(climb.out) });
        junctions.push(Junction { place, at: climb.out });
        (place, climb)
    }

    /// Ways inside a wall from what is below a storey to the attic: as few as join the spaces that nothing else joins.
    fn add_risers(&mut self, plan: &FloorPlan, stands: &[Stand], came_out: &[Vec<CameOut>]) {
        let mut parts = Parts::of(self.places.len());
        for edge in self.edges.iter().filter(|edge| edge.kind == EdgeKind::Along) {
            parts.join(edge.from, edge.to);
        }
        let panels: Vec<Spot> =
            stands.iter().filter(|stand| matches!(stand.is, PlaceKind::Panel(_))).map(|stand| stand.at).collect();
        let mut open: Vec<(u32, u32, i64, usize)> = Vec::new();
        for (place, ways) in came_out.iter().enumerate() {
            let [(_, up), (_, down)] = ways.as_slice() else { continue };
            let far = panels.iter().map(|panel| across(*panel, stands[place].at)).min().unwrap_or(0);
            open.push((up.openings() + down.openings(), up.full_bays() + down.full_bays(), far, place));
        }
        open.sort_unstable();
        for (.., place) in open {
            let [up, down] = came_out[place].as_slice() else { continue };
            if parts.part_of(up.0) != parts.part_of(down.0) {
                parts.join(up.0, down.0);
                self.edges.push(riser(plan, &stands[place], down, up));
            }
        }
    }
}

/// A way out of a wall with the junction at which it comes out.
type CameOut = (usize, Climb);

/// Work that patches what is dearer to patch than board.
fn with_care(plan: &FloorPlan, room: usize, openings: u32) -> (Work, u32) {
    let dear = [WallFinish::Plaster, WallFinish::Tile, WallFinish::Panelling];
    let needed = plan.rooms[room].room.walls.is_some_and(|walls| dear.contains(&walls));
    (Work::PatchWithCare, if needed { openings } else { 0 })
}

fn sorted(work: Vec<(Work, u32)>) -> Vec<(Work, u32)> {
    let mut sums: BTreeMap<Work, u32> = BTreeMap::new();
    for (kind, times) in work.into_iter().filter(|(_, times)| *times > 0) {
        *sums.entry(kind).or_default() += times;
    }
    sums.into_iter().collect()
}

fn drop_edge(plan: &FloorPlan, stand: &Stand, place: usize, junction: usize, climb: &Climb) -> RouteEdge {
    let branches = u32::from(matches!(stand.is, PlaceKind::Box(_)));
    let mut work = climb.work();
    work.extend([(Work::EndConductor, 1), (Work::JoinBranch, branches)]);
    work.push(with_care(plan, stand.room, climb.openings()));
    let (reason, back) = climb.words();
    let kind = if climb.zone.layer == Layer::Attic { EdgeKind::ToAttic } else { EdgeKind::ToBelow };
    RouteEdge {
        from: place,
        to: junction,
        kind,
        length: Length::micrometres(climb.length),
        work: sorted(work),
        walls: (!climb.bays.is_empty()).then_some(plan.rooms[stand.room].index),
        openings: climb.openings(),
        difficulty: climb.difficulty(),
        line: climb.line.clone(),
        opens: climb.opens(),
        reason,
        back,
    }
}

fn riser(plan: &FloorPlan, stand: &Stand, (foot, down): &CameOut, (top, up): &CameOut) -> RouteEdge {
    // Both begin in the bay of the storey where the box stands, which is passed once and over its whole height.
    let mut bays: Vec<Bay> = down.bays.iter().rev().copied().collect();
    if let Some(shared) = bays.last_mut() {
        let drawn = &plan.rooms[stand.room];
        shared.fire_block = if drawn.has_bare_studs() { Some(false) } else { drawn.room.fire_blocks };
    }
    bays.extend(up.bays.iter().skip(1));
    let mut line: Vec<LinePoint> = down.line.iter().rev().chain(&up.line).copied().collect();
    line.dedup_by_key(|corner| (corner.floor, corner.at));
    let whole = Climb { length: down.length + up.length, bays, plates: 2, line, ..up.clone() };
    let mut work = whole.work();
    work.push(with_care(plan, stand.room, whole.openings()));
    let length = Length::micrometres(whole.length);
    let side = if whole.is_outside() { "an outside" } else { "an inside" };
    let (low, high) = (down.zone.layer.words(), up.zone.layer.words());
    let mut rest = format!(", {length}, a hole in the bottom plate and one in the top");
    match whole.floors_between() {
        0 => {}
        1 => rest.push_str(", through a floor with an opening there"),
        many => rest.push_str(&format!(", through {many} floors with an opening at each")),
    }
    if whole.fire_blocks() > 0 {
        rest.push_str(", past fire blocks with an opening at each");
    }
    if whole.full_bays() > 0 {
        rest.push_str(", insulation in the way or reckoned so");
    }
    RouteEdge {
        from: *foot,
        to: *top,
        kind: EdgeKind::Riser,
        length,
        work: sorted(work),
        walls: Some(plan.rooms[stand.room].index),
        openings: whole.openings(),
        difficulty: whole.difficulty(),
        opens: whole.opens(),
        reason: format!("inside {side} wall from {low} up to {high}{rest}"),
        back: format!("inside {side} wall from {high} down to {low}{rest}"),
        line: whole.line,
    }
}
