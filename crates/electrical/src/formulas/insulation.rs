//! Insulation types, old and new, and the temperature each may reach.

use crate::Temperature;

/// The column of the tables that a conductor's insulation puts it in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TemperatureRating {
    /// 60 °C.
    C60,
    /// 75 °C.
    C75,
    /// 90 °C.
    C90,
}

impl TemperatureRating {
    /// The temperature in whole degrees Celsius.
    #[must_use]
    pub const fn celsius(self) -> u32 {
        match self {
            Self::C60 => 60,
            Self::C75 => 75,
            Self::C90 => 90,
        }
    }

    /// The temperature.
    #[must_use]
    pub const fn temperature(self) -> Temperature {
        Temperature::celsius(self.celsius() as f64)
    }
}

/// A type of insulation or of cable, by the letters of the code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Insulation {
    /// R: code rubber, to the 1950s; also what knob-and-tube wiring and old armoured cable are covered with.
    R,
    /// RW: rubber for wet places.
    Rw,
    /// RF: rubber-covered fixture wire.
    Rf,
    /// RH: heat-resisting rubber.
    Rh,
    /// RHH: rubber for 90 °C.
    Rhh,
    /// T: thermoplastic, from the 1940s.
    T,
    /// TW: thermoplastic for wet places.
    Tw,
    /// THW: heat-resisting thermoplastic for wet places.
    Thw,
    /// THHN: thermoplastic for 90 °C under nylon.
    Thhn,
    /// XHHW-2 and its like: cross-linked, 90 °C.
    Xhhw2,
    /// NM: nonmetallic cable made before 1985, conductors of 60 °C.
    Nm,
    /// NM-B: nonmetallic cable since 1985, conductors of 90 °C in a cable used as one of 60 °C.
    NmB,
}

impl Insulation {
    /// The column the conductors' own insulation puts them in, from which correction and adjustment start.
    ///
    /// # Source
    /// FM 5-424, appendix B, for the rubber types; the code's table of insulations, from memory, for the others.
    ///
    /// # Range
    /// Dry places.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::insulation::Insulation;
    /// assert_eq!(Insulation::R.conductor_rating().celsius(), 60);
    /// assert_eq!(Insulation::NmB.conductor_rating().celsius(), 90);
    /// ```
    #[must_use]
    pub const fn conductor_rating(self) -> TemperatureRating {
        match self {
            Self::R | Self::Rw | Self::Rf | Self::T | Self::Tw | Self::Nm => TemperatureRating::C60,
            Self::Rh | Self::Thw => TemperatureRating::C75,
            Self::Rhh | Self::Thhn | Self::Xhhw2 | Self::NmB => TemperatureRating::C90,
        }
    }

    /// The column that the final ampacity may not pass, beside what the terminals allow.
    ///
    /// # Source
    /// NEC 334.80 for nonmetallic cable, from memory.
    ///
    /// # Range
    /// Dry places.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::insulation::Insulation;
    /// assert_eq!(Insulation::NmB.final_rating().celsius(), 60);
    /// ```
    #[must_use]
    pub const fn final_rating(self) -> TemperatureRating {
        match self {
            Self::NmB => TemperatureRating::C60,
            other => other.conductor_rating(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: FM 5-424, Theater of Operations Electrical Systems, appendix B: R 60 °C, RH 75, RHH 90, RW 60, RF 60.
    #[test]
    fn the_rubber_types_have_the_temperatures_of_the_army_manual() {
        use Insulation::{R, Rf, Rh, Rhh, Rw};
        let found = [R, Rh, Rhh, Rw, Rf].map(|insulation| insulation.conductor_rating().celsius());
        assert_eq!(found, [60, 75, 90, 60, 60]);
    }
}
