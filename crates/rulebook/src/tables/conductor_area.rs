//! The areas of conductors in circular mils, which decide how an enlarged circuit enlarges its grounding conductor.

use crate::cited::{ByEdition, Cited, NotChecked, Reading};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use electrical::Gauge;

/// A row of the table: the number of the size in the series, and its area in circular mils.
type Row = (i8, u64);

const ROWS: &[Row] = &[
    (18, 1_620),
    (16, 2_580),
    (14, 4_110),
    (12, 6_530),
    (10, 10_380),
    (8, 16_510),
    (6, 26_240),
    (4, 41_740),
    (3, 52_620),
    (2, 66_360),
    (1, 83_690),
    (0, 105_600),
    (-1, 133_100),
    (-2, 167_800),
    (-3, 211_600),
];

/// The areas by size. Sources: the ratios worked at ecmag.com (CQD Spotlight) and mepanet.com use these rows.
pub const AREAS: ByEdition<&[Row]> = ByEdition {
    id: "conductors.areas",
    readings: &[
        Reading::remembered(Nec2008, "Chapter 9, Table 8", ROWS),
        Reading::remembered(Nec2011, "Chapter 9, Table 8", ROWS),
        Reading::remembered(Nec2014, "Chapter 9, Table 8", ROWS),
        Reading::remembered(Nec2017, "Chapter 9, Table 8", ROWS),
        Reading::remembered(Nec2020, "Chapter 9, Table 8", ROWS),
        Reading::remembered(Nec2023, "Chapter 9, Table 8", ROWS),
    ],
};

/// The area of this size in circular mils.
///
/// # Errors
/// [`NotChecked`] for a size outside the table and an edition nobody has entered.
pub fn circular_mils(gauge: Gauge, code: &CodeInForce) -> Result<Cited<u64>, NotChecked> {
    let table = AREAS.in_force(code)?;
    let row = table.value.iter().find(|(number, _)| *number == gauge.number());
    let (_, area) = row.ok_or_else(|| NotChecked { because: format!("the table of areas has no row for {gauge}") })?;
    Ok(Cited { value: *area, cite: table.cite })
}
