//! The one-line: what stands at each panel, and every circuit as a tree of its openings, before and after a plan.

mod both;
mod drawn;
mod fed;
mod legend;
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

/// The one-line as it was found and as a plan leaves it: on one sheet where it holds both, else each on its own.
#[must_use]
pub fn one_line_before_and_after(plan: &Planned) -> Vec<SheetAnswer> {
    let before = Fed::as_found(plan.facts.dwelling, &plan.facts.diagnosis);
    let after = Fed::as_planned(plan);
    match both::both_on_a_sheet(&before, &after) {
        Some(sheet) => vec![sheet_answer(&before, sheet)],
        None => [&before, &after]
            .into_iter()
            .flat_map(|fed| drawn::sheets(fed).into_iter().map(|sheet| sheet_answer(fed, sheet)))
            .collect(),
    }
}

fn sheet_answer(fed: &Fed, sheet: drawn::LineSheet) -> SheetAnswer {
    SheetAnswer {
        floor: None,
        circuits: sheet.circuits.iter().map(|at| fed.dwelling.circuit(*at).id.clone()).collect(),
        title: sheet.title,
        scale: None,
        boxes: sheet.boxes.iter().map(|at| fed.dwelling.device_box(*at).id.clone()).collect(),
        svg: sheet.svg,
        wiring: None,
    }
}

fn answer(fed: &Fed) -> DrawingAnswer {
    let sheets = drawn::sheets(fed).into_iter().map(|sheet| sheet_answer(fed, sheet)).collect();
    DrawingAnswer {
        format: 1,
        job: fed.dwelling.job.name.clone(),
        moment: fed.moment,
        sheets,
        not_placed: fed.not_placed(),
    }
}
