//! The drawing of a dwelling, as an answer: its sheets, and what has no place on them.

use crate::box_wiring::BoxWiring;
use crate::legend::boxes_without_place;
use crate::places::{floors, place_of_end};
use crate::sheet::{Sheet, sheets_of};
use crate::shown::{Moment, Shown};
use diagnosis::Diagnosis;
use dwelling::{BoxIndex, Dwelling, PanelIndex, RouteEnd, names};
use remedies::Planned;
use schemars::JsonSchema;
use serde::Serialize;

names! {
    /// A kind of thing that a plan shows.
    ThingKind {
        /// A box.
        Box = "box",
        /// A panel.
        Panel = "panel",
        /// An end of a new ground or cable.
        RouteEnd = "route-end",
    }
}

/// The drawing of a dwelling.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct DrawingAnswer {
    /// The version of this answer's shape.
    pub format: u32,
    /// What the job is called.
    pub job: String,
    /// When the drawing holds.
    pub moment: Moment,
    /// The sheets: by floor from the lowest, the plan of each first; of circuits, in the order of the survey.
    pub sheets: Vec<SheetAnswer>,
    /// What the survey gives no place on a plan or in a tree: it is shown beside, and never drawn where it might be.
    pub not_placed: Vec<NotPlaced>,
}

/// A sheet.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SheetAnswer {
    /// The floor; null where the survey does not state it, and on sheets of circuits.
    pub floor: Option<i8>,
    /// The circuits whose trees it shows, or that of the box; empty on plans of floors.
    pub circuits: Vec<String>,
    /// Its title.
    pub title: String,
    /// The scale of its plan where it is printed at its own size; null where it has no plan.
    pub scale: Option<String>,
    /// The boxes that stand on its plan or in its trees.
    pub boxes: Vec<String>,
    /// The drawing, as an SVG of 7.6 by 10.1 inches, upright or lying; that of one box as large as it needs to be.
    pub svg: String,
    /// How the box is wired that it shows; null on all but drawings of one box.
    pub wiring: Option<BoxWiring>,
}

/// A thing without a place on a plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct NotPlaced {
    /// What it is.
    pub kind: ThingKind,
    /// Its name in the survey.
    pub id: String,
    /// Its floor, where known.
    pub floor: Option<i8>,
    /// What to find out.
    pub find_out: String,
}

impl DrawingAnswer {
    /// Whether every box has its place on a plan or in a tree.
    #[must_use]
    pub fn is_last_word(&self) -> bool {
        !self.not_placed.iter().any(|thing| thing.kind == ThingKind::Box)
    }
}

/// The floors of a dwelling that can be drawn or listed, from the lowest; `None` is of rooms whose floor is not stated.
#[must_use]
pub fn floors_of(dwelling: &Dwelling) -> Vec<Option<i8>> {
    floors(dwelling)
}

/// Draws a dwelling as it was found: one floor, or every floor.
#[must_use]
pub fn drawn_as_found(dwelling: &Dwelling, diagnosis: &Diagnosis, floor: Option<Option<i8>>) -> DrawingAnswer {
    drawn(&Shown::as_found(dwelling, diagnosis), floor)
}

/// Draws a dwelling as a plan leaves it: one floor, or every floor.
#[must_use]
pub fn drawn_as_planned(plan: &Planned, floor: Option<Option<i8>>) -> DrawingAnswer {
    drawn(&Shown::as_planned(plan), floor)
}

fn drawn(shown: &Shown, only: Option<Option<i8>>) -> DrawingAnswer {
    let wanted = floors(shown.dwelling).into_iter().filter(|floor| only.is_none_or(|only| only == *floor));
    let sheets = wanted.flat_map(|floor| sheets_of(shown, floor)).map(|sheet| sheet_answer(shown, sheet)).collect();
    DrawingAnswer {
        format: 1,
        job: shown.dwelling.job.name.clone(),
        moment: shown.moment,
        sheets,
        not_placed: not_placed(shown, only),
    }
}

fn sheet_answer(shown: &Shown, sheet: Sheet) -> SheetAnswer {
    let id = |at: &BoxIndex| shown.dwelling.device_box(*at).id.clone();
    let boxes = sheet.boxes.iter().map(id).collect();
    SheetAnswer {
        floor: sheet.floor,
        circuits: Vec::new(),
        title: sheet.title,
        scale: sheet.scale,
        boxes,
        svg: sheet.svg,
        wiring: None,
    }
}

fn not_placed(shown: &Shown, only: Option<Option<i8>>) -> Vec<NotPlaced> {
    let dwelling = shown.dwelling;
    let mut list = Vec::new();
    for at in boxes_without_place(shown) {
        let device_box = dwelling.device_box(at);
        let floor = dwelling.room(device_box.room).floor;
        if only.is_none_or(|only| only == floor) {
            let find_out = "measure where it is: `at`, from the corner that the outlines are measured from".to_owned();
            list.push(NotPlaced { kind: ThingKind::Box, id: device_box.id.clone(), floor, find_out });
        }
    }
    for at in (0..dwelling.panels.len()).map(PanelIndex) {
        if place_of_end(dwelling, RouteEnd::Panel(at)).is_none() {
            let find_out = "its place is not stated: home runs are drawn as arrows".to_owned();
            list.push(NotPlaced { kind: ThingKind::Panel, id: dwelling.panel(at).id.clone(), floor: None, find_out });
        }
    }
    for route in &shown.bought {
        for end in [route.ends.0, route.ends.1] {
            if place_of_end(dwelling, end).is_none() && !matches!(end, RouteEnd::Panel(_)) {
                let id = format!("{}: {}", route.id, shown.end_name(end));
                let find_out = "the place of this end is not stated: the route is drawn from its other end".to_owned();
                list.push(NotPlaced { kind: ThingKind::RouteEnd, id, floor: None, find_out });
            }
        }
    }
    list
}
