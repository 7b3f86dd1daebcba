//! Lists and numbers of the code typed a second time, from another reading, and compared with what the rulebook answers.

mod scenario;

use dwelling::{Equipment, Holding, PathObstacle, RoomUse, SourceKind, Wetness};
use electrical::{Amperes, ConductorMetal, Gauge, Length};
use rulebook::tables::egc_size::egc_size;
use rulebook::{
    CodeInForce, ConnectionPlace, Duty, Edition, Lawful, Need, Opening, Remedy, SourceFacts, all_values,
    ground_connection,
};
use scenario::{Ask, opening_in, under, water};

/// A new outlet on a 15 A circuit in a room of this use: the list alone decides, without the rules for replacements.
fn new_in(room: RoomUse) -> Opening {
    Opening { existing_outlet: false, holds: Holding::Nothing, ..opening_in(room) }
}

/// `y` required, `-` not required, `?` not checked, `d` disputed, for 2008, 2011, 2014, 2017, 2020, 2023, 2026.
fn row(duty: Duty, opening: &Opening) -> String {
    let letter = |edition| match under(edition, opening).need(duty) {
        Need::Required => 'y',
        Need::NotRequired => '-',
        Need::NotChecked => '?',
        Need::Disputed => 'd',
    };
    Edition::ALL.map(letter).iter().collect()
}

/// Published: nachi.org thread 12658 (2008), California Electrical Code 2013 (2011), ecode360.com/27891398 (2014), S.C. Code Regs.
/// 8-1103 (2020), nahb.org (2023), electricallicenserenewal.com 1851 and ecmweb.com 55344219 (2026); from memory for 2017.
#[test]
fn the_list_of_gfci_places_typed_a_second_time() {
    let far_sink = |room| Opening { sink: water(20, 0, &[]), ..new_in(room) };
    let kitchen = |countertop| Opening { countertop: Some(countertop), ..far_sink(RoomUse::Kitchen) };
    let near = |room| Opening { sink: water(4, 0, &[]), countertop: Some(false), ..new_in(room) };
    let damp = Opening { wetness: Some(Wetness::Damp), ..new_in(RoomUse::Den) };
    let rows = [
        ("bathroom", far_sink(RoomUse::Bathroom), "yyyyyy?"),
        ("garage", new_in(RoomUse::Garage), "yyyyyyy"),
        ("accessory building", new_in(RoomUse::AccessoryBuilding), "yyyyyyy"),
        ("outdoors", new_in(RoomUse::Outdoors), "yyyyyy?"),
        ("crawl space", new_in(RoomUse::CrawlSpace), "yyyyyy?"),
        ("unfinished basement", new_in(RoomUse::UnfinishedBasement), "yyyyyy?"),
        ("finished basement", new_in(RoomUse::FinishedBasement), "----yy?"),
        ("kitchen countertop", kitchen(true), "yyyyyy?"),
        ("kitchen, elsewhere", kitchen(false), "-----y?"),
        ("near a kitchen sink, in the kitchen", near(RoomUse::Kitchen), "--yyyy?"),
        ("near a laundry's sink", near(RoomUse::Utility), "yyyyyyy"),
        ("near another sink", near(RoomUse::Den), "??yyyyy"),
        ("boathouse", new_in(RoomUse::Boathouse), "yyyyyy?"),
        ("near a tub", Opening { tub: water(5, 0, &[]), ..new_in(RoomUse::Bedroom) }, "--yyyyy"),
        ("laundry", far_sink(RoomUse::Laundry), "--yyyy?"),
        ("damp place indoors", damp, "----yy?"),
        ("bedroom", new_in(RoomUse::Bedroom), "------?"),
        ("attic", new_in(RoomUse::Attic), "------?"),
    ];
    for (place, opening, expected) in rows {
        assert_eq!(row(Duty::Gfci, &opening), expected, "{place}");
    }
}

/// Published: trade forum thread 131275 (2017), ecmag.com `Remodel with care` (2020), ecmweb.com 55344219 (2023 and 2026).
#[test]
fn the_way_of_measuring_typed_a_second_time() {
    let through = |obstacle| Opening { sink: water(4, 0, &[obstacle]), ..new_in(RoomUse::Bedroom) };
    assert_eq!(&row(Duty::Gfci, &through(PathObstacle::CabinetDoor))[2..], "d-yyy");
    assert_eq!(&row(Duty::Gfci, &through(PathObstacle::Window))[2..], "d-dyy");
    assert_eq!(&row(Duty::Gfci, &through(PathObstacle::Wall))[2..6], "d---");
}

/// Published: trade forum post 1196351 (2008), California Electrical Code 2013 (2011), trade newsletter (2014),
/// electricallicenserenewal.com 1429 (2023).
#[test]
fn the_rooms_of_the_afci_list_typed_a_second_time() {
    let from_2008 =
        "bedroom living-room family-room dining-room den library parlor sunroom recreation-room hallway closet";
    let from_2014 = "kitchen laundry";
    let never = "bathroom garage accessory-building outdoors attic crawl-space unfinished-basement boathouse";
    for room in RoomUse::ALL {
        let listed = |rooms: &str| rooms.split(' ').any(|name| name == room.name());
        let expected = match () {
            () if listed(from_2008) => "yyyyyy?",
            () if listed(from_2014) => "--yyyy?",
            () if listed(never) => "------?",
            () => continue,
        };
        assert_eq!(row(Duty::Afci, &new_in(*room)), expected, "{room}");
    }
}

/// Published: trade forum 2559641 (2014), electricallicenserenewal.com 810 (2020), nahb.org (2023).
#[test]
fn the_appliances_typed_a_second_time() {
    let served = |equipment| Opening { serves: vec![equipment], ..new_in(RoomUse::Bedroom) };
    for (equipment, expected) in [
        (Equipment::Dishwasher, "--yyyy?"),
        (Equipment::SumpPump, "----yy?"),
        (Equipment::Range, "-----y?"),
        (Equipment::ClothesDryer, "-----y?"),
        (Equipment::Microwave, "-----y?"),
        (Equipment::Refrigerator, "------?"),
    ] {
        assert_eq!(row(Duty::Gfci, &served(equipment)), expected, "{equipment}");
    }
}

/// Published: diychatroom.com 153678 (2011), trade forum 116386 (2014), ecmweb.com, equipment grounding, part 3.
#[test]
fn the_places_to_connect_typed_a_second_time() {
    let facts = |place| SourceFacts {
        place,
        same_panel: Some(true),
        verified: Some(true),
        from_entry: Some(Length::feet(5)),
        gauge: Some(Gauge::AWG_12),
        through_metal: false,
        breaker: Some(Amperes::new(20)),
    };
    let source = |kind| facts(ConnectionPlace::Source(kind));
    for (facts, expected) in [
        (source(SourceKind::ElectrodeSystem), "yyyyyy?"),
        (source(SourceKind::ElectrodeConductor), "yyyyyy?"),
        (source(SourceKind::GroundBar), "yyyyyy?"),
        (source(SourceKind::ServiceNeutral), "yyyyyy?"),
        (source(SourceKind::WaterPipe), "yyyyyy?"),
        (facts(ConnectionPlace::BoxOfAnotherCircuit), "--yyyy?"),
        (facts(ConnectionPlace::BoxOfTheSameCircuit), "dddddd?"),
        (source(SourceKind::LoneRod), "------?"),
        (source(SourceKind::OtherMetal), "------?"),
    ] {
        let letter = |edition| match ground_connection(facts, &CodeInForce::published(edition)).lawful {
            Lawful::Yes => 'y',
            Lawful::No => '-',
            Lawful::Disputed => 'd',
            Lawful::NotChecked => '?',
        };
        let row: String = Edition::ALL.map(letter).iter().collect();
        assert_eq!(row, expected, "{:?}", facts.place);
    }
}

/// Published: brunsengineering.com, Table 250.122; fasttraxsystem.com (2026): nothing changed for 15 and 20 A.
#[test]
fn the_sizes_of_grounding_conductors_typed_a_second_time() {
    let rows =
        [(15, 14, 12), (20, 12, 10), (25, 10, 8), (30, 10, 8), (40, 10, 8), (60, 10, 8), (100, 8, 6), (200, 6, 4)];
    for (amperes, copper, aluminium) in rows {
        for edition in Edition::ALL {
            let code = CodeInForce::published(edition);
            let size = |metal| egc_size(Amperes::new(amperes), metal, None, &code).ok().map(|size| size.value.number());
            let entered = edition != Edition::Nec2026 || amperes <= 20;
            assert_eq!(size(ConductorMetal::Copper), entered.then_some(copper), "{edition} {amperes} A");
            assert_eq!(size(ConductorMetal::Aluminium), entered.then_some(aluminium), "{edition} {amperes} A");
        }
    }
}

/// The number of a section in 2008, 2011, 2014, 2017, 2020, 2023 and 2026; `-` where nothing is entered.
///
/// Published: the sources of each value; from memory for 406.2(C), 406.3(B) and 406.5(B) of 2008.
#[test]
fn sections_carry_the_number_they_have_in_each_edition() {
    let numbers = [
        (
            "replacement.existing-ground.must-be-used",
            "406.3(D)(1) 406.4(D)(1) 406.4(D)(1) 406.4(D)(1) 406.4(D)(1) 406.4(D)(1) -",
        ),
        (
            "replacement.nongrounding.permitted",
            "406.3(D)(3)(a) 406.4(D)(2)(a) 406.4(D)(2)(a) 406.4(D)(2)(a) 406.4(D)(2)(a) 406.4(D)(2)(a) -",
        ),
        (
            "replacement.gfci-receptacle.permitted",
            "406.3(D)(3)(b) 406.4(D)(2)(b) 406.4(D)(2)(b) 406.4(D)(2)(b) 406.4(D)(2)(b) 406.4(D)(2)(b) -",
        ),
        (
            "replacement.downstream.permitted",
            "406.3(D)(3)(c) 406.4(D)(2)(c) 406.4(D)(2)(c) 406.4(D)(2)(c) 406.4(D)(2)(c) 406.4(D)(2)(c) -",
        ),
        (
            "replacement.gfci.on-replacement",
            "406.3(D)(2) 406.4(D)(3) 406.4(D)(3) 406.4(D)(3) 406.4(D)(3) 406.4(D)(3) -",
        ),
        ("replacement.afci.rooms", "210.12(B) 210.12(A) 210.12(A) 210.12(A) 210.12(A) 210.12(B) -"),
        ("wiring.changed.protection", "210.12 210.12(B) 210.12(B) 210.12(D) 210.12(D) 210.12(E) 210.12(E)(2)"),
        ("places.gfci.sinks", "210.8(A)(7) 210.8(A)(7) 210.8(A)(7) 210.8(A)(7) 210.8(A)(7) 210.8(A)(8) 210.8(A)(9)"),
        ("places.gfci.tubs", "210.8(A) 210.8(A) 210.8(A)(9) 210.8(A)(9) 210.8(A)(9) 210.8(A)(10) 210.8(A)(11)"),
        ("receptacle.weather-resistant.damp-and-wet", "406.8 406.9 406.9 406.9 406.9 406.9 -"),
        (
            "grounding.connection.water-pipe",
            "250.52(A)(1) 250.68(C)(1) 250.68(C)(1) 250.68(C)(1) 250.68(C)(1) 250.68(C)(1) -",
        ),
        ("grounding.methods.recognised", "250.118 250.118 250.118 250.118 250.118 250.118(A) -"),
        ("plates.metal-faceplate.grounded", "406.5(B) 406.6(B) 406.6(B) 406.6(B) 406.6(B) 406.6(B) -"),
        ("receptacle.tub-zone.reach", "406.8(C) 406.9(C) 406.9(C) 406.9(C) 406.9(C) 406.9(C) -"),
        ("gfci.outdoor-outlets.largest", "210.8 210.8 210.8 210.8 210.8(F) 210.8(F) 210.8(F)"),
    ];
    let values = all_values();
    for (id, expected) in numbers {
        let value = values.iter().find(|value| value.id() == id).unwrap_or_else(|| panic!("no value {id}"));
        let number = |edition| {
            let cites = value.citations();
            cites.iter().find(|cite| cite.edition == edition).map_or("-", |cite| cite.section)
        };
        assert_eq!(Edition::ALL.map(number).join(" "), expected, "{id}");
    }
}

/// Published: electricallicenserenewal.com 306: on the receptacle until 2014, from 2017 on it or its cover plate.
#[test]
fn the_place_of_the_markings_typed_a_second_time() {
    for edition in scenario::ENTERED {
        let judgement = under(edition, &scenario::bedroom());
        let on_the_plate = judgement.condition_names(Remedy::GfciReceptacle, "or its cover plate");
        assert_eq!(on_the_plate, edition.year() >= 2017, "{edition}");
    }
}
