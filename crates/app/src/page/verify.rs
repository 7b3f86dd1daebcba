//! The page of a verification: what was looked at, and what was found.

use super::ink::{ALARM, DO, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use super::words::money;
use crate::commands::verify::VerificationAnswer;
use anstyle::Style;

/// How many differences are told before the rest is counted.
const MOST_TOLD: usize = 20;

/// The page.
#[must_use]
pub fn render(answer: &VerificationAnswer) -> String {
    let mut page = String::new();
    let (word, style) = if answer.holds { ("THE PLAN HOLDS", DO) } else { ("THE PLAN DOES NOT HOLD", ALARM) };
    page.push_str(&format!("{}\n", ink(style, word)));
    if answer.holds {
        for checked in &answer.checked {
            wrapped(&mut page, "  - ", checked, Style::new());
        }
    }
    for fault in &answer.faults {
        wrapped(&mut page, "  ! ", fault, ALARM);
    }
    if !answer.differs.is_empty() {
        page.push_str(&format!("\n{}\n", ink(HEADLINE, "What it says otherwise than follows from its choices")));
    }
    for one in answer.differs.iter().take(MOST_TOLD) {
        let of = one.of.as_ref().map_or(String::new(), |of| format!("{of}: "));
        wrapped(&mut page, "  ! ", &format!("{of}{}", one.at), ALARM);
        wrapped(&mut page, "      it says ", &short(&one.plan_says), Style::new());
        wrapped(&mut page, "      follows ", &short(&one.follows), Style::new());
    }
    match answer.differs.len().saturating_sub(MOST_TOLD) {
        0 => {}
        1 => page.push_str("  and 1 place more\n"),
        rest => page.push_str(&format!("  and {rest} places more\n")),
    }
    if let Some(cents) = answer.certified_cents.filter(|_| answer.holds) {
        let told = format!("Its certificate shows that nothing that gives as much costs less than {}.", money(cents));
        wrapped(&mut page, "  ", &told, QUIET);
    } else if answer.holds {
        let told = "It has no certificate (`plan --json --certificate`): that nothing costs less was checked by planning anew.";
        wrapped(&mut page, "  ", told, QUIET);
    }
    page
}

/// A value, cut where it is long.
fn short(value: &str) -> String {
    const LONGEST: usize = 160;
    if value.chars().count() <= LONGEST {
        return value.to_owned();
    }
    format!("{} …", value.chars().take(LONGEST).collect::<String>())
}
