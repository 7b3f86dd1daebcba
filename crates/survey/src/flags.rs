//! Quantities on a command line, read by the same rules as those in a file.

use crate::diagnostic::Span;
use crate::notes::Notes;
use crate::row::Row;
use crate::shape::Shape;
use crate::tables::{body, circuit, device_box};
use crate::value::{Entry, Table, Value, ValueKind};
use dwelling::trade_size;
use electrical::{Amperes, Gauge, Length, Volume};

/// A distance, such as `4 ft` or `1.2 m`.
///
/// # Errors
/// What is wrong with it and what to write instead.
pub fn distance_flag(written: &str) -> Result<Length, String> {
    read(&device_box::SHAPE, "sink", written, |row, notes| row.distance(notes, "sink"))
}

/// A height above the floor, such as `16 in` or `400 mm`.
///
/// # Errors
/// What is wrong with it and what to write instead.
pub fn height_flag(written: &str) -> Result<Length, String> {
    read(&device_box::SHAPE, "height", written, |row, notes| row.height(notes, "height"))
}

/// The rating of a breaker or fuse, such as `15 A`.
///
/// # Errors
/// What is wrong with it and what to write instead.
pub fn rating_flag(written: &str) -> Result<Amperes, String> {
    read(&circuit::SHAPE, "breaker", written, |row, notes| row.rating(notes, "breaker"))
}

/// A wire size, such as `14` or `12 AWG`.
///
/// # Errors
/// What is wrong with it and what to write instead.
pub fn gauge_flag(written: &str) -> Result<Gauge, String> {
    read(&circuit::SHAPE, "gauge", written, |row, notes| row.gauge(notes, "gauge"))
}

/// The volume of a box: `12.5 in3`, `205 cm3`, or the trade size of a metal box such as `3x2x2-1/2`.
///
/// # Errors
/// What is wrong with it and what to write instead.
pub fn volume_flag(written: &str) -> Result<Volume, String> {
    match trade_size(written) {
        Some(size) => Ok(size.volume),
        None => read(&body::SHAPE, "volume", written, |row, notes| row.volume(notes, "volume")),
    }
}

fn read<T>(
    shape: &'static Shape,
    key: &str,
    written: &str,
    value_of: impl Fn(&Row<'_>, &mut Notes) -> Option<T>,
) -> Result<T, String> {
    let span = Span::new(0, written.len());
    let value = Value { span, kind: ValueKind::Text(written.to_owned()) };
    let table = Table { entries: vec![Entry { key: key.to_owned(), key_span: span, value }] };
    let mut notes = Notes::default();
    let found = value_of(&Row { shape, table: &table, span }, &mut notes);
    found.ok_or_else(|| match notes.diagnostics.into_iter().next() {
        Some(diagnostic) => match diagnostic.help {
            Some(help) => format!("{}; {help}", diagnostic.message),
            None => diagnostic.message,
        },
        None => "it must be known here: leave the flag out where it is not".to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantities_on_a_command_line_are_read_as_in_a_file() {
        assert_eq!(rating_flag("15 A"), Ok(Amperes::new(15)));
        assert_eq!(gauge_flag("14"), Ok(Gauge::AWG_14));
        assert_eq!(volume_flag("12.5 in3"), Ok(Volume::hundredths(1250)));
        assert_eq!(volume_flag("3x2x2-1/2"), Ok(Volume::hundredths(1250)));
        assert_eq!(distance_flag("5 ft 6 in"), Ok(Length::feet_and_inches(5, 6)));
    }

    #[test]
    fn a_quantity_without_its_unit_is_refused_with_what_to_write() {
        let told = rating_flag("15").unwrap_err();
        assert!(told.contains("unit"), "{told}");
    }
}
