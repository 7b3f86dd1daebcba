//! What is believed of boxes and runs, what does not fit together, and which test comes next, as an answer.

use diagnosis::belief::{
    Advice, Beliefs, BoxBelief, CircuitBelief, Claim, Clash, Explanation, Ground, GroundRun, MOST_IN_VAIN, Outcome,
    SearchPlan, SearchStep, Stakes, Test, WireState, Wiring,
};
use dwelling::{BoxIndex, CircuitIndex, Dwelling};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeSet;

/// One of several states, with how likely it is.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OddsAnswer<T> {
    /// The state.
    pub is: T,
    /// How likely it is, from 0 to 1.
    pub odds: f64,
}

/// What is believed of a box and of the run that feeds it; states of less than a thousandth are left out.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct BeliefAnswer {
    /// The id of the box.
    pub id: String,
    /// It in a sentence.
    pub says: String,
    /// What may be said of its ground; nothing where that is not sure enough, or not shown.
    pub verdict: Option<Ground>,
    /// What its ground terminal is in truth.
    pub ground: Vec<OddsAnswer<Ground>>,
    /// How its device is wired.
    pub wiring: Vec<OddsAnswer<Wiring>>,
    /// Its neutral's way from the panel.
    pub neutral_path: Vec<OddsAnswer<WireState>>,
    /// Its hot conductor's way from the panel.
    pub hot_path: Vec<OddsAnswer<WireState>>,
    /// The ground of the run that feeds it.
    pub run_ground: Vec<OddsAnswer<GroundRun>>,
    /// The neutral of that run.
    pub run_neutral: Vec<OddsAnswer<WireState>>,
    /// The hot conductor of that run.
    pub run_hot: Vec<OddsAnswer<WireState>>,
}

/// Things found or recorded that cannot well all be right.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ClashAnswer {
    /// It in a sentence.
    pub says: String,
    /// The boxes at which.
    pub boxes: Vec<String>,
    /// How likely the first of them is wrong.
    pub wrong: f64,
}

/// A test with what it is worth.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AdviceAnswer {
    /// The box.
    pub id: String,
    /// The test.
    pub test: Test,
    /// What to do.
    pub what: &'static str,
    /// What can hurt someone while it is done.
    pub caution: &'static str,
    /// How many minutes it takes.
    pub minutes: f64,
    /// How many minutes of acting wrongly it saves, in expectation.
    pub worth: f64,
    /// What may come out, likeliest first.
    pub outcomes: Vec<OutcomeAnswer>,
}

/// An outcome that a test may have.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OutcomeAnswer {
    /// It.
    pub outcome: Outcome,
    /// What it means.
    pub means: &'static str,
    /// How likely it is, from 0 to 1.
    pub odds: f64,
    /// How many minutes acting wrongly would still be expected to cost.
    pub left: f64,
}

/// The search on a circuit.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SearchAnswer {
    /// The ids of the circuit, or of both circuits of a multiwire set.
    pub circuits: Vec<String>,
    /// How many boxes it opens on average.
    pub opens: f64,
    /// How many boxes it opens at most.
    pub opens_at_most: usize,
    /// How many minutes it takes on average.
    pub minutes: f64,
    /// How much of all that is possible it has looked at, from 0 to 1.
    pub covers: f64,
    /// The explanations that it tells apart, likeliest first.
    pub explanations: Vec<ExplanationAnswer>,
    /// The steps, each after what it follows.
    pub steps: Vec<StepAnswer>,
    /// What to begin with so that the fewest boxes are opened, whatever the minutes; nothing where no box is likely to show a
    /// fault.
    pub fewest_boxes: Option<FewestBoxesAnswer>,
}

/// How to open the fewest boxes on a circuit.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FewestBoxesAnswer {
    /// The box to begin at.
    pub id: String,
    /// The test to begin with there.
    pub test: Test,
    /// The unopened boxes by how likely each shows an interrupted or joined ground, likeliest first: the order to open them in as
    /// things stand.
    pub order: Vec<ShowsAnswer>,
    /// After so many boxes opened in vain, the rest is opened from the panel on, in the order of feeding.
    pub from_panel_after: usize,
}

/// How likely a box shows a fault.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ShowsAnswer {
    /// The box.
    pub id: String,
    /// How likely, from 0 to 1.
    pub odds: f64,
}

/// A state of a circuit that explains what was found.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct ExplanationAnswer {
    /// How likely it is, with all that differs from it in nothing one would do, from 0 to 1.
    pub odds: f64,
    /// What is wrong by it, or otherwise than the survey has it.
    pub faults: Vec<String>,
}

/// A step of a search.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct StepAnswer {
    /// How many outcomes lead here.
    pub depth: usize,
    /// The outcome of the step before that leads here.
    pub after: Option<Outcome>,
    /// How likely that outcome is then.
    pub odds: f64,
    /// The box to test at; nothing where testing ends.
    pub id: Option<String>,
    /// The test.
    pub test: Option<Test>,
    /// Where testing ends: the places of the explanations that are left, counted from 0, likeliest first.
    pub left: Vec<usize>,
}

/// Odds below this are not told.
const LEAST_TOLD: f64 = 0.001;
/// How many tests are told.
const MOST_ADVICE: usize = 60;

/// Odds as they are told: four digits, the same on every machine.
fn told(odds: f64) -> f64 {
    (odds * 10_000.0).round() / 10_000.0
}

/// Minutes as they are told: one digit.
fn minutes(minutes: f64) -> f64 {
    (minutes * 10.0).round() / 10.0
}

fn odds<T: Copy>(states: &[T], odds: &[f64]) -> Vec<OddsAnswer<T>> {
    let likely = states.iter().zip(odds).filter(|(_, odds)| **odds >= LEAST_TOLD);
    let mut answers: Vec<OddsAnswer<T>> = likely.map(|(is, odds)| OddsAnswer { is: *is, odds: told(*odds) }).collect();
    answers.sort_by(|left, right| right.odds.total_cmp(&left.odds));
    answers
}

/// What is believed of every box, in survey order.
#[must_use]
pub fn belief_answers(dwelling: &Dwelling, beliefs: &Beliefs) -> Vec<BeliefAnswer> {
    dwelling.box_indices().filter_map(|at| beliefs.of(at)).map(|belief| belief_answer(dwelling, belief)).collect()
}

fn belief_answer(dwelling: &Dwelling, belief: &BoxBelief) -> BeliefAnswer {
    BeliefAnswer {
        id: dwelling.device_box(belief.at).id.clone(),
        says: says(dwelling, belief),
        verdict: belief.verdict(),
        ground: odds(Ground::ALL, &belief.ground),
        wiring: odds(Wiring::ALL, &belief.wiring),
        neutral_path: odds(WireState::ALL, &belief.neutral_path),
        hot_path: odds(WireState::ALL, &belief.hot_path),
        run_ground: odds(GroundRun::ALL, &belief.run.ground),
        run_neutral: odds(WireState::ALL, &belief.run.neutral),
        run_hot: odds(WireState::ALL, &belief.run.hot),
    }
}

/// What is believed of a box's ground, in a sentence.
fn says(dwelling: &Dwelling, belief: &BoxBelief) -> String {
    if belief.is_contradicted() {
        return "What was found here does not fit together: nothing is said of its ground until one test decides."
            .into();
    }
    let (ground, likely) = belief.likeliest();
    let percent = percent(likely);
    if !dwelling.device_box(belief.at).holds.is_receptacle() {
        return match belief.verdict() {
            Some(_) => format!("The ground in this box: {}. ({percent})", state(ground)),
            None => format!("The ground in this box is not decided; likeliest {}. ({percent})", state(ground)),
        };
    }
    match belief.verdict() {
        Some(_) => format!("{}. ({percent})", sentence(ground)),
        None if matches!(ground, Ground::Grounded | Ground::Poor) => format!(
            "It may be grounded ({percent}), and nothing has shown it: only readings under load tell a ground from a jumper."
        ),
        None => format!("Not decided; likeliest {}. ({percent})", state(ground)),
    }
}

/// Odds in percent, never rounded up to certainty.
#[must_use]
pub fn percent(odds: f64) -> String {
    match odds {
        odds if odds >= 0.995 => "over 99 %".to_owned(),
        odds if odds < 0.005 => "under 1 %".to_owned(),
        odds => format!("{:.0} %", odds * 100.0),
    }
}

/// A state of a ground terminal in a few words.
const fn state(ground: Ground) -> &'static str {
    match ground {
        Ground::Grounded => "grounded",
        Ground::Poor => "a path of high resistance",
        Ground::Interrupted => "a conductor that is not connected somewhere",
        Ground::Missing => "none arrives",
        Ground::False => "on the neutral",
        Ground::Live => "on the hot conductor",
    }
}

const fn sentence(ground: Ground) -> &'static str {
    match ground {
        Ground::Grounded => "Grounded, by a way of its own",
        Ground::Poor => "A ground arrives through a joint of high resistance",
        Ground::Interrupted => "A grounding conductor lies all the way and is not connected somewhere",
        Ground::Missing => "No ground arrives: somewhere on the way to the panel there is no grounding conductor",
        Ground::False => "The ground terminal is on the neutral: a false ground",
        Ground::Live => "The ground terminal is on the hot conductor: every metal case plugged in here is live",
    }
}

/// What does not fit together.
#[must_use]
pub fn clash_answers(dwelling: &Dwelling, beliefs: &Beliefs) -> Vec<ClashAnswer> {
    let clashes = beliefs.circuits.iter().flat_map(|circuit| &circuit.clashes);
    clashes.map(|clash| clash_answer(dwelling, clash)).collect()
}

fn clash_answer(dwelling: &Dwelling, clash: &Clash) -> ClashAnswer {
    let named = |claim: Claim| match claim {
        Claim::Reading { at, .. } => (format!("a set of readings at `{}`", dwelling.device_box(at).id), at),
        Claim::Sighting { at } => (format!("what was seen in `{}`", dwelling.device_box(at).id), at),
        Claim::Cable { at } => (
            format!("the wiring method `{}` of the run to `{}`", dwelling.cable_to(at), dwelling.device_box(at).id),
            at,
        ),
    };
    let (first, at) = named(clash.claim);
    let mut boxes: Vec<BoxIndex> = vec![at];
    let says = match clash.otherwise {
        Some((other, _)) => {
            let (second, other) = named(other);
            boxes.extend((other != at).then_some(other));
            format!("One of these two is wrong: {first}, or {second}.")
        }
        None => format!("This is likely wrong: {first}."),
    };
    ClashAnswer { says, boxes: super::findings::ids(dwelling, &boxes), wrong: told(clash.wrong) }
}

/// The tests that are worth most by the minute, at most sixty.
#[must_use]
pub fn advice_answers(dwelling: &Dwelling, advice: &[Advice]) -> Vec<AdviceAnswer> {
    advice.iter().take(MOST_ADVICE).map(|advice| advice_answer(dwelling, advice)).collect()
}

fn advice_answer(dwelling: &Dwelling, advice: &Advice) -> AdviceAnswer {
    let outcomes = advice.outcomes.iter().map(|expected| OutcomeAnswer {
        outcome: expected.outcome,
        means: expected.outcome.meaning().trim(),
        odds: told(expected.odds),
        left: minutes(expected.left),
    });
    AdviceAnswer {
        id: dwelling.device_box(advice.at).id.clone(),
        test: advice.test,
        what: advice.test.what(),
        caution: advice.test.caution(),
        minutes: minutes(advice.minutes),
        worth: minutes(advice.worth),
        outcomes: outcomes.collect(),
    }
}

/// The searches on all circuits on which testing pays.
#[must_use]
pub fn search_answers(dwelling: &Dwelling, beliefs: &Beliefs, stakes: &Stakes) -> Vec<SearchAnswer> {
    let plans = beliefs.circuits.iter().filter_map(|circuit| {
        let plan = circuit.search_plan(dwelling, stakes)?;
        let fewest = fewest_boxes(dwelling, circuit, stakes);
        matches!(plan.step, SearchStep::Test { .. }).then(|| search_answer(dwelling, &circuit.circuits, &plan, fewest))
    });
    plans.collect()
}

/// A box that shows a fault less often than this is not named.
const HARDLY_SHOWS: f64 = 0.02;
/// How many boxes are named.
const MOST_BOXES: usize = 6;

/// How to open the fewest boxes, where some box is not unlikely to show a fault.
fn fewest_boxes(dwelling: &Dwelling, circuit: &CircuitBelief, stakes: &Stakes) -> Option<FewestBoxesAnswer> {
    let (at, test) = circuit.step_to_fault(dwelling, stakes, &BTreeSet::new())?;
    let shows = circuit.boxes.iter().zip(circuit.shows_fault()).filter(|(belief, _)| belief.misseen.is_none());
    let mut order: Vec<(BoxIndex, f64)> = shows.map(|(belief, odds)| (belief.at, odds)).collect();
    order.retain(|(_, odds)| *odds >= HARDLY_SHOWS);
    order.sort_by(|one, other| other.1.total_cmp(&one.1).then(one.0.cmp(&other.0)));
    order.truncate(MOST_BOXES);
    let id = |at: BoxIndex| dwelling.device_box(at).id.clone();
    let order: Vec<ShowsAnswer> =
        order.into_iter().map(|(at, odds)| ShowsAnswer { id: id(at), odds: told(odds) }).collect();
    (!order.is_empty()).then(|| FewestBoxesAnswer { id: id(at), test, order, from_panel_after: MOST_IN_VAIN })
}

fn search_answer(
    dwelling: &Dwelling,
    circuits: &[CircuitIndex],
    plan: &SearchPlan,
    fewest_boxes: Option<FewestBoxesAnswer>,
) -> SearchAnswer {
    let mut steps = Vec::new();
    add_steps(dwelling, &plan.step, 0, None, 1.0, &mut steps);
    SearchAnswer {
        circuits: circuits.iter().map(|circuit| dwelling.circuit(*circuit).id.clone()).collect(),
        opens: told(plan.opens),
        opens_at_most: plan.opens_at_most,
        minutes: minutes(plan.minutes),
        covers: told(plan.covers),
        explanations: explanation_answers(dwelling, &plan.explanations),
        steps,
        fewest_boxes,
    }
}

/// Explanations with how likely each is.
#[must_use]
pub fn explanation_answers(dwelling: &Dwelling, explanations: &[Explanation]) -> Vec<ExplanationAnswer> {
    let answer = |one: &Explanation| ExplanationAnswer { odds: told(one.share), faults: one.faults(dwelling) };
    explanations.iter().map(answer).collect()
}

fn add_steps(
    dwelling: &Dwelling,
    step: &SearchStep,
    depth: usize,
    after: Option<Outcome>,
    odds: f64,
    steps: &mut Vec<StepAnswer>,
) {
    let one = StepAnswer { depth, after, odds: told(odds), id: None, test: None, left: Vec::new() };
    match step {
        SearchStep::Act(left) => steps.push(StepAnswer { left: left.clone(), ..one }),
        SearchStep::Test { at, test, then } => {
            let id = Some(dwelling.device_box(*at).id.clone());
            steps.push(StepAnswer { id, test: Some(*test), ..one });
            for (outcome, share, step) in then {
                add_steps(dwelling, step, depth + 1, Some(*outcome), *share, steps);
            }
        }
    }
}
