//! The largest breaker that small conductors may stand behind.

use crate::cited::{ByEdition, Cited, NotChecked, Reading};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::sources::TEXT_2011;
use electrical::{Amperes, ConductorMetal, Gauge};

/// A row: a size, then the largest rating in amperes for copper and for aluminium, where one is entered.
type Row = (Gauge, Option<u32>, Option<u32>);

const TABLE: &[Row] =
    &[(Gauge::AWG_14, Some(15), None), (Gauge::AWG_12, Some(20), Some(15)), (Gauge::AWG_10, Some(30), Some(25))];

/// The largest ratings by size.
pub const LARGEST_BREAKER: ByEdition<&[Row]> = ByEdition {
    id: "circuits.largest-breaker",
    readings: &[
        Reading::remembered(Nec2008, "240.4(D)", TABLE),
        Reading::read(Nec2011, "240.4(D)", TEXT_2011, TABLE),
        Reading::unchanged_since_2011(Nec2014, "240.4(D)", TABLE),
        Reading::unchanged_since_2011(Nec2017, "240.4(D)", TABLE),
        Reading::unchanged_since_2011(Nec2020, "240.4(D)", TABLE),
        Reading::unchanged_since_2011(Nec2023, "240.4(D)", TABLE),
    ],
};

/// The largest breaker for conductors of this size and metal; nothing where the rule for small conductors does not reach.
///
/// # Errors
/// [`NotChecked`] for an edition nobody has entered.
pub fn largest_breaker(
    gauge: Gauge,
    metal: ConductorMetal,
    code: &CodeInForce,
) -> Result<Option<Cited<Amperes>>, NotChecked> {
    let table = LARGEST_BREAKER.in_force(code)?;
    let row = table.value.iter().find(|(size, ..)| *size == gauge);
    let amperes = row.and_then(|(_, copper, other)| if metal == ConductorMetal::Copper { *copper } else { *other });
    Ok(amperes.map(|amperes| Cited { value: Amperes::new(amperes), cite: table.cite }))
}

/// Where the breaker is too large for the conductors behind it: the largest one lawful for them.
///
/// # Errors
/// [`NotChecked`] for an edition nobody has entered.
pub fn breaker_too_large(
    breaker: Amperes,
    gauge: Gauge,
    metal: ConductorMetal,
    code: &CodeInForce,
) -> Result<Option<Cited<Amperes>>, NotChecked> {
    Ok(largest_breaker(gauge, metal, code)?.filter(|largest| breaker > largest.value))
}
