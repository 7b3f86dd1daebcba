//! The estimate as a page: by counter and task, or piece by piece, and what the owner pays.

use super::ink::{ASK, HEADLINE, QUIET, ink};
use super::lines::{rule, with_right, wrapped};
use super::words::money;
use anstyle::Style;
use estimate::Counter;
use remedies::{EstimateAnswer, LineAnswer, LineOf, TakeoffAnswer};

/// The page.
#[must_use]
pub fn render(answer: &EstimateAnswer, by_piece: bool) -> String {
    let mut page = String::new();
    with_right(&mut page, &ink(HEADLINE, &answer.job), answer.job.chars().count(), "Estimate");
    rule(&mut page, QUIET);
    if answer.demo_prices {
        page.push_str(&format!(
            "{}\n",
            ink(ASK, "Prices are invented demo figures: use your own (`thirdwire prices`).")
        ));
    }
    if by_piece {
        pieces(&mut page, answer);
    } else {
        material(&mut page, answer);
        labour(&mut page, answer);
    }
    owner(&mut page, answer);
    for note in &answer.notes {
        wrapped(&mut page, "  - ", note, QUIET);
    }
    page
}

fn pieces(page: &mut String, answer: &EstimateAnswer) {
    for piece in &answer.pieces {
        page.push('\n');
        let room = piece.room.as_ref().map_or(String::new(), |room| format!(", {room}"));
        let left = format!("{} {}{room}", piece.at, piece.id);
        with_right(page, &ink(HEADLINE, &left), left.chars().count(), &money(piece.price.total_cents));
        wrapped(page, "  ", &piece.says, QUIET);
        for line in &piece.lines {
            let (left, right) = line_in_words(line);
            with_right(page, &left, left.chars().count(), &right);
        }
    }
}

fn line_in_words(line: &LineAnswer) -> (String, String) {
    let count = match line.of {
        LineOf::Feet => format!("{} ft", line.quantity),
        LineOf::Pieces | LineOf::Work => line.quantity.to_string(),
    };
    let condition = line.condition.map_or(String::new(), |condition| format!(" ({condition})"));
    let left = format!("  {count:>7}  {}{condition}", line.line);
    (left, format!("at {:>8}   {:>10}", money(line.unit_cents), money(line.cents)))
}

fn material(page: &mut String, answer: &EstimateAnswer) {
    headline(page, "Material", "charged");
    for counter in Counter::ALL {
        let here: Vec<&TakeoffAnswer> = answer.material.iter().filter(|thing| thing.counter == *counter).collect();
        if !here.is_empty() {
            page.push_str(&format!("{}\n", counter.title()));
        }
        for thing in here {
            let unit = if thing.of == LineOf::Feet { " ft" } else { "" };
            let left = format!("  {:>4}{unit:3}  {}{}", thing.measured, thing.line, buy(thing));
            let right = format!("at {:>8}   {:>10}", money(thing.unit_cents), money(thing.cents));
            with_right(page, &left, left.chars().count(), &right);
        }
    }
    sum(page, "Material together", answer.price.material_cents);
}

/// What is bought, where that is more than what is charged.
fn buy(thing: &TakeoffAnswer) -> String {
    let packs = thing.packs.iter().filter(|pack| pack.size > 1 || thing.of == LineOf::Feet);
    let packs: Vec<String> = packs.map(|pack| format!("{} × {}", pack.count, pack.size)).collect();
    match (packs.is_empty(), thing.needed > u64::from(thing.measured)) {
        (false, _) => format!("   buy {}", packs.join(" + ")),
        (true, true) => format!("   buy {}", thing.bought),
        (true, false) => String::new(),
    }
}

fn labour(page: &mut String, answer: &EstimateAnswer) {
    headline(page, "Labour", "charged");
    for work in &answer.labour {
        let condition = work.condition.map_or(String::new(), |condition| format!(" ({condition})"));
        let two = if work.for_two { ", two" } else { "" };
        let left = format!("  {:>4}     {}{condition}{two}, {}", work.times, work.line, hours(work.minutes));
        let right = format!("at {:>8}   {:>10}", money(work.unit_cents), money(work.cents));
        with_right(page, &left, left.chars().count(), &right);
    }
    sum(page, &format!("Labour together, {}", hours(answer.price.minutes)), answer.price.labour_cents);
}

fn hours(minutes: u32) -> String {
    format!("{} h {:02} min", minutes / 60, minutes % 60)
}

fn owner(page: &mut String, answer: &EstimateAnswer) {
    headline(page, "To the owner", "");
    let owner = &answer.owner;
    let days = if owner.days == 1 { "1 working day".to_owned() } else { format!("{} working days", owner.days) };
    let parts = [
        ("material and labour".to_owned(), owner.work_cents),
        (format!("trips, {days}"), owner.trips_cents),
        ("contingency".to_owned(), owner.contingency_cents),
        ("permit".to_owned(), owner.permit_cents),
        ("to the minimum charge".to_owned(), owner.to_minimum_cents),
        ("rounded up".to_owned(), owner.rounding_cents),
    ];
    for (part, cents) in parts.iter().filter(|(_, cents)| *cents > 0) {
        let left = format!("  {part}");
        with_right(page, &left, left.chars().count(), &money(*cents));
    }
    sum(page, "Together", owner.total_cents);
}

fn headline(page: &mut String, words: &str, right: &str) {
    page.push('\n');
    with_right(page, &ink(HEADLINE, words), words.chars().count(), right);
}

fn sum(page: &mut String, words: &str, cents: i64) {
    with_right(page, &ink(Style::new().bold(), words), words.chars().count(), &money(cents));
}
