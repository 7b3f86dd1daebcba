//! Existing outlets with and without a ground: which replacements are lawful, what they carry, what they must keep to.

mod scenario;

use dwelling::{Equipment, GroundFact, Holding, ProtectiveBreaker};
use electrical::{Amperes, ConductorMetal, Volume};
use rulebook::{Duty, Edition, Lawful, Marking, Need, Opening, Remedy};
use scenario::{Ask, ENTERED, SINCE_2014, assert_remedies, bedroom, under};

const WITHOUT_A_GROUND: [Remedy; 4] =
    [Remedy::NongroundingReceptacle, Remedy::GfciReceptacle, Remedy::DownstreamOfGfci, Remedy::GfciBreaker];

/// Published: trade magazine, `NEC requirements for receptacles` (2023), and California Electrical Code 2013, 406.4(D)(2).
#[test]
fn without_a_ground_the_three_permissions_and_two_ways_of_bringing_one_are_lawful() {
    let lawful = [WITHOUT_A_GROUND.as_slice(), &[Remedy::SeparateEgc, Remedy::NewCable, Remedy::Leave]].concat();
    assert_remedies(&ENTERED, &bedroom(), &lawful, &[Remedy::RestoreExistingGround]);
}

/// Published: California Electrical Code 2013, 406.4(D)(2)(b) and (c), for the words.
#[test]
fn each_permission_carries_its_own_words() {
    for edition in ENTERED {
        let judgement = under(edition, &bedroom());
        let both = vec![Marking::GfciProtected, Marking::NoEquipmentGround];
        assert_eq!(judgement.markings(Remedy::NongroundingReceptacle), vec![]);
        assert_eq!(judgement.markings(Remedy::GfciReceptacle), vec![Marking::NoEquipmentGround]);
        assert_eq!(judgement.markings(Remedy::DownstreamOfGfci), both);
        assert_eq!(judgement.markings(Remedy::GfciBreaker), both);
        assert_eq!(judgement.markings(Remedy::SeparateEgc), vec![]);
    }
    assert_eq!(Marking::NoEquipmentGround.name(), "No Equipment Ground");
    assert_eq!(Marking::GfciProtected.name(), "GFCI Protected");
}

/// Published: electricallicenserenewal.com, NEC content 306: until 2014 on the receptacle, from 2017 on it or its cover plate.
#[test]
fn the_words_stand_on_the_receptacle_in_2014_and_may_stand_on_the_plate_from_2017() {
    for remedy in [Remedy::GfciReceptacle, Remedy::DownstreamOfGfci, Remedy::GfciBreaker] {
        assert!(under(Edition::Nec2014, &bedroom()).condition_names(remedy, "on the receptacle itself"));
        for edition in [Edition::Nec2017, Edition::Nec2020, Edition::Nec2023] {
            assert!(under(edition, &bedroom()).condition_names(remedy, "its cover plate"));
        }
    }
}

/// Published: trade magazine, `NEC requirements for receptacles` (2023): the permissions are for existing outlets only.
#[test]
fn a_new_outlet_gets_none_of_the_permissions() {
    let new = Opening { existing_outlet: false, holds: Holding::Nothing, ..bedroom() };
    assert_remedies(&ENTERED, &new, &[Remedy::SeparateEgc, Remedy::NewCable], &WITHOUT_A_GROUND);
}

/// Published: California Electrical Code 2013, 406.4(D)(1).
#[test]
fn a_ground_that_is_there_closes_the_permissions_and_a_separate_conductor() {
    for ground in [GroundFact::Connected, GroundFact::Loose] {
        let opening = Opening { ground, ..bedroom() };
        let unlawful = [WITHOUT_A_GROUND.as_slice(), &[Remedy::SeparateEgc]].concat();
        assert_remedies(&ENTERED, &opening, &[Remedy::RestoreExistingGround, Remedy::NewCable], &unlawful);
        for edition in ENTERED {
            let judgement = under(edition, &opening);
            assert_eq!(judgement.need(Duty::UseExistingGround), Need::Required);
            let why = &judgement.of(Remedy::GfciReceptacle).why_not;
            assert!(
                why.iter().any(|why| why.contains("must be used")
                    && (why.contains("406.4(D)(1)") || edition == Edition::Nec2008 && why.contains("406.3(D)(1)"))),
                "{why:?}"
            );
        }
    }
}

#[test]
fn a_ground_cut_off_at_the_sheath_is_looked_for_before_it_is_given_up() {
    let opening = Opening { ground: GroundFact::CutOff, ..bedroom() };
    for edition in ENTERED {
        let judgement = under(edition, &opening);
        assert_eq!(judgement.need(Duty::UseExistingGround), Need::NotChecked);
        for remedy in WITHOUT_A_GROUND {
            assert_eq!(judgement.lawful(remedy), Lawful::Yes);
            assert!(judgement.condition_names(remedy, "only if the stub"));
        }
        assert_eq!(judgement.lawful(Remedy::RestoreExistingGround), Lawful::Yes);
        assert!(judgement.condition_names(Remedy::RestoreExistingGround, "only if enough"));
    }
}

/// Published: trade forum threads 125168, 66086, 127741 and 100198, which dispute armor without a bonding strip.
#[test]
fn a_path_that_authorities_read_two_ways_is_called_disputed_both_ways() {
    let opening = Opening { ground: GroundFact::Disputed, ..bedroom() };
    for edition in ENTERED {
        let judgement = under(edition, &opening);
        assert_eq!(judgement.need(Duty::UseExistingGround), Need::Disputed);
        for remedy in WITHOUT_A_GROUND.into_iter().chain([Remedy::RestoreExistingGround]) {
            assert_eq!(judgement.lawful(remedy), Lawful::Disputed, "{edition} {remedy}");
            assert!(judgement.of(remedy).why_not.iter().any(|why| why.contains("ask the authority")));
        }
        assert_eq!(judgement.lawful(Remedy::NewCable), Lawful::Yes);
    }
}

/// Published: California Electrical Code 2013, 250.142(B): the neutral grounds nothing on the load side.
#[test]
fn a_jumper_from_the_neutral_may_not_stay_and_is_a_danger() {
    for holds in [Holding::ThreeSlot, Holding::Gfci, Holding::TwoSlot, Holding::Switch] {
        let opening = Opening { ground: GroundFact::False, holds, ..bedroom() };
        for edition in ENTERED {
            let judgement = under(edition, &opening);
            assert_eq!(judgement.lawful(Remedy::Leave), Lawful::No);
            assert!(judgement.of(Remedy::Leave).why_not.iter().any(|why| why.contains("250.142(B)")));
            assert!(judgement.cautions.iter().any(|caution| caution.starts_with("danger")));
        }
    }
}

#[test]
fn what_nobody_touches_stays_only_if_it_is_what_it_seems() {
    let leave = |holds, ground| under(Edition::Nec2020, &Opening { holds, ground, ..bedroom() }).lawful(Remedy::Leave);
    assert_eq!(leave(Holding::TwoSlot, GroundFact::None), Lawful::Yes);
    assert_eq!(leave(Holding::TwoSlot, GroundFact::Connected), Lawful::Yes);
    assert_eq!(leave(Holding::ThreeSlot, GroundFact::Connected), Lawful::Yes);
    assert_eq!(leave(Holding::ThreeSlot, GroundFact::None), Lawful::No);
    assert_eq!(leave(Holding::ThreeSlot, GroundFact::Loose), Lawful::No);
    assert_eq!(leave(Holding::ThreeSlot, GroundFact::Poor), Lawful::No);
    assert_eq!(leave(Holding::ThreeSlot, GroundFact::Unknown), Lawful::NotChecked);
    assert_eq!(leave(Holding::Gfci, GroundFact::None), Lawful::Yes);
    assert_eq!(leave(Holding::Unknown, GroundFact::None), Lawful::NotChecked);
    assert_eq!(leave(Holding::Switch, GroundFact::None), Lawful::Yes);
    let gfci = under(Edition::Nec2020, &Opening { holds: Holding::Gfci, ..bedroom() });
    assert_eq!(gfci.markings(Remedy::Leave), vec![Marking::NoEquipmentGround]);
}

/// Published: electricallicenserenewal.com, NEC content 77: from 2014 such replacements are readily accessible.
#[test]
fn a_gfci_receptacle_out_of_ready_reach_is_not_lawful_but_protection_from_elsewhere_is() {
    let behind_the_wardrobe = Opening { readily_accessible: Some(false), ..bedroom() };
    let elsewhere = [Remedy::DownstreamOfGfci, Remedy::GfciBreaker];
    assert_remedies(&SINCE_2014, &behind_the_wardrobe, &elsewhere, &[Remedy::GfciReceptacle]);
    let nobody_said = Opening { readily_accessible: None, ..bedroom() };
    assert!(under(Edition::Nec2020, &nobody_said).condition_names(Remedy::GfciReceptacle, "reached quickly"));
}

#[test]
fn downstream_of_a_gfci_needs_an_opening_upstream() {
    let lawful =
        |has_upstream| under(Edition::Nec2020, &Opening { has_upstream, ..bedroom() }).lawful(Remedy::DownstreamOfGfci);
    assert_eq!(lawful(Some(true)), Lawful::Yes);
    assert_eq!(lawful(Some(false)), Lawful::No);
    assert_eq!(lawful(None), Lawful::Yes);
    let nobody_looked = Opening { has_upstream: None, ..bedroom() };
    assert!(under(Edition::Nec2020, &nobody_looked).condition_names(Remedy::DownstreamOfGfci, "find out what does"));
}

/// Common practice, no source: what is made for the panel decides, and a dead-front device beside it stands in. The code
/// permits it where nobody has looked yet, on the condition that one exists.
#[test]
fn protection_at_the_panel_needs_a_device_that_exists() {
    let lawful = |made: Option<Vec<ProtectiveBreaker>>, room_beside_panel, on_shared_neutral| {
        let opening = Opening { made_for_panel: made, room_beside_panel, on_shared_neutral, ..bedroom() };
        under(Edition::Nec2020, &opening).lawful(Remedy::GfciBreaker)
    };
    assert_eq!(lawful(Some(vec![ProtectiveBreaker::Gfci]), None, false), Lawful::Yes);
    assert_eq!(lawful(Some(vec![ProtectiveBreaker::Dual]), None, false), Lawful::Yes);
    assert_eq!(lawful(Some(vec![ProtectiveBreaker::Afci]), Some(false), false), Lawful::No);
    assert_eq!(lawful(Some(vec![]), Some(true), false), Lawful::Yes);
    assert_eq!(lawful(Some(vec![]), Some(false), false), Lawful::No);
    assert_eq!(lawful(Some(vec![]), None, false), Lawful::Yes);
    assert_eq!(lawful(None, None, false), Lawful::Yes);
    let nobody_looked = Opening { made_for_panel: None, room_beside_panel: None, ..bedroom() };
    assert!(under(Edition::Nec2020, &nobody_looked).condition_names(Remedy::GfciBreaker, "find out"));
    assert_eq!(lawful(None, Some(true), false), Lawful::Yes);
    assert_eq!(lawful(Some(vec![ProtectiveBreaker::Gfci]), Some(true), true), Lawful::No);
    assert_eq!(lawful(Some(vec![ProtectiveBreaker::GfciTwoPole]), None, true), Lawful::Yes);
    assert_eq!(lawful(None, Some(true), true), Lawful::Yes);
}

/// Common practice, no source: beyond the point where a set parts, its panel end still sees both circuits.
#[test]
fn half_of_a_set_is_protected_at_the_panel_by_two_poles_only() {
    let half = |made: Vec<ProtectiveBreaker>| Opening { half_of_set: true, made_for_panel: Some(made), ..bedroom() };
    let lawful = |made| under(Edition::Nec2020, &half(made)).lawful(Remedy::GfciBreaker);
    assert_eq!(lawful(vec![ProtectiveBreaker::Gfci, ProtectiveBreaker::Dual]), Lawful::No);
    assert_eq!(lawful(vec![ProtectiveBreaker::GfciTwoPole]), Lawful::Yes);
    let judged = under(Edition::Nec2020, &half(Vec::new()));
    assert_eq!(judged.need(Duty::SimultaneousDisconnect), Need::Required);
}

/// Published: California Electrical Code 2013, 210.4(B) and 300.13(B).
#[test]
fn a_multiwire_set_opens_together_and_keeps_its_neutral_whole() {
    let shared = Opening { on_shared_neutral: true, ..bedroom() };
    for edition in ENTERED {
        let judgement = under(edition, &shared);
        assert_eq!(judgement.need(Duty::SimultaneousDisconnect), Need::Required);
        assert!(judgement.condition_names(Remedy::GfciReceptacle, "pigtail"));
        assert!(judgement.condition_names(Remedy::GfciReceptacle, "load terminals"));
        assert_eq!(under(edition, &bedroom()).need(Duty::SimultaneousDisconnect), Need::NotRequired);
    }
}

/// Published: California Electrical Code 2013, 250.114(3), for the computer; the surge protector is common practice.
#[test]
fn only_a_real_ground_serves_what_needs_one() {
    for served in [Equipment::Computer, Equipment::Refrigerator, Equipment::SurgeProtector, Equipment::MedicalEquipment]
    {
        let opening = Opening { serves: vec![served], ..bedroom() };
        for edition in ENTERED {
            let judgement = under(edition, &opening);
            for remedy in WITHOUT_A_GROUND {
                let listed = matches!(served, Equipment::Computer | Equipment::Refrigerator);
                let argued = listed && remedy != Remedy::NongroundingReceptacle;
                assert_eq!(judgement.lawful(remedy), Lawful::Yes, "{remedy} for {served}");
                assert_eq!(judgement.use_is_disputed(remedy), argued, "{remedy} for {served}");
                assert!(!judgement.of(remedy).serves_equipment);
            }
            assert!(!judgement.of(Remedy::Leave).serves_equipment);
            assert!(judgement.of(Remedy::SeparateEgc).serves_equipment);
            assert!(judgement.of(Remedy::NewCable).serves_equipment);
            assert!(!judgement.cautions.is_empty());
        }
    }
    let computer = under(Edition::Nec2020, &Opening { serves: vec![Equipment::Computer], ..bedroom() });
    let duty = computer.duties.iter().find(|verdict| verdict.duty == Duty::EquipmentGround).unwrap();
    assert_eq!((duty.need, duty.because.as_slice()), (Need::Required, ["computer".to_owned()].as_slice()));
    let lamp = under(Edition::Nec2020, &Opening { serves: vec![Equipment::TwoPin], ..bedroom() });
    assert_eq!(lamp.need(Duty::EquipmentGround), Need::NotRequired);
    assert!(lamp.of(Remedy::GfciReceptacle).serves_equipment);
    let range = under(Edition::Nec2020, &Opening { serves: vec![Equipment::Range], ..bedroom() });
    assert_eq!(range.need(Duty::EquipmentGround), Need::Disputed);
}

/// From memory: 210.21(B)(3).
#[test]
fn a_two_slot_receptacle_is_too_small_for_a_30_a_circuit() {
    let heavy = Opening { breaker: Some(Amperes::new(30)), ..bedroom() };
    assert_remedies(&ENTERED, &heavy, &[], &[Remedy::NongroundingReceptacle]);
    assert!(under(Edition::Nec2020, &bedroom()).condition_names(Remedy::GfciReceptacle, "a receptacle of 15 A"));
}

/// Common practice, no source: GFCI and AFCI receptacles are made for copper only.
#[test]
fn aluminium_conductors_are_spliced_to_copper_before_a_gfci_receptacle() {
    let aluminium = Opening { metal: ConductorMetal::Aluminium, ..bedroom() };
    let judgement = under(Edition::Nec2020, &aluminium);
    assert!(judgement.condition_names(Remedy::GfciReceptacle, "copper only"));
    assert!(judgement.condition_names(Remedy::NongroundingReceptacle, "CO/ALR"));
    assert!(!under(Edition::Nec2020, &bedroom()).condition_names(Remedy::GfciReceptacle, "copper only"));
}

/// Published: trade forum thread 68337: 14 AWG copper stands behind 15 A.
#[test]
fn a_20_a_breaker_before_14_awg_is_said_as_a_caution() {
    let overfused = Opening { breaker: Some(Amperes::new(20)), ..bedroom() };
    assert!(under(Edition::Nec2020, &overfused).cautions.iter().any(|caution| caution.contains("240.4(D)")));
    assert!(under(Edition::Nec2020, &bedroom()).cautions.iter().all(|caution| !caution.contains("240.4(D)")));
}

/// From memory: from 2017 the two markings behind a GFCI can be seen after installation.
#[test]
fn the_words_behind_a_gfci_can_be_seen_after_installation_from_2017() {
    for edition in SINCE_2014 {
        for remedy in [Remedy::DownstreamOfGfci, Remedy::GfciBreaker] {
            let visible = under(edition, &bedroom()).condition_names(remedy, "seen after installation");
            assert_eq!(visible, edition != Edition::Nec2014, "{edition} {remedy}");
        }
    }
}

/// Common practice, no source: a GFCI body is deep.
#[test]
fn a_small_box_is_said_to_be_tight_for_a_gfci_body_even_where_the_count_fits() {
    let mut small = bedroom();
    small.fill.volume = Some(Volume::hundredths(1250));
    assert!(under(Edition::Nec2020, &small).condition_names(Remedy::GfciReceptacle, "deep body"));
    assert!(!under(Edition::Nec2020, &bedroom()).condition_names(Remedy::GfciReceptacle, "deep body"));
}

/// By hand: 406.4(D) speaks of replacements; a new outlet owes the same by the lists themselves.
#[test]
fn a_new_outlet_owes_its_duties_by_the_lists_and_not_by_the_replacement_rules() {
    let new = Opening { existing_outlet: false, holds: Holding::Nothing, ..bedroom() };
    for edition in ENTERED {
        for duty in under(edition, &new).duties.into_iter().filter(|duty| duty.need == Need::Required) {
            assert!(duty.cites.iter().all(|cite| !cite.section.starts_with("406.4(D)")), "{duty:?}");
        }
        assert_eq!(under(edition, &new).need(Duty::Afci), Need::Required);
    }
}
