//! The next best at an opening, as lines of a page.

use super::ink::QUIET;
use super::lines::wrapped;
use super::words::money;
use remedies::NextBestAnswer;

/// How many changes elsewhere are told before the rest is counted.
const MOST_TOLD: usize = 4;

/// Adds what the next best is, what it would cost the whole, and what else would change; with `full` every change.
pub fn lines(page: &mut String, lead: &str, next: &NextBestAnswer, full: bool) {
    let Some(what) = next.instead.as_deref() else {
        wrapped(page, lead, &format!("next best: none, {}", next.falls_short.join("; ")), QUIET);
        return;
    };
    let price = match next.costs_more_cents {
        None => ", which has no price".to_owned(),
        Some(0) => ", for as much in all".to_owned(),
        Some(more) if more < 0 => format!(", {} less in all", money(-more)),
        Some(more) => format!(", {} more in all", money(more)),
    };
    let found = if next.exact { "" } else { " (the best found in the time given)" };
    wrapped(page, lead, &format!("next best: {what}{price}{found}"), QUIET);
    let lead = format!("{}  ", " ".repeat(lead.chars().count()));
    for short in &next.falls_short {
        wrapped(page, &lead, short, QUIET);
    }
    let told = if full { next.elsewhere.len() } else { next.elsewhere.len().min(MOST_TOLD) };
    if told > 0 {
        let rest = match next.elsewhere.len() - told {
            0 => String::new(),
            rest => format!("; and {rest} more"),
        };
        wrapped(page, &format!("{lead}elsewhere "), &format!("{}{rest}", next.elsewhere[..told].join("; ")), QUIET);
    }
}
