//! How long a fault's path may be for a multiple of the breaker's rating to flow. The multiple is the asker's choice.

use crate::{Amperes, Gauge, Length, OutOfRange, Resistance, ResistancePerLength, Voltage};

/// What is asked of the current of a fault. Sources take 4 times with an arc of 40 V, 5 times with 50 V, 5, 8 or 10 times
/// without an arc: no standard decides, so the result is advice and says with what it was worked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    /// The voltage of the source, at its lowest.
    pub supply: Voltage,
    /// The voltage that an arc takes for itself; nought for a bolted fault.
    pub arc: Voltage,
    /// The breaker's rating.
    pub rating: Amperes,
    /// How many times the rating must flow.
    pub multiple: f64,
}

impl Target {
    /// The greatest impedance that the whole loop may have.
    ///
    /// # Formula
    /// `Z = (V - V_arc) / (m * rating)`.
    ///
    /// # Source
    /// Ground rod does not assist in clearing a fault, EC&M 2000.
    ///
    /// # Range
    /// Supplies to 1000 V, arcs below the supply, ratings to 6000 A, multiples from 1 to 100.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other.
    ///
    /// # Example
    /// ```
    /// use electrical::{Amperes, Voltage, formulas::fault_path_length::Target};
    /// let rating = Amperes::new(20);
    /// let bolted = Target { supply: Voltage::volts(120.0), arc: Voltage::volts(0.0), rating, multiple: 10.0 };
    /// assert_eq!(bolted.greatest_impedance()?.as_ohms(), 0.6);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn greatest_impedance(self) -> Result<Resistance, OutOfRange> {
        let supply = OutOfRange::check("supply, V", self.supply.as_volts(), 1.0, 1000.0)?;
        let arc = OutOfRange::check("arc, V", self.arc.as_volts(), 0.0, supply)?;
        let rating = OutOfRange::check("rating, A", f64::from(self.rating.get()), 1.0, 6000.0)?;
        let multiple = OutOfRange::check("multiple of the rating", self.multiple, 1.0, 100.0)?;
        Ok(Resistance::ohms((supply - arc) / (multiple * rating)))
    }

    /// The longest run, one way, whose loop carries that current.
    ///
    /// # Formula
    /// `L = (Z - Zs) / (R_hot + R_return)`, Zs the source's impedance.
    ///
    /// # Source
    /// As [`Target::greatest_impedance`]; the form with an arc is that of the 1994 study of steel conduit as quoted at
    /// trade forum, thread 136726.
    ///
    /// # Range
    /// As [`Target::greatest_impedance`]; source impedances from 0 to 10 Ω; answers to 10 000 ft. A source that alone
    /// exceeds the impedance gives no length.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other.
    ///
    /// # Example
    /// ```
    /// use electrical::{Amperes, Resistance, ResistancePerLength, Voltage, formulas::fault_path_length::Target};
    /// let rating = Amperes::new(20);
    /// let arcing = Target { supply: Voltage::volts(120.0), arc: Voltage::volts(40.0), rating, multiple: 4.0 };
    /// let hot = ResistancePerLength::ohms_per_thousand_feet(1.93);
    /// let found = arcing.longest_run(Resistance::ohms(0.0), hot, hot)?;
    /// assert_eq!(found.as_feet().round(), 259.0);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn longest_run(
        self,
        source: Resistance,
        hot: ResistancePerLength,
        return_path: ResistancePerLength,
    ) -> Result<Length, OutOfRange> {
        let source = OutOfRange::check("source impedance, Ω", source.as_ohms(), 0.0, 10.0)?;
        let left = self.greatest_impedance()?.as_ohms() - source;
        let metres = left / (hot + return_path).as_ohms_per_metre();
        Ok(Length::nearest_to_metres(OutOfRange::check("longest run, m", metres, 0.0, 3048.0)?))
    }

    /// The resistance per length of a whole loop, out and back, that a published longest run implies.
    ///
    /// # Formula
    /// `R = Z / L`.
    ///
    /// # Source
    /// [`Target::longest_run`], solved for the resistance.
    ///
    /// # Range
    /// As [`Target::greatest_impedance`]; runs from 1 to 10 000 ft.
    ///
    /// # Errors
    /// [`OutOfRange`] for any other.
    ///
    /// # Example
    /// ```
    /// use electrical::{Amperes, Length, Voltage, formulas::fault_path_length::Target};
    /// let rating = Amperes::new(20);
    /// let arcing = Target { supply: Voltage::volts(120.0), arc: Voltage::volts(50.0), rating, multiple: 5.0 };
    /// let found = arcing.implied_loop(Length::feet(280))?;
    /// assert_eq!(format!("{:.2}", found.as_ohms_per_thousand_feet()), "2.50");
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn implied_loop(self, longest: Length) -> Result<ResistancePerLength, OutOfRange> {
        let metres = OutOfRange::check("longest run, m", longest.as_metres(), 0.3048, 3048.0)?;
        Ok(ResistancePerLength::ohms_per_metre(self.greatest_impedance()?.as_ohms() / metres))
    }
}

/// The longest run of conductors from the breaker to the first outlet where an arc-fault device of the outlet type stands
/// there. `None` for a size for which no text was read.
///
/// # Formula
/// 50 ft of 14 AWG, 70 ft of 12 AWG.
///
/// # Source
/// NEC 2014, 210.12(A), as quoted at trade forum, thread 113884.
///
/// # Range
/// 14 and 12 AWG.
///
/// # Example
/// ```
/// use electrical::{Gauge, Length, formulas::fault_path_length::arc_fault_home_run};
/// assert_eq!(arc_fault_home_run(Gauge::AWG_14), Some(Length::feet(50)));
/// ```
#[must_use]
pub fn arc_fault_home_run(gauge: Gauge) -> Option<Length> {
    match gauge.number() {
        14 => Some(Length::feet(50)),
        12 => Some(Length::feet(70)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formulas::assert_near;

    fn target(arc: f64, rating: u32, multiple: f64) -> Target {
        let (supply, arc) = (Voltage::volts(120.0), Voltage::volts(arc));
        Target { supply, arc, rating: Amperes::new(rating), multiple }
    }

    /// The longest run in feet of hot and return of the same resistance.
    fn feet(target: Target, ohms_per_thousand_feet: f64) -> f64 {
        let each = ResistancePerLength::ohms_per_thousand_feet(ohms_per_thousand_feet);
        target.longest_run(Resistance::ohms(0.0), each, each).unwrap().as_feet()
    }

    /// Published: Ground rod does not assist in clearing a fault, EC&M 2000: 0.8 Ω for 15 A, 0.6 Ω for 20 A.
    #[test]
    fn ten_times_the_rating_takes_a_loop_below_an_ohm() {
        assert_near(target(0.0, 15, 10.0).greatest_impedance().unwrap().as_ohms(), 0.8, 0.001);
        assert_near(target(0.0, 20, 10.0).greatest_impedance().unwrap().as_ohms(), 0.6, 0.001);
    }

    /// Published: the 1994 study of steel conduit, quoted at trade forum, thread 136726: 280 ft with a 50 V arc
    /// and 5 times 20 A. By hand: 0.7 Ω / 280 ft = 2.5 mΩ/ft; with it 40 V and 4 times give 400 ft, from memory 395.
    #[test]
    fn half_inch_tubing_implies_a_loop_of_2_5_milliohms_a_foot() {
        let implied = target(50.0, 20, 5.0).implied_loop(Length::feet(280)).unwrap();
        assert_near(implied.as_ohms_per_thousand_feet(), 2.5, 0.01);
        let nought = ResistancePerLength::ohms_per_metre(0.0);
        let found = target(40.0, 20, 4.0).longest_run(Resistance::ohms(0.0), implied, nought).unwrap();
        assert_near(found.as_feet(), 395.0, 8.0);
    }

    /// By hand: (120 - 40)/80/3.86 × 1000 = 259.1; (120 - 50)/100/3.86 × 1000 = 181.3; 0.9333/6.14 × 1000 = 152.0;
    /// 1.2/3.86 × 1000 = 310.9.
    #[test]
    fn runs_of_house_cable() {
        assert_near(feet(target(40.0, 20, 4.0), 1.93), 259.1, 0.5);
        assert_near(feet(target(50.0, 20, 5.0), 1.93), 181.3, 0.5);
        assert_near(feet(target(50.0, 15, 5.0), 3.07), 152.0, 0.5);
        assert_near(feet(target(0.0, 20, 5.0), 1.93), 310.9, 0.5);
    }

    /// Published: trade forum, thread 113884: 50 ft and 70 ft.
    #[test]
    fn home_runs_to_an_arc_fault_device_of_the_outlet_type() {
        assert_eq!(arc_fault_home_run(Gauge::AWG_14), Some(Length::feet(50)));
        assert_eq!(arc_fault_home_run(Gauge::AWG_12), Some(Length::feet(70)));
        assert_eq!(arc_fault_home_run(Gauge::AWG_10), None);
    }

    #[test]
    fn a_source_too_weak_for_the_current_gives_no_length() {
        let each = ResistancePerLength::ohms_per_thousand_feet(1.93);
        assert!(target(0.0, 20, 10.0).longest_run(Resistance::ohms(1.0), each, each).is_err());
        assert!(target(130.0, 20, 5.0).greatest_impedance().is_err());
    }
}
