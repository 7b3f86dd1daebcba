//! Figures of one's own in place of common practice: what they change, and by how much.

use crate::sketch::{Sketch, read, read_loaded, seen};
use diagnosis::belief::{BoxBelief, Ground, GroundWork, Practice, Stakes, Test, Wiring, believe};
use dwelling::{BoxIndex, CableKind, GroundSeen};

/// The practice with these figures replaced.
fn with(figures: &[(&str, &str, f64)]) -> Practice {
    let mut practice = Practice::default();
    for (table, key, value) in figures {
        let mut all = practice.figures();
        let figure = all.iter_mut().find(|figure| (figure.table, figure.key) == (*table, *key));
        *figure.expect("a figure of this name").value = *value;
    }
    practice
}

fn believed(sketch: &Sketch, practice: &Practice) -> BoxBelief {
    believe(&sketch.dwelling, &practice.priors).of(BoxIndex(0)).expect("some state reads like this").clone()
}

/// By hand: before anything is read, a run's hot conductor and neutral are what the figures say.
#[test]
fn without_a_reading_the_figures_are_the_beliefs() {
    let own = with(&[("run-hot", "sound", 0.7), ("run-hot", "high-resistance", 0.2), ("run-hot", "open", 0.1)]);
    let belief = believed(&Sketch::wired_in(CableKind::NmTwoWire).then("a", []), &own);
    for (believed, figure) in belief.run.hot.iter().zip([0.7, 0.2, 0.1]) {
        assert!((believed - figure).abs() < 1e-12, "{:?}", belief.run.hot);
    }
}

/// By hand: the odds of two states after a reading are their odds before, times what the reading says for the one against
/// the other; the second factor is the same for every practice. Twice as many jumpers for as many devices that are right,
/// whatever arrives, are twice the odds: 0.004 to 0.008 against 0.936, and 0.045 to 0.090 against 0.898, reversed ones fewer.
#[test]
fn twice_as_many_jumpers_are_twice_the_odds_whatever_was_read() {
    let own = with(&[
        ("device.where-ground-arrives", "neutral-jumper", 0.008),
        ("device.where-ground-arrives", "hot-neutral-reversed", 0.036),
        ("device.where-none-arrives", "neutral-jumper", 0.090),
        ("device.where-none-arrives", "hot-neutral-reversed", 0.005),
    ]);
    let found = [vec![], vec![read(120.0, 120.0, 0.0)], vec![read(120.0, 120.0, 0.0), read_loaded(116.4, 116.4, 0.0)]];
    for found in found {
        for cable in [CableKind::NmWithGround, CableKind::NmTwoWire, CableKind::Unknown] {
            let sketch = Sketch::wired_in(cable).then("a", found.clone());
            let odds = |practice: &Practice| {
                let belief = believed(&sketch, practice);
                belief.wiring[Wiring::NeutralJumper as usize] / belief.wiring[Wiring::Right as usize]
            };
            let factor = odds(&own) / odds(&Practice::default());
            assert!((factor - 2.0).abs() < 1e-9, "{cable:?} {found:?}: {factor}");
        }
    }
}

/// By hand: a panel without a ground bar has a ground 3 times in 10, or by one's own count 6 in 10; where a run with a ground
/// was not looked into, that makes a ground at its opening twice as likely.
#[test]
fn panels_that_have_a_ground_after_all_make_grounds_likelier_in_step() {
    let own = with(&[("how-often", "panel-without-bar-has-ground", 0.6)]);
    let mut sketch = Sketch::wired_in(CableKind::NmWithGround).then("a", []);
    sketch.dwelling.panels[0].ground_bar = Some(false);
    let grounded = |practice: &Practice| believed(&sketch, practice).ground[Ground::Grounded as usize];
    let factor = grounded(&own) / grounded(&Practice::default());
    assert!((factor - 2.0).abs() < 0.01, "{factor}");
}

/// By hand, of a ground that is sound or missing with the same odds: to rely on it costs 0.5 × 1,500 = 750, to mend
/// 0.5 × 30 + 0.5 × 45 = 37.5, to do without 0.5 × 90 = 45, to take a jumper out 30. With 100 for taking out what is not
/// there, mending is cheapest; with 10 for doing without a sound ground, that is, at 0.5 × 10 = 5.
#[test]
fn what_acting_wrongly_costs_decides_what_to_do() {
    let odds = [0.5, 0.0, 0.0, 0.5, 0.0, 0.0];
    assert_eq!(Stakes::default().of_ground(&odds), (GroundWork::Disarm, 30.0));
    let dear = [("cost-of-being-wrong.grounded", "disarm", 100.0), ("cost-of-being-wrong.missing", "disarm", 100.0)];
    assert_eq!(with(&dear).stakes.of_ground(&odds), (GroundWork::Mend, 37.5));
    let cheap = ("cost-of-being-wrong.grounded", "do-without", 10.0);
    assert_eq!(with(&[dear[0], dear[1], cheap]).stakes.of_ground(&odds), (GroundWork::DoWithout, 5.0));
}

/// By hand: a test that takes twice as long tells as much, so it is worth as much and half as much by the minute.
#[test]
fn a_test_that_takes_twice_as_long_is_worth_half_by_the_minute() {
    let sketch = Sketch::wired_in(CableKind::NmWithGround).then("a", [read(120.0, 120.0, 0.0)]);
    let beliefs = believe(&sketch.dwelling, &Practice::default().priors);
    let of = |practice: &Practice| {
        let advice = beliefs.advice(&sketch.dwelling, &practice.stakes);
        advice.into_iter().find(|advice| advice.test == Test::UnderLoad).expect("it tells a jumper from a ground")
    };
    let (shipped, own) = (of(&Practice::default()), of(&with(&[("minutes", "read-under-load", 8.0)])));
    assert_eq!((shipped.minutes, own.minutes), (4.0, 8.0));
    assert_eq!(shipped.worth, own.worth);
    assert!((shipped.rate() / own.rate() - 2.0).abs() < 1e-12);
}

/// By hand: odds lie between 0 and 1 and add up to one, however far the figures go: each share in turn nearly all, each
/// chance nearly never and nearly always.
#[test]
fn the_most_extreme_figures_give_odds_all_the_same() {
    const LEAST: f64 = 0.000_001;
    let mut shipped = Practice::default();
    let names: Vec<(&str, &str)> = shipped.figures().iter().map(|figure| (figure.table, figure.key)).collect();
    let sketch = Sketch::wired_in(CableKind::NmWithGround)
        .then("a", [read(120.0, 0.0, 0.0), seen(GroundSeen::Connected)])
        .then("b", [read(120.0, 120.0, 0.0), read_loaded(118.5, 120.0, 1.5)]);
    let mut held = 0;
    for (table, key) in &names {
        let is_chance = ["how-often", "unseen-run-brings-ground"].contains(table);
        if table.starts_with("cost-of-being-wrong") || *table == "minutes" {
            continue;
        }
        let of_table = names.iter().filter(|(other, _)| other == table).count() as f64;
        let values = if is_chance { vec![1.0 - LEAST, LEAST] } else { vec![1.0 - LEAST * (of_table - 1.0)] };
        for value in values {
            let mut practice = Practice::default();
            for figure in practice.figures().into_iter().filter(|figure| figure.table == *table) {
                if figure.key == *key {
                    *figure.value = value;
                } else if !is_chance {
                    *figure.value = LEAST;
                }
            }
            for belief in &believe(&sketch.dwelling, &practice.priors).circuits[0].boxes {
                for odds in [belief.ground, belief.wiring, belief.run.ground] {
                    assert!(odds.iter().all(|odds| (0.0..=1.0 + 1e-9).contains(odds)), "{table} {key}: {odds:?}");
                    assert!((odds.iter().sum::<f64>() - 1.0).abs() < 1e-9, "{table} {key}: {odds:?}");
                    held += 1;
                }
            }
        }
    }
    // By hand: 36 shares and 9 chances at both ends, two boxes, three lists.
    assert_eq!(held, (36 + 9 * 2) * 2 * 3);
}
