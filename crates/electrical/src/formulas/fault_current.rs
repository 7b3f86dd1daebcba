//! Fault currents from a transformer and along a feeder, by the point-to-point method.

use crate::{Current, Length, OutOfRange, Resistance, Voltage};

/// How the faulted conductors lie to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fault {
    /// All three phases together; the voltage is that between lines.
    ThreePhase,
    /// Two conductors out and back: line to line, or line to neutral with the voltage between those two.
    TwoWire,
}

/// The current of a transformer at full load.
///
/// # Formula
/// `I = kVA * 1000 / (sqrt(3) V)` for three phases, `kVA * 1000 / V` for one.
///
/// # Source
/// The point-to-point method, as in an electrical plan review, scribd.com/document/325386963.
///
/// # Range
/// 1 to 10 000 kVA, 100 to 1000 V.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Voltage, formulas::fault_current::{Fault, full_load}};
/// let found = full_load(Fault::TwoWire, 25.0, Voltage::volts(240.0))?;
/// assert_eq!(found.as_amperes().round(), 104.0);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn full_load(fault: Fault, kilovolt_amperes: f64, voltage: Voltage) -> Result<Current, OutOfRange> {
    OutOfRange::check("transformer, kVA", kilovolt_amperes, 1.0, 10_000.0)?;
    OutOfRange::check("voltage, V", voltage.as_volts(), 100.0, 1000.0)?;
    let root = if fault == Fault::ThreePhase { 3.0_f64.sqrt() } else { 1.0 };
    Ok(Current::amperes(kilovolt_amperes * 1000.0 / (root * voltage.as_volts())))
}

/// The current of a bolted fault at a transformer's terminals with an endless supply behind it.
///
/// # Formula
/// `I = full load * 100 / Z%`. Impedances are good to a tenth: take nine tenths of the nameplate's for the greatest.
///
/// # Source
/// As [`full_load`].
///
/// # Range
/// Impedances from 0.5 % to 20 %.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Current, formulas::fault_current::at_terminals};
/// let found = at_terminals(Current::amperes(104.0), 2.0)?;
/// assert_eq!(found.as_amperes(), 5200.0);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn at_terminals(full_load: Current, impedance_percent: f64) -> Result<Current, OutOfRange> {
    Ok(full_load * 100.0 / OutOfRange::check("transformer impedance, %", impedance_percent, 0.5, 20.0)?)
}

/// The factor of a run by the point-to-point method.
///
/// # Formula
/// `f = 1.732 L I / (C n V)` for three phases, `2 L I / (C n V)` out and back; L in feet, n conductors in parallel. The
/// constants C that are printed are one over the impedance of a foot at 25 °C: they give a greatest current, never the
/// least that must clear.
///
/// # Source
/// As [`full_load`].
///
/// # Range
/// Runs to 10 000 ft, currents to 200 000 A, constants from 100 to 1 000 000, 1 to 20 conductors, 100 to 1000 V.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::formulas::fault_current::{Fault, Run, factor};
/// use electrical::{Current, Length, Voltage};
/// let run = Run { length: Length::feet(20), constant: 22_185.0, in_parallel: 2 };
/// let found = factor(Fault::ThreePhase, Current::amperes(46_273.0), run, Voltage::volts(208.0))?;
/// assert_eq!(format!("{found:.3}"), "0.174");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn factor(fault: Fault, available: Current, run: Run, voltage: Voltage) -> Result<f64, OutOfRange> {
    let amperes = OutOfRange::check("available current, A", available.as_amperes(), 0.0, 200_000.0)?;
    let feet = OutOfRange::check("run, ft", run.length.as_feet(), 0.0, 10_000.0)?;
    let constant = OutOfRange::check("constant of the conductor", run.constant, 100.0, 1e6)?;
    let parallel = OutOfRange::check("conductors in parallel", f64::from(run.in_parallel), 1.0, 20.0)?;
    let volts = OutOfRange::check("voltage, V", voltage.as_volts(), 100.0, 1000.0)?;
    let lengths = if fault == Fault::ThreePhase { 3.0_f64.sqrt() } else { 2.0 };
    Ok(lengths * feet * amperes / (constant * parallel * volts))
}

/// A run of conductors as the point-to-point method sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// Its length, one way.
    pub length: Length,
    /// One over the impedance of a foot of one conductor, in feet per ohm.
    pub constant: f64,
    /// How many conductors lie in parallel.
    pub in_parallel: u32,
}

/// What is left of a fault current at the end of a run.
///
/// # Formula
/// `I * 1 / (1 + f)`.
///
/// # Source
/// As [`full_load`].
///
/// # Range
/// Factors from 0 up.
///
/// # Errors
/// [`OutOfRange`] for a negative one.
///
/// # Example
/// ```
/// use electrical::{Current, formulas::fault_current::at_end_of_run};
/// assert_eq!(at_end_of_run(Current::amperes(1000.0), 1.0)?.as_amperes(), 500.0);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn at_end_of_run(available: Current, factor: f64) -> Result<Current, OutOfRange> {
    Ok(available / (1.0 + OutOfRange::check("point-to-point factor", factor, 0.0, f64::MAX)?))
}

/// The current through a resistance, such as a ground rod's. It clears nothing: a rod is no path for a fault.
///
/// # Formula
/// `I = V / R`.
///
/// # Source
/// Ohm's law; trade forum, thread 6518.
///
/// # Range
/// Voltages to 1000 V, resistances from 0.001 Ω to 1 MΩ.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Resistance, Voltage, formulas::fault_current::through_earth};
/// let found = through_earth(Voltage::volts(120.0), Resistance::ohms(25.0))?;
/// assert_eq!(found.as_amperes(), 4.8);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn through_earth(voltage: Voltage, resistance: Resistance) -> Result<Current, OutOfRange> {
    OutOfRange::check("voltage, V", voltage.as_volts(), 0.0, 1000.0)?;
    OutOfRange::check("resistance, Ω", resistance.as_ohms(), 0.001, 1e6)?;
    Ok(voltage / resistance)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formulas::assert_near;

    /// Published: electrical plan review, scribd.com/document/325386963: 833 A, 46 273 A, f = 0.174, M = 0.852, and their
    /// product 39 425 A.
    #[test]
    fn the_panel_of_the_plan_review() {
        let volts = Voltage::volts(208.0);
        let full = full_load(Fault::ThreePhase, 300.0, volts).unwrap();
        assert_near(full.as_amperes(), 833.0, 1.0);
        let terminals = at_terminals(Current::amperes(833.0), 2.0 * 0.9).unwrap();
        assert_near(terminals.as_amperes(), 46_273.0, 6.0);
        let run = Run { length: Length::feet(20), constant: 22_185.0, in_parallel: 2 };
        let found = factor(Fault::ThreePhase, Current::amperes(46_273.0), run, volts).unwrap();
        assert_near(found, 0.174, 0.0005);
        assert_near(at_end_of_run(Current::amperes(1.0), 0.174).unwrap().as_amperes(), 0.852, 0.0005);
        let panel = at_end_of_run(Current::amperes(46_273.0), found).unwrap();
        assert_near(panel.as_amperes(), 39_425.0, 60.0);
    }

    /// Published: trade forum, thread 6518: 4.8 A, printed as 4 A in another thread; yesterdaystractors.com, post
    /// 464812: 6 A through 20 Ω.
    #[test]
    fn a_ground_rod_carries_a_few_amperes() {
        let at = |ohms| through_earth(Voltage::volts(120.0), Resistance::ohms(ohms)).unwrap().as_amperes();
        assert_near(at(25.0), 4.8, 0.001);
        assert!((at(25.0) - 4.0).abs() > 0.5);
        assert_near(at(20.0), 6.0, 0.001);
    }

    /// By hand: adding a run in series is the same as the factor: V/(V/I + 2 L/C).
    #[test]
    fn the_factor_is_an_impedance_in_series() {
        let run = Run { length: Length::feet(100), constant: 617.0, in_parallel: 1 };
        let (volts, available) = (Voltage::volts(120.0), Current::amperes(5000.0));
        let f = factor(Fault::TwoWire, available, run, volts).unwrap();
        let in_series = 120.0 / (120.0 / 5000.0 + 2.0 * 100.0 / 617.0);
        assert_near(at_end_of_run(available, f).unwrap().as_amperes(), in_series, 1e-9);
    }

    #[test]
    fn quantities_out_of_range_are_refused() {
        assert!(full_load(Fault::TwoWire, 0.0, Voltage::volts(240.0)).is_err());
        assert!(at_terminals(Current::amperes(100.0), 0.0).is_err());
        assert!(at_end_of_run(Current::amperes(100.0), -2.0).is_err());
        assert!(through_earth(Voltage::volts(120.0), Resistance::ohms(0.0)).is_err());
    }
}
