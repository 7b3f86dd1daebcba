//! How far a reading may be off: the meter, its last digits, and what is written down of it.

use dwelling::{MeterKind, Reading};
use electrical::Volts;

/// How far a meter's readings may be off, as a part of each, and by how many of its last digits. Common practice, no source:
/// what the papers of hand-held meters state for alternating volts; instruments that draw current are coarser.
const fn tolerance(meter: Option<MeterKind>) -> (f64, f64) {
    match meter {
        Some(MeterKind::HighImpedance) => (0.01, 3.0),
        Some(MeterKind::LowImpedance | MeterKind::LoadTester) | None => (0.02, 3.0),
        Some(MeterKind::TestLamp | MeterKind::PlugInTester) => (0.05, 3.0),
    }
}

/// Half of the tenth of a volt to which people write readings down. Common practice, no source.
const WRITTEN: f64 = 0.05;

/// The size of a reading in volts: which probe was where does not matter.
pub(crate) fn size(volts: Volts) -> f64 {
    let millivolts = i32::try_from(volts.as_millivolts()).unwrap_or(i32::MAX);
    f64::from(millivolts).abs() / 1000.0
}

/// The last digit that a meter shows at this voltage.
fn digit(volts: f64) -> f64 {
    match volts {
        ..6.0 => 0.001,
        ..60.0 => 0.01,
        _ => 0.1,
    }
}

/// How far a reading of this size by a meter of this kind may be off, in volts.
#[must_use]
pub fn may_be_off(volts: f64, meter: Option<MeterKind>) -> f64 {
    let (part, digits) = tolerance(meter);
    volts * part + digits * digit(volts) + WRITTEN
}

/// How far the difference of two readings of about the same size may be off: of one meter, what it is off by falls out.
pub(crate) fn difference_may_be_off(one: &Reading, other: &Reading, sizes: (f64, f64)) -> f64 {
    let kinds = (one.meter, other.meter);
    if kinds.0 == kinds.1 && kinds.0.is_some() {
        let (part, digits) = tolerance(kinds.0);
        (sizes.0 - sizes.1).abs() * part + digits * (digit(sizes.0) + digit(sizes.1)) + 2.0 * WRITTEN
    } else {
        may_be_off(sizes.0, kinds.0) + may_be_off(sizes.1, kinds.1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 1 % of 120 V is 1.2 V, three digits of 0.1 V are 0.3 V, and half a written tenth is 0.05 V.
    #[test]
    fn a_usual_meter_may_be_off_by_about_a_volt_and_a_half_at_line_voltage() {
        assert!((may_be_off(120.0, Some(MeterKind::HighImpedance)) - 1.55).abs() < 1e-9);
    }

    /// By hand: 1 % of the 4 V between them, 3 + 3 digits of 0.1 V, two halves of a tenth: 0.04 + 0.6 + 0.1.
    #[test]
    fn what_one_meter_is_off_by_falls_out_of_a_difference() {
        let by = |meter| Reading { meter, ..Reading::default() };
        let one = by(Some(MeterKind::HighImpedance));
        assert!((difference_may_be_off(&one, &one, (121.0, 117.0)) - 0.74).abs() < 1e-9);
        let unknown = by(None);
        assert!(difference_may_be_off(&unknown, &unknown, (121.0, 117.0)) > 4.0, "two meters, perhaps");
    }
}
