//! The page of one opening: what it is owed, and every remedy.

use super::ink::{ALARM, ASK, DO, HEADLINE, QUIET, ink};
use super::lines::wrapped;
use anstyle::Style;
use remedies::{FillAnswer, OptionsAnswer, RemedyAnswer};
use rulebook::Need;

/// The page.
#[must_use]
pub fn render(answer: &OptionsAnswer) -> String {
    let mut page = String::new();
    let of = answer.box_id.as_ref().map_or("One opening".to_owned(), |id| format!("Box {id}"));
    page.push_str(&format!(
        "{}  {}\n\n",
        ink(HEADLINE, of),
        ink(QUIET, format!("NEC {}, ground: {}", answer.edition, answer.ground))
    ));
    page.push_str("A new receptacle here is owed\n");
    for (name, duty) in answer.requires.named() {
        let (mark, style) = match duty.need {
            Need::Required => ("  yes       ", Style::new()),
            Need::NotRequired => ("  no        ", QUIET),
            Need::Disputed => ("  disputed  ", ASK),
            Need::NotChecked => ("  find out  ", ASK),
        };
        let because = duty.because.join("; ");
        let cites = if duty.cites.is_empty() { String::new() } else { format!("  [{}]", duty.cites.join(", ")) };
        let because = if because.is_empty() { String::new() } else { format!(": {because}") };
        wrapped(&mut page, mark, &format!("{name}{because}{cites}"), style);
    }
    page.push_str("\nRemedies, from least to most\n");
    let mut last_count = None;
    for remedy in &answer.remedies {
        let again = last_count == Some(&remedy.fill);
        one(&mut page, remedy, again);
        last_count = if remedy.standing == "unlawful" { last_count } else { Some(&remedy.fill) };
    }
    for caution in &answer.cautions {
        wrapped(&mut page, "! ", caution, ALARM);
    }
    for disputed in &answer.basis.disputed {
        wrapped(&mut page, "? ", &format!("read in two ways, ask the authority: {disputed}"), ASK);
    }
    if !answer.basis.from_memory.is_empty() {
        let list = answer.basis.from_memory.join("; ");
        wrapped(&mut page, "  ", &format!("From memory, check with the authority: {list}"), QUIET);
    }
    page
}

fn one(page: &mut String, remedy: &RemedyAnswer, same_count_again: bool) {
    let style = match remedy.standing {
        "lawful" => DO,
        "unlawful" => QUIET,
        _ => ASK,
    };
    page.push_str(&format!(
        "\n  {}  {}\n",
        ink(style, format!("{:<9}", remedy.standing)),
        ink(style, remedy.remedy.name())
    ));
    if let Some(why_not) = &remedy.why_not {
        wrapped(page, "             ", why_not, Style::new());
    }
    if remedy.standing == "unlawful" {
        return;
    }
    if !remedy.serves_equipment {
        wrapped(page, "    but      ", "it gives no ground to what is plugged in and needs one", ASK);
    }
    for both in &remedy.disputed_use {
        wrapped(page, "    disputed ", both, ASK);
    }
    if !remedy.markings.is_empty() {
        wrapped(page, "    mark it  ", &format!("“{}”", remedy.markings.join("” and “")), Style::new());
    }
    for condition in &remedy.conditions {
        wrapped(page, "    only if  ", condition, Style::new());
    }
    if same_count_again {
        wrapped(page, "    box      ", "the same count", QUIET);
    } else {
        fill(page, &remedy.fill);
    }
    wrapped(page, "             ", &format!("[{}]", remedy.cites.join(", ")), QUIET);
}

/// The count of a box.
pub fn fill(page: &mut String, fill: &FillAnswer) {
    if let Some(missing) = &fill.not_checked {
        wrapped(page, "    box      ", &format!("not checked: {missing}"), ASK);
        return;
    }
    let (taken, volume) = (fill.taken.as_deref().unwrap_or("?"), fill.volume.as_deref().unwrap_or("?"));
    let (verdict, style) = if fill.fits == Some(true) { ("fits", Style::new()) } else { ("TOO FULL", ALARM) };
    wrapped(page, "    box      ", &format!("{verdict}: {taken} in {volume}"), style);
    for line in &fill.lines {
        wrapped(page, &format!("             {:>9}  ", line.volume), &format!("{} [{}]", line.what, line.cite), QUIET);
    }
}
