//! What a place asks of a replaced receptacle, edition by edition.

mod scenario;

use dwelling::{Equipment, Holding, PathObstacle, RoomUse, Wetness};
use electrical::{Amperes, Length};
use rulebook::Edition::{Nec2014, Nec2017, Nec2020, Nec2023};
use rulebook::{Duty, Need, Opening, Remedy};
use scenario::{Ask, SINCE_2014, bedroom, opening_in, under, water};

/// The need for one duty in 2014, 2017, 2020 and 2023.
fn needs(duty: Duty, opening: &Opening) -> [Need; 4] {
    SINCE_2014.map(|edition| under(edition, opening).need(duty))
}

const NEVER: [Need; 4] = [Need::NotRequired; 4];
const ALWAYS: [Need; 4] = [Need::Required; 4];

/// Published: ecode360.com/27891398 (2014 list) and S.C. Code Regs. 8-1103 (2020 list).
#[test]
fn listed_places_need_gfci_protection_in_every_edition() {
    for room in [
        RoomUse::Bathroom,
        RoomUse::Garage,
        RoomUse::AccessoryBuilding,
        RoomUse::Outdoors,
        RoomUse::CrawlSpace,
        RoomUse::UnfinishedBasement,
        RoomUse::Boathouse,
        RoomUse::Laundry,
    ] {
        assert_eq!(needs(Duty::Gfci, &opening_in(room)), ALWAYS, "{room}");
    }
    for room in [RoomUse::Bedroom, RoomUse::LivingRoom, RoomUse::Hallway, RoomUse::Attic, RoomUse::Stairway] {
        assert_eq!(needs(Duty::Gfci, &opening_in(room)), NEVER, "{room}");
    }
    assert_eq!(needs(Duty::Gfci, &opening_in(RoomUse::Unknown)), [Need::NotChecked; 4]);
}

/// Published: state handout on the 2020 changes (pdf4pro.com): basements finished or not from 2020.
#[test]
fn finished_basements_are_reached_from_2020() {
    let expected = [Need::NotRequired, Need::NotRequired, Need::Required, Need::Required];
    assert_eq!(needs(Duty::Gfci, &opening_in(RoomUse::FinishedBasement)), expected);
}

/// Published: nahb.org, 2023 NEC adoption kit: every kitchen receptacle from 2023; before, those that serve the countertop.
#[test]
fn kitchens_are_reached_at_the_countertop_and_from_2023_throughout() {
    let kitchen = |countertop, feet| Opening { countertop, sink: water(feet, 0, &[]), ..opening_in(RoomUse::Kitchen) };
    assert_eq!(needs(Duty::Gfci, &kitchen(Some(true), 20)), ALWAYS);
    let from_2023 = [Need::NotRequired, Need::NotRequired, Need::NotRequired, Need::Required];
    assert_eq!(needs(Duty::Gfci, &kitchen(Some(false), 20)), from_2023);
    let unknown_before = [Need::NotChecked, Need::NotChecked, Need::NotChecked, Need::Required];
    assert_eq!(needs(Duty::Gfci, &kitchen(None, 20)), unknown_before);
    assert_eq!(needs(Duty::Gfci, &Opening { sink: None, ..kitchen(Some(false), 0) }), unknown_before);
    assert_eq!(needs(Duty::Gfci, &kitchen(Some(false), 5)), ALWAYS);
}

/// Published: ecode360.com/27891398 (2014 list): within 6 ft of a sink; the boundary itself counts.
#[test]
fn six_feet_to_a_sink_is_within_and_an_inch_more_is_not() {
    assert_eq!(needs(Duty::Gfci, &Opening { sink: water(6, 0, &[]), ..bedroom() }), ALWAYS);
    assert_eq!(needs(Duty::Gfci, &Opening { sink: water(6, 1, &[]), ..bedroom() }), NEVER);
    assert_eq!(needs(Duty::Gfci, &Opening { tub: water(5, 11, &[]), ..bedroom() }), ALWAYS);
}

/// Published: trade forum thread 131275 (2017), ecmag.com `Remodel with care` (2020), ecmweb.com article 55344219 (2023).
#[test]
fn what_the_path_to_a_sink_passes_counts_by_edition() {
    let through = |obstacle| needs(Duty::Gfci, &Opening { sink: water(4, 0, &[obstacle]), ..bedroom() });
    let doors = [Need::Disputed, Need::NotRequired, Need::Required, Need::Required];
    for door in [PathObstacle::CabinetDoor, PathObstacle::Door, PathObstacle::Doorway] {
        assert_eq!(through(door), doors, "{door}");
    }
    assert_eq!(through(PathObstacle::Window), [Need::Disputed, Need::NotRequired, Need::Disputed, Need::Required]);
    for solid in [PathObstacle::Wall, PathObstacle::Floor, PathObstacle::Ceiling, PathObstacle::FixedBarrier] {
        assert_eq!(
            through(solid),
            [Need::Disputed, Need::NotRequired, Need::NotRequired, Need::NotRequired],
            "{solid}"
        );
    }
}

/// From memory: item 11 of 2020.
#[test]
fn damp_places_indoors_are_reached_from_2020() {
    let damp = Opening { wetness: Some(Wetness::Damp), ..bedroom() };
    assert_eq!(needs(Duty::Gfci, &damp), [Need::NotRequired, Need::NotRequired, Need::Required, Need::Required]);
}

/// Published: ecmweb.com article 21129151: to 2017 receptacles of 15 and 20 A, from 2020 without that limit.
#[test]
fn a_30_a_receptacle_in_a_laundry_is_reached_from_2020() {
    let dryer = Opening { breaker: Some(Amperes::new(30)), ..opening_in(RoomUse::Laundry) };
    assert_eq!(needs(Duty::Gfci, &dryer), [Need::NotRequired, Need::NotRequired, Need::Required, Need::Required]);
}

/// Published: ecode360.com/27891398 and S.C. Code Regs. 8-1103 for basements; a maker's page on 2023 for every place.
#[test]
fn an_alarm_system_alone_is_excepted_in_basements_and_from_2023_everywhere() {
    let serves = vec![Equipment::AlarmSystem];
    let basement = Opening { serves: serves.clone(), ..opening_in(RoomUse::UnfinishedBasement) };
    assert_eq!(needs(Duty::Gfci, &basement), NEVER);
    let garage = Opening { serves: serves.clone(), ..opening_in(RoomUse::Garage) };
    assert_eq!(needs(Duty::Gfci, &garage), [Need::Required, Need::Required, Need::Required, Need::NotRequired]);
    let with_more = Opening { serves: vec![Equipment::AlarmSystem, Equipment::Freezer], ..basement };
    assert_eq!(needs(Duty::Gfci, &with_more), ALWAYS);
}

/// Published: ecode360.com/27891398 and S.C. Code Regs. 8-1103: out of ready reach, for heating of pipes or ice alone.
#[test]
fn heat_tracing_outdoors_is_excepted_only_out_of_ready_reach() {
    let tracing = |readily_accessible| Opening {
        serves: vec![Equipment::HeatTracing],
        readily_accessible,
        ..opening_in(RoomUse::Outdoors)
    };
    assert_eq!(needs(Duty::Gfci, &tracing(Some(false))), NEVER);
    assert_eq!(needs(Duty::Gfci, &tracing(Some(true))), ALWAYS);
    assert_eq!(needs(Duty::Gfci, &tracing(None)), ALWAYS);
}

/// Published: trade forum thread 2571897: never in bathrooms; electricallicenserenewal.com, NEC content 1429 for the rooms.
#[test]
fn the_listed_rooms_need_afci_protection_and_places_outside_the_list_never() {
    for room in [
        RoomUse::Bedroom,
        RoomUse::LivingRoom,
        RoomUse::FamilyRoom,
        RoomUse::DiningRoom,
        RoomUse::Den,
        RoomUse::Library,
        RoomUse::Parlor,
        RoomUse::Sunroom,
        RoomUse::RecreationRoom,
        RoomUse::Hallway,
        RoomUse::Closet,
        RoomUse::Kitchen,
        RoomUse::Laundry,
        RoomUse::Office,
    ] {
        assert_eq!(needs(Duty::Afci, &opening_in(room)), ALWAYS, "{room}");
    }
    for room in [
        RoomUse::Bathroom,
        RoomUse::Garage,
        RoomUse::AccessoryBuilding,
        RoomUse::Outdoors,
        RoomUse::Attic,
        RoomUse::CrawlSpace,
        RoomUse::UnfinishedBasement,
        RoomUse::Boathouse,
    ] {
        assert_eq!(needs(Duty::Afci, &opening_in(room)), NEVER, "{room}");
    }
    for room in [RoomUse::FinishedBasement, RoomUse::Stairway, RoomUse::Utility] {
        assert_eq!(needs(Duty::Afci, &opening_in(room)), [Need::Disputed; 4], "{room}");
    }
}

/// Published: electricallicenserenewal.com, NEC content 1429: circuits of 10, 15 and 20 A in 2023.
#[test]
fn afci_protection_reaches_circuits_of_15_and_20_a_and_from_2023_of_10() {
    let rated = |amperes: Option<u32>| needs(Duty::Afci, &Opening { breaker: amperes.map(Amperes::new), ..bedroom() });
    assert_eq!(rated(Some(20)), ALWAYS);
    assert_eq!(rated(Some(30)), NEVER);
    assert_eq!(rated(Some(10)), [Need::NotRequired, Need::NotRequired, Need::NotRequired, Need::Required]);
    assert_eq!(rated(None), [Need::NotChecked; 4]);
}

/// Published: electricallicenserenewal.com, NEC content 307, and trade forum thread 2532400 for the four conditions.
#[test]
fn only_2017_excepts_a_gfci_replacement_and_only_where_four_things_hold() {
    for edition in SINCE_2014 {
        let excepts = under(edition, &bedroom()).condition_names(Remedy::GfciReceptacle, "only where all four hold");
        assert_eq!(excepts, edition == Nec2017, "{edition}");
    }
}

/// Published: electricallicenserenewal.com, NEC content 22, 236 and 1855; rosendinuniversity.com for 2020.
#[test]
fn a_new_cable_in_a_bedroom_brings_the_afci_duty_of_changed_wiring_by_its_section() {
    let sections = [(Nec2014, "210.12(B)"), (Nec2017, "210.12(D)"), (Nec2020, "210.12(D)"), (Nec2023, "210.12(E)")];
    for (edition, section) in sections {
        let judgement = under(edition, &bedroom());
        assert!(judgement.condition_names(Remedy::NewCable, section), "{edition}");
    }
    assert!(!under(Nec2020, &opening_in(RoomUse::Bathroom)).condition_names(Remedy::NewCable, "changed wiring"));
}

/// Published: electricallicenserenewal.com, NEC content 308 and 312.
#[test]
fn a_replaced_receptacle_is_tamper_resistant_but_for_the_exceptions() {
    assert_eq!(needs(Duty::TamperResistant, &bedroom()), ALWAYS);
    let high = Opening { height: Some(Length::feet_and_inches(5, 7)), ..bedroom() };
    assert_eq!(needs(Duty::TamperResistant, &high), NEVER);
    let at_the_limit = Opening { height: Some(Length::feet_and_inches(5, 6)), ..bedroom() };
    assert_eq!(needs(Duty::TamperResistant, &at_the_limit), ALWAYS);
    let behind_the_washer = Opening { dedicated_space: Some(true), ..opening_in(RoomUse::Laundry) };
    assert_eq!(needs(Duty::TamperResistant, &behind_the_washer), NEVER);
    let attic = [Need::NotRequired, Need::NotRequired, Need::Required, Need::Required];
    assert_eq!(needs(Duty::TamperResistant, &opening_in(RoomUse::Attic)), attic);
    for edition in SINCE_2014 {
        let judgement = under(edition, &bedroom());
        assert!(judgement.condition_names(Remedy::GfciReceptacle, "tamper-resistant"));
        assert!(!judgement.condition_names(Remedy::NongroundingReceptacle, "tamper-resistant"));
    }
}

/// Published: California Electrical Code 2013, 406.9, and inspectionnews.net thread 12614.
#[test]
fn outdoors_and_in_damp_places_a_replaced_receptacle_is_weather_resistant() {
    assert_eq!(needs(Duty::WeatherResistant, &opening_in(RoomUse::Outdoors)), ALWAYS);
    assert_eq!(needs(Duty::WeatherResistant, &bedroom()), NEVER);
    assert_eq!(needs(Duty::WeatherResistant, &opening_in(RoomUse::CrawlSpace)), [Need::NotChecked; 4]);
    let damp = Opening { wetness: Some(Wetness::Damp), ..opening_in(RoomUse::UnfinishedBasement) };
    assert_eq!(needs(Duty::WeatherResistant, &damp), ALWAYS);
    let wet = Opening { wetness: Some(Wetness::Wet), ..opening_in(RoomUse::Outdoors) };
    assert!(under(Nec2020, &wet).condition_names(Remedy::GfciReceptacle, "weatherproof with a plug inserted"));
}

#[test]
fn a_switch_is_owed_nothing_that_is_owed_to_receptacles() {
    let switch = Opening { holds: Holding::Switch, ..opening_in(RoomUse::Bathroom) };
    for duty in [Duty::Gfci, Duty::Afci, Duty::TamperResistant, Duty::WeatherResistant] {
        assert_eq!(needs(duty, &switch), NEVER, "{duty}");
    }
}

/// Published: trade forum thread 134287: the box that is too small excuses the GFCI receptacle, not the protection.
#[test]
fn a_box_too_small_for_a_gfci_receptacle_is_protected_from_elsewhere() {
    for edition in SINCE_2014 {
        let bathroom = under(edition, &opening_in(RoomUse::Bathroom));
        assert!(bathroom.condition_names(Remedy::NongroundingReceptacle, "where no GFCI receptacle fits the box"));
    }
}
