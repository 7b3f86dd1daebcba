//! Changed wiring, new circuits, joints, exceptions and old methods, edition by edition.

mod scenario;

use dwelling::{CableKind, Day, Equipment, GroundFact, Holding, RoomUse, Wetness};
use electrical::{Amperes, Length};
use rulebook::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023, Nec2026};
use rulebook::{
    Amendment, BuiltInto, Change, CodeInForce, Dated, Duty, Edition, Lawful, Need, Opening, Question, Remedy, Supply,
    judge,
};
use scenario::{Ask, ENTERED, bedroom, opening_in, under, water};

fn day(text: &str) -> Day {
    text.parse().expect("a day")
}

fn cautions(edition: Edition, opening: &Opening) -> String {
    under(edition, opening).cautions.join("\n")
}

/// Published: electricallicenserenewal.com 236 (2008 and 2017), California Electrical Code 2013 (2011), electricallicenserenewal.com
/// 22 (2014), rosendinuniversity.com (2020), electricallicenserenewal.com 1855 (2023 and 2026).
#[test]
fn changed_wiring_is_protected_from_2011_and_short_pieces_are_excepted_from_2014() {
    let says = |edition, words| under(edition, &bedroom()).condition_names(Remedy::NewCable, words);
    assert!(!says(Nec2008, "changed wiring"));
    assert!(says(Nec2011, "however short it is") && !says(Nec2011, "6 ft or less"));
    for edition in [Nec2014, Nec2017, Nec2020, Nec2023] {
        assert!(says(edition, "6 ft or less without a new outlet"), "{edition}");
        assert_eq!(says(edition, "excuses no receptacle that is replaced"), edition != Nec2014, "{edition}");
        assert_eq!(says(edition, "measured outside of boxes"), edition >= Nec2020, "{edition}");
    }
    assert!(says(Nec2014, "is argued under this edition"));
    assert!(says(Nec2026, "first switch") && !says(Nec2026, "6 ft or less"));
    assert!(!under(Nec2020, &opening_in(RoomUse::Bathroom)).condition_names(Remedy::NewCable, "changed wiring"));
}

/// Published: electricallicenserenewal.com 21 (2014) and 1429 (2023): 50 ft of 14 AWG, 70 ft of 12 AWG.
#[test]
fn the_longest_home_run_binds_new_circuits_and_no_replacement() {
    for edition in ENTERED {
        let judgement = under(edition, &bedroom());
        let limit = "50 ft of 14 AWG or 70 ft of 12 AWG";
        assert_eq!(judgement.condition_names(Remedy::NewCable, limit), edition >= Nec2014, "{edition}");
        assert!(judgement.condition_names(Remedy::NewCable, "combination-type AFCI breaker"));
        for remedy in Remedy::ALL.iter().filter(|remedy| **remedy != Remedy::NewCable) {
            assert!(!judgement.condition_names(*remedy, "50 ft"), "{edition} {remedy}");
        }
    }
}

/// From memory: a separate grounding conductor is generally not read as a change of the circuit's wiring.
#[test]
fn whether_a_separate_conductor_changes_the_wiring_is_the_authoritys_answer() {
    let says = |code: &CodeInForce, words| judge(&bedroom(), code).condition_names(Remedy::SeparateEgc, words);
    let published = CodeInForce::published(Nec2020);
    assert!(says(&published, "most do not count it as changed wiring"));
    for (yes, words) in [(true, "counts a separate grounding conductor"), (false, "does not count a separate")] {
        let mut code = published.clone();
        code.policy = code.policy.with(Question::SeparateEgcChangesWiring, yes, "the authority, by letter");
        assert!(says(&code, words));
        assert_eq!(judge(&bedroom(), &code).of(Remedy::SeparateEgc).changed_by, ["the authority, by letter"]);
    }
}

/// Published: California Electrical Code 2013, 250.148 and 250.146; electricallicenserenewal.com 271: all of them from 2017.
#[test]
fn grounds_are_joined_in_the_box_and_a_metal_box_to_them() {
    for edition in ENTERED {
        let judgement = under(edition, &bedroom());
        for remedy in [Remedy::SeparateEgc, Remedy::NewCable] {
            for words in ["pigtail", "a metal box is joined", "250.148", "250.146"] {
                assert!(judgement.condition_names(remedy, words), "{edition} {remedy} {words}");
            }
            let all = judgement.condition_names(remedy, "join all grounding conductors");
            assert_eq!(all, edition >= Nec2017, "{edition} {remedy}");
        }
        assert!(!judgement.condition_names(Remedy::GfciReceptacle, "a metal box is joined"));
    }
}

/// Published: expertce.com, 2023 guide: the permission names switches from 2023.
#[test]
fn a_ground_may_be_brought_to_a_switch_and_before_2023_the_authority_is_asked() {
    let switch = Opening { holds: Holding::Switch, ..bedroom() };
    for edition in ENTERED {
        let judgement = under(edition, &switch);
        assert_eq!(judgement.lawful(Remedy::SeparateEgc), Lawful::Yes);
        assert_eq!(judgement.condition_names(Remedy::SeparateEgc, "to a switch"), edition < Nec2023, "{edition}");
    }
}

/// From memory: 404.9(B), exception.
#[test]
fn a_switch_without_ground_has_a_plate_that_is_not_metal() {
    let switch = Opening { holds: Holding::Switch, ..bedroom() };
    let grounded = Opening { ground: GroundFact::Connected, ..switch.clone() };
    for edition in ENTERED {
        assert!(cautions(edition, &switch).contains("404.9(B)"), "{edition}");
        assert!(!cautions(edition, &grounded).contains("404.9(B)"), "{edition}");
    }
    assert!(cautions(Nec2026, &switch).contains("not checked: a switch replaced where there is no ground"));
}

/// Published: electricallicenserenewal.com 1494: 3 ft from 2020; before, within or directly over.
#[test]
fn the_zone_at_a_tub_is_three_feet_from_2020_and_only_a_caution() {
    let at = |feet| Opening { tub: water(feet, 0, &[]), ..opening_in(RoomUse::Bathroom) };
    for edition in ENTERED {
        assert_eq!(cautions(edition, &at(3)).contains("small bathrooms excepted"), edition >= Nec2020, "{edition}");
        assert!(!cautions(edition, &at(4)).contains("of a tub or a shower"), "{edition}");
        assert!(
            cautions(edition, &at(0)).contains("ask the authority before one that is there is replaced"),
            "{edition}"
        );
        assert_eq!(under(edition, &at(0)).lawful(Remedy::GfciReceptacle), Lawful::Yes);
    }
}

/// Published: ecmag.com, 2023 changes, part 6 (2023); electricallicenserenewal.com 1851 (2026).
#[test]
fn a_factory_receptacle_of_an_exhaust_fan_is_excepted_in_2023_in_bathrooms_and_in_2026_everywhere() {
    let fan = |room| Opening {
        built_into: Some(BuiltInto::ExhaustFan),
        existing_outlet: false,
        sink: water(20, 0, &[]),
        ..opening_in(room)
    };
    assert_eq!(under(Nec2020, &fan(RoomUse::Bathroom)).need(Duty::Gfci), Need::Required);
    assert_eq!(under(Nec2023, &fan(RoomUse::Bathroom)).need(Duty::Gfci), Need::NotRequired);
    assert_eq!(under(Nec2023, &fan(RoomUse::Garage)).need(Duty::Gfci), Need::Required);
    assert_eq!(under(Nec2026, &fan(RoomUse::Garage)).need(Duty::Gfci), Need::NotRequired);
}

/// Published: S.C. Code Regs. 8-1103 (2020) and a maker's page (2023).
#[test]
fn the_locking_support_of_a_ceiling_luminaire_is_excepted_from_2020() {
    let support = Opening { built_into: Some(BuiltInto::CeilingSupport), ..opening_in(RoomUse::Garage) };
    for edition in ENTERED {
        let expected = if edition >= Nec2020 { Need::NotRequired } else { Need::Required };
        assert_eq!(under(edition, &support).need(Duty::Gfci), expected, "{edition}");
    }
}

/// Published: ecmag.com, `Plug it` (2008, no exceptions), ecmweb.com, 2011 changes: part of a luminaire or an appliance.
#[test]
fn exceptions_to_tamper_resistance_begin_in_2011() {
    let built_in = Opening { built_into: Some(BuiltInto::Appliance), ..bedroom() };
    let high = Opening { height: Some(Length::feet(6)), ..bedroom() };
    let dedicated = Opening { dedicated_space: Some(true), ..bedroom() };
    for opening in [built_in, high, dedicated] {
        assert_eq!(under(Nec2008, &opening).need(Duty::TamperResistant), Need::Disputed);
        for edition in ENTERED.into_iter().skip(1) {
            assert_eq!(under(edition, &opening).need(Duty::TamperResistant), Need::NotRequired, "{edition}");
        }
    }
}

/// Published: solar365.com (2008): no rule for replaced receptacles in damp places; ecmweb.com, 2011 changes.
#[test]
fn before_2011_nothing_is_said_of_replaced_receptacles_and_that_is_disputed() {
    let outdoors = opening_in(RoomUse::Outdoors);
    assert_eq!(under(Nec2008, &outdoors).need(Duty::WeatherResistant), Need::Disputed);
    assert_eq!(under(Nec2008, &outdoors).need(Duty::TamperResistant), Need::Disputed);
    assert_eq!(under(Nec2008, &outdoors).need(Duty::Afci), Need::NotRequired);
    let new = Opening { existing_outlet: false, ..outdoors.clone() };
    assert_eq!(under(Nec2008, &new).need(Duty::WeatherResistant), Need::Required);
    assert_eq!(under(Nec2011, &outdoors).need(Duty::WeatherResistant), Need::Required);
}

/// Published: ecmweb.com, 2011 changes (2011, by contrast 2008); electricallicenserenewal.com 77 (2014).
#[test]
fn how_quickly_a_gfci_receptacle_is_reached_matters_from_2011_and_everywhere_from_2014() {
    let behind = Opening { readily_accessible: Some(false), ..bedroom() };
    assert_eq!(under(Nec2008, &behind).lawful(Remedy::GfciReceptacle), Lawful::Yes);
    assert!(!under(Nec2008, &behind).condition_names(Remedy::GfciReceptacle, "reached quickly"));
    assert_eq!(under(Nec2011, &behind).lawful(Remedy::GfciReceptacle), Lawful::Yes);
    assert!(under(Nec2011, &behind).condition_names(Remedy::GfciReceptacle, "where the place asks"));
    assert_eq!(under(Nec2014, &behind).lawful(Remedy::GfciReceptacle), Lawful::No);
}

/// Published (2014 as new): a state's notice on the 2014 edition; from when it reaches dwellings is disputed.
#[test]
fn a_wet_place_has_a_cover_of_the_extra_duty_kind_from_2014() {
    let wet = Opening { wetness: Some(Wetness::Wet), ..opening_in(RoomUse::Outdoors) };
    for edition in ENTERED {
        let says = under(edition, &wet).condition_names(Remedy::GfciReceptacle, "extra-duty");
        assert_eq!(says, edition >= Nec2014, "{edition}");
    }
}

fn heat_pump() -> Opening {
    Opening {
        holds: Holding::Splice,
        breaker: Some(Amperes::new(40)),
        supply: Some(Supply::V240),
        serves: vec![Equipment::AirConditioner],
        ..opening_in(RoomUse::Outdoors)
    }
}

/// Published: electricallicenserenewal.com 812 (2020) and 1852 (2026), a maker's page (2023), a secondary summary for the day.
#[test]
fn outdoor_outlets_are_reached_from_2020_with_their_dates() {
    for edition in [Nec2008, Nec2011, Nec2014, Nec2017] {
        assert!(!cautions(edition, &heat_pump()).contains("210.8(F)"), "{edition}");
    }
    assert!(cautions(Nec2020, &heat_pump()).contains("up to 50 A"));
    assert!(cautions(Nec2023, &heat_pump()).contains("new equipment on an old outlet"));
    let on = |text| judge(&heat_pump(), &CodeInForce::published(Nec2023).on(day(text))).cautions.join("\n");
    assert!(on("2026-08-31").contains("is exempt until 2026-09-01"));
    assert!(on("2026-09-01").contains("was exempt until 2026-09-01"));
    assert!(cautions(Nec2023, &heat_pump()).contains("find out the permit's day"));
    let larger = Opening { breaker: Some(Amperes::new(60)), ..heat_pump() };
    assert!(!cautions(Nec2023, &larger).contains("210.8(F)"));
}

/// Published: houstonpermittingcenter.org (2021): put off to 2023-01-01.
#[test]
fn an_authority_can_put_outdoor_outlets_off() {
    let amendment = Amendment {
        authority: "State".to_owned(),
        source: "Notice".to_owned(),
        since: None,
        until: None,
        changes: vec![Change::Date { of: Dated::OutdoorOutlets, day: day("2023-01-01") }],
    };
    let code = CodeInForce::published(Nec2020).amended(amendment);
    let before = judge(&heat_pump(), &code.clone().on(day("2022-12-31"))).cautions.join("\n");
    assert!(before.contains("only from 2023-01-01 on"));
    let after = judge(&heat_pump(), &code.on(day("2023-01-01"))).cautions.join("\n");
    assert!(after.contains("installed anew it gets GFCI protection"));
}

/// Published: California Electrical Code 2013, 394.12(5) and 320.40.
#[test]
fn old_wiring_methods_bring_their_cautions() {
    let with = |cable| Opening { cable: Some(cable), ..bedroom() };
    for edition in ENTERED {
        assert!(cautions(edition, &with(CableKind::KnobAndTube)).contains("394.12(5)"), "{edition}");
        assert!(cautions(edition, &with(CableKind::ArmoredNoStrip)).contains("320.40"), "{edition}");
        assert!(!cautions(edition, &with(CableKind::NmTwoWire)).contains("320.40"), "{edition}");
    }
}

/// Published: ecmweb.com article 21129151: from 2020 receptacles of 125 to 250 V, before 125 V.
#[test]
fn a_240_volt_receptacle_is_reached_by_the_gfci_list_from_2020_and_never_by_the_afci_list() {
    let at_240 = |room| Opening { supply: Some(Supply::V240), ..opening_in(room) };
    for edition in ENTERED {
        let expected = if edition >= Nec2020 { Need::Required } else { Need::NotRequired };
        assert_eq!(under(edition, &at_240(RoomUse::Garage)).need(Duty::Gfci), expected, "{edition}");
        assert_eq!(under(edition, &at_240(RoomUse::Bedroom)).need(Duty::Afci), Need::NotRequired, "{edition}");
    }
}
