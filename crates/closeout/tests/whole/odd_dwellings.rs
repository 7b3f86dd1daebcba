//! Dwellings drawn at random with readings drawn at random: whatever was written down, each verdict says what it must.

use crate::generated::{Size, generated};
use closeout::{ClaimAnswer, ClaimKind, ProofAnswer, ProofVerdict, prove};
use dwelling::{
    AfterReading, BoxIndex, BoxSeen, ButtonTest, CircuitAfter, Dwelling, FittedAtPanel, GroundSeen, Holding, LabelSeen,
    LoadState, MeterKind, PanelAfter, Reading, Taken, TesterVerdict,
};
use electrical::{Milliamperes, Ohms, Volts, Volume};
use estimate::PriceBook;
use remedies::{LawAnswer, Planned, plan_answer};
use rulebook::CodeInForce;
use simulation::Chance;

const DWELLINGS: u64 = 300;
const SIZE: Size = Size { boxes: (3, 18), circuits: (1, 4), routes: (0, 8) };

fn any<T: Copy>(chance: &mut Chance, all: &[T]) -> Option<T> {
    chance.happens(0.6).then(|| all[chance.below(all.len())])
}

fn volts(chance: &mut Chance) -> Option<Volts> {
    let millivolts = [0, 100, 1_500, 38_000, 60_000, 112_000, 118_500, 120_000, 121_000, 240_000, i64::MAX, -5_000];
    any(chance, &millivolts).map(Volts::millivolts)
}

fn reading(chance: &mut Chance, boxes: usize) -> AfterReading {
    let load = any(chance, LoadState::ALL);
    AfterReading {
        reading: Reading {
            hot_neutral: volts(chance),
            hot_ground: volts(chance),
            neutral_ground: volts(chance),
            hot_earth: volts(chance),
            neutral_earth: volts(chance),
            ground_earth: volts(chance),
            hot_box: volts(chance),
            ground_impedance: any(chance, &[0, 300, 1_400, i64::MAX]).map(Ohms::milliohms),
            tester: any(chance, TesterVerdict::ALL),
            load,
            meter: any(chance, MeterKind::ALL),
            ground: any(chance, GroundSeen::ALL),
            tester_trips_gfci: any(chance, &[true, false]),
            own_test_trips: None,
        },
        load_current: any(chance, &[50, 900, 12_500, 60_000, 0, i64::MAX]).map(Milliamperes::new),
        load_at: chance.happens(0.3).then(|| BoxIndex(chance.below(boxes))),
        fitted: any(chance, Holding::ALL),
        test_button: any(chance, ButtonTest::ALL),
        dead_when_tripped: any(chance, &[true, false]),
        labels: any(chance, LabelSeen::ALL).map(|label| vec![label]),
        box_work: any(chance, BoxSeen::ALL),
        box_volume: any(chance, &[1, 12_50, 20_00]).map(Volume::hundredths),
        tamper_resistant: any(chance, &[true, false]),
        weather_resistant: any(chance, &[true, false]),
        taken: taken(chance),
        note: None,
    }
}

fn taken(chance: &mut Chance) -> Taken {
    let day = chance.happens(0.8).then(|| "2026-11-20".parse().ok()).flatten();
    Taken { day, by: chance.happens(0.8).then(|| "MK".to_owned()) }
}

fn read_at_random(seed: u64) -> (Dwelling, CodeInForce) {
    let (mut dwelling, code) = generated(seed, SIZE);
    let mut chance = Chance::new(seed);
    let boxes = dwelling.boxes.len();
    for at in &mut dwelling.boxes {
        at.after = (0..chance.below(4)).map(|_| reading(&mut chance, boxes)).collect();
    }
    for circuit in &mut dwelling.circuits {
        circuit.after = chance.happens(0.5).then(|| CircuitAfter {
            fitted: any(&mut chance, FittedAtPanel::ALL),
            test_button: any(&mut chance, ButtonTest::ALL),
            taken: taken(&mut chance),
        });
    }
    for panel in &mut dwelling.panels {
        panel.after = chance
            .happens(0.5)
            .then(|| PanelAfter { directory: any(&mut chance, &[true, false]), taken: taken(&mut chance) });
    }
    (dwelling, code)
}

fn claims(proof: &ProofAnswer) -> impl Iterator<Item = &ClaimAnswer> {
    let panels = proof.panels.iter().flat_map(|panel| &panel.claims);
    let circuits = proof.circuits.iter().flat_map(|circuit| &circuit.claims);
    panels.chain(circuits).chain(proof.openings.iter().flat_map(|opening| &opening.claims))
}

#[test]
fn every_verdict_says_what_it_must_whatever_was_written_down() {
    let mut seen = [0; 3];
    for seed in 0..DWELLINGS {
        let (dwelling, code) = read_at_random(seed);
        let planned = Planned::of(&dwelling, code, &PriceBook::demo()).unwrap();
        let plan = plan_answer(&planned, &LawAnswer::default(), true);
        let proof = prove(&planned, &plan, 1);
        for claim in claims(&proof) {
            let (proved, contradicts) =
                (claim.verdict == ProofVerdict::Proved, claim.verdict == ProofVerdict::Contradicts);
            seen[claim.verdict as usize] += 1;
            assert_eq!(claim.how.is_some(), proved, "seed {seed}: {claim:?}");
            assert_eq!(claim.must_read.is_none(), proved, "seed {seed}: {claim:?}");
            assert_eq!(claim.next.is_none(), proved, "seed {seed}: {claim:?}");
            assert_eq!(claim.reads.is_some() && claim.likely_cause.is_some(), contradicts, "seed {seed}: {claim:?}");
            assert!(!claim.says.is_empty() && !claim.source.cite.is_empty());
        }
        let counts = proof.counts;
        assert_eq!(proof.left.len(), counts.open + counts.contradicts, "seed {seed}");
        assert_eq!(claims(&proof).count(), proof.left.len() + counts.proved, "seed {seed}");
        let closed = proof.left.is_empty() && proof.holds_back.is_empty() && counts.proved > 0;
        assert_eq!(proof.is_closed(), closed, "seed {seed}");
    }
    assert!(seen.iter().all(|count| *count > 500), "{seen:?}");
}

/// Whatever else was read: a ground is proved by nothing but a set under load with all three pairs.
#[test]
fn no_ground_is_proved_without_the_separating_reading() {
    let mut grounds = 0;
    for seed in 0..DWELLINGS {
        let (mut dwelling, code) = read_at_random(seed);
        for after in dwelling.boxes.iter_mut().flat_map(|at| &mut at.after) {
            after.reading.load = Some(LoadState::None);
        }
        let planned = Planned::of(&dwelling, code, &PriceBook::demo()).unwrap();
        let plan = plan_answer(&planned, &LawAnswer::default(), true);
        let proof = prove(&planned, &plan, 1);
        for claim in claims(&proof).filter(|claim| claim.claim == ClaimKind::Ground) {
            grounds += 1;
            assert_ne!(claim.verdict, ProofVerdict::Proved, "seed {seed}: {claim:?}");
        }
    }
    assert!(grounds > 200, "{grounds}");
}

/// By hand: a load that draws nothing lets nothing fall, so that no fall under it proves anything.
#[test]
fn a_load_of_nothing_proves_nothing() {
    let (mut proved, mut loaded) = (0, 0);
    for seed in 0..DWELLINGS {
        let (mut dwelling, code) = read_at_random(seed);
        for after in dwelling.boxes.iter_mut().flat_map(|at| &mut at.after) {
            after.load_current = Some(Milliamperes::new(0));
        }
        let planned = Planned::of(&dwelling, code, &PriceBook::demo()).unwrap();
        let plan = plan_answer(&planned, &LawAnswer::default(), true);
        let proof = prove(&planned, &plan, 1);
        for claim in claims(&proof).filter(|claim| claim.claim == ClaimKind::HotNeutralLoaded) {
            loaded += 1;
            proved += u32::from(claim.verdict == ProofVerdict::Proved);
        }
    }
    assert!(loaded > 1_000 && proved == 0, "{proved} of {loaded}");
}
