//! The test to make next: the box at which to part the conductors, and what each thing seen there would mean.

use super::on_circuit::OnCircuit;
use super::practice::{MINUTES_TO_LOOK, minutes_to_part};
use super::question::{Fact, Node};
use super::weighing::{Parting, Weighing, likeliest_order};
use dwelling::{BoxIndex, Dwelling, Feed};

/// Below this a rise of a chance is no rise.
const NO_RISE: f64 = 1e-9;
/// Of how many things that may be seen it is told what they would mean.
const MOST_TOLD: usize = 4;

/// A test of the feeding order: the conductors of one box are parted, and it is seen what is dead.
#[derive(Clone, Debug, PartialEq)]
pub struct NextTest {
    /// The box to open.
    pub open: BoxIndex,
    /// The openings to look at then: those that may be dead or alive.
    pub look_at: Vec<BoxIndex>,
    /// How long it takes.
    pub minutes: u32,
    /// How likely the most probable order is, and how likely it will be afterwards, as expected; nothing where not every
    /// order was looked at.
    pub right: Option<(f64, f64)>,
    /// What share of the orders is left afterwards, as expected; nothing where not every order was looked at.
    pub left_after: Option<f64>,
    /// What may be seen, the likeliest first; not all where there are many.
    pub outcomes: Vec<TestOutcome>,
    /// How many other things may be seen.
    pub further_outcomes: usize,
}

/// One thing that the test may show.
#[derive(Clone, Debug, PartialEq)]
pub struct TestOutcome {
    /// The boxes of the circuit that are then dead.
    pub dead: Vec<BoxIndex>,
    /// How likely it is.
    pub share: f64,
    /// How many orders would be left.
    pub orders: u64,
    /// The order that would then be the most probable.
    pub order: Vec<(BoxIndex, Feed)>,
}

/// The parting that is worth most for its minutes: what raises the chance of planning on the true order most for each
/// minute, or where none raises it, what leaves the fewest orders. `minutes` is nothing where a box must not be opened.
#[must_use]
pub fn best_parting(weighing: &Weighing, minutes: impl Fn(&Parting) -> Option<u32>) -> Option<&Parting> {
    let right_before = weighing.likeliest.first()?.share;
    let worth = |rise: &dyn Fn(&Parting) -> f64| {
        let mut best: Option<(f64, &Parting)> = None;
        for parting in weighing.partings.iter().filter(|parting| parting.outcomes.len() > 1) {
            let Some(minutes) = minutes(parting) else { continue };
            let rise = rise(parting);
            let each = rise / f64::from(minutes.max(1));
            if rise > NO_RISE && best.is_none_or(|(other, _)| each > other * (1.0 + NO_RISE)) {
                best = Some((each, parting));
            }
        }
        best.map(|(_, parting)| parting)
    };
    worth(&|parting| parting.right_after - right_before).or_else(|| worth(&|parting| 1.0 - parting.left_after))
}

/// The positions of the boxes that may be dead or alive when the conductors at one are parted.
#[must_use]
pub fn in_doubt(parting: &Parting) -> Vec<usize> {
    let often = |at: &usize| parting.outcomes.iter().filter(|seen| seen.dead.contains(at)).count();
    let mut any: Vec<usize> = parting.outcomes.iter().flat_map(|seen| seen.dead.iter().copied()).collect();
    any.sort_unstable();
    any.dedup();
    any.retain(|at| often(at) < parting.outcomes.len());
    any
}

/// The test to make next where every order was looked at.
pub(super) fn next_test(dwelling: &Dwelling, on: &OnCircuit, weighing: &Weighing) -> Option<NextTest> {
    let minutes = |parting: &Parting| minutes_at(dwelling, on, parting.at, in_doubt(parting).len());
    let parting = best_parting(weighing, minutes)?;
    let outcomes = parting.outcomes.iter().take(MOST_TOLD).map(|seen| TestOutcome {
        dead: on.named(&seen.dead),
        share: seen.share,
        orders: seen.orders,
        order: order_then(on, parting.at, &seen.dead),
    });
    let look_at = in_doubt(parting);
    Some(NextTest {
        open: on.boxes[parting.at],
        minutes: minutes(parting)?,
        look_at: on.named(&look_at),
        right: Some((weighing.likeliest.first()?.share, parting.right_after)),
        left_after: Some(parting.left_after),
        outcomes: outcomes.collect(),
        further_outcomes: parting.outcomes.len().saturating_sub(MOST_TOLD),
    })
}

/// The test to make next where there are too many orders: the one that cuts the question in two parts nearest in size, by an
/// order that fits.
pub(super) fn halving_test(dwelling: &Dwelling, on: &OnCircuit, order: &[Node]) -> Option<NextTest> {
    let question = &on.question;
    let unknown = question.unknown();
    let is_below = |at: usize, of: usize| {
        let mut node = order[at];
        while node != question.root() && node != of {
            node = order[node];
        }
        node == of
    };
    let asked = |at: usize| question.facts.iter().any(|fact| fact.above == at);
    let mut best: Option<(usize, usize)> = None;
    for at in (0..question.boxes()).filter(|at| !dwelling.device_box(on.boxes[*at]).do_not_disturb && !asked(*at)) {
        let below = unknown.iter().filter(|head| is_below(**head, at)).count();
        let smaller = below.min(unknown.len() - below);
        if smaller > 0 && best.is_none_or(|(other, _)| smaller > other) {
            best = Some((smaller, at));
        }
    }
    let (_, at) = best?;
    let look_at: Vec<usize> = (0..question.boxes())
        .filter(|of| *of != at && !question.known_above(at, *of) && question.head_of(*of).is_some())
        .filter(|of| question.head_of(*of) != question.head_of(at))
        .collect();
    Some(NextTest {
        open: on.boxes[at],
        minutes: minutes_at(dwelling, on, at, look_at.len())?,
        look_at: on.named(&look_at),
        right: None,
        left_after: None,
        outcomes: Vec::new(),
        further_outcomes: 0,
    })
}

fn minutes_at(dwelling: &Dwelling, on: &OnCircuit, at: usize, looks: usize) -> Option<u32> {
    let device_box = dwelling.device_box(on.boxes[at]);
    let looking = MINUTES_TO_LOOK.saturating_mul(u32::try_from(looks).unwrap_or(u32::MAX));
    (!device_box.do_not_disturb).then(|| minutes_to_part(device_box).saturating_add(looking))
}

/// The most probable order once this was seen.
fn order_then(on: &OnCircuit, above: usize, dead: &[usize]) -> Vec<(BoxIndex, Feed)> {
    let mut question = on.question.clone();
    let others = (0..question.boxes()).filter(|below| *below != above);
    let said_by = usize::MAX;
    let facts = others.map(|below| Fact { above, below, holds: dead.contains(&below), said_by });
    question.facts.extend(facts);
    likeliest_order(&question).map(|order| on.feeds(&order)).unwrap_or_default()
}
