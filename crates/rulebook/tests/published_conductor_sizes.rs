//! Sizes of grounding conductors, areas and the limits of small conductors, held against what others published.

use electrical::{Amperes, ConductorMetal, Gauge};
use rulebook::tables::conductor_area::circular_mils;
use rulebook::tables::egc_size::{egc_size, enlarged_egc};
use rulebook::tables::small_conductors::{breaker_too_large, largest_breaker};
use rulebook::{CodeInForce, Edition};

fn awg(number: i8) -> Gauge {
    Gauge::from_number(number).expect("a size that is made")
}

/// Asserts the copper and the aluminium size under every edition.
fn assert_sizes(amperes: u32, copper: i8, aluminium: i8) {
    for edition in editions_up_to_2023() {
        let code = CodeInForce::published(edition);
        let size = |metal| egc_size(Amperes::new(amperes), metal, None, &code).expect("a rating in the table").value;
        assert_eq!(size(ConductorMetal::Copper), awg(copper), "{edition}");
        assert_eq!(size(ConductorMetal::Aluminium), awg(aluminium), "{edition}");
    }
}

/// Published: Bruns Engineering, Table 250.122, brunsengineering.com/nec-table-250-122.
#[test]
fn a_15_a_breaker_asks_for_14_copper_or_12_aluminium() {
    assert_sizes(15, 14, 12);
}

/// Published: Bruns Engineering, Table 250.122, brunsengineering.com/nec-table-250-122.
#[test]
fn a_20_a_breaker_asks_for_12_copper_or_10_aluminium() {
    assert_sizes(20, 12, 10);
}

/// Published: Bruns Engineering, Table 250.122, brunsengineering.com/nec-table-250-122.
#[test]
fn a_30_a_breaker_asks_for_10_copper_or_8_aluminium() {
    assert_sizes(30, 10, 8);
}

/// Published: Bruns Engineering, Table 250.122, brunsengineering.com/nec-table-250-122.
#[test]
fn a_60_a_breaker_asks_for_10_copper_or_8_aluminium() {
    assert_sizes(60, 10, 8);
}

/// Published: Bruns Engineering, Table 250.122, brunsengineering.com/nec-table-250-122.
#[test]
fn a_100_a_breaker_asks_for_8_copper_or_6_aluminium() {
    assert_sizes(100, 8, 6);
}

/// Published: Bruns Engineering, Table 250.122, brunsengineering.com/nec-table-250-122.
#[test]
fn a_200_a_breaker_asks_for_6_copper_or_4_aluminium() {
    assert_sizes(200, 6, 4);
}

/// Published: California Electrical Code 2013, Annex D: 6 AWG copper for 150 A, between two rows of the table.
#[test]
fn a_rating_between_rows_takes_the_next_row() {
    assert_sizes(150, 6, 4);
    assert_sizes(25, 10, 8);
}

/// Published: Electrical Contractor magazine, CQD Spotlight, ecmag.com: 6 AWG.
/// By hand: 6530 × 26240 / 6530 = 26240.
#[test]
fn a_20_a_circuit_enlarged_from_12_to_6_awg_asks_for_a_6_awg_ground() {
    let code = CodeInForce::published(Edition::Nec2020);
    let enlarged = enlarged_egc(Amperes::new(20), awg(12), awg(6), &code).unwrap().value;
    assert_eq!((enlarged.circular_mils, enlarged.size), (26_240, awg(6)));
}

/// Published: electrical-contractor.net, topic 58181, `Increased EGC size`: 8 AWG.
#[test]
fn a_20_a_circuit_enlarged_from_12_to_8_awg_asks_for_an_8_awg_ground() {
    let code = CodeInForce::published(Edition::Nec2020);
    assert_eq!(enlarged_egc(Amperes::new(20), awg(12), awg(8), &code).unwrap().value.size, awg(8));
}

/// Published: mepanet.com, proportional increase of grounding conductors: 52617 circular mils, so 3 AWG with its 52620.
#[test]
fn a_50_a_circuit_enlarged_from_8_to_1_awg_asks_for_3_awg_by_three_circular_mils() {
    let code = CodeInForce::published(Edition::Nec2020);
    let enlarged = enlarged_egc(Amperes::new(50), awg(8), awg(1), &code).unwrap().value;
    assert_eq!((enlarged.circular_mils, enlarged.size), (52_617, awg(3)));
}

/// From memory: 4110 × 6530 / 4110 = 6530, so 12 AWG.
#[test]
fn a_15_a_circuit_enlarged_from_14_to_12_awg_asks_for_a_12_awg_ground() {
    let code = CodeInForce::published(Edition::Nec2020);
    let enlarged = enlarged_egc(Amperes::new(15), awg(14), awg(12), &code).unwrap().value;
    assert_eq!((enlarged.circular_mils, enlarged.size), (6_530, awg(12)));
}

/// Published: Electrical Contractor magazine, CQD Spotlight, ecmag.com: never larger than the circuit conductors.
#[test]
fn a_ground_need_not_be_larger_than_the_circuit_conductors() {
    let code = CodeInForce::published(Edition::Nec2020);
    let size = egc_size(Amperes::new(30), ConductorMetal::Copper, Some(awg(12)), &code).unwrap().value;
    assert_eq!(size, awg(12));
}

#[test]
fn a_rating_beyond_the_table_is_not_checked() {
    let code = CodeInForce::published(Edition::Nec2020);
    assert!(egc_size(Amperes::new(500), ConductorMetal::Copper, None, &code).is_err());
}

/// Published: HyperPhysics, American wire gauge table: 4106.8, 6529 (cut off) and 16509; within 4 of the code's rounded areas.
#[test]
fn the_areas_of_14_12_and_8_awg_agree_with_the_formula_of_the_gauge() {
    let code = CodeInForce::published(Edition::Nec2020);
    for (number, published) in [(14, 4106.8), (12, 6529.0), (8, 16_509.0)] {
        let area = circular_mils(awg(number), &code).unwrap().value;
        assert!((area as f64 - published).abs() < 4.0, "{number} AWG: {area}");
    }
}

/// Published: trade forum, thread 68337, on the history of the small-conductor rule: 15, 20 and 30 A.
#[test]
fn copper_of_14_12_and_10_awg_stands_behind_15_20_and_30_a_at_most() {
    for edition in editions_up_to_2023() {
        let code = CodeInForce::published(edition);
        for (number, amperes) in [(14, 15), (12, 20), (10, 30)] {
            let largest = largest_breaker(awg(number), ConductorMetal::Copper, &code).unwrap().unwrap();
            assert_eq!(largest.value, Amperes::new(amperes));
        }
    }
}

/// Published: ask-the-electrician.com, older Table 310-16 with its note: 15 A for 12 AWG and 25 A for 10 AWG aluminium.
#[test]
fn aluminium_of_12_and_10_awg_stands_behind_15_and_25_a_at_most() {
    let code = CodeInForce::published(Edition::Nec2020);
    for (number, amperes) in [(12, 15), (10, 25)] {
        let largest = largest_breaker(awg(number), ConductorMetal::Aluminium, &code).unwrap().unwrap();
        assert_eq!(largest.value, Amperes::new(amperes));
    }
}

#[test]
fn a_20_a_breaker_is_too_large_for_14_awg_and_right_for_12_awg() {
    let code = CodeInForce::published(Edition::Nec2020);
    let too_large = |number| breaker_too_large(Amperes::new(20), awg(number), ConductorMetal::Copper, &code).unwrap();
    assert_eq!(too_large(14).unwrap().value, Amperes::new(15));
    assert_eq!(too_large(12), None);
}

/// The editions that are entered in full: of 2026 little could be confirmed.
fn editions_up_to_2023() -> impl Iterator<Item = Edition> {
    Edition::ALL.into_iter().filter(|edition| edition.year() <= 2023)
}
