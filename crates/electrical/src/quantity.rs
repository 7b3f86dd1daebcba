//! Quantities of physics: a number and its unit. What the code compares is exact and stands elsewhere.

use crate::{Amperes, Complex, Length, Ohms, Volts};
use std::ops::{Add, Div, Mul, Sub};

/// Published: the international foot is exactly 0.3048 m (NIST SP 811, appendix B).
const METRES_PER_FOOT: f64 = 0.3048;
/// By hand: 1000 ft of 0.3048 m are 304.8 m.
const METRES_PER_THOUSAND_FEET: f64 = 304.8;

/// Defines a quantity kept in its base unit, with a constructor and a reading for every unit it is used in.
macro_rules! quantity {
    ($(#[$about:meta])* $name:ident: $($unit:ident, $as_unit:ident, $words:literal, $scale:expr;)+) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            $(
                #[doc = concat!("The quantity of so many ", $words, ". Any number; a formula refuses what is out of its range.")]
                #[must_use]
                pub const fn $unit(value: f64) -> Self {
                    Self(value * $scale)
                }

                #[doc = concat!("The quantity in ", $words, ".")]
                #[must_use]
                pub const fn $as_unit(self) -> f64 {
                    self.0 / $scale
                }
            )+
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, times: f64) -> Self {
                Self(self.0 * times)
            }
        }

        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, parts: f64) -> Self {
                Self(self.0 / parts)
            }
        }

        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
    };
}

quantity! {
    /// An electric current, root mean square where it alternates.
    Current:
    amperes, as_amperes, "amperes", 1.0;
    milliamperes, as_milliamperes, "milliamperes", 1e-3;
}

quantity! {
    /// A voltage, root mean square where it alternates.
    Voltage:
    volts, as_volts, "volts", 1.0;
}

quantity! {
    /// A resistance, or the size of a reactance.
    Resistance:
    ohms, as_ohms, "ohms", 1.0;
}

quantity! {
    /// A resistance per length of one conductor, or a reactance per length.
    ResistancePerLength:
    ohms_per_metre, as_ohms_per_metre, "ohms per metre", 1.0;
    ohms_per_thousand_feet, as_ohms_per_thousand_feet, "ohms per thousand feet", (1.0 / METRES_PER_THOUSAND_FEET);
}

quantity! {
    /// A capacitance.
    Capacitance:
    farads, as_farads, "farads", 1.0;
    nanofarads, as_nanofarads, "nanofarads", 1e-9;
    picofarads, as_picofarads, "picofarads", 1e-12;
}

quantity! {
    /// A capacitance per length between two conductors.
    CapacitancePerLength:
    picofarads_per_metre, as_picofarads_per_metre, "picofarads per metre", 1e-12;
}

quantity! {
    /// A frequency.
    Frequency:
    hertz, as_hertz, "hertz", 1.0;
}

quantity! {
    /// A span of time.
    TimeSpan:
    seconds, as_seconds, "seconds", 1.0;
    minutes, as_minutes, "minutes", 60.0;
}

quantity! {
    /// The diameter of a round conductor.
    Diameter:
    millimetres, as_millimetres, "millimetres", 1.0;
    inches, as_inches, "inches", 25.4;
}

quantity! {
    /// The area of a conductor in circular mils: the square of the diameter in thousandths of an inch.
    CircularMils:
    new, get, "circular mils", 1.0;
}

quantity! {
    /// A resistivity.
    Resistivity:
    ohm_metres, as_ohm_metres, "ohm metres", 1.0;
    ohm_square_millimetres_per_metre, as_ohm_square_millimetres_per_metre, "ohm square millimetres per metre", 1e-6;
    ohm_circular_mils_per_foot, as_ohm_circular_mils_per_foot, "ohm circular mils per foot",
        (SQUARE_METRES_PER_CIRCULAR_MIL / METRES_PER_FOOT);
}

/// By hand: a circular mil is π/4 of a square of 25.4 µm, 5.067075e-10 m².
const SQUARE_METRES_PER_CIRCULAR_MIL: f64 = std::f64::consts::FRAC_PI_4 * 25.4e-6 * 25.4e-6;

/// A temperature.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// A temperature in degrees Celsius.
    #[must_use]
    pub const fn celsius(degrees: f64) -> Self {
        Self(degrees)
    }

    /// A temperature in degrees Fahrenheit.
    #[must_use]
    pub const fn fahrenheit(degrees: f64) -> Self {
        Self((degrees - 32.0) * 5.0 / 9.0)
    }

    /// The temperature in degrees Celsius.
    #[must_use]
    pub const fn as_celsius(self) -> f64 {
        self.0
    }
}

/// A resistance and a reactance in series. The reactance is positive for a coil and negative for a capacitor.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Impedance {
    /// The resistance.
    pub resistance: Resistance,
    /// The reactance at the frequency of the circuit.
    pub reactance: Resistance,
}

impl Impedance {
    /// An impedance from its resistance and reactance in ohms.
    #[must_use]
    pub const fn ohms(resistance: f64, reactance: f64) -> Self {
        Self { resistance: Resistance(resistance), reactance: Resistance(reactance) }
    }

    /// The impedance of a capacitance at a frequency; endless for none.
    #[must_use]
    pub fn of_capacitance(capacitance: Capacitance, frequency: Frequency) -> Self {
        Self::ohms(0.0, -1.0 / (std::f64::consts::TAU * frequency.0 * capacitance.0))
    }

    /// The impedance as a complex number of ohms.
    #[must_use]
    pub const fn as_complex(self) -> Complex {
        Complex::new(self.resistance.0, self.reactance.0)
    }

    /// The magnitude.
    #[must_use]
    pub fn magnitude(self) -> Resistance {
        Resistance(self.as_complex().magnitude())
    }
}

impl Add for Impedance {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { resistance: self.resistance + other.resistance, reactance: self.reactance + other.reactance }
    }
}

impl From<Resistance> for Impedance {
    fn from(resistance: Resistance) -> Self {
        Self { resistance, reactance: Resistance(0.0) }
    }
}

impl From<Volts> for Voltage {
    fn from(reading: Volts) -> Self {
        Self(reading.as_millivolts() as f64 / 1000.0)
    }
}

impl Voltage {
    /// The voltage as a meter would show it, to the nearest millivolt. Any number: one too large for the type becomes its
    /// greatest value, and one that is no number becomes nought.
    #[must_use]
    pub fn to_nearest_millivolt(self) -> Volts {
        Volts::millivolts((self.0 * 1000.0).round() as i64)
    }
}

impl From<Ohms> for Resistance {
    fn from(reading: Ohms) -> Self {
        Self(reading.as_milliohms() as f64 / 1000.0)
    }
}

impl From<Amperes> for Current {
    fn from(rating: Amperes) -> Self {
        Self(f64::from(rating.get()))
    }
}

impl Mul<Length> for ResistancePerLength {
    type Output = Resistance;
    fn mul(self, length: Length) -> Resistance {
        Resistance(self.0 * length.as_metres())
    }
}

impl Mul<Length> for CapacitancePerLength {
    type Output = Capacitance;
    fn mul(self, length: Length) -> Capacitance {
        Capacitance(self.0 * length.as_metres())
    }
}

impl Mul<Resistance> for Current {
    type Output = Voltage;
    fn mul(self, resistance: Resistance) -> Voltage {
        Voltage(self.0 * resistance.0)
    }
}

impl Div<Resistance> for Voltage {
    type Output = Current;
    fn div(self, resistance: Resistance) -> Current {
        Current(self.0 / resistance.0)
    }
}

impl Div<Current> for Voltage {
    type Output = Resistance;
    fn div(self, current: Current) -> Resistance {
        Resistance(self.0 / current.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 304.8 m are 1000 ft; (212 - 32) * 5 / 9 = 100.
    #[test]
    fn quantities_read_the_same_in_every_unit() {
        let run = Length::feet(1000);
        let resistance = ResistancePerLength::ohms_per_thousand_feet(2.5) * run;
        assert!((resistance.as_ohms() - 2.5).abs() < 1e-12);
        assert_eq!(Temperature::fahrenheit(212.0).as_celsius(), 100.0);
        assert!((Current::milliamperes(6.0).as_amperes() - 0.006).abs() < 1e-15);
    }

    /// By hand: 59.9996 V are 60.000 V to the millivolt.
    #[test]
    fn voltages_become_readings_and_readings_voltages() {
        assert_eq!(Voltage::volts(59.9996).to_nearest_millivolt(), Volts::new(60));
        assert_eq!(Voltage::from(Volts::millivolts(1_500)), Voltage::volts(1.5));
        assert_eq!(Resistance::from(Ohms::milliohms(250)), Resistance::ohms(0.25));
    }

    /// By hand: 1/(2π × 60 Hz × 1 nF) = 2.6526 MΩ.
    #[test]
    fn a_nanofarad_is_two_and_a_half_megohms_at_60_hz() {
        let z = Impedance::of_capacitance(Capacitance::nanofarads(1.0), Frequency::hertz(60.0));
        assert!((z.reactance.as_ohms() + 2_652_582.4).abs() < 0.1);
    }
}
