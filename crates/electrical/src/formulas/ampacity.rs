//! What small conductors in cable or raceway may carry, corrected for warm air and adjusted for bundling.

use super::insulation::{Insulation, TemperatureRating};
use super::small_conductors::largest_rating;
use crate::{Amperes, ConductorMetal, Gauge, OutOfRange, Temperature};

/// Which printing of the table of ampacities is meant: the small sizes were lowered once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Printing {
    /// Those of 1975 to 2008.
    Older,
    /// Those since.
    Since,
}

/// An ampacity in ten-thousandths of an ampere: whole amperes times two factors of whole hundredths are exact in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Ampacity(u64);

impl Ampacity {
    /// The ampacity in ten-thousandths of an ampere.
    #[must_use]
    pub const fn as_ten_thousandths(self) -> u64 {
        self.0
    }

    /// The ampacity in amperes.
    #[must_use]
    pub const fn as_amperes(self) -> f64 {
        self.0 as f64 / 10_000.0
    }

    /// Whether the ampacity is at least so many amperes. Exact.
    #[must_use]
    pub const fn carries(self, load: Amperes) -> bool {
        self.0 >= load.get() as u64 * 10_000
    }
}

/// A row: the number of the size; copper at 60, 75 and 90 °C; aluminium at 60, 75 and 90 °C, nought where none is made.
type Row = (i8, [u32; 3], [u32; 3]);

/// Published: ask-the-electrician.com/national-electrical-code-nec-table310-16.html, a page with an older table;
/// 14 AWG also at trade forum, thread 185173. 8 and 6 AWG from memory.
const OLDER: [Row; 5] = [
    (14, [20, 20, 25], [0, 0, 0]),
    (12, [25, 25, 30], [20, 20, 25]),
    (10, [30, 35, 40], [25, 30, 35]),
    (8, [40, 50, 55], [30, 40, 45]),
    (6, [55, 65, 75], [40, 50, 60]),
];

/// From memory; 14 AWG at 60 °C: trade forum, thread 185173.
const SINCE: [Row; 5] = [
    (14, [15, 20, 25], [0, 0, 0]),
    (12, [20, 25, 30], [15, 20, 25]),
    (10, [30, 35, 40], [25, 30, 35]),
    (8, [40, 50, 55], [35, 40, 45]),
    (6, [55, 65, 75], [40, 50, 55]),
];

/// The ampacity of up to three current-carrying conductors in cable or raceway, in air of 30 °C.
///
/// # Formula
/// A row of the table.
///
/// # Source
/// NEC table 310.16 (310-16, 310.15(B)(16)), copies named above the rows; in part from memory.
///
/// # Range
/// 14 to 6 AWG; no 14 AWG aluminium.
///
/// # Errors
/// [`OutOfRange`] for any other size.
///
/// # Example
/// ```
/// use electrical::formulas::{ampacity::{Printing, table_ampacity}, insulation::TemperatureRating};
/// use electrical::{ConductorMetal, Gauge};
/// let found = table_ampacity(Printing::Since, ConductorMetal::Copper, Gauge::AWG_12, TemperatureRating::C90)?;
/// assert_eq!(found.get(), 30);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn table_ampacity(
    printing: Printing,
    metal: ConductorMetal,
    gauge: Gauge,
    rating: TemperatureRating,
) -> Result<Amperes, OutOfRange> {
    let rows = match printing {
        Printing::Older => OLDER,
        Printing::Since => SINCE,
    };
    let column = match rating {
        TemperatureRating::C60 => 0,
        TemperatureRating::C75 => 1,
        TemperatureRating::C90 => 2,
    };
    let copper = metal == ConductorMetal::Copper;
    let amperes = rows
        .iter()
        .find(|(number, ..)| *number == gauge.number())
        .map_or(0, |(_, of_copper, of_aluminium)| if copper { of_copper[column] } else { of_aluminium[column] });
    if amperes > 0 {
        return Ok(Amperes::new(amperes));
    }
    let thinnest = if copper { 14.0 } else { 12.0 };
    Err(OutOfRange { what: "size in AWG", given: f64::from(gauge.number()), least: 6.0, most: thinnest })
}

/// The factor for air that is not at 30 °C, in whole hundredths, for tables that are made for 30 °C. Tables made for
/// 40 °C have other factors, which must not be mixed with these.
///
/// # Formula
/// `k = sqrt((Tc - Ta) / (Tc - 30))`, taken at the upper end of the band of 5 °C that the air lies in, rounded to the
/// nearest hundredth.
///
/// # Source
/// NEC 310.15(B), equation and table; trade forum thread 334.80 derating, trade forum, thread 76226.
///
/// # Range
/// Air from -40 °C to 5 °C below the rating; 10 °C and below count alike. Above, nothing may be carried.
///
/// # Errors
/// [`OutOfRange`] for any other temperature.
///
/// # Example
/// ```
/// use electrical::{Temperature, formulas::{ampacity::correction_percent, insulation::TemperatureRating}};
/// assert_eq!(correction_percent(TemperatureRating::C90, Temperature::fahrenheit(124.0)), Ok(76));
/// assert!(correction_percent(TemperatureRating::C60, Temperature::fahrenheit(135.0)).is_err());
/// ```
pub fn correction_percent(rating: TemperatureRating, air: Temperature) -> Result<u32, OutOfRange> {
    let most = rating.celsius() - 5;
    let air = OutOfRange::check("air temperature, °C", air.as_celsius(), -40.0, f64::from(most))?;
    let band = ((air / 5.0).ceil().max(2.0) as u32) * 5;
    let (above_air, above_30) = (rating.celsius() - band, rating.celsius() - 30);
    // The nearest hundredth of a square root, found without one: (2p - 1)² (Tc - 30) <= 200² (Tc - Ta).
    let nearest = |percent: &u32| (2 * percent - 1).pow(2) * above_30 <= 200 * 200 * above_air;
    Ok((1..=200).take_while(nearest).last().unwrap_or(0))
}

/// The factor for more than three current-carrying conductors bundled or in one raceway, in whole hundredths.
///
/// # Formula
/// To 3: 100; 4 to 6: 80; 7 to 9: 70; 10 to 20: 50; 21 to 30: 45; 31 to 40: 40; 41 and more: 35.
///
/// # Source
/// NEC 310.15(C)(1); the first four as quoted in the threads named at the tests, the others from memory.
///
/// # Range
/// One conductor or more.
///
/// # Errors
/// [`OutOfRange`] for none.
///
/// # Example
/// ```
/// use electrical::formulas::ampacity::adjustment_percent;
/// assert_eq!(adjustment_percent(8), Ok(70));
/// ```
pub fn adjustment_percent(conductors: u32) -> Result<u32, OutOfRange> {
    match conductors {
        0 => Err(OutOfRange { what: "current-carrying conductors", given: 0.0, least: 1.0, most: f64::from(u32::MAX) }),
        1..=3 => Ok(100),
        4..=6 => Ok(80),
        7..=9 => Ok(70),
        10..=20 => Ok(50),
        21..=30 => Ok(45),
        31..=40 => Ok(40),
        _ => Ok(35),
    }
}

/// A conductor where it lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Installed {
    /// Its metal.
    pub metal: ConductorMetal,
    /// Its size.
    pub gauge: Gauge,
    /// Its insulation.
    pub insulation: Insulation,
    /// The warmest air round it.
    pub air: Temperature,
    /// How many current-carrying conductors lie together, it included.
    pub bundled: u32,
}

impl Installed {
    /// The ampacity of the column of its insulation, times both factors. No cap is laid on it.
    ///
    /// # Formula
    /// `table * correction * adjustment`.
    ///
    /// # Source
    /// NEC 310.15(B) and (C).
    ///
    /// # Range
    /// That of [`table_ampacity`], [`correction_percent`] and [`adjustment_percent`].
    ///
    /// # Errors
    /// [`OutOfRange`] as they.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::{ampacity::{Installed, Printing}, insulation::Insulation};
    /// use electrical::{ConductorMetal, Gauge, Temperature};
    /// let attic = Installed {
    ///     metal: ConductorMetal::Copper,
    ///     gauge: Gauge::AWG_12,
    ///     insulation: Insulation::NmB,
    ///     air: Temperature::fahrenheit(124.0),
    ///     bundled: 6,
    /// };
    /// assert_eq!(attic.corrected(Printing::Since)?.as_amperes(), 18.24);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn corrected(self, printing: Printing) -> Result<Ampacity, OutOfRange> {
        let rating = self.insulation.conductor_rating();
        let table = table_ampacity(printing, self.metal, self.gauge, rating)?;
        let percents = correction_percent(rating, self.air)? * adjustment_percent(self.bundled)?;
        Ok(Ampacity(u64::from(table.get()) * u64::from(percents)))
    }

    /// The ampacity it may be used at: corrected, and never above the table at the final rating of its cable nor at the
    /// rating of its terminals.
    ///
    /// # Formula
    /// `min(corrected, table at the final rating, table at the terminals' rating)`.
    ///
    /// # Source
    /// NEC 334.80 and 110.14(C).
    ///
    /// # Range
    /// As [`Installed::corrected`].
    ///
    /// # Errors
    /// [`OutOfRange`] as it.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::ampacity::{Installed, Printing};
    /// use electrical::formulas::insulation::{Insulation, TemperatureRating};
    /// use electrical::{ConductorMetal, Gauge, Temperature};
    /// let (metal, gauge) = (ConductorMetal::Copper, Gauge::AWG_12);
    /// let cool = Installed { metal, gauge, insulation: Insulation::NmB, air: Temperature::celsius(25.0), bundled: 2 };
    /// assert_eq!(cool.usable(Printing::Since, TemperatureRating::C75)?.as_amperes(), 20.0);
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn usable(self, printing: Printing, terminals: TemperatureRating) -> Result<Ampacity, OutOfRange> {
        let last = self.insulation.final_rating().min(terminals);
        let cap = table_ampacity(printing, self.metal, self.gauge, last)?;
        Ok(self.corrected(printing)?.min(Ampacity(u64::from(cap.get()) * 10_000)))
    }

    /// The largest of the usual ratings, 15 to 60 A, that the usable ampacity reaches and the small-conductor rule
    /// allows. `None` if it carries none of them.
    ///
    /// # Formula
    /// The greatest rating not above the usable ampacity nor above [`largest_rating`].
    ///
    /// # Source
    /// NEC 240.4(D) and 240.6(A). That a rating may be the next above the ampacity, 240.4(B), is not for circuits that feed
    /// several receptacles, and is left out here.
    ///
    /// # Range
    /// As [`Installed::corrected`].
    ///
    /// # Errors
    /// [`OutOfRange`] as it.
    ///
    /// # Example
    /// ```
    /// use electrical::formulas::ampacity::{Installed, Printing};
    /// use electrical::formulas::insulation::{Insulation, TemperatureRating};
    /// use electrical::{Amperes, ConductorMetal, Gauge, Temperature};
    /// let (metal, gauge) = (ConductorMetal::Copper, Gauge::AWG_14);
    /// let cool = Installed { metal, gauge, insulation: Insulation::NmB, air: Temperature::celsius(25.0), bundled: 2 };
    /// assert_eq!(cool.largest_breaker(Printing::Since, TemperatureRating::C75)?, Some(Amperes::new(15)));
    /// # Ok::<(), electrical::OutOfRange>(())
    /// ```
    pub fn largest_breaker(
        self,
        printing: Printing,
        terminals: TemperatureRating,
    ) -> Result<Option<Amperes>, OutOfRange> {
        let usable = self.usable(printing, terminals)?;
        let small = largest_rating(self.metal, self.gauge);
        let ratings = [60, 50, 45, 40, 35, 30, 25, 20, 15].map(Amperes::new);
        let fits = |rating: &Amperes| usable.carries(*rating) && small.is_none_or(|small| *rating <= small);
        Ok(ratings.into_iter().find(fits))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ConductorMetal::{Aluminium, Copper};
    use TemperatureRating::{C60, C75, C90};

    fn columns(printing: Printing, metal: ConductorMetal, gauge: Gauge) -> [u32; 3] {
        [C60, C75, C90].map(|rating| table_ampacity(printing, metal, gauge, rating).unwrap().get())
    }

    fn twelve(air: Temperature, bundled: u32) -> Installed {
        Installed { metal: Copper, gauge: Gauge::AWG_12, insulation: Insulation::NmB, air, bundled }
    }

    const COOL: Temperature = Temperature::celsius(30.0);

    /// Published: trade forum, thread 185173 and ask-the-electrician.com, an older table 310-16.
    #[test]
    fn older_printings_let_14_and_12_awg_carry_more_at_60_c() {
        assert_eq!(columns(Printing::Older, Copper, Gauge::AWG_14), [20, 20, 25]);
        assert_eq!(columns(Printing::Older, Copper, Gauge::AWG_12), [25, 25, 30]);
    }

    /// From memory: the table as printed since 2011.
    #[test]
    fn printings_since_let_12_awg_carry_20_25_and_30_a() {
        assert_eq!(columns(Printing::Since, Copper, Gauge::AWG_12), [20, 25, 30]);
    }

    /// Published: ask-the-electrician.com, an older table 310-16: 20 and 30 A at 75 °C.
    #[test]
    fn older_printings_for_aluminium() {
        let found = [Gauge::AWG_12, Gauge::AWG_10].map(|gauge| columns(Printing::Older, Aluminium, gauge)[1]);
        assert_eq!(found, [20, 30]);
        assert!(table_ampacity(Printing::Older, Aluminium, Gauge::AWG_14, C75).is_err());
    }

    /// Published: trade forum, thread 76226: 0.82 at 120 °F for 90 °C.
    /// From memory: the columns of the code's table of factors for 31-35 °C upward.
    #[test]
    fn correction_factors_are_those_of_the_table() {
        assert_eq!(correction_percent(C90, Temperature::fahrenheit(120.0)), Ok(82));
        let column = |rating: TemperatureRating| -> Vec<u32> {
            (7..).map_while(|band| correction_percent(rating, Temperature::celsius(f64::from(band * 5))).ok()).collect()
        };
        assert_eq!(column(C60), [91, 82, 71, 58, 41]);
        assert_eq!(column(C75), [94, 88, 82, 75, 67, 58, 47, 33]);
        assert_eq!(column(C90), [96, 91, 87, 82, 76, 71, 65, 58, 50, 41, 29]);
        assert_eq!(correction_percent(C60, Temperature::celsius(10.0)), Ok(129));
        assert_eq!(correction_percent(C75, Temperature::celsius(-5.0)), Ok(120));
        assert_eq!(correction_percent(C90, Temperature::celsius(25.0)), Ok(104));
    }

    /// Published: trade forum, post 1127497 accepts 20 A, wrongly: it divides the load by one factor and multiplies
    /// by the other. By hand: 30 × 0.76 × 0.80 = 18.24.
    #[test]
    fn both_factors_multiply_the_ampacity_of_twelve_awg_on_a_roof() {
        let roof = twelve(Temperature::fahrenheit(124.0), 6);
        assert_eq!(roof.corrected(Printing::Since).unwrap().as_ten_thousandths(), 182_400);
        assert!(!roof.corrected(Printing::Since).unwrap().carries(Amperes::new(20)));
        assert_eq!(roof.largest_breaker(Printing::Since, C75).unwrap(), Some(Amperes::new(15)));
    }

    /// Published: engineerboards.com/threads/nec-table-310-15-b-2-a-and-b.27269: 0.76 at 55 °C; 0.84 belongs to tables
    /// for 40 °C. By hand: 30 × 0.76 = 22.8, not 25.2.
    #[test]
    fn factors_for_tables_of_40_c_are_not_mixed_in() {
        let found = twelve(Temperature::celsius(55.0), 3).corrected(Printing::Since).unwrap();
        assert_eq!(found.as_ten_thousandths(), 228_000);
    }

    /// Published: diychatroom.com, thread 10123: four cables bundled 21 A, five 15 A.
    #[test]
    fn four_bundled_cables_keep_a_20_a_breaker_and_five_do_not() {
        let (four, five) = (twelve(COOL, 8), twelve(COOL, 10));
        assert_eq!(four.corrected(Printing::Since).unwrap().as_ten_thousandths(), 210_000);
        assert_eq!(five.corrected(Printing::Since).unwrap().as_ten_thousandths(), 150_000);
        assert_eq!(four.largest_breaker(Printing::Since, C60).unwrap(), Some(Amperes::new(20)));
        assert_eq!(five.largest_breaker(Printing::Since, C60).unwrap(), Some(Amperes::new(15)));
    }

    /// Published: trade forum, thread 54044: the inputs. By hand: 30 × 0.71 × 0.50 = 10.65.
    #[test]
    fn a_hot_attic_and_a_bundle_both_count() {
        let attic = twelve(Temperature::fahrenheit(135.0), 14);
        assert_eq!(attic.corrected(Printing::Since).unwrap().as_ten_thousandths(), 106_500);
        assert_eq!(attic.largest_breaker(Printing::Since, C60).unwrap(), None);
    }

    /// Published: studylib.net/doc/18183859/nm-cable-derating: nothing is permitted for 60 °C cable in a 135 °F attic.
    #[test]
    fn old_cable_in_a_135_f_attic_may_carry_nothing() {
        let old = Installed { insulation: Insulation::Nm, ..twelve(Temperature::fahrenheit(135.0), 2) };
        let refused = old.corrected(Printing::Older).unwrap_err();
        assert_eq!(refused.most, 55.0);
    }

    /// Published: a web note on wire derating prints 17.22 A with 0.82, the row of 46-50 °C, wrongly.
    /// By hand: 45 °C is in the row of 41-45 °C: 30 × 0.87 × 0.70 = 18.27.
    #[test]
    fn forty_five_degrees_is_the_row_of_41_to_45() {
        let found = twelve(Temperature::celsius(45.0), 9).corrected(Printing::Since).unwrap();
        assert_eq!(found.as_ten_thousandths(), 182_700);
    }

    #[test]
    fn no_conductors_and_large_sizes_are_refused() {
        assert!(adjustment_percent(0).is_err());
        let size = Gauge::from_number(0).unwrap();
        assert!(table_ampacity(Printing::Since, Copper, size, C60).is_err());
    }
}
