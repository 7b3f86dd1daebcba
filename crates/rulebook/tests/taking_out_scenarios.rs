//! Whether a receptacle that the owner does not need may go behind a blank cover, by what its place asks for.

mod scenario;

use dwelling::{DwellingUse, Holding, NearWater, Point, RoomUse, WallBreak, WallBreakKind};
use electrical::{Amperes, Length};
use rulebook::{Edition, FillVerdict, Lawful, Opening, Remedy, Staying, TakingOut};
use scenario::{Ask, ENTERED, bedroom, opening_in, two_wire_cables, under};

const BLANK: Remedy = Remedy::BlankCover;

fn at(x: i64, y: i64) -> Point {
    Point { x: Length::feet(x), y: Length::feet(y) }
}

/// A receptacle that stays, 16 in above the floor.
fn staying(id: &str, place: Point) -> Staying {
    Staying {
        id: id.to_owned(),
        is_receptacle: true,
        at: Some(place),
        height: Some(Length::feet_and_inches(1, 4)),
        sink: None,
        countertop: Some(false),
    }
}

/// A room of 10 by 14 ft with a doorway from (3, 0) to (6, 0), whose receptacles at (10, 2), (10, 14), (0, 12) and (0, 0) keep
/// the spacing by themselves: 6 ft from the doorway's edge to the first, then three times 12 ft, then 3 ft.
fn room() -> TakingOut {
    TakingOut {
        outline: vec![at(0, 0), at(10, 0), at(10, 14), at(0, 14)],
        wall_breaks: Some(vec![WallBreak { kind: WallBreakKind::Opening, from: at(3, 0), to: at(6, 0) }]),
        staying: Some(vec![
            staying("one", at(10, 2)),
            staying("two", at(10, 14)),
            staying("three", at(0, 12)),
            staying("four", at(0, 0)),
        ]),
        dwelling_use: Some(DwellingUse::OneFamily),
    }
}

fn taken_out(room_use: RoomUse, taking_out: TakingOut) -> Opening {
    Opening { taking_out: Some(taking_out), ..opening_in(room_use) }
}

fn alone() -> TakingOut {
    TakingOut { staying: Some(Vec::new()), ..room() }
}

fn assert_stands(opening: &Opening, editions: &[Edition], lawful: Lawful, words: &str) {
    for edition in editions {
        let judgement = under(*edition, opening);
        let verdict = judgement.of(BLANK);
        assert_eq!(verdict.lawful, lawful, "{edition}: {:?}", verdict.why_not);
        let said = verdict.why_not.join("; ");
        assert!(said.contains(words), "{edition}: {said}");
    }
}

/// By hand: in `room()` every gap is at most 12 ft and every end at most 6. Published: 210.52(A), no point of a wall more than
/// 6 ft from a receptacle (ecmag.com, `Around the House`, on 2011).
#[test]
fn a_fifth_receptacle_of_a_bedroom_may_go_where_the_other_four_keep_the_spacing() {
    assert_stands(&taken_out(RoomUse::Bedroom, room()), &ENTERED, Lawful::Yes, "");
}

/// By hand: without the second, (10, 2) and (0, 12) are 24 ft of wall apart, and the middle is 12 ft away.
#[test]
fn one_of_the_four_must_stay_and_the_page_says_how_far_a_wall_point_would_be() {
    let mut three = room();
    three.staying.as_mut().unwrap().remove(1);
    assert_stands(&taken_out(RoomUse::Bedroom, three), &ENTERED, Lawful::No, "12 ft from the nearest");
}

/// What is not known is asked for, one thing after the other, and never passes.
#[test]
fn without_outline_doorways_or_the_others_places_a_blank_cover_is_not_checked() {
    let without = |change: fn(&mut TakingOut)| {
        let mut taking_out = room();
        change(&mut taking_out);
        taken_out(RoomUse::LivingRoom, taking_out)
    };
    type Change = fn(&mut TakingOut);
    let cases: [(Change, &str); 6] = [
        (|room| room.outline.clear(), "draw the room's outline"),
        (|room| room.wall_breaks = None, "doorways"),
        (|room| room.staying = None, "which other receptacles"),
        (|room| room.staying.as_mut().unwrap()[1].at = None, "two"),
        (|room| room.staying.as_mut().unwrap()[1].height = None, "two"),
        (|room| room.staying.as_mut().unwrap()[1].is_receptacle = false, "two"),
    ];
    for (change, words) in cases {
        assert_stands(&without(change), &ENTERED, Lawful::NotChecked, words);
    }
}

/// By hand: 5 ft 6 in is the limit of 210.52 (from memory, and in ecmag.com, `Around the House`): 5 ft 7 in does not count.
#[test]
fn a_receptacle_too_high_on_the_wall_does_not_count_for_it() {
    for (inches, lawful) in [(66, Lawful::Yes), (67, Lawful::No)] {
        let mut high = room();
        high.staying.as_mut().unwrap()[1].height = Some(Length::feet_and_inches(0, inches));
        assert_stands(&taken_out(RoomUse::Den, high), &ENTERED, lawful, "");
    }
}

/// Published: fixed cabinets break a wall space since 2011 (ecmweb.com, 2011 NEC changes). By hand: with a cabinet along the
/// whole 14 ft side from (10, 2) to (10, 14) the two receptacles at its ends may be all that side has.
#[test]
fn a_fixed_cabinet_breaks_a_wall_since_2011_and_not_before() {
    let mut cabinet = room();
    cabinet.wall_breaks.as_mut().unwrap().push(WallBreak {
        kind: WallBreakKind::FixedCabinet,
        from: at(10, 3),
        to: at(10, 13),
    });
    // Without the receptacle at (10, 14): its wall space begins at (10, 13), and (0, 12) is 1 + 10 + 2 ft away.
    let staying = cabinet.staying.as_mut().unwrap();
    staying[1] = self::staying("two", at(5, 14));
    let opening = taken_out(RoomUse::Library, cabinet);
    assert_stands(&opening, &[Edition::Nec2008], Lawful::No, "from the nearest");
    assert_stands(&opening, &ENTERED[1..], Lawful::Yes, "");
}

/// From memory: 210.52(C); the survey knows no countertop's outline.
#[test]
fn at_a_kitchens_countertop_it_is_not_checked_and_elsewhere_in_the_kitchen_the_walls_decide() {
    for (countertop, lawful) in
        [(Some(true), Lawful::NotChecked), (None, Lawful::NotChecked), (Some(false), Lawful::Yes)]
    {
        let opening = Opening { countertop, ..taken_out(RoomUse::Kitchen, room()) };
        assert_stands(&opening, &ENTERED, lawful, "");
    }
    // Receptacles of the countertop are not those of the walls.
    let mut counters = room();
    counters.staying.as_mut().unwrap()[1].countertop = Some(true);
    let opening = Opening { countertop: Some(false), ..taken_out(RoomUse::Kitchen, counters) };
    assert_stands(&opening, &ENTERED, Lawful::No, "");
}

/// From memory: 210.52(D), within 3 ft of every basin.
#[test]
fn a_bathroom_keeps_the_receptacle_at_its_basin() {
    let basin = |inches, taking_out| Opening {
        sink: Some(NearWater { distance: Length::feet_and_inches(0, inches), passes: Vec::new() }),
        ..taken_out(RoomUse::Bathroom, taking_out)
    };
    assert_stands(&basin(36, alone()), &ENTERED, Lawful::No, "no other stays");
    assert_stands(&basin(37, alone()), &ENTERED, Lawful::Yes, "");
    assert_stands(&basin(36, room()), &ENTERED, Lawful::NotChecked, "find out whether each keeps one");
    assert_stands(&taken_out(RoomUse::Bathroom, room()), &ENTERED, Lawful::NotChecked, "");
}

/// From memory: 210.52(F) and (G), at least one; who must have one in a basement: since 2017 houses for two families too (a
/// device maker's page on 210.52(G) in 2017), in 2023 every dwelling (one on 2023).
#[test]
fn the_last_receptacle_of_a_laundry_or_basement_stays_and_another_may_go() {
    assert_stands(&taken_out(RoomUse::Laundry, alone()), &ENTERED, Lawful::No, "no other stays");
    assert_stands(&taken_out(RoomUse::Laundry, room()), &ENTERED, Lawful::Yes, "");
    assert_stands(&taken_out(RoomUse::UnfinishedBasement, alone()), &ENTERED, Lawful::No, "");
    let two_family = TakingOut { dwelling_use: Some(DwellingUse::TwoFamily), ..alone() };
    let opening = taken_out(RoomUse::UnfinishedBasement, two_family);
    assert_stands(&opening, &ENTERED[..3], Lawful::Yes, "");
    assert_stands(&opening, &ENTERED[3..], Lawful::No, "");
    let unknown = taken_out(RoomUse::UnfinishedBasement, TakingOut { dwelling_use: None, ..alone() });
    assert_stands(&unknown, &ENTERED[..4], Lawful::NotChecked, "kind of dwelling");
}

/// Published: one for each car since 2014 (a device maker's page on 210.52(G) in 2017).
#[test]
fn a_garage_keeps_one_and_since_2014_one_for_each_car() {
    assert_stands(&taken_out(RoomUse::Garage, alone()), &ENTERED, Lawful::No, "");
    assert_stands(&taken_out(RoomUse::Garage, room()), &ENTERED[..2], Lawful::Yes, "");
    assert_stands(&taken_out(RoomUse::Garage, room()), &ENTERED[2..], Lawful::NotChecked, "every car");
}

/// Published: hallways of 10 ft or more have one (ecmag.com, required receptacle outlets, part X).
#[test]
fn the_only_receptacle_of_a_hallway_stays_from_10_ft_on() {
    let hallway = |feet| TakingOut { outline: vec![at(0, 0), at(feet, 0), at(feet, 4), at(0, 4)], ..alone() };
    assert_stands(&taken_out(RoomUse::Hallway, hallway(10)), &ENTERED, Lawful::No, "10 ft");
    assert_stands(&taken_out(RoomUse::Hallway, hallway(9)), &ENTERED, Lawful::Yes, "");
    let unknown = TakingOut { outline: Vec::new(), ..alone() };
    assert_stands(&taken_out(RoomUse::Hallway, unknown), &ENTERED, Lawful::NotChecked, "how long");
}

/// From memory: 210.52(E), front and back; which is which no survey says.
#[test]
fn outdoors_a_house_keeps_two_and_more_are_not_checked() {
    let one = TakingOut { staying: Some(vec![staying("front", at(0, 0))]), ..room() };
    assert_stands(&taken_out(RoomUse::Outdoors, one), &ENTERED, Lawful::No, "fewer than two");
    assert_stands(&taken_out(RoomUse::Outdoors, room()), &ENTERED, Lawful::NotChecked, "front");
}

/// Published: above 60 sq ft since 2011 (proposal 2-223, trade forum, thread 71808).
#[test]
fn an_entry_of_up_to_60_square_feet_keeps_nothing_and_a_larger_one_since_2011_may() {
    let entry = |wide, deep| TakingOut { outline: vec![at(0, 0), at(wide, 0), at(wide, deep), at(0, deep)], ..alone() };
    assert_stands(&taken_out(RoomUse::Stairway, entry(10, 6)), &ENTERED, Lawful::Yes, "");
    assert_stands(&taken_out(RoomUse::Stairway, entry(10, 7)), &ENTERED[..1], Lawful::Yes, "");
    assert_stands(&taken_out(RoomUse::Stairway, entry(10, 7)), &ENTERED[1..], Lawful::NotChecked, "60 sq ft");
}

/// From memory: no section asks for a receptacle in a closet; 210.63 asks for one near heating and cooling equipment.
#[test]
fn a_closets_may_go_and_a_utility_rooms_is_asked_about() {
    assert_stands(&taken_out(RoomUse::Closet, alone()), &ENTERED, Lawful::Yes, "");
    assert_stands(&taken_out(RoomUse::Utility, room()), &ENTERED, Lawful::NotChecked, "25 ft");
}

/// From memory: 210.50(C), within 6 ft of an appliance in its own place.
#[test]
fn the_receptacle_of_an_appliance_in_its_own_place_is_asked_about() {
    let washer = Opening { dedicated_space: Some(true), ..taken_out(RoomUse::Closet, alone()) };
    assert_stands(&washer, &ENTERED, Lawful::NotChecked, "6 ft");
}

/// Nothing of this was read for 2026.
#[test]
fn under_2026_nothing_is_taken_out_of_a_room_with_a_rule() {
    let rooms = [RoomUse::Bedroom, RoomUse::Bathroom, RoomUse::Laundry, RoomUse::Garage, RoomUse::Hallway];
    for room_use in rooms {
        assert_stands(&taken_out(room_use, room()), &[Edition::Nec2026], Lawful::NotChecked, "");
    }
}

/// From memory: 314.29, 314.25, 110.14(B), 210.70(A)(1).
#[test]
fn what_must_be_seen_to_is_told_with_its_section() {
    let judgement = under(Edition::Nec2020, &Opening { holds: Holding::Gfci, ..taken_out(RoomUse::Bedroom, room()) });
    for words in ["314.29", "314.25", "110.14(B)", "210.70(A)(1)", "load terminals"] {
        assert!(judgement.condition_names(BLANK, words), "{words}: {:?}", judgement.of(BLANK).conditions);
    }
    assert!(judgement.markings(BLANK).is_empty());
}

#[test]
fn what_holds_no_receptacle_or_is_above_20_a_is_not_taken_out() {
    for holds in [Holding::Switch, Holding::SwitchAndReceptacle, Holding::Splice] {
        let opening = Opening { holds, ..taken_out(RoomUse::Closet, alone()) };
        assert_stands(&opening, &ENTERED, Lawful::No, "");
    }
    let unknown = Opening { holds: Holding::Unknown, ..taken_out(RoomUse::Closet, alone()) };
    assert_stands(&unknown, &ENTERED, Lawful::NotChecked, "what the box holds");
    let large = Opening { breaker: Some(Amperes::new(30)), ..taken_out(RoomUse::Closet, alone()) };
    assert_stands(&large, &ENTERED, Lawful::NotChecked, "15 and 20 A");
}

/// By hand: two cables of 14 AWG are 4 × 2 in³, clamps 2: 10 in³ fill a box of 10; with a device they are 14.
#[test]
fn a_blank_cover_takes_no_room_in_the_box() {
    let mut opening = taken_out(RoomUse::Closet, alone());
    opening.fill.cables = two_wire_cables(2);
    opening.fill.volume = Some(electrical::Volume::hundredths(1000));
    let judgement = under(Edition::Nec2020, &opening);
    assert_eq!(judgement.fit(BLANK), FillVerdict::Fits);
    assert_eq!(judgement.fit(Remedy::NongroundingReceptacle), FillVerdict::TooFull);
}

#[test]
fn where_nobody_asks_nothing_is_said_of_a_blank_cover() {
    let judgement = under(Edition::Nec2020, &bedroom());
    assert_eq!(judgement.lawful(BLANK), Lawful::No);
    assert!(judgement.of(BLANK).rules.is_empty());
}
