//! How the resistance of a conductor changes with its temperature.

use crate::{ConductorMetal, OutOfRange, Resistance, ResistancePerLength, Temperature};
use std::ops::Mul;

/// Where the straight line through the resistances of annealed copper of 100 % conductivity meets nought, °C.
/// Published: IEC 60028 and NBS Handbook 100, as reproduced in the Industrial Power Engineering Handbook, p. 970.
const COPPER_NOUGHT: f64 = -234.5;
/// The same for aluminium of 61 % conductivity, °C. Published: the same page.
const ALUMINIUM_NOUGHT: f64 = -228.1;

/// The temperatures over which the straight line holds, °C.
const LEAST: f64 = -50.0;
/// Above this, building wire has long been destroyed and the line bends away from the metal.
const MOST: f64 = 250.0;

/// A temperature coefficient together with the temperature that it refers to. It means nothing without it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coefficient {
    per_kelvin: f64,
    refers_to: Temperature,
}

impl Coefficient {
    /// A coefficient per kelvin of the resistance at the temperature it refers to.
    ///
    /// # Formula
    /// None: it is as stated.
    ///
    /// # Source
    /// Whoever states it.
    ///
    /// # Range
    /// Coefficients from 0 to 0.01 per kelvin, temperatures from -50 °C to 250 °C.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other.
    ///
    /// # Example
    /// ```
    /// use electrical::{Temperature, formulas::temperature_coefficient::Coefficient};
    /// let of_the_code = Coefficient::new(0.00323, Temperature::celsius(75.0))?;
    /// assert_eq!(of_the_code.refers_to().as_celsius(), 75.0);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn new(per_kelvin: f64, refers_to: Temperature) -> Result<Self, OutOfRange> {
        OutOfRange::check("temperature coefficient, 1/K", per_kelvin, 0.0, 0.01)?;
        check(refers_to)?;
        Ok(Self { per_kelvin, refers_to })
    }

    /// The coefficient of a conductor metal, at a temperature.
    ///
    /// # Formula
    /// `alpha = 1 / (T + 234.5)` for copper, `1 / (T + 228.1)` for aluminium of 61 % conductivity. Copper-clad
    /// aluminium, nine tenths aluminium, takes that of aluminium.
    ///
    /// # Source
    /// The Industrial Power Engineering Handbook, p. 970; the code's table of conductors gives 0.00323 for copper and
    /// 0.00330 for aluminium at 75 °C.
    ///
    /// # Range
    /// -50 °C to 250 °C.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other temperature.
    ///
    /// # Example
    /// ```
    /// use electrical::{ConductorMetal, Temperature, formulas::temperature_coefficient::Coefficient};
    /// let coefficient = Coefficient::of_metal(ConductorMetal::Copper, Temperature::celsius(75.0))?;
    /// assert_eq!(format!("{:.5}", coefficient.per_kelvin()), "0.00323");
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn of_metal(metal: ConductorMetal, refers_to: Temperature) -> Result<Self, OutOfRange> {
        Self::new(1.0 / (check(refers_to)? - nought(metal)), refers_to)
    }

    /// The coefficient per kelvin.
    #[must_use]
    pub const fn per_kelvin(self) -> f64 {
        self.per_kelvin
    }

    /// The temperature the coefficient refers to.
    #[must_use]
    pub const fn refers_to(self) -> Temperature {
        self.refers_to
    }

    /// The ratio of the resistances at two temperatures.
    ///
    /// # Formula
    /// `R2 / R1 = (1 + alpha (T2 - Tr)) / (1 + alpha (T1 - Tr))`, Tr being what alpha refers to. With `T1 = Tr` it is
    /// the form of the code's table, `R2 = R1 (1 + alpha (T2 - T1))`.
    ///
    /// # Source
    /// The linear law; NEC chapter 9, table 8, note 2.
    ///
    /// # Range
    /// -50 °C to 250 °C.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other temperature.
    ///
    /// # Example
    /// ```
    /// use electrical::{Resistance, Temperature, formulas::temperature_coefficient::Coefficient};
    /// let table = Coefficient::new(0.00323, Temperature::celsius(75.0))?;
    /// let ratio = table.ratio(Temperature::celsius(75.0), Temperature::celsius(30.0))?;
    /// assert_eq!(format!("{:.3}", 1.93 * ratio), "1.649");
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn ratio(self, from: Temperature, to: Temperature) -> Result<f64, OutOfRange> {
        let reference = self.refers_to.as_celsius();
        let at = |celsius: f64| 1.0 + self.per_kelvin * (celsius - reference);
        let (from, to) = (at(check(from)?), at(check(to)?));
        // A steep coefficient that refers to a hot temperature leaves no resistance in the cold.
        let from = OutOfRange::check("resistance left at the first temperature, of 1", from, 0.01, f64::MAX)?;
        Ok(OutOfRange::check("resistance left at the second temperature, of 1", to, 0.01, f64::MAX)? / from)
    }

    /// The temperature at which a resistance has become another.
    ///
    /// # Formula
    /// The ratio, solved for `T2`.
    ///
    /// # Source
    /// The linear law.
    ///
    /// # Range
    /// Answers from -50 °C to 250 °C.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other answer.
    ///
    /// # Example
    /// ```
    /// use electrical::{Resistance, Temperature, formulas::temperature_coefficient::Coefficient};
    /// let room = Temperature::celsius(20.0);
    /// let oven = Coefficient::new(0.0039, room)?.temperature(Resistance::ohms(30.0), room, Resistance::ohms(46.2))?;
    /// assert_eq!(oven.as_celsius().round(), 158.0);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn temperature(
        self,
        first: Resistance,
        at: Temperature,
        second: Resistance,
    ) -> Result<Temperature, OutOfRange> {
        let reference = self.refers_to.as_celsius();
        let left = (1.0 + self.per_kelvin * (check(at)? - reference)) * (second / first);
        let celsius = reference + (left - 1.0) / self.per_kelvin;
        Ok(Temperature::celsius(OutOfRange::check("temperature from a resistance, °C", celsius, LEAST, MOST)?))
    }
}

/// A resistance that is known at one temperature, at another one.
///
/// # Formula
/// The [`Coefficient::ratio`] of the metal.
///
/// # Source
/// As [`Coefficient::of_metal`].
///
/// # Range
/// -50 °C to 250 °C.
///
/// # Errors
/// [`OutOfRange`] for any other temperature.
///
/// # Example
/// ```
/// use electrical::{ConductorMetal, Resistance, Temperature, formulas::temperature_coefficient::warmed};
/// let cold = Resistance::ohms(50.0);
/// let hot = warmed(cold, ConductorMetal::Copper, Temperature::celsius(20.0), Temperature::celsius(100.0))?;
/// assert_eq!(format!("{:.1}", hot.as_ohms()), "65.7");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn warmed<R: KnownAtATemperature>(
    resistance: R,
    metal: ConductorMetal,
    from: Temperature,
    to: Temperature,
) -> Result<R, OutOfRange> {
    Ok(resistance * Coefficient::of_metal(metal, from)?.ratio(from, to)?)
}

/// A resistance, or a resistance per length.
pub trait KnownAtATemperature: Mul<f64, Output = Self> + Sized {}
impl KnownAtATemperature for Resistance {}
impl KnownAtATemperature for ResistancePerLength {}

const fn nought(metal: ConductorMetal) -> f64 {
    match metal {
        ConductorMetal::Copper => COPPER_NOUGHT,
        ConductorMetal::Aluminium | ConductorMetal::CopperCladAluminium => ALUMINIUM_NOUGHT,
    }
}

/// The temperature in °C, if the straight line holds there.
fn check(temperature: Temperature) -> Result<f64, OutOfRange> {
    OutOfRange::check("conductor temperature, °C", temperature.as_celsius(), LEAST, MOST)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formulas::assert_near;

    const fn celsius(degrees: f64) -> Temperature {
        Temperature::celsius(degrees)
    }

    /// Published: trade forum thread on note 2 of chapter 9, table 8, trade forum, thread 2586.
    #[test]
    fn the_coefficient_of_aluminium_at_75_c_is_that_of_the_code() {
        let found = Coefficient::of_metal(ConductorMetal::Aluminium, celsius(75.0)).unwrap();
        assert_near(found.per_kelvin(), 0.0033, 0.000_01);
    }

    /// Published: Industrial Power Engineering and Applications Handbook, p. 970.
    #[test]
    fn the_coefficient_of_aluminium_at_20_c_is_that_of_the_handbook() {
        let found = Coefficient::of_metal(ConductorMetal::Aluminium, celsius(20.0)).unwrap();
        assert_near(found.per_kelvin(), 0.00403, 0.000_01);
    }

    /// Published: worked problem on a copper coil, toughstem.com/problem-answer-solution/319.
    #[test]
    fn a_coil_warmed_from_24_to_69_c_is_worked_with_the_coefficient_it_was_given() {
        let coefficient = Coefficient::new(0.004_041, celsius(24.5)).unwrap();
        assert_near(28.2 * coefficient.ratio(celsius(24.5), celsius(68.8)).unwrap(), 33.248, 0.002);
    }

    /// Published: jiskha.com/questions/2496831 prints 67.12, wrongly: it takes 0.00427, which refers to 0 °C, from 20 °C.
    /// By hand: 50 × (1 + 80/254.5) = 65.72.
    #[test]
    fn a_coefficient_that_refers_to_0_c_is_not_taken_from_20_c() {
        let by_metal =
            warmed(Resistance::ohms(50.0), ConductorMetal::Copper, celsius(20.0), celsius(100.0)).unwrap().as_ohms();
        assert_near(by_metal, 65.72, 0.02);
        let referring_to_nought = Coefficient::new(0.00427, celsius(0.0)).unwrap();
        let found = 50.0 * referring_to_nought.ratio(celsius(20.0), celsius(100.0)).unwrap();
        assert_near(found, 65.72, 0.03);
        assert!((found - 67.12).abs() > 1.0);
    }

    /// Published: College Physics, 11th edition, chapter 17, problem 26: the inputs. By hand: 20 + 0.54/0.0039 = 158.46.
    #[test]
    fn a_wire_of_30_ohms_that_became_46_2_lies_in_an_oven_of_158_c() {
        let coefficient = Coefficient::new(0.0039, celsius(20.0)).unwrap();
        let found = coefficient.temperature(Resistance::ohms(30.0), celsius(20.0), Resistance::ohms(46.2)).unwrap();
        assert_near(found.as_celsius(), 158.5, 0.5);
    }

    /// By hand: 1.93 × (1 - 0.00323 × 45) = 1.6495 and 1.93 × (1 - 0.00323 × 15) = 1.8365.
    #[test]
    fn the_form_of_the_table_takes_75_c_down_to_30_and_60_c() {
        let table = Coefficient::new(0.00323, celsius(75.0)).unwrap();
        assert_near(1.93 * table.ratio(celsius(75.0), celsius(30.0)).unwrap(), 1.649, 0.002);
        assert_near(1.93 * table.ratio(celsius(75.0), celsius(60.0)).unwrap(), 1.836, 0.002);
    }

    #[test]
    fn temperatures_beyond_the_straight_line_are_refused() {
        let copper = ConductorMetal::Copper;
        assert!(warmed(Resistance::ohms(1.0), copper, celsius(20.0), celsius(1000.0)).is_err());
        assert!(warmed(Resistance::ohms(1.0), copper, celsius(-234.5), celsius(20.0)).is_err());
        assert!(Coefficient::of_metal(copper, celsius(f64::NAN)).is_err());
        let coefficient = Coefficient::new(0.0, celsius(20.0)).unwrap();
        assert!(coefficient.temperature(Resistance::ohms(1.0), celsius(20.0), Resistance::ohms(2.0)).is_err());
    }
}
