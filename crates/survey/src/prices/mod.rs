//! A price book: a file of its own, read by the same rules as a survey.

mod tables;

pub(crate) use tables::SHAPE;

use crate::decimal::Decimal;
use crate::diagnostic::Diagnostic;
use crate::document::read_document;
use crate::mistakes::{count_out_of_range, key_missing, not_a_quantity, number_not_whole, wrong_type};
use crate::notes::Notes;
use crate::row::{Row, items_of};
use crate::shape::FieldKind;
use crate::value::{Value, ValueKind};
use estimate::{Cents, Charges, Figures, Material, Percent, PriceBook, Task, WorkCondition};

const CENTS: i128 = 100;
/// A single thing or an hour that costs more is a slip of the pen, in dollars. Common practice, no source.
const DEAREST: i64 = 10_000;

/// Reads a price book in TOML. It never fails: whatever is wrong is in the diagnostics.
///
/// The book is there where no mistake is an error.
#[must_use]
pub fn read_prices(bytes: &[u8]) -> (Option<PriceBook>, Vec<Diagnostic>) {
    read_document(bytes, &SHAPE, book_of)
}

fn book_of(row: &Row<'_>, notes: &mut Notes) -> PriceBook {
    let mut figures = Figures { hour: money(row, notes, "hour").unwrap_or_default(), ..Figures::default() };
    figures.helper_hour = money(row, notes, "helper-hour");
    if let Some(material) = table(row, notes, "material") {
        let costs = Material::ALL.iter().filter_map(|thing| Some((*thing, money(&material, notes, thing.name())?)));
        figures.material = costs.collect();
    }
    if let Some(packs) = table(row, notes, "packs") {
        figures.packs =
            Material::ALL.iter().filter_map(|thing| Some((*thing, counts(&packs, notes, thing.name())?))).collect();
    }
    if let Some(minutes) = table(row, notes, "minutes") {
        figures.minutes =
            Task::ALL.iter().filter_map(|task| Some((*task, minutes.count(notes, task.name())?))).collect();
    }
    if let Some(crew) = table(row, notes, "crew") {
        figures.charges.hours_a_day = crew.count(notes, "hours-a-day").unwrap_or(figures.charges.hours_a_day);
        figures.for_two = crew.names(notes, "tasks-for-two", Task::from_name).unwrap_or_default();
        if let (false, None, Some(helper)) =
            (figures.for_two.is_empty(), row.table.entry("helper-hour"), SHAPE.field("helper-hour"))
        {
            notes.push(key_missing::mistake(&SHAPE, helper, crew.place_of("tasks-for-two")));
        }
    }
    if let Some(conditions) = table(row, notes, "conditions") {
        let percents = WorkCondition::ALL.iter().filter_map(|one| Some((*one, conditions.count(notes, one.name())?)));
        figures.conditions = percents.collect();
    }
    if let Some(charges) = table(row, notes, "charges") {
        figures.charges = charges_of(&charges, notes, figures.charges);
    }
    PriceBook::of(figures)
}

fn charges_of(row: &Row<'_>, notes: &mut Notes, before: Charges) -> Charges {
    Charges {
        waste: percent(row, notes, "waste-percent"),
        markup: percent(row, notes, "markup-percent"),
        tax: percent(row, notes, "tax-percent"),
        trip: money(row, notes, "trip").unwrap_or_default(),
        permit: money(row, notes, "permit").unwrap_or_default(),
        contingency: percent(row, notes, "contingency-percent"),
        minimum: money(row, notes, "minimum").unwrap_or_default(),
        round_to: money(row, notes, "round-to").unwrap_or_default(),
        ..before
    }
}

fn table<'a>(row: &Row<'a>, notes: &mut Notes, key: &str) -> Option<Row<'a>> {
    row.get(key).and_then(|_| row.inner(notes, key))
}

/// Dollars as cents, rounded to the nearest.
fn money(row: &Row<'_>, notes: &mut Notes, key: &str) -> Option<Cents> {
    let (dollars, value) = number(row, notes, key)?;
    let cents = dollars.times_rounded(CENTS);
    if !(0..=i128::from(DEAREST) * CENTS).contains(&cents) {
        notes.push(count_out_of_range::mistake(key, dollars.times_rounded(1), 0, DEAREST, value.span));
        return None;
    }
    i64::try_from(cents).ok().map(Cents)
}

/// A percent, rounded to the hundredth of one; none where it is left out.
fn percent(row: &Row<'_>, notes: &mut Notes, key: &str) -> Percent {
    percent_if_any(row, notes, key).unwrap_or_default()
}

fn percent_if_any(row: &Row<'_>, notes: &mut Notes, key: &str) -> Option<Percent> {
    let (written, value) = number(row, notes, key)?;
    let FieldKind::Percent(most) = row.shape.field(key)?.kind else { return None };
    let hundredths = written.times_rounded(CENTS);
    if !(0..=i128::from(most) * CENTS).contains(&hundredths) {
        notes.push(count_out_of_range::mistake(key, written.times_rounded(1), 0, most, value.span));
        return None;
    }
    u32::try_from(hundredths).ok().map(Percent)
}

/// The number of a key with its value.
fn number<'a>(row: &Row<'a>, notes: &mut Notes, key: &str) -> Option<(Decimal, &'a Value)> {
    let (field, value) = row.get(key)?;
    Some((number_in(notes, key, &field.kind.expected(), value)?, value))
}

fn number_in(notes: &mut Notes, key: &str, expected: &str, value: &Value) -> Option<Decimal> {
    let ValueKind::Number(written) = &value.kind else {
        notes.push(wrong_type::mistake(&format!("`{key}`"), expected, value));
        return None;
    };
    let found = Decimal::parse(written);
    if found.is_none() {
        notes.push(not_a_quantity::mistake(key, written, expected, value.span));
    }
    found
}

/// A list of whole numbers within the range of its field, sorted, each once.
fn counts(row: &Row<'_>, notes: &mut Notes, key: &str) -> Option<Vec<u32>> {
    let (field, value) = row.get(key)?;
    let FieldKind::Counts(least, most) = field.kind else { return None };
    let mut found = Vec::new();
    for item in items_of(notes, field, value)? {
        let Some(decimal) = number_in(notes, key, &field.kind.expected(), item) else { continue };
        match decimal.whole() {
            Some(whole) if (i128::from(least)..=i128::from(most)).contains(&whole) => {
                found.extend(u32::try_from(whole).ok());
            }
            Some(whole) => notes.push(count_out_of_range::mistake(key, whole, least, most, item.span)),
            None => notes.push(number_not_whole::mistake(key, &decimal.shown(), item.span)),
        }
    }
    found.sort_unstable();
    found.dedup();
    Some(found)
}

#[cfg(test)]
mod tests {
    use super::tables::{CONDITIONS, MATERIAL, MINUTES, PACKS};
    use super::*;

    #[test]
    fn the_demo_book_reads_back_as_itself() {
        let (book, diagnostics) = read_prices(PriceBook::demo().to_toml().as_bytes());
        assert_eq!(diagnostics, []);
        assert_eq!(book.map(|book| book.to_toml()), Some(PriceBook::of(Figures::demo()).to_toml()));
        let again = read_prices(PriceBook::of(Figures::demo()).to_toml().as_bytes()).0;
        assert_eq!(again, Some(PriceBook::of(Figures::demo())));
    }

    #[test]
    fn every_thing_and_task_has_its_key() {
        assert!(MATERIAL.keys().eq(Material::NAMES.iter().copied()));
        assert!(PACKS.keys().eq(Material::NAMES.iter().copied()));
        assert!(MINUTES.keys().eq(Task::NAMES.iter().copied()));
        assert!(CONDITIONS.keys().eq(WorkCondition::NAMES.iter().copied()));
    }

    #[test]
    fn all_mistakes_of_a_price_book_are_told_at_once() {
        let text = "format = 1\nhour = \"95\"\n[material]\ngfcii = 24.00\ndual = -3\n[minutes]\nfit-device = 20000\n";
        let (book, diagnostics) = read_prices(text.as_bytes());
        assert_eq!(book, None);
        let codes: Vec<&str> = diagnostics.iter().map(|diagnostic| diagnostic.code).collect();
        assert_eq!(codes, ["wrong-type", "unknown-key", "count-out-of-range", "count-out-of-range"]);
    }
}
