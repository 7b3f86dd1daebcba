//! A cost as one integer, ordered as costs are, with the links' tie-breaker below it.
//!
//! Sums of weights are compared as the sums of costs would be, since the sizes that [`crate::Problem::faults`] allows
//! keep every part of the sum within its own bits.

use crate::problem::Cost;

/// A cost, or a sum or share of costs.
pub(crate) type Weight = i128;

/// Heavier than any sum of costs: cannot be had.
pub(crate) const IMPOSSIBLE: Weight = 1 << 126;

const DEVICES_AT: u32 = 32;
const OPENINGS_AT: u32 = 48;
const CENTS_AT: u32 = 64;
/// One link more weighs more than any sum of link indices that is compared.
const ONE_LINK: Weight = 1 << 17;
/// Beyond so many links their indices are not compared: the sum would need more bits than there are.
const MOST_LINKS_COMPARED: usize = 512;

/// Returns the weight of a cost.
pub(crate) fn weight_of(cost: Cost) -> Weight {
    (Weight::from(cost.cents) << CENTS_AT)
        + (Weight::from(cost.openings) << OPENINGS_AT)
        + (Weight::from(cost.devices) << DEVICES_AT)
}

/// Returns the weight of choosing a link, one of so many, at a cost: of equal costs the fewest links, of as many the
/// smallest sum of their indices, where these are compared.
pub(crate) fn weight_of_link(cost: Cost, link: usize, links: usize) -> Weight {
    weight_of(cost) + ONE_LINK + if links <= MOST_LINKS_COMPARED { link as Weight } else { 0 }
}

/// Returns the sum, which cannot be had where a part cannot.
pub(crate) fn plus(one: Weight, other: Weight) -> Weight {
    if one >= IMPOSSIBLE || other >= IMPOSSIBLE { IMPOSSIBLE } else { one + other }
}

/// Returns the greatest cost that no cost of at least this weight falls below.
pub(crate) fn cost_of(weight: Weight) -> Cost {
    let devices = part(weight, DEVICES_AT, OPENINGS_AT);
    let above = weight - (Weight::from(devices) << DEVICES_AT);
    let openings = part(above, OPENINGS_AT, CENTS_AT);
    let above = above - (Weight::from(openings) << OPENINGS_AT);
    let cents = i64::try_from(above >> CENTS_AT).unwrap_or(i64::MAX);
    Cost { cents, openings, devices }
}

/// Returns the signed number that stands from one bit up to another.
fn part(weight: Weight, from: u32, to: u32) -> i64 {
    let width = to - from;
    let half = 1 << (width - 1);
    let bits = ((weight >> from) + half) & ((1 << width) - 1);
    i64::try_from(bits - half).unwrap_or(i64::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cost_comes_back_from_its_weight() {
        for cents in [-1_000_000, -1, 0, 1, 1 << 60] {
            for openings in [-16_384, -1, 0, 7, 16_384] {
                for devices in [-16_384, -3, 0, 1, 16_384] {
                    let cost = Cost { cents, openings, devices };
                    assert_eq!(cost_of(weight_of(cost)), cost);
                    assert_eq!(cost_of(weight_of_link(cost, 511, 512)), cost);
                }
            }
        }
    }

    #[test]
    fn weights_are_ordered_as_costs_are() {
        let costs = [(0, -9, 9), (0, 0, -1), (0, 0, 0), (0, 0, 1), (0, 1, -5), (1, -7, 0)];
        let costs = costs.map(|(cents, openings, devices)| Cost { cents, openings, devices });
        for pair in costs.windows(2) {
            assert!(pair[0] < pair[1] && weight_of(pair[0]) < weight_of(pair[1]));
        }
    }
}
