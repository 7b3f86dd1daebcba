//! The whole search for the ground on one circuit: what to test or open first, what after each outcome, and how many boxes that opens.

use super::advice::{KnownOutcomes, is_open};
use super::circuit_belief::CircuitBelief;
use super::explanations::{About, Explained, Explanation, explanations};
use super::policy::{Decision, MOST_CASES, Policy, Question, Trial, best_policy};
use super::sighting_odds::{allowing_mistakes, sighting_odds};
use super::stakes::{GroundWork, Stakes};
use super::state::{Ground, GroundRun, Wiring};
use super::stations::Stations;
use super::test_outcome::{Outcome, Test, sightings};
use dwelling::{BoxIndex, Dwelling, GroundSeen};

/// A search over the likeliest explanations of a circuit, each taken to read as it most likely does.
#[derive(Clone, Debug, PartialEq)]
pub struct SearchPlan {
    /// The explanations that it tells apart, likeliest first.
    pub explanations: Vec<Explanation>,
    /// How much of all that is possible they cover, between 0 and 1.
    pub covers: f64,
    /// What to do first, and then.
    pub step: SearchStep,
    /// The expected minutes of all its tests.
    pub minutes: f64,
    /// How many boxes it opens on average.
    pub opens: f64,
    /// How many boxes it opens at most.
    pub opens_at_most: usize,
}

/// A step of a search.
#[derive(Clone, Debug, PartialEq)]
pub enum SearchStep {
    /// Nothing more that is worth its minutes: act on these explanations, by their places, likeliest first.
    Act(Vec<usize>),
    /// A test, and what follows by its outcome.
    Test {
        /// Where.
        at: BoxIndex,
        /// What.
        test: Test,
        /// By outcome: it, how likely it is then, and what follows; likeliest first.
        then: Vec<(Outcome, f64, SearchStep)>,
    },
}

/// The search on a circuit that is expected to cost the least, tests and acting wrongly together; nothing where what was
/// found cannot be.
pub(crate) fn search_plan(dwelling: &Dwelling, circuit: &CircuitBelief, stakes: &Stakes) -> Option<SearchPlan> {
    let stations = &circuit.stations;
    let explanations = explanations(stations, About::Ground, MOST_CASES);
    explanations.first()?;
    let odds: Vec<f64> = explanations.iter().map(|one| one.share).collect();
    let covers = odds.iter().sum::<f64>().min(1.0);
    let known = KnownOutcomes::new();
    let mut tests = Vec::new();
    for (number, station) in stations.all.iter().enumerate() {
        for test in Test::ALL.iter().filter(|test| is_open(dwelling, circuit, number, **test)) {
            let outcomes =
                explanations.iter().map(|one| outcome(dwelling, stations, one, number, *test, &known)).collect();
            let minutes = explanations.iter().map(|one| {
                let to_be_opened = if is_to_be_opened(stations, one, number) { 1.0 } else { 0.0 };
                stakes.minutes_beside_work(*test, to_be_opened)
            });
            tests.push((station.at, *test, Trial { minutes: minutes.collect(), outcomes }));
        }
    }
    let decisions = decisions(stations, &explanations, stakes);
    let trials = tests.iter().map(|(_, _, trial)| trial.clone()).collect();
    let policy = best_policy(&Question { odds, tests: trials, decisions });
    let named: Vec<(BoxIndex, Test)> = tests.iter().map(|(at, test, _)| (*at, *test)).collect();
    let (minutes, opens, opens_at_most) = counts(&policy, &named);
    Some(SearchPlan { explanations, covers, step: step(&policy, &named), minutes, opens, opens_at_most })
}

/// Whether what is to be done about grounds where an explanation is true is done in this box.
fn is_to_be_opened(stations: &Stations, told: &Explanation, number: usize) -> bool {
    let one = &told.boxes[number];
    let station = &stations.all[number];
    matches!(one.ground, GroundRun::LooseHere | GroundRun::CutOffHere)
        || station.children.iter().any(|child| told.boxes[*child].ground == GroundRun::LooseBefore)
        || station.is_receptacle && !matches!(one.state.wiring, Wiring::Right | Wiring::HotNeutralReversed)
}

/// What comes out of a test most likely where an explanation is true: the place of the outcome.
fn outcome(
    dwelling: &Dwelling,
    stations: &Stations,
    told: &Explanation,
    number: usize,
    test: Test,
    known: &KnownOutcomes,
) -> usize {
    let one = &told.boxes[number];
    let likeliest = |odds: &[f64]| {
        let best = odds.iter().enumerate().max_by(|left, right| left.1.total_cmp(right.1));
        best.map_or(0, |(place, _)| place)
    };
    if test != Test::OpenBox {
        return likeliest(known.at(test, one.state));
    }
    let children = &stations.all[number].children;
    let loose = children.iter().any(|child| told.boxes[*child].ground == GroundRun::LooseBefore);
    let cable = dwelling.cable_to(one.at);
    let of = |seen: &GroundSeen| allowing_mistakes(sighting_odds(*seen, cable, one.ground, one.state.wiring, loose));
    let seen = test.outcomes().iter().map(|outcome| sightings(*outcome).iter().map(of).sum());
    likeliest(&seen.collect::<Vec<f64>>())
}

/// What is to be decided about the ground of every run and receptacle, and what each way of acting costs under each
/// explanation.
fn decisions(stations: &Stations, explanations: &[Explanation], stakes: &Stakes) -> Vec<Decision> {
    let mut found = Vec::new();
    for (number, station) in stations.all.iter().enumerate() {
        let under = |cost: &dyn Fn(&Explained) -> f64| {
            explanations.iter().map(|one| cost(&one.boxes[number])).collect::<Vec<f64>>()
        };
        found.push(of_run(&under, stakes));
        if station.is_receptacle {
            let of_work = |work: GroundWork| {
                let cost = |ground: Ground| stakes.ground[ground as usize][work as usize];
                under(&|one| cost(one.state.ground()))
            };
            found.push(Decision { costs: GroundWork::ALL.iter().map(|work| of_work(*work)).collect() });
        }
    }
    found
}

/// What something costs under each explanation.
type Under<'a> = dyn Fn(&dyn Fn(&Explained) -> f64) -> Vec<f64> + 'a;

/// Where to open a run for a ground that is not connected: nowhere, here, or in the box before.
fn of_run(under: &Under, stakes: &Stakes) -> Decision {
    let [left, other_box, needless] = stakes.broken;
    let here = |one: &Explained| matches!(one.ground, GroundRun::LooseHere | GroundRun::CutOffHere);
    let before = |one: &Explained| one.ground == GroundRun::LooseBefore;
    let opened = |one: &Explained, right: bool, wrong: bool| match (right, wrong) {
        (true, _) => 0.0,
        (_, true) => other_box,
        _ => {
            debug_assert!(!here(one) && !before(one));
            needless
        }
    };
    Decision {
        costs: vec![
            under(&|one| if here(one) || before(one) { left } else { 0.0 }),
            under(&|one| opened(one, here(one), before(one))),
            under(&|one| opened(one, before(one), here(one))),
        ],
    }
}

fn step(policy: &Policy, tests: &[(BoxIndex, Test)]) -> SearchStep {
    match policy {
        Policy::Act { cases, .. } => SearchStep::Act(cases.clone()),
        Policy::Test { test, then, .. } => {
            let (at, test) = tests[*test];
            let mut then: Vec<(Outcome, f64, SearchStep)> = then
                .iter()
                .map(|(outcome, share, policy)| (test.outcomes()[*outcome], *share, step(policy, tests)))
                .collect();
            then.sort_by(|left, right| right.1.total_cmp(&left.1));
            SearchStep::Test { at, test, then }
        }
    }
}

/// The expected minutes, and how many boxes are opened on average and at most.
fn counts(policy: &Policy, tests: &[(BoxIndex, Test)]) -> (f64, f64, usize) {
    match policy {
        Policy::Act { .. } => (0.0, 0.0, 0),
        Policy::Test { test, minutes, then, .. } => {
            let (_, test) = tests[*test];
            let opens = usize::from(test == Test::OpenBox);
            let (mut minutes, mut on_average, mut at_most) = (*minutes, 0.0, 0);
            on_average += if opens == 1 { 1.0 } else { 0.0 };
            for (_, share, policy) in then {
                let (of_minutes, of_average, of_most) = counts(policy, tests);
                minutes += share * of_minutes;
                on_average += share * of_average;
                at_most = at_most.max(of_most);
            }
            (minutes, on_average, opens + at_most)
        }
    }
}
