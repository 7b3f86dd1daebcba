//! The page of checks: circuit by circuit the tightest of each kind, below it what is not as it should be or not known.

use super::ink::{ALARM, ASK, DO, HEADLINE, QUIET, ink};
use super::lines::{rule, width, with_right, wrapped};
use anstyle::Style;
use calculations::{Amount, Check, CheckRow, ChecksAnswer, CountsAnswer, Moment, MomentAnswer, ReadingAnswer, Verdict};
use remedies::Planned;

/// The page.
#[must_use]
pub fn render(answer: &ChecksAnswer, planned: &Planned, full: bool, drawn: &[String]) -> String {
    let mut page = String::new();
    let right = format!("NEC {}", answer.law.edition);
    let title = format!("{} – checks", answer.job);
    with_right(&mut page, &ink(HEADLINE, &title), title.chars().count(), &right);
    rule(&mut page, QUIET);
    for by in &answer.law.changed_by {
        wrapped(&mut page, "as changed by ", by, Style::new());
    }
    let only = answer.moments.len() == 1;
    for moment in &answer.moments {
        moment_page(&mut page, moment, planned, full, only || moment.moment == Moment::After);
    }
    readings(&mut page, &answer.expected_readings);
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "What the numbers rest on")));
    for assumption in &answer.assumptions {
        wrapped(&mut page, "  · ", assumption, QUIET);
    }
    for warning in answer.law.warnings.iter().chain(&answer.law.doubts) {
        wrapped(&mut page, "  ! ", warning, Style::new());
    }
    let caution = "the authority having jurisdiction decides; the work is a licensed electrician's";
    wrapped(&mut page, "  ! ", caution, Style::new());
    if !drawn.is_empty() {
        page.push('\n');
        wrapped(&mut page, "drawn: ", &drawn.join(", "), Style::new());
    }
    page
}

fn moment_page(page: &mut String, moment: &MomentAnswer, planned: &Planned, full: bool, tables: bool) {
    let title = match moment.moment {
        Moment::Before => "As it was found",
        Moment::After => "As the plan leaves it",
    };
    page.push('\n');
    with_right(page, &ink(HEADLINE, title), title.chars().count(), &counts(moment.counts));
    let mut shown = false;
    for circuits in circuit_sets(moment) {
        let rows: Vec<&CheckRow> = moment.checks.iter().filter(|row| row.circuits == circuits).collect();
        let wrong = rows.iter().any(|row| matches!(row.verdict, Verdict::NotOk | Verdict::Advice));
        if !tables && !wrong {
            continue;
        }
        shown = true;
        page.push_str(&format!("\n{}\n", ink(HEADLINE, headline(planned, &circuits))));
        if tables {
            for check in Check::ALL {
                tightest(page, *check, &rows, full);
            }
        }
        exceptions(page, &rows, tables);
    }
    if !shown {
        page.push_str("  nothing that could be checked is out of order\n");
    }
    if !moment.without_ground.is_empty() && tables {
        let lead = "No ground, so that no fault current returns and no breaker opens";
        page.push('\n');
        wrapped(page, "", &format!("{lead}: {}", moment.without_ground.join(", ")), QUIET);
    }
}

fn counts(counts: CountsAnswer) -> String {
    format!(
        "{} ok · {} advice · {} not ok · {} not checked",
        counts.ok, counts.advice, counts.not_ok, counts.not_checked
    )
}

/// The circuits, or sets of them, that checks are of, in the order in which they first come.
fn circuit_sets(moment: &MomentAnswer) -> Vec<Vec<String>> {
    let mut sets: Vec<Vec<String>> = Vec::new();
    for row in &moment.checks {
        if !sets.contains(&row.circuits) {
            sets.push(row.circuits.clone());
        }
    }
    sets
}

fn headline(planned: &Planned, circuits: &[String]) -> String {
    let known = |id: &String| planned.facts.dwelling.circuits.iter().find(|circuit| circuit.id == *id);
    let told = circuits.iter().map(|id| match known(id).and_then(|circuit| circuit.breaker) {
        Some(breaker) => format!("{id} ({breaker})"),
        None => format!("{id} (rating unknown)"),
    });
    let told: Vec<String> = told.collect();
    match told.len() {
        0 => "On no known circuit".to_owned(),
        1 => format!("Circuit {}", told[0]),
        _ => format!("Circuits {}", told.join(" and ")),
    }
}

const fn name(check: Check) -> &'static str {
    match check {
        Check::Fill => "box fill",
        Check::Breaker => "breaker",
        Check::Ampacity => "ampacity",
        Check::GroundingConductor => "grounding wire",
        Check::FaultLoop => "fault loop",
        Check::VoltageDrop => "voltage drop",
        Check::Leakage => "leakage behind",
    }
}

/// The row of a kind with the least to spare, and how many more came out well; with `full`, all of them.
fn tightest(page: &mut String, check: Check, rows: &[&CheckRow], full: bool) {
    let of_kind = || rows.iter().filter(|row| row.check == check);
    let mut good: Vec<&&CheckRow> = of_kind().filter(|row| row.verdict == Verdict::Ok).collect();
    let total = of_kind().count();
    if total == 0 {
        return;
    }
    let margin = |row: &CheckRow| row.margin.unwrap_or(f64::INFINITY);
    good.sort_by(|one, other| margin(one).total_cmp(&margin(other)));
    let label = format!("  {:<16}", name(check));
    let count = format!("{} of {total} ok", good.len());
    let Some(first) = good.first() else {
        with_right(page, &label, label.chars().count(), &count);
        return;
    };
    let shown = if full { good.len() } else { 1 };
    for (position, row) in good.iter().take(shown).enumerate() {
        let lead = if position == 0 { label.clone() } else { " ".repeat(18) };
        let words = |amount: &Option<Amount>| amount.as_ref().map_or(String::new(), |amount| amount.words.clone());
        let left = format!("{lead}{:<11} {:<21} {}", row.subject.id, words(&row.found), words(&row.required));
        let right = if position == 0 { count.as_str() } else { "" };
        if left.chars().count() + right.chars().count() + 2 <= width() {
            with_right(page, &left, left.chars().count(), right);
        } else {
            let text = format!("{}; {}; {right}", words(&row.found), words(&row.required));
            wrapped(page, &format!("{lead}{:<11} ", row.subject.id), text.trim_end_matches("; "), Style::new());
        }
    }
    if full {
        wrapped(page, &" ".repeat(18), &format!("[{}]", cite(first)), QUIET);
    }
}

fn cite(row: &CheckRow) -> String {
    let memory = if row.source.from_memory { ", from memory" } else { "" };
    format!("{}: {}{memory}", row.source.kind, row.source.cite)
}

/// What is not as it should be, then what is not known, each said once with all it is said of.
fn exceptions(page: &mut String, rows: &[&CheckRow], with_unknown: bool) {
    let mut verdicts = vec![(Verdict::NotOk, "  ! ", ALARM), (Verdict::Advice, "  · ", DO)];
    if with_unknown {
        verdicts.push((Verdict::NotChecked, "  ? ", ASK));
    }
    for (verdict, mark, style) in verdicts {
        for check in Check::ALL {
            let mut said: Vec<(&CheckRow, Vec<&str>)> = Vec::new();
            for row in rows.iter().filter(|row| row.verdict == verdict && row.check == *check) {
                match said.iter_mut().find(|(first, _)| first.says == row.says) {
                    Some((_, subjects)) => subjects.push(&row.subject.id),
                    None => said.push((row, vec![&row.subject.id])),
                }
            }
            exception(page, said, mark, style);
        }
    }
}

/// More different things than this of one kind are told by the worst of them.
const MOST_SAID: usize = 2;

/// What is said of one kind of check that did not come out well, the worst first.
fn exception(page: &mut String, mut said: Vec<(&CheckRow, Vec<&str>)>, mark: &str, style: Style) {
    let margin = |row: &CheckRow| row.margin.unwrap_or(f64::INFINITY);
    said.sort_by(|(one, _), (other, _)| margin(one).total_cmp(&margin(other)));
    let all = if said.len() > MOST_SAID && said[0].0.margin.is_some() { 1 } else { said.len() };
    for (row, subjects) in &said[..all] {
        let what = row.find_out.as_deref().unwrap_or(&row.says);
        let mut text = format!("{} {}: {what}", name(row.check), subjects.join(", "));
        if all < said.len() {
            let others: Vec<&str> = said[all..].iter().flat_map(|(_, subjects)| subjects.iter().copied()).collect();
            text.push_str(&format!("; less, but too much, at {}", others.join(", ")));
        }
        wrapped(page, mark, &text, style);
    }
    if let Some((first, _)) = said.first().filter(|(row, _)| row.verdict != Verdict::NotChecked) {
        wrapped(page, "      ", &format!("[{}]", cite(first)), QUIET);
    }
}

/// The readings to expect, as a table.
fn readings(page: &mut String, readings: &[ReadingAnswer]) {
    if readings.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "What a meter must read afterwards, in volts")));
    let heads = ["hot–neutral", "hot–ground", "neutral–ground", "load on: h–n falls", "then N–G"];
    page.push_str(&format!("{}\n", ink(QUIET, columns("", heads.map(str::to_owned)))));
    let mut load = None;
    let mut missing: Vec<(&str, Vec<&str>)> = Vec::new();
    for reading in readings {
        let unknown = reading.heavy_load.is_none();
        if unknown {
            let what = reading.find_out.as_deref().unwrap_or("not predicted");
            match missing.iter_mut().find(|(said, _)| *said == what) {
                Some((_, boxes)) => boxes.push(&reading.box_id),
                None => missing.push((what, vec![&reading.box_id])),
            }
        }
        let Some(quiet) = &reading.no_load else { continue };
        if !unknown && load != Some(&reading.load) {
            let told = reading.load.as_deref().unwrap_or_default();
            wrapped(page, "  ", &format!("circuit {}; the load is {told}", reading.circuits.join("+")), QUIET);
            load = Some(&reading.load);
        }
        let volts = |amount: &Amount| amount.words.trim_end_matches(" V").to_owned();
        let none = || "no ground".to_owned();
        let cells = [
            volts(&quiet.hn),
            quiet.hg.as_ref().map_or_else(none, volts),
            quiet.ng.as_ref().map_or_else(none, volts),
            reading.falls_by.as_ref().map_or_else(|| "find out".to_owned(), moved),
            match &reading.heavy_load {
                None => String::new(),
                Some(loaded) => loaded.ng.as_ref().map_or_else(none, volts),
            },
        ];
        page.push_str(&format!("{}\n", columns(&reading.box_id, cells)));
    }
    for (what, boxes) in missing {
        wrapped(page, "  ? ", &format!("{} under load: {what}", boxes.join(", ")), ASK);
    }
    let phantom = "where there is no ground, anything up to the full voltage may show against the ground slot, and collapses \
                   under a low-impedance meter";
    wrapped(page, "  ", phantom, QUIET);
}

/// How far hot to neutral falls; the other leg of a multiwire set rises.
fn moved(by: &Amount) -> String {
    match (by.least, by.most) {
        (Some(least), Some(most)) if most <= 0.0 => format!("rises {:.1} to {:.1}", -most, -least),
        _ => by.words.trim_end_matches(" V").to_owned(),
    }
}

fn columns(first: &str, cells: [String; 5]) -> String {
    let [hn, hg, ng, falls, loaded] = cells;
    format!("  {first:<8} {hn:<15} {hg:<15} {ng:<15} {falls:<18} {loaded}").trim_end().to_owned()
}
