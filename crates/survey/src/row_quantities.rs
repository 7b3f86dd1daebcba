//! Quantities of a row, each held against what is possible for it.

use crate::decimal::Decimal;
use crate::measure::{Unmeasured, measure};
use crate::mistakes::{
    breaker_not_positive, breaker_not_standard, breaker_too_large, distance_not_possible, fault_current_not_possible,
    gauge_unknown, gauge_unusual, height_not_possible, length_not_positive, length_too_long, load_current_not_possible,
    number_not_whole, ohms_not_possible, time_not_possible, unknown_trade_size, volts_beyond_meter, volts_negative,
    volume_not_positive, volume_too_large, wrong_type, wrong_unit,
};
use crate::mistakes::{not_a_quantity, unknown_unit};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::{Row, text_of};
use crate::shape::FieldKind;
use crate::unit::{Dimension, names_of};
use crate::value::{Value, ValueKind};
use dwelling::TradeSize;
use electrical::{Amperes, Gauge, Length, Milliamperes, Ohms, Volts, Volume};

/// What a survey of a dwelling can hold; beyond these a slip of the pen is certain. Common practice, no source.
const LONGEST_RUN: Length = Length::feet(1_000);
const FARTHEST: Length = Length::feet(500);
const HIGHEST: Length = Length::feet(40);
const LARGEST_BOX: Volume = Volume::hundredths(100_000);
const LARGEST_RATING: i128 = 400;
const HIGHEST_VOLTS: Volts = Volts::new(300);
const HIGHEST_OHMS: Ohms = Ohms::milliohms(10_000_000);
const LEAST_FAULT: i128 = 100;
const MOST_FAULT: i128 = 100_000;
const LONGEST_WORK: i128 = 10_000;
/// What a load on a branch circuit draws, in milliamperes: from a night light to more than any breaker of a receptacle holds.
const LEAST_LOAD: i128 = 50;
const MOST_LOAD: i128 = 60_000;

/// From memory: NEC 240.6(A), the standard ratings up to 400 A.
const STANDARD_RATINGS: &[i128] =
    &[10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400];

impl Row<'_> {
    fn quantity(&self, notes: &mut Notes, key: &str) -> Option<(i128, &Value)> {
        let (field, value) = self.get(key)?;
        match field.kind {
            FieldKind::Quantity(quantity) => Some((quantity.read(notes, key, value)?, value)),
            FieldKind::DistanceOrTable(_) => Some((Quantity::Distance.read(notes, key, value)?, value)),
            _ => None,
        }
    }

    /// The length of a run or route.
    pub(crate) fn length(&self, notes: &mut Notes, key: &str) -> Option<Length> {
        let (micrometres, value) = self.quantity(notes, key)?;
        if micrometres <= 0 {
            notes.push(length_not_positive::mistake(key, value.span));
            return None;
        }
        if micrometres > i128::from(LONGEST_RUN.as_micrometres()) {
            notes.push(length_too_long::mistake(key, LONGEST_RUN, value.span));
            return None;
        }
        i64::try_from(micrometres).ok().map(Length::micrometres)
    }

    pub(crate) fn height(&self, notes: &mut Notes, key: &str) -> Option<Length> {
        let (micrometres, value) = self.quantity(notes, key)?;
        if !(0..=i128::from(HIGHEST.as_micrometres())).contains(&micrometres) {
            notes.push(height_not_possible::mistake(micrometres < 0, HIGHEST, value.span));
            return None;
        }
        i64::try_from(micrometres).ok().map(Length::micrometres)
    }

    pub(crate) fn distance(&self, notes: &mut Notes, key: &str) -> Option<Length> {
        let (micrometres, value) = self.quantity(notes, key)?;
        if !(0..=i128::from(FARTHEST.as_micrometres())).contains(&micrometres) {
            notes.push(distance_not_possible::mistake(key, micrometres < 0, FARTHEST, value.span));
            return None;
        }
        i64::try_from(micrometres).ok().map(Length::micrometres)
    }

    pub(crate) fn volume(&self, notes: &mut Notes, key: &str) -> Option<Volume> {
        let (parts, value) = self.quantity(notes, key)?;
        if parts <= 0 {
            notes.push(volume_not_positive::mistake(key, value.span));
            return None;
        }
        if parts > i128::from(LARGEST_BOX.as_ten_thousandths()) {
            notes.push(volume_too_large::mistake(key, LARGEST_BOX, value.span));
            return None;
        }
        i64::try_from(parts).ok().map(Volume::ten_thousandths)
    }

    pub(crate) fn rating(&self, notes: &mut Notes, key: &str) -> Option<Amperes> {
        let (milliamperes, value) = self.quantity(notes, key)?;
        if milliamperes <= 0 {
            notes.push(breaker_not_positive::mistake(key, value.span));
            return None;
        }
        if milliamperes > LARGEST_RATING * 1_000 {
            notes.push(breaker_too_large::mistake(key, LARGEST_RATING, value.span));
            return None;
        }
        if milliamperes % 1_000 != 0 {
            notes.push(number_not_whole::mistake(
                key,
                &Decimal::billionths(milliamperes * 1_000_000).shown(),
                value.span,
            ));
            return None;
        }
        let amperes = milliamperes / 1_000;
        if !STANDARD_RATINGS.contains(&amperes) {
            let next = STANDARD_RATINGS.iter().find(|rating| **rating > amperes).copied();
            let before = STANDARD_RATINGS.iter().rev().find(|rating| **rating < amperes).copied();
            notes.push(breaker_not_standard::mistake(amperes, before, next, value.span));
        }
        u32::try_from(amperes).ok().map(Amperes::new)
    }

    /// The current of a fault, in whole amperes, a started one left out: less is the safer side.
    pub(crate) fn fault_current(&self, notes: &mut Notes, key: &str) -> Option<Amperes> {
        let (milliamperes, value) = self.quantity(notes, key)?;
        if !(LEAST_FAULT * 1_000..=MOST_FAULT * 1_000).contains(&milliamperes) {
            notes.push(fault_current_not_possible::mistake(key, LEAST_FAULT, MOST_FAULT, value.span));
            return None;
        }
        u32::try_from(milliamperes / 1_000).ok().map(Amperes::new)
    }

    /// The current of a load.
    pub(crate) fn load_current(&self, notes: &mut Notes, key: &str) -> Option<Milliamperes> {
        let (milliamperes, value) = self.quantity(notes, key)?;
        if !(LEAST_LOAD..=MOST_LOAD).contains(&milliamperes) {
            notes.push(load_current_not_possible::mistake(key, LEAST_LOAD, MOST_LOAD, value.span));
            return None;
        }
        i64::try_from(milliamperes).ok().map(Milliamperes::new)
    }

    pub(crate) fn volts(&self, notes: &mut Notes, key: &str) -> Option<Volts> {
        let (millivolts, value) = self.quantity(notes, key)?;
        if millivolts < 0 {
            notes.push(volts_negative::mistake(key, value.span));
            return None;
        }
        if millivolts > i128::from(HIGHEST_VOLTS.as_millivolts()) {
            notes.push(volts_beyond_meter::mistake(key, HIGHEST_VOLTS, value.span));
            return None;
        }
        i64::try_from(millivolts).ok().map(Volts::millivolts)
    }

    pub(crate) fn ohms(&self, notes: &mut Notes, key: &str) -> Option<Ohms> {
        let (milliohms, value) = self.quantity(notes, key)?;
        if !(0..=i128::from(HIGHEST_OHMS.as_milliohms())).contains(&milliohms) {
            notes.push(ohms_not_possible::mistake(key, milliohms < 0, HIGHEST_OHMS, value.span));
            return None;
        }
        i64::try_from(milliohms).ok().map(Ohms::milliohms)
    }

    /// Minutes of work, a started minute counted as one.
    pub(crate) fn minutes(&self, notes: &mut Notes, key: &str) -> Option<u32> {
        let (seconds, value) = self.quantity(notes, key)?;
        if !(0..=LONGEST_WORK * 60).contains(&seconds) {
            notes.push(time_not_possible::mistake(key, seconds < 0, LONGEST_WORK, value.span));
            return None;
        }
        u32::try_from((seconds + 59) / 60).ok()
    }

    /// A wire size: a number of the American wire gauge, with or without its unit.
    pub(crate) fn gauge(&self, notes: &mut Notes, key: &str) -> Option<Gauge> {
        let (field, value) = self.get(key)?;
        let written = match &value.kind {
            ValueKind::Number(number) => number.clone(),
            ValueKind::Text(text) => text.clone(),
            _ => {
                notes.push(wrong_type::mistake(&format!("`{key}`"), &field.kind.expected(), value));
                return None;
            }
        };
        let plain = written.trim().trim_start_matches('#').trim_start_matches("No. ");
        let number = if value.is_text() { gauge_number(notes, key, plain, value)? } else { plain.to_string() };
        let gauge = gauge_of(number.trim());
        match gauge {
            None => notes.push(gauge_unknown::mistake(key, number.trim(), value.span)),
            Some(gauge) if gauge < Gauge::AWG_14 => notes.push(gauge_unusual::mistake(gauge, value.span)),
            Some(_) => {}
        }
        gauge
    }

    /// The trade size of a box.
    pub(crate) fn trade_size(&self, notes: &mut Notes, key: &str) -> Option<&'static TradeSize> {
        let (field, value) = self.get(key)?;
        let text = text_of(notes, field, value)?;
        let size = dwelling::trade_size(text);
        if size.is_none() {
            let nearest = notes.nearest(text, dwelling::TRADE_SIZES.iter().map(|size| size.name));
            notes.push(unknown_trade_size::mistake(text, nearest, value.span));
        }
        size
    }
}

/// The number in a wire size with its unit, or a mistake.
fn gauge_number(notes: &mut Notes, key: &str, plain: &str, value: &Value) -> Option<String> {
    let expected = FieldKind::Gauge.expected();
    let upper = plain.to_uppercase();
    let bare = upper.trim_end_matches("AWG").trim_end();
    let is_size = !bare.is_empty() && bare.bytes().all(|byte| byte.is_ascii_digit() || byte == b'/');
    if is_size {
        return Some(bare.to_string());
    }
    let mistake = match measure(plain) {
        Ok(parts) => match parts.iter().find_map(|part| part.unit).map(|unit| unit.dimension) {
            Some(other) if other != Dimension::WireSize => {
                wrong_unit::mistake(key, other, Dimension::WireSize, &expected, value.span)
            }
            _ => gauge_unknown::mistake(key, plain, value.span),
        },
        Err(Unmeasured::NoNumber) => not_a_quantity::mistake(key, plain, &expected, value.span),
        Err(Unmeasured::UnknownUnit(name)) => {
            let nearest = notes.nearest(&name, names_of(Dimension::WireSize));
            unknown_unit::mistake(key, &name, nearest, &expected, value.span)
        }
    };
    notes.push(mistake);
    None
}

/// The wire size with this number; 1/0 to 4/0 as the trade writes them.
fn gauge_of(written: &str) -> Option<Gauge> {
    let number = match written.split_once('/') {
        Some((noughts, "0")) => 1 - noughts.parse::<i8>().ok().filter(|noughts| (1..=4).contains(noughts))?,
        Some(_) => return None,
        None => written.parse::<i8>().ok().filter(|number| *number > 0)?,
    };
    Gauge::from_number(number)
}
