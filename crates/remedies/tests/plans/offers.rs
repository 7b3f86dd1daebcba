//! The frontier of offers is what trying every set of routes leaves when all that is beaten is struck out.

use crate::enumeration::least_of_each_set;
use crate::generated::{Size, generated};
use dwelling::{BoxIndex, Equipment, Holding, Want};
use estimate::{Cents, PriceBook};
use optimizer::SupplyNeed;
use remedies::{Device, OfferKind, Planned};
use rulebook::{Duty, Need};

const SMALL: Size = Size { boxes: (3, 5), circuits: (1, 2), routes: (2, 4) };
const HOUSES: Size = Size { boxes: (6, 14), circuits: (1, 4), routes: (2, 7) };

/// What a ground that is brought to a box is worth: 4 where equipment should have one or the owner asked for one, 2 where
/// anything else but two-pin things is plugged in, 1 elsewhere.
fn worth(plan: &Planned, at: BoxIndex) -> u64 {
    let (site, device_box) = (plan.facts.at(at), plan.facts.dwelling.device_box(at));
    let candidates = &plan.assembled.candidates[at.0];
    let can_be = candidates.iter().any(|one| one.supply == SupplyNeed::Supplied && !one.shortfall.unlawful);
    let may_go = candidates.iter().any(|one| one.device == Device::Blank);
    if site.supplied || !device_box.holds.is_receptacle() || !can_be || may_go {
        return 0;
    }
    let needed = |one: &rulebook::DutyVerdict| one.duty == Duty::EquipmentGround && one.need == Need::Required;
    let should = |one: &Equipment| rulebook::tables::grounded_equipment::needs_ground_to_serve(*one);
    if site.judged_to_plan.duties.iter().any(needed) || device_box.serves.iter().any(should) {
        return 4;
    }
    match (device_box.want, device_box.serves.iter().any(|one| *one != Equipment::TwoPin)) {
        (Want::Ground, _) => 4,
        (_, true) => 2,
        (_, false) => 1,
    }
}

/// Money, wall openings, and worth turned round, so that less is better in each.
type Triple = (i64, i64, i64);

fn undominated(mut all: Vec<Triple>) -> Vec<Triple> {
    all.sort_unstable();
    all.dedup();
    let beats = |one: &Triple, other: &Triple| one != other && one.0 <= other.0 && one.1 <= other.1 && one.2 <= other.2;
    let kept = all.iter().filter(|this| !all.iter().any(|other| beats(other, this)));
    kept.copied().collect()
}

#[test]
fn the_frontier_is_what_trying_every_set_of_routes_leaves() {
    let book = PriceBook::demo();
    let mut longer = 0;
    for seed in 0..400 {
        let (dwelling, code) = generated(8_000_000 + seed, SMALL);
        let plan = Planned::of(&dwelling, code.clone(), &book).unwrap();
        let offers = plan.offers().unwrap();
        assert!(offers.complete, "seed {seed}");
        let told: Vec<Triple> = offers
            .frontier
            .iter()
            .map(|point| (point.cents(), point.standing.wall_openings, -i64::try_from(point.worth).unwrap()))
            .collect();
        // A two-slot receptacle does not stay where a ground is brought.
        let mut others = Planned::of(&dwelling, code, &book).unwrap();
        for at in dwelling.box_indices().filter(|at| worth(&plan, *at) > 0) {
            if dwelling.device_box(at).holds == Holding::TwoSlot {
                let kept = others.assembled.candidates[at.0].iter_mut();
                kept.filter(|one| {
                    one.device == Device::Kept && !one.shortfall.unlawful && one.supply == SupplyNeed::Any
                })
                .for_each(|one| one.supply = SupplyNeed::Unsupplied);
            }
        }
        let weights = plan.solution.cost.cents - plan.total().total().0;
        let base = (plan.total().total().0, plan.solution.cost.openings, -i64::try_from(offered_worth(&plan)).unwrap());
        let sets = least_of_each_set(&others).into_iter().map(|((cents, openings, _), grounded)| {
            let worth: u64 = dwelling
                .box_indices()
                .filter(|at| grounded[plan.facts.groups.index_of(*at)])
                .map(|at| worth(&plan, at))
                .sum();
            (cents - weights, openings, -i64::try_from(worth).unwrap())
        });
        let lawful = sets.filter(|(cents, ..)| *cents < 50_000_000);
        assert_eq!(told, undominated(lawful.chain([base]).collect()), "seed {seed}");
        longer += u64::from(told.len() > 1);
    }
    assert!(longer > 60, "{longer} have a choice");
}

fn offered_worth(plan: &Planned) -> u64 {
    plan.standing().grounded.iter().map(|at| worth(plan, *at)).sum()
}

#[test]
fn offers_are_lawful_apart_by_rising_price_and_what_they_are_named_for() {
    let book = PriceBook::demo();
    let mut several = 0;
    for seed in 0..300 {
        let (dwelling, code) = generated(9_000_000 + seed, HOUSES);
        let mut plan = Planned::of(&dwelling, code, &book).unwrap();
        let offers = plan.offers().unwrap();
        let points: Vec<_> = offers.offers.iter().map(|offer| &offers.frontier[offer.point]).collect();
        assert!(!points.is_empty() && points.len() <= 4, "seed {seed}");
        assert_eq!(points[0].solution.cost.cents, plan.solution.cost.cents, "seed {seed}");
        assert!(points.windows(2).all(|pair| pair[0].cents() <= pair[1].cents()), "seed {seed}");
        let worths = offers.frontier.iter().map(|point| point.worth);
        let walls = offers.frontier.iter().map(|point| point.standing.wall_openings);
        for (offer, point) in offers.offers.iter().zip(&points) {
            match offer.kind {
                OfferKind::MostGrounds => assert_eq!(Some(point.worth), worths.clone().max(), "seed {seed}"),
                OfferKind::LeastDisturbance => {
                    assert_eq!(Some(point.standing.wall_openings), walls.clone().min(), "seed {seed}");
                }
                _ => {}
            }
            assert!(point.standing.gives_as_much_as(&plan.standing()), "seed {seed}");
        }
        several += u64::from(points.len() > 1);
        // Taken, an offer is a plan like any other.
        let last = points[points.len() - 1].clone();
        plan.take(&last, offers.complete);
        assert_eq!(plan.total().total().0, last.cents(), "seed {seed}");
        assert_eq!(optimizer::check(&plan.assembled.problem, &plan.solution), Ok(plan.solution.cost), "seed {seed}");
        // Another way at one opening, the other grounds kept, saves what that opening's ground costs or costs more.
        for at in dwelling.box_indices().filter(|at| !last.standing.grounded.contains(at)) {
            let next = plan.next_best(at).unwrap();
            let more = next.filter(|next| next.falls_short.is_empty()).and_then(|next| next.costs_more_cents);
            assert!(more.is_none_or(|more| more >= 0), "seed {seed}: box {}", at.0);
        }
    }
    assert!(several > 60, "{several} have several offers");
}

#[test]
fn a_budget_is_kept_and_more_money_never_grounds_less() {
    let book = PriceBook::demo();
    let mut grew = 0;
    for seed in 0..100 {
        let (dwelling, code) = generated(9_500_000 + seed, HOUSES);
        let least = Planned::of(&dwelling, code.clone(), &book).unwrap().total().total();
        let mut worth_before = 0;
        for more in [-1, 0, 10_000, 40_000, 160_000] {
            let mut plan = Planned::of(&dwelling, code.clone(), &book).unwrap();
            let budget = Cents(least.0 + more);
            plan.stay_within(budget).unwrap();
            let worth = offered_worth(&plan);
            if more < 0 {
                assert_eq!(plan.total().total(), least, "seed {seed}");
            } else {
                assert!(plan.total().total() <= budget, "seed {seed}");
                assert!(worth >= worth_before, "seed {seed}");
                grew += u64::from(worth > worth_before && more > 0);
            }
            worth_before = worth;
        }
    }
    assert!(grew > 20, "grew {grew} times");
}
