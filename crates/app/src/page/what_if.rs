//! The page of what could change a plan: what is not known first, then prices.

use super::ink::{ALARM, ASK, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use super::words::money;
use anstyle::Style;
use dwelling::Dwelling;
use remedies::{PriceMovedAnswer, SensitivityAnswer, TriedAnswer, UnknownAnswer};

/// How many changes are told before the rest is counted.
const MOST_TOLD: usize = 2;

/// The page.
#[must_use]
pub fn render(answer: &SensitivityAnswer, dwelling: &Dwelling, full: bool) -> String {
    let mut page = String::new();
    let head = format!("What could change the plan of {}", dwelling.job.name);
    wrapped(&mut page, "", &head, HEADLINE);
    let (price, owner) = (money(answer.price.total_cents), money(answer.owner_cents));
    let stands = format!("As the survey stands it costs {price}, {owner} to the owner.");
    wrapped(&mut page, "", &format!("{stands} Each thing below was tried alone, and all planned anew."), QUIET);
    unknowns(&mut page, answer, full);
    prices(&mut page, answer, full);
    page
}

fn unknowns(page: &mut String, answer: &SensitivityAnswer, full: bool) {
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "What is not known")));
    if answer.unknowns.is_empty() {
        wrapped(page, "  ", "Nothing that was tried changes the plan.", Style::new());
    }
    for unknown in &answer.unknowns {
        wrapped(page, "  ", &format!("{} {}: {}", unknown.at, unknown.id, unknown.what), ASK);
        wrapped(page, "      ", &at_worst(unknown), Style::new());
        for tried in &unknown.values {
            one(page, tried, full);
        }
    }
    let quiet = &answer.without_effect;
    if full {
        for nothing in quiet {
            wrapped(page, "  changes nothing: ", nothing, QUIET);
        }
    } else if !quiet.is_empty() {
        let told = match quiet.len() {
            1 => "1 other thing is not known, and changes nothing (`--full` names it).".to_owned(),
            many => format!("{many} other things are not known, and change nothing (`--full` names them)."),
        };
        wrapped(page, "  ", &told, QUIET);
    }
    for not_tried in &answer.not_tried {
        wrapped(page, "  ? not tried: ", not_tried, ASK);
    }
}

fn at_worst(unknown: &UnknownAnswer) -> String {
    let best = match unknown.best_cents {
        Some(best) if best < 0 => format!("; at best {} less", money(-best)),
        _ => String::new(),
    };
    match unknown.worst_cents {
        None => format!("at worst something cannot be had lawfully{best}"),
        Some(worst) if worst > 0 => format!("at worst {} more{best}", money(worst)),
        Some(_) => format!("at worst nothing more{best}"),
    }
}

fn one(page: &mut String, tried: &TriedAnswer, full: bool) {
    let price = tried.costs_more_cents.map_or("no price".to_owned(), more_or_less);
    let told = if full { tried.changes.len() } else { tried.changes.len().min(MOST_TOLD) };
    let mut parts = vec![price];
    parts.extend(tried.changes[..told].iter().cloned());
    match tried.changes.len() - told {
        0 => {}
        1 => parts.push("1 more change".to_owned()),
        rest => parts.push(format!("{rest} more changes")),
    }
    wrapped(page, &format!("      {:<29}", format!("{}:", tried.value)), &parts.join("; "), QUIET);
    for short in &tried.falls_short {
        wrapped(page, "          ! ", short, ALARM);
    }
}

fn more_or_less(more: i64) -> String {
    match more {
        0 => "as much".to_owned(),
        more if more < 0 => format!("{} less", money(-more)),
        more => format!("{} more", money(more)),
    }
}

fn prices(page: &mut String, answer: &SensitivityAnswer, full: bool) {
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Prices")));
    let percents: Vec<String> = answer.moved_by_percent.iter().map(|percent| format!("{percent:+} %")).collect();
    let tested = format!("Each line of the price book was moved by {}, one line at a time.", percents.join(", "));
    wrapped(page, "  ", &tested, QUIET);
    for price in &answer.prices {
        wrapped(page, "  ", &format!("{}: {}", name(price), holds(price)), ASK);
        for tried in price.moves.iter().filter(|tried| full || !tried.changes.is_empty()) {
            one(page, tried, full);
        }
    }
    if !answer.charges.is_empty() {
        wrapped(page, "  ", "These change nothing of what is done, and what the owner pays:", Style::new());
    }
    for charge in &answer.charges {
        let moves = charge.moves.iter().filter_map(|tried| Some((&tried.value, tried.owner_costs_more_cents?)));
        let told: Vec<String> = moves.map(|(value, more)| format!("{value}: {}", more_or_less(more))).collect();
        wrapped(page, &format!("    {:<22}", charge.line), &told.join("; "), QUIET);
    }
    if !answer.prices_without_effect.is_empty() {
        wrapped(page, "  ", "What is done stays the same whichever way these move:", Style::new());
        wrapped(page, "    ", &answer.prices_without_effect.join(", "), QUIET);
    }
}

fn name(price: &PriceMovedAnswer) -> String {
    match price.table {
        Some("minutes") => format!("minutes of {}", price.line),
        Some("material") => format!("price of {}", price.line),
        Some("conditions") => format!("time under the condition {}", price.line),
        Some(_) => price.line.to_owned(),
        None if price.line == "helper-hour" => "an hour of a helper's work".to_owned(),
        None => "an hour of work".to_owned(),
    }
}

fn holds(price: &PriceMovedAnswer) -> String {
    let (from, to) = (price.holds_from_percent, price.holds_to_percent);
    match (from, to) {
        (0, 0) => "what is done changes with every move".to_owned(),
        (0, to) => format!("what is done stays the same up to {to:+} %, and changes with every move down"),
        (from, 0) => format!("what is done stays the same down to {from:+} %, and changes with every move up"),
        (from, to) => format!("what is done stays the same from {from:+} % to {to:+} %"),
    }
}
