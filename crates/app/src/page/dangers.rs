//! What is dangerous and is put right with every plan, on the pages of plans and estimates.

use super::ink::{ALARM, DO, HEADLINE, QUIET, ink};
use super::lines::{with_right, wrapped};
use super::words::money;
use anstyle::Style;
use remedies::in_words::{capital, place_of_danger};
use remedies::{EstimateAnswer, NotPricedAnswer, PieceAt, PlanAnswer};

/// The part of a plan's page: each work with where, why, its price, and what an allowance rests on.
pub fn of_plan(page: &mut String, answer: &PlanAnswer) {
    if answer.dangers.is_empty() && answer.not_priced.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Repair what is dangerous, whatever else is done")));
    for danger in &answer.dangers {
        let left = format!("  {}", place_of_danger(danger));
        with_right(page, &ink(DO, &left), left.chars().count(), &money(danger.price.total_cents));
        wrapped(page, "          ", &danger.says, Style::new());
        wrapped(page, "          why: ", &danger.because, QUIET);
        if let Some(rests_on) = &danger.rests_on {
            wrapped(page, "          allowance: ", &format!("it rests on {rests_on}"), Style::new());
        }
    }
    not_priced(page, &answer.not_priced);
}

/// The part of an estimate's page: what of the sums above is for dangers, and what they hold nothing for.
pub fn of_estimate(page: &mut String, answer: &EstimateAnswer) {
    let dangers = || answer.pieces.iter().filter(|piece| piece.at == PieceAt::Danger);
    if dangers().next().is_some() {
        page.push_str(&format!("\n{}\n", ink(HEADLINE, "Of that, what is dangerous")));
    }
    for piece in dangers() {
        let allowance = if piece.allowance { ", allowance" } else { "" };
        let left = format!("  {}{allowance}", piece.id);
        with_right(page, &left, left.chars().count(), &money(piece.price.total_cents));
        wrapped(page, "      ", &piece.says, QUIET);
    }
    not_priced(page, &answer.not_priced);
}

/// What the price holds nothing for.
pub fn not_priced(page: &mut String, list: &[NotPricedAnswer]) {
    for one in list {
        wrapped(page, "  ! not in the price: ", &format!("{} {}: {} {}", one.at, one.id, one.says, why(one)), ALARM);
    }
}

fn why(one: &NotPricedAnswer) -> String {
    format!("{}.", capital(&one.why))
}
