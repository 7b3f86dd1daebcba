//! How large an equipment grounding conductor must be for the breaker or fuse ahead of it.

use crate::cited::{ByEdition, Cited, NotChecked, Reading};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023, Nec2026};
use crate::sources::{TEXT_2011, TRAINING_2026};
use crate::tables::conductor_area::circular_mils;
use electrical::{Amperes, ConductorMetal, Gauge};

/// A row of the table: a rating in amperes, and the numbers of the copper and the aluminium size for it and below.
type Row = (u32, i8, i8);

const TABLE: &[Row] = &[(15, 14, 12), (20, 12, 10), (60, 10, 8), (100, 8, 6), (200, 6, 4), (300, 4, 2), (400, 3, 1)];

/// Older printings had rows of their own for 30 and 40 A, with the same sizes.
const TABLE_WITH_30_AND_40: &[Row] = &[
    (15, 14, 12),
    (20, 12, 10),
    (30, 10, 8),
    (40, 10, 8),
    (60, 10, 8),
    (100, 8, 6),
    (200, 6, 4),
    (300, 4, 2),
    (400, 3, 1),
];

/// What could be confirmed of the rewritten section: nothing changed for circuits of 15 and 20 A.
const TABLE_TO_20: &[Row] = &[(15, 14, 12), (20, 12, 10)];

const COPY_OF_THE_TABLE: &str = "brunsengineering.com, copy of Table 250.122";

/// The rows.
pub const ROWS: ByEdition<&[Row]> = ByEdition {
    id: "grounding.conductor-size",
    readings: &[
        Reading::remembered(Nec2008, "Table 250.122", TABLE_WITH_30_AND_40),
        Reading::remembered(Nec2011, "Table 250.122", TABLE_WITH_30_AND_40),
        Reading::read(Nec2014, "Table 250.122", COPY_OF_THE_TABLE, TABLE),
        Reading::read(Nec2017, "Table 250.122", COPY_OF_THE_TABLE, TABLE),
        Reading::read(Nec2020, "Table 250.122", COPY_OF_THE_TABLE, TABLE),
        Reading::read(Nec2023, "Table 250.122", COPY_OF_THE_TABLE, TABLE),
        Reading::read(Nec2026, "Table 250.122", TRAINING_2026, TABLE_TO_20),
    ],
};

/// That an enlarged circuit enlarges its grounding conductor by the same ratio of areas.
pub const ENLARGED: ByEdition<()> = ByEdition {
    id: "grounding.conductor-size-enlarged",
    readings: &[
        Reading::remembered(Nec2008, "250.122(B)", ()),
        Reading::read(Nec2011, "250.122(B)", TEXT_2011, ()),
        Reading::remembered(Nec2014, "250.122(B)", ()),
        Reading::remembered(Nec2017, "250.122(B)", ()),
        Reading::remembered(Nec2020, "250.122(B)", ()),
        Reading::remembered(Nec2023, "250.122(B)", ()),
    ],
};

/// The least size of an equipment grounding conductor for this rating.
///
/// It need never be larger than the circuit conductors, 250.122(A): `circuit` is their size, where it is known and
/// they are of the same metal.
///
/// # Errors
/// [`NotChecked`] for a rating above the table and an edition nobody has entered.
pub fn egc_size(
    rating: Amperes,
    metal: ConductorMetal,
    circuit: Option<Gauge>,
    code: &CodeInForce,
) -> Result<Cited<Gauge>, NotChecked> {
    let table = ROWS.in_force(code)?;
    let row = table.value.iter().find(|(amperes, ..)| rating.get() <= *amperes);
    let size = row.and_then(|(_, copper, aluminium)| {
        Gauge::from_number(if metal == ConductorMetal::Copper { *copper } else { *aluminium })
    });
    let size = size.ok_or_else(|| NotChecked {
        because: format!("no size of a grounding conductor is entered for {rating} under {}", code.edition),
    })?;
    let value = circuit.map_or(size, |circuit| size.min(circuit));
    Ok(Cited { value, cite: table.cite })
}

/// An equipment grounding conductor enlarged with its circuit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EnlargedEgc {
    /// The area it must have, in circular mils, a started one counted.
    pub circular_mils: u64,
    /// The least size with that area, and never larger than the circuit conductors.
    pub size: Gauge,
}

/// The least grounding conductor of copper for a circuit whose conductors are larger than they need be.
///
/// # Formula
/// `area = area of the table's size * area installed / least area`, then the next size up.
///
/// # Errors
/// [`NotChecked`] where a table lacks the rating, a size or the edition.
pub fn enlarged_egc(
    rating: Amperes,
    least: Gauge,
    installed: Gauge,
    code: &CodeInForce,
) -> Result<Cited<EnlargedEgc>, NotChecked> {
    let table = egc_size(rating, ConductorMetal::Copper, Some(least), code)?.value;
    let area = |gauge| circular_mils(gauge, code).map(|area| area.value);
    let (table_area, least_area, installed_area) = (area(table)?, area(least)?, area(installed)?);
    let needed = (table_area * installed_area).div_ceil(least_area);
    // Compared without division, so that a tie is a tie.
    let holds = |gauge: &Gauge| area(*gauge).is_ok_and(|area| area * least_area >= table_area * installed_area);
    let size = Gauge::ALL.into_iter().find(holds).unwrap_or(installed).min(installed);
    let cite = ENLARGED.in_force(code)?.cite;
    Ok(Cited { value: EnlargedEgc { circular_mils: needed, size }, cite })
}
