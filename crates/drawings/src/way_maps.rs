//! Maps of the ways that a plan brings grounds and cables along: the part of a floor around them, stretch by stretch.

use crate::box_wiring::Figure;
use crate::floor_plan::{extent, floor_plan};
use crate::geometry::{Area, spot};
use crate::places::{FloorNumber, floors, place_of_end};
use crate::shown::{Shown, Stretch, StretchOfWay};
use crate::svg::{Anchor, Svg, Type};
use crate::text_width::cut_to;
use dwelling::{Dwelling, Point, RouteEnd};
use electrical::Length;
use remedies::{Leg, Planned, Way};
use routes::LinePoint;

/// The widest and the highest that a map may be, in points: across a page, and a third of it down.
const MOST: (f64, f64) = (490.0, 250.0);
/// The same where so many ways share a map, and the most that one map shows.
const MOST_OF_MANY: (f64, f64) = (490.0, 330.0);
const MANY: usize = 3;
const MOST_WAYS: usize = 5;
/// The same for a straight line: half as wide.
const MOST_OF_STATED: (f64, f64) = (240.0, 170.0);
/// The largest scale.
const LARGEST: f64 = 15.0;
/// What is left free around the rooms for labels.
const AROUND: f64 = 30.0;
const TITLE: f64 = 14.0;
/// How far around a way rooms are shown, in feet.
const NEAR_FEET: i64 = 3;

/// A map, and the ways that it shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WayMap {
    /// The ways, by their names.
    pub ways: Vec<String>,
    /// The drawing.
    pub figure: Figure,
}

/// The maps of a plan's ways: those that were built from the floor plans and share a stretch stand on one map for each floor, a few on each. One
/// that the survey states has a map where both of its ends stand on the plan of one floor: a straight line between them.
#[must_use]
pub fn way_maps(plan: &Planned) -> Vec<WayMap> {
    let ways = plan.ways();
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (position, way) in ways.iter().enumerate() {
        let from = way.branches_from.as_ref();
        let group =
            groups.iter().position(|group| from.is_some_and(|from| group.iter().any(|at| ways[*at].id == *from)));
        match group {
            Some(group) => groups[group].push(position),
            None => groups.push(vec![position]),
        }
    }
    let floors = floors(plan.facts.dwelling);
    let maps = groups.iter().flat_map(|group| group.chunks(MOST_WAYS)).flat_map(|group| {
        let ways = &ways;
        floors.iter().filter_map(move |floor| map_of(plan, ways, group, *floor))
    });
    maps.collect()
}

/// The map of some ways on one floor; none where nothing of them is on it.
fn map_of(plan: &Planned, ways: &[Way], group: &[usize], floor: FloorNumber) -> Option<WayMap> {
    let all = Shown::as_planned(plan);
    let bought: Vec<_> =
        all.bought.into_iter().enumerate().filter(|(at, _)| group.contains(at)).map(|(_, one)| one).collect();
    let path: Vec<Stretch> =
        bought.iter().flat_map(|one| &one.path).filter(|one| one.floor == floor).copied().collect();
    let ends: Vec<RouteEnd> = bought.iter().flat_map(|one| [one.ends.0, one.ends.1]).collect();
    let stands_here =
        |end: &RouteEnd| place_of_end(plan.facts.dwelling, *end).is_some_and(|place| place.floor == floor);
    let stated = bought.iter().all(|one| !one.way_is_known);
    if path.is_empty() && !(stated && ends.iter().all(stands_here)) {
        return None;
    }
    let around = alone(plan.facts.dwelling, floor, &path, &ends);
    let mut shown = Shown::as_found(&around, &plan.facts.diagnosis);
    shown.only_ways = true;
    shown.bought = bought;
    for (at, one) in all.boxes.into_iter().enumerate() {
        shown.boxes[at].ground = one.ground;
        shown.boxes[at].feed = None;
        shown.boxes[at].tie = None;
        shown.boxes[at].work = Vec::new();
    }
    let numbers: Vec<String> = shown.bought.iter().map(|one| one.number.clone()).collect();
    let of_group = group.iter().zip(&numbers);
    shown.stretches = of_group.flat_map(|(at, number)| stretches(plan, &ways[*at], number)).collect();
    let (left, right, below, above) = extent(&shown, floor)?;
    let (wide, high) = ((right - left).max(1.0), (above - below).max(1.0));
    let many = group.len() >= MANY;
    let most = match (stated, many) {
        (true, _) => MOST_OF_STATED,
        (false, true) => MOST_OF_MANY,
        (false, false) => MOST,
    };
    let scale = ((most.0 - 2.0 * AROUND) / wide).min((most.1 - 2.0 * AROUND) / high).min(LARGEST);
    let size = (f64::max(wide * scale + 2.0 * AROUND, if many { most.0 } else { 230.0 }), high * scale + 2.0 * AROUND);
    let frame = Area::new(0.0, TITLE, size.0, TITLE + size.1);
    let drawn = floor_plan(&shown, floor, scale, frame)?;
    let names: Vec<String> = group.iter().map(|at| ways[*at].id.clone()).collect();
    let straight = if stated { "; straight line, not its way" } else { "" };
    let title = format!("{}, {}{straight}", listed(&shown), crate::words::floor(floor).to_lowercase());
    let mut svg = Svg::default();
    svg.words(spot(0.0, 9.0), &cut_to(&title, 9.0, true, size.0), Type::bold(9.0), Anchor::Start);
    svg.append(&drawn.svg);
    let says = said(&shown, floor);
    let figure = Figure { svg: svg.finished((size.0, TITLE + size.1), &title, &says), title, says };
    Some(WayMap { ways: names, figure })
}

fn listed(shown: &Shown) -> String {
    let ways = shown.bought.iter().map(|one| format!("{}: {}", one.number, one.id));
    ways.collect::<Vec<_>>().join("; ")
}

/// The map in words.
fn said(shown: &Shown, floor: FloorNumber) -> String {
    let mut parts = vec![format!("Map of {} on {}", listed(shown), crate::words::floor(floor).to_lowercase())];
    if shown.bought.iter().all(|one| !one.way_is_known) {
        let ends = shown.bought.iter().map(|one| (shown.end_name(one.ends.0), shown.end_name(one.ends.1)));
        parts.extend(ends.map(|(from, to)| format!("A straight line from {from} to {to}, not the way between them")));
    }
    let here = shown.stretches.iter().filter(|stretch| stretch.floor == floor);
    parts.extend(here.map(|stretch| format!("{} {}", stretch.name, stretch.says)));
    parts.join(". ") + "."
}

/// The dwelling with what lies around some stretches on a floor, and nothing else: no other box, room or run.
fn alone(dwelling: &Dwelling, floor: FloorNumber, path: &[Stretch], ends: &[RouteEnd]) -> Dwelling {
    let mut alone = dwelling.clone();
    let near = Length::feet(NEAR_FEET);
    let at_ends = ends.iter().filter_map(|end| place_of_end(dwelling, *end)).filter(|place| place.floor == floor);
    let points: Vec<Point> =
        path.iter().flat_map(|one| [one.from, one.to]).chain(at_ends.map(|place| place.at)).collect();
    for room in &mut alone.rooms {
        let lies_near = |point: &Point| {
            let reach = |of: fn(&Point) -> Length, at: Length| {
                let all = || room.outline.iter().map(of);
                all().min().is_some_and(|least| least <= at + near) && all().max().is_some_and(|most| at <= most + near)
            };
            reach(|corner| corner.x, point.x) && reach(|corner| corner.y, point.y)
        };
        if room.floor != floor || !points.iter().any(lies_near) {
            room.outline = Vec::new();
        }
    }
    for (position, device_box) in alone.boxes.iter_mut().enumerate() {
        if !ends.contains(&RouteEnd::Box(dwelling::BoxIndex(position))) {
            device_box.at = None;
        }
    }
    for (position, panel) in alone.panels.iter_mut().enumerate() {
        if !ends.contains(&RouteEnd::Panel(dwelling::PanelIndex(position))) {
            panel.at = None;
        }
    }
    for (position, source) in alone.sources.iter_mut().enumerate() {
        if !ends.contains(&RouteEnd::Source(dwelling::SourceIndex(position))) {
            source.at = None;
        }
    }
    alone
}

/// The stretches of a way as the work order numbers them: those that go on along one space in one size as one.
fn stretches(plan: &Planned, way: &Way, number_of_way: &str) -> Vec<StretchOfWay> {
    let mut legs: Vec<(Leg, electrical::Gauge)> = Vec::new();
    for link in way.own() {
        let size = plan.size_of(link);
        for leg in plan.legs_of(link) {
            match legs.last_mut() {
                Some((last, of)) if *of == size && last.goes_on_in(&leg) => {
                    last.length = last.length + leg.length;
                    last.openings += leg.openings;
                    last.line.extend(leg.line);
                    last.says = last.along_its_space();
                }
                _ => legs.push((leg, size)),
            }
        }
    }
    legs.into_iter()
        .enumerate()
        .filter_map(|(number, (leg, _))| {
            let longest = leg
                .line
                .windows(2)
                .filter(|pair| pair[0].floor == pair[1].floor)
                .max_by(|one, other| reach(one).total_cmp(&reach(other)))
                .map(|pair| (pair[0].at, pair[1].at, pair[1].floor));
            let (from, to, floor) = longest.or_else(|| leg.line.last().map(|last| (last.at, last.at, last.floor)))?;
            Some(StretchOfWay {
                way: way.id.clone(),
                name: format!("{number_of_way}.{}", number + 1),
                length: leg.length.to_string(),
                floor: Some(floor),
                from,
                to,
                openings: leg.openings,
                says: leg.says,
            })
        })
        .collect()
}

/// How far the ends of a stretch lie apart on their plan, in feet.
fn reach(pair: &[LinePoint]) -> f64 {
    let at = |point: &LinePoint| spot(point.at.x.as_feet(), point.at.y.as_feet());
    at(&pair[1]).minus(at(&pair[0])).length()
}
