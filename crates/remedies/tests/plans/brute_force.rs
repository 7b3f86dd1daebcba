//! The plan costs what trying everything says is the least.

use crate::drawn::drawn;
use crate::enumeration::least;
use crate::generated::{Size, generated};
use estimate::PriceBook;
use remedies::{Planned, WayEnd};

const SMALL: Size = Size { boxes: (2, 5), circuits: (1, 2), routes: (0, 4) };
const DWELLINGS: u64 = 2000;

#[test]
fn the_plan_of_2000_small_dwellings_costs_what_trying_everything_costs() {
    let book = PriceBook::demo();
    let (mut agreed, mut with_routes, mut unresolved) = (0, 0, 0);
    for seed in 0..DWELLINGS {
        let (dwelling, code) = generated(seed, SMALL);
        let plan = Planned::of(&dwelling, code, &book).unwrap_or_else(|fault| panic!("seed {seed}: {fault:?}"));
        let cost = plan.solution.cost;
        assert_eq!(least(&plan), Some((cost.cents, cost.openings, cost.devices)), "seed {seed}");
        agreed += 1;
        with_routes += u64::from(!plan.solution.links.is_empty());
        unresolved += u64::from(dwelling.box_indices().any(|at| plan.chosen(at).shortfall.unlawful));
    }
    assert_eq!(agreed, DWELLINGS);
    // The dwellings are such that the question is worth asking.
    assert!(with_routes > DWELLINGS / 10, "routes are bought in {with_routes}");
    assert!(unresolved < DWELLINGS / 2, "something is unlawful in {unresolved}");
}

/// More links than these are too many to try whole.
const MOST_LINKS: usize = 14;

#[test]
fn the_plan_of_800_small_dwellings_with_built_ways_costs_what_trying_everything_costs() {
    let book = PriceBook::demo();
    let (mut agreed, mut past_junctions, mut branching, mut seed) = (0, 0, 0, 5_000_000);
    while agreed < 800 {
        seed += 1;
        let (dwelling, code) = drawn(seed);
        let plan = Planned::of(&dwelling, code, &book).unwrap_or_else(|fault| panic!("seed {seed}: {fault:?}"));
        let network = &plan.assembled.network;
        let built = network.bought_as.iter().filter(|route| route.stated().is_none()).count();
        if built == 0 || network.links.len() > MOST_LINKS {
            continue;
        }
        let cost = plan.solution.cost;
        assert_eq!(least(&plan), Some((cost.cents, cost.openings, cost.devices)), "seed {seed}");
        agreed += 1;
        let flows = || plan.solution.links.iter().map(|chosen| plan.flow_of(chosen));
        past_junctions += u64::from(flows().any(|(_, to)| matches!(to, WayEnd::Junction(_))));
        branching += u64::from(plan.ways().iter().any(|way| way.branches_from.is_some()));
    }
    // The dwellings are such that the question is worth asking.
    assert!(past_junctions > 100, "a junction is passed in {past_junctions}");
    assert!(branching > 30, "a way branches off in {branching}");
}
