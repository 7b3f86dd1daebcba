//! The page of findings.

use super::feeding;
use super::ink::{ALARM, ASK, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use anstyle::Style;
use dwelling::Dwelling;
use remedies::{FindingAnswer, FindingsAnswer, NextAnswer};

/// The page: dangers first, then what several places have in common; with `full`, everything place by place.
#[must_use]
pub fn render(answer: &FindingsAnswer, dwelling: &Dwelling, full: bool) -> String {
    let mut page = String::new();
    page.push_str(&format!("{}\n", ink(HEADLINE, format!("{} – what the readings mean", dwelling.job.name))));
    if answer.findings.is_empty() {
        page.push_str("\nNo reading or sighting says anything yet.\n");
    } else if full {
        place_by_place(&mut page, answer);
    } else {
        let (dangers, others): (Vec<_>, Vec<_>) = answer.findings.iter().partition(|finding| finding.danger);
        together(&mut page, "Dangerous", &dangers);
        together(&mut page, "Found", &others);
    }
    feeding::findings(&mut page, &answer.feeding, full);
    find_out(&mut page, "Find out next", &answer.find_out);
    if !answer.find_out.is_empty() && !answer.tests.is_empty() {
        let order = "This list has dangers first, then what bars a verdict. `--next` ranks tests by what they save by the minute: where \
                     the two differ, do what a danger asks for first, then follow `--next`.";
        page.push('\n');
        wrapped(&mut page, "", order, QUIET);
    }
    if !answer.shipped_practice {
        let practice = "Your own figures of practice change what `--next` and `--explain` say; nothing on this page rests on them.";
        page.push('\n');
        wrapped(&mut page, "", practice, QUIET);
    }
    page
}

fn place_by_place(page: &mut String, answer: &FindingsAnswer) {
    let mut last = None;
    for finding in &answer.findings {
        let at = (finding.at, finding.id.as_str());
        if last != Some(at) {
            page.push_str(&format!("\n{}\n", ink(HEADLINE, format!("{} {}", finding.at, finding.id))));
            last = Some(at);
        }
        one(page, finding, true);
    }
}

/// Findings that say the same, with all the places they hold at.
fn together(page: &mut String, heading: &str, findings: &[&FindingAnswer]) {
    if findings.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, heading)));
    let mut told: Vec<(&FindingAnswer, Vec<&str>)> = Vec::new();
    for finding in findings {
        let same = told.iter_mut().find(|(first, _)| first.says == finding.says && first.sure == finding.sure);
        match same {
            Some((_, places)) if places.contains(&finding.id.as_str()) => {}
            Some((_, places)) => places.push(&finding.id),
            None => told.push((finding, vec![&finding.id])),
        }
    }
    for (finding, places) in told {
        let (mark, style) = if finding.danger { ("  ! ", ALARM) } else { ("  · ", Style::new()) };
        wrapped(page, mark, &format!("{}: {} ({})", places.join(", "), finding.says, finding.sure.name()), style);
    }
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
pub fn find_out(page: &mut String, heading: &str, list: &[NextAnswer]) {
    if list.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, heading)));
    for (number, next) in list.iter().enumerate() {
        wrapped(page, &format!("  {}. ", number + 1), &place(next), ASK);
    }
}

fn place(next: &NextAnswer) -> String {
    if next.boxes.is_empty() { next.what.clone() } else { format!("{}: {}", next.boxes.join(", "), next.what) }
}
