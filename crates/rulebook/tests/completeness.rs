//! The rulebook answers every question once, in order, whatever it is asked.

mod scenario;

use dwelling::{Clamps, GroundFact, Holding, ProtectiveBreaker, RoomUse};
use electrical::{Amperes, Volume};
use rulebook::{
    ByEdition, CodeInForce, Duty, Edition, FillVerdict, Known, Lawful, Need, Opening, RULES, Reading, Remedy, Supply,
    TakingOut, all_values, explain, fit_after, judge, rule, rule_page,
};
use scenario::{ENTERED, bedroom, opening_in, two_wire_cables, under};
use std::collections::BTreeSet;

/// Openings over rooms, grounds and holdings, each fact that may be unknown once known and once not. What holds no
/// receptacle is asked about in one room.
fn many_openings() -> Vec<Opening> {
    let mut openings = Vec::new();
    for room_use in RoomUse::ALL {
        for ground in GroundFact::ALL {
            for holds in Holding::ALL {
                if *room_use != RoomUse::Kitchen
                    && !matches!(holds, Holding::TwoSlot | Holding::ThreeSlot | Holding::Gfci)
                {
                    continue;
                }
                for unknown in [false, true] {
                    let mut opening = Opening { ground: *ground, holds: *holds, ..opening_in(*room_use) };
                    opening.taking_out = Some(TakingOut::default()).filter(|_| *ground == GroundFact::None);
                    if unknown {
                        opening.breaker = None;
                        opening.made_for_panel = None;
                        opening.has_upstream = None;
                        opening.readily_accessible = None;
                        opening.fill.volume = None;
                        opening.on_shared_neutral = true;
                    }
                    openings.push(opening);
                }
            }
        }
    }
    openings
}

#[test]
fn every_duty_and_every_remedy_is_answered_once_and_in_order() {
    for opening in many_openings() {
        for edition in Edition::ALL {
            let judgement = under(edition, &opening);
            let duties: Vec<Duty> = judgement.duties.iter().map(|verdict| verdict.duty).collect();
            let remedies: Vec<Remedy> = judgement.remedies.iter().map(|verdict| verdict.remedy).collect();
            assert_eq!(duties, Duty::ALL);
            assert_eq!(remedies, Remedy::ALL);
        }
    }
}

#[test]
fn what_is_not_lawful_always_says_why_by_a_rule() {
    for opening in many_openings() {
        for edition in Edition::ALL {
            // A blank cover is spoken of, and listed, only where the owner asks for one.
            let asked = |remedy| remedy != Remedy::BlankCover || opening.taking_out.is_some();
            for verdict in under(edition, &opening).remedies.into_iter().filter(|verdict| asked(verdict.remedy)) {
                assert_eq!(verdict.lawful == Lawful::Yes, verdict.why_not.is_empty(), "{edition} {verdict:?}");
                assert!(verdict.why_not.iter().all(|why| !why.contains("no rule allows")), "{opening:?} {verdict:?}");
                assert!(!verdict.rules.is_empty());
                assert!(verdict.lawful != Lawful::No || verdict.markings.is_empty());
            }
        }
    }
}

#[test]
fn an_opening_of_which_the_ground_is_unknown_gets_nothing_that_depends_on_it() {
    let opening = Opening { ground: GroundFact::Unknown, ..bedroom() };
    for edition in Edition::ALL {
        for verdict in under(edition, &opening).remedies {
            let expected = match verdict.remedy {
                // Nobody asks for it.
                Remedy::BlankCover => Lawful::No,
                Remedy::Leave => Lawful::Yes,
                Remedy::NewCable if edition != Edition::Nec2026 => Lawful::Yes,
                _ => Lawful::NotChecked,
            };
            assert_eq!(verdict.lawful, expected, "{edition} {}", verdict.remedy);
        }
    }
}

#[test]
fn more_volume_never_breaks_the_fit_of_a_box() {
    let mut opening = Opening { breaker: Some(Amperes::new(20)), ..bedroom() };
    for cables in 1..5 {
        opening.fill.cables = two_wire_cables(cables);
        for clamps in [None, Some(Clamps::Inside), Some(Clamps::Outside)] {
            opening.fill.clamps = clamps;
            for edition in ENTERED {
                for remedy in Remedy::ALL {
                    let mut fitted = false;
                    for hundredths in (0..4000).step_by(50) {
                        opening.fill.volume = Some(Volume::hundredths(hundredths));
                        let fit = fit_after(*remedy, &opening, &CodeInForce::published(edition));
                        let fits = fit.verdict == FillVerdict::Fits;
                        assert!(fits || !fitted, "{remedy} fitted a smaller box");
                        fitted = fits;
                    }
                    assert!(fitted, "{remedy} with {cables} cables does not fit 39.5 in³");
                }
            }
        }
    }
}

#[test]
fn every_value_has_a_reading_for_every_edition_to_2023_and_a_mark_of_how_it_is_known() {
    let values = all_values();
    let ids: BTreeSet<&str> = values.iter().map(|value| value.id()).collect();
    assert_eq!(ids.len(), values.len(), "two values share a name");
    for value in &values {
        let editions: Vec<Edition> = value.citations().iter().map(|cite| cite.edition).collect();
        let up_to_2023: Vec<Edition> =
            editions.iter().copied().filter(|edition| *edition != Edition::Nec2026).collect();
        assert_eq!(up_to_2023, ENTERED, "{}", value.id());
        assert!(editions.is_sorted(), "{}", value.id());
        for cite in value.citations() {
            assert!(!cite.section.is_empty(), "{}", value.id());
            match cite.known {
                Known::Read(source) | Known::Disputed(source) => assert!(!source.is_empty(), "{}", value.id()),
                Known::FromMemory => assert_ne!(cite.edition, Edition::Nec2026, "{} of 2026 is remembered", value.id()),
            }
        }
    }
    assert!(values.len() >= 80, "only {} values are listed", values.len());
}

#[test]
fn an_edition_nobody_has_entered_gives_not_checked_and_never_another_editions_value() {
    const ONLY_2017: ByEdition<u32> =
        ByEdition { id: "test.only-2017", readings: &[Reading::remembered(Edition::Nec2017, "1.1", 7)] };
    assert_eq!(ONLY_2017.in_force(&CodeInForce::published(Edition::Nec2017)).unwrap().value, 7);
    assert!(
        ONLY_2017.in_force(&CodeInForce::published(Edition::Nec2020)).unwrap_err().because.contains("test.only-2017")
    );
}

#[test]
fn every_rule_has_its_own_name_a_title_and_a_page_that_opens_with_the_title() {
    let ids: BTreeSet<&str> = RULES.iter().map(|rule| rule.id).collect();
    assert_eq!(ids.len(), RULES.len());
    for one in RULES {
        assert_eq!(one.page.lines().next(), Some(format!("# {}", one.title).as_str()), "{}", one.id);
        assert!(one.page.contains("\n- **"), "{} has no scenario on its page", one.id);
        assert_eq!(rule(one.id).unwrap().id, one.id);
    }
}

#[test]
fn a_shared_neutral_never_gets_a_single_pole_breaker() {
    for made in [vec![ProtectiveBreaker::Gfci, ProtectiveBreaker::Dual], vec![]] {
        let opening = Opening { on_shared_neutral: true, made_for_panel: Some(made), ..bedroom() };
        let judgement = judge(&opening, &CodeInForce::published(Edition::Nec2020));
        assert_eq!(judgement.remedies[4].remedy, Remedy::GfciBreaker);
        assert_eq!(judgement.remedies[4].lawful, Lawful::No);
    }
}

#[test]
fn the_same_opening_is_judged_alike_every_time() {
    for opening in many_openings().iter().step_by(37) {
        for edition in Edition::ALL {
            assert_eq!(under(edition, opening), under(edition, opening));
        }
    }
}

#[test]
fn learning_that_there_is_no_ground_opens_remedies_and_never_closes_one() {
    for room in RoomUse::ALL {
        let unknown = Opening { ground: GroundFact::Unknown, ..opening_in(*room) };
        let none = Opening { ground: GroundFact::None, ..opening_in(*room) };
        for edition in ENTERED {
            let (before, after) = (under(edition, &unknown), under(edition, &none));
            for (before, after) in before.remedies.iter().zip(&after.remedies) {
                let closed = before.lawful == Lawful::Yes && after.lawful != Lawful::Yes;
                assert!(!closed, "{edition} {room} {}", after.remedy);
            }
            let lawful = |judgement: &rulebook::Judgement| {
                judgement.remedies.iter().filter(|verdict| verdict.lawful == Lawful::Yes).count()
            };
            assert!(lawful(&after) > lawful(&before));
        }
    }
}

/// Every use of a room, edition and kind of circuit: voltage, rating, shared neutral; an existing outlet and a new one.
#[test]
fn every_room_edition_and_circuit_gets_exactly_one_answer_for_each_duty() {
    let ratings = [None, Some(10), Some(15), Some(20), Some(25), Some(30), Some(50)];
    for room in RoomUse::ALL {
        for edition in Edition::ALL {
            for rating in ratings {
                for supply in [None, Some(Supply::V120), Some(Supply::V240)] {
                    for (on_shared_neutral, existing_outlet) in [(false, true), (true, true), (false, false)] {
                        let opening = Opening {
                            breaker: rating.map(Amperes::new),
                            supply,
                            on_shared_neutral,
                            existing_outlet,
                            ..opening_in(*room)
                        };
                        let judgement = under(edition, &opening);
                        let duties: Vec<Duty> = judgement.duties.iter().map(|verdict| verdict.duty).collect();
                        assert_eq!(duties, Duty::ALL);
                        for verdict in &judgement.duties {
                            let silent = verdict.because.is_empty();
                            let about = format!("{edition} {room} {rating:?} {supply:?} {verdict:?}");
                            assert!(!silent || verdict.need == Need::NotRequired, "{about}");
                            assert!(verdict.changed_by.is_empty(), "{about}");
                            let sourced = verdict.cites.iter().all(|cite| cite.edition == edition);
                            assert!(
                                sourced && (verdict.need == Need::NotChecked || silent || !verdict.cites.is_empty()),
                                "{about}"
                            );
                        }
                    }
                }
            }
        }
    }
}

/// A later edition asks for no less, except where a source says so: nothing but the exceptions for what is served or built in.
#[test]
fn what_one_edition_asks_of_a_new_outlet_the_next_asks_too() {
    for room in RoomUse::ALL {
        for duty in [Duty::Gfci, Duty::Afci, Duty::TamperResistant, Duty::WeatherResistant] {
            for countertop in [Some(true), Some(false)] {
                let opening = Opening {
                    existing_outlet: false,
                    countertop,
                    sink: scenario::water(20, 0, &[]),
                    ..opening_in(*room)
                };
                let required = |edition| {
                    under(edition, &opening)
                        .duties
                        .iter()
                        .any(|verdict| verdict.duty == duty && verdict.need == Need::Required)
                };
                for pair in ENTERED.windows(2) {
                    assert!(
                        !required(pair[0]) || required(pair[1]),
                        "{duty} in {room}: {} but not {}",
                        pair[0],
                        pair[1]
                    );
                }
            }
        }
    }
}

/// Of 2026 nothing is asked or excused that was not read: an existing outlet's duties under 406.4(D) are not checked.
#[test]
fn under_2026_no_replaced_receptacle_is_told_that_it_needs_nothing() {
    for room in RoomUse::ALL {
        let judgement = under(Edition::Nec2026, &opening_in(*room));
        for verdict in &judgement.duties {
            let decided = matches!(verdict.duty, Duty::EquipmentGround | Duty::SimultaneousDisconnect);
            let damp = verdict.duty == Duty::WeatherResistant && verdict.need == Need::NotRequired;
            let none_here = verdict.duty == Duty::UseExistingGround && verdict.need == Need::NotRequired;
            assert!(decided || damp || none_here || verdict.need == Need::NotChecked, "{room} {verdict:?}");
        }
    }
}

#[test]
fn every_rule_explains_itself_in_order_and_has_a_page_with_every_edition() {
    for edition in Edition::ALL {
        let said = explain(&bedroom(), &CodeInForce::published(edition));
        assert_eq!(
            said.iter().map(|said| said.rule).collect::<Vec<_>>(),
            RULES.iter().map(|rule| rule.id).collect::<Vec<_>>()
        );
        for said in &said {
            assert!(said.things.iter().all(|thing| !thing.text.is_empty()));
            assert!(said.not_checked.is_none() || edition == Edition::Nec2026, "{} {edition}", said.rule);
        }
    }
    for rule in RULES {
        let page = rule_page(rule.id).expect("every rule has a page");
        assert_eq!(page.by_edition.len(), rule.values.len() * Edition::ALL.len());
        for row in &page.by_edition {
            assert_eq!(row.section.is_some(), row.in_words.as_ref().is_some_and(|words| !words.is_empty()), "{row:?}");
            assert!(row.section.is_some() || row.edition == Edition::Nec2026, "{row:?}");
        }
    }
    assert_eq!(rule_page("no.such-rule"), None);
}

#[test]
fn what_judge_says_is_what_explain_shows() {
    for edition in Edition::ALL {
        let code = CodeInForce::published(edition);
        for room in RoomUse::ALL {
            let opening = opening_in(*room);
            let texts: BTreeSet<String> =
                explain(&opening, &code).into_iter().flat_map(|said| said.things).map(|thing| thing.text).collect();
            let judgement = judge(&opening, &code);
            let conditions = judgement.remedies.iter().flat_map(|verdict| &verdict.conditions).map(|one| one.text());
            let spoken_of = judgement.remedies.iter().filter(|verdict| verdict.remedy != Remedy::BlankCover);
            let why_not = spoken_of.flat_map(|verdict| &verdict.why_not);
            for text in conditions.chain(why_not.chain(&judgement.cautions).cloned()) {
                assert!(texts.contains(&text), "{edition} {room}: {text}");
            }
        }
    }
}
