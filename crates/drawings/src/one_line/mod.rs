//! The one-line: what stands at each panel, and every circuit as a tree of its openings, before and after a plan.

mod drawn;
mod fed;
mod rows;
mod signs;

use crate::answer::{DrawingAnswer, SheetAnswer};
use diagnosis::Diagnosis;
use dwelling::Dwelling;
use fed::Fed;
use remedies::Planned;

/// The one-line of a dwelling as it was found.
#[must_use]
pub fn one_line_as_found(dwelling: &Dwelling, diagnosis: &Diagnosis) -> DrawingAnswer {
    answer(&Fed::as_found(dwelling, diagnosis))
}

/// The one-line of a dwelling as a plan leaves it.
#[must_use]
pub fn one_line_as_planned(plan: &Planned) -> DrawingAnswer {
    answer(&Fed::as_planned(plan))
}

fn answer(fed: &Fed) -> DrawingAnswer {
    let sheets = drawn::sheets(fed).into_iter().map(|sheet| SheetAnswer {
        floor: None,
        circuits: sheet.circuits.iter().map(|at| fed.dwelling.circuit(*at).id.clone()).collect(),
        title: sheet.title,
        scale: None,
        boxes: sheet.boxes.iter().map(|at| fed.dwelling.device_box(*at).id.clone()).collect(),
        svg: sheet.svg,
        wiring: None,
    });
    let sheets = sheets.collect();
    DrawingAnswer {
        format: 1,
        job: fed.dwelling.job.name.clone(),
        moment: fed.moment,
        sheets,
        not_placed: fed.not_placed(),
    }
}
