//! What amendments and an authority's answers change, and that whatever they change names them.

mod scenario;

use dwelling::{CableKind, Day, Equipment, GroundFact, Holding, RoomUse, SourceKind};
use electrical::Amperes;
use rulebook::Edition::{Nec2008, Nec2011, Nec2014, Nec2020, Nec2023, Nec2026};
use rulebook::{
    Amendment, Change, CodeInForce, ConnectionPlace, Dated, Duty, Edition, Judgement, Lawful, List, Need, Opening,
    Question, RULES, Remedy, SourceFacts, explain, ground_connection, judge,
};
use scenario::{Ask, bedroom, opening_in};

const BY: &str = "City of Springfield, Ordinance 7";

fn amendment(changes: Vec<Change>) -> Amendment {
    Amendment {
        authority: "City of Springfield".to_owned(),
        source: "Ordinance 7".to_owned(),
        since: None,
        until: None,
        changes,
    }
}

fn with(edition: Edition, change: Change) -> CodeInForce {
    CodeInForce::published(edition).amended(amendment(vec![change]))
}

fn duty(judgement: &Judgement, duty: Duty) -> (Need, Vec<String>) {
    let verdict = judgement.duties.iter().find(|verdict| verdict.duty == duty).expect("every duty is answered");
    (verdict.need, verdict.changed_by.clone())
}

fn day(text: &str) -> Day {
    text.parse().expect("a day")
}

#[test]
fn a_rule_that_is_switched_off_asks_nothing_and_says_who_switched_it_off() {
    let code = with(Nec2023, Change::SwitchOff { rule: "replacement.afci".to_owned() });
    assert_eq!(duty(&judge(&bedroom(), &code), Duty::Afci), (Need::NotRequired, vec![BY.to_owned()]));
    assert!(!judge(&bedroom(), &code).condition_names(Remedy::GfciReceptacle, "give the receptacle AFCI"));
}

#[test]
fn a_permission_that_is_switched_off_is_no_permission() {
    let code = with(Nec2020, Change::SwitchOff { rule: "replacement.nongrounding".to_owned() });
    let judgement = judge(&bedroom(), &code);
    assert_eq!(judgement.lawful(Remedy::NongroundingReceptacle), Lawful::No);
    assert_eq!(judgement.of(Remedy::NongroundingReceptacle).changed_by, [BY]);
}

#[test]
fn every_rule_can_be_switched_off_and_every_question_still_has_one_answer() {
    for rule in RULES {
        for edition in Edition::ALL {
            let judgement = judge(&bedroom(), &with(edition, Change::SwitchOff { rule: rule.id.to_owned() }));
            assert_eq!((judgement.duties.len(), judgement.remedies.len()), (Duty::ALL.len(), Remedy::ALL.len()));
            for verdict in &judgement.remedies {
                assert_eq!(verdict.lawful == Lawful::Yes, verdict.why_not.is_empty(), "{} {edition}", rule.id);
            }
        }
    }
}

#[test]
fn a_narrowed_list_does_not_reach_and_a_widened_one_does() {
    let narrow = Change::Narrow { list: List::AfciRooms, items: vec!["kitchen".to_owned()] };
    let kitchen = judge(&opening_in(RoomUse::Kitchen), &with(Nec2020, narrow));
    assert_eq!(duty(&kitchen, Duty::Afci), (Need::NotRequired, vec![BY.to_owned()]));
    let widen = Change::Widen { list: List::AfciRooms, items: vec!["bathroom".to_owned()] };
    let bathroom = judge(&opening_in(RoomUse::Bathroom), &with(Nec2020, widen));
    assert_eq!(duty(&bathroom, Duty::Afci), (Need::Required, vec![BY.to_owned()]));
    let places = |change| judge(&opening_in(RoomUse::Garage), &with(Nec2020, change));
    let narrow = Change::Narrow { list: List::GfciPlaces, items: vec!["garage".to_owned()] };
    assert_eq!(duty(&places(narrow), Duty::Gfci), (Need::NotRequired, vec![BY.to_owned()]));
    let widen = Change::Widen { list: List::GfciPlaces, items: vec!["bedroom".to_owned()] };
    assert_eq!(duty(&judge(&bedroom(), &with(Nec2020, widen)), Duty::Gfci), (Need::Required, vec![BY.to_owned()]));
}

#[test]
fn the_other_lists_change_too() {
    let served = |serves| Opening { serves: vec![serves], ..bedroom() };
    let change = Change::Widen { list: List::EquipmentNeedingGround, items: vec!["television".to_owned()] };
    let judgement = judge(&served(Equipment::Television), &with(Nec2020, change));
    assert_eq!(duty(&judgement, Duty::EquipmentGround), (Need::Required, vec![BY.to_owned()]));
    let change = Change::Narrow { list: List::GfciAppliances, items: vec!["microwave".to_owned()] };
    let judgement = judge(&served(Equipment::Microwave), &with(Nec2023, change));
    assert_eq!(duty(&judgement, Duty::Gfci), (Need::NotRequired, vec![BY.to_owned()]));
    let change = Change::Narrow { list: List::TamperResistantPlaces, items: vec!["bedroom".to_owned()] };
    let judgement = judge(&bedroom(), &with(Nec2020, change));
    assert_eq!(duty(&judgement, Duty::TamperResistant), (Need::NotRequired, vec![BY.to_owned()]));
}

#[test]
fn a_place_to_connect_can_be_struck_out_and_added() {
    let facts = SourceFacts {
        place: ConnectionPlace::Source(SourceKind::GroundBar),
        same_panel: Some(true),
        verified: Some(true),
        from_entry: None,
        gauge: None,
        through_metal: false,
        breaker: Some(Amperes::new(15)),
    };
    let bar = Change::Narrow { list: List::GroundConnections, items: vec!["ground-bar".to_owned()] };
    let answer = ground_connection(facts, &with(Nec2020, bar));
    assert_eq!((answer.lawful, answer.changed_by), (Lawful::No, vec![BY.to_owned()]));
    let another = Change::Widen { list: List::GroundConnections, items: vec!["another-circuit".to_owned()] };
    let donor = SourceFacts { place: ConnectionPlace::BoxOfAnotherCircuit, ..facts };
    assert_eq!(ground_connection(donor, &with(Nec2011, another)).lawful, Lawful::Yes);
    assert_eq!(ground_connection(donor, &CodeInForce::published(Nec2011)).lawful, Lawful::No);
}

/// Published: ecmweb.com, 2011 NEC changes: from 2014-01-01, written into the rule.
#[test]
fn the_date_inside_2011_decides_and_without_a_permit_day_nothing_is_said() {
    let code = CodeInForce::published(Nec2011);
    let unknown = judge(&bedroom(), &code);
    assert_eq!(unknown.need(Duty::Afci), Need::NotChecked);
    let verdict = unknown.duties.iter().find(|verdict| verdict.duty == Duty::Afci).expect("every duty");
    assert!(verdict.because[0].contains("2014-01-01"));
    assert_eq!(judge(&bedroom(), &code.clone().on(day("2013-12-31"))).need(Duty::Afci), Need::NotRequired);
    assert_eq!(judge(&bedroom(), &code.on(day("2014-01-01"))).need(Duty::Afci), Need::Required);
    assert_eq!(judge(&bedroom(), &CodeInForce::published(Nec2008)).need(Duty::Afci), Need::NotRequired);
}

#[test]
fn a_shifted_date_decides_in_place_of_the_codes() {
    let later = Change::Date { of: Dated::AfciOnReplacement, day: day("2018-01-01") };
    let code = with(Nec2014, later);
    let before = judge(&bedroom(), &code.clone().on(day("2017-06-01")));
    assert_eq!(duty(&before, Duty::Afci), (Need::NotRequired, vec![BY.to_owned()]));
    assert_eq!(judge(&bedroom(), &code.on(day("2018-06-01"))).need(Duty::Afci), Need::Required);
}

#[test]
fn an_amendment_with_a_day_leaves_the_answer_open_where_the_permit_has_none() {
    let off = Change::SwitchOff { rule: "replacement.afci".to_owned() };
    let since = Amendment { since: Some(day("2021-01-01")), ..amendment(vec![off]) };
    let code = CodeInForce::published(Nec2020).amended(since);
    assert_eq!(judge(&bedroom(), &code).need(Duty::Afci), Need::NotChecked);
    assert_eq!(judge(&bedroom(), &code.clone().on(day("2020-12-31"))).need(Duty::Afci), Need::Required);
    assert_eq!(judge(&bedroom(), &code.on(day("2021-01-01"))).need(Duty::Afci), Need::NotRequired);
}

#[test]
fn a_later_amendment_overrides_an_earlier_one() {
    let narrow = Change::Narrow { list: List::GfciPlaces, items: vec!["garage".to_owned()] };
    let mut county = amendment(vec![Change::Widen { list: List::GfciPlaces, items: vec!["garage".to_owned()] }]);
    county.authority = "County".to_owned();
    let code = with(Nec2020, narrow).amended(county);
    let (need, by) = duty(&judge(&opening_in(RoomUse::Garage), &code), Duty::Gfci);
    assert_eq!((need, by), (Need::Required, vec!["County, Ordinance 7".to_owned()]));
}

#[test]
fn markings_and_notes_of_an_authority_are_said_with_its_name() {
    let marking = Change::Marking { remedy: Remedy::GfciReceptacle, words: "Tested 2025".to_owned() };
    let judgement = judge(&bedroom(), &with(Nec2020, marking));
    let condition =
        judgement.of(Remedy::GfciReceptacle).conditions.iter().find(|one| one.text().contains("Tested 2025"));
    assert_eq!(condition.expect("the marking is a condition").changed_by, [BY]);
    let code = with(Nec2020, Change::Marking { remedy: Remedy::GfciReceptacle, words: "Tested 2025".to_owned() });
    assert!(explain(&bedroom(), &code).last().is_some_and(|said| said.things[0].text.contains("Tested 2025")));
    let note = Change::Note { rule: "replacement.afci".to_owned(), words: "call before the test".to_owned() };
    let cautions = judge(&bedroom(), &with(Nec2020, note)).cautions;
    assert!(cautions.iter().any(|caution| caution.contains("call before the test") && caution.contains(BY)));
}

#[test]
fn an_answer_on_a_disputed_path_settles_it_and_is_named() {
    let question = Question::ReducedGround;
    let thin = Opening {
        ground: GroundFact::Disputed,
        cable: Some(CableKind::NmReducedGround),
        holds: Holding::ThreeSlot,
        ..bedroom()
    };
    let answered = |yes| {
        let mut code = CodeInForce::published(Nec2020);
        code.policy = code.policy.with(question, yes, BY);
        judge(&thin, &code)
    };
    let unanswered = judge(&thin, &CodeInForce::published(Nec2020));
    assert_eq!(unanswered.lawful(Remedy::Leave), Lawful::Disputed);
    assert_eq!(unanswered.need(Duty::UseExistingGround), Need::Disputed);
    let accepted = answered(true);
    assert_eq!(accepted.lawful(Remedy::Leave), Lawful::Yes);
    assert_eq!(accepted.of(Remedy::Leave).changed_by, [BY]);
    assert_eq!(duty(&accepted, Duty::UseExistingGround), (Need::Required, vec![BY.to_owned()]));
    let refused = answered(false);
    assert_eq!(refused.lawful(Remedy::Leave), Lawful::No);
    assert_eq!(refused.lawful(Remedy::SeparateEgc), Lawful::Yes);
    assert_eq!(refused.of(Remedy::SeparateEgc).changed_by, [BY]);
}

#[test]
fn armor_that_the_authority_accepts_is_followed_before_it_is_given_up() {
    let armor = Opening { cable: Some(CableKind::ArmoredNoStrip), ..bedroom() };
    let mut code = CodeInForce::published(Nec2020);
    assert_eq!(judge(&armor, &code).lawful(Remedy::GfciReceptacle), Lawful::Yes);
    assert!(judge(&armor, &code).cautions.iter().any(|caution| caution.contains("others do not")));
    code.policy = code.policy.with(Question::ArmorWithoutStrip, true, BY);
    let judgement = judge(&armor, &code);
    assert_eq!(judgement.lawful(Remedy::GfciReceptacle), Lawful::NotChecked);
    assert_eq!(judgement.of(Remedy::GfciReceptacle).changed_by, [BY]);
}

#[test]
fn an_amendment_can_give_2026_what_nobody_could_confirm() {
    let widen = Change::Widen { list: List::GfciPlaces, items: vec!["bathroom".to_owned()] };
    let new = Opening { existing_outlet: false, ..opening_in(RoomUse::Bathroom) };
    assert_eq!(judge(&new, &CodeInForce::published(Nec2026)).need(Duty::Gfci), Need::NotChecked);
    assert_eq!(duty(&judge(&new, &with(Nec2026, widen)), Duty::Gfci), (Need::Required, vec![BY.to_owned()]));
}

/// Common practice, no source: a danger is one under any edition, read or not.
#[test]
fn dangers_are_told_under_editions_that_could_not_be_confirmed_too() {
    let jumper = Opening { ground: GroundFact::False, holds: Holding::ThreeSlot, on_shared_neutral: true, ..bedroom() };
    let judgement = judge(&jumper, &CodeInForce::published(Nec2026));
    assert_eq!(judgement.lawful(Remedy::Leave), Lawful::NotChecked);
    for danger in ["live case", "up to 240 V"] {
        assert!(judgement.cautions.iter().any(|caution| caution.contains(danger)), "{danger}");
    }
}
