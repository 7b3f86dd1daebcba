//! What a branch circuit hangs on: the transformer, the service, the panel's bond and the electrodes.

use crate::{Frequency, Impedance, Resistance, Voltage};

/// A grounded supply of two legs half a turn apart, seen from a panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply {
    /// Each leg to neutral at the source, without load.
    pub leg_voltage: Voltage,
    /// The frequency.
    pub frequency: Frequency,
    /// From the source to the panel's leg buses, each: transformer, service, feeder, breaker. Not nought.
    pub leg: Impedance,
    /// From the source to the panel's neutral bus. Not nought.
    pub neutral: Impedance,
    /// Between the panel's neutral bus and its ground bus: the main bonding jumper. Not nought.
    pub bond: Resistance,
    /// From the panel's ground bus to earth: the dwelling's electrodes.
    pub electrode: Resistance,
    /// From the source's neutral to earth: the utility's electrodes.
    pub source_electrode: Resistance,
}

impl Supply {
    /// A usual dwelling: 120/240 V, 60 Hz; 20 mΩ in each leg and 10 mΩ in the neutral, a bond of 0.1 mΩ, electrodes of
    /// 25 Ω and 5 Ω. Common practice, no source: to be replaced by what is known.
    #[must_use]
    pub const fn usual() -> Self {
        Self {
            leg_voltage: Voltage::volts(120.0),
            frequency: Frequency::hertz(60.0),
            leg: Impedance::ohms(0.02, 0.0),
            neutral: Impedance::ohms(0.01, 0.0),
            bond: Resistance::ohms(1e-4),
            electrode: Resistance::ohms(25.0),
            source_electrode: Resistance::ohms(5.0),
        }
    }
}
