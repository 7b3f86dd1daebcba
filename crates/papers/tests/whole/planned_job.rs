//! The jobs that the papers are made for.

use calculations::{Moment, checks_of, expected_readings, state_at};
use closeout::prove;
use drawings::{drawn_as_found, drawn_as_planned};
use dwelling::Dwelling;
use estimate::PriceBook;
use papers::{Drawn, Job};
use remedies::{LawAnswer, Planned, estimate_answer, offers_answer, plan_answer};
use rulebook::CodeInForce;
use survey::Format;

/// The dwellings that come with the program.
pub const EXAMPLES: [&str; 3] = ["bungalow", "flat", "knob-and-tube"];

/// Does something with the job of an example.
pub fn with_example(name: &str, act: impl FnOnce(&Job)) {
    let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    with_survey(&std::fs::read_to_string(path).unwrap(), act);
}

/// Does something with the job of a survey.
pub fn with_survey(survey: &str, act: impl FnOnce(&Job)) {
    let read = survey::read(survey.as_bytes(), Format::Toml);
    with_dwelling(&read.dwelling.unwrap_or_else(|| panic!("{:?}", read.diagnostics)), act);
}

/// Does something with the job of a survey, its offers told.
pub fn with_survey_and_offers(survey: &str, act: impl FnOnce(&Job)) {
    let read = survey::read(survey.as_bytes(), Format::Toml);
    with_plan(&read.dwelling.unwrap(), true, act);
}

/// Does something with the job of a dwelling.
pub fn with_dwelling(dwelling: &Dwelling, act: impl FnOnce(&Job)) {
    with_plan(dwelling, false, act);
}

fn with_plan(dwelling: &Dwelling, offered: bool, act: impl FnOnce(&Job)) {
    let edition = rulebook::Edition::of_year(dwelling.job.edition.unwrap()).unwrap();
    let planned = Planned::of(dwelling, CodeInForce::published(edition), &PriceBook::demo()).unwrap();
    let law = LawAnswer { edition: edition.year(), ..LawAnswer::default() };
    let mut plan = plan_answer(&planned, &law, true);
    if offered {
        plan.offers = Some(offers_answer(&planned, &planned.offers().unwrap(), 1));
    }
    let after = state_at(&planned, Moment::After);
    let read = dwelling.boxes.iter().any(|at| !at.after.is_empty());
    let proof = read.then(|| prove(&planned, &plan, 1));
    act(&Job {
        dwelling,
        plan: &plan,
        estimate: &estimate_answer(&planned, &plan),
        readings: &expected_readings(&after),
        checks: &checks_of(&after),
        proof: proof.as_ref(),
        floors_before: &drawn_as_found(dwelling, &planned.facts.diagnosis, None).sheets,
        floors_after: &drawn_as_planned(&planned, None).sheets,
        drawn: &Drawn::of(&planned),
        date: Some("2026-11-25".to_owned()),
    });
}
