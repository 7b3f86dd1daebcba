//! Ways inside a wall and along it: through to the box behind, from box to box, and in surface raceway along a baseboard.

use crate::floor_plan::{FloorPlan, ONE_WALL};
use crate::geometry::{FOOT, INCH, Spot, across, apart, point};
use crate::graph::{Difficulty, EdgeKind, Layer, LinePoint, RouteEdge, Work};
use crate::standing::Stand;
use dwelling::{RoomUse, WallFinish};
use electrical::Length;
use std::collections::BTreeMap;

/// Studs stand so far apart. Common practice, no source.
const STUDS: i64 = 16 * INCH;
/// Two boxes back to back may be so far apart along their wall: one bay.
const BACK_TO_BACK: i64 = STUDS;
/// The thickness of a wall and what a conductor needs in both boxes. Common practice, no source.
const THROUGH_WALL: i64 = FOOT;
/// More studs than these are not gone through inside a finished wall. Common practice, no source.
const MOST_STUDS: i64 = 4;
/// No surface raceway longer than this is offered. Common practice, no source.
const LONGEST_RACEWAY: i64 = 40 * FOOT;

/// Every such way. The places of the graph that come first are those that stand, in their order.
pub(crate) fn in_walls(plan: &FloorPlan, stands: &[Stand]) -> Vec<RouteEdge> {
    let mut edges = back_to_back(plan, stands);
    let mut by_room: BTreeMap<usize, Vec<(i64, usize)>> = BTreeMap::new();
    for (place, stand) in stands.iter().enumerate() {
        if let Some(wall) = stand.wall() {
            by_room.entry(stand.room).or_default().push((wall.along, place));
        }
    }
    for (room, mut around) in by_room {
        around.sort_unstable();
        edges.extend(along_walls(plan, stands, room, &around));
        edges.extend(raceways(plan, stands, room, &around));
    }
    edges
}

fn feet_of(length: i64) -> u32 {
    u32::try_from(Length::micrometres(length).started_feet()).unwrap_or(u32::MAX)
}

fn line(plan: &FloorPlan, room: usize, at: Spot, layer: Layer) -> LinePoint {
    LinePoint { floor: plan.rooms[room].floor, at: point(at), layer }
}

fn back_to_back(plan: &FloorPlan, stands: &[Stand]) -> Vec<RouteEdge> {
    let mut edges = Vec::new();
    for (one, stand) in stands.iter().enumerate() {
        let Some(wall) = stand.bay().filter(|wall| !wall.outside) else { continue };
        for (other, behind) in stands.iter().enumerate().skip(one + 1) {
            // Two feet of wall and bay cannot be far apart along both axes together.
            if across(behind.at, stand.at) > 4 * (BACK_TO_BACK + ONE_WALL) {
                continue;
            }
            let Some(far) = behind.bay().filter(|_| behind.room != stand.room) else { continue };
            let near = apart(far.on_it, wall.on_it) <= BACK_TO_BACK + ONE_WALL;
            if !near || plan.rooms[behind.room].floor != plan.rooms[stand.room].floor || !far.line.is_along(wall.line) {
                continue;
            }
            let foot = wall.line.nearest(far.on_it).0;
            let (thick, aside) = (apart(foot, far.on_it), apart(foot, wall.on_it));
            if thick > ONE_WALL || aside > BACK_TO_BACK {
                continue;
            }
            let length = Length::micrometres(THROUGH_WALL + aside + (stand.height - behind.height).abs());
            let (difficulty, where_it_is) = if aside <= STUDS / 2 {
                (Difficulty::Easy, "behind this one")
            } else {
                (Difficulty::Fair, "in the next bay or the same: a stud may stand between")
            };
            let reason = format!("through the wall into the box {where_it_is}, {length}, nothing opened");
            edges.push(RouteEdge {
                from: one,
                to: other,
                kind: EdgeKind::BackToBack,
                length,
                work: vec![(Work::EndConductor, 2), (Work::ThroughWall, 1)],
                walls: Some(plan.rooms[stand.room].index),
                openings: 0,
                difficulty,
                line: vec![
                    line(plan, stand.room, stand.at, Layer::Wall),
                    line(plan, behind.room, behind.at, Layer::Wall),
                ],
                opens: Vec::new(),
                reason: reason.clone(),
                back: reason,
            });
        }
    }
    edges
}

/// From box to box inside one side of one room, between neighbours.
fn along_walls(plan: &FloorPlan, stands: &[Stand], room: usize, around: &[(i64, usize)]) -> Vec<RouteEdge> {
    let mut edges = Vec::new();
    for pair in around.windows(2) {
        let [(along, one), (further, other)] = pair else { continue };
        let (Some(wall), Some(far)) = (stands[*one].bay(), stands[*other].bay()) else { continue };
        let apart_along = further - along;
        let studs = apart_along / STUDS;
        if wall.side != far.side || studs > MOST_STUDS {
            continue;
        }
        let drawn = plan.rooms[room].room;
        let open = drawn.walls == Some(WallFinish::Open);
        let full = wall.outside && drawn.insulated != Some(false) && !open;
        let studs = u32::try_from(studs).unwrap_or(0);
        let length = Length::micrometres(FOOT + apart_along + (stands[*one].height - stands[*other].height).abs());
        let side = if wall.outside { "outside" } else { "inside" };
        let how = match studs {
            0 => "in one bay, nothing opened".to_owned(),
            1 => "through one stud, opened there".to_owned(),
            many => format!("through {many} studs, opened at each"),
        };
        let insulated = match (full, drawn.insulated) {
            (false, _) => "",
            (true, Some(_)) => ", past insulation",
            (true, None) => ", reckoned as insulated since nobody knows",
        };
        let reason = format!("inside the {side} wall, {length}, {how}{insulated}");
        edges.push(RouteEdge {
            from: *one,
            to: *other,
            kind: EdgeKind::AlongWall,
            length,
            work: vec![
                (Work::EndConductor, 2),
                (Work::FishBay, 1),
                (Work::ThroughStud, studs),
                (Work::PastInsulation, if full { studs + 1 } else { 0 }),
            ],
            walls: Some(plan.rooms[room].index),
            openings: if open { 0 } else { studs },
            difficulty: match (studs, full) {
                (0, false) => Difficulty::Easy,
                (0, true) | (1, false) => Difficulty::Fair,
                _ => Difficulty::Hard,
            },
            line: vec![
                line(plan, room, stands[*one].at, Layer::Wall),
                line(plan, room, wall.on_it, Layer::Wall),
                line(plan, room, far.on_it, Layer::Wall),
                line(plan, room, stands[*other].at, Layer::Wall),
            ],
            opens: if open || studs == 0 { Vec::new() } else { vec![plan.rooms[room].index] },
            reason: reason.clone(),
            back: reason,
        });
    }
    edges
}

/// Surface raceway from each place at a room's walls to the next around the room.
fn raceways(plan: &FloorPlan, stands: &[Stand], room: usize, around: &[(i64, usize)]) -> Vec<RouteEdge> {
    let drawn = &plan.rooms[room];
    // What is wet or damp is no place for the plain kind.
    if matches!(drawn.room.room_use, RoomUse::Outdoors | RoomUse::Bathroom | RoomUse::Boathouse) || around.len() < 2 {
        return Vec::new();
    }
    let whole = drawn.outline.length_before(drawn.outline.corners.len());
    let mut edges = Vec::new();
    let pairs = around.len() - usize::from(around.len() == 2);
    for position in 0..pairs {
        let ((along, one), (further, other)) = (around[position], around[(position + 1) % around.len()]);
        let forward = (further - along).rem_euclid(whole.max(1));
        // Of two places the shorter way round is taken; of more, the way that meets no third.
        let turned = around.len() == 2 && forward > whole - forward;
        let (from, to, way) = if turned { (other, one, whole - forward) } else { (one, other, forward) };
        if way > LONGEST_RACEWAY {
            continue;
        }
        let length = Length::micrometres(way + stands[from].height + stands[to].height);
        let reason = format!("surface raceway along the baseboard, {length}, nothing opened; go round any doorway");
        edges.push(RouteEdge {
            from,
            to,
            kind: EdgeKind::Raceway,
            length,
            work: vec![
                (Work::EndConductor, 2),
                (Work::SetUpRaceway, 1),
                (Work::RacewayFoot, feet_of(length.as_micrometres())),
            ],
            walls: None,
            openings: 0,
            difficulty: Difficulty::Fair,
            line: around_room(plan, room, &stands[from], &stands[to]),
            opens: Vec::new(),
            reason: reason.clone(),
            back: reason,
        });
    }
    edges
}

/// The way along the walls of a room from one place forward to another, corners and all.
fn around_room(plan: &FloorPlan, room: usize, from: &Stand, to: &Stand) -> Vec<LinePoint> {
    let (Some(start), Some(end)) = (from.wall(), to.wall()) else { return Vec::new() };
    let corners = &plan.rooms[room].outline.corners;
    let mut points = vec![from.at, start.on_it];
    let mut side = start.side;
    while side != end.side || (side == start.side && points.len() == 2 && end.along < start.along) {
        side = (side + 1) % corners.len();
        points.push(corners[side]);
        if points.len() > corners.len() + 3 {
            break;
        }
    }
    points.extend([end.on_it, to.at]);
    points.dedup();
    points.into_iter().map(|at| line(plan, room, at, Layer::Surface)).collect()
}
