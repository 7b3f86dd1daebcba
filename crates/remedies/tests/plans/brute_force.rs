//! The plan costs what trying everything says is the least.

use crate::enumeration::least;
use crate::generated::{Size, generated};
use estimate::PriceBook;
use remedies::Planned;

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
