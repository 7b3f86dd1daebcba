//! Voltage drop along a run. That it should stay within 3 % or 5 % is advice, not a rule.

use super::awg::area_of;
use super::conductor_resistance::of_area;
use crate::{CircularMils, Complex, Current, Gauge, Length, OutOfRange, ResistancePerLength, Resistivity, Voltage};

/// The longest run the formulas are asked for, in metres: beyond it the circuit is no branch circuit.
const LONGEST: f64 = 3048.0;
/// The largest current, in amperes.
const LARGEST_CURRENT: f64 = 1000.0;

/// How many lengths of conductor carry the current of the load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Return {
    /// Two: out and back, at 120 V with a neutral or 240 V between the legs.
    TwoWire,
    /// The square root of three: a balanced load on three phases.
    ThreePhase,
}

impl Return {
    /// The number of lengths.
    fn lengths(self) -> f64 {
        match self {
            Self::TwoWire => 2.0,
            Self::ThreePhase => 3.0_f64.sqrt(),
        }
    }
}

/// The drop along a run of conductors of equal resistance.
///
/// # Formula
/// `V = 2 L I R` (out and back), `sqrt(3) L I R` for three phases; L one way, R at the conductors' own temperature.
///
/// # Source
/// Ohm's law; EC&M, The basics of calculating voltage drop.
///
/// # Range
/// Currents from 0 to 1000 A, runs to 10 000 ft.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::formulas::voltage_drop::{Return, drop};
/// use electrical::{Current, Length, ResistancePerLength};
/// let hot = ResistancePerLength::ohms_per_thousand_feet(1.93);
/// let found = drop(Return::TwoWire, Current::amperes(16.0), Length::feet(100), hot)?;
/// assert_eq!(format!("{:.2}", found.as_volts()), "6.18");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn drop(
    path: Return,
    current: Current,
    one_way: Length,
    resistance: ResistancePerLength,
) -> Result<Voltage, OutOfRange> {
    let current = check_current(current)?;
    check_length(one_way)?;
    Ok(current * (resistance * one_way) * path.lengths())
}

/// The drop by an area and a resistivity in ohm circular mils per foot, as older texts have it. Their constants are
/// temperatures: 10.37 is solid copper at 20 °C, 10.9 at about 33 °C, 12.0 at about 60 °C, 12.6 at 75 °C; 12.9 is
/// stranded copper at 75 °C and overstates the drop of house cable by 2.4 %.
///
/// # Formula
/// `V = 2 K I L / A`.
///
/// # Source
/// As [`drop`], with `R = K / A`.
///
/// # Range
/// As [`drop`]; areas from 1 to 2 000 000 circular mils.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::formulas::voltage_drop::{Return, drop_by_area};
/// use electrical::{CircularMils, Current, Length, Resistivity};
/// let k = Resistivity::ohm_circular_mils_per_foot(12.9);
/// let area = CircularMils::new(10_380.0);
/// let found = drop_by_area(Return::TwoWire, Current::amperes(24.0), Length::feet(160), k, area)?;
/// assert_eq!(format!("{:.2}", found.as_volts()), "9.54");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn drop_by_area(
    path: Return,
    current: Current,
    one_way: Length,
    resistivity: Resistivity,
    area: CircularMils,
) -> Result<Voltage, OutOfRange> {
    drop(path, current, one_way, of_area(resistivity, area)?)
}

/// The drop of alternating current with a power factor.
///
/// # Formula
/// `V = n L I (R cos phi + X sin phi)`, phi lagging. Good while the drop is small against the voltage.
///
/// # Source
/// UFC 3-520-01, appendix B.
///
/// # Range
/// As [`drop`]; power factors from 0.1 to 1.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::formulas::voltage_drop::{Return, drop_at_power_factor};
/// use electrical::{Current, Length, ResistancePerLength};
/// let per_thousand_feet = ResistancePerLength::ohms_per_thousand_feet;
/// let (r, x) = (per_thousand_feet(2.0), per_thousand_feet(0.054));
/// let found = drop_at_power_factor(Return::TwoWire, Current::amperes(10.0), Length::feet(100), (r, x), 0.8)?;
/// assert_eq!(format!("{:.2}", found.as_volts()), "3.26"); // 2 × 0.1 × 10 × (2.0 × 0.8 + 0.054 × 0.6)
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn drop_at_power_factor(
    path: Return,
    current: Current,
    one_way: Length,
    (resistance, reactance): (ResistancePerLength, ResistancePerLength),
    power_factor: f64,
) -> Result<Voltage, OutOfRange> {
    let cosine = OutOfRange::check("power factor", power_factor, 0.1, 1.0)?;
    let sine = (1.0 - cosine * cosine).sqrt();
    drop(path, current, one_way, resistance * cosine + reactance * sine)
}

/// The drop of each leg of a multiwire set: what the load of a leg loses in its hot conductor and in the shared neutral.
///
/// # Formula
/// `drop A = L (Ia Rh + (Ia + Ib) Rn)` in phasors, Ib pointing the other way; the second leg likewise. Returned as the
/// change of voltage along each leg's own direction: negative where the other leg's current raises it.
///
/// # Source
/// Kirchhoff's laws.
///
/// # Range
/// As [`drop`]; loads of unity power factor on two legs in opposition.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::formulas::voltage_drop::multiwire_drop;
/// use electrical::{Current, Length, ResistancePerLength};
/// let r = ResistancePerLength::ohms_per_thousand_feet(2.0);
/// let loads = [Current::amperes(10.0), Current::amperes(10.0)];
/// let [a, b] = multiwire_drop(loads, Length::feet(100), r, r)?;
/// assert_eq!((a.as_volts(), b.as_volts()), (2.0, 2.0)); // balanced: no current in the neutral
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn multiwire_drop(
    loads: [Current; 2],
    one_way: Length,
    hot: ResistancePerLength,
    neutral: ResistancePerLength,
) -> Result<[Voltage; 2], OutOfRange> {
    check_length(one_way)?;
    let [a, b] = [check_current(loads[0])?, check_current(loads[1])?];
    let (hot, neutral) = (hot * one_way, neutral * one_way);
    Ok([a * hot + (a - b) * neutral, b * hot + (b - a) * neutral])
}

/// The part of a voltage that is lost, in percent.
///
/// # Formula
/// `100 drop / V`.
///
/// # Source
/// The definition.
///
/// # Range
/// Supplies from 1 to 1000 V.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Voltage, formulas::voltage_drop::percent};
/// assert_eq!(percent(Voltage::volts(3.6), Voltage::volts(120.0)), Ok(3.0));
/// ```
pub fn percent(drop: Voltage, supply: Voltage) -> Result<f64, OutOfRange> {
    OutOfRange::check("supply, V", supply.as_volts(), 1.0, 1000.0)?;
    Ok(100.0 * drop.as_volts() / supply.as_volts())
}

/// The longest run, one way, that keeps the drop.
///
/// # Formula
/// `L = drop / (n I R)`.
///
/// # Source
/// [`drop`], solved for the length.
///
/// # Range
/// As [`drop`]; currents and resistances above nought.
///
/// # Errors
/// [`OutOfRange`] for any other, and for an answer beyond 10 000 ft.
///
/// # Example
/// ```
/// use electrical::formulas::voltage_drop::{Return, longest_run};
/// use electrical::{Current, ResistancePerLength, Voltage};
/// let r = ResistancePerLength::ohms_per_thousand_feet(1.25);
/// let found = longest_run(Return::TwoWire, Voltage::volts(3.75), Current::amperes(15.0), r)?;
/// assert_eq!(found.as_feet().round(), 100.0);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn longest_run(
    path: Return,
    drop: Voltage,
    current: Current,
    resistance: ResistancePerLength,
) -> Result<Length, OutOfRange> {
    let current = check_current(current)?;
    let per_metre = current.as_amperes() * resistance.as_ohms_per_metre() * path.lengths();
    let metres = OutOfRange::check("longest run, m", drop.as_volts() / per_metre, 0.0, LONGEST)?;
    Ok(Length::nearest_to_metres(metres))
}

/// The smallest size that keeps the drop.
///
/// # Formula
/// The first size with `n K I L / A <= drop`, areas by the series.
///
/// # Source
/// [`drop_by_area`].
///
/// # Range
/// As [`drop`]; `None` if 4/0 AWG is too small.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::formulas::voltage_drop::{Return, smallest_size};
/// use electrical::{Current, Length, Resistivity, Voltage};
/// let k = Resistivity::ohm_circular_mils_per_foot(12.9);
/// let found = smallest_size(Return::TwoWire, Voltage::volts(3.6), Current::amperes(20.0), Length::feet(200), k)?;
/// assert_eq!(found.map(|gauge| gauge.number()), Some(4));
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn smallest_size(
    path: Return,
    most: Voltage,
    current: Current,
    one_way: Length,
    resistivity: Resistivity,
) -> Result<Option<Gauge>, OutOfRange> {
    for gauge in Gauge::ALL {
        if drop_by_area(path, current, one_way, resistivity, area_of(gauge))? <= most {
            return Ok(Some(gauge));
        }
    }
    Ok(None)
}

/// What is left of the supply at the end of a run with a load of known impedance, as a phasor.
///
/// # Formula
/// `V Z / (Z + z)`, the exact divider of which [`drop_at_power_factor`] is the approximation for small drops.
///
/// # Source
/// Kirchhoff's laws.
///
/// # Range
/// Any impedances whose sum is not nought; otherwise the answer is not finite.
///
/// # Example
/// ```
/// use electrical::{Complex, formulas::voltage_drop::left_at_load};
/// let found = left_at_load(Complex::real(120.0), Complex::real(2.0), Complex::real(10.0));
/// assert_eq!(found, Complex::real(100.0));
/// ```
#[must_use]
pub fn left_at_load(supply: Complex, run: Complex, load: Complex) -> Complex {
    supply * load / (load + run)
}

fn check_current(current: Current) -> Result<Current, OutOfRange> {
    OutOfRange::check("current, A", current.as_amperes(), 0.0, LARGEST_CURRENT)?;
    Ok(current)
}

fn check_length(one_way: Length) -> Result<(), OutOfRange> {
    OutOfRange::check("run one way, m", one_way.as_metres(), 0.0, LONGEST)?;
    Ok(())
}

#[cfg(test)]
mod tests;
