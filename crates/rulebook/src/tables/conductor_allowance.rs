//! The volume that one conductor of each size takes in a box.

use crate::cited::{ByEdition, Cited, NotChecked, Reading};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::sources::TEXT_2011;
use electrical::{Gauge, Volume};

/// A row of the table: a size and its volume.
type Row = (Gauge, Volume);

const ROWS: &[Row] = &[
    (Gauge::AWG_18, Volume::hundredths(150)),
    (Gauge::AWG_16, Volume::hundredths(175)),
    (Gauge::AWG_14, Volume::hundredths(200)),
    (Gauge::AWG_12, Volume::hundredths(225)),
    (Gauge::AWG_10, Volume::hundredths(250)),
    (Gauge::AWG_8, Volume::hundredths(300)),
    (Gauge::AWG_6, Volume::hundredths(500)),
];

/// The allowances by size.
pub const ALLOWANCES: ByEdition<&[Row]> = ByEdition {
    id: "boxes.conductor-allowances",
    readings: &[
        Reading::remembered(Nec2008, "Table 314.16(B)", ROWS),
        Reading::read(Nec2011, "Table 314.16(B)", TEXT_2011, ROWS),
        Reading::unchanged_since_2011(Nec2014, "Table 314.16(B)", ROWS),
        Reading::unchanged_since_2011(Nec2017, "Table 314.16(B)", ROWS),
        Reading::unchanged_since_2011(Nec2020, "Table 314.16(B)", ROWS),
        Reading::read(Nec2023, "Table 314.16(B)(1)", "electricallicenserenewal.com, NEC content 1471", ROWS),
    ],
};

/// The volume one conductor of this size takes.
///
/// # Errors
/// [`NotChecked`] for a size outside the table and an edition nobody has entered.
pub fn allowance(gauge: Gauge, code: &CodeInForce) -> Result<Cited<Volume>, NotChecked> {
    let table = ALLOWANCES.in_force(code)?;
    let row = table.value.iter().find(|(size, _)| *size == gauge);
    let (_, volume) =
        row.ok_or_else(|| NotChecked { because: format!("the table of allowances has no row for {gauge}") })?;
    Ok(Cited { value: *volume, cite: table.cite })
}
