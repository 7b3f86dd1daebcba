//! Cases from practice on grounds that are there, that are argued, and that are brought, restated in our own words.

mod scenario;

use dwelling::{CableKind, Equipment, GroundFact, Holding, RoomUse, SourceKind};
use electrical::{Amperes, Gauge, Length};
use rulebook::Edition::{Nec2014, Nec2020};
use rulebook::{
    CodeInForce, ConnectionPlace, Duty, Edition, Lawful, Need, Opening, PathFacts, Remedy, SourceFacts,
    ground_connection, metal_path,
};
use scenario::{Ask, ENTERED, assert_remedies, bedroom, opening_in, under};

const STANDING_IN: [Remedy; 4] =
    [Remedy::NongroundingReceptacle, Remedy::GfciReceptacle, Remedy::DownstreamOfGfci, Remedy::GfciBreaker];

fn place(place: ConnectionPlace) -> SourceFacts {
    SourceFacts {
        place,
        same_panel: Some(true),
        verified: Some(true),
        from_entry: None,
        gauge: Some(Gauge::AWG_12),
        through_metal: false,
        breaker: Some(Amperes::new(15)),
    }
}

fn connects(edition: Edition, facts: SourceFacts) -> Lawful {
    ground_connection(facts, &CodeInForce::published(edition)).lawful
}

/// Published: https://www.ashevillehomeinspections.com/blog-grid/?s=
///
/// North Carolina, 2014: a house of the 1960s whose boxes are grounded: the ground must be used, by a jumper to the box.
#[test]
fn where_the_box_is_grounded_a_gfci_without_ground_is_no_repair() {
    let grounded_box = Opening { holds: Holding::ThreeSlot, ground: GroundFact::Loose, ..bedroom() };
    assert_remedies(&[Nec2014], &grounded_box, &[Remedy::RestoreExistingGround], &STANDING_IN);
    assert!(under(Nec2014, &grounded_box).condition_names(Remedy::RestoreExistingGround, "bonding jumper"));
}

/// Published: https://stonehavenlife.com/replace-two-prong-receptacles-with-gfcis/
///
/// A cable of 1947 whose ground was cut flush at the box: a GFCI with its mark, if the ground cannot be reached.
#[test]
fn a_ground_cut_flush_permits_a_gfci_only_if_it_cannot_be_reached() {
    let cut = Opening { ground: GroundFact::CutOff, ..bedroom() };
    assert_remedies(&ENTERED, &cut, &[Remedy::GfciReceptacle, Remedy::RestoreExistingGround], &[]);
    assert!(under(Nec2014, &cut).condition_names(Remedy::GfciReceptacle, "only if the stub"));
}

/// Published: http://ths.gardenweb.com/discussions/2636116/2-to-3-prong-outlets-older-home
///
/// Sound metal conduit, armor with its strip and cable with ground carry a three-slot receptacle without a GFCI; old armor
/// without a strip does not.
#[test]
fn a_sound_path_carries_a_three_slot_receptacle_and_old_armor_does_not() {
    let three_slot = Opening { holds: Holding::ThreeSlot, ..opening_in(RoomUse::LivingRoom) };
    let conduit = Opening { ground: GroundFact::Connected, ..three_slot.clone() };
    assert_remedies(&ENTERED, &conduit, &[Remedy::Leave, Remedy::RestoreExistingGround], &STANDING_IN);
    assert_eq!(under(Nec2014, &conduit).need(Duty::Gfci), Need::NotRequired);
    assert_remedies(&ENTERED, &three_slot, &[Remedy::GfciReceptacle], &[Remedy::Leave]);
}

/// Published wrong (the article forgets the strip): http://www.thisoldhouse.com/toh/article/0,,20065922,00.html
///
/// A lamp between hot and the plate screw lights on old armor: that proves no ground, so nothing that rests on one is lawful yet.
#[test]
fn a_lamp_that_lights_on_old_armor_proves_no_ground() {
    let armor = Opening { ground: GroundFact::Unknown, ..bedroom() };
    for edition in ENTERED {
        assert_eq!(under(edition, &armor).lawful(Remedy::RestoreExistingGround), Lawful::NotChecked);
    }
    let no_strip = Opening { ground: GroundFact::None, ..bedroom() };
    assert_remedies(&ENTERED, &no_strip, &[], &[Remedy::RestoreExistingGround]);
}

/// Published (contested): trade forum, thread 127741
///
/// Armor of the 1920s: no strip, no ground, to some; judged by what it carries, to others.
#[test]
fn armor_of_the_1920s_is_disputed() {
    let argued = Opening { ground: GroundFact::Disputed, ..bedroom() };
    for edition in ENTERED {
        let judgement = under(edition, &argued);
        assert_eq!(judgement.lawful(Remedy::RestoreExistingGround), Lawful::Disputed);
        assert_eq!(judgement.lawful(Remedy::GfciReceptacle), Lawful::Disputed);
    }
}

/// Published: https://www.askmehelpdesk.com/advice/t-73198.html
///
/// A bathroom whose armor is broken at a hidden splice: a marked GFCI, a new cable or a conductor; the waste stack never.
#[test]
fn a_bathroom_with_broken_armor_gets_no_ground_from_the_waste_stack() {
    let lawful = [Remedy::GfciReceptacle, Remedy::NewCable, Remedy::SeparateEgc];
    assert_remedies(&ENTERED, &opening_in(RoomUse::Bathroom), &lawful, &[]);
    for edition in ENTERED {
        assert_eq!(connects(edition, place(ConnectionPlace::Source(SourceKind::OtherMetal))), Lawful::No);
    }
}

/// Published: http://www.petermccarthyelectric.com/blog/2012/04/02/Haxards-lurk-behind-the-walls.aspx
///
/// Armor pulled into a box without a connector bonds nothing: no ground is taken from that box.
#[test]
fn a_box_into_which_armor_is_pulled_loose_gives_no_ground() {
    let loose = SourceFacts {
        verified: Some(false),
        gauge: None,
        through_metal: true,
        ..place(ConnectionPlace::BoxOfAnotherCircuit)
    };
    assert_eq!(connects(Nec2020, loose), Lawful::No);
}

/// Published: https://hearth.com, `New outlet added from an armored box`
///
/// A new dining-room outlet fed from an armored box: the extension needs a real ground.
#[test]
fn a_new_outlet_from_an_armored_box_needs_a_real_ground() {
    let added = Opening { existing_outlet: false, holds: Holding::Nothing, ..opening_in(RoomUse::DiningRoom) };
    assert_remedies(&ENTERED, &added, &[Remedy::SeparateEgc, Remedy::NewCable], &STANDING_IN);
}

/// Published: https://www.diybanter.com/608333-post9.html
///
/// The old cable is stapled, one green 12 AWG can be fished for a computer: lawful, and it serves the computer.
#[test]
fn one_green_conductor_fished_for_a_computer_is_a_real_ground() {
    let computer = Opening { serves: vec![Equipment::Computer], ..bedroom() };
    assert_remedies(&ENTERED, &computer, &[Remedy::SeparateEgc], &[]);
    assert!(under(Nec2014, &computer).of(Remedy::SeparateEgc).serves_equipment);
}

/// Published: https://www.diybanter.com/610134-post17.html
///
/// The ends that count: electrode system and conductor, the panel's bar, the service neutral; no pipe beyond five feet.
#[test]
fn the_listed_ends_count_and_a_pipe_beyond_five_feet_does_not() {
    for kind in
        [SourceKind::ElectrodeSystem, SourceKind::ElectrodeConductor, SourceKind::GroundBar, SourceKind::ServiceNeutral]
    {
        assert_eq!(connects(Nec2014, place(ConnectionPlace::Source(kind))), Lawful::Yes, "{kind}");
    }
    let far =
        SourceFacts { from_entry: Some(Length::feet(12)), ..place(ConnectionPlace::Source(SourceKind::WaterPipe)) };
    assert_eq!(connects(Nec2014, far), Lawful::No);
}

/// Published (contested as to bare conductors on a wall): trade forum, post 1556712
///
/// A conductor of its own, apart from the circuit's: permitted for this, and protected from damage.
#[test]
fn a_conductor_of_its_own_is_protected_from_damage() {
    for edition in ENTERED {
        let judgement = under(edition, &bedroom());
        assert_eq!(judgement.lawful(Remedy::SeparateEgc), Lawful::Yes);
        assert!(judgement.condition_names(Remedy::SeparateEgc, "protected from damage"));
    }
}

/// Published: http://www.eng-tips.com/viewthread.cfm?qid=405459
///
/// A ground outside the cable is for existing circuits that have none.
#[test]
fn a_ground_outside_the_cable_is_only_for_circuits_that_have_none() {
    assert_remedies(&ENTERED, &bedroom(), &[Remedy::SeparateEgc], &[]);
    let grounded = Opening { ground: GroundFact::Connected, ..bedroom() };
    assert_remedies(&ENTERED, &grounded, &[], &[Remedy::SeparateEgc]);
}

/// Published: https://www.diybanter.com/1311145-post3.html
///
/// Maine, 1960s, two-wire: receptacles grounded to the nearest copper pipe are not grounded; a GFCI, a new cable or a conductor to
/// the panel cures them.
#[test]
fn the_nearest_copper_pipe_is_no_ground() {
    let lawful = [Remedy::GfciReceptacle, Remedy::NewCable, Remedy::SeparateEgc];
    assert_remedies(&ENTERED, &bedroom(), &lawful, &[Remedy::RestoreExistingGround]);
    let nearest =
        SourceFacts { from_entry: Some(Length::feet(30)), ..place(ConnectionPlace::Source(SourceKind::WaterPipe)) };
    assert_eq!(connects(Nec2020, nearest), Lawful::No);
    assert_eq!(connects(Nec2020, place(ConnectionPlace::Source(SourceKind::GroundBar))), Lawful::Yes);
}

/// Published: http://www.buellinspections.com/category/type/electrical/
///
/// The street's metal pipe was replaced by plastic: an electrode nobody has checked is no place to connect yet.
#[test]
fn an_electrode_system_nobody_has_checked_is_not_taken_for_whole() {
    let pipe =
        SourceFacts { from_entry: Some(Length::feet(2)), ..place(ConnectionPlace::Source(SourceKind::WaterPipe)) };
    assert_eq!(connects(Nec2020, SourceFacts { verified: None, ..pipe }), Lawful::NotChecked);
    assert_eq!(connects(Nec2020, SourceFacts { verified: Some(false), ..pipe }), Lawful::No);
    assert_eq!(connects(Nec2020, pipe), Lawful::Yes);
}

/// Published: https://kiwix.cordlord.net/content/diy.stackexchange.com_en_all_2025-07/questions/28732/diy-solution-for-open-ground-wiring-where-electronics-need-to-be-plugged-in
///
/// A rental of 1958, the addition grounded, the old rooms not: use a ground that is in the box; else a marked GFCI; or bring a
/// conductor from the addition's grounded boxes.
#[test]
fn grounded_boxes_of_the_addition_are_a_place_to_connect() {
    let old_room = Opening { holds: Holding::ThreeSlot, ..opening_in(RoomUse::LivingRoom) };
    assert_remedies(&[Nec2014], &old_room, &[Remedy::GfciReceptacle, Remedy::SeparateEgc], &[Remedy::Leave]);
    let with_ground = Opening { ground: GroundFact::Loose, ..old_room };
    assert_remedies(&[Nec2014], &with_ground, &[Remedy::RestoreExistingGround], &[Remedy::GfciReceptacle]);
    assert_eq!(connects(Nec2014, place(ConnectionPlace::BoxOfAnotherCircuit)), Lawful::Yes);
    let box_not_grounded = SourceFacts { verified: Some(false), ..place(ConnectionPlace::BoxOfAnotherCircuit) };
    assert_eq!(connects(Nec2014, box_not_grounded), Lawful::No);
}

/// Published: https://ag-forum.herokuapp.com/discussions/new-house-old-wire/post?postid=950197#950197
///
/// A rented living room on knob-and-tube or armor, nobody knows: first look, then a real ground, or a marked GFCI as second best.
#[test]
fn a_living_room_of_unknown_wiring_is_looked_at_first() {
    let unknown = Opening { ground: GroundFact::Unknown, ..opening_in(RoomUse::LivingRoom) };
    assert_eq!(under(Nec2014, &unknown).lawful(Remedy::GfciReceptacle), Lawful::NotChecked);
    assert_eq!(under(Nec2014, &unknown).lawful(Remedy::NewCable), Lawful::Yes);
    let seen = Opening { serves: vec![Equipment::SurgeProtector], ..opening_in(RoomUse::LivingRoom) };
    assert_remedies(&[Nec2014], &seen, &[Remedy::SeparateEgc, Remedy::GfciReceptacle], &[]);
    assert!(!under(Nec2014, &seen).of(Remedy::GfciReceptacle).serves_equipment);
}

/// Published: https://life-improver.com/diy/grounding-a-3-prong-dryer-plug
///
/// The heavy conductor to the water main runs by the laundry: a 10 AWG may join it for a 30 A dryer and a 20 A washer.
#[test]
fn a_10_awg_joined_to_the_electrode_conductor_serves_dryer_and_washer() {
    let joined = SourceFacts {
        breaker: Some(Amperes::new(30)),
        ..place(ConnectionPlace::Source(SourceKind::ElectrodeConductor))
    };
    let answer = ground_connection(joined, &CodeInForce::published(Nec2014));
    assert_eq!((answer.lawful, answer.size), (Lawful::Yes, Some(Gauge::AWG_10)));
}

/// Published: https://diy.stackexchange.com/questions/141114/grounding-sheds-and-garages
///
/// Two conductors to a garage and a shed 160 ft away: rods ground nothing; replaced receptacles behind a GFCI, or a new cable.
#[test]
fn rods_at_an_outbuilding_ground_no_receptacle() {
    for edition in ENTERED {
        assert_eq!(connects(edition, place(ConnectionPlace::Source(SourceKind::LoneRod))), Lawful::No);
    }
    for room in [RoomUse::Garage, RoomUse::AccessoryBuilding] {
        let lawful = [Remedy::NewCable, Remedy::GfciReceptacle, Remedy::DownstreamOfGfci];
        assert_remedies(&ENTERED, &opening_in(room), &lawful, &[]);
    }
}

/// Published (contested): https://electriciantalk.com, `Extending two wire branch circuits`
///
/// New grounded cable whose ground ends at the old ungrounded junction box: that is no ground, and a new outlet needs one.
#[test]
fn a_ground_that_ends_at_an_ungrounded_box_is_none() {
    let ungrounded_box = SourceFacts { verified: Some(false), ..place(ConnectionPlace::BoxOfAnotherCircuit) };
    assert_eq!(connects(Nec2014, ungrounded_box), Lawful::No);
    let extended = Opening { existing_outlet: false, holds: Holding::Nothing, ..bedroom() };
    assert_remedies(&[Nec2014], &extended, &[Remedy::SeparateEgc], &STANDING_IN);
}

/// Published: trade forum, thread 124605
///
/// Switches replaced where a ground is in the box: connect it; it is no case for bringing another.
#[test]
fn a_switch_with_a_ground_in_its_box_is_connected_to_it() {
    let switch = Opening { holds: Holding::Switch, ground: GroundFact::Loose, ..bedroom() };
    assert_remedies(&ENTERED, &switch, &[Remedy::RestoreExistingGround], &[Remedy::SeparateEgc]);
}

/// Published: http://www.ecmweb.com/contractor/failures-outlet-testing-exposed?page=2
///
/// A house from before 1965, hot and neutral reversed with a jumper: everything reads right, the case is live; it may not stay.
#[test]
fn a_jumper_that_reads_right_may_not_stay() {
    let jumper = Opening { holds: Holding::ThreeSlot, ground: GroundFact::False, ..bedroom() };
    assert_remedies(&ENTERED, &jumper, &[Remedy::NewCable, Remedy::SeparateEgc], &[Remedy::Leave]);
    assert!(under(Nec2020, &jumper).cautions.iter().any(|caution| caution.contains("live case")));
}

/// Published: trade forum, thread 4921
///
/// What the strip in armored cable is for: with it the armor counts, without it that is argued, and unseen it is looked for.
#[test]
fn the_strip_makes_armor_a_ground() {
    let whole = PathFacts { whole: Some(true), ..PathFacts::default() };
    for edition in ENTERED {
        let lawful = |kind| metal_path(kind, whole, &CodeInForce::published(edition)).lawful;
        assert_eq!(lawful(CableKind::ArmoredWithStrip), Lawful::Yes);
        assert_eq!(lawful(CableKind::ArmoredNoStrip), Lawful::Disputed);
        assert_eq!(lawful(CableKind::ArmoredUnknown), Lawful::NotChecked);
    }
}

/// Published: http://www.redfordelectric.ca/news-and-projects/itemlist.html
///
/// Knob-and-tube behind 15 A, in good condition, no outlet added: it may stay, two-slot receptacles and all.
#[test]
fn knob_and_tube_behind_15_a_may_stay() {
    let old = Opening { cable: Some(CableKind::KnobAndTube), ..bedroom() };
    assert_remedies(&ENTERED, &old, &[Remedy::Leave], &[]);
    let added = Opening { existing_outlet: false, holds: Holding::Nothing, ..old.clone() };
    assert_remedies(&ENTERED, &added, &[], &STANDING_IN);
    assert!(under(Nec2020, &old).cautions.iter().any(|caution| caution.contains("394.12(5)")));
}
