//! The estimate as a page: by counter and task, or piece by piece, and what the owner pays.

use super::dangers;
use super::ink::{ASK, HEADLINE, QUIET, ink};
use super::lines::{rule, width, with_right, wrapped};
use super::words::money;
use anstyle::Style;
use estimate::Counter;
use remedies::{EstimateAnswer, LineAnswer, LineOf, PackAnswer, TakeoffAnswer};

/// The page.
#[must_use]
pub fn render(answer: &EstimateAnswer, by_piece: bool) -> String {
    let mut page = String::new();
    let title = answer.offer.map_or("Estimate".to_owned(), |number| format!("Estimate of offer {number}"));
    with_right(&mut page, &ink(HEADLINE, &answer.job), answer.job.chars().count(), &title);
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
        dangers::of_estimate(&mut page, answer);
    }
    owner(&mut page, answer);
    if by_piece {
        dangers::not_priced(&mut page, &answer.not_priced);
    }
    for note in &answer.notes {
        wrapped(&mut page, "  - ", note, QUIET);
    }
    page
}

fn pieces(page: &mut String, answer: &EstimateAnswer) {
    for piece in &answer.pieces {
        page.push('\n');
        let room = piece.room.as_ref().map_or(String::new(), |room| format!(", {room}"));
        let allowance = if piece.allowance { ", allowance" } else { "" };
        let left = format!("{} {}{room}{allowance}", piece.at, piece.id);
        with_right(page, &ink(HEADLINE, &left), left.chars().count(), &money(piece.price.total_cents));
        wrapped(page, "  ", &piece.says, QUIET);
        for line in &piece.lines {
            let (count, words, right) = line_in_words(answer, line);
            row(page, &count, &words, &right);
        }
    }
}

/// A line of figures: how many, of what, at what; words that are long go on below.
fn row(page: &mut String, count: &str, words: &str, right: &str) {
    let lead = format!("  {count:<9}");
    let room = width().saturating_sub(lead.chars().count() + right.chars().count() + 2).max(20);
    let options = textwrap::Options::new(room).word_splitter(textwrap::WordSplitter::NoHyphenation);
    for (position, line) in textwrap::wrap(words, options).iter().enumerate() {
        if position == 0 {
            let left = format!("{lead}{line}");
            with_right(page, &left, left.chars().count(), right);
        } else {
            page.push_str(&format!("{}{line}\n", " ".repeat(lead.chars().count())));
        }
    }
}

/// A sentence of the price book as a word in a list, its feet told beside it.
fn plain(says: &str) -> &str {
    says.trim().trim_start_matches("A foot of ").trim_end_matches('.')
}

/// What a line of a piece is, by its name in the price book: whatever a piece has, the whole has.
fn said_of<'a>(answer: &'a EstimateAnswer, name: &'a str) -> &'a str {
    let things = answer.material.iter().map(|thing| (thing.line, thing.says));
    let works = answer.labour.iter().map(|work| (work.line, work.says));
    things.chain(works).find(|(line, _)| *line == name).map_or(name, |(_, says)| plain(says))
}

fn line_in_words(answer: &EstimateAnswer, line: &LineAnswer) -> (String, String, String) {
    let count = match line.of {
        LineOf::Feet => format!("{} ft", line.quantity),
        LineOf::Pieces | LineOf::Work => line.quantity.to_string(),
    };
    let condition = line.condition.map_or(String::new(), |condition| format!(" ({condition})"));
    let right = format!("at {:>8}   {:>10}", money(line.unit_cents), money(line.cents));
    (format!("{count:>4}"), format!("{}{condition}", said_of(answer, line.line)), right)
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
            let right = format!("at {:>8}   {:>10}", money(thing.unit_cents), money(thing.cents));
            let words = format!("{}{}", plain(thing.says), buy(thing));
            row(page, &format!("{:>4}{unit}", thing.measured), &words, &right);
        }
    }
    sum(page, "Material together", answer.price.material_cents);
}

/// What is bought, where that is more than what is charged.
fn buy(thing: &TakeoffAnswer) -> String {
    let is_packed = thing.of == LineOf::Feet || thing.packs.iter().any(|pack| pack.size > 1);
    let pack = |pack: &PackAnswer| match pack.size {
        1 => format!("{} single", pack.count),
        size => format!("{} × {size}", pack.count),
    };
    let packs: Vec<String> = thing.packs.iter().filter(|_| is_packed).map(pack).collect();
    match (packs.is_empty(), thing.needed > u64::from(thing.measured)) {
        (false, _) => format!(": buy {}", packs.join(" + ")),
        (true, true) => format!(": buy {}", thing.bought),
        (true, false) => String::new(),
    }
}

fn labour(page: &mut String, answer: &EstimateAnswer) {
    headline(page, "Labour", "charged");
    for work in &answer.labour {
        let condition = work.condition.map_or(String::new(), |condition| format!(" ({condition})"));
        let two = if work.for_two { ", two" } else { "" };
        let words = format!("{}{condition}{two}: {}", plain(work.says), hours(work.minutes));
        let right = format!("at {:>8}   {:>10}", money(work.unit_cents), money(work.cents));
        row(page, &format!("{:>4}", work.times), &words, &right);
    }
    sum(page, &format!("Labour together, {}", hours(answer.price.minutes)), answer.price.labour_cents);
}

/// A time that is not torn at the end of a line.
fn hours(minutes: u32) -> String {
    match (minutes / 60, minutes % 60) {
        (0, minutes) => format!("{minutes}\u{a0}min"),
        (hours, minutes) => format!("{hours}\u{a0}h\u{a0}{minutes:02}\u{a0}min"),
    }
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
