//! The next best at an opening costs what trying everything else says is the least.

use crate::enumeration::least;
use crate::generated::{Size, generated};
use estimate::PriceBook;
use remedies::{Planned, Step};

const SMALL: Size = Size { boxes: (2, 4), circuits: (1, 2), routes: (0, 3) };
const DWELLINGS: u64 = 300;

/// The steps that are one way to deal with an opening.
fn same_way(left: Step, right: Step) -> bool {
    const WAYS: &[&[Step]] = &[
        &[Step::Leave, Step::UseLoadSide],
        &[Step::FitTwoSlot],
        &[Step::MarkGfci, Step::FitGfci],
        &[Step::MarkProtected, Step::FitProtected],
        &[Step::RestoreKept, Step::RestoreFitted],
        &[Step::GroundArrives, Step::ConnectKept, Step::ConnectFitted],
        &[Step::TakeOut],
        &[Step::Unresolved],
    ];
    WAYS.iter().any(|way| way.contains(&left) && way.contains(&right))
}

#[test]
fn the_price_of_the_next_best_is_that_of_trying_everything_else() {
    let book = PriceBook::demo();
    let (mut priced, mut without_price) = (0, 0);
    for seed in 0..DWELLINGS {
        let (dwelling, code) = generated(5_000_000 + seed, SMALL);
        let plan = Planned::of(&dwelling, code.clone(), &book).unwrap();
        for at in dwelling.box_indices() {
            let Some(next) = plan.next_best(at).unwrap() else { continue };
            let step = plan.chosen(at).step;
            let mut others = Planned::of(&dwelling, code.clone(), &book).unwrap();
            others.assembled.candidates[at.0].retain(|one| !same_way(one.step, step));
            let least = least(&others).map(|(cents, ..)| cents - plan.solution.cost.cents);
            match (next.costs_more_cents, next.falls_short.is_empty()) {
                // Nothing is given up: money alone is between the two.
                (Some(more), true) => {
                    assert_eq!(least, Some(more), "seed {seed}, box {}", at.0);
                    priced += 1;
                }
                // What is given up here is gained elsewhere: money alone is between the two again.
                (Some(more), false) if least == Some(more) => without_price += 1,
                // What is given up outweighs any money.
                _ => {
                    assert!(least.is_none_or(|weight| weight > 50_000_000), "seed {seed}, box {}", at.0);
                    assert!(!next.falls_short.is_empty());
                    without_price += 1;
                }
            }
            assert!(next.exact);
        }
    }
    assert!(priced > 100 && without_price > 100, "{priced} with a price, {without_price} without");
}
