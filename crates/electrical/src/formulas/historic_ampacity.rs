//! What old tables let old conductors carry.

use crate::{Amperes, Gauge};

/// A table of its time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HistoricTable {
    /// Rubber-covered conductors, 1897 to 1911.
    RubberFrom1897To1911,
    /// Other insulations, 1897 to 1911.
    OtherFrom1897To1911,
    /// Single conductors in free air, 1953, as knob-and-tube wiring was run.
    FreeAir1953,
}

/// What a table of its time let a copper conductor carry. `None` for a size for which no text was read. It tells what a
/// survey may meet, never what is allowed today.
///
/// # Formula
/// Rows of the tables, 14, 12 and 10 AWG.
///
/// # Source
/// A history of the small-conductor rule, trade forum, thread 68337 and
/// trade forum, thread 47455: one informal source each.
///
/// # Range
/// The sizes named; copper.
///
/// # Example
/// ```
/// use electrical::{Amperes, Gauge, formulas::historic_ampacity::{HistoricTable, historic_ampacity}};
/// let found = historic_ampacity(HistoricTable::RubberFrom1897To1911, Gauge::AWG_14);
/// assert_eq!(found, Some(Amperes::new(12)));
/// ```
#[must_use]
pub fn historic_ampacity(table: HistoricTable, gauge: Gauge) -> Option<Amperes> {
    let amperes = match (table, gauge.number()) {
        (HistoricTable::RubberFrom1897To1911, 14) => 12,
        (HistoricTable::RubberFrom1897To1911, 12) => 17,
        (HistoricTable::RubberFrom1897To1911, 10) => 24,
        (HistoricTable::OtherFrom1897To1911, 14) => 16,
        (HistoricTable::OtherFrom1897To1911, 12) => 23,
        (HistoricTable::OtherFrom1897To1911, 10) => 32,
        (HistoricTable::FreeAir1953, 14) => 20,
        _ => return None,
    };
    Some(Amperes::new(amperes))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(table: HistoricTable) -> [Option<u32>; 3] {
        [14, 12, 10].map(|number| historic_ampacity(table, Gauge::from_number(number).unwrap()).map(Amperes::get))
    }

    /// Published: trade forum, thread 68337: rubber 12, 17, 24 A; others 16, 23, 32.
    #[test]
    fn the_tables_of_1897_to_1911() {
        assert_eq!(found(HistoricTable::RubberFrom1897To1911), [Some(12), Some(17), Some(24)]);
        assert_eq!(found(HistoricTable::OtherFrom1897To1911), [Some(16), Some(23), Some(32)]);
    }

    /// Published: trade forum, thread 47455: 20 A for 14 AWG in free air, 1953.
    #[test]
    fn a_size_nobody_has_read_has_no_answer() {
        assert_eq!(found(HistoricTable::FreeAir1953), [Some(20), None, None]);
    }
}
