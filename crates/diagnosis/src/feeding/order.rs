//! The feeding order of every circuit on which something of it is not known.

use super::clash::{Clash, clash};
use super::greedy::one_order;
use super::next_test::{NextTest, halving_test, next_test};
use super::on_circuit::OnCircuit;
use super::weighing::{NotWeighed, any_fits, weigh};
use dwelling::{BoxIndex, CircuitIndex, Dwelling, Feed, PanelIndex, circuit_trees};

/// How many of the most probable orders are told.
const MOST_ORDERS: usize = 3;

/// What is known of the feeding order of one circuit or multiwire set.
#[derive(Clone, Debug, PartialEq)]
pub struct FeedingOrder {
    /// The circuit, or both circuits of a multiwire set.
    pub circuits: Vec<CircuitIndex>,
    /// Its panel.
    pub panel: PanelIndex,
    /// Its boxes, those of unknown circuit included that what is known ties to it.
    pub boxes: Vec<BoxIndex>,
    /// The boxes whose feed nobody knows, in survey order.
    pub unknown: Vec<BoxIndex>,
    /// What follows for them.
    pub orders: Orders,
    /// The test to make next, where one tells something.
    pub next: Option<NextTest>,
}

/// The orders that fit.
#[derive(Clone, Debug, PartialEq)]
pub enum Orders {
    /// Every one of them was looked at.
    Weighed {
        /// How many there are; [`super::MOST_COUNTED`] stands for itself and more.
        count: u64,
        /// Each run that may be there to a box of unknown feed: for each box the likeliest first.
        runs: Vec<PossibleRun>,
        /// The most probable orders, the best first.
        likeliest: Vec<LikelyOrder>,
    },
    /// There are too many boxes of unknown feed: not all orders were looked at.
    NotAll {
        /// How many such boxes the largest part of the question has.
        largest: usize,
        /// One order that fits, where one was found. Others may be likelier.
        one: Option<Vec<(BoxIndex, Feed)>>,
    },
    /// None fits: what was seen and what is written down cannot all be true.
    Clash(Clash),
}

/// A run that may be there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PossibleRun {
    /// The box that is fed.
    pub to: BoxIndex,
    /// What feeds it.
    pub from: Feed,
    /// How likely that is.
    pub share: f64,
}

/// A whole order.
#[derive(Clone, Debug, PartialEq)]
pub struct LikelyOrder {
    /// How likely it is among all that fit.
    pub share: f64,
    /// By box of unknown feed: what feeds it.
    pub feeds: Vec<(BoxIndex, Feed)>,
}

/// The feeding orders of the circuits on which something is not known or what is said clashes, in the order of the circuits.
#[must_use]
pub fn feeding_orders(dwelling: &Dwelling) -> Vec<FeedingOrder> {
    if dwelling.dead_when.is_empty() && dwelling.boxes.iter().all(|device_box| device_box.known_feed().is_some()) {
        return Vec::new();
    }
    circuit_trees(dwelling).iter().filter_map(|tree| order_on(dwelling, OnCircuit::of(dwelling, tree))).collect()
}

fn order_on(dwelling: &Dwelling, on: OnCircuit) -> Option<FeedingOrder> {
    let unknown = on.unknown();
    let (orders, next) = if !on.across.is_empty() {
        (Orders::Clash(clash(&on)), None)
    } else if unknown.is_empty() {
        if on.question.facts.is_empty() || any_fits(&on.question) != Some(false) {
            return None;
        }
        (Orders::Clash(clash(&on)), None)
    } else {
        weighed(dwelling, &on)
    };
    let OnCircuit { circuits, panel, boxes, .. } = on;
    Some(FeedingOrder { circuits, panel, boxes, unknown, orders, next })
}

fn weighed(dwelling: &Dwelling, on: &OnCircuit) -> (Orders, Option<NextTest>) {
    match weigh(&on.question, MOST_ORDERS) {
        Ok(weighing) => {
            let mut runs = Vec::new();
            for at in on.question.unknown() {
                let froms = weighing.share.iter().enumerate().filter(|(_, shares)| shares[at] > 0.0);
                let mut to_it: Vec<PossibleRun> = froms
                    .map(|(node, shares)| PossibleRun { to: on.boxes[at], from: on.feed(node), share: shares[at] })
                    .collect();
                to_it.sort_by(|one, other| other.share.total_cmp(&one.share).then(one.from.cmp(&other.from)));
                runs.extend(to_it);
            }
            let next = next_test(dwelling, on, &weighing);
            let likeliest = weighing.likeliest.iter();
            let likeliest = likeliest.map(|likely| LikelyOrder { share: likely.share, feeds: on.feeds(&likely.feeds) });
            (Orders::Weighed { count: weighing.orders, runs, likeliest: likeliest.collect() }, next)
        }
        Err(NotWeighed::NothingFits) => (Orders::Clash(clash(on)), None),
        Err(NotWeighed::TooMany(largest)) => {
            let one = one_order(&on.question);
            let next = one.as_ref().and_then(|order| halving_test(dwelling, on, order));
            (Orders::NotAll { largest, one: one.map(|order| on.feeds(&order)) }, next)
        }
    }
}

/// The dwelling with the most probable order of every circuit written into it as assumed, where something of it is not
/// known: to plan on, never to rely on. Over a contradiction nothing is assumed.
#[must_use]
pub fn on_likeliest_orders(dwelling: &Dwelling, orders: &[FeedingOrder]) -> Dwelling {
    let mut assumed = dwelling.clone();
    for order in orders {
        if let Some(feeds) = order.to_plan_on().first() {
            assumed = order.assumed(&assumed, feeds);
        }
    }
    assumed
}

impl FeedingOrder {
    /// The orders to plan on, the most probable first; none where nothing fits.
    #[must_use]
    pub fn to_plan_on(&self) -> Vec<&[(BoxIndex, Feed)]> {
        match &self.orders {
            Orders::Weighed { likeliest, .. } => likeliest.iter().map(|likely| likely.feeds.as_slice()).collect(),
            Orders::NotAll { one, .. } => one.iter().map(Vec::as_slice).collect(),
            Orders::Clash(_) => Vec::new(),
        }
    }

    /// The dwelling with one order of this circuit written into it as assumed: to plan on, never to rely on.
    #[must_use]
    pub fn assumed(&self, dwelling: &Dwelling, feeds: &[(BoxIndex, Feed)]) -> Dwelling {
        let mut assumed = dwelling.clone();
        for (at, feed) in feeds {
            if let Some(device_box) = assumed.boxes.get_mut(at.0) {
                device_box.fed_by = Some(*feed);
                device_box.feed_assumed = true;
            }
        }
        if let [circuit] = self.circuits.as_slice() {
            for at in &self.boxes {
                if let Some(device_box) = assumed.boxes.get_mut(at.0) {
                    device_box.circuit = device_box.circuit.or(Some(*circuit));
                }
            }
        }
        assumed
    }
}
