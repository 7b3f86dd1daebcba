//! Standing leakage: limits of what is plugged in, what capacitance lets through, and sums on multiwire legs.

use crate::{Capacitance, CapacitancePerLength, Complex, Current, Frequency, Impedance, Length, OutOfRange, Voltage};

/// The longest advised run on a Class A breaker, one way. Advice, not a rule; cable alone does not explain it.
/// Published: presidium.ph/2020/08/19/importance-of-controlling-leakage-current.
pub const ADVISED_RUN_ON_CLASS_A: Length = Length::feet(250);

/// What a cable's conductors have between them. Assumed: no published value for house cable was found, so results are
/// given over the whole range.
pub const ASSUMED_CABLE_CAPACITANCE: (CapacitancePerLength, CapacitancePerLength) =
    (CapacitancePerLength::picofarads_per_metre(50.0), CapacitancePerLength::picofarads_per_metre(150.0));

/// Leakage met on a computer. Published: a maker's catalogue, page 118, among typical leakages of appliances.
pub const TYPICAL_OF_A_COMPUTER: (Current, Current) = (Current::milliamperes(1.0), Current::milliamperes(2.0));

/// Appliances as the product standards here divide them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Appliance {
    /// On a cord with two wires.
    TwoWireCord,
    /// On a cord with a grounding conductor, and moved about.
    ThreeWirePortable,
    /// With a grounding conductor, and standing or fixed.
    ThreeWireStationaryOrFixed,
}

/// The most an appliance of this kind may leak.
///
/// # Formula
/// 0.5 mA; 0.75 mA if stationary or fixed with a grounding conductor.
///
/// # Source
/// UL 8750, 8.7.1, quoted at cgets.net/bbs/read-htm-tid-1275: one informal source; the same for other appliances by
/// UL 101, from memory.
///
/// # Range
/// Appliances in order; a heating element may leak more when cold and damp, and a faulty appliance any current.
///
/// # Example
/// ```
/// use electrical::formulas::leakage::{Appliance, appliance_limit};
/// let limit = appliance_limit(Appliance::ThreeWireStationaryOrFixed);
/// assert!((limit.as_milliamperes() - 0.75).abs() < 1e-12);
/// ```
#[must_use]
pub const fn appliance_limit(appliance: Appliance) -> Current {
    match appliance {
        Appliance::TwoWireCord | Appliance::ThreeWirePortable => Current::milliamperes(0.5),
        Appliance::ThreeWireStationaryOrFixed => Current::milliamperes(0.75),
    }
}

/// The limit of the international standard for portable information equipment with a grounding conductor.
/// Published: engx.theiet.org/f/wiring-and-regulations/22476.
pub const INTERNATIONAL_PORTABLE_INFORMATION_EQUIPMENT: Current = Current::milliamperes(0.75);

/// The most an appliance on a plug may leak by the international standard, for comparison.
///
/// # Formula
/// 2 mA to 4 A; 0.5 mA per ampere to 10 A; 5 mA above.
///
/// # Source
/// IEC 61140 as reproduced in a maker's catalogue, page 118.
///
/// # Range
/// Rated currents from 0 to 32 A.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Current, formulas::leakage::international_plug_limit};
/// assert_eq!(international_plug_limit(Current::amperes(8.0))?.as_milliamperes(), 4.0);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn international_plug_limit(rated: Current) -> Result<Current, OutOfRange> {
    let amperes = OutOfRange::check("rated current, A", rated.as_amperes(), 0.0, 32.0)?;
    Ok(Current::milliamperes((0.5 * amperes).clamp(2.0, 5.0)))
}

/// The most a fixed appliance up to 7 A may leak by the international standard.
/// Published: a maker's catalogue, page 118, on IEC 61140.
pub const INTERNATIONAL_FIXED_LIMIT_TO_7_A: Current = Current::milliamperes(3.5);

/// The part of a device's trip current that standing leakage should not pass.
///
/// # Formula
/// `fraction * trip current`. The British rule takes 30 %; none was found here.
///
/// # Source
/// engx.theiet.org/f/wiring-and-regulations/22476.
///
/// # Range
/// Fractions from 0 to 1.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Current, formulas::leakage::budget};
/// assert!((budget(Current::milliamperes(30.0), 0.3)?.as_milliamperes() - 9.0).abs() < 1e-9);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn budget(trip: Current, fraction: f64) -> Result<Current, OutOfRange> {
    Ok(trip * OutOfRange::check("fraction of the trip current", fraction, 0.0, 1.0)?)
}

/// The current through a capacitance, a quarter turn ahead of the voltage.
///
/// # Formula
/// `I = 2 pi f C V`.
///
/// # Source
/// The definition of capacitance.
///
/// # Range
/// To 1000 V, 1000 Hz and 1 mF.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Capacitance, Frequency, Voltage, formulas::leakage::through_capacitance};
/// let (volts, hertz) = (Voltage::volts(120.0), Frequency::hertz(60.0));
/// let per_nanofarad = through_capacitance(Capacitance::nanofarads(1.0), volts, hertz)?;
/// assert_eq!(format!("{:.2}", per_nanofarad.as_milliamperes() * 1000.0), "45.24");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn through_capacitance(
    capacitance: Capacitance,
    voltage: Voltage,
    frequency: Frequency,
) -> Result<Current, OutOfRange> {
    OutOfRange::check("capacitance, F", capacitance.as_farads(), 0.0, 1e-3)?;
    OutOfRange::check("voltage, V", voltage.as_volts(), 0.0, 1000.0)?;
    OutOfRange::check("frequency, Hz", frequency.as_hertz(), 0.0, 1000.0)?;
    let siemens = std::f64::consts::TAU * frequency.as_hertz() * capacitance.as_farads();
    Ok(Current::amperes(siemens * voltage.as_volts()))
}

/// What a run of cable leaks, least and most over the assumed capacitance of cable.
///
/// # Formula
/// [`through_capacitance`] of the capacitance per length times the length.
///
/// # Source
/// [`ASSUMED_CABLE_CAPACITANCE`]: an assumption, marked as one.
///
/// # Range
/// Runs to 10 000 ft; 120 or 240 V at 60 Hz, or as [`through_capacitance`].
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Frequency, Length, Voltage, formulas::leakage::of_cable};
/// let (least, most) = of_cable(Length::feet(250), Voltage::volts(120.0), Frequency::hertz(60.0))?;
/// assert_eq!(format!("{:.2} {:.2}", least.as_milliamperes(), most.as_milliamperes()), "0.17 0.52");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn of_cable(run: Length, voltage: Voltage, frequency: Frequency) -> Result<(Current, Current), OutOfRange> {
    OutOfRange::check("run of cable, m", run.as_metres(), 0.0, 3048.0)?;
    let leaks = |per_length: CapacitancePerLength| through_capacitance(per_length * run, voltage, frequency);
    Ok((leaks(ASSUMED_CABLE_CAPACITANCE.0)?, leaks(ASSUMED_CABLE_CAPACITANCE.1)?))
}

/// The leg of a two-leg supply that a leak comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Leg {
    /// The first.
    A,
    /// The second, half a turn from it.
    B,
}

/// One leak to ground: from a leg, through an impedance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leak {
    /// The leg it comes from.
    pub leg: Leg,
    /// Its part in phase with that leg: through resistance.
    pub resistive: Current,
    /// Its part a quarter turn ahead of that leg: through capacitance.
    pub capacitive: Current,
}

impl Leak {
    /// The leak through an impedance to ground from a leg of some voltage.
    ///
    /// # Formula
    /// `I = V / Z`, in its two parts.
    ///
    /// # Source
    /// Ohm's law.
    ///
    /// # Range
    /// Any impedance but nought, which gives numbers that are not finite.
    ///
    /// # Example
    /// ```
    /// use electrical::{Impedance, Voltage, formulas::leakage::{Leak, Leg}};
    /// let leak = Leak::through(Impedance::ohms(0.0, -100_000.0), Leg::A, Voltage::volts(120.0));
    /// assert!((leak.capacitive.as_milliamperes() - 1.2).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn through(impedance: Impedance, leg: Leg, voltage: Voltage) -> Self {
        let phasor = Complex::real(voltage.as_volts()) / impedance.as_complex();
        Self { leg, resistive: Current::amperes(phasor.re), capacitive: Current::amperes(phasor.im) }
    }
}

/// What a device that watches both legs sees of several leaks: their phasor sum. Leaks of the two legs cancel in part.
///
/// # Formula
/// `|sum A - sum B|`, each leak a phasor against its own leg.
///
/// # Source
/// Kirchhoff's current law.
///
/// # Range
/// Any leaks; legs half a turn apart. On a 120 V circuit every leak comes from one leg.
///
/// # Example
/// ```
/// use electrical::{Current, formulas::leakage::{Leak, Leg, seen_of}};
/// let leak = |leg| Leak { leg, resistive: Current::amperes(0.0), capacitive: Current::milliamperes(0.5) };
/// assert_eq!(seen_of(&[leak(Leg::A), leak(Leg::B)]).as_milliamperes(), 0.0);
/// ```
#[must_use]
pub fn seen_of(leaks: &[Leak]) -> Current {
    let sum: Complex = leaks
        .iter()
        .map(|leak| {
            let phasor = Complex::new(leak.resistive.as_amperes(), leak.capacitive.as_amperes());
            if leak.leg == Leg::A { phasor } else { -phasor }
        })
        .sum();
    Current::amperes(sum.magnitude())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formulas::assert_near;

    fn milliamperes_through(nanofarads: f64, volts: f64, hertz: f64) -> f64 {
        let capacitance = Capacitance::nanofarads(nanofarads);
        through_capacitance(capacitance, Voltage::volts(volts), Frequency::hertz(hertz)).unwrap().as_milliamperes()
    }

    /// Published: cgets.net/bbs/read-htm-tid-1275, quoting UL 8750, 8.7.1: 0.5 and 0.75 mA.
    #[test]
    fn appliances_may_leak_half_or_three_quarters_of_a_milliampere() {
        assert_near(appliance_limit(Appliance::TwoWireCord).as_milliamperes(), 0.5, 1e-12);
        assert_near(appliance_limit(Appliance::ThreeWireStationaryOrFixed).as_milliamperes(), 0.75, 1e-12);
    }

    /// Published: a maker's catalogue that reproduces the limits of IEC 61140, page 118: 2, 4 (0.5 per ampere at 8 A), 5 and 3.5 mA; computers
    /// 1 to 2 mA.
    #[test]
    fn the_international_limits() {
        for (amperes, expected) in [(3.0, 2.0), (4.0, 2.0), (8.0, 4.0), (10.5, 5.0)] {
            let found = international_plug_limit(Current::amperes(amperes)).unwrap();
            assert_near(found.as_milliamperes(), expected, 1e-12);
        }
        assert_near(INTERNATIONAL_FIXED_LIMIT_TO_7_A.as_milliamperes(), 3.5, 1e-12);
        assert_near(TYPICAL_OF_A_COMPUTER.0.as_milliamperes(), 1.0, 1e-12);
        assert_near(TYPICAL_OF_A_COMPUTER.1.as_milliamperes(), 2.0, 1e-12);
    }

    /// Published: engx.theiet.org/f/wiring-and-regulations/22476: 0.75 mA; 30 % of 30 mA are 9 mA.
    #[test]
    fn the_british_budget() {
        assert_near(INTERNATIONAL_PORTABLE_INFORMATION_EQUIPMENT.as_milliamperes(), 0.75, 1e-12);
        assert_near(budget(Current::milliamperes(30.0), 0.3).unwrap().as_milliamperes(), 9.0, 0.001);
        assert!(budget(Current::milliamperes(30.0), 1.1).is_err());
    }

    /// Published: diyaudio.com/community/threads/power-conditioner-caps.59315: 4.7 nF at 240 V, 50 Hz: 0.354 mA.
    #[test]
    fn a_filter_capacitor_leaks_a_third_of_a_milliampere() {
        assert_near(milliamperes_through(4.7, 240.0, 50.0), 0.354, 0.001);
    }

    /// By hand: 2π × 60 × 1e-9 × 120 = 45.24 µA; 2π × 50 × 1e-9 × 230 = 72.3 µA, which one page rounds to 73, wrongly.
    #[test]
    fn leakage_per_nanofarad() {
        assert_near(milliamperes_through(1.0, 120.0, 60.0) * 1000.0, 45.24, 0.02);
        let british = milliamperes_through(1.0, 230.0, 50.0) * 1000.0;
        assert_near(british, 72.3, 0.05);
        assert!((british - 73.0).abs() > 0.5);
    }

    /// Published: presidium.ph/2020/08/19/importance-of-controlling-leakage-current: 250 ft.
    /// By hand: 100 pF/m × 76.2 m at 120 V and 60 Hz: 0.345 mA, the middle of 0.17 to 0.52 mA.
    #[test]
    fn cable_alone_does_not_explain_the_advice_of_250_ft() {
        assert_near(ADVISED_RUN_ON_CLASS_A.as_feet(), 250.0, 0.0);
        let (volts, hertz) = (Voltage::volts(120.0), Frequency::hertz(60.0));
        let middle = CapacitancePerLength::picofarads_per_metre(100.0) * ADVISED_RUN_ON_CLASS_A;
        assert_near(through_capacitance(middle, volts, hertz).unwrap().as_milliamperes(), 0.345, 0.002);
        let (_, most) = of_cable(ADVISED_RUN_ON_CLASS_A, volts, hertz).unwrap();
        assert!(most < Current::milliamperes(4.0) * 0.25);
    }

    /// By hand: 3 mA resistive and 4 mA capacitive make 5 mA; the same on the other leg cancels it.
    #[test]
    fn leaks_add_as_phasors() {
        let leak = |leg, resistive, capacitive| Leak {
            leg,
            resistive: Current::milliamperes(resistive),
            capacitive: Current::milliamperes(capacitive),
        };
        let one_leg = [leak(Leg::A, 3.0, 0.0), leak(Leg::A, 0.0, 4.0)];
        assert_near(seen_of(&one_leg).as_milliamperes(), 5.0, 1e-12);
        let both = [leak(Leg::A, 3.0, 4.0), leak(Leg::B, 3.0, 4.0)];
        assert_near(seen_of(&both).as_milliamperes(), 0.0, 1e-12);
        let through = Leak::through(Impedance::ohms(0.0, -1e5), Leg::A, Voltage::volts(120.0));
        assert_near(through.capacitive.as_milliamperes(), 1.2, 1e-12);
    }

    #[test]
    fn quantities_out_of_range_are_refused() {
        let (volts, hertz) = (Voltage::volts(120.0), Frequency::hertz(60.0));
        assert!(through_capacitance(Capacitance::farads(-1.0), volts, hertz).is_err());
        assert!(of_cable(Length::feet(20_000), volts, hertz).is_err());
        assert!(international_plug_limit(Current::amperes(-1.0)).is_err());
    }
}
