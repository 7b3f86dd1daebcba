//! Labels of a plan: placed all together, then drawn with their leaders.

use crate::curve::{along, arrowhead};
use crate::floor_plan::Drawer;
use crate::geometry::{Area, spot};
use crate::label::{Label, Piece};
use crate::placing::{Placed, Wish};
use crate::room_names::name_rooms;
use crate::svg::{Pen, QUIET};

/// From which length on a line is numbered by itself.
const LONG_LINE: f64 = 70.0;
/// Where along its line a number is tried.
const NUMBERED_AT: [f64; 6] = [0.38, 0.45, 0.3, 0.78, 0.85, 0.22];
/// How many stretches of its own line may pass under a number: more are other lines.
const OWN_LINE: usize = 4;

/// A label that waits for its place.
pub(crate) struct Waiting {
    pub(crate) label: Label,
    pub(crate) wish: Wish,
    pub(crate) class: &'static str,
    pub(crate) of: String,
    pub(crate) leader: Leader,
}

/// The line between a label and what it names.
pub(crate) enum Leader {
    /// A thin line that says no more than that they belong together.
    Thin,
    /// A line of the drawing, which goes on to what the label says.
    ToLabel(Pen),
    /// A line of the drawing, which comes from what the label says.
    FromLabel(Pen),
    /// A line of the drawing without a direction, by what draws it.
    Route(dwelling::RouteKind),
}

impl Drawer<'_, '_> {
    /// Places every label and draws it; the names of those that found no room.
    pub(crate) fn place_labels(&mut self) -> Vec<String> {
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
        without.extend(name_rooms(self.shown, self.floor, &mut self.field, &mut self.labels));
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
            let spots = NUMBERED_AT.into_iter().filter_map(|share| along(&points, share));
            let mut areas = spots.map(|(at, _)| Area::around(at, label.size()));
            let clear = |area: &Area| self.field.is_free(area) && self.field.lines_under(area) <= OWN_LINE;
            let Some(area) = areas.find(clear) else { continue };
            self.field.take(area);
            self.labels.open("run-number", &name, "");
            label.draw(&mut self.labels, spot(area.left, area.top));
            self.labels.close();
        }
    }

    fn draw_label(&mut self, waiting: &Waiting, placed: &Placed) {
        if let Some((from, to)) = placed.leader {
            let (class, points) = match waiting.leader {
                Leader::Thin => ("leader", [from, to]),
                Leader::FromLabel(_) => ("run-end-line", [to, from]),
                Leader::ToLabel(_) => ("run-end-line", [from, to]),
                Leader::Route(_) => ("route-end-line", [from, to]),
            };
            self.lines.open(class, &waiting.of, "");
            match &waiting.leader {
                Leader::Thin => self.lines.path(&points, &Pen::line(QUIET, 0.5)),
                Leader::Route(kind) => crate::bringing::route_line(&mut self.lines, &points, *kind, ""),
                Leader::ToLabel(pen) | Leader::FromLabel(pen) => {
                    self.lines.path(&points, pen);
                    if let Some(head) = arrowhead(&points, 1.0, 4.0) {
                        self.lines.polygon(&head, &Pen::line(pen.colour, 0.0).filled(pen.colour));
                    }
                }
            }
            self.lines.close();
        }
        self.labels.open(waiting.class, &waiting.of, "");
        waiting.label.draw(&mut self.labels, spot(placed.area.left, placed.area.top));
        self.labels.close();
    }
}
