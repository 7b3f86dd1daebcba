//! The page of what changes between two editions.

use super::ink::{ASK, DO, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use super::words::money;
use anstyle::Style;
use dwelling::Dwelling;
use remedies::{ChangeAnswer, EditionsAnswer};

/// The page.
#[must_use]
pub fn render(answer: &EditionsAnswer, dwelling: &Dwelling) -> String {
    let mut page = String::new();
    let title = format!("{} – from NEC {} to NEC {}", dwelling.job.name, answer.from, answer.to);
    page.push_str(&format!("{}\n", ink(HEADLINE, title)));
    page.push_str(&format!(
        "The cheapest lawful whole: {} under the first, {} under the second. Nothing changes for {} boxes.\n",
        money(answer.plan_from_cents),
        money(answer.plan_to_cents),
        answer.unchanged
    ));
    if answer.not_checked {
        let told = "something could not be checked or planned under one of them: the two costs cannot be compared";
        wrapped(&mut page, "? ", told, ASK);
    }
    for (change, boxes) in together(answer) {
        page.push_str(&format!("\n{}\n", ink(DO, &change.what)));
        wrapped(&mut page, "  at   ", &boxes.join(", "), Style::new());
        wrapped(&mut page, "  was  ", &change.from, QUIET);
        let cites = if change.cites.is_empty() { String::new() } else { format!("  [{}]", change.cites.join(", ")) };
        wrapped(&mut page, "  is   ", &format!("{}{cites}", change.to), Style::new());
    }
    page
}

/// Each change once, with all the boxes it holds for.
fn together(answer: &EditionsAnswer) -> Vec<(&ChangeAnswer, Vec<&str>)> {
    let mut told: Vec<(&ChangeAnswer, Vec<&str>)> = Vec::new();
    for opening in &answer.openings {
        for change in &opening.changes {
            match told.iter_mut().find(|(known, _)| *known == change) {
                Some((_, boxes)) => boxes.push(&opening.box_id),
                None => told.push((change, vec![&opening.box_id])),
            }
        }
    }
    told
}
