//! What built-in records of adoptions say of a permit, and what they leave open.

use dwelling::{Day, DwellingUse, RoomUse};
use electrical::Amperes;
use rulebook::{
    ASK_THE_AUTHORITY, CodeInForce, Duty, Edition, List, Need, Opening, Supply, adopted, adoptions, check_amendments,
    code_for, judge,
};

fn day(text: &str) -> Option<Day> {
    Some(text.parse().expect("a day"))
}

fn edition(place: &str, on: &str) -> Option<Edition> {
    code_for(place, day(on), Some(DwellingUse::Apartment)).ok().map(|code| code.edition)
}

fn need(duty: Duty, opening: &Opening, code: &CodeInForce) -> (Need, Vec<String>) {
    let verdict = judge(opening, code).duties.into_iter().find(|verdict| verdict.duty == duty).expect("every duty");
    (verdict.need, verdict.changed_by)
}

fn on_a_15_a_circuit(room: RoomUse) -> Opening {
    Opening { breaker: Some(Amperes::new(15)), ..Opening::unexamined(room) }
}

/// Published: thebuildingcodeforum.com, thread 38104: 2020 from 2025-07-13, the earlier code to choose until 2026-01-12.
#[test]
fn pennsylvania_changes_in_july_2025_and_leaves_a_choice_for_half_a_year() {
    assert_eq!(edition("pennsylvania", "2025-07-12"), Some(Edition::Nec2017));
    assert_eq!(edition("pennsylvania", "2025-07-13"), None);
    assert_eq!(edition("pennsylvania", "2026-01-12"), None);
    assert_eq!(edition("pennsylvania", "2026-01-13"), Some(Edition::Nec2020));
    let open = code_for("pennsylvania", day("2025-09-01"), None).unwrap_err();
    assert!(open.because.contains("2026-01-12"), "{}", open.because);
}

/// Published: contractor's page on Idaho's adoption (2024-04-19); legalclarity.org on California (2026-01-01).
#[test]
fn the_day_of_the_permit_picks_the_record() {
    assert_eq!(edition("idaho", "2024-04-18"), None);
    assert_eq!(edition("idaho", "2024-04-19"), Some(Edition::Nec2023));
    assert_eq!(edition("california", "2025-12-31"), Some(Edition::Nec2020));
    assert_eq!(edition("california", "2026-01-01"), Some(Edition::Nec2023));
    assert!(code_for("california", None, None).unwrap_err().because.contains("the day of the permit"));
}

/// Published: contractor's page of 2024: from 2024-03-12, and not for houses of one or two families.
#[test]
fn michigan_hands_houses_of_one_and_two_families_to_another_code() {
    let on = day("2024-06-01");
    assert!(code_for("michigan", on, Some(DwellingUse::Apartment)).is_ok());
    for used in [DwellingUse::OneFamily, DwellingUse::TwoFamily] {
        assert!(code_for("michigan", on, Some(used)).unwrap_err().because.contains("Michigan Residential Code"));
    }
    assert!(code_for("michigan", on, None).unwrap_err().because.contains("kind of dwelling"));
}

/// Published: S.C. Code Regs. 8-1103: the list of 2020 kept at 125 V.
#[test]
fn south_carolina_keeps_the_list_at_125_volts_and_says_so() {
    let code = code_for("south-carolina", day("2025-03-01"), None).expect("a record");
    let published = CodeInForce::published(Edition::Nec2020);
    let dryer = |supply| Opening { breaker: Some(Amperes::new(30)), supply, ..Opening::unexamined(RoomUse::Laundry) };
    assert_eq!(need(Duty::Gfci, &dryer(Some(Supply::V240)), &published), (Need::Required, Vec::new()));
    let (excused, by) = need(Duty::Gfci, &dryer(Some(Supply::V240)), &code);
    assert_eq!(excused, Need::NotRequired);
    assert!(by[0].contains("S.C. Code Regs. 8-1103"));
    assert_eq!(need(Duty::Gfci, &dryer(None), &code).0, Need::NotChecked);
    assert_eq!(need(Duty::Gfci, &on_a_15_a_circuit(RoomUse::Garage), &code).0, Need::Required);
}

/// Published: nema.org, code alert 2012, and trade forum threads 2532400 and 2584935.
#[test]
fn new_jersey_asks_for_no_afci_protection_on_replacement_and_names_its_deletion() {
    let code = code_for("new-jersey", day("2025-03-01"), None).expect("a record");
    let (need, by) = need(Duty::Afci, &on_a_15_a_circuit(RoomUse::Bedroom), &code);
    assert_eq!(need, Need::NotRequired);
    assert!(by[0].starts_with("State of New Jersey"));
}

/// Published (a case): trade forum, thread 76124
///
/// Indiana struck AFCI protection and tamper-resistant receptacles out of the 2008 edition.
#[test]
fn indiana_struck_whole_sections_out_of_2008() {
    let code = code_for("indiana", day("2010-05-01"), Some(DwellingUse::OneFamily)).expect("a record");
    let bedroom = on_a_15_a_circuit(RoomUse::Bedroom);
    let (tamper, by) = need(Duty::TamperResistant, &bedroom, &code);
    assert_eq!(tamper, Need::NotRequired);
    assert!(by[0].contains("675 IAC 17-1.8"));
    let published = CodeInForce::published(Edition::Nec2008);
    assert_eq!(need(Duty::TamperResistant, &bedroom, &published).0, Need::Disputed);
}

/// Published: nema.org, code alert 2018: AFCI protection optional in laundry areas.
#[test]
fn tennessee_takes_laundries_out_of_the_afci_rooms() {
    let code = code_for("tennessee", day("2020-05-01"), None).expect("a record");
    assert_eq!(need(Duty::Afci, &on_a_15_a_circuit(RoomUse::Laundry), &code).0, Need::NotRequired);
    assert_eq!(need(Duty::Afci, &on_a_15_a_circuit(RoomUse::Kitchen), &code).0, Need::Required);
    assert!(List::AfciRooms.items().contains(&"laundry"));
}

#[test]
fn a_place_without_a_record_or_without_a_statewide_adoption_is_not_checked() {
    assert!(code_for("south-carolna", day("2025-03-01"), None).unwrap_err().because.contains("`south-carolina`"));
    assert!(code_for("atlantis", day("2025-03-01"), None).is_err());
    assert!(code_for("arizona", day("2025-03-01"), None).unwrap_err().because.contains("no statewide adoption"));
    assert!(code_for("colorado", day("2019-03-01"), None).is_err(), "before the first record");
    assert!(code_for("colorado", day("2035-03-01"), None).is_err(), "long after the last source");
}

#[test]
fn every_record_is_in_order_names_things_that_exist_and_comes_with_the_warning() {
    for adoption in adoptions() {
        assert!(!adoption.records.is_empty() && !adoption.title.is_empty());
        assert!(adoption.records.is_sorted_by(|earlier, later| earlier.since.first() < later.since.first()));
        for record in adoption.records {
            assert!(record.since.first() <= adoption.as_of.max(record.since.first()));
            assert_eq!(check_amendments(&(record.amendments)()), [], "{}", adoption.place);
        }
        let on = adoption.records[0].since.first();
        if let Ok(adopted) = adopted(adoption.place, Some(on), Some(DwellingUse::Apartment)) {
            assert_eq!(adopted.warnings[0], ASK_THE_AUTHORITY);
            assert_eq!(adopted.code.permit_day, Some(on));
        }
    }
    assert!(adoptions().is_sorted_by(|earlier, later| earlier.place < later.place));
    assert!(adoptions().len() >= 30);
}
