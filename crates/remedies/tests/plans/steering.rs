//! Plans that the owner steers give what was laid down, never cost less than the wishes allow, and stay lawful.

use crate::enumeration::least;
use crate::generated::{Size, generated};
use crate::random::Random;
use dwelling::{BoxIndex, Dwelling, Holding, RoomIndex, RouteEnd, RouteKind};
use estimate::PriceBook;
use remedies::{BoxWork, Device, Planned, WayEnd, Wish};

const HOUSES: Size = Size { boxes: (3, 12), circuits: (1, 3), routes: (1, 6) };
const SMALL: Size = Size { boxes: (2, 4), circuits: (1, 2), routes: (1, 4) };

fn some_wish(random: &mut Random, dwelling: &Dwelling) -> Wish {
    let at = BoxIndex(random.below(dwelling.boxes.len()));
    let room = RoomIndex(random.below(dwelling.rooms.len()));
    random.pick(&[Wish::Ground(at), Wish::Ground(at), Wish::Keep(at), Wish::NoOpen(room)])
}

/// Whether a plan gives what was laid down, read off the plan itself.
fn is_given(plan: &Planned, wish: Wish) -> bool {
    let dwelling = plan.facts.dwelling;
    match wish {
        Wish::Ground(at) => {
            let two_slot = dwelling.device_box(at).holds == Holding::TwoSlot && plan.chosen(at).device == Device::Kept;
            plan.is_grounded(at) && !two_slot && !plan.chosen(at).shortfall.unlawful
        }
        Wish::Keep(at) => {
            let fed_anew = plan
                .solution
                .links
                .iter()
                .map(|link| plan.bought(link))
                .any(|route| route.kind == RouteKind::NewCable && route.ends.1 == WayEnd::At(RouteEnd::Box(at)));
            plan.chosen(at).device == Device::Kept && plan.chosen(at).box_work == BoxWork::Keep && !fed_anew
        }
        Wish::NoOpen(room) => {
            let inside =
                |end: WayEnd| matches!(end, WayEnd::At(RouteEnd::Box(at)) if dwelling.device_box(at).room == room);
            let cut = |at: BoxIndex| matches!(plan.chosen(at).box_work, BoxWork::Replace | BoxWork::ReplaceWide);
            let cut_out = |at: BoxIndex| dwelling.device_box(at).room == room && cut(at);
            let opened = plan.solution.links.iter().map(|link| plan.bought(link));
            !dwelling.box_indices().any(cut_out)
                && !opened.filter(|route| route.openings > 0).any(|route| inside(route.ends.0) || inside(route.ends.1))
        }
    }
}

#[test]
fn what_is_said_to_be_had_is_given_and_nothing_is_made_unlawful_for_it() {
    let book = PriceBook::demo();
    let (mut had, mut refused) = (0, 0);
    for seed in 0..300 {
        let (dwelling, code) = generated(6_000_000 + seed, HOUSES);
        let mut random = Random::new(seed);
        let wishes: Vec<Wish> = (0..random.within((1, 3))).map(|_| some_wish(&mut random, &dwelling)).collect();
        let plan = Planned::steered(&dwelling, code, &book, &wishes).unwrap();
        let steered = plan.steered.as_ref().unwrap();
        assert_eq!(steered.wishes.len(), wishes.len());
        for (wish, why_not) in &steered.wishes {
            if why_not.is_empty() {
                assert!(is_given(&plan, *wish), "seed {seed}: {wish:?}");
                had += 1;
            } else {
                refused += 1;
            }
        }
        assert!(plan.standing().is_as_lawful_as(&steered.unsteered), "seed {seed}");
        if plan.standing().gives_as_much_as(&steered.unsteered) {
            assert!(plan.total().total() >= steered.unsteered.price.total(), "seed {seed}");
        }
        assert_eq!(optimizer::check(&plan.assembled.problem, &plan.solution), Ok(plan.solution.cost), "seed {seed}");
    }
    assert!(had > 100 && refused > 100, "{had} had, {refused} refused");
}

/// One wish to keep a box or to ground a receptacle, held against everything that could be done with the other candidates
/// of its box struck out.
#[test]
fn a_steered_plan_costs_what_trying_everything_that_gives_the_wish_costs() {
    let book = PriceBook::demo();
    let (mut had, mut refused) = (0, 0);
    for seed in 0..400 {
        let (dwelling, code) = generated(7_000_000 + seed, SMALL);
        let at = BoxIndex(Random::new(seed).below(dwelling.boxes.len()));
        if !dwelling.device_box(at).holds.is_receptacle() {
            continue;
        }
        let wish = Wish::Ground(at);
        let plan = Planned::steered(&dwelling, code.clone(), &book, &[wish]).unwrap();
        let unsteered = Planned::of(&dwelling, code.clone(), &book).unwrap();
        let mut others = Planned::of(&dwelling, code, &book).unwrap();
        let stays_two_slot = dwelling.device_box(at).holds == Holding::TwoSlot;
        let site_has_ground = others.facts.at(at).supplied;
        others.assembled.candidates[at.0].retain(|one| match one.supply {
            optimizer::SupplyNeed::Supplied => true,
            optimizer::SupplyNeed::Unsupplied => false,
            optimizer::SupplyNeed::Any => {
                site_has_ground && !one.shortfall.unlawful && !(stays_two_slot && one.device == Device::Kept)
            }
        });
        let least = least(&others);
        if plan.steered.as_ref().unwrap().wishes[0].1.is_empty() {
            let cost = plan.solution.cost;
            assert_eq!(least, Some((cost.cents, cost.openings, cost.devices)), "seed {seed}");
            had += 1;
        } else {
            // Nothing gives it, or only what falls short of more.
            assert!(least.is_none_or(|least| least.0 > unsteered.solution.cost.cents + 50_000_000), "seed {seed}");
            refused += 1;
        }
    }
    assert!(had > 50 && refused > 50, "{had} had, {refused} refused");
}
