//! Meters with the impedance they have.

use crate::{Capacitance, Frequency, Impedance, Resistance, Voltage};

/// A voltmeter as the network sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meter {
    /// The resistance of its input.
    pub resistance: Resistance,
    /// The capacitance of its input and leads, beside the resistance.
    pub capacitance: Capacitance,
}

impl Meter {
    /// A usual digital meter: 10 MΩ and 100 pF. Common practice, no source; a meter's own papers state it.
    pub const HIGH_IMPEDANCE: Self =
        Self { resistance: Resistance::ohms(10e6), capacitance: Capacitance::picofarads(100.0) };
    /// A meter switched to low impedance, or a solenoid tester: 3 kΩ. Common practice, no source.
    pub const LOW_IMPEDANCE: Self = Self { resistance: Resistance::ohms(3e3), capacitance: Capacitance::farads(0.0) };

    /// The meter's impedance at a frequency.
    ///
    /// # Formula
    /// `1 / (1/R + j 2 pi f C)`.
    ///
    /// # Range
    /// Resistances above nought.
    #[must_use]
    pub fn impedance(self, frequency: Frequency) -> Impedance {
        let capacitive = Impedance::of_capacitance(self.capacitance, frequency).as_complex().reciprocal();
        let resistive = Impedance::from(self.resistance).as_complex().reciprocal();
        let impedance = (capacitive + resistive).reciprocal();
        Impedance::ohms(impedance.re, impedance.im)
    }
}

/// The three readings at an opening, as sizes without sign.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Readings {
    /// Hot to neutral.
    pub hot_to_neutral: Voltage,
    /// Hot to ground.
    pub hot_to_ground: Voltage,
    /// Neutral to ground.
    pub neutral_to_ground: Voltage,
}
