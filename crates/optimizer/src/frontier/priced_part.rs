//! A part at prices on openings and on worth: what it costs at least at these bounds every corner.

use crate::ascent::Preference;
use crate::bound::Bounder;
use crate::frontier::corners::Corner;
use crate::frontier::prices::{PARTS, Prices};
use crate::part::Part;
use crate::problem::Problem;
use crate::weight::{IMPOSSIBLE, Weight, weight_of};
use std::cell::OnceCell;

/// A cent as a weight has so many bits below it.
const CENTS_AT: u32 = 64;
/// The most cents that all prices together may add: no more than the largest costs do.
const MOST_PRICED: i128 = 1 << 59;

/// Parts at prices, one after the other, so that what bounds one can stand beside it while more are added.
#[derive(Debug, Default)]
pub(super) struct Chain<'p> {
    first: OnceCell<Box<Ring<'p>>>,
}

#[derive(Debug)]
struct Ring<'p> {
    part: Part<'p>,
    next: OnceCell<Box<Ring<'p>>>,
}

impl<'p> Chain<'p> {
    /// Adds a part and returns where it stands.
    pub fn add(&self, part: Part<'p>) -> &Part<'p> {
        let mut end = &self.first;
        while let Some(ring) = end.get() {
            end = &ring.next;
        }
        &end.get_or_init(|| Box::new(Ring { part, next: OnceCell::new() })).part
    }
}

/// A part at prices.
#[derive(Debug)]
pub(super) struct PricedPart<'c> {
    pub prices: Prices,
    pub bounder: Bounder<'c>,
    /// No choice weighs less at these prices.
    pub least: Weight,
    /// What the best choice found at these prices uses, by element of the bound's net.
    pub guide: Vec<bool>,
    /// Which way of ascending went highest with nothing decided.
    pub preference: Preference,
}

impl PricedPart<'_> {
    /// What is owed at these prices by whatever lies in a corner, at most.
    pub fn owed(&self, corner: &Corner) -> Weight {
        of_openings(self.prices, corner.openings) - of_worth(self.prices, corner.worth)
    }

    /// Whether nothing of so much weight at these prices lies in the corner.
    pub fn closes(&self, corner: &Corner, least: Weight) -> bool {
        least >= self.enough(corner)
    }

    /// The weight at these prices from which on nothing lies in the corner.
    pub fn enough(&self, corner: &Corner) -> Weight {
        // Below a cent stand openings and devices of either sign.
        (Weight::from(corner.below_cents) << CENTS_AT) - (1 << (CENTS_AT - 1)) + self.owed(corner)
    }

    /// The cents that whatever lies in the corner costs at least, about.
    pub fn cents_in(&self, corner: &Corner) -> f64 {
        (self.least - self.owed(corner)) as f64 / (1_u128 << CENTS_AT) as f64
    }
}

/// What openings weigh at prices.
pub(super) fn of_openings(prices: Prices, openings: i64) -> Weight {
    Weight::from(prices.opening) * Weight::from(openings) * ((1 << CENTS_AT) / Weight::from(PARTS))
}

/// What worth weighs at prices.
pub(super) fn of_worth(prices: Prices, worth: i128) -> Weight {
    Weight::from(prices.worth) * worth * ((1 << CENTS_AT) / Weight::from(PARTS))
}

/// Returns prices so small that their sums can be added.
pub(super) fn within_reach(prices: Prices, openings: i64, worth: i128) -> Prices {
    let most = |of: i128| i64::try_from(MOST_PRICED / of.max(1) * i128::from(PARTS)).unwrap_or(i64::MAX);
    Prices { opening: prices.opening.min(most(i128::from(openings))), worth: prices.worth.min(most(worth)) }
}

/// Returns the part with a price on every opening, and on the worth of a group at each link that supplies it: one of them
/// does, where it is supplied.
pub(super) fn at_prices<'p>(problem: &Problem, part: &Part<'p>, worth: &[i128], prices: Prices) -> Part<'p> {
    let mut priced = part.clone();
    for arc in &mut priced.arcs {
        let costs = &problem.links[arc.link].cost_by_grade;
        for (weight, cost) in arc.by_grade.iter_mut().zip(costs).filter(|(weight, _)| **weight < IMPOSSIBLE) {
            *weight += of_openings(prices, cost.openings) - of_worth(prices, worth[arc.head]);
        }
    }
    for tree in &mut priced.trees {
        let given = tree.compiled.given;
        for root in &mut tree.compiled.roots {
            root.weight = weight_of(given.root_options[root.index].cost)
                + of_openings(prices, given.root_options[root.index].cost.openings);
        }
        for (node, options) in given.nodes.iter().zip(&mut tree.compiled.options) {
            for option in options {
                let cost = node.options[option.index].cost;
                option.weight = weight_of(cost) + of_openings(prices, cost.openings);
            }
        }
    }
    priced
}
