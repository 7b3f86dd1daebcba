//! The loop of a ground fault from the source to the fault and back: its current, the touch voltage, the clearing.

use super::breaker_limits::{self, Clearing};
use super::conductor_resistance::Conductor;
use super::fault_current::{Fault, at_terminals, full_load};
use crate::{Amperes, Current, Length, OutOfRange, Resistance, ResistancePerLength, Temperature, Voltage};

/// What stands behind the loop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Source {
    /// A fault current, line to neutral, that is stated for the point where the loop begins.
    AvailableCurrent {
        /// The lowest that may be there, on which clearing rests.
        least: Current,
        /// The highest that may be there.
        most: Current,
    },
    /// A single-phase transformer of 120/240 V with an endless supply behind it.
    Transformer {
        /// Its size in kVA.
        kilovolt_amperes: f64,
        /// Its impedance in percent, by the nameplate, good to a tenth.
        impedance_percent: f64,
    },
}

/// The least and the most that one half of a transformer's winding gives, of what the whole gives. From memory: the
/// point-to-point method takes 1.5, manufacturers state 1.33 to 1.67.
const HALF_WINDING: (f64, f64) = (1.33, 1.67);
/// A transformer's impedance may lie a tenth to either side of its nameplate. From memory: IEEE C57.12.
const NAMEPLATE: f64 = 0.1;

impl Source {
    /// The least and the greatest impedance of the source, line to neutral.
    ///
    /// # Formula
    /// `V / I`; for a transformer `I = full load at 240 V * 100 / Z%`, times 1.33 with Z a tenth above its nameplate at the
    /// least, 1.67 with a tenth below at the most.
    ///
    /// # Source
    /// Ohm's law; [`at_terminals`].
    ///
    /// # Range
    /// Available currents from 10 to 200 000 A, the least not above the most; transformers as [`full_load`] and
    /// [`at_terminals`].
    ///
    /// # Errors
    /// [`OutOfRange`] for any other.
    ///
    /// # Example
    /// ```
    /// use electrical::{Current, Voltage, formulas::ground_fault_loop::Source};
    /// let stated = Source::AvailableCurrent { least: Current::amperes(500.0), most: Current::amperes(5000.0) };
    /// let span = stated.impedance(Voltage::volts(120.0), Voltage::volts(120.0))?;
    /// assert_eq!((span.least.as_ohms(), span.most.as_ohms()), (0.024, 0.24));
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn impedance(self, least_volts: Voltage, most_volts: Voltage) -> Result<Span, OutOfRange> {
        let (least, most) = match self {
            Self::AvailableCurrent { least, most } => (least, most),
            Self::Transformer { kilovolt_amperes, impedance_percent } => {
                let full = full_load(Fault::TwoWire, kilovolt_amperes, Voltage::volts(240.0))?;
                let at = |percent: f64, half: f64| Ok(at_terminals(full, impedance_percent * percent)? * half);
                (at(1.0 + NAMEPLATE, HALF_WINDING.0)?, at(1.0 - NAMEPLATE, HALF_WINDING.1)?)
            }
        };
        let largest = OutOfRange::check("greatest available current, A", most.as_amperes(), 10.0, 200_000.0)?;
        OutOfRange::check("least available current, A", least.as_amperes(), 10.0, largest)?;
        Ok(Span { least: most_volts / most, most: least_volts / least })
    }
}

/// A resistance known between two ends.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Span {
    /// Its lowest value.
    pub least: Resistance,
    /// Its highest value.
    pub most: Resistance,
}

/// One part of the loop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Part {
    /// A conductor of some length.
    Conductor(Conductor, Length),
    /// A metal raceway or armour of some length, whose resistance per length is known between two ends.
    Metal(ResistancePerLength, ResistancePerLength, Length),
    /// A splice or any other part whose resistance is known between two ends.
    Stated(Span),
}

impl Part {
    /// The part's resistance from its coldest to its hottest.
    ///
    /// # Range
    /// Lengths from 0 to 10 000 ft; resistances from 0 up, the least not above the most.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other.
    fn resistance(self, coldest: Temperature, hottest: Temperature) -> Result<Span, OutOfRange> {
        let check_length = |length: Length| OutOfRange::check("part of a loop, m", length.as_metres(), 0.0, 3048.0);
        let span = match self {
            Self::Conductor(conductor, length) => {
                check_length(length)?;
                let at = |temperature| Ok(conductor.resistance(temperature)? * length);
                Span { least: at(coldest)?, most: at(hottest)? }
            }
            Self::Metal(least, most, length) => {
                check_length(length)?;
                Span { least: least * length, most: most * length }
            }
            Self::Stated(span) => span,
        };
        OutOfRange::check("resistance of a part, Ω", span.least.as_ohms(), 0.0, span.most.as_ohms())?;
        Ok(span)
    }
}

/// A ground fault and everything its current flows through.
#[derive(Clone, Debug, PartialEq)]
pub struct GroundFaultLoop {
    /// The lowest voltage, line to neutral.
    pub least_voltage: Voltage,
    /// The highest voltage, line to neutral.
    pub most_voltage: Voltage,
    /// What stands behind the loop.
    pub source: Source,
    /// From the source to the fault: service, feeder and branch hot conductors.
    pub outgoing: Vec<Part>,
    /// From the fault to where the grounding conductors meet the neutral: EGC or metal path.
    pub grounding: Vec<Part>,
    /// From there to the source: feeder and service neutral.
    pub neutral: Vec<Part>,
    /// The coldest the conductors may be.
    pub coldest: Temperature,
    /// The hottest the conductors may be when the fault begins.
    pub hottest: Temperature,
}

/// What a loop gives, from its weakest to its strongest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoopBand {
    /// The fault current with the weakest source, the hottest conductors and the lowest voltage. Clearing rests on it.
    pub least_current: Current,
    /// The fault current with the strongest source, the coldest conductors and the highest voltage.
    pub most_current: Current,
    /// The impedance at the least current.
    pub most_impedance: Resistance,
    /// The impedance at the greatest current.
    pub least_impedance: Resistance,
    /// The lowest voltage on the faulted metal against the panel's, while the fault lasts.
    pub least_touch: Voltage,
    /// The highest voltage on the faulted metal against the panel's, while the fault lasts.
    pub most_touch: Voltage,
}

impl GroundFaultLoop {
    /// The band of fault currents and touch voltages.
    ///
    /// # Formula
    /// `I = V / Z`. At the weakest `Z = Zs + R`, all of it hot and as if the source were resistance; at the strongest
    /// `Z = sqrt(Zs^2 + R^2)`, all of it cold and as if the source were reactance. The truth lies between. Touch voltage
    /// `V R_grounding / Z`, with the grounding path hot and the rest cold for the highest, and the other way round.
    ///
    /// # Source
    /// Ohm's law. Metal that the fault heats while it lasts is not followed: Kilgore 1996, digital.auraria.edu/AA00003430,
    /// shows how far the current then falls.
    ///
    /// # Range
    /// 100 to 300 V, the least not above the most; the parts' own; -50 °C to 250 °C, the coldest not above the hottest. A
    /// metal path whose resistance nobody has stated cannot be given, and old armour without a bonding strip has none.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::{conductor_resistance::Conductor, ground_fault_loop::{GroundFaultLoop, Part, Source}};
    /// use electrical::{Current, Gauge, Length, Temperature, Voltage};
    /// let run = || vec![Part::Conductor(Conductor::solid_copper(Gauge::AWG_14), Length::feet(50))];
    /// let band = GroundFaultLoop {
    ///     least_voltage: Voltage::volts(120.0),
    ///     most_voltage: Voltage::volts(120.0),
    ///     source: Source::AvailableCurrent { least: Current::amperes(500.0), most: Current::amperes(500.0) },
    ///     outgoing: run(),
    ///     grounding: run(),
    ///     neutral: vec![],
    ///     coldest: Temperature::celsius(20.0),
    ///     hottest: Temperature::celsius(20.0),
    /// }
    /// .band()?;
    /// assert_eq!(band.least_current.as_amperes().round(), 244.0);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn band(&self) -> Result<LoopBand, OutOfRange> {
        let most_volts = OutOfRange::check("voltage, V", self.most_voltage.as_volts(), 100.0, 300.0)?;
        let least_volts = OutOfRange::check("lowest voltage, V", self.least_voltage.as_volts(), 100.0, most_volts)?;
        let hottest = self.hottest.as_celsius();
        OutOfRange::check("coldest conductor, °C", self.coldest.as_celsius(), -50.0, hottest)?;
        let source = self.source.impedance(self.least_voltage, self.most_voltage)?;
        let (source_least, source_most) = (source.least.as_ohms(), source.most.as_ohms());
        let (out_least, out_most) = self.sum(&self.outgoing)?;
        let (ground_least, ground_most) = self.sum(&self.grounding)?;
        let (neutral_least, neutral_most) = self.sum(&self.neutral)?;
        let (rest_least, rest_most) = (out_least + neutral_least, out_most + neutral_most);
        let most_impedance = source_most + rest_most + ground_most;
        let least_impedance = source_least.hypot(rest_least + ground_least);
        let most_touch = most_volts * ground_most / source_least.hypot(rest_least + ground_most);
        let least_touch = least_volts * ground_least / (source_most + rest_most + ground_least);
        Ok(LoopBand {
            least_current: Current::amperes(least_volts / most_impedance),
            most_current: Current::amperes(most_volts / least_impedance),
            most_impedance: Resistance::ohms(most_impedance),
            least_impedance: Resistance::ohms(least_impedance),
            least_touch: Voltage::volts(least_touch),
            most_touch: Voltage::volts(most_touch),
        })
    }

    /// The least and the greatest sum of parts in ohms.
    fn sum(&self, parts: &[Part]) -> Result<(f64, f64), OutOfRange> {
        parts.iter().try_fold((0.0, 0.0), |(least, most), part| {
            let span = part.resistance(self.coldest, self.hottest)?;
            Ok((least + span.least.as_ohms(), most + span.most.as_ohms()))
        })
    }
}

impl LoopBand {
    /// What the standards state of a breaker's clearing at the least current of the band.
    ///
    /// # Formula
    /// [`breaker_limits::clearing`] at the least current.
    ///
    /// # Source
    /// As it.
    ///
    /// # Range
    /// As it.
    ///
    /// # Errors
    /// [`OutOfRange`] as it.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::{breaker_limits::Clearing, ground_fault_loop::LoopBand};
    /// use electrical::{Amperes, Current, Resistance, Voltage};
    /// let through_a_rod = LoopBand {
    ///     least_current: Current::amperes(4.8),
    ///     most_current: Current::amperes(4.8),
    ///     most_impedance: Resistance::ohms(25.0),
    ///     least_impedance: Resistance::ohms(25.0),
    ///     least_touch: Voltage::volts(119.0),
    ///     most_touch: Voltage::volts(120.0),
    /// };
    /// assert_eq!(through_a_rod.clearing(Amperes::new(15))?, Clearing::MayHold);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn clearing(&self, rating: Amperes) -> Result<Clearing, OutOfRange> {
        breaker_limits::clearing(rating, self.least_current)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Gauge;
    use crate::formulas::assert_near;

    /// A loop of equal hot and grounding conductors behind a stated current.
    fn house_loop(amperes: f64, gauge: Gauge, feet: i64, coldest: f64, hottest: f64) -> GroundFaultLoop {
        let run = || vec![Part::Conductor(Conductor::solid_copper(gauge), Length::feet(feet))];
        let available = Current::amperes(amperes);
        GroundFaultLoop {
            least_voltage: Voltage::volts(120.0),
            most_voltage: Voltage::volts(120.0),
            source: Source::AvailableCurrent { least: available, most: available },
            outgoing: run(),
            grounding: run(),
            neutral: Vec::new(),
            coldest: Temperature::celsius(coldest),
            hottest: Temperature::celsius(hottest),
        }
    }

    /// By hand: 120/500 + 100 ft × 2.52537 mΩ/ft = 0.4925 Ω: 243.7 A.
    #[test]
    fn fifty_ft_of_14_awg_behind_500_a_give_244_a_cold() {
        let band = house_loop(500.0, Gauge::AWG_14, 50, 20.0, 75.0).band().unwrap();
        let cold = house_loop(500.0, Gauge::AWG_14, 50, 20.0, 20.0).band().unwrap();
        assert_near(cold.least_current.as_amperes(), 243.7, 0.5);
        assert!(band.least_current < cold.least_current && band.most_current > cold.least_current);
    }

    /// By hand: 0.24 + 0.2 × 3.0712 = 0.8542 Ω: 140.5 A.
    #[test]
    fn a_hundred_ft_of_hot_14_awg_behind_0_24_ohms_give_140_a() {
        let band = house_loop(500.0, Gauge::AWG_14, 100, 20.0, 75.0).band().unwrap();
        assert_near(band.least_current.as_amperes(), 140.5, 0.5);
    }

    /// By hand: equal resistances out and back, and next to no source: half of 120 V.
    #[test]
    fn half_of_the_voltage_stands_on_the_case_of_equal_conductors() {
        let band = house_loop(200_000.0, Gauge::AWG_12, 1000, 20.0, 20.0).band().unwrap();
        assert_near(band.least_touch.as_volts(), 60.0, 0.1);
        assert_near(band.most_touch.as_volts(), 60.0, 0.1);
    }

    /// By hand: 25 kVA at 240 V are 104.2 A; at 2 % and half a winding 5208 × 1.5 = 7812 A, within the band.
    #[test]
    fn a_transformer_gives_a_band_about_the_usual_value() {
        let volts = Voltage::volts(120.0);
        let source = Source::Transformer { kilovolt_amperes: 25.0, impedance_percent: 2.0 };
        let span = source.impedance(volts, volts).unwrap();
        assert!(span.least.as_ohms() < 120.0 / 7812.0 && span.most.as_ohms() > 120.0 / 7812.0);
    }

    /// Published: trade forum, thread 78929: no standard sets a time for a branch-level fault.
    #[test]
    fn the_verdict_on_clearing_claims_no_quicker_time_than_is_stated() {
        let band = house_loop(500.0, Gauge::AWG_14, 100, 20.0, 75.0).band().unwrap();
        let verdict = band.clearing(Amperes::new(15)).unwrap();
        assert!(matches!(verdict, Clearing::AtLatest { percent: 300, .. }));
        assert!(verdict.to_string().contains("depends on the breaker's curve"));
        let weak = house_loop(20.0, Gauge::AWG_14, 100, 20.0, 75.0).band().unwrap();
        assert_eq!(weak.clearing(Amperes::new(15)).unwrap(), Clearing::MayHold);
    }

    /// By hand: with a source of reactance 0.3 Ω and 0.4 Ω of wire the loop has 0.5 Ω, with one of resistance 0.7 Ω.
    #[test]
    fn the_angle_of_the_source_is_not_known_and_both_ends_are_taken() {
        let stated = |ohms| Part::Stated(Span { least: Resistance::ohms(ohms), most: Resistance::ohms(ohms) });
        let found = GroundFaultLoop {
            outgoing: vec![stated(0.1)],
            grounding: vec![stated(0.2)],
            neutral: vec![stated(0.1)],
            ..house_loop(400.0, Gauge::AWG_14, 0, 20.0, 20.0)
        };
        let band = found.band().unwrap();
        assert_near(band.least_impedance.as_ohms(), 0.5, 1e-12);
        assert_near(band.most_impedance.as_ohms(), 0.7, 1e-12);
    }

    #[test]
    fn ends_the_wrong_way_round_are_refused() {
        assert!(house_loop(500.0, Gauge::AWG_14, 50, 75.0, 20.0).band().is_err());
        let mut low = house_loop(500.0, Gauge::AWG_14, 50, 20.0, 75.0);
        low.least_voltage = Voltage::volts(126.0);
        assert!(low.band().is_err());
        let (least, most) = (Resistance::ohms(2.0), Resistance::ohms(1.0));
        low.least_voltage = Voltage::volts(114.0);
        low.grounding = vec![Part::Stated(Span { least, most })];
        assert!(low.band().is_err());
    }
}
