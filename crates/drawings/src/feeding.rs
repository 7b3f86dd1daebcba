//! What feeds what: curves where both ends stand on a sheet, short arrows where one does.

use crate::curve::{arrowhead, curve};
use crate::floor_plan::Drawer;
use crate::label::{Label, NOTE, Piece};
use crate::line_style::circuit_line;
use crate::naming::{Leader, Waiting};
use crate::places::place_of_box;
use crate::placing::Wish;
use crate::standing::Standing;
use crate::svg::Pen;
use crate::symbol::RADIUS;
use dwelling::{BoxIndex, Feed, RouteEnd};

/// The least length of an arrow to words.
pub(crate) const STUB: f64 = 13.0;

impl Drawer<'_, '_> {
    /// Draws every run that ends on this floor, and names those that go on to other floors.
    pub(crate) fn draw_runs(&mut self) {
        for at in self.shown.dwelling.box_indices().filter(|at| !self.shown.boxes[at.0].by_new_cable) {
            let feed = self.shown.boxes[at.0].feed;
            let (Some(feed), Some(standing)) = (feed, self.standing_of(at)) else { continue };
            let end = match feed {
                Feed::Panel(panel) => RouteEnd::Panel(panel),
                Feed::Box(parent) => RouteEnd::Box(parent),
            };
            match self.spot_of_end(end) {
                Some(from) => self.run(from, standing),
                None => self.run_from_elsewhere(feed, standing),
            }
        }
        for (parent, children) in self.fed_elsewhere() {
            if let Some(standing) = self.standing_of(parent) {
                let pen = circuit_line(self.shown.dwelling.device_box(parent).circuit);
                let text = Piece::Words(format!("to {}", children.join(", ")), NOTE);
                self.stub(standing, vec![text], Leader::ToLabel(pen));
            }
        }
    }

    fn run(&mut self, (from, off): (crate::geometry::Spot, f64), standing: Standing) {
        let pen = circuit_line(self.shown.dwelling.device_box(standing.of).circuit);
        let name = self.shown.circuits_on_run_to(standing.of);
        let points = curve(&self.field, from, standing.centre, off.max(RADIUS + 1.0));
        let id = &self.shown.dwelling.device_box(standing.of).id;
        let feed = self.shown.feed_in_words(self.shown.boxes[standing.of.0].feed);
        self.lines.open("run", id, &format!("circuit {name}, {feed}"));
        self.lines.path(&points, &pen);
        if let Some(head) = arrowhead(&points, 0.62, 5.0) {
            self.lines.polygon(&head, &Pen::line(pen.colour, 0.0).filled(pen.colour));
            // A label would better not hide it.
            self.field.add_lines(&[head[0], head[1], head[2], head[0]]);
        }
        self.lines.close();
        self.field.add_lines(&points);
        self.long_lines.push((points, name, pen));
    }

    /// A run whose other end stands on no plan, or on another floor's.
    fn run_from_elsewhere(&mut self, feed: Feed, standing: Standing) {
        let pen = circuit_line(self.shown.dwelling.device_box(standing.of).circuit);
        let name = self.shown.circuits_on_run_to(standing.of);
        let (text, leader) = match feed {
            Feed::Box(parent) => {
                let parent = self.shown.name_from(RouteEnd::Box(parent), self.floor);
                (format!("from {parent}"), Leader::FromLabel(pen.clone()))
            }
            Feed::Panel(panel) => {
                let to = self.shown.name_from(RouteEnd::Panel(panel), self.floor);
                let only = self.shown.dwelling.panels.len() == 1 && to == self.shown.end_name(RouteEnd::Panel(panel));
                let text = if only { "home run".to_owned() } else { format!("home run to {to}") };
                (text, Leader::ToLabel(pen.clone()))
            }
        };
        self.stub(standing, vec![Piece::Circuit(name, pen), Piece::Words(text, NOTE)], leader);
    }

    /// By box: the boxes that it feeds and that stand on the plans of other floors.
    fn fed_elsewhere(&self) -> Vec<(BoxIndex, Vec<String>)> {
        let mut found: Vec<(BoxIndex, Vec<String>)> = Vec::new();
        for at in self.shown.dwelling.box_indices() {
            let elsewhere = self.standing_of(at).is_none() && place_of_box(self.shown.dwelling, at).is_some();
            let box_shown = &self.shown.boxes[at.0];
            let Some(Feed::Box(parent)) = box_shown.feed.filter(|_| elsewhere && !box_shown.by_new_cable) else {
                continue;
            };
            let child = self.shown.name_from(RouteEnd::Box(at), self.floor);
            match found.iter_mut().find(|(other, _)| *other == parent) {
                Some((_, children)) => children.push(child),
                None => found.push((parent, vec![child])),
            }
        }
        found
    }

    /// A short line from a symbol to words that say where it goes.
    fn stub(&mut self, standing: Standing, pieces: Vec<Piece>, leader: Leader) {
        let label = Label::of(pieces);
        let wish = Wish {
            anchors: vec![(standing.centre, RADIUS + 1.0)],
            size: label.size(),
            least: STUB,
            room: Some(standing.room.0),
        };
        let of = self.shown.dwelling.device_box(standing.of).id.clone();
        self.wishes.push(Waiting { label, wish, class: "run-end", of, leader });
    }
}
