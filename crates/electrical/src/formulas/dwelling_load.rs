//! The load of a dwelling as far as its lighting and small circuits go, by the standard method.

use crate::{Amperes, OutOfRange};
use std::fmt;
use std::iter::Sum;
use std::ops::Add;

/// A load in whole volt-amperes, exact.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct VoltAmperes(u64);

impl VoltAmperes {
    /// A load of so many volt-amperes.
    #[must_use]
    pub const fn new(volt_amperes: u64) -> Self {
        Self(volt_amperes)
    }

    /// The load in volt-amperes.
    #[must_use]
    pub const fn get(self) -> u64 {
        self.0
    }
}

impl Add for VoltAmperes {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sum for VoltAmperes {
    fn sum<I: Iterator<Item = Self>>(loads: I) -> Self {
        loads.fold(Self(0), Add::add)
    }
}

impl fmt::Display for VoltAmperes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} VA", self.0)
    }
}

/// The values the method works with. They change with the edition: whoever asks names them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LoadMethod {
    /// General lighting, in volt-amperes per square foot of the outside area.
    pub lighting_per_square_foot: u64,
    /// One small-appliance or laundry circuit.
    pub per_appliance_circuit: VoltAmperes,
    /// So much counts in full.
    pub first: VoltAmperes,
    /// From the first part to here the second percentage counts.
    pub second_ends_at: VoltAmperes,
    /// The percentage of the second part.
    pub second_percent: u64,
    /// The percentage of the rest.
    pub rest_percent: u64,
}

impl LoadMethod {
    /// The values that Annex D's example of one dwelling works with: 3 VA, 1500 VA; 3000 at 100 %, to 120 000 at 35 %, the
    /// rest at 25 %.
    /// Published: NEC 2008 Handbook, Annex D, example D1(a); the tiers also a load form at coursehero.com/file/46301068.
    pub const ANNEX_D: Self = Self {
        lighting_per_square_foot: 3,
        per_appliance_circuit: VoltAmperes(1500),
        first: VoltAmperes(3000),
        second_ends_at: VoltAmperes(120_000),
        second_percent: 35,
        rest_percent: 25,
    };

    /// The general lighting load of a dwelling.
    ///
    /// # Formula
    /// `3 VA * square feet`, the area from the outside dimensions.
    ///
    /// # Source
    /// NEC 220.12 (220.41 since 2023); Annex D, example D1(a).
    ///
    /// # Range
    /// Areas to 1 000 000 square feet.
    ///
    /// # Errors
    /// [`OutOfRange`] for any larger.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::dwelling_load::LoadMethod;
    /// assert_eq!(LoadMethod::ANNEX_D.general_lighting(1500)?.get(), 4500);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn general_lighting(self, square_feet: u64) -> Result<VoltAmperes, OutOfRange> {
        OutOfRange::check("area of a dwelling, square feet", square_feet as f64, 0.0, 1e6)?;
        Ok(VoltAmperes(self.lighting_per_square_foot.saturating_mul(square_feet)))
    }

    /// Lighting together with its small-appliance and laundry circuits.
    ///
    /// # Formula
    /// `lighting + 1500 VA * circuits`.
    ///
    /// # Source
    /// NEC 220.52; Annex D, example D1(a).
    ///
    /// # Range
    /// To 1000 circuits.
    ///
    /// # Errors
    /// [`OutOfRange`] for more.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::dwelling_load::{LoadMethod, VoltAmperes};
    /// let (small_appliance, laundry) = (2, 1);
    /// let found = LoadMethod::ANNEX_D.with_appliance_circuits(VoltAmperes::new(4500), small_appliance + laundry)?;
    /// assert_eq!(found.get(), 9000);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn with_appliance_circuits(self, lighting: VoltAmperes, circuits: u32) -> Result<VoltAmperes, OutOfRange> {
        OutOfRange::check("small-appliance and laundry circuits", f64::from(circuits), 0.0, 1000.0)?;
        Ok(lighting + VoltAmperes(self.per_appliance_circuit.0.saturating_mul(u64::from(circuits))))
    }

    /// What is left of a lighting and small-appliance load by the demand factors, a started volt-ampere counted.
    ///
    /// # Formula
    /// `min(S, 3000) + 35 % of what lies to 120 000 + 25 % of the rest`.
    ///
    /// # Source
    /// NEC table 220.42 (220.45 since 2023); Annex D, example D1(a).
    ///
    /// # Range
    /// Loads to 1 000 000 000 VA. One forum post words the second tier as 170 000, wrongly.
    ///
    /// # Errors
    /// [`OutOfRange`] for more.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::dwelling_load::{LoadMethod, VoltAmperes};
    /// assert_eq!(LoadMethod::ANNEX_D.after_demand(VoltAmperes::new(9000))?.get(), 5100);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn after_demand(self, load: VoltAmperes) -> Result<VoltAmperes, OutOfRange> {
        OutOfRange::check("load, VA", load.0 as f64, 0.0, 1e9)?;
        let first = load.0.min(self.first.0);
        let second = load.0.min(self.second_ends_at.0).saturating_sub(self.first.0);
        let rest = load.0.saturating_sub(self.second_ends_at.0);
        let parts = [(first, 100), (second, self.second_percent), (rest, self.rest_percent)];
        let hundredths =
            parts.into_iter().fold(0_u64, |sum, (part, percent)| sum.saturating_add(part.saturating_mul(percent)));
        Ok(VoltAmperes(hundredths.div_ceil(100)))
    }
}

/// The neutral's share of a dwelling's load: lighting in full, ranges and dryers at 70 %.
///
/// # Formula
/// `lighting after demand + 70 % of range + 70 % of dryer`.
///
/// # Source
/// NEC 220.61; Annex D, example D1(a).
///
/// # Range
/// Loads to 1 000 000 000 VA.
///
/// # Errors
/// [`OutOfRange`] for more.
///
/// # Example
/// ```
/// use electrical::formulas::dwelling_load::{VoltAmperes, neutral_load};
/// let found = neutral_load(VoltAmperes::new(5100), VoltAmperes::new(8000), VoltAmperes::new(5500))?;
/// assert_eq!(found.get(), 14_550);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn neutral_load(
    lighting_after_demand: VoltAmperes,
    range: VoltAmperes,
    dryer: VoltAmperes,
) -> Result<VoltAmperes, OutOfRange> {
    let appliances = range + dryer;
    OutOfRange::check("load, VA", (lighting_after_demand + appliances).0 as f64, 0.0, 1e9)?;
    Ok(lighting_after_demand + VoltAmperes((appliances.0 * 70).div_ceil(100)))
}

/// The current of a load on 120 V, in milliamperes, a started one counted.
///
/// # Formula
/// `I = S / 120 V`.
///
/// # Source
/// Annex D, example D1(a): 4500 VA are 37.5 A.
///
/// # Range
/// Loads to 1 000 000 000 VA.
///
/// # Errors
/// [`OutOfRange`] for more.
///
/// # Example
/// ```
/// use electrical::formulas::dwelling_load::{VoltAmperes, milliamperes_at_120_v};
/// assert_eq!(milliamperes_at_120_v(VoltAmperes::new(4500))?, 37_500);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn milliamperes_at_120_v(load: VoltAmperes) -> Result<u64, OutOfRange> {
    OutOfRange::check("load, VA", load.0 as f64, 0.0, 1e9)?;
    Ok((load.0 * 1000).div_ceil(120))
}

/// The fewest two-wire 120 V branch circuits that carry a general lighting load. Demand factors do not count here.
///
/// # Formula
/// `circuits = ceil(S / (120 V * rating))`; a load that fits exactly takes no further circuit.
///
/// # Source
/// NEC 210.11(A); Annex D, example D1(a).
///
/// # Range
/// Ratings of 15 A and 20 A; loads to 1 000 000 000 VA.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Amperes, formulas::dwelling_load::{VoltAmperes, lighting_circuits}};
/// assert_eq!(lighting_circuits(VoltAmperes::new(4500), Amperes::new(15)), Ok(3));
/// assert_eq!(lighting_circuits(VoltAmperes::new(4800), Amperes::new(20)), Ok(2));
/// ```
pub fn lighting_circuits(load: VoltAmperes, rating: Amperes) -> Result<u64, OutOfRange> {
    OutOfRange::check("load, VA", load.0 as f64, 0.0, 1e9)?;
    let amperes = rating.get();
    if amperes != 15 && amperes != 20 {
        let given = f64::from(amperes);
        return Err(OutOfRange { what: "rating of a lighting circuit, A", given, least: 15.0, most: 20.0 });
    }
    Ok(load.0.div_ceil(120 * u64::from(amperes)))
}

#[cfg(test)]
mod tests {
    use super::*;

    const METHOD: LoadMethod = LoadMethod::ANNEX_D;

    /// Published: NEC 2008 Handbook, Annex D, example D1(a), as reproduced at flylib.com/books/en/2.419.1: 37.5 A, 9000,
    /// 5100, 18 600 and 14 550 VA; 3 circuits of 15 A or 2 of 20 A.
    #[test]
    fn the_one_family_dwelling_of_annex_d() {
        let lighting = METHOD.general_lighting(1500).unwrap();
        assert_eq!(milliamperes_at_120_v(lighting), Ok(37_500));
        assert_eq!(lighting_circuits(lighting, Amperes::new(15)), Ok(3));
        assert_eq!(lighting_circuits(lighting, Amperes::new(20)), Ok(2));
        let together = METHOD.with_appliance_circuits(lighting, 3).unwrap();
        assert_eq!(together, VoltAmperes::new(9000));
        let demanded = METHOD.after_demand(together).unwrap();
        assert_eq!(demanded, VoltAmperes::new(5100));
        let (range, dryer) = (VoltAmperes::new(8000), VoltAmperes::new(5500));
        assert_eq!(demanded + range + dryer, VoltAmperes::new(18_600));
        assert_eq!(neutral_load(demanded, range, dryer), Ok(VoltAmperes::new(14_550)));
    }

    /// Published: a residential load form, coursehero.com/file/46301068: 8400 VA for 2800 square feet, 6465 VA after demand.
    #[test]
    fn a_dwelling_of_2800_square_feet() {
        let lighting = METHOD.general_lighting(2800).unwrap();
        assert_eq!(lighting, VoltAmperes::new(8400));
        let together = METHOD.with_appliance_circuits(lighting, 3).unwrap();
        assert_eq!(METHOD.after_demand(together), Ok(VoltAmperes::new(6465)));
    }

    /// Published: askinglot.com/how-do-you-calculate-branch-circuits: 4 circuits for 8400 VA; 55 × 35 ft.
    /// By hand: 5775 VA over 1800 and 2400 VA are 3.2 and 2.4: 4 and 3 circuits.
    #[test]
    fn circuits_for_8400_and_5775_va() {
        assert_eq!(lighting_circuits(VoltAmperes::new(8400), Amperes::new(20)), Ok(4));
        let lighting = METHOD.general_lighting(55 * 35).unwrap();
        let found = [15, 20].map(|amperes| lighting_circuits(lighting, Amperes::new(amperes)));
        assert_eq!(found, [Ok(4), Ok(3)]);
    }

    /// Published: electricianmath.com/neccalculations/minimumcircuits.htm: 3 and 2; 40 A over 20 A is exactly 2.
    #[test]
    fn a_load_that_fits_exactly_takes_no_further_circuit() {
        let lighting = METHOD.general_lighting(1600).unwrap();
        let found = [15, 20].map(|amperes| lighting_circuits(lighting, Amperes::new(amperes)));
        assert_eq!(found, [Ok(3), Ok(2)]);
    }

    /// Published: trade forum, thread 825 and the load form: 100, 35 and 25 %, breaks at 3000 and
    /// 120 000 VA. By hand: 3000 + 0.35 × 117 000 + 0.25 × 80 000 = 63 950; a break at 170 000 would give 68 950.
    #[test]
    fn the_tiers_break_at_3000_and_120000_va() {
        assert_eq!(METHOD.after_demand(VoltAmperes::new(3000)), Ok(VoltAmperes::new(3000)));
        assert_eq!(METHOD.after_demand(VoltAmperes::new(3100)), Ok(VoltAmperes::new(3035)));
        assert_eq!(METHOD.after_demand(VoltAmperes::new(200_000)), Ok(VoltAmperes::new(63_950)));
    }

    #[test]
    fn other_ratings_and_endless_loads_are_refused() {
        assert!(lighting_circuits(VoltAmperes::new(1800), Amperes::new(30)).is_err());
        assert!(METHOD.after_demand(VoltAmperes::new(u64::MAX)).is_err());
        assert!(METHOD.general_lighting(u64::MAX).is_err());
        assert!(neutral_load(VoltAmperes::new(u64::MAX), VoltAmperes::new(1), VoltAmperes::new(1)).is_err());
    }
}
