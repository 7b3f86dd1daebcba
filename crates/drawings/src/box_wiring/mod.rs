//! The wiring of one box: its cables, what is joined to what, its device, as it was found and as a plan leaves it.

mod entering;
mod joining;
mod layout;
mod picture;
mod value;
mod words;

use crate::answer::{DrawingAnswer, SheetAnswer};
use crate::shown::Moment;
use diagnosis::Diagnosis;
use dwelling::{BoxIndex, Dwelling, circuit_trees};
use remedies::Planned;
pub use value::{
    BoxWiring, CablePart, Carries, End, EndKind, FarEnd, Joint, JointState, OpenBecause, OpenEnd, Side, TerminalAnswer,
    WiredCable,
};

/// A drawing with what it shows in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// Its title.
    pub title: String,
    /// The drawing, as an SVG at its own size.
    pub svg: String,
    /// What it shows, for those who hear it read.
    pub says: String,
}

/// How a box was found to be wired.
#[must_use]
pub fn wiring_as_found(dwelling: &Dwelling, diagnosis: &Diagnosis, at: BoxIndex) -> BoxWiring {
    let trees = circuit_trees(dwelling);
    joining::as_found(&joining::around(dwelling, &trees, diagnosis, at), diagnosis)
}

/// How a plan leaves a box wired.
#[must_use]
pub fn wiring_as_planned(plan: &Planned, at: BoxIndex) -> BoxWiring {
    let facts = &plan.facts;
    joining::as_planned(&joining::around(facts.dwelling, &facts.trees, &facts.diagnosis, at), plan)
}

/// The drawing of a wiring under a title.
#[must_use]
pub fn drawn_wiring(wiring: &BoxWiring, title: &str) -> Figure {
    let (svg, size) = picture::picture(wiring, title);
    let says = words::said(wiring);
    Figure { title: title.to_owned(), svg: svg.finished(size, title, &says), says }
}

/// The drawing of a box as an answer.
#[must_use]
pub fn drawn_box(dwelling: &Dwelling, wiring: BoxWiring) -> DrawingAnswer {
    let when = match wiring.moment {
        Moment::Before => "as it was found",
        Moment::After => "as the plan leaves it",
    };
    let circuit =
        wiring.circuit.as_ref().map_or("circuit not known".to_owned(), |circuit| format!("circuit {circuit}"));
    let figure = drawn_wiring(&wiring, &format!("{}, {circuit}, {when}", wiring.box_id));
    let sheet = SheetAnswer {
        floor: None,
        circuits: wiring.circuit.iter().cloned().collect(),
        title: figure.title,
        scale: None,
        boxes: vec![wiring.box_id.clone()],
        svg: figure.svg,
        wiring: Some(wiring.clone()),
    };
    DrawingAnswer {
        format: 1,
        job: dwelling.job.name.clone(),
        moment: wiring.moment,
        sheets: vec![sheet],
        not_placed: Vec::new(),
    }
}
