//! Diameters and areas of conductors in the American wire gauge.

use crate::{CircularMils, Diameter, Gauge, OutOfRange};

/// The diameter of 36 AWG, on which the series rests, in inches.
const DIAMETER_OF_36_AWG: f64 = 0.005;
/// The ratio of the diameters of 4/0 AWG (0.46 in) and 36 AWG, which lie 39 steps apart.
const RATIO_OF_39_STEPS: f64 = 92.0;
const STEPS: f64 = 39.0;

/// The diameter of a solid conductor by its number in the series.
///
/// # Formula
/// `d = 0.005 in * 92^((36 - n) / 39)`, n = 0 for 1/0, -1 for 2/0, -3 for 4/0.
///
/// # Source
/// The definition of the series, ASTM B258 (from memory); HyperPhysics, American wire gauge table.
///
/// # Range
/// Numbers from -3 (4/0 AWG) to 40.
///
/// # Errors
/// [`OutOfRange`] for any other number.
///
/// # Example
/// ```
/// use electrical::formulas::awg::diameter;
/// assert_eq!(format!("{:.4}", diameter(12)?.as_inches()), "0.0808");
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn diameter(number: i8) -> Result<Diameter, OutOfRange> {
    let number = OutOfRange::check("number of the wire gauge", f64::from(number), -3.0, 40.0)?;
    Ok(Diameter::inches(DIAMETER_OF_36_AWG * RATIO_OF_39_STEPS.powf((36.0 - number) / STEPS)))
}

/// The area of a round conductor in circular mils: the square of its diameter in thousandths of an inch.
///
/// # Formula
/// `A = (1000 d)^2`, d in inches.
///
/// # Source
/// The definition of the circular mil.
///
/// # Range
/// Diameters from 0 to 100 mm.
///
/// # Errors
/// [`OutOfRange`] for any other diameter.
///
/// # Example
/// ```
/// use electrical::formulas::awg::{area, diameter};
/// assert_eq!(area(diameter(14)?)?.get().round(), 4107.0);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn area(diameter: Diameter) -> Result<CircularMils, OutOfRange> {
    OutOfRange::check("diameter of a conductor, mm", diameter.as_millimetres(), 0.0, 100.0)?;
    Ok(CircularMils::new((diameter.as_inches() * 1000.0).powi(2)))
}

/// The area of a conductor of a size that is made, by the series. Where the code decides by an area it takes the
/// rounded areas of its own table, which the rulebook holds.
///
/// # Formula
/// [`area`] of the [`diameter`].
///
/// # Source
/// As those two.
///
/// # Range
/// Every [`Gauge`].
///
/// # Example
/// ```
/// use electrical::{Gauge, formulas::awg::area_of};
/// assert_eq!(area_of(Gauge::AWG_12).get().round(), 6530.0);
/// ```
#[must_use]
pub fn area_of(gauge: Gauge) -> CircularMils {
    let inches = DIAMETER_OF_36_AWG * RATIO_OF_39_STEPS.powf((36.0 - f64::from(gauge.number())) / STEPS);
    CircularMils::new((inches * 1000.0).powi(2))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formulas::assert_near;

    /// Published: HyperPhysics, American wire gauge table, hyperphysics.phy-astr.gsu.edu/hbase/Tables/wirega.html.
    #[test]
    fn diameters_are_those_of_the_published_table() {
        let published = [
            (14, 0.06408),
            (12, 0.0808),
            (10, 0.10189),
            (8, 0.12849),
            (6, 0.16202),
            (4, 0.20431),
            (2, 0.25763),
            (0, 0.32485),
        ];
        for (number, inches) in published {
            assert_near(diameter(number).unwrap().as_inches(), inches, 0.000_12);
        }
    }

    /// Published: HyperPhysics, American wire gauge table, which cuts 6529.9 off to 6529.
    #[test]
    fn areas_are_those_of_the_published_table() {
        for (number, circular_mils) in [(14, 4106.8), (12, 6529.0), (8, 16_509.0)] {
            assert_near(area(diameter(number).unwrap()).unwrap().get(), circular_mils, 3.0);
            let gauge = Gauge::from_number(number).unwrap();
            assert_near(area_of(gauge).get(), circular_mils, 3.0);
        }
    }

    #[test]
    fn numbers_outside_the_series_are_refused() {
        assert_eq!(diameter(-4).unwrap_err().least, -3.0);
        assert_eq!(diameter(41).unwrap_err().most, 40.0);
        assert!(area(Diameter::millimetres(-1.0)).is_err());
    }
}
