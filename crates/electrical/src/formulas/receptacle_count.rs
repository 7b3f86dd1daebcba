//! Counts of receptacles: by the load of each outside dwellings, and by the length of a wall within them.

use super::dwelling_load::VoltAmperes;
use crate::{Amperes, Length, OutOfRange};

/// What one strap with up to three receptacles counts. Published: NEC 220.14(I), handbook exhibit 220.3, as copied at
/// trade forum, thread 36947.
pub const PER_STRAP: VoltAmperes = VoltAmperes::new(180);
/// What each receptacle counts on a device with four or more. Published: the same.
pub const PER_RECEPTACLE_OF_FOUR_OR_MORE: VoltAmperes = VoltAmperes::new(90);
/// The least length of wall that counts as wall space. Published: EC&M, Code Q&A 93.
pub const LEAST_WALL_SPACE: Length = Length::feet(2);
/// The longest stretch of unbroken wall that one receptacle serves, six feet to either side.
const SERVED_BY_ONE: Length = Length::feet(12);

/// The load that one device counts, outside dwellings. Within a dwelling receptacles count nothing of their own.
///
/// # Formula
/// 180 VA for one to three receptacles on a strap, 90 VA each from four on.
///
/// # Source
/// NEC 220.14(I).
///
/// # Range
/// 1 to 100 receptacles on a device.
///
/// # Errors
/// [`OutOfRange`] for any other count.
///
/// # Example
/// ```
/// use electrical::formulas::receptacle_count::load_of_device;
/// assert_eq!(load_of_device(2)?.get(), 180);
/// assert_eq!(load_of_device(4)?.get(), 360);
/// # Ok::<(), electrical::OutOfRange>(())
/// ```
pub fn load_of_device(receptacles: u32) -> Result<VoltAmperes, OutOfRange> {
    OutOfRange::check("receptacles on a device", f64::from(receptacles), 1.0, 100.0)?;
    if receptacles < 4 {
        return Ok(PER_STRAP);
    }
    Ok(VoltAmperes::new(PER_RECEPTACLE_OF_FOUR_OR_MORE.get() * u64::from(receptacles)))
}

/// The straps that a 120 V circuit may feed outside dwellings. Within a dwelling there is no such limit.
///
/// # Formula
/// `floor(120 V * rating / 180 VA)`.
///
/// # Source
/// NEC 220.14(I), handbook exhibit 220.3.
///
/// # Range
/// Ratings from 15 A to 60 A.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Amperes, formulas::receptacle_count::straps_on_circuit};
/// assert_eq!(straps_on_circuit(Amperes::new(15)), Ok(10));
/// ```
pub fn straps_on_circuit(rating: Amperes) -> Result<u64, OutOfRange> {
    OutOfRange::check("rating, A", f64::from(rating.get()), 15.0, 60.0)?;
    Ok(120 * u64::from(rating.get()) / PER_STRAP.get())
}

/// The fewest receptacles that serve an unbroken wall of a dwelling.
///
/// # Formula
/// None below 2 ft; otherwise `ceil(length / 12 ft)`.
///
/// # Source
/// NEC 210.52(A); trade forum, thread 32172.
///
/// # Range
/// Walls to 1000 ft. Where on the wall they must be is the rulebook's question.
///
/// # Errors
/// [`OutOfRange`] for any other.
///
/// # Example
/// ```
/// use electrical::{Length, formulas::receptacle_count::least_on_wall};
/// assert_eq!(least_on_wall(Length::feet(25)), Ok(3));
/// ```
pub fn least_on_wall(wall: Length) -> Result<i64, OutOfRange> {
    OutOfRange::check("wall, ft", wall.as_feet(), 0.0, 1000.0)?;
    if wall < LEAST_WALL_SPACE {
        return Ok(0);
    }
    let (wall, one) = (wall.as_micrometres(), SERVED_BY_ONE.as_micrometres());
    Ok((wall + one - 1) / one)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: NEC Handbook exhibit 220.3 as copied at trade forum, thread 36947: 13 on 20 A; 180, 180, 360, 360 VA.
    #[test]
    fn thirteen_straps_on_20_a_at_180_va() {
        assert_eq!(straps_on_circuit(Amperes::new(20)), Ok(13));
        let load = |receptacles| load_of_device(receptacles).unwrap().get();
        assert_eq!([load(2), load(3), 2 * load(2), load(4)], [180, 180, 360, 360]);
    }

    /// Published: trade forum, thread 32172: 1 for 11 ft 10 in, 3 for 25 ft.
    #[test]
    fn a_wall_of_11_ft_10_in_takes_one_and_25_ft_three() {
        assert_eq!(least_on_wall(Length::feet_and_inches(11, 10)), Ok(1));
        assert_eq!(least_on_wall(Length::feet(25)), Ok(3));
        assert_eq!(least_on_wall(Length::feet(12)), Ok(1));
    }

    /// Published: EC&M, Code Q&A 93: wall space counts from 2 ft.
    #[test]
    fn a_wall_counts_from_2_ft() {
        assert_eq!(least_on_wall(Length::feet_and_inches(1, 11)), Ok(0));
        assert_eq!(least_on_wall(Length::feet(2)), Ok(1));
    }

    #[test]
    fn counts_and_ratings_out_of_range_are_refused() {
        assert!(load_of_device(0).is_err());
        assert!(straps_on_circuit(Amperes::new(10)).is_err());
        assert!(least_on_wall(Length::feet(-1)).is_err());
    }
}
