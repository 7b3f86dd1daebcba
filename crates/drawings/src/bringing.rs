//! New grounds and cables on a plan: along the way that is known, else as a curve from end to end.

use crate::curve::{along, beside, clipped_at_end, curve};
use crate::feeding::STUB;
use crate::floor_plan::Drawer;
use crate::geometry::{Spot, spot};
use crate::label::{Label, NOTE, Piece};
use crate::naming::{Leader, Waiting};
use crate::placing::Wish;
use crate::shown::{Bought, Layer};
use crate::svg::{BLACK, Pen, Svg, WHITE};
use crate::symbol::RADIUS;
use crate::words;
use dwelling::{Point, RouteKind};

const GROUND: &str = "#0b5d2a";
const GROUND_WIDTH: f64 = 2.2;
/// The ring where a way goes up or down.
pub(crate) const RING: f64 = 2.2;
/// The dashes of a straight line that stands for a way on a map.
const STRAIGHT: &str = "5 4";
/// How far a way is drawn beside the wall along which it goes.
const OFF_THE_WALLS: f64 = 3.6;
/// An end of a way this near to the middle of a symbol, in points, is led to the symbol.
const NEAR: f64 = 16.0;

/// A piece of a way on one floor and in one layer.
struct Drawn {
    points: Vec<Spot>,
    layer: Option<Layer>,
}

impl Drawer<'_, '_> {
    pub(crate) fn draw_bought(&mut self) {
        for bought in &self.shown.bought {
            let ends = (self.spot_of_end(bought.ends.0), self.spot_of_end(bought.ends.1));
            let mut pieces = vec![
                Piece::Route(bought.number.clone()),
                Piece::Words(format!("{} {}", words::route_kind(bought.kind), bought.length), NOTE),
            ];
            let along_its_way = self.on_its_way(bought);
            let drawn = match (along_its_way.is_empty(), ends) {
                (false, _) => along_its_way,
                // It branches off beside its end: all of it goes up or down there.
                (true, (_, Some(end))) if bought.way_is_known && bought.path.is_empty() => {
                    self.label_route(bought, pieces, vec![end], 1.0);
                    continue;
                }
                (true, (Some((from, off)), Some((to, _)))) if !bought.way_is_known => {
                    let off = off.max(RADIUS + 1.0);
                    // A map draws what nobody knows as what it is: a straight line from end to end.
                    let points = if self.shown.only_ways {
                        let mut points = clipped_at_end(&[to, from], from, off);
                        points.reverse();
                        clipped_at_end(&points, to, off)
                    } else {
                        curve(&self.field, from, to, off)
                    };
                    vec![Drawn { points, layer: None }]
                }
                (true, (Some(here), _) | (None, Some(here))) => {
                    let (word, far) = if ends.0.is_some() { ("to", bought.ends.1) } else { ("from", bought.ends.0) };
                    let far = self.shown.name_from(far, self.floor);
                    pieces.push(Piece::Words(format!("{word} {far}"), NOTE));
                    self.label_route(bought, pieces, vec![here], STUB);
                    continue;
                }
                (true, (None, None)) => continue,
            };
            self.lines.open("route", &bought.id, &self.route_in_words(bought));
            for piece in &drawn {
                let dashes = piece.layer.map_or(if self.shown.only_ways { STRAIGHT } else { "" }, Layer::dashes);
                route_line(&mut self.lines, &piece.points, bought.kind, dashes);
            }
            let changes = drawn.windows(2).filter(|pair| pair[0].layer != pair[1].layer);
            for ring in changes.filter_map(|pair| pair[1].points.first()) {
                self.lines.circle(*ring, RING, &Pen::line(BLACK, 0.9).filled(WHITE));
            }
            self.lines.close();
            drawn.iter().for_each(|piece| self.field.add_lines(&piece.points));
            let longest = drawn.iter().max_by(|one, other| length(&one.points).total_cmp(&length(&other.points)));
            let points = longest.map_or(&[] as &[Spot], |piece| &piece.points);
            let anchors = [0.5, 0.35, 0.65].iter().filter_map(|share| along(points, *share));
            self.label_route(bought, pieces, anchors.map(|(at, _)| (at, 1.5)).collect(), 1.0);
        }
    }

    /// Numbers the stretches of ways one by one; where one opens a finished surface, a square stands at its end.
    pub(crate) fn number_stretches(&mut self) {
        for stretch in self.shown.stretches.iter().filter(|stretch| stretch.floor == self.floor) {
            let (from, to) = (self.off_the_walls(stretch.from), self.off_the_walls(stretch.to));
            let mut words = format!("{} {}", stretch.name, stretch.length);
            if stretch.openings > 0 {
                let area = crate::geometry::Area::around(to, (5.0, 5.0));
                self.lines.area(&area, 0.0, &Pen::line(BLACK, 1.2).filled(WHITE));
                words.push_str(&format!(
                    ", {} wall opening{}",
                    stretch.openings,
                    if stretch.openings > 1 { "s" } else { "" }
                ));
            }
            let label = Label::of(vec![Piece::Words(words, NOTE)]);
            let anchors =
                vec![(from.towards(to, 0.5), 1.5), (from.towards(to, 0.35), 1.5), (from.towards(to, 0.65), 1.5)];
            let wish = Wish { anchors, size: label.size(), least: 1.0, room: None };
            let of = format!("{} {}", stretch.way, stretch.name);
            self.wishes.push(Waiting { label, wish, class: "stretch-label", of, leader: Leader::Thin });
        }
    }

    fn label_route(&mut self, bought: &Bought, pieces: Vec<Piece>, anchors: Vec<(Spot, f64)>, least: f64) {
        let label = Label::of(pieces);
        let wish = Wish { anchors, size: label.size(), least, room: None };
        let leader = if least >= STUB { Leader::Route(bought.kind) } else { Leader::Thin };
        self.wishes.push(Waiting { label, wish, class: "route-label", of: bought.id.clone(), leader });
    }

    /// What is known of a way on this floor, piece by piece of one layer, its ends led to the symbols that stand there.
    fn on_its_way(&self, bought: &Bought) -> Vec<Drawn> {
        let mut pieces: Vec<Drawn> = Vec::new();
        for stretch in bought.path.iter().filter(|stretch| stretch.floor == self.floor) {
            let (from, to) = (self.off_the_walls(stretch.from), self.off_the_walls(stretch.to));
            let goes_on = |piece: &&mut Drawn| {
                piece.layer == Some(stretch.layer)
                    && piece.points.last().is_some_and(|last| last.minus(from).length() < 0.01)
            };
            match pieces.last_mut().filter(goes_on) {
                Some(piece) => piece.points.push(to),
                None => pieces.push(Drawn { points: vec![from, to], layer: Some(stretch.layer) }),
            }
        }
        // Its first and last points are led to the symbols there, which stand off the wall; a branch may begin elsewhere.
        if let Some((centre, off)) = self.spot_of_end(bought.ends.0)
            && let Some(first) = pieces.first_mut()
        {
            lead_to(&mut first.points, centre, off);
        }
        if let Some((centre, off)) = self.spot_of_end(bought.ends.1)
            && let Some(last) = pieces.last_mut()
        {
            last.points.reverse();
            lead_to(&mut last.points, centre, off);
            last.points.reverse();
        }
        pieces.retain(|piece| piece.points.len() > 1);
        pieces
    }

    /// A point of a way, a little nearer to the middle of the plan: ways go along walls, and would not be seen on them.
    fn off_the_walls(&self, at: Point) -> Spot {
        let (at, middle) = (self.projection.spot(at), self.field.frame.centre());
        let aside = |at: f64, middle: f64| if at < middle { OFF_THE_WALLS } else { -OFF_THE_WALLS };
        at.plus(spot(aside(at.x, middle.x), aside(at.y, middle.y)))
    }

    fn route_in_words(&self, bought: &Bought) -> String {
        let (from, to) = (self.shown.end_name(bought.ends.0), self.shown.end_name(bought.ends.1));
        format!("{}: {} {}, {}, {from} to {to}", bought.id, words::route_kind(bought.kind), bought.size, bought.length)
    }
}

/// Leads the first point of a line to a symbol that stands near it.
fn lead_to(points: &mut Vec<Spot>, centre: Spot, off: f64) {
    let Some(first) = points.first_mut().filter(|first| first.minus(centre).length() < NEAR) else { return };
    *first = centre;
    points.reverse();
    *points = clipped_at_end(points, centre, off);
    points.reverse();
}

fn length(points: &[Spot]) -> f64 {
    points.windows(2).map(|pair| pair[1].minus(pair[0]).length()).sum()
}

/// Draws the line of a route: a grounding conductor thick and broken, a cable as two lines.
pub(crate) fn route_line(svg: &mut Svg, points: &[Spot], kind: RouteKind, dashes: &'static str) {
    match kind {
        RouteKind::Egc => {
            let dashes = if dashes.is_empty() { "8 2 2 2" } else { dashes };
            svg.path(points, &Pen::line(GROUND, GROUND_WIDTH).dashed(dashes));
        }
        RouteKind::NewCable => {
            svg.path(points, &Pen::line(WHITE, 2.4));
            svg.path(&beside(points, 1.4), &Pen::line(BLACK, 1.0).dashed(dashes));
            svg.path(&beside(points, -1.4), &Pen::line(BLACK, 1.0).dashed(dashes));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::floor_plan::floor_plan;
    use crate::geometry::Area;
    use crate::shown::{Bought, Layer, Shown, Stretch};
    use dwelling::{BoxIndex, Point, RouteEnd, RouteKind};
    use electrical::Length;

    fn point(x: i64, y: i64) -> Point {
        Point { x: Length::feet(x), y: Length::feet(y) }
    }

    fn stretch(layer: Layer, from: (i64, i64), to: (i64, i64)) -> Stretch {
        Stretch { floor: Some(1), from: point(from.0, from.1), to: point(to.0, to.1), layer }
    }

    /// Along the wall to the corner, up, and through the attic: two lines of their own kind and a ring between them.
    #[test]
    fn a_known_way_is_drawn_as_it_goes_with_a_ring_where_it_goes_up() {
        let text = "format = 1\n[job]\nname = \"x\"\n[[panel]]\nid = \"main\"\n[[room]]\nid = \"den\"\nuse = \"den\"\nfloor = 1\n\
                    outline = [[0, 0], [20, 0], [20, 20], [0, 20]]\n\
                    [[box]]\nid = \"A\"\nroom = \"den\"\nat = [0, 4]\nholds = \"three-slot\"\n\
                    [[box]]\nid = \"B\"\nroom = \"den\"\nat = [20, 10]\nholds = \"three-slot\"\n";
        let read = survey::read(text.as_bytes(), survey::Format::Toml);
        let dwelling = read.dwelling.unwrap();
        let diagnosis = diagnosis::diagnose(&dwelling);
        let mut shown = Shown::as_found(&dwelling, &diagnosis);
        shown.bought.push(Bought {
            number: "R1".to_owned(),
            id: "way".to_owned(),
            kind: RouteKind::Egc,
            size: "14 AWG".to_owned(),
            length: "30 ft".to_owned(),
            openings: 0,
            ends: (RouteEnd::Box(BoxIndex(0)), RouteEnd::Box(BoxIndex(1))),
            way_is_known: true,
            branches_off: None,
            path: vec![
                stretch(Layer::Wall, (0, 4), (0, 0)),
                stretch(Layer::Above, (0, 0), (0, 10)),
                stretch(Layer::Above, (0, 10), (20, 10)),
            ],
        });
        let plan = floor_plan(&shown, Some(1), 9.0, Area::new(0.0, 0.0, 300.0, 300.0)).unwrap();
        let drawn = plan.svg.finished((300.0, 300.0), "", "");
        let (_, route) = drawn.split_once("<g class=\"route\" data-id=\"way\">").unwrap();
        let route = route.split_once("</g>").unwrap().0;
        assert_eq!((route.matches("<polyline").count(), route.matches("<circle").count()), (2, 1), "{route}");
        assert!(route.contains(Layer::Wall.dashes()) && route.contains(Layer::Above.dashes()));
        assert!(plan.without_label.is_empty());
        // On another floor nothing of it is drawn.
        assert!(floor_plan(&shown, Some(2), 9.0, Area::new(0.0, 0.0, 300.0, 300.0)).is_none());
    }
}
