//! Cases from practice at outlets without a ground, restated in our own words: what is lawful there and what is not.

mod scenario;

use dwelling::{Equipment, GroundFact, Holding, ProtectiveBreaker, RoomUse};
use electrical::Volume;
use rulebook::Edition::{Nec2014, Nec2017, Nec2020};
use rulebook::{CodeInForce, Duty, FillVerdict, Lawful, Marking, Need, Opening, Question, Remedy, judge};
use scenario::{Ask, ENTERED, SINCE_2014, assert_remedies, bedroom, opening_in, two_wire_cables, under};

const BOTH: [Marking; 2] = [Marking::GfciProtected, Marking::NoEquipmentGround];

/// A three-slot receptacle that somebody fitted with nothing behind its third slot.
fn bare_three_slot() -> Opening {
    Opening { holds: Holding::ThreeSlot, ..bedroom() }
}

/// Published: https://forum.nachi.org/t/gfcis-w-o-ground/1433
///
/// A GFCI first on a two-wire circuit protects the receptacles that are there; an outlet added behind it is another matter.
#[test]
fn a_gfci_first_on_a_two_wire_circuit_covers_old_outlets_and_no_new_one() {
    assert_remedies(&ENTERED, &bedroom(), &[Remedy::DownstreamOfGfci], &[]);
    let added = Opening { existing_outlet: false, holds: Holding::Nothing, ..bedroom() };
    let unlawful = [Remedy::DownstreamOfGfci, Remedy::GfciReceptacle, Remedy::NongroundingReceptacle];
    assert_remedies(&ENTERED, &added, &[Remedy::SeparateEgc, Remedy::NewCable], &unlawful);
}

/// Published: https://www.howtolookatahouse.com/Blog/Entries/2019/7/when-are-the-gfci-protected-and-no-equipment-ground-stickers-required-on-receptacle-outlets-1.html
///
/// The GFCI itself carries one label, the receptacle it feeds, with a refrigerator on it, carries two.
#[test]
fn the_gfci_carries_one_label_and_what_it_feeds_carries_two() {
    let refrigerator = Opening { serves: vec![Equipment::Refrigerator], ..opening_in(RoomUse::Kitchen) };
    for edition in ENTERED {
        let judgement = under(edition, &refrigerator);
        assert_eq!(judgement.markings(Remedy::GfciReceptacle), [Marking::NoEquipmentGround]);
        assert_eq!(judgement.markings(Remedy::DownstreamOfGfci), BOTH);
        assert!(!judgement.of(Remedy::DownstreamOfGfci).serves_equipment);
    }
}

/// Published: https://transwikia.com/home-improvement/are-gfcis-now-required-in-all-unfinished-portion-of-a-house
///
/// Plain receptacles in an unfinished basement, protected upstream: lawful, and marked so that the inspector can tell.
#[test]
fn plain_receptacles_in_an_unfinished_basement_are_lawful_behind_a_gfci_and_marked() {
    for edition in ENTERED {
        let judgement = under(edition, &opening_in(RoomUse::UnfinishedBasement));
        assert_eq!(judgement.need(Duty::Gfci), Need::Required);
        assert_eq!(judgement.lawful(Remedy::DownstreamOfGfci), Lawful::Yes);
        assert!(judgement.markings(Remedy::DownstreamOfGfci).contains(&Marking::GfciProtected));
    }
}

/// Published (contested as to a limit on outlets): http://www.thestuccocompany.com/maintenance/How-to-upgrade-outlets-and-switches-111045-5.htm
///
/// A house of 1953 before its sale, bare three-slot receptacles: they may not stay bare; one GFCI at the first opening or the
/// panel cures them, and no rule speaks of a number behind it.
#[test]
fn bare_three_slot_receptacles_may_not_stay_and_a_gfci_ahead_of_them_cures_it() {
    let lawful = [Remedy::DownstreamOfGfci, Remedy::GfciBreaker, Remedy::GfciReceptacle];
    assert_remedies(&ENTERED, &bare_three_slot(), &lawful, &[Remedy::Leave]);
    let conditions = under(Nec2020, &bare_three_slot()).of(Remedy::DownstreamOfGfci).conditions.clone();
    assert!(conditions.iter().all(|condition| !condition.text().contains("at most")), "{conditions:?}");
}

/// Published: https://activerain.com/blogsview/199579/gfci-s-on-old-2-wire-circuits
///
/// A GFCI receptacle in every box of an old house on cloth-covered two-wire cable: more than is needed, and lawful.
#[test]
fn a_gfci_receptacle_in_every_box_is_lawful() {
    for room in [RoomUse::Bedroom, RoomUse::LivingRoom, RoomUse::Kitchen, RoomUse::Bathroom] {
        assert_remedies(&ENTERED, &opening_in(room), &[Remedy::GfciReceptacle], &[]);
        let there = Opening { holds: Holding::Gfci, ..opening_in(room) };
        assert_remedies(&ENTERED, &there, &[Remedy::Leave], &[]);
    }
}

/// Published: https://forum.nachi.org/t/does-fha-require/38161
///
/// Ungrounded three-slot receptacles before a sale: a real ground, a GFCI with its labels or two-slot ones; no bare sticker.
#[test]
fn a_sticker_without_a_gfci_is_no_cure() {
    let lawful = [Remedy::SeparateEgc, Remedy::NewCable, Remedy::GfciReceptacle];
    assert_remedies(&ENTERED, &bare_three_slot(), &lawful, &[Remedy::Leave]);
    // Whether a bare three-slot one may go back to two slots is argued elsewhere: lawful where the authority says so.
    for edition in ENTERED {
        let mut code = CodeInForce::published(edition);
        code.policy = code.policy.with(Question::ThreeSlotBackToTwoSlot, true, "the authority, by letter");
        assert_eq!(judge(&bare_three_slot(), &code).lawful(Remedy::NongroundingReceptacle), Lawful::Yes);
    }
}

/// Published: https://hometeamhomeinspections.blogspot.com/2008/05/home-inspector-said-your-cfcis-dont.html
///
/// Ten GFCI receptacles without ground in a house of 1956: an inspector's tester cannot trip them, and they may stay, marked.
#[test]
fn gfci_receptacles_without_ground_may_stay_where_they_are_marked() {
    for room in [RoomUse::Bathroom, RoomUse::Kitchen, RoomUse::Garage, RoomUse::Outdoors] {
        let there = Opening { holds: Holding::Gfci, ..opening_in(room) };
        for edition in ENTERED {
            assert_eq!(under(edition, &there).lawful(Remedy::Leave), Lawful::Yes);
            assert_eq!(under(edition, &there).markings(Remedy::Leave), [Marking::NoEquipmentGround]);
        }
    }
}

/// Published (contested): http://www.inspectionnews.net/home_inspection/electrical-systems-home-inspection-and-commercial-inspection/15305-new-installation-two-prong-receptacles.html
///
/// A seller puts two-slot receptacles where bare three-slot ones had been: some read the permission otherwise.
#[test]
fn going_back_to_two_slots_is_disputed_until_the_authority_answers() {
    for edition in ENTERED {
        assert_eq!(under(edition, &bare_three_slot()).lawful(Remedy::NongroundingReceptacle), Lawful::Disputed);
        assert_eq!(under(edition, &bedroom()).lawful(Remedy::NongroundingReceptacle), Lawful::Yes);
        let mut code = CodeInForce::published(edition);
        code.policy = code.policy.with(Question::ThreeSlotBackToTwoSlot, false, "the authority, by letter");
        let judgement = judge(&bare_three_slot(), &code);
        assert_eq!(judgement.lawful(Remedy::NongroundingReceptacle), Lawful::No);
        assert_eq!(judgement.of(Remedy::NongroundingReceptacle).changed_by, ["the authority, by letter"]);
    }
}

/// Published (the same case, what to check next): a ground in the box closes the way back to two slots.
#[test]
fn going_back_to_two_slots_is_not_lawful_where_the_cable_of_the_1960s_has_a_ground() {
    let with_ground = Opening { ground: GroundFact::Loose, ..bare_three_slot() };
    assert_remedies(&ENTERED, &with_ground, &[], &[Remedy::NongroundingReceptacle]);
}

/// Published (contested): https://www.doityourself.com/forum/electrical-ac-dc/60562-fridge-grounding.html
///
/// A refrigerator at an ungrounded outlet: the two-slot receptacle may stay untouched; a green conductor to the panel or a new
/// circuit grounds it; whether a GFCI may stand in for the ground, experts argue.
#[test]
fn a_refrigerator_is_served_by_a_real_ground_and_the_rest_is_argued() {
    let refrigerator = Opening { serves: vec![Equipment::Refrigerator], ..opening_in(RoomUse::Kitchen) };
    for edition in ENTERED {
        let judgement = under(edition, &refrigerator);
        for remedy in [Remedy::Leave, Remedy::SeparateEgc, Remedy::NewCable] {
            assert_eq!(judgement.lawful(remedy), Lawful::Yes);
        }
        assert_eq!(judgement.need(Duty::EquipmentGround), Need::Required);
        assert!(judgement.use_is_disputed(Remedy::GfciReceptacle));
        assert!(!judgement.of(Remedy::GfciReceptacle).serves_equipment);
        assert!(judgement.of(Remedy::SeparateEgc).serves_equipment);
        assert!(judgement.cautions.iter().any(|caution| caution.contains("experts differ")));
    }
}

/// Published (contested): https://life-improver.com/diy/electrical-how-to-stop-this-gfci-receptacle-from-tripping
///
/// A freezer and a refrigerator trip the GFCI they share in a garage: without it, an ungrounded three-slot may not stand.
#[test]
fn taking_the_gfci_away_takes_the_permission_away() {
    let serves = vec![Equipment::Freezer, Equipment::Refrigerator];
    let garage = Opening { serves, holds: Holding::ThreeSlot, ..opening_in(RoomUse::Garage) };
    assert_remedies(&ENTERED, &garage, &[Remedy::NewCable], &[Remedy::Leave]);
    assert_eq!(under(Nec2020, &garage).need(Duty::Gfci), Need::Required);
    for edition in ENTERED {
        assert!(under(edition, &garage).use_is_disputed(Remedy::GfciReceptacle));
    }
}

/// Published (contested): https://fluther.com/96611/is-it-bad-that-our-washer-and-dryer-are-plugged-into
///
/// A washer and a gas dryer on two-slot receptacles through adapters: a new grounded circuit serves them.
#[test]
fn a_washer_on_an_adapter_wants_a_new_grounded_cable() {
    let serves = vec![Equipment::ClothesWasher, Equipment::ClothesDryer];
    let laundry = Opening { serves, ..opening_in(RoomUse::Laundry) };
    for edition in SINCE_2014 {
        let judgement = under(edition, &laundry);
        assert_eq!(
            (judgement.need(Duty::EquipmentGround), judgement.need(Duty::Gfci)),
            (Need::Required, Need::Required)
        );
        assert_eq!(judgement.lawful(Remedy::NewCable), Lawful::Yes);
        assert!(judgement.use_is_disputed(Remedy::GfciReceptacle));
        assert!(judgement.of(Remedy::NewCable).serves_equipment && !judgement.of(Remedy::Leave).serves_equipment);
    }
}

/// Published: https://mmdigest.com/Archives/Digests/200206/2002.06.03.07.html
///
/// A three-wire cable leaves the fuse box and splits into two-wire ones: no single-pole GFCI breaker on one leg; a two-pole one,
/// or GFCI receptacles after the neutrals have parted.
#[test]
fn one_leg_of_a_shared_neutral_gets_no_single_pole_gfci() {
    let single = vec![ProtectiveBreaker::Gfci];
    let shared = Opening { on_shared_neutral: true, made_for_panel: Some(single.clone()), ..bedroom() };
    assert_remedies(&ENTERED, &shared, &[Remedy::GfciReceptacle], &[Remedy::GfciBreaker]);
    let two_pole = Opening { made_for_panel: Some(vec![ProtectiveBreaker::GfciTwoPole]), ..shared };
    assert_remedies(&ENTERED, &two_pole, &[Remedy::GfciBreaker], &[]);
    let after_the_split = Opening { made_for_panel: Some(single), ..bedroom() };
    assert_remedies(&ENTERED, &after_the_split, &[Remedy::GfciReceptacle], &[]);
}

/// Published: https://www.dcourier.com/news/2016/may/06/column-more-you-ever-wanted-know-about-multi-wired/
///
/// Many shared neutrals: normal, and all hots of each set open together.
#[test]
fn shared_neutrals_are_normal_and_their_hots_open_together() {
    let shared = Opening { on_shared_neutral: true, ..bedroom() };
    for edition in [Nec2014, Nec2017] {
        let judgement = under(edition, &shared);
        let duty = judgement.duties.iter().find(|verdict| verdict.duty == Duty::SimultaneousDisconnect).unwrap();
        assert_eq!((duty.need, duty.cites[0].section), (Need::Required, "210.4(B)"));
    }
}

/// Published: https://www.petermccarthyelectric.com/blog/2012/09/28/Pt-2-GFCI-receptacles-in-an-old-house.aspx
///
/// Small boxes behind tile in a kitchen and a bathroom: a GFCI does not fit, a larger box or protection at the breaker does it.
/// By hand: two two-wire cables, strap, clamps: 14.00 in³.
#[test]
fn a_small_box_behind_tile_is_protected_from_the_breaker_or_replaced() {
    for room in [RoomUse::Kitchen, RoomUse::Bathroom] {
        let mut tiled = opening_in(room);
        tiled.fill.cables = two_wire_cables(2);
        tiled.fill.volume = Some(Volume::hundredths(1050));
        assert_eq!(under(Nec2014, &tiled).fit(Remedy::GfciReceptacle), FillVerdict::TooFull);
        assert_eq!(under(Nec2014, &tiled).lawful(Remedy::GfciBreaker), Lawful::Yes);
        tiled.fill.volume = Some(Volume::hundredths(1800));
        assert_eq!(under(Nec2014, &tiled).fit(Remedy::GfciReceptacle), FillVerdict::Fits);
    }
}

/// Published: https://www.ecmweb.com/national-electrical-code/qa/article/20902600/code-qa-gfci-requirements
///
/// The box in a place that asks for a GFCI is too small for one: protect it from the breaker or upstream, with both labels.
#[test]
fn a_box_too_small_for_a_gfci_is_protected_from_elsewhere_with_both_labels() {
    let mut bathroom = opening_in(RoomUse::Bathroom);
    bathroom.fill.volume = Some(Volume::hundredths(750));
    for edition in ENTERED {
        let judgement = under(edition, &bathroom);
        assert_eq!(judgement.fit(Remedy::GfciReceptacle), FillVerdict::TooFull);
        for remedy in [Remedy::DownstreamOfGfci, Remedy::GfciBreaker] {
            assert_eq!((judgement.lawful(remedy), judgement.markings(remedy)), (Lawful::Yes, BOTH.to_vec()));
        }
    }
}

/// Published: https://www.doityourself.com/forum/electrical-ac-dc/473661-current-bathroom-outlet-not-gfci-what-do.html
///
/// A bathroom opening of the late 1950s in the middle of a run, ungrounded bedroom receptacles after it: the GFCI goes here, and
/// what it feeds may hold three slots.
#[test]
fn a_gfci_in_the_bathroom_in_the_middle_of_a_run_covers_the_bedrooms_after_it() {
    let bathroom = Opening { has_upstream: Some(false), ..opening_in(RoomUse::Bathroom) };
    assert_remedies(&ENTERED, &bathroom, &[Remedy::GfciReceptacle], &[Remedy::DownstreamOfGfci]);
    assert_remedies(&ENTERED, &bare_three_slot(), &[Remedy::DownstreamOfGfci], &[Remedy::Leave]);
    assert_eq!(under(Nec2014, &bathroom).need(Duty::Gfci), Need::Required);
}

/// Published (contested): http://www.diychatroom.com/f18/code-question-extending-existing-120v-circuit-57087/
///
/// Grounded cable run 6 ft from an ungrounded box to a new one: neither two slots nor a GFCI make the new outlet lawful.
#[test]
fn a_new_outlet_six_feet_on_needs_a_real_ground() {
    let new = Opening { existing_outlet: false, holds: Holding::Nothing, ..bedroom() };
    let unlawful = [Remedy::NongroundingReceptacle, Remedy::GfciReceptacle, Remedy::GfciBreaker];
    assert_remedies(&ENTERED, &new, &[Remedy::SeparateEgc], &unlawful);
}
