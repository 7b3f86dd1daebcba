//! The page of findings.

use super::ink::{ALARM, ASK, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use anstyle::Style;
use dwelling::Dwelling;
use remedies::{FindingAnswer, FindingsAnswer, NextAnswer};

/// The page.
#[must_use]
pub fn render(answer: &FindingsAnswer, dwelling: &Dwelling) -> String {
    let mut page = String::new();
    page.push_str(&format!("{}\n\n", ink(HEADLINE, format!("{} – what the readings mean", dwelling.job.name))));
    let mut last = None;
    for finding in &answer.findings {
        let at = (finding.at, finding.id.as_str());
        if last != Some(at) {
            page.push_str(&format!("{}\n", ink(HEADLINE, format!("{} {}", finding.at, finding.id))));
            last = Some(at);
        }
        one(&mut page, finding, true);
    }
    if answer.findings.is_empty() {
        page.push_str("No reading or sighting says anything yet.\n");
    }
    find_out(&mut page, &answer.find_out);
    page
}

/// One finding, with its evidence where that is asked for.
pub fn one(page: &mut String, finding: &FindingAnswer, in_full: bool) {
    let (mark, style) = if finding.danger { ("  ! ", ALARM) } else { ("  · ", Style::new()) };
    wrapped(page, mark, &format!("{} ({})", finding.says, finding.sure.name()), style);
    if !in_full {
        return;
    }
    for because in &finding.because {
        wrapped(page, "      evidence: ", because, QUIET);
    }
    for alike in &finding.look_alikes {
        wrapped(page, &format!("      or {}: ", alike.condition.name()), &alike.separate_by, QUIET);
    }
    if let Some(next) = &finding.next {
        wrapped(page, "      next: ", &place(next), ASK);
    }
}

/// What to find out, as a numbered list.
pub fn find_out(page: &mut String, list: &[NextAnswer]) {
    if list.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Find out next")));
    for (number, next) in list.iter().enumerate() {
        wrapped(page, &format!("  {}. ", number + 1), &place(next), ASK);
    }
}

fn place(next: &NextAnswer) -> String {
    if next.boxes.is_empty() { next.what.clone() } else { format!("{}: {}", next.boxes.join(", "), next.what) }
}
