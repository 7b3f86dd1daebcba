//! Two plans of dwellings that differ in one thing: more choice never costs more, and twice the prices cost twice.

use crate::generated::{Size, generated, route};
use crate::random::Random;
use dwelling::{BoxIndex, Dwelling, ProtectiveBreaker};
use electrical::Volume;
use estimate::{Cents, Material, PriceBook};
use optimizer::Cost;
use remedies::{LawAnswer, Planned, plan_answer};
use rulebook::CodeInForce;

const HOUSES: Size = Size { boxes: (3, 16), circuits: (1, 4), routes: (0, 6) };
const DWELLINGS: u64 = 300;

fn cost(dwelling: &Dwelling, code: CodeInForce) -> Cost {
    Planned::of(dwelling, code, &PriceBook::demo()).unwrap().solution.cost
}

/// Holds a dwelling against one in which something was changed for the better; returns how often that saved something.
fn never_dearer(change: impl Fn(&mut Dwelling, &mut Random) -> bool) -> u64 {
    let (mut tried, mut cheaper) = (0, 0);
    for seed in 0..DWELLINGS {
        let (dwelling, code) = generated(2_000_000 + seed, HOUSES);
        let mut changed = dwelling.clone();
        if !change(&mut changed, &mut Random::new(seed)) {
            continue;
        }
        let (before, after) = (cost(&dwelling, code.clone()), cost(&changed, code));
        assert!(after <= before, "seed {seed}: {before:?} became {after:?}");
        tried += 1;
        cheaper += u64::from(after < before);
    }
    assert!(tried > DWELLINGS / 3, "only {tried} were changed");
    cheaper
}

#[test]
fn another_kind_of_breaker_made_for_the_panel_never_makes_the_plan_dearer() {
    let cheaper = never_dearer(|dwelling, random| {
        let kind = random.pick(ProtectiveBreaker::ALL);
        let at = random.below(dwelling.panels.len());
        let made = dwelling.panels[at].made_for_it.as_mut();
        made.is_some_and(|made| {
            let new = !made.contains(&kind);
            made.push(kind);
            new
        })
    });
    assert!(cheaper > 0);
}

#[test]
fn another_route_never_makes_the_plan_dearer() {
    let cheaper = never_dearer(|dwelling, random| {
        let new = route(random, dwelling, 99);
        dwelling.routes.push(new);
        true
    });
    assert!(cheaper > 0);
}

#[test]
fn a_larger_box_never_makes_the_plan_dearer() {
    let cheaper = never_dearer(|dwelling, random| {
        let at = BoxIndex(random.below(dwelling.boxes.len()));
        let volume = &mut dwelling.boxes[at.0].body.volume;
        *volume = volume.map(|volume| volume + Volume::hundredths(random.pick(&[2_00, 8_00, 40_00])));
        volume.is_some()
    });
    assert!(cheaper > 0);
}

/// By hand: at 90 or 180 dollars an hour a minute is 1.50 or 3.00, so that no rounding comes between.
#[test]
fn twice_the_prices_make_the_same_plan_at_twice_the_money() {
    let book = |times: i64| {
        let demo = PriceBook::demo();
        let material: Vec<(Material, Cents)> =
            Material::ALL.iter().map(|thing| (*thing, demo.cost(*thing) * times)).collect();
        PriceBook::new(Cents(90_00 * times), &material, &[])
    };
    for seed in 0..DWELLINGS {
        let (dwelling, code) = generated(2_000_000 + seed, HOUSES);
        let once = Planned::of(&dwelling, code.clone(), &book(1)).unwrap();
        let twice = Planned::of(&dwelling, code, &book(2)).unwrap();
        assert_eq!(once.total().total() * 2, twice.total().total(), "seed {seed}");
        let (cost_once, cost_twice) = (once.solution.cost, twice.solution.cost);
        assert_eq!((cost_once.openings, cost_once.devices), (cost_twice.openings, cost_twice.devices), "seed {seed}");
        let short = |plan: &Planned| -> i64 {
            let boxes = dwelling.boxes.len();
            dwelling.box_indices().map(|at| plan.chosen(at).shortfall.weight(boxes)).sum()
        };
        assert_eq!(short(&once), short(&twice), "seed {seed}");
        // What a plan is said to cost is what its optimum costs, and what is dangerous whatever is chosen.
        let always: i64 = once.assembled.dangers.iter().map(|repair| repair.price.total().0).sum();
        assert_eq!(once.total().total().0 + short(&once), cost_once.cents + always, "seed {seed}");
    }
}

#[test]
fn the_same_survey_gives_the_same_answer_to_the_byte() {
    for seed in 0..DWELLINGS {
        let print = || {
            let (dwelling, code) = generated(2_000_000 + seed, HOUSES);
            let plan = Planned::of(&dwelling, code, &PriceBook::demo()).unwrap();
            serde_json::to_string_pretty(&plan_answer(&plan, &LawAnswer::of(&plan.facts.code), true)).unwrap()
        };
        assert_eq!(print(), print(), "seed {seed}");
    }
}
