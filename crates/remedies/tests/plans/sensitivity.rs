//! What could change a plan, tried on generated dwellings.

use crate::drawn::drawn;
use crate::generated::{Size, generated};
use estimate::{Cents, Charges, Figures, Percent, PriceBook, Task, WorkCondition};
use remedies::{MOVES, Planned};

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

/// A book in which a helper, every condition and every charge count.
fn full_book() -> PriceBook {
    PriceBook::of(Figures {
        for_two: Task::ALL.to_vec(),
        conditions: WorkCondition::ALL.iter().map(|one| (*one, 120)).collect(),
        charges: Charges {
            waste: Percent::whole(8),
            markup: Percent::whole(20),
            tax: Percent::whole(6),
            round_to: Cents(1),
            hours_a_day: 2,
            ..Figures::demo().charges
        },
        ..Figures::demo()
    })
}

/// Every line of the book, a helper, conditions and charges among them: planned with the book that is moved so.
#[test]
fn every_price_that_is_moved_tells_what_planning_with_it_costs_and_what_the_owner_pays() {
    let book = full_book();
    let (mut tables, mut tried) = (std::collections::BTreeSet::new(), 0);
    // Dwellings with drawn floors, whose walls and spaces make conditions.
    for seed in 0..4 {
        let (dwelling, code) = drawn(11_000_000 + seed);
        let plan = Planned::of(&dwelling, code.clone(), &book).unwrap();
        for price in plan.sensitivity(&book).unwrap().prices {
            tables.insert(price.line.table().unwrap_or(price.line.name()));
            for (percent, told) in MOVES.iter().zip(&price.tried) {
                let other = price.line.moved(&book, *percent);
                let then = Planned::of(&dwelling, code.clone(), &other).unwrap().standing().price;
                let owner = |book: &PriceBook, price| book.owner_price(price).total.0;
                let (before, of) = (plan.standing().price, price.line.name());
                let more = then.total().0 - before.total().0;
                assert!(told.costs_more_cents.is_none_or(|told| told == more), "seed {seed}, {of} {percent}");
                let more = owner(&other, then) - owner(&book, before);
                assert!(told.owner_costs_more_cents.is_none_or(|told| told == more), "seed {seed}, {of} {percent}");
                tried += u32::from(told.costs_more_cents.is_some());
            }
        }
    }
    let expected = ["charges", "conditions", "crew", "helper-hour", "hour", "material", "minutes"];
    assert!(tables.iter().copied().eq(expected) && tried > 200, "{tables:?}, {tried}");
}
