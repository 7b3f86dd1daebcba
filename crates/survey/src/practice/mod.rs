//! A practice file: the figures of common practice as a business replaces them, read by the same rules as a survey.

mod costs;
mod shares;
mod tables;
mod written;

pub(crate) use tables::SHAPE;
pub use written::{practice_as_json, practice_file};

use crate::decimal::Decimal;
use crate::diagnostic::Diagnostic;
use crate::document::read_document;
use crate::mistakes::{minutes_not_possible, not_a_quantity, share_not_possible, shares_not_one, wrong_type};
use crate::notes::Notes;
use crate::row::Row;
use crate::shape::FieldKind;
use crate::value::ValueKind;
use diagnosis::belief::{Figure, Practice};

/// A state with a smaller share could be shown by no reading, however plain.
pub(crate) const SMALLEST_SHARE: f64 = 0.000_001;
pub(crate) const LARGEST_SHARE: f64 = 0.999_999;
/// Written shares are exact to a billionth.
const ONE: i128 = 1_000_000_000;

/// Reads a practice file in TOML. It never fails: whatever is wrong is in the diagnostics.
///
/// The figures are there where no mistake is an error; what the file leaves out is as shipped.
#[must_use]
pub fn read_practice(bytes: &[u8]) -> (Option<Practice>, Vec<Diagnostic>) {
    read_document(bytes, &SHAPE, practice_of)
}

fn practice_of(row: &Row<'_>, notes: &mut Notes) -> Practice {
    let mut practice = Practice::default();
    read_table(row, notes, "", &mut practice.figures());
    practice
}

/// Reads the figures of a table and of those inside it.
fn read_table(row: &Row<'_>, notes: &mut Notes, table: &str, figures: &mut [Figure<'_>]) {
    for field in row.shape.fields {
        if let FieldKind::Table(_) = field.kind {
            let told = notes.diagnostics.len();
            let Some(inner) = row.get(field.key).and_then(|_| row.inner(notes, field.key)) else { continue };
            let name = within(table, field.key);
            read_table(&inner, notes, &name, figures);
            // A share that was misspelt or misread is told once, not again by what the others add up to.
            if notes.diagnostics.len() == told {
                hold_to_one(&inner, notes, &name, figures);
            }
        } else if let Some(figure) = figures.iter_mut().find(|figure| figure.table == table && figure.key == field.key)
            && let Some(value) = number(row, notes, field.key)
        {
            *figure.value = value;
        }
    }
}

/// The name of a table inside another.
fn within(table: &str, key: &str) -> String {
    if table.is_empty() { key.to_string() } else { format!("{table}.{key}") }
}

/// The number of a key, where it is one and within the range of its kind.
fn number(row: &Row<'_>, notes: &mut Notes, key: &str) -> Option<f64> {
    let (field, value) = row.get(key)?;
    let ValueKind::Number(written) = &value.kind else {
        notes.push(wrong_type::mistake(&format!("`{key}`"), &field.kind.expected(), value));
        return None;
    };
    let Some(decimal) = Decimal::parse(written) else {
        notes.push(not_a_quantity::mistake(key, written, &field.kind.expected(), value.span));
        return None;
    };
    let number = decimal.as_float();
    let mistake = match field.kind {
        FieldKind::Minutes(least, most) if !(least..=most).contains(&number) => {
            minutes_not_possible::mistake(key, written, least, most, value.span)
        }
        FieldKind::Share | FieldKind::Chance if !(SMALLEST_SHARE..=LARGEST_SHARE).contains(&number) => {
            share_not_possible::mistake(key, decimal, written, value.span)
        }
        _ => return Some(number),
    };
    notes.push(mistake);
    None
}

/// Tells where the shares of a table do not add up to one.
fn hold_to_one(row: &Row<'_>, notes: &mut Notes, table: &str, figures: &[Figure<'_>]) {
    let is_share = |key: &str| row.shape.field(key).is_some_and(|field| matches!(field.kind, FieldKind::Share));
    let of_table = figures.iter().filter(|figure| figure.table == table && is_share(figure.key));
    let shares: Vec<(&str, i128)> = of_table.map(|figure| (figure.key, billionths(*figure.value))).collect();
    let total: i128 = shares.iter().map(|(_, share)| share).sum();
    if shares.is_empty() || total == ONE {
        return;
    }
    let left_out = shares.iter().filter(|(key, _)| row.get(key).is_none());
    let left_out: Vec<(&str, Decimal)> = left_out.map(|(key, share)| (*key, Decimal::billionths(*share))).collect();
    notes.push(shares_not_one::mistake(row.shape.title, Decimal::billionths(total), &left_out, row.span));
}

fn billionths(share: f64) -> i128 {
    (share * ONE as f64).round() as i128
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::Shape;

    /// Every key of the shapes that holds a figure, with its table and its example.
    fn keys(shape: &'static Shape, table: &str, found: &mut Vec<(String, &'static str, &'static str)>) {
        for field in shape.fields {
            match field.kind {
                FieldKind::Table(inner) => keys(inner, &within(table, field.key), found),
                FieldKind::Format => {}
                _ => found.push((table.to_string(), field.key, field.example)),
            }
        }
    }

    #[test]
    fn every_figure_has_its_key_and_the_shipped_one_is_its_example() {
        let mut found = Vec::new();
        keys(&SHAPE, "", &mut found);
        let mut shipped = Practice::default();
        let figures = shipped.figures();
        let expected: Vec<(String, &str, String)> =
            figures.iter().map(|figure| (figure.table.to_string(), figure.key, figure.value.to_string())).collect();
        let found: Vec<(String, &str, String)> =
            found.into_iter().map(|(table, key, example)| (table, key, example.to_string())).collect();
        assert_eq!(found, expected);
    }

    #[test]
    fn the_title_of_every_table_is_how_it_is_written() {
        fn hold(shape: &'static Shape, table: &str) {
            for field in shape.fields {
                if let FieldKind::Table(inner) = field.kind {
                    let name = within(table, field.key);
                    assert_eq!(inner.title, format!("[{name}]"));
                    hold(inner, &name);
                }
            }
        }
        hold(&SHAPE, "");
    }
}
