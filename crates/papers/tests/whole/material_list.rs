//! The material list held against the lines of the plan.

use crate::planned_job::{EXAMPLES, with_example};
use papers::material_list;
use remedies::{LineAnswer, LineOf};
use std::collections::BTreeMap;

/// Every piece and foot of every line, by its name.
fn lines_of(lines: &[LineAnswer], sums: &mut BTreeMap<&'static str, u32>) {
    for line in lines.iter().filter(|line| line.of != LineOf::Work) {
        *sums.entry(line.line).or_default() += line.quantity;
    }
}

#[test]
fn what_is_bought_is_what_the_lines_of_the_plan_need_and_never_less() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let mut needed = BTreeMap::new();
            job.plan.openings.iter().for_each(|one| lines_of(&one.lines, &mut needed));
            job.plan.circuits.iter().for_each(|one| lines_of(&one.lines, &mut needed));
            job.plan.routes.iter().for_each(|one| lines_of(&one.lines, &mut needed));
            let listed: BTreeMap<&str, u32> =
                job.estimate.material.iter().map(|thing| (thing.line, thing.measured)).collect();
            assert_eq!(listed, needed, "{name}");
            let words = material_list(job).words();
            for thing in &job.estimate.material {
                let packed: u64 = thing.packs.iter().map(|pack| u64::from(pack.size) * u64::from(pack.count)).sum();
                assert!(thing.bought >= thing.needed && thing.needed >= u64::from(thing.measured), "{thing:?}");
                assert!(thing.packs.is_empty() || packed == thing.bought, "{thing:?}");
                let feet = if thing.of == LineOf::Feet { " ft" } else { "" };
                assert!(words.contains(&format!(" {}{feet} ", thing.needed)), "{name}: {thing:?}\n{words}");
            }
        });
    }
}

/// The quantities of all rooms together are those of the whole: nothing is brought twice and nothing is left at the shop.
#[test]
fn what_is_brought_to_the_rooms_is_all_that_is_fitted() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let words = material_list(job).words();
            let staged = words.split("There Quantity What").skip(1).flat_map(str::lines);
            let quantity = |line: &str| line.split_whitespace().next()?.parse::<u32>().ok();
            let brought: u32 = staged.filter_map(quantity).sum();
            let fitted: u32 = job.estimate.material.iter().map(|thing| thing.measured).sum();
            assert_eq!(brought, fitted, "{name}\n{words}");
        });
    }
}

/// By hand: five openings of the knob-and-tube house are marked, two of them with both words: 7 wordings on 5 labels; one of its
/// three new boxes ends armored cable. In the cottage circuit 1 is of 15 A.
#[test]
fn what_two_papers_count_in_two_ways_and_what_a_counter_asks_is_said() {
    with_example("knob-and-tube", |job| {
        let words = material_list(job).words();
        assert!(words.contains("has both words of one plate on one label, 5 in all for these 7."), "{words}");
        assert!(words.contains("Of metal at P-3, with a connector"), "{words}");
    });
    with_example("cottage-done", |job| {
        let words = material_list(job).words();
        assert!(words.contains("Circuit 1: GFCI/AFCI breaker of 15 A, made for panel main."), "{words}");
        assert!(!words.contains("Of metal at"), "{words}");
    });
}
