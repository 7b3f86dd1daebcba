//! The kinds of quantity a field can hold, and reading a value as one of them.

use crate::decimal::Decimal;
use crate::measure::{Part, Unmeasured, measure};
use crate::mistakes::{not_a_quantity, number_without_unit, unknown_unit, wrong_type, wrong_unit};
use crate::notes::Notes;
use crate::unit::{BY_RATIO, Dimension, names_of};
use crate::value::{Value, ValueKind};

/// A kind of quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Quantity {
    /// The length of a run or route, above zero.
    Length,
    /// A height above the floor.
    Height,
    /// A distance to something, zero allowed.
    Distance,
    /// The volume of a box.
    Volume,
    /// The rating of a breaker or fuse.
    Rating,
    /// The current of a fault.
    FaultCurrent,
    /// The current of a load.
    LoadCurrent,
    /// A voltage; a number alone is volts.
    Volts,
    /// An impedance; a number alone is ohms.
    Ohms,
    /// A time of work; a number alone is minutes.
    Minutes,
}

/// Published: the international inch is exactly 25.4 mm (NIST SP 811), so a cubic inch is 16.387064 cm³.
const CUBIC_CENTIMETRES: (i128, i128) = (10_000 * 1_000_000, 16_387_064);

impl Quantity {
    pub(crate) const fn dimension(self) -> Dimension {
        match self {
            Self::Length | Self::Height | Self::Distance => Dimension::Length,
            Self::Volume => Dimension::Volume,
            Self::Rating | Self::FaultCurrent | Self::LoadCurrent => Dimension::Current,
            Self::Volts => Dimension::Voltage,
            Self::Ohms => Dimension::Resistance,
            Self::Minutes => Dimension::Time,
        }
    }

    /// Units to offer where one is missing, the first the commonest.
    pub(crate) const fn offered(self) -> &'static [&'static str] {
        match self {
            Self::Length | Self::Distance => &["ft", "m"],
            Self::Height => &["in", "mm"],
            Self::Volume => &["in3", "cm3"],
            Self::Rating | Self::FaultCurrent | Self::LoadCurrent => &["A"],
            Self::Volts => &["V", "mV"],
            Self::Ohms => &["ohm"],
            Self::Minutes => &["min", "h"],
        }
    }

    /// What must stand there, with an example.
    pub(crate) const fn expected(self) -> &'static str {
        match self {
            Self::Length => "a length with its unit, such as `\"14 ft\"` or `\"4.2 m\"`",
            Self::Height => "a height with its unit, such as `\"16 in\"` or `\"400 mm\"`",
            Self::Distance => "a distance with its unit, such as `\"4 ft\"` or `\"1.2 m\"`",
            Self::Volume => "a volume with its unit, such as `\"12.5 in3\"` or `\"205 cm3\"`",
            Self::Rating => "a rating with its unit, such as `\"15 A\"`",
            Self::FaultCurrent => "a current with its unit, such as `\"1500 A\"`",
            Self::LoadCurrent => "a current with its unit, such as `\"12.5 A\"`",
            Self::Volts => "volts, such as `120` or `\"118.5 V\"`",
            Self::Ohms => "ohms, such as `0.8` or `\"0.8 ohm\"`",
            Self::Minutes => "minutes, such as `90` or `\"1.5 h\"`",
        }
    }

    /// How many base units a number alone is; nothing where a unit must stand beside it.
    const fn bare_factor(self) -> Option<i128> {
        match self {
            Self::Volts | Self::Ohms => Some(1_000),
            Self::Minutes => Some(60),
            _ => None,
        }
    }

    /// Whether a number alone will do.
    pub(crate) const fn takes_bare_numbers(self) -> bool {
        self.bare_factor().is_some()
    }

    /// The value in base units, or a mistake.
    pub(crate) fn read(self, notes: &mut Notes, key: &str, value: &Value) -> Option<i128> {
        let mistake = match &value.kind {
            ValueKind::Number(number) => match (Decimal::parse(number), self.bare_factor()) {
                (Some(number), Some(factor)) => return Some(number.times_rounded(factor)),
                (Some(_), None) => number_without_unit::mistake(key, number, self, value.span),
                (None, _) => not_a_quantity::mistake(key, number, self.expected(), value.span),
            },
            ValueKind::Text(written) => match measure(written) {
                Ok(parts) => match self.sum(&parts) {
                    Ok(sum) => return Some(sum),
                    Err(Misfit::NoUnit) => number_without_unit::mistake(key, written.trim(), self, value.span),
                    Err(Misfit::Other(part)) => {
                        wrong_unit::mistake(key, part, self.dimension(), self.expected(), value.span)
                    }
                },
                Err(Unmeasured::NoNumber) => not_a_quantity::mistake(key, written, self.expected(), value.span),
                Err(Unmeasured::UnknownUnit(name)) => {
                    let nearest = notes.nearest(&name, names_of(self.dimension()));
                    unknown_unit::mistake(key, &name, nearest, self.expected(), value.span)
                }
            },
            _ => wrong_type::mistake(&format!("`{key}`"), self.expected(), value),
        };
        notes.push(mistake);
        None
    }

    fn sum(self, parts: &[Part]) -> Result<i128, Misfit> {
        // Only lengths and times are written in two units at once.
        let several = matches!(self.dimension(), Dimension::Length | Dimension::Time);
        let mut sum: i128 = 0;
        let negative = parts.first().is_some_and(|part| part.number.is_negative());
        for (at, part) in parts.iter().enumerate() {
            let base = match part.unit {
                Some(unit) if unit.dimension != self.dimension() => return Err(Misfit::Other(unit.dimension)),
                Some(unit) if unit.factor == BY_RATIO => cubic_centimetres(part.number),
                Some(unit) => part.number.times_rounded(unit.factor),
                None => match self.bare_factor() {
                    Some(factor) if parts.len() == 1 => part.number.times_rounded(factor),
                    _ => return Err(Misfit::NoUnit),
                },
            };
            if at > 0 && !several {
                return Err(Misfit::NoUnit);
            }
            // `-5 ft 6 in` is five and a half feet below.
            sum = sum.saturating_add(if negative && at > 0 { -base } else { base });
        }
        Ok(sum)
    }
}

/// Why a measure is not of the kind asked for.
enum Misfit {
    NoUnit,
    Other(Dimension),
}

/// Ten-thousandths of a cubic inch in a number of cubic centimetres: the table's own twin where it prints one, else rounded down.
fn cubic_centimetres(number: Decimal) -> i128 {
    let printed = number.whole().and_then(|whole| u32::try_from(whole).ok()).and_then(dwelling::volume_printed_as);
    match printed {
        Some(volume) => i128::from(volume.as_ten_thousandths()),
        None => number.times_ratio_down(CUBIC_CENTIMETRES.0, CUBIC_CENTIMETRES.1),
    }
}
