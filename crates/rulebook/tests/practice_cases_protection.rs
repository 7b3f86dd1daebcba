//! Cases from practice on AFCI protection, tamper resistance and untouched outlets, restated in our own words.

mod scenario;

use dwelling::{GroundFact, Holding, ProtectiveBreaker, RoomUse};
use electrical::{ConductorMetal, Volume};
use rulebook::Edition::{Nec2014, Nec2017, Nec2020};
use rulebook::{Duty, FillVerdict, Known, Lawful, Marking, Need, Opening, Remedy};
use scenario::{Ask, ENTERED, SINCE_2014, assert_remedies, bedroom, opening_in, two_wire_cables, under, water};

/// Published (contested as to which comes first): trade forum, thread 115134
///
/// One two-slot receptacle to which both duties come: protection from the panel for one, a device for the other, or both in one.
#[test]
fn where_both_protections_are_due_both_are_said_and_the_panel_can_give_them() {
    let counter = Opening { countertop: Some(true), sink: water(4, 0, &[]), ..opening_in(RoomUse::Kitchen) };
    let judgement = under(Nec2014, &counter);
    assert_eq!((judgement.need(Duty::Gfci), judgement.need(Duty::Afci)), (Need::Required, Need::Required));
    assert_eq!(judgement.lawful(Remedy::GfciBreaker), Lawful::Yes);
    assert_eq!(judgement.lawful(Remedy::GfciReceptacle), Lawful::Yes);
    assert!(judgement.condition_names(Remedy::GfciReceptacle, "AFCI protection"));
}

/// Published (contested): https://electriciantalk.com, `What a single broken receptacle can turn into`
///
/// A broken receptacle replaced like for like under the 2014 edition: the AFCI duty comes with it.
#[test]
fn like_for_like_does_not_escape_afci_protection() {
    let judgement = under(Nec2014, &bedroom());
    assert_eq!(judgement.need(Duty::Afci), Need::Required);
    assert!(judgement.condition_names(Remedy::NongroundingReceptacle, "AFCI protection"));
    let afci = judgement.duties.iter().find(|verdict| verdict.duty == Duty::Afci).expect("every duty is answered");
    assert!(afci.cites.iter().any(|cite| matches!(cite.known, Known::Disputed(_))), "{:?}", afci.cites);
}

/// Published (contested): trade forum, thread 146913
///
/// 2017: a breaker that is GFCI and AFCI in one and three-slot receptacles on 14-2 cable without ground: lawful with labels.
/// A GFCI receptacle without AFCI protection: only if all four conditions of the exception hold.
#[test]
fn a_dual_function_breaker_with_labels_meets_both_duties_in_2017() {
    let panel = Opening { made_for_panel: Some(vec![ProtectiveBreaker::Dual]), ..bedroom() };
    let judgement = under(Nec2017, &panel);
    assert_eq!(judgement.lawful(Remedy::GfciBreaker), Lawful::Yes);
    assert_eq!(judgement.markings(Remedy::GfciBreaker), [Marking::GfciProtected, Marking::NoEquipmentGround]);
    assert_eq!(judgement.need(Duty::Afci), Need::Required);
    assert!(judgement.condition_names(Remedy::GfciReceptacle, "only where all four hold"));
}

/// Published: trade forum, thread 150725
///
/// 2017: the six feet that excuse a short piece of new wiring do not excuse a receptacle that is replaced.
#[test]
fn six_feet_excuse_short_wiring_and_no_replacement() {
    let judgement = under(Nec2017, &bedroom());
    assert_eq!(judgement.need(Duty::Afci), Need::Required);
    assert!(judgement.condition_names(Remedy::NewCable, "6 ft or less"));
    for remedy in [Remedy::NongroundingReceptacle, Remedy::GfciReceptacle, Remedy::DownstreamOfGfci] {
        assert!(!judgement.condition_names(remedy, "6 ft"), "{remedy}");
    }
}

/// Published (contested): trade forum, thread 134287
///
/// A box too small is an excuse for where the GFCI sits, and none for AFCI protection.
#[test]
fn a_box_too_small_excuses_no_afci_protection() {
    let mut small = opening_in(RoomUse::Laundry);
    small.fill.volume = Some(Volume::hundredths(750));
    for edition in SINCE_2014 {
        let judgement = under(edition, &small);
        assert_eq!(judgement.fit(Remedy::GfciReceptacle), FillVerdict::TooFull);
        assert_eq!(judgement.lawful(Remedy::DownstreamOfGfci), Lawful::Yes);
        assert_eq!(judgement.need(Duty::Afci), Need::Required);
        let condition = |words| judgement.condition_names(Remedy::NongroundingReceptacle, words);
        assert!(condition("no GFCI receptacle fits the box") && !condition("no AFCI receptacle fits"));
    }
}

/// Published (contested): trade forum, post 1317206
///
/// Somebody fears that tamper resistance ends two-slot replacements: it does not reach them.
#[test]
fn tamper_resistance_does_not_end_two_slot_replacements() {
    for edition in ENTERED {
        let judgement = under(edition, &bedroom());
        assert_eq!(judgement.lawful(Remedy::NongroundingReceptacle), Lawful::Yes);
        assert!(!judgement.condition_names(Remedy::NongroundingReceptacle, "tamper-resistant"));
    }
}

/// Published: https://www.doityourself.com/forum/electrical-ac-dc/418701-inspector-requiring-afci-tamper-resistant-outlets-existing-construction.html
///
/// Every new receptacle in an old house is tamper-resistant; the ones nobody touches stay.
#[test]
fn new_receptacles_in_an_old_house_are_tamper_resistant_and_untouched_ones_stay() {
    let grounded = Opening { holds: Holding::ThreeSlot, ground: GroundFact::Connected, ..bedroom() };
    for edition in SINCE_2014 {
        let judgement = under(edition, &grounded);
        assert_eq!(judgement.need(Duty::TamperResistant), Need::Required);
        assert!(judgement.condition_names(Remedy::RestoreExistingGround, "tamper-resistant"));
        assert_eq!(judgement.lawful(Remedy::Leave), Lawful::Yes);
        assert_eq!(judgement.of(Remedy::Leave).conditions, []);
    }
}

/// Published: https://www.thebuildingcodeforum.com/forum/threads/replacing-a-receptacle-requires-meeting-current-codes-existing-building-code-nec.37376/post-296187
///
/// A repair, like for like, is sent to the replacement rules; protective receptacles are readily accessible.
#[test]
fn a_like_for_like_repair_follows_the_replacement_rules() {
    let repair = Opening { readily_accessible: Some(false), ..opening_in(RoomUse::Bathroom) };
    for edition in SINCE_2014 {
        let judgement = under(edition, &repair);
        assert_eq!(judgement.need(Duty::Gfci), Need::Required);
        assert_eq!(judgement.need(Duty::TamperResistant), Need::Required);
        assert_eq!(judgement.lawful(Remedy::GfciReceptacle), Lawful::No);
        assert_eq!(judgement.lawful(Remedy::GfciBreaker), Lawful::Yes);
    }
}

/// Published: trade forum, thread 2588618
///
/// 2020, a kitchen of 1971 on aluminium, a panel for which no protective breaker is made: pigtails to copper and a
/// tamper-resistant device, or protection beside the panel; no exception for what is marked for aluminium.
#[test]
fn a_worn_receptacle_on_aluminium_is_replaced_on_copper_pigtails() {
    let worn = Opening {
        holds: Holding::ThreeSlot,
        ground: GroundFact::Connected,
        metal: ConductorMetal::Aluminium,
        countertop: Some(true),
        sink: water(3, 0, &[]),
        made_for_panel: Some(Vec::new()),
        room_beside_panel: Some(true),
        ..opening_in(RoomUse::Kitchen)
    };
    let judgement = under(Nec2020, &worn);
    for duty in [Duty::Gfci, Duty::Afci, Duty::TamperResistant] {
        assert_eq!(judgement.need(duty), Need::Required, "{duty}");
    }
    assert_eq!(judgement.lawful(Remedy::RestoreExistingGround), Lawful::Yes);
    assert!(judgement.condition_names(Remedy::RestoreExistingGround, "copper pigtails"));
    assert!(judgement.cautions.iter().any(|caution| caution.contains("hard to come by")));
}

/// Published: https://life-improver.com/diy/electrical-if-i-replace-the-main-panel-will-i-need-to-fit-afcis
///
/// 2017, a panel is moved and conductors are lengthened by less than six feet, no outlet added: no AFCI protection by that.
#[test]
fn conductors_lengthened_by_less_than_six_feet_without_an_outlet_are_excepted() {
    let judgement = under(Nec2017, &bedroom());
    assert!(judgement.condition_names(Remedy::NewCable, "6 ft or less without a new outlet are excepted"));
    assert!(judgement.condition_names(Remedy::NewCable, "210.12(D)"));
}

/// Published: https://life-improver.com/diy/electrical-how-to-replace-electrical-boxes-with-the-least-amount-of-collateral-damage
///
/// A house of 1970 with small boxes, 12-2 cable with ground: leave the boxes, use ordinary receptacles, protect from the panel.
#[test]
fn small_grounded_boxes_stay_and_keep_ordinary_receptacles() {
    let mut small = Opening { holds: Holding::ThreeSlot, ground: GroundFact::Connected, ..bedroom() };
    small.fill.cables = two_wire_cables(1);
    small.fill.volume = Some(Volume::hundredths(1250));
    assert_remedies(&ENTERED, &small, &[Remedy::Leave, Remedy::RestoreExistingGround], &[]);
    assert_eq!(under(Nec2017, &small).fit(Remedy::Leave), FillVerdict::Fits);
}

/// Published: https://www.thebuildingcodeforum.com/forum/threads/nec-408-4-are-you-inspecting-to-code-at-electrical-final.35479/post-279149
///
/// `Lights and outlets` and the names of those who live there are no entry in a panel's directory.
#[test]
fn a_directory_says_what_a_circuit_is_for_and_names_nobody() {
    for edition in ENTERED {
        let judgement = under(edition, &bedroom());
        for words in ["what the circuit is for", "nobody's name", "408.4(A)"] {
            assert!(judgement.condition_names(Remedy::GfciBreaker, words), "{edition} {words}");
        }
        assert!(!judgement.condition_names(Remedy::GfciReceptacle, "directory"));
    }
}
