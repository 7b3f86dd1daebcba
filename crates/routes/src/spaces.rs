//! Attics, crawl spaces and basements: the junctions in them, and ways along them that never leave what is open.

use crate::climb::Zone;
use crate::floor_plan::{DrawnRoom, FloorPlan};
use crate::geometry::{FOOT, Spot, across, apart, point};
use crate::graph::{Difficulty, EdgeKind, Layer, LinePoint, RouteEdge, Work};
use electrical::Length;

/// Climbs that come out this near to one another share a junction.
pub(crate) const ONE_JUNCTION: i64 = 2 * FOOT;
/// How many ways lead from a junction to its nearest neighbours.
const NEIGHBOURS: usize = 3;
/// How many neighbours are tried before a junction gives up.
const TRIED: usize = 9;
/// How many pairs of junctions are tried to join two parts of a space.
const PAIRS_TRIED: usize = 24;
/// The least stretch of wall between two rooms of one space that is worth a junction of its own.
const LEAST_BORDER: i64 = 2 * FOOT;

/// A junction of a space.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Junction {
    /// Its place in the graph.
    pub(crate) place: usize,
    pub(crate) at: Spot,
}

/// A way along a space, with its corner if it has one.
struct Stretch {
    one: usize,
    other: usize,
    length: i64,
    corner: Option<Spot>,
}

/// The ways along one space: from each junction to its nearest, and as few more as join what can be joined.
///
/// `add_place` makes further junctions, where rooms meet, for parts that no straight way with one corner joins.
pub(crate) fn along(
    plan: &FloorPlan,
    zone: Zone,
    junctions: &mut Vec<Junction>,
    mut add_place: impl FnMut(Spot) -> usize,
) -> Vec<RouteEdge> {
    let mut stretches = nearest(plan, zone, junctions);
    let mut parts = Parts::of(junctions.len());
    stretches.iter().for_each(|stretch| parts.join(stretch.one, stretch.other));
    join_parts(plan, zone, junctions, &mut parts, &mut stretches);
    if parts.count() > 1 {
        for at in borders(plan, zone) {
            parts.add();
            junctions.push(Junction { place: add_place(at), at });
        }
        let again = nearest(plan, zone, junctions);
        again.iter().for_each(|stretch| parts.join(stretch.one, stretch.other));
        stretches.extend(again);
        join_parts(plan, zone, junctions, &mut parts, &mut stretches);
    }
    stretches.sort_by_key(|stretch| (stretch.one, stretch.other));
    stretches.dedup_by_key(|stretch| (stretch.one, stretch.other));
    stretches.iter().map(|stretch| edge(zone, junctions, stretch)).collect()
}

fn nearest(plan: &FloorPlan, zone: Zone, junctions: &[Junction]) -> Vec<Stretch> {
    let mut found = Vec::new();
    for one in 0..junctions.len() {
        let far = |other: usize| across(junctions[one].at, junctions[other].at);
        let mut others: Vec<(i64, usize)> =
            (0..junctions.len()).filter(|other| *other != one).map(|other| (far(other), other)).collect();
        if others.len() > TRIED {
            others.select_nth_unstable(TRIED - 1);
            others.truncate(TRIED);
        }
        others.sort_unstable();
        let ways = others.into_iter().filter_map(|(_, other)| stretch(plan, zone, junctions, one, other));
        found.extend(ways.take(NEIGHBOURS));
    }
    found
}

/// The way between two junctions: straight, or with one corner.
fn stretch(plan: &FloorPlan, zone: Zone, junctions: &[Junction], one: usize, other: usize) -> Option<Stretch> {
    let (one, other) = (one.min(other), one.max(other));
    let (from, to) = (junctions[one].at, junctions[other].at);
    let corner = plan.open_way(zone.layer, zone.floor, from, to)?;
    Some(Stretch { one, other, length: across(from, to), corner })
}

/// Joins the parts of a space by their nearest junctions, as far as open ways lead.
fn join_parts(plan: &FloorPlan, zone: Zone, junctions: &[Junction], parts: &mut Parts, stretches: &mut Vec<Stretch>) {
    if parts.count() < 2 {
        return;
    }
    let mut pairs: Vec<(i64, usize, usize)> = Vec::new();
    for one in 0..junctions.len() {
        for other in one + 1..junctions.len() {
            if parts.part_of(one) != parts.part_of(other) {
                pairs.push((across(junctions[one].at, junctions[other].at), one, other));
            }
        }
    }
    pairs.sort_unstable();
    let mut tried = std::collections::BTreeMap::new();
    for (_, one, other) in pairs {
        let (a, b) = (parts.part_of(one), parts.part_of(other));
        let times = tried.entry((a.min(b), a.max(b))).or_insert(0);
        *times += 1;
        if a == b || *times > PAIRS_TRIED {
            continue;
        }
        if let Some(way) = stretch(plan, zone, junctions, one, other) {
            parts.join(one, other);
            stretches.push(way);
        }
    }
}

/// The middle of each border between two rooms that open to a space.
fn borders(plan: &FloorPlan, zone: Zone) -> Vec<Spot> {
    let rooms: Vec<&DrawnRoom> = plan.on_floor(zone.floor).filter(|room| room.opens_to(zone.layer)).collect();
    let mut found: Vec<Spot> = Vec::new();
    for (position, room) in rooms.iter().enumerate() {
        for other in &rooms[position + 1..] {
            for side in room.outline.sides() {
                for far in other.outline.sides().filter(|far| far.is_along(side)) {
                    let (one, from) = side.nearest(far.from);
                    let (_, to) = side.nearest(far.to);
                    let near = apart(one, far.nearest(one).0) <= crate::floor_plan::ONE_WALL;
                    if near && (from - to).abs() >= LEAST_BORDER {
                        let (start, end) = (side.nearest(far.from).0, side.nearest(far.to).0);
                        found.push(((start.0 + end.0) / 2, (start.1 + end.1) / 2));
                    }
                }
            }
        }
    }
    found.sort_unstable();
    found.dedup();
    found
}

fn edge(zone: Zone, junctions: &[Junction], stretch: &Stretch) -> RouteEdge {
    let (one, other) = (junctions[stretch.one], junctions[stretch.other]);
    let corners = [Some(one.at), stretch.corner, Some(other.at)];
    let line = |at| LinePoint { floor: zone.floor, at: point(at), layer: zone.layer };
    let length = Length::micrometres(stretch.length);
    let feet = u32::try_from(length.started_feet()).unwrap_or(u32::MAX);
    let (work, difficulty) = match zone.layer {
        Layer::Attic => (Work::AtticFoot, Difficulty::Easy),
        Layer::CrawlSpace => (Work::CrawlFoot, Difficulty::Fair),
        _ => (Work::BasementFoot, Difficulty::Easy),
    };
    RouteEdge {
        from: one.place,
        to: other.place,
        kind: EdgeKind::Along,
        length,
        work: vec![(work, feet)],
        walls: None,
        openings: 0,
        difficulty,
        line: corners.into_iter().flatten().map(line).collect(),
        opens: Vec::new(),
        reason: format!("along {}, {length}", zone.layer.words()),
        back: format!("along {}, {length}", zone.layer.words()),
    }
}

/// Which of many things hang together.
pub(crate) struct Parts(Vec<usize>);

impl Parts {
    pub(crate) fn of(count: usize) -> Self {
        Self((0..count).collect())
    }

    pub(crate) fn add(&mut self) {
        self.0.push(self.0.len());
    }

    pub(crate) fn part_of(&self, mut at: usize) -> usize {
        while self.0[at] != at {
            at = self.0[at];
        }
        at
    }

    pub(crate) fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.part_of(one), self.part_of(other));
        self.0[one.max(other)] = one.min(other);
    }

    pub(crate) fn count(&self) -> usize {
        self.0.iter().enumerate().filter(|(at, of)| at == *of).count()
    }
}
