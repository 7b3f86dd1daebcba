//! The plan of one floor: its walls and symbols; what feeds what, what is brought, and the labels are files of their own.

use crate::geometry::{Area, Spot, spot};
use crate::label::{Label, Piece};
use crate::line_style::circuit_line;
use crate::naming::{Leader, Waiting};
use crate::places::{FloorNumber, Place, place_of_box, place_of_end};
use crate::placing::{Field, Wish};
use crate::shown::Shown;
use crate::standing::{Projection, Standing, against_wall, free_spot, stand};
use crate::svg::{BLACK, Pen, QUIET, Svg};
use crate::symbol::{self, Kind, RADIUS, draw_panel};
use crate::walls::walls;
use dwelling::{BoxIndex, PanelIndex, Point, RouteEnd, SourceIndex};

/// How far two outlines of one wall, and a box and its wall, may lie apart: common practice, no source.
const WALL_FEET: f64 = 1.0;
const OUTSIDE_WALL: f64 = 2.6;
const INSIDE_WALL: f64 = 0.9;

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
    let ends = ends.chain((0..dwelling.sources.len()).map(|at| RouteEnd::Source(SourceIndex(at))));
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
        fixed: Vec::new(),
        wishes: Vec::new(),
        long_lines: Vec::new(),
    };
    let walls = drawer.draw_walls();
    drawer.stand_symbols();
    drawer.draw_runs();
    drawer.draw_bought();
    drawer.number_stretches();
    drawer.draw_symbols();
    let without_label = drawer.place_labels();
    let mut svg = walls;
    svg.append(&drawer.lines);
    svg.append(&drawer.labels);
    svg.append(&drawer.symbols);
    Some(FloorPlan { svg, drawn: drawer.standing.iter().map(|standing| standing.of).collect(), without_label })
}

/// The plan of a floor in the making.
pub(crate) struct Drawer<'s, 'd> {
    pub(crate) shown: &'s Shown<'d>,
    pub(crate) floor: FloorNumber,
    pub(crate) projection: Projection,
    pub(crate) field: Field,
    pub(crate) lines: Svg,
    pub(crate) labels: Svg,
    pub(crate) wishes: Vec<Waiting>,
    /// Every run that is drawn as a line, with the number of its circuit.
    pub(crate) long_lines: Vec<(Vec<Spot>, String, Pen)>,
    symbols: Svg,
    standing: Vec<Standing>,
    /// Panels and ground sources: what each is, its middle, the direction into its room, and the area it takes.
    fixed: Vec<(RouteEnd, Spot, Spot, Area)>,
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
            self.field.add_wall(wall.from, wall.to, wall.outside);
        }
        svg
    }

    fn stand_symbols(&mut self) {
        let dwelling = self.shown.dwelling;
        let wall_within = WALL_FEET * self.projection.points_per_foot;
        let panels = (0..dwelling.panels.len()).map(|at| RouteEnd::Panel(PanelIndex(at)));
        let sources = (0..dwelling.sources.len()).map(|at| RouteEnd::Source(SourceIndex(at)));
        for end in panels.chain(sources) {
            let Some(at) = self.on_this_floor(place_of_end(dwelling, end)) else { continue };
            let room = match end {
                RouteEnd::Panel(panel) => dwelling.panel(panel).room,
                RouteEnd::Source(source) => dwelling.source(source).room,
                RouteEnd::Box(at) => Some(dwelling.device_box(at).room),
            };
            let outline = room.and_then(|room| self.field.rooms.get(room.0)).map_or(&[] as &[Spot], Vec::as_slice);
            let (centre, into) = against_wall(at, outline, wall_within, symbol::PANEL.1 / 2.0);
            let Some(free) = free_spot(&self.field, centre, into, |at| symbol::fixed_area(at, into)) else { continue };
            let area = symbol::fixed_area(free, into);
            self.field.add_symbol(area);
            if free != centre {
                self.moved_aside(at, free);
            }
            self.fixed.push((end, free, into, area));
        }
        for at in dwelling.box_indices() {
            let Some(place) = self.on_this_floor(place_of_box(dwelling, at)) else { continue };
            let room = dwelling.device_box(at).room;
            let outline = self.field.rooms.get(room.0).cloned().unwrap_or_default();
            let Some(standing) = stand(&mut self.field, (at, room), place, &outline, wall_within) else { continue };
            if standing.moved {
                self.moved_aside(place, standing.centre);
            }
            self.standing.push(standing);
        }
    }

    /// Shows where something is that had to be drawn beside its place.
    fn moved_aside(&mut self, place: Spot, centre: Spot) {
        self.lines.line(place, centre, &Pen::line(QUIET, 0.5));
        self.lines.circle(place, 1.0, &Pen::line(QUIET, 0.0).filled(QUIET));
    }

    pub(crate) fn standing_of(&self, at: BoxIndex) -> Option<Standing> {
        self.standing.iter().copied().find(|standing| standing.of == at)
    }

    /// The middle of what stands for an end, and how far lines keep off it.
    pub(crate) fn spot_of_end(&self, end: RouteEnd) -> Option<(Spot, f64)> {
        match end {
            RouteEnd::Box(at) => self.standing_of(at).map(|standing| (standing.centre, RADIUS + 1.0)),
            end => {
                let (_, centre, _, _) = self.fixed.iter().find(|(other, ..)| *other == end)?;
                Some((*centre, symbol::PANEL.1 / 2.0 + 1.0))
            }
        }
    }

    fn draw_symbols(&mut self) {
        for standing in &self.standing {
            let box_shown = &self.shown.boxes[standing.of.0];
            let id = &self.shown.dwelling.device_box(standing.of).id;
            let svg = &mut self.symbols;
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
            self.wishes.push(Waiting { label, wish, class: "box-label", of: id.clone(), leader: Leader::Thin });
        }
        for (end, centre, into, area) in &self.fixed {
            let (class, of, name) = match end {
                RouteEnd::Source(at) => {
                    let source = self.shown.dwelling.source(*at);
                    ("source", &source.id, source.id.clone())
                }
                RouteEnd::Panel(at) => ("panel", &self.shown.dwelling.panel(*at).id, self.shown.panel_name(*at)),
                RouteEnd::Box(_) => continue,
            };
            self.symbols.open(class, of, &name);
            if class == "panel" {
                draw_panel(&mut self.symbols, *centre, *into);
            } else {
                symbol::draw_source(&mut self.symbols, *centre, 5.0);
            }
            self.symbols.close();
            let label = Label::of(vec![Piece::Words(name.clone(), crate::label::NAME)]);
            let reach = area.width().min(area.height()) / 2.0 + 0.5;
            let wish = Wish { anchors: vec![(*centre, reach)], size: label.size(), least: 0.0, room: None };
            let class = if class == "panel" { "panel-label" } else { "source-label" };
            self.wishes.push(Waiting { label, wish, class, of: of.clone(), leader: Leader::Thin });
        }
    }
}
