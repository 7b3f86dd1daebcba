//! The plan of one floor: walls, rooms, symbols, what feeds what, and the routes that are bought.

use crate::curve::{along, arrowhead, beside, curve};
use crate::geometry::{Area, Spot, spot};
use crate::label::{Label, NOTE, Piece};
use crate::line_style::circuit_line;
use crate::places::{FloorNumber, Place, place_of_box, place_of_end, place_of_panel};
use crate::placing::{Field, Placed, Wish};
use crate::room_names::name_rooms;
use crate::shown::{Bought, Shown};
use crate::standing::{Projection, Standing, stand};
use crate::svg::{BLACK, Pen, QUIET, Svg, WHITE};
use crate::symbol::{self, Kind, RADIUS, draw_panel};
use crate::walls::walls;
use crate::words;
use dwelling::{BoxIndex, Feed, PanelIndex, Point, RouteEnd, RouteKind};

/// How far two outlines of one wall, and a box and its wall, may lie apart: common practice, no source.
const WALL_FEET: f64 = 1.0;
const OUTSIDE_WALL: f64 = 2.6;
const INSIDE_WALL: f64 = 0.9;
/// From which length on a line is numbered by itself.
const LONG_LINE: f64 = 70.0;
const EGC: &str = "#0b5d2a";

/// The drawn plan of a floor.
pub(crate) struct FloorPlan {
    pub(crate) svg: Svg,
    /// The boxes that stand on it.
    pub(crate) drawn: Vec<BoxIndex>,
    /// What found no room for its label.
    pub(crate) without_label: Vec<String>,
}

/// How wide the line of a wall is.
pub(crate) const fn wall_width(outside: bool) -> f64 {
    if outside { OUTSIDE_WALL } else { INSIDE_WALL }
}

/// What lies on a floor, in feet: to the left, right, below and above.
pub(crate) fn extent(shown: &Shown, floor: FloorNumber) -> Option<(f64, f64, f64, f64)> {
    let dwelling = shown.dwelling;
    let corners =
        dwelling.rooms.iter().filter(|room| room.floor == floor).flat_map(|room| room.outline.iter().copied());
    let ends = dwelling.box_indices().map(RouteEnd::Box);
    let ends = ends.chain((0..dwelling.panels.len()).map(|at| RouteEnd::Panel(PanelIndex(at))));
    let ends = ends.chain((0..dwelling.sources.len()).map(|at| RouteEnd::Source(dwelling::SourceIndex(at))));
    let places = ends.filter_map(|end| place_of_end(dwelling, end));
    let points: Vec<Point> = corners.chain(places.filter(|place| place.floor == floor).map(|place| place.at)).collect();
    let reach = |of: fn(&Point) -> f64| {
        let all = points.iter().map(of);
        Some((all.clone().reduce(f64::min)?, all.reduce(f64::max)?))
    };
    let ((left, right), (below, above)) = (reach(|at| at.x.as_feet())?, reach(|at| at.y.as_feet())?);
    Some((left, right, below, above))
}

/// Draws the plan of a floor in the middle of a frame; `None` where the survey places nothing on it.
pub(crate) fn floor_plan(shown: &Shown, floor: FloorNumber, points_per_foot: f64, frame: Area) -> Option<FloorPlan> {
    let (left, right, below, above) = extent(shown, floor)?;
    let middle = spot((left + right) / 2.0 * points_per_foot, (below + above) / 2.0 * points_per_foot);
    let origin = spot(frame.centre().x - middle.x, frame.centre().y + middle.y);
    let projection = Projection { points_per_foot, origin };
    let outlines: Vec<Vec<Spot>> = shown
        .dwelling
        .rooms
        .iter()
        .map(|room| {
            if room.floor == floor { room.outline.iter().map(|at| projection.spot(*at)).collect() } else { Vec::new() }
        })
        .collect();
    let mut drawer = Drawer {
        shown,
        floor,
        projection,
        field: Field::new(frame, outlines),
        lines: Svg::default(),
        symbols: Svg::default(),
        labels: Svg::default(),
        standing: Vec::new(),
        panels: Vec::new(),
        wishes: Vec::new(),
        long_lines: Vec::new(),
    };
    let walls = drawer.draw_walls();
    drawer.stand_symbols();
    drawer.draw_runs();
    drawer.draw_bought();
    drawer.draw_symbols();
    let without_label = drawer.place_labels();
    let mut svg = walls;
    svg.append(&drawer.lines);
    svg.append(&drawer.labels);
    svg.append(&drawer.symbols);
    Some(FloorPlan { svg, drawn: drawer.standing.iter().map(|standing| standing.of).collect(), without_label })
}

/// A label that waits for its place.
struct Waiting {
    label: Label,
    wish: Wish,
    class: &'static str,
    of: String,
    /// The line of its leader, where that is part of the drawing: its pen, and whether its arrow points to the label.
    leader: Option<(Pen, Arrow)>,
}

/// Which way the arrow of a leader points.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Arrow {
    ToLabel,
    FromLabel,
    No,
}

struct Drawer<'s, 'd> {
    shown: &'s Shown<'d>,
    floor: FloorNumber,
    projection: Projection,
    field: Field,
    lines: Svg,
    symbols: Svg,
    labels: Svg,
    standing: Vec<Standing>,
    panels: Vec<(PanelIndex, Spot)>,
    wishes: Vec<Waiting>,
    /// The lines that are long enough to be lost sight of, with the numbers of their circuits.
    long_lines: Vec<(Vec<Spot>, String, Pen)>,
}

impl Drawer<'_, '_> {
    fn on_this_floor(&self, place: Option<Place>) -> Option<Spot> {
        place.filter(|place| place.floor == self.floor).map(|place| self.projection.spot(place.at))
    }

    fn draw_walls(&mut self) -> Svg {
        let mut svg = Svg::default();
        let walls = walls(&self.field.rooms, WALL_FEET * self.projection.points_per_foot);
        for wall in &walls {
            svg.open(if wall.outside { "outside-wall" } else { "inside-wall" }, "", "");
            svg.line(wall.from, wall.to, &Pen::line(BLACK, wall_width(wall.outside)).round());
            svg.close();
            self.field.add_wall(wall.from, wall.to);
        }
        svg
    }

    fn stand_symbols(&mut self) {
        let wall_within = WALL_FEET * self.projection.points_per_foot;
        for panel in (0..self.shown.dwelling.panels.len()).map(PanelIndex) {
            if let Some(at) = self.on_this_floor(place_of_panel(self.shown.dwelling, panel)) {
                self.field.add_symbol(Area::around(at, symbol::PANEL).grown(1.0));
                self.panels.push((panel, at));
            }
        }
        for at in self.shown.dwelling.box_indices() {
            let Some(place) = self.on_this_floor(place_of_box(self.shown.dwelling, at)) else { continue };
            let room = self.shown.dwelling.device_box(at).room;
            let outline = self.field.rooms.get(room.0).cloned().unwrap_or_default();
            self.standing.extend(stand(&mut self.field, (at, room), place, &outline, wall_within));
        }
    }

    fn standing_of(&self, at: BoxIndex) -> Option<Standing> {
        self.standing.iter().copied().find(|standing| standing.of == at)
    }

    /// The middle of what stands for an end, and how far lines keep off it.
    fn spot_of_end(&self, end: RouteEnd) -> Option<(Spot, f64)> {
        match end {
            RouteEnd::Box(at) => self.standing_of(at).map(|standing| (standing.centre, RADIUS + 1.0)),
            RouteEnd::Panel(panel) => {
                let (_, at) = self.panels.iter().find(|(other, _)| *other == panel)?;
                Some((*at, symbol::PANEL.1 / 2.0 + 1.0))
            }
            RouteEnd::Source(_) => self.on_this_floor(place_of_end(self.shown.dwelling, end)).map(|at| (at, RADIUS)),
        }
    }

    /// Draws what feeds what: curves where both ends are on the sheet, short arrows where one is.
    fn draw_runs(&mut self) {
        let mut goes_on: Vec<(BoxIndex, Vec<String>)> = Vec::new();
        for at in self.shown.dwelling.box_indices() {
            let box_shown = &self.shown.boxes[at.0];
            if box_shown.by_new_cable {
                continue;
            }
            let pen = circuit_line(self.shown.dwelling.device_box(at).circuit);
            let name = self.shown.circuits_on_run_to(at);
            let Some(standing) = self.standing_of(at) else {
                if let (Some(Feed::Box(parent)), Some(_)) = (box_shown.feed, place_of_box(self.shown.dwelling, at)) {
                    let child = self.shown.name_from(at, self.floor);
                    match goes_on.iter_mut().find(|(other, _)| *other == parent) {
                        Some((_, children)) => children.push(child),
                        None => goes_on.push((parent, vec![child])),
                    }
                }
                continue;
            };
            let end = match box_shown.feed {
                Some(Feed::Panel(panel)) => RouteEnd::Panel(panel),
                Some(Feed::Box(parent)) => RouteEnd::Box(parent),
                None => continue,
            };
            if let Some((from, off)) = self.spot_of_end(end) {
                let points = curve(&self.field, from, standing.centre, off.max(RADIUS + 1.0));
                let id = &self.shown.dwelling.device_box(at).id;
                self.lines.open("run", id, &format!("circuit {name}, {}", self.shown.feed_in_words(box_shown.feed)));
                self.lines.path(&points, &pen);
                if let Some(head) = arrowhead(&points, 0.62, 5.0) {
                    self.lines.polygon(&head, &Pen::line(pen.colour, 0.0).filled(pen.colour));
                    // A label would better not hide it.
                    self.field.add_lines(&[head[0], head[1], head[2], head[0]]);
                }
                self.lines.close();
                self.field.add_lines(&points);
                self.long_lines.push((points, name, pen));
                continue;
            }
            let (text, arrow) = match box_shown.feed {
                Some(Feed::Box(parent)) => {
                    (format!("from {}", self.shown.name_from(parent, self.floor)), Arrow::FromLabel)
                }
                _ if self.shown.dwelling.panels.len() > 1 => {
                    let panel = self.shown.dwelling.circuit_of(at).map(|circuit| self.shown.panel_name(circuit.panel));
                    (format!("home run, {}", panel.unwrap_or_default()), Arrow::ToLabel)
                }
                _ => ("home run".to_owned(), Arrow::ToLabel),
            };
            self.stub(standing, vec![Piece::Circuit(name, pen.clone()), Piece::Words(text, NOTE)], (pen, arrow));
        }
        for (parent, children) in goes_on {
            if let Some(standing) = self.standing_of(parent) {
                let pen = circuit_line(self.shown.dwelling.device_box(parent).circuit);
                let text = Piece::Words(format!("to {}", children.join(", ")), NOTE);
                self.stub(standing, vec![text], (pen, Arrow::ToLabel));
            }
        }
    }

    /// A short line from a symbol to words that say where it goes.
    fn stub(&mut self, standing: Standing, pieces: Vec<Piece>, leader: (Pen, Arrow)) {
        let label = Label::of(pieces);
        let wish = Wish {
            anchors: vec![(standing.centre, RADIUS + 1.0)],
            size: label.size(),
            least: 13.0,
            room: Some(standing.room.0),
        };
        let of = self.shown.dwelling.device_box(standing.of).id.clone();
        self.wishes.push(Waiting { label, wish, class: "run-end", of, leader: Some(leader) });
    }

    fn draw_bought(&mut self) {
        for bought in &self.shown.bought {
            let ends = (self.spot_of_end(bought.ends.0), self.spot_of_end(bought.ends.1));
            let mut pieces = vec![
                Piece::Route(bought.number.clone()),
                Piece::Words(format!("{} {}", words::route_kind(bought.kind), bought.length), NOTE),
            ];
            match ends {
                (Some((from, off)), Some((to, _))) => {
                    let points = curve(&self.field, from, to, off.max(RADIUS + 1.0));
                    self.lines.open("route", &bought.id, &self.route_in_words(bought));
                    route_line(&mut self.lines, &points, bought.kind);
                    self.lines.close();
                    self.field.add_lines(&points);
                    let anchors = [0.5, 0.35, 0.65].iter().filter_map(|share| along(&points, *share));
                    let anchors: Vec<(Spot, f64)> = anchors.map(|(at, _)| (at, 1.5)).collect();
                    let label = Label::of(pieces);
                    let wish = Wish { anchors, size: label.size(), least: 1.0, room: None };
                    self.wishes.push(Waiting {
                        label,
                        wish,
                        class: "route-label",
                        of: bought.id.clone(),
                        leader: None,
                    });
                }
                (Some((at, off)), None) | (None, Some((at, off))) => {
                    let (word, far) = if ends.0.is_some() { ("to", bought.ends.1) } else { ("from", bought.ends.0) };
                    let far = match far {
                        RouteEnd::Box(far) => self.shown.name_from(far, self.floor),
                        far => self.shown.end_name(far).to_owned(),
                    };
                    pieces.push(Piece::Words(format!("{word} {far}"), NOTE));
                    let label = Label::of(pieces);
                    let wish = Wish { anchors: vec![(at, off)], size: label.size(), least: 13.0, room: None };
                    let pen = Pen::line(EGC, 2.2).dashed("8 2 2 2");
                    let leader = Some((pen, Arrow::No));
                    self.wishes.push(Waiting { label, wish, class: "route-label", of: bought.id.clone(), leader });
                }
                (None, None) => {}
            }
        }
    }

    fn route_in_words(&self, bought: &Bought) -> String {
        let (from, to) = (self.shown.end_name(bought.ends.0), self.shown.end_name(bought.ends.1));
        format!("{}: {} {}, {}, {from} to {to}", bought.id, words::route_kind(bought.kind), bought.size, bought.length)
    }

    fn draw_symbols(&mut self) {
        for standing in &self.standing {
            let box_shown = &self.shown.boxes[standing.of.0];
            let id = &self.shown.dwelling.device_box(standing.of).id;
            let svg = &mut self.symbols;
            if standing.moved {
                svg.line(standing.place, standing.centre, &Pen::line(QUIET, 0.5));
                svg.circle(standing.place, 1.0, &Pen::line(QUIET, 0.0).filled(QUIET));
            }
            svg.open("box", id, &self.shown.says(standing.of));
            symbol::draw(svg, standing.centre, Kind::of(box_shown.holds), box_shown.ground, standing.into);
            svg.close();
            let pen = circuit_line(self.shown.dwelling.device_box(standing.of).circuit);
            let label = Label::of_box(self.shown, standing.of, pen);
            let wish = Wish {
                anchors: vec![(standing.centre, RADIUS + 2.0)],
                size: label.size(),
                least: 0.0,
                room: Some(standing.room.0),
            };
            self.wishes.push(Waiting { label, wish, class: "box-label", of: id.clone(), leader: None });
        }
        for (panel, at) in &self.panels {
            let name = self.shown.panel_name(*panel);
            self.symbols.open("panel", &self.shown.dwelling.panel(*panel).id, &name);
            draw_panel(&mut self.symbols, *at);
            self.symbols.close();
            let label = Label::of(vec![Piece::Words(name.clone(), crate::label::NAME)]);
            let wish = Wish { anchors: vec![(*at, 10.0)], size: label.size(), least: 0.0, room: None };
            self.wishes.push(Waiting { label, wish, class: "panel-label", of: name, leader: None });
        }
    }

    /// Places every label and draws it; the names of those that found no room.
    fn place_labels(&mut self) -> Vec<String> {
        let wishes: Vec<Wish> = self.wishes.iter().map(|waiting| waiting.wish.clone()).collect();
        let placed = self.field.place_all(&wishes);
        let mut without = Vec::new();
        let waiting = std::mem::take(&mut self.wishes);
        for (waiting, placed) in waiting.iter().zip(&placed) {
            match placed {
                Some(placed) => self.draw_label(waiting, placed),
                None => without.push(waiting.of.clone()),
            }
        }
        name_rooms(self.shown, self.floor, &mut self.field, &mut self.labels);
        self.number_long_lines();
        without
    }

    /// Numbers long lines where there is room on them; the boxes at their ends tell their circuits in any case.
    fn number_long_lines(&mut self) {
        for (points, name, pen) in std::mem::take(&mut self.long_lines) {
            let length: f64 = points.windows(2).map(|pair| pair[1].minus(pair[0]).length()).sum();
            if length < LONG_LINE {
                continue;
            }
            let label = Label::of(vec![Piece::Circuit(name.clone(), pen)]);
            let spots = [0.38, 0.45, 0.3, 0.78, 0.85, 0.22].into_iter().filter_map(|share| along(&points, share));
            let areas = spots.map(|(at, _)| Area::around(at, label.size()));
            // Its own line passes under it, and no other.
            let clear = |area: &Area| self.field.is_free(area) && self.field.lines_under(area) <= 4;
            let Some(area) = areas.into_iter().find(clear) else { continue };
            self.field.take(area);
            self.labels.open("run-number", &name, "");
            label.draw(&mut self.labels, spot(area.left, area.top));
            self.labels.close();
        }
    }

    fn draw_label(&mut self, waiting: &Waiting, placed: &Placed) {
        if let Some((from, to)) = placed.leader {
            match &waiting.leader {
                Some((pen, arrow)) => {
                    self.lines.open("run-end-line", &waiting.of, "");
                    self.lines.line(from, to, pen);
                    let points = match arrow {
                        Arrow::FromLabel => vec![to, from],
                        Arrow::ToLabel | Arrow::No => vec![from, to],
                    };
                    if let Some(head) = arrowhead(&points, 1.0, 4.0).filter(|_| *arrow != Arrow::No) {
                        self.lines.polygon(&head, &Pen::line(pen.colour, 0.0).filled(pen.colour));
                    }
                    self.lines.close();
                }
                None => self.lines.line(from, to, &Pen::line(QUIET, 0.5)),
            }
        }
        self.labels.open(waiting.class, &waiting.of, "");
        waiting.label.draw(&mut self.labels, spot(placed.area.left, placed.area.top));
        self.labels.close();
    }
}

/// Draws the line of a route: a grounding conductor thick and broken, a cable as two lines.
pub(crate) fn route_line(svg: &mut Svg, points: &[Spot], kind: RouteKind) {
    match kind {
        RouteKind::Egc => svg.path(points, &Pen::line(EGC, 2.2).dashed("8 2 2 2")),
        RouteKind::NewCable => {
            svg.path(points, &Pen::line(WHITE, 2.4));
            svg.path(&beside(points, 1.4), &Pen::line(BLACK, 1.0));
            svg.path(&beside(points, -1.4), &Pen::line(BLACK, 1.0));
        }
    }
}
