//! The feeding orders that still fit, as an answer.

use super::findings::ids;
use diagnosis::feeding::{Clash, FeedingOrder, LikelyOrder, MOST_COUNTED, NextTest, Orders, PRACTICE, TestOutcome};
use dwelling::{BoxIndex, Dwelling, Feed, PowerCut};
use schemars::JsonSchema;
use serde::Serialize;

dwelling::names! {
    /// How much of a feeding order could be told.
    FeedingState {
        /// Every order that fits was looked at.
        Weighed = "weighed",
        /// There are too many boxes of unknown feed: not all orders were looked at.
        NotAllLookedAt = "not-all-looked-at",
        /// None fits: what was seen and what is written down cannot all be true.
        Clash = "clash",
    }
}

/// What is known of the feeding order of a circuit on which something of it is not.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FeedingAnswer {
    /// The circuit, or both circuits of a multiwire set.
    pub circuits: Vec<String>,
    /// The boxes whose feed nobody knows.
    pub unknown: Vec<String>,
    /// How much could be told.
    pub state: FeedingState,
    /// It in a sentence.
    pub says: String,
    /// How many orders fit; null where not all were looked at. 9007199254740992 stands for itself and more.
    pub orders_left: Option<u64>,
    /// Each run that may be there, for each box the likeliest first; empty where not all orders were looked at.
    pub runs: Vec<RunAnswer>,
    /// The most probable orders, the best first; where not all were looked at, one that fits.
    pub likeliest: Vec<OrderAnswer>,
    /// What cannot all be true; one of these is to be looked at again.
    pub clash: Vec<String>,
    /// The test to make next; null where none tells anything.
    pub next: Option<FeedingTestAnswer>,
    /// What common practice weighs orders by that nothing seen tells apart.
    pub weighed_by: Vec<&'static str>,
}

/// A run that may be there.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RunAnswer {
    /// The box that is fed.
    #[serde(rename = "box")]
    pub box_id: String,
    /// What feeds it: a box, or `panel`.
    pub fed_by: String,
    /// How likely that is, from 0 to 1.
    pub share: f64,
}

/// A whole order.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OrderAnswer {
    /// How likely it is among all that fit; null where not all were looked at.
    pub share: Option<f64>,
    /// What feeds each box of unknown feed.
    pub feeds: Vec<FeedAnswer>,
}

/// What feeds a box.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct FeedAnswer {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// What feeds it: a box, or `panel`.
    pub fed_by: String,
}

/// A test of the feeding order.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FeedingTestAnswer {
    /// What to do, in order.
    pub what: String,
    /// The box to open.
    pub open: String,
    /// The openings to look at then.
    pub look_at: Vec<String>,
    /// How long it takes.
    pub minutes: u32,
    /// How likely the most probable order is; null where not all orders were looked at.
    pub right_before: Option<f64>,
    /// How likely it will be afterwards, as expected; null where not all orders were looked at.
    pub right_after: Option<f64>,
    /// What share of the orders is left afterwards, as expected; null where not all were looked at.
    pub left_after: Option<f64>,
    /// What may be seen, the likeliest first.
    pub outcomes: Vec<FeedingOutcomeAnswer>,
    /// How many other things may be seen.
    pub further_outcomes: usize,
    /// Cautions that go with it.
    pub cautions: Vec<&'static str>,
}

/// One thing that the test may show.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FeedingOutcomeAnswer {
    /// The boxes of the circuit that are then dead.
    pub dead: Vec<String>,
    /// How likely it is.
    pub share: f64,
    /// How many orders would be left.
    pub orders_left: u64,
    /// The order that would then be the most probable.
    pub likeliest: Vec<FeedAnswer>,
}

/// What the test needs to be done safely.
const CAUTIONS: [&str; 4] = [
    "before the box is opened: breaker off, locked or tagged, and proved dead with a tester that was proved live before and \
     after",
    "cap every parted conductor alone and close off the box: parts of it are live while the breaker is on for the look \
     around, and nobody reaches in",
    "breaker off and proved dead again before anything is joined",
    "on a multiwire circuit both breakers go off, and the shared neutral is not parted while either is on",
];

/// What is known of the feeding orders of a dwelling.
#[must_use]
pub fn feeding_answers(dwelling: &Dwelling, orders: &[FeedingOrder]) -> Vec<FeedingAnswer> {
    orders.iter().map(|order| feeding_answer(dwelling, order)).collect()
}

fn feeding_answer(dwelling: &Dwelling, order: &FeedingOrder) -> FeedingAnswer {
    let mut answer = FeedingAnswer {
        circuits: order.circuits.iter().map(|circuit| dwelling.circuit(*circuit).id.clone()).collect(),
        unknown: ids(dwelling, &order.unknown),
        state: FeedingState::Weighed,
        says: String::new(),
        orders_left: None,
        runs: Vec::new(),
        likeliest: Vec::new(),
        clash: Vec::new(),
        next: order.next.as_ref().map(|test| test_answer(dwelling, test)),
        weighed_by: PRACTICE.to_vec(),
    };
    match &order.orders {
        Orders::Weighed { count, runs, likeliest } => {
            answer.orders_left = Some(*count);
            answer.says = weighed_in_words(*count, likeliest);
            let runs = runs.iter().map(|run| RunAnswer {
                box_id: id(dwelling, run.to),
                fed_by: fed_by(dwelling, run.from),
                share: rounded(run.share),
            });
            answer.runs = runs.collect();
            let orders = likeliest.iter().map(|likely| OrderAnswer {
                share: Some(rounded(likely.share)),
                feeds: feed_answers(dwelling, &likely.feeds),
            });
            answer.likeliest = orders.collect();
        }
        Orders::NotAll { largest, one } => {
            answer.state = FeedingState::NotAllLookedAt;
            answer.says = format!(
                "{largest} boxes of unknown feed are too many: not all orders were looked at, and no share is told. A test \
                 that cuts them in two makes it possible"
            );
            let one = one.iter().map(|feeds| OrderAnswer { share: None, feeds: feed_answers(dwelling, feeds) });
            answer.likeliest = one.collect();
        }
        Orders::Clash(clash) => {
            answer.state = FeedingState::Clash;
            "what was seen and what is written down cannot all be true: look at one of these again; no order is assumed"
                .clone_into(&mut answer.says);
            answer.clash = clash_in_words(dwelling, clash);
            answer.weighed_by.clear();
        }
    }
    answer
}

/// How many orders are left, in words.
fn weighed_in_words(count: u64, likeliest: &[LikelyOrder]) -> String {
    let percent = likeliest.first().map_or(0.0, |likely| (likely.share * 100.0).round());
    match count {
        1 => "one order fits what was seen, if the survey has every box of the circuit".to_owned(),
        MOST_COUNTED.. => format!("{MOST_COUNTED} orders or more fit; the most probable has a share of {percent} %"),
        _ => format!("{count} orders fit; the most probable has a share of {percent} %"),
    }
}

fn clash_in_words(dwelling: &Dwelling, clash: &Clash) -> Vec<String> {
    let seen = clash.observations.iter().filter_map(|at| dwelling.dead_when.get(*at)).map(|seen| {
        let cut = match seen.cut {
            PowerCut::Breaker(circuit) => format!("with the breaker of `{}` off", dwelling.circuit(circuit).id),
            PowerCut::Opened(at) => format!("with `{}` opened and its conductors apart", id(dwelling, at)),
            PowerCut::LoadSideLifted(at) => format!("with the load side at `{}` lifted", id(dwelling, at)),
        };
        let list = |what: &str, boxes: &[BoxIndex]| {
            let names: Vec<String> = boxes.iter().map(|at| format!("`{}`", id(dwelling, *at))).collect();
            (!names.is_empty()).then(|| format!("{what}: {}", names.join(", ")))
        };
        let lists: Vec<String> = [list("dead", &seen.dead), list("alive", &seen.alive)].into_iter().flatten().collect();
        format!("{cut}: {}", lists.join("; "))
    });
    let counted = clash.counted.iter().map(|at| {
        let count = dwelling.device_box(*at).cables_in_box.unwrap_or(0);
        format!("{count} cables counted in `{}`", id(dwelling, *at))
    });
    let mut list: Vec<String> = seen.chain(counted).collect();
    if list.len() < 2 {
        list.push("the feeding order and the circuits as they are written down".to_owned());
    }
    list
}

fn test_answer(dwelling: &Dwelling, test: &NextTest) -> FeedingTestAnswer {
    let open = id(dwelling, test.open);
    let look_at = ids(dwelling, &test.look_at);
    FeedingTestAnswer {
        what: format!(
            "take the device out of `{open}` with the breaker off, part and cap its conductors, turn the breaker on, and see \
             which of these are dead: {}. Count the cables while the box is open",
            look_at.join(", ")
        ),
        open,
        look_at,
        minutes: test.minutes,
        right_before: test.right.map(|(before, _)| rounded(before)),
        right_after: test.right.map(|(_, after)| rounded(after)),
        left_after: test.left_after.map(rounded),
        outcomes: test.outcomes.iter().map(|outcome| outcome_answer(dwelling, outcome)).collect(),
        further_outcomes: test.further_outcomes,
        cautions: CAUTIONS.to_vec(),
    }
}

fn outcome_answer(dwelling: &Dwelling, outcome: &TestOutcome) -> FeedingOutcomeAnswer {
    FeedingOutcomeAnswer {
        dead: ids(dwelling, &outcome.dead),
        share: rounded(outcome.share),
        orders_left: outcome.orders,
        likeliest: feed_answers(dwelling, &outcome.order),
    }
}

/// What feeds each of these boxes.
pub(super) fn feed_answers(dwelling: &Dwelling, feeds: &[(BoxIndex, Feed)]) -> Vec<FeedAnswer> {
    let answer =
        |(at, feed): &(BoxIndex, Feed)| FeedAnswer { box_id: id(dwelling, *at), fed_by: fed_by(dwelling, *feed) };
    feeds.iter().map(answer).collect()
}

fn id(dwelling: &Dwelling, at: BoxIndex) -> String {
    dwelling.device_box(at).id.clone()
}

fn fed_by(dwelling: &Dwelling, feed: Feed) -> String {
    match feed {
        Feed::Panel(_) => "panel".to_owned(),
        Feed::Box(at) => id(dwelling, at),
    }
}

/// A share to six places: what common practice weighs is known far less well.
pub(super) fn rounded(share: f64) -> f64 {
    (share * 1e6).round() / 1e6
}
