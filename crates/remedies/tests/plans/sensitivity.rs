//! What could change a plan, tried on generated dwellings.

use crate::generated::{Size, generated};
use estimate::PriceBook;
use remedies::Planned;

const HOUSES: Size = Size { boxes: (3, 6), circuits: (1, 2), routes: (0, 3) };

#[test]
fn every_value_tried_is_the_plan_of_the_dwelling_that_has_it() {
    let book = PriceBook::demo();
    let (mut values, mut changed, mut unpriced) = (0, 0, 0);
    for seed in 0..20 {
        let (dwelling, code) = generated(11_000_000 + seed, HOUSES);
        let plan = Planned::of(&dwelling, code.clone(), &book).unwrap();
        let found = plan.sensitivity(&book).unwrap();
        for one in &found.unknowns {
            assert_eq!(one.tried.len(), one.unknown.values.len());
            for (possible, tried) in one.unknown.values.iter().zip(&one.tried) {
                let mut other = dwelling.clone();
                (possible.set)(&mut other);
                assert_ne!(other, dwelling, "seed {seed}: {} {}", one.unknown.what, possible.value);
                let then = Planned::of(&other, code.clone(), &book).unwrap();
                let more = then.total().total().0 - plan.total().total().0;
                assert!(tried.costs_more_cents.is_none_or(|told| told == more), "seed {seed}");
                let short = then.standing().unlawful.len() > plan.standing().unlawful.len();
                assert!(!short || tried.costs_more_cents.is_none(), "seed {seed}");
                values += 1;
                changed += u32::from(!tried.changes.is_empty());
                unpriced += u32::from(tried.costs_more_cents.is_none());
            }
        }
        // Half an hour's price makes nothing dearer, and half as much again nothing cheaper.
        let hour = &found.prices[0];
        assert_eq!(hour.line.name(), "hour");
        assert!(hour.tried[0].costs_more_cents <= Some(0) && hour.tried[3].costs_more_cents >= Some(0), "seed {seed}");
    }
    assert!(values > 300 && changed > 20 && unpriced > 0, "{values} values, {changed} changed, {unpriced} unpriced");
}
