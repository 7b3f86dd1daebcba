//! The largest breaker or fuse over a small conductor, as every edition since the small-conductor rule has it.

use crate::{Amperes, ConductorMetal, Gauge};

/// The largest rating over a small conductor, whatever its insulation would carry. `None` for a size that the rule does
/// not name. The rulebook holds the same values by edition, with what is excepted; this is for sums by hand.
///
/// # Formula
/// Copper 14, 12, 10 AWG: 15, 20, 30 A. Aluminium and copper-clad aluminium 12, 10 AWG: 15, 25 A.
///
/// # Source
/// NEC 240.4(D); a history of the rule at trade forum, thread 68337.
///
/// # Range
/// 14 to 10 AWG copper, 12 and 10 AWG of the others.
///
/// # Example
/// ```
/// use electrical::{Amperes, ConductorMetal, Gauge, formulas::small_conductors::largest_rating};
/// assert_eq!(largest_rating(ConductorMetal::Copper, Gauge::AWG_14), Some(Amperes::new(15)));
/// assert_eq!(largest_rating(ConductorMetal::Copper, Gauge::AWG_8), None);
/// ```
#[must_use]
pub fn largest_rating(metal: ConductorMetal, gauge: Gauge) -> Option<Amperes> {
    let amperes = match (metal, gauge.number()) {
        (ConductorMetal::Copper, 14) => 15,
        (ConductorMetal::Copper, 12) => 20,
        (ConductorMetal::Copper, 10) => 30,
        (ConductorMetal::Aluminium | ConductorMetal::CopperCladAluminium, 12) => 15,
        (ConductorMetal::Aluminium | ConductorMetal::CopperCladAluminium, 10) => 25,
        _ => return None,
    };
    Some(Amperes::new(amperes))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: trade forum history of the rule, trade forum, thread 68337.
    #[test]
    fn copper_of_14_12_and_10_awg_stands_behind_15_20_and_30_a() {
        let found = [14, 12, 10].map(|number| largest_rating(ConductorMetal::Copper, awg(number)));
        assert_eq!(found, [15, 20, 30].map(|amperes| Some(Amperes::new(amperes))));
    }

    /// Published: ask-the-electrician.com, an older Table 310-16, its note: 15 and 25 A for 12 and 10 AWG aluminium.
    #[test]
    fn aluminium_of_12_and_10_awg_stands_behind_15_and_25_a() {
        let found = [14, 12, 10].map(|number| largest_rating(ConductorMetal::Aluminium, awg(number)));
        assert_eq!(found, [None, Some(Amperes::new(15)), Some(Amperes::new(25))]);
    }

    fn awg(number: i8) -> Gauge {
        Gauge::from_number(number).unwrap()
    }
}
