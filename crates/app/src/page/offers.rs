//! What can be offered, side by side, and what each step up buys.

use super::ink::{ASK, DO, HEADLINE, QUIET, ink};
use super::lines::{width, wrapped};
use super::words::money;
use crate::offer_pick::short_name;
use anstyle::Style;
use remedies::{OfferAnswer, OffersAnswer, StepUpAnswer, TotalsAnswer};

/// The width of the names of the rows.
const NAMES: usize = 18;
/// The widest that one offer is written.
const WIDEST: usize = 20;

/// Adds the offers.
pub fn render(page: &mut String, answer: &OffersAnswer, totals: &TotalsAnswer) {
    page.push_str(&format!("{}\n\n", ink(HEADLINE, "What can be offered")));
    let column = ((width() - NAMES) / answer.offers.len().max(1)).min(WIDEST);
    heads(page, answer, column);
    let receptacles = totals.receptacles;
    row(page, answer, column, "price", HEADLINE, |offer| money(offer.owner_cents));
    row(page, answer, column, "  work alone", Style::new(), |offer| money(offer.price.total_cents));
    row(page, answer, column, "truly grounded", Style::new(), |offer| format!("{} of {receptacles}", offer.grounded));
    row(page, answer, column, "walls opened", Style::new(), |offer| offer.wall_openings.to_string());
    row(page, answer, column, "markings left", Style::new(), |offer| offer.markings.to_string());
    row(page, answer, column, "days of work", Style::new(), |offer| offer.days.to_string());
    page.push('\n');
    for (index, offer) in answer.offers.iter().enumerate() {
        if let Some(step) = &offer.step_up {
            wrapped(page, &format!("  {} → {}  ", index, index + 1), &in_words(step), Style::new());
        }
    }
    if answer.offers.len() == 1 {
        wrapped(
            page,
            "  ",
            "Nothing more can be grounded with what the survey offers: there is no other plan to choose.",
            QUIET,
        );
    }
    if !answer.never_grounded.is_empty() {
        wrapped(page, "  no offer grounds ", &answer.never_grounded.join(", "), QUIET);
    }
    if !answer.complete {
        wrapped(page, "  ", "The search was stopped at its limit: there may be better offers.", ASK);
    }
    let names: Vec<String> = answer
        .offers
        .iter()
        .enumerate()
        .map(|(at, offer)| format!("{} ({})", short_name(offer.kind), at + 1))
        .collect();
    let taken =
        format!("Offer {} in full; `--offer` takes another, by name or number: {}.", answer.taken, names.join(", "));
    page.push('\n');
    wrapped(page, "", &taken, QUIET);
    page.push('\n');
}

fn heads(page: &mut String, answer: &OffersAnswer, column: usize) {
    let room = column.saturating_sub(2);
    let names: Vec<Vec<String>> = answer
        .offers
        .iter()
        .enumerate()
        .map(|(index, offer)| {
            let lines = textwrap::wrap(&offer.name, room).into_iter().map(|line| line.into_owned());
            std::iter::once((index + 1).to_string()).chain(lines).collect()
        })
        .collect();
    let tallest = names.iter().map(Vec::len).max().unwrap_or(0);
    for line in 0..tallest {
        page.push_str(&" ".repeat(NAMES));
        for (index, name) in names.iter().enumerate() {
            let style = if index + 1 == answer.taken { DO } else { HEADLINE };
            cell(page, name.get(line).map_or("", String::as_str), column, style);
        }
        end_line(page);
    }
}

fn row(
    page: &mut String,
    answer: &OffersAnswer,
    column: usize,
    name: &str,
    style: Style,
    of: impl Fn(&OfferAnswer) -> String,
) {
    page.push_str(&format!("  {name:<16}"));
    for offer in &answer.offers {
        cell(page, &of(offer), column, style);
    }
    end_line(page);
}

fn cell(page: &mut String, text: &str, column: usize, style: Style) {
    let gap = column.saturating_sub(text.chars().count());
    if text.is_empty() {
        page.push_str(&" ".repeat(column));
    } else {
        page.push_str(&format!("{}{}", ink(style, text), " ".repeat(gap)));
    }
}

fn end_line(page: &mut String) {
    page.truncate(page.trim_end_matches(' ').len());
    page.push('\n');
}

fn in_words(step: &StepUpAnswer) -> String {
    let mut parts = vec![match step.owner_costs_more_cents {
        0 => "as much".to_owned(),
        less if less < 0 => format!("{} less", money(-less)),
        more => format!("{} more", money(more)),
    }];
    if !step.grounds.is_empty() {
        parts.push(format!("grounds {}", step.grounds.join(", ")));
    }
    if let Some(cents) = step.cents_per_opening {
        parts.push(format!("{} an opening", money(cents)));
    }
    if !step.gives_up.is_empty() {
        parts.push(format!("gives up the ground of {}", step.gives_up.join(", ")));
    }
    match step.more_wall_openings {
        0 => {}
        1 => parts.push("1 wall opening more".to_owned()),
        -1 => parts.push("1 wall opening less".to_owned()),
        more if more < 0 => parts.push(format!("{} wall openings less", -more)),
        more => parts.push(format!("{more} wall openings more")),
    }
    parts.join("; ")
}
