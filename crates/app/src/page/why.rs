//! The page of reasons for one opening: made to be read from top to bottom by an inspector.

use super::findings;
use super::ink::{ALARM, ASK, DO, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use super::next_best;
use super::options::fill;
use super::words::order;
use anstyle::Style;
use remedies::{LawAnswer, RuleSaid, Saying, WhyAnswer};
use rulebook::Remedy;

/// The page.
#[must_use]
pub fn render(answer: &WhyAnswer, full: bool) -> String {
    let mut page = String::new();
    page.push_str(&format!("{}\n", ink(HEADLINE, format!("Why box {} gets what it gets", answer.box_id))));
    law(&mut page, &answer.law);
    heading(&mut page, "1. What was read and seen");
    for reading in &answer.readings {
        wrapped(&mut page, "  ", reading, Style::new());
    }
    if answer.readings.is_empty() {
        page.push_str("  nothing\n");
    }
    heading(&mut page, "2. What follows from it");
    wrapped(&mut page, "  ground: ", answer.ground.name(), Style::new());
    for because in &answer.ground_because {
        wrapped(&mut page, "    since ", because, QUIET);
    }
    for finding in &answer.findings {
        findings::one(&mut page, finding, true);
    }
    heading(&mut page, "3. What the rules say");
    for rule in &answer.rules {
        rule_said(&mut page, rule, answer.plan.remedy, full);
    }
    heading(&mut page, "4. The remedies");
    for remedy in &answer.remedies {
        let why = remedy.why_not.as_ref().map_or(String::new(), |why| format!(": {why}"));
        wrapped(&mut page, &format!("  {:<12} ", remedy.standing), &format!("{}{why}", remedy.remedy), Style::new());
    }
    heading(&mut page, "5. What is done");
    wrapped(&mut page, "  ", &order(&answer.plan), DO);
    wrapped(&mut page, "  ", &answer.plan.why, Style::new());
    if !answer.plan.markings.is_empty() {
        wrapped(&mut page, "  mark it ", &format!("“{}”", answer.plan.markings.join("” and “")), Style::new());
    }
    for condition in &answer.plan.conditions {
        wrapped(&mut page, "  only if ", condition, Style::new());
    }
    for shortfall in &answer.plan.shortfalls {
        wrapped(&mut page, "  ! ", shortfall, ALARM);
    }
    for question in &answer.plan.open_questions {
        wrapped(&mut page, "  ? ", question, ASK);
    }
    if let Some(count) = &answer.plan.fill {
        fill(&mut page, count);
    }
    if let Some(next) = &answer.next_best {
        heading(&mut page, "6. What else could be done");
        next_best::lines(&mut page, "  ", next, full);
    }
    page
}

fn heading(page: &mut String, text: &str) {
    page.push_str(&format!("\n{}\n", ink(HEADLINE, text)));
}

fn law(page: &mut String, law: &LawAnswer) {
    let place = law.place.as_ref().map_or(String::new(), |place| format!("{place}, "));
    let day = law.permit_date.as_ref().map_or(String::new(), |day| format!(", permit of {day}"));
    wrapped(page, "", &format!("{place}NEC {}{day}", law.edition), QUIET);
    for by in &law.changed_by {
        wrapped(page, "as changed by ", by, Style::new());
    }
    for doubt in &law.doubts {
        wrapped(page, "? ", doubt, ASK);
    }
    for warning in &law.warnings {
        wrapped(page, "! ", warning, QUIET);
    }
}

/// What a rule says: without `full` only of duties, of the remedy that was chosen, and of what is barred or disputed.
fn rule_said(page: &mut String, rule: &RuleSaid, chosen: Option<Remedy>, full: bool) {
    let matters = |saying: &&Saying| {
        let spoken_of = saying.remedy.is_none() || saying.remedy == chosen;
        full || spoken_of || matches!(saying.standing, Some("unlawful" | "disputed" | "not-checked"))
    };
    if !rule.says.iter().any(|saying| matters(&saying)) && rule.not_checked.is_none() {
        return;
    }
    page.push_str(&format!("  {}  {}\n", ink(HEADLINE, rule.rule), ink(QUIET, rule.title)));
    for saying in rule.says.iter().filter(matters) {
        let about = match (saying.duty, saying.need, saying.remedy, saying.standing) {
            (Some(duty), Some(need), ..) => format!("{duty} {need}: "),
            (.., Some(remedy), Some(standing)) => format!("{remedy} {standing}: "),
            (.., Some(remedy), None) => format!("{remedy} only if: "),
            _ => "caution: ".to_owned(),
        };
        // That a remedy is lawful needs no second sentence, only its sections.
        let text = match &saying.text {
            text if saying.standing == Some("lawful") => {
                text.rsplit_once(" (").map_or("", |(_, sections)| sections.strip_suffix(')').unwrap_or(sections))
            }
            text => text,
        };
        wrapped(page, "      ", format!("{about}{text}").trim_end_matches(": "), Style::new());
        for by in &saying.changed_by {
            wrapped(page, "        changed by ", by, Style::new());
        }
    }
    if let Some(missing) = &rule.not_checked {
        wrapped(page, "      not checked: ", missing, ASK);
    }
    for value in rule.values.iter().filter(|_| full) {
        let section = value.section.unwrap_or("no section");
        let words = value.in_words.as_ref().map_or(String::new(), |words| format!(" = {words}"));
        wrapped(page, "        ", &format!("{section}{words} ({})", value.known), QUIET);
    }
}
