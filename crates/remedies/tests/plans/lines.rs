//! Every price opens up to its lines, and every total is the sum of what is shown.

use crate::drawn::drawn;
use crate::generated::{Size, generated};
use estimate::{Cents, Charges, Figures, Material, Percent, PriceBook, Task, WorkCondition};
use remedies::{LawAnswer, LineAnswer, MoneyAnswer, Planned, plan_answer};

/// A book with every charge, every condition and every task for two: figures chosen so that nearly every unit is rounded.
fn full_book() -> PriceBook {
    PriceBook::of(Figures {
        hour: Cents(97_31),
        helper_hour: Some(Cents(53_77)),
        material: vec![(Material::ThreeSlot, Cents(3_17))],
        for_two: Task::ALL.to_vec(),
        conditions: WorkCondition::ALL.iter().enumerate().map(|(at, one)| (*one, 103 + 7 * at as u32)).collect(),
        charges: Charges {
            waste: Percent::whole(7),
            markup: Percent(13_37),
            tax: Percent(6_25),
            trip: Cents(41_00),
            hours_a_day: 6,
            permit: Cents(11_999),
            contingency: Percent(4_50),
            minimum: Cents(100_000),
            round_to: Cents(25_00),
        },
        ..Figures::default()
    })
}

fn is_sum(lines: &[LineAnswer], price: MoneyAnswer) -> bool {
    let each = lines.iter().all(|line| line.cents == line.unit_cents * i64::from(line.quantity));
    each && lines.iter().map(|line| line.cents).sum::<i64>() == price.total_cents
}

/// Every piece is the sum of its lines, the pieces are the plan's price, and the owner's price is the sum of its parts.
fn assert_holds(planned: &Planned, seed: u64) {
    let answer = plan_answer(planned, &LawAnswer::of(&planned.facts.code), false);
    let mut all = 0;
    let boxes = answer.openings.iter().map(|one| (&one.box_id, &one.lines, one.price));
    let routes = answer.routes.iter().map(|one| (&one.id, &one.lines, one.price));
    let panels = answer.circuits.iter().map(|one| (&one.panel, &one.lines, one.price));
    let dangers = answer.dangers.iter().map(|one| (&one.id, &one.lines, one.price));
    for (of, lines, price) in boxes.chain(routes).chain(panels).chain(dangers) {
        assert!(is_sum(lines, price), "seed {seed}, {of}: {price:?} {lines:?}");
        assert_eq!(price.material_cents + price.labour_cents, price.total_cents);
        all += price.total_cents;
    }
    assert_eq!(all, answer.totals.price.total_cents, "seed {seed}");
    let owner = answer.totals.owner;
    assert_eq!(owner.work_cents, all, "seed {seed}");
    let parts = [owner.work_cents, owner.trips_cents, owner.contingency_cents, owner.permit_cents];
    let sum = parts.iter().sum::<i64>() + owner.to_minimum_cents + owner.rounding_cents;
    assert_eq!(sum, owner.total_cents, "seed {seed}");
}

/// What the search minimised is the sum of the lines too: its weights are the very cents that are shown.
#[test]
fn every_cent_of_a_generated_plan_opens_up_to_its_lines() {
    let books = [PriceBook::demo(), full_book()];
    for seed in 0..150 {
        let listed = generated(7_000_000 + seed, Size { boxes: (3, 20), circuits: (1, 5), routes: (0, 8) });
        for (dwelling, code) in [listed, drawn(7_000_000 + seed)] {
            for book in &books {
                let planned = Planned::of(&dwelling, code.clone(), book).unwrap();
                assert_holds(&planned, seed);
            }
        }
    }
}
